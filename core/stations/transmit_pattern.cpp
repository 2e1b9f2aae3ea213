#include "core/stations/transmit_pattern.hpp"

#include "core/text/words.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

#include <fmt/format.h>

namespace mastwise {
namespace {

constexpr float kWidestGap_deg = 90.0F;
constexpr double kLeastField = 0.01;  // 40 dB down

std::optional<Error> fault_of(const TransmitPattern::Point& point) {
  if (!(point.azimuth_deg >= 0.0F && point.azimuth_deg <= 360.0F)) {
    return Error{.what = fmt::format("the azimuth {} is not within 0 to 360", point.azimuth_deg)};
  }
  if (!(point.relative_field >= 0.0F && point.relative_field <= 1.0F)) {
    return Error{.what = fmt::format("the relative field {} at {} degrees is not within 0 to 1",
                                     point.relative_field, point.azimuth_deg)};
  }
  return std::nullopt;
}

bool by_azimuth(const TransmitPattern::Point& a, const TransmitPattern::Point& b) {
  return a.azimuth_deg < b.azimuth_deg;
}

std::optional<Error> gap_in(const std::vector<TransmitPattern::Point>& points) {
  for (std::size_t i = 0; i < points.size(); ++i) {
    const bool last = i + 1 == points.size();
    const float next_deg = last ? points[0].azimuth_deg + 360.0F : points[i + 1].azimuth_deg;
    if (next_deg - points[i].azimuth_deg <= kWidestGap_deg) continue;
    return Error{.what = fmt::format("the pattern has no points between {} and {} degrees",
                                     points[i].azimuth_deg, std::fmod(next_deg, 360.0F))};
  }
  return std::nullopt;
}

std::optional<float> number(std::string_view text) {
  float value = 0.0F;
  const auto [rest, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (fault != std::errc() || rest != text.data() + text.size()) return std::nullopt;
  return value;
}

}  // namespace

Result<TransmitPattern> TransmitPattern::from_points(std::vector<Point> points,
                                                     double rotation_deg) {
  if (points.empty()) return Error{.what = "the pattern has no points"};
  if (!std::isfinite(rotation_deg)) return Error{.what = "the pattern's rotation is not a number"};
  for (Point& point : points) {
    if (auto fault = fault_of(point)) return *fault;
    const auto turned = static_cast<float>(fold_circle_deg(point.azimuth_deg + rotation_deg));
    point.azimuth_deg = turned < 360.0F ? turned : 0.0F;
  }
  std::stable_sort(points.begin(), points.end(), by_azimuth);
  std::vector<Point> kept;
  for (const Point& point : points) {
    if (kept.empty() || kept.back().azimuth_deg != point.azimuth_deg) {
      kept.push_back(point);
    } else if (kept.back().relative_field != point.relative_field) {
      return Error{.what = fmt::format("the pattern has the fields {} and {} at {} degrees",
                                       kept.back().relative_field, point.relative_field,
                                       point.azimuth_deg)};
    }
  }
  if (auto gap = gap_in(kept)) return *gap;
  return TransmitPattern(std::move(kept));
}

double TransmitPattern::relative_field(Bearing<True> direction) const {
  const Point wanted{.azimuth_deg = static_cast<float>(direction.degrees())};
  const auto after = std::upper_bound(points_.begin(), points_.end(), wanted, by_azimuth);
  const Point& high = after == points_.end() ? points_.front() : *after;
  const Point& low = after == points_.begin() ? points_.back() : *(after - 1);
  const double gap_deg = fold_circle_deg(double{high.azimuth_deg} - double{low.azimuth_deg});
  const double past_deg = fold_circle_deg(direction.degrees() - double{low.azimuth_deg});
  return low.relative_field + (high.relative_field - low.relative_field) * past_deg / gap_deg;
}

double TransmitPattern::loss_db(Bearing<True> direction) const {
  return -20.0 * std::log10(std::max(relative_field(direction), kLeastField));
}

std::string to_text(const TransmitPattern& pattern) {
  std::string text;
  for (const auto& point : pattern.points()) {
    text +=
        fmt::format("{}{} {}", text.empty() ? "" : "; ", point.azimuth_deg, point.relative_field);
  }
  return text;
}

Result<TransmitPattern> parse_transmit_pattern(std::string_view text) {
  std::vector<TransmitPattern::Point> points;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(';'), text.size());
    const std::string_view one = words::trimmed(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
    if (one.empty()) continue;
    const std::size_t blank = std::min(one.find_first_of(" \t"), one.size());
    const auto azimuth_deg = number(one.substr(0, blank));
    const auto field = number(words::trimmed(one.substr(blank)));
    if (!azimuth_deg || !field) {
      return Error{.what = fmt::format("\"{}\" is not an azimuth and a relative field", one),
                   .remedy = "write the pattern as in \"0 0.85; 10 0.9\""};
    }
    points.push_back({*azimuth_deg, *field});
  }
  return TransmitPattern::from_points(std::move(points));
}

}  // namespace mastwise
