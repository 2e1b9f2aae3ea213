#include "core/stations/station.hpp"

#include "core/text/words.hpp"

#include <array>

namespace mastwise {
namespace {

constexpr std::array kStandards{BroadcastStandard::atsc1, BroadcastStandard::atsc3,
                                BroadcastStandard::dvb_t, BroadcastStandard::dvb_t2,
                                BroadcastStandard::isdb_t};
constexpr std::array kPolarizations{Polarization::unknown, Polarization::horizontal,
                                    Polarization::vertical, Polarization::elliptical};

}  // namespace

std::string_view to_text(BroadcastStandard standard) {
  switch (standard) {
    case BroadcastStandard::atsc1:
      return "ATSC 1.0";
    case BroadcastStandard::atsc3:
      return "ATSC 3.0";
    case BroadcastStandard::dvb_t:
      return "DVB-T";
    case BroadcastStandard::dvb_t2:
      return "DVB-T2";
    case BroadcastStandard::isdb_t:
      return "ISDB-T";
  }
  return {};
}

Result<BroadcastStandard> parse_broadcast_standard(std::string_view text) {
  return words::parse_choice(text, kStandards, "a broadcast standard");
}

std::string_view to_text(Polarization polarization) {
  switch (polarization) {
    case Polarization::unknown:
      return "unknown";
    case Polarization::horizontal:
      return "horizontal";
    case Polarization::vertical:
      return "vertical";
    case Polarization::elliptical:
      return "elliptical";
  }
  return {};
}

Result<Polarization> parse_polarization(std::string_view text) {
  return words::parse_choice(text, kPolarizations, "a polarization");
}

}  // namespace mastwise
