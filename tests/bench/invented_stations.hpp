#pragma once

#include <cstddef>
#include <random>
#include <string>

#include <fmt/format.h>

namespace mastwise::bench {

inline std::string call_sign(std::size_t number) {
  std::string text = "Q";
  for (int i = 0; i < 4; ++i, number /= 26) text += static_cast<char>('A' + number % 26);
  return text;
}

// Stations scattered over a continent, in Mastwise's format.
inline std::string invented_csv(std::size_t count) {
  const char* networks[] = {"Basin Public", "Northlight", "Lodestone", "Harrow", "Wayside"};
  std::mt19937 random(7);
  std::uniform_real_distribution<double> latitude(25.0, 49.0), longitude(-124.0, -68.0);
  std::string text =
      "call_sign,raster,rf_channel,latitude_deg,longitude_deg,antenna_amsl_m,erp_kw,network,city,"
      "programs\n";
  for (std::size_t i = 0; i < count; ++i) {
    const char* network = networks[i % 5];
    text +=
        fmt::format("{},ATSC,{},{:.6f},{:.6f},{},{},{},Town {},{}.1|{}|{};{}.2|Old Trails\n",
                    call_sign(i), 2 + i % 35, latitude(random), longitude(random), 100 + i % 900,
                    1 + i % 500, network, i % 4000, 2 + i % 60, network, network, 2 + i % 60);
  }
  return text;
}

}  // namespace mastwise::bench
