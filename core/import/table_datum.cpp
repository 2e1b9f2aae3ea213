#include "core/import/table_datum.hpp"

#include "core/text/words.hpp"

#include <array>
#include <cmath>

#include <fmt/format.h>
#include <proj.h>

namespace mastwise {
namespace {

constexpr std::array kDatums{Datum::wgs84, Datum::nad83, Datum::nad27};

using Definition = std::unique_ptr<PJ, decltype(&proj_destroy)>;

Definition definition(PJ_CONTEXT* context, const char* code) {
  return Definition(proj_create(context, code), &proj_destroy);
}

// PROJ applies one of its operations even outside the areas of all of them.
bool in_area_of_last_operation(PJ_CONTEXT* context, PJ* shift, const Position& position) {
  const Definition used(proj_trans_get_last_used_operation(shift), &proj_destroy);
  double west = 0.0, south = 0.0, east = 0.0, north = 0.0;
  if (!used || !proj_get_area_of_use(context, used.get(), &west, &south, &east, &north, nullptr)) {
    return false;
  }
  const double latitude_deg = position.latitude_deg();
  const double longitude_deg = position.longitude_deg();
  const bool within_longitudes = west <= east ? longitude_deg >= west && longitude_deg <= east
                                              : longitude_deg >= west || longitude_deg <= east;
  return within_longitudes && latitude_deg >= south && latitude_deg <= north;
}

}  // namespace

std::string_view to_text(Datum datum) {
  switch (datum) {
    case Datum::wgs84:
      return "WGS84";
    case Datum::nad83:
      return "NAD83";
    case Datum::nad27:
      return "NAD27";
  }
  return {};
}

Result<Datum> parse_datum(std::string_view text) {
  return words::parse_choice(text, kDatums, "a datum");
}

void DatumShift::ContextCloser::operator()(PJ_CONTEXT* context) const {
  proj_context_destroy(context);
}

void DatumShift::ShiftCloser::operator()(PJ* shift) const {
  proj_destroy(shift);
}

Result<DatumShift> DatumShift::to_wgs84(Datum from) {
  DatumShift result(from);
  if (from == Datum::wgs84) return result;

  PJ_CONTEXT* context = proj_context_create();
  result.context_.reset(context);
  proj_log_level(context, PJ_LOG_NONE);
  proj_context_set_enable_network(context, 0);
  const auto source = definition(context, from == Datum::nad83 ? "EPSG:4269" : "EPSG:4267");
  const auto target = definition(context, "EPSG:4326");
  // A "ballpark" shift leaves the numbers unchanged: harmless for NAD83, wrong for NAD27.
  const char* const options[] = {from == Datum::nad83 ? "ALLOW_BALLPARK=YES" : "ALLOW_BALLPARK=NO",
                                 nullptr};
  if (source && target) {
    result.shift_.reset(
        proj_create_crs_to_crs_from_pj(context, source.get(), target.get(), nullptr, options));
  }
  if (!result.shift_) {
    return Error{.what = fmt::format("no known conversion from {} to WGS84", to_text(from)),
                 .remedy = "install PROJ's data files (proj.db)"};
  }
  return result;
}

Result<Position> DatumShift::shift(double latitude_deg, double longitude_deg) const {
  auto position = Position::at_deg(latitude_deg, longitude_deg);
  if (!position || !shift_) return position;
  // EPSG's axis order for these systems: latitude, then longitude.
  const PJ_COORD shifted =
      proj_trans(shift_.get(), PJ_FWD,
                 proj_coord(position->latitude_deg(), position->longitude_deg(), 0.0, HUGE_VAL));
  const bool known =
      std::isfinite(shifted.v[0]) && std::isfinite(shifted.v[1]) &&
      (from_ == Datum::nad83 || in_area_of_last_operation(context_.get(), shift_.get(), *position));
  if (!known) {
    return Error{.what = fmt::format("no known conversion from {} to WGS84 at {}, {}",
                                     to_text(from_), latitude_deg, longitude_deg),
                 .remedy = "give the coordinates on WGS84 or NAD83"};
  }
  return Position::at_deg(shifted.v[0], shifted.v[1]);
}

}  // namespace mastwise
