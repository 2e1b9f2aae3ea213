#pragma once

#include <filesystem>
#include <functional>
#include <string>

namespace mastwise::test {

// A raster of codes, as those of land cover.
struct CodesPlan {
  std::string crs = "EPSG:4326";
  int columns, rows;
  double left, top, spacing;  // of the outer edge of the first pixel, in the unit of the crs
  bool two_bytes = false;     // a value; else one
  int void_code = -1;         // declared, if not negative
};

// Code from 0 to 255 by column and row.
using CodeAt = std::function<int(int column, int row)>;

// Writes a GeoTIFF. Fails the test if it cannot.
void write_codes(const std::filesystem::path& path, const CodesPlan& plan, const CodeAt& code);

}  // namespace mastwise::test
