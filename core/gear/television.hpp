#pragma once

#include "core/result.hpp"
#include "core/stations/station.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>

// What the TV behind the antenna can decode.
namespace mastwise::gear {

enum class Decoder : std::uint8_t {
  atsc1,
  atsc3,            // in the clear
  atsc3_encrypted,  // with its decryption
  dvb_t,
  dvb_t2,
  dvb_t2_hevc,  // with pictures in HEVC
  isdb_t,
};
inline constexpr std::array kDecoders{Decoder::atsc1, Decoder::atsc3,  Decoder::atsc3_encrypted,
                                      Decoder::dvb_t, Decoder::dvb_t2, Decoder::dvb_t2_hevc,
                                      Decoder::isdb_t};

// "ATSC 1.0", "ATSC 3.0", "ATSC 3.0 encrypted", "DVB-T", "DVB-T2", "DVB-T2 HEVC", "ISDB-T".
std::string_view to_text(Decoder decoder);

// The decoders of a TV. A TV that decrypts ATSC 3.0 also has it in the clear, and one with HEVC has
// DVB-T2.
class DecoderSet {
 public:
  DecoderSet() = default;
  DecoderSet(std::initializer_list<Decoder> decoders) {
    for (const Decoder decoder : decoders) add(decoder);
  }

  bool has(Decoder decoder) const { return (bits_ & bit(decoder)) != 0; }
  bool empty() const { return bits_ == 0; }
  // Adds it with the one it needs.
  void add(Decoder decoder);
  // Removes it with the one that needs it.
  void remove(Decoder decoder);
  bool operator==(const DecoderSet&) const = default;

 private:
  static constexpr std::uint8_t bit(Decoder decoder) {
    return static_cast<std::uint8_t>(1U << static_cast<unsigned>(decoder));
  }
  std::uint8_t bits_ = 0;
};

// "ATSC 1.0, ATSC 3.0"; "nothing" without any.
std::string to_text(const DecoderSet& decoders);

// Decoders from a list of their names, separated by commas; ignores case. The error lists the
// names.
Result<DecoderSet> parse_decoders(std::string_view text);

// What a TV sold where the channel plan is used decodes, if nothing else is known: ATSC 1.0;
// DVB-T and DVB-T2 with HEVC in Europe; DVB-T in Australia; ISDB-T in Japan and Brazil [common
// practice, no source].
DecoderSet usual_decoders(Raster raster);

// Whether the TV can show a station whose signal is good.
enum class Decoding : std::uint8_t {
  possible,
  may_be_encrypted,  // ATSC 3.0 on a TV without decryption: no table says which are encrypted
  may_need_hevc,     // DVB-T2 on a TV without HEVC: no table says which need it
  standard_unknown,  // the TV lacks the usual standard, and the table names none
  impossible,
};
inline constexpr std::size_t kDecodings = 5;
// "possible", "may_be_encrypted", ...
std::string_view to_text(Decoding decoding);

// `decoders`: of the TV; if unknown, the usual ones of the station's channel plan. `assumed`: the
// standard to assume if the table names none.
Decoding decoding(const std::optional<DecoderSet>& decoders, const Station& station,
                  BroadcastStandard assumed);

}  // namespace mastwise::gear
