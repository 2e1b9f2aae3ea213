#include "core/reception/path_picture.hpp"
#include "core/reception/survey.hpp"
#include "tests/core/reception/invented_country.hpp"
#include "tests/support/reference.hpp"

#include <cmath>
#include <iostream>

#include <catch2/catch.hpp>

namespace mastwise::reception {

namespace {

// Figures of the regulator's table: reference data, README.
Station real(std::string call_sign, int channel, double latitude_deg, double longitude_deg,
             double amsl_m, double haat_m, double erp_kw) {
  Station station =
      test::transmitter(*Position::at_deg(latitude_deg, longitude_deg), channel, amsl_m, erp_kw);
  station.call_sign = std::move(call_sign);
  station.haat_m = haat_m;
  station.polarization = Polarization::unknown;
  return station;
}

}  // namespace

TEST_CASE("two real stations over real ground have plausible fields") {
  const auto tile_path = test::reference("terrain/N44W072.hgt");
  if (!tile_path) return;
  terrain::TileSet tiles;
  tiles.add(test::read_tile(*tile_path, {44, -72}));
  Receiver receiver = test::roof_antenna();
  receiver.position = *Position::at_deg(44.435217, -71.675993);
  const auto list = survey(receiver,
                           {real("WLED-TV", 23, 44.352778, -71.736944, 744.2, 390.8, 65.4),
                            real("WVTB", 28, 44.571111, -71.893611, 1022.4, 590.0, 84.1)},
                           tiles);
  REQUIRE(list.size() == 2);
  Scratch scratch;
  for (const Prospect& prospect : list) {
    const Outlook& outlook = prospect.outlook;
    std::cout << prospect.station.call_sign << " RF " << prospect.station.rf_channel.number << ", "
              << outlook.distance_m / 1000.0 << " km at " << outlook.bearing.degrees()
              << " degrees: P.1812 " << *outlook.field_p1812_dbuvm << ", ITM "
              << *outlook.field_itm_dbuvm << " dBuV/m, margin " << *outlook.margin_db << " dB, "
              << *outlook.chance_percent << " %, " << to_text(chance_word(*outlook.chance_percent))
              << "\n";
    for (const Reason& reason : prospect.reasons) {
      std::cout << "  " << reason.decibel << " dB: " << to_text(reason.kind()) << "\n";
    }
    CHECK(outlook.mode == PathMode::point_to_point);
    CHECK(outlook.terrain_coverage == 1.0);
    // No field exceeds free space by more than the few decibels of a reflection.
    const double free_dbuvm = 106.92 + 10.0 * std::log10(*prospect.station.erp_kw) -
                              20.0 * std::log10(outlook.distance_m / 1000.0);
    CHECK(*outlook.field_p1812_dbuvm <= free_dbuvm + 0.1);
    CHECK(*outlook.field_itm_dbuvm <= free_dbuvm + 6.0);
    const auto picture = path_picture(receiver, prospect, tiles, 200, scratch);
    REQUIRE(picture);
    CHECK(picture->obstacles.size() == outlook.obstacles.size());
  }
  const auto find = [&](std::string_view call_sign) {
    return list[list[0].station.call_sign == call_sign ? 0 : 1].outlook;
  };
  // Geodesics of the reference data.
  CHECK(find("WLED-TV").distance_m == Approx(10368.18).margin(0.5));
  CHECK(find("WLED-TV").bearing.degrees() == Approx(207.950).margin(0.01));
  CHECK(find("WVTB").distance_m == Approx(22968.18).margin(0.5));
  CHECK(find("WVTB").bearing.degrees() == Approx(311.183).margin(0.01));
}

}  // namespace mastwise::reception
