#include "tests/support/made_raster.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include <catch2/catch.hpp>
#include <gdal_priv.h>
#include <ogr_spatialref.h>

namespace mastwise::test {

void write_codes(const std::filesystem::path& path, const CodesPlan& plan, const CodeAt& code) {
  GDALAllRegister();
  GDALDataset* const dataset = GetGDALDriverManager()->GetDriverByName("GTiff")->Create(
      path.string().c_str(), plan.columns, plan.rows, 1, plan.two_bytes ? GDT_Int16 : GDT_Byte,
      nullptr);
  REQUIRE(dataset != nullptr);
  OGRSpatialReference crs;
  REQUIRE(crs.SetFromUserInput(plan.crs.c_str()) == OGRERR_NONE);
  crs.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
  dataset->SetSpatialRef(&crs);
  std::array<double, 6> place = {plan.left, plan.spacing, 0.0, plan.top, 0.0, -plan.spacing};
  dataset->SetGeoTransform(place.data());
  GDALRasterBand& band = *dataset->GetRasterBand(1);
  if (plan.void_code >= 0) band.SetNoDataValue(plan.void_code);
  std::vector<std::uint8_t> line(static_cast<std::size_t>(plan.columns));
  for (int row = 0; row < plan.rows; ++row) {
    for (int column = 0; column < plan.columns; ++column) {
      line[static_cast<std::size_t>(column)] = static_cast<std::uint8_t>(code(column, row));
    }
    REQUIRE(band.RasterIO(GF_Write, 0, row, plan.columns, 1, line.data(), plan.columns, 1, GDT_Byte,
                          0, 0, nullptr) == CE_None);
  }
  GDALClose(dataset);
}

}  // namespace mastwise::test
