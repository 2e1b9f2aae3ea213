#include "tests/core/reception/invented_country.hpp"

#include "core/geo/geodesic.hpp"

#include <cmath>
#include <utility>

namespace mastwise::test {

terrain::TileSet country(int cells, const HeightAt& height_m) {
  terrain::TileSet tiles;
  for (int i = 0; i < cells; ++i) {
    tiles.add(made_tile({44 + i, -101}, terrain::Tile::kSide3ArcSeconds, height_m));
  }
  return tiles;
}

HeightAt flat(double height_m) {
  return [height_m](double, double) { return height_m; };
}

HeightAt hills() {
  return [](double latitude_deg, double longitude_deg) {
    const double north_km = 111.2 * (latitude_deg - 44.0);
    const double east_km = 80.0 * (longitude_deg + 100.5);
    return 300.0 + 26.0 * std::sin(north_km / 5.1) + 21.0 * std::sin(north_km / 2.3 + east_km) +
           18.0 * std::sin(north_km / 0.9 + 1.0) + 10.0 * std::sin(north_km / 0.37);
  };
}

HeightAt one_ridge() {
  const double row = std::round(1200.0 * north_of_stop(12e3).latitude_deg());
  return [row](double latitude_deg, double) {
    return std::fabs(1200.0 * latitude_deg - row) < 0.5 ? 600.0 : 200.0;
  };
}

Position stop_position() {
  return *Position::at_deg(44.01, -100.5);
}

Position north_of_stop(double distance_m) {
  return destination(stop_position(), Bearing<True>::degrees(0.0), distance_m);
}

Station transmitter(Position position, int rf_channel, double antenna_amsl_m, double erp_kw) {
  return Station{.id = "test",
                 .call_sign = "QTST",
                 .rf_channel = {rf_channel},
                 .standard = BroadcastStandard::atsc1,
                 .position = position,
                 .antenna_amsl_m = antenna_amsl_m,
                 .erp_kw = erp_kw,
                 .polarization = Polarization::horizontal,
                 .directional = false};
}

Station named_station(std::string call_sign, double distance_m, double bearing_deg, int rf_channel,
                      double erp_kw) {
  Station station =
      transmitter(destination(stop_position(), Bearing<True>::degrees(bearing_deg), distance_m),
                  rf_channel, 500.0, erp_kw);
  station.call_sign = std::move(call_sign);
  return station;
}

reception::Receiver roof_antenna() {
  return {.position = stop_position(), .gear = gear::presets().front()};
}

reception::Receiver with_pattern(gear::Pattern pattern, double heading_error_deg) {
  reception::Receiver receiver = roof_antenna();
  receiver.gear.amplifier.reset();
  receiver.gear.antenna.uhf = {6.0, std::move(pattern)};
  receiver.heading_error_deg = heading_error_deg;
  return receiver;
}

}  // namespace mastwise::test
