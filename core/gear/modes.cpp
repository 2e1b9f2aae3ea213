#include "core/gear/modes.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

namespace mastwise::gear {
namespace {

constexpr Mode dvb_t(std::string_view name, double gaussian, double ricean, double rayleigh) {
  return {.standard = BroadcastStandard::dvb_t,
          .name = name,
          .gaussian_cn_db = gaussian,
          .ricean_cn_db = ricean,
          .rayleigh_cn_db = rayleigh,
          .implementation_margin_db = 3.0,  // GE06 planning, from memory
          .basis = Basis::from_memory,
          .echoes_basis = Basis::from_memory,
          .source = "EN 300 744, annex A, simulated performance"};
}

// The Report's figures are for planning: they include the receiver's losses, from memory.
constexpr Mode dvb_t2(std::string_view name, double gaussian, double ricean, double rayleigh) {
  return {.standard = BroadcastStandard::dvb_t2,
          .name = name,
          .gaussian_cn_db = gaussian,
          .ricean_cn_db = ricean,
          .rayleigh_cn_db = rayleigh,
          .implementation_margin_db = 0.0,
          .basis = Basis::published,
          .echoes_basis = Basis::published,
          .source = "ITU-R BT.2033-2, table 2"};
}

// Echoes cost as much as in DVB-T with the same modulation and code.
constexpr Mode isdb_t(std::string_view name, double gaussian, double ricean, double rayleigh) {
  return {.standard = BroadcastStandard::isdb_t,
          .name = name,
          .gaussian_cn_db = gaussian,
          .ricean_cn_db = ricean,
          .rayleigh_cn_db = rayleigh,
          .implementation_margin_db = 3.0,  // Japanese link budgets, from memory
          .basis = Basis::from_memory,
          .echoes_basis = Basis::common_practice,
          .source = "ARIB STD-B31, required C/N; echoes as in EN 300 744"};
}

// Good to about 1.5 dB: near the Shannon limit by the usual gap of such codes.
constexpr Mode atsc3(std::string_view name, double gaussian, double ricean, double rayleigh) {
  return {.standard = BroadcastStandard::atsc3,
          .name = name,
          .gaussian_cn_db = gaussian,
          .ricean_cn_db = ricean,
          .rayleigh_cn_db = rayleigh,
          .implementation_margin_db = 1.0,  // common practice, no source
          .basis = Basis::common_practice,
          .echoes_basis = Basis::common_practice,
          .source = "common practice, no source, to 1.5 dB"};
}

// The threshold as measured with receivers; echoes from memory of field tests.
constexpr std::array kAtsc1{
    Mode{.standard = BroadcastStandard::atsc1,
         .name = "8-VSB",
         .gaussian_cn_db = 15.19,
         .ricean_cn_db = 15.7,
         .rayleigh_cn_db = 18.2,
         .implementation_margin_db = 0.0,
         .basis = Basis::published,
         .echoes_basis = Basis::common_practice,
         .source = "FCC OET Bulletin 69, 15.19 dB; echoes common practice, no source"}};

constexpr std::array kAtsc3{
    atsc3("QPSK 2/15", -6.2, -6.0, -5.2),    atsc3("QPSK 4/15", -2.9, -2.7, -1.9),
    atsc3("QPSK 6/15", -0.5, -0.2, 1.5),     atsc3("QPSK 8/15", 1.2, 1.5, 3.2),
    atsc3("QPSK 10/15", 2.8, 3.2, 5.3),      atsc3("QPSK 12/15", 4.5, 5.0, 8.0),
    atsc3("QPSK 13/15", 5.5, 6.1, 10.0),     atsc3("16QAM 4/15", 1.5, 1.7, 2.5),
    atsc3("16QAM 6/15", 4.2, 4.5, 6.2),      atsc3("16QAM 8/15", 6.3, 6.6, 8.3),
    atsc3("16QAM 10/15", 8.4, 8.8, 10.9),    atsc3("16QAM 12/15", 10.6, 11.1, 14.1),
    atsc3("16QAM 13/15", 11.8, 12.4, 16.3),  atsc3("64QAM 6/15", 7.1, 7.4, 9.1),
    atsc3("64QAM 8/15", 9.9, 10.2, 11.9),    atsc3("64QAM 10/15", 12.7, 13.1, 15.2),
    atsc3("64QAM 12/15", 15.6, 16.1, 19.1),  atsc3("64QAM 13/15", 17.0, 17.6, 21.5),
    atsc3("256QAM 6/15", 9.9, 10.2, 11.9),   atsc3("256QAM 7/15", 11.8, 12.1, 13.8),
    atsc3("256QAM 8/15", 13.5, 13.8, 15.5),  atsc3("256QAM 9/15", 15.2, 15.6, 17.7),
    atsc3("256QAM 10/15", 16.9, 17.3, 19.4), atsc3("256QAM 11/15", 18.7, 19.2, 22.2),
    atsc3("256QAM 12/15", 20.5, 21.0, 24.0), atsc3("256QAM 13/15", 22.5, 23.1, 27.0)};

constexpr std::array kDvbT{
    dvb_t("QPSK 1/2", 3.1, 3.6, 5.4),     dvb_t("QPSK 2/3", 4.9, 5.7, 8.4),
    dvb_t("QPSK 3/4", 5.9, 6.8, 10.7),    dvb_t("QPSK 5/6", 6.9, 8.0, 13.1),
    dvb_t("QPSK 7/8", 7.7, 8.7, 16.3),    dvb_t("16QAM 1/2", 8.8, 9.6, 11.2),
    dvb_t("16QAM 2/3", 11.1, 11.6, 14.2), dvb_t("16QAM 3/4", 12.5, 13.0, 16.7),
    dvb_t("16QAM 5/6", 13.5, 14.4, 19.3), dvb_t("16QAM 7/8", 13.9, 15.0, 22.8),
    dvb_t("64QAM 1/2", 14.4, 14.7, 16.0), dvb_t("64QAM 2/3", 16.5, 17.1, 19.3),
    dvb_t("64QAM 3/4", 18.0, 18.6, 21.7), dvb_t("64QAM 5/6", 19.3, 20.0, 25.3),
    dvb_t("64QAM 7/8", 20.1, 21.0, 27.9)};
constexpr std::array kDvbT2{
    dvb_t2("QPSK 1/2", 2.4, 2.6, 3.4),      dvb_t2("QPSK 2/3", 4.5, 4.8, 6.3),
    dvb_t2("QPSK 5/6", 6.6, 7.0, 9.3),      dvb_t2("16QAM 1/2", 7.6, 7.8, 9.1),
    dvb_t2("16QAM 2/3", 10.3, 10.5, 12.2),  dvb_t2("16QAM 5/6", 12.7, 13.1, 15.9),
    dvb_t2("64QAM 1/2", 11.9, 12.2, 14.0),  dvb_t2("64QAM 2/3", 15.1, 15.4, 17.2),
    dvb_t2("64QAM 5/6", 18.2, 18.7, 21.8),  dvb_t2("256QAM 1/2", 15.9, 16.3, 18.3),
    dvb_t2("256QAM 3/5", 18.2, 18.4, 20.5), dvb_t2("256QAM 2/3", 19.7, 20.0, 22.1),
    dvb_t2("256QAM 3/4", 21.7, 22.0, 24.6), dvb_t2("256QAM 5/6", 23.9, 24.4, 28.0)};
constexpr std::array kIsdbT{
    isdb_t("QPSK 1/2", 4.9, 5.4, 7.2),     isdb_t("QPSK 2/3", 6.6, 7.4, 10.1),
    isdb_t("QPSK 3/4", 7.5, 8.4, 12.3),    isdb_t("QPSK 5/6", 8.5, 9.6, 14.7),
    isdb_t("QPSK 7/8", 9.1, 10.1, 17.7),   isdb_t("16QAM 1/2", 11.5, 12.3, 13.9),
    isdb_t("16QAM 2/3", 13.5, 14.0, 16.6), isdb_t("16QAM 3/4", 14.6, 15.1, 18.8),
    isdb_t("16QAM 5/6", 15.6, 16.5, 21.4), isdb_t("16QAM 7/8", 16.2, 17.3, 25.1),
    isdb_t("64QAM 1/2", 16.5, 16.8, 18.1), isdb_t("64QAM 2/3", 18.7, 19.3, 21.5),
    isdb_t("64QAM 3/4", 20.1, 20.7, 23.8), isdb_t("64QAM 5/6", 21.3, 22.0, 27.3),
    isdb_t("64QAM 7/8", 22.0, 22.9, 29.8)};

template <std::size_t kCount>
const Mode& named(const std::array<Mode, kCount>& modes, std::string_view name) {
  const auto found =
      std::find_if(modes.begin(), modes.end(), [&](const Mode& mode) { return mode.name == name; });
  return found == modes.end() ? modes.front() : *found;
}

}  // namespace

double Mode::required_cn_db(ChannelKind channel) const {
  const double figure_db = channel == ChannelKind::gaussian ? gaussian_cn_db
                           : channel == ChannelKind::ricean ? ricean_cn_db
                                                            : rayleigh_cn_db;
  return figure_db + implementation_margin_db;
}

std::span<const Mode> modes(BroadcastStandard standard) {
  switch (standard) {
    case BroadcastStandard::atsc1:
      return kAtsc1;
    case BroadcastStandard::atsc3:
      return kAtsc3;
    case BroadcastStandard::dvb_t:
      return kDvbT;
    case BroadcastStandard::dvb_t2:
      return kDvbT2;
    case BroadcastStandard::isdb_t:
      return kIsdbT;
  }
  return {};
}

const Mode& default_mode(BroadcastStandard standard) {
  switch (standard) {
    case BroadcastStandard::atsc1:
      return kAtsc1.front();
    case BroadcastStandard::atsc3:
      return named(kAtsc3, "256QAM 9/15");
    case BroadcastStandard::dvb_t:
      return named(kDvbT, "64QAM 2/3");
    case BroadcastStandard::dvb_t2:
      return named(kDvbT2, "256QAM 2/3");
    case BroadcastStandard::isdb_t:
      return named(kIsdbT, "64QAM 3/4");
  }
  return kAtsc1.front();
}

double noise_bandwidth_hz(BroadcastStandard standard, double channel_bandwidth_mhz) {
  const double part_of_channel = [&] {
    switch (standard) {
      case BroadcastStandard::atsc1:
        return 1.0;
      case BroadcastStandard::atsc3:
        return 5.83 / 6.0;
      case BroadcastStandard::dvb_t:
        return 7.61 / 8.0;
      case BroadcastStandard::dvb_t2:
        return 7.71 / 8.0;
      case BroadcastStandard::isdb_t:
        return 5.57 / 6.0;
    }
    return 1.0;
  }();
  return part_of_channel * channel_bandwidth_mhz * 1e6;
}

}  // namespace mastwise::gear
