#include "core/map/borders.hpp"

#include "core/geo/circle_boxes.hpp"

#include <algorithm>
#include <optional>
#include <string_view>

#include <fmt/format.h>

namespace mastwise::map {
namespace {

constexpr double kStepsPerDegree = 1000.0;
constexpr std::string_view kMagic = "MWBORDR1";
constexpr std::size_t kHeaderBytes = 16, kRowBytes = 22;

struct Row {
  LineKind kind;
  std::uint8_t points;
  std::uint32_t start;  // index into the steps
  // In whole steps.
  std::int32_t west, south, east, north;
};

Error damaged(std::string what) {
  return {.what = "the borders are damaged: " + std::move(what),
          .remedy = "install Mastwise again"};
}

std::uint32_t number_at(std::span<const std::byte> bytes, std::size_t at) {
  std::uint32_t value = 0;
  for (std::size_t i = 0; i < 4; ++i)
    value |= std::to_integer<std::uint32_t>(bytes[at + i]) << 8 * i;
  return value;
}

Row row_at(std::span<const std::byte> bytes, std::size_t at) {
  const auto edge = [&](std::size_t i) {
    return static_cast<std::int32_t>(number_at(bytes, at + 6 + 4 * i));
  };
  return {.kind = static_cast<LineKind>(bytes[at]),
          .points = std::to_integer<std::uint8_t>(bytes[at + 1]),
          .start = number_at(bytes, at + 2),
          .west = edge(0),
          .south = edge(1),
          .east = edge(2),
          .north = edge(3)};
}

// Reads steps of variable length: seven bits a byte, lowest first, the sign in the lowest bit.
class Steps {
 public:
  explicit Steps(std::span<const std::byte> bytes) : bytes_(bytes) {}

  // std::nullopt at the end and for a step that is too long.
  std::optional<std::int32_t> next() {
    constexpr unsigned kMostBits = 28;
    std::uint32_t value = 0;
    for (unsigned shift = 0; shift < kMostBits && !bytes_.empty(); shift += 7) {
      const auto byte = std::to_integer<std::uint32_t>(bytes_.front());
      bytes_ = bytes_.subspan(1);
      value |= (byte & 0x7F) << shift;
      if (byte < 0x80) return static_cast<std::int32_t>(value >> 1 ^ (0U - (value & 1)));
    }
    return std::nullopt;
  }

 private:
  std::span<const std::byte> bytes_;
};

struct Touch {
  double west, south, east, north;

  explicit Touch(const Box& box)
      : west(box.west_deg * kStepsPerDegree),
        south(box.south_deg * kStepsPerDegree),
        east(box.east_deg * kStepsPerDegree),
        north(box.north_deg * kStepsPerDegree) {}
  bool operator()(const Row& row) const {
    return row.east >= west && row.west <= east && row.north >= south && row.south <= north;
  }
};

// The runs of a line's points that are on the map.
void add_on_plane(const BorderLine& line, const Projection& projection,
                  std::vector<PlaneLine>& lines) {
  PlaneLine run{line.kind, {}};
  const auto end_run = [&] {
    if (run.points.size() > 1) lines.push_back(run);
    run.points.clear();
  };
  for (const Position& position : line.points) {
    if (const auto point = projection.to_plane(position)) {
      run.points.push_back(*point);
    } else {
      end_run();
    }
  }
  end_run();
}

}  // namespace

struct Borders::Data {
  std::vector<Row> rows;
  std::vector<std::byte> steps;

  // std::nullopt if the steps end too early or leave the earth or the row's box.
  std::optional<BorderLine> line(const Row& row) const {
    BorderLine line{row.kind, {}};
    line.points.reserve(row.points);
    Steps from(std::span<const std::byte>(steps).subspan(row.start));
    std::int32_t x = 0, y = 0;
    for (int i = 0; i < row.points; ++i) {
      const auto east = from.next(), north = from.next();
      if (!east || !north) return std::nullopt;
      x += *east;
      y += *north;
      if (x < row.west || x > row.east || y < row.south || y > row.north) return std::nullopt;
      const auto position = Position::at_deg(y / kStepsPerDegree, x / kStepsPerDegree);
      if (!position) return std::nullopt;
      line.points.push_back(*position);
    }
    return line;
  }
};

Result<Borders> Borders::load(std::span<const std::byte> bytes) {
  const auto is_magic = [&] {
    return std::equal(kMagic.begin(), kMagic.end(), bytes.begin(),
                      [](char c, std::byte byte) { return static_cast<std::byte>(c) == byte; });
  };
  if (bytes.size() < kHeaderBytes || !is_magic()) return damaged("not a borders file");
  const std::size_t rows = number_at(bytes, 8), steps = number_at(bytes, 12);
  const std::size_t wanted = kHeaderBytes + rows * kRowBytes + steps;
  if (bytes.size() != wanted) {
    return damaged(fmt::format("{} bytes instead of {}", bytes.size(), wanted));
  }
  auto data = std::make_shared<Data>();
  const auto body = bytes.last(steps);
  data->steps.assign(body.begin(), body.end());
  data->rows.reserve(rows);
  constexpr std::int32_t kMostWest = 180'000, kMostNorth = 90'000;
  for (std::size_t i = 0; i < rows; ++i) {
    const Row row = row_at(bytes, kHeaderBytes + i * kRowBytes);
    const bool sound = row.kind <= LineKind::LakeShore && row.points >= 2 && row.start < steps &&
                       -kMostWest <= row.west && row.east <= kMostWest &&
                       -kMostNorth <= row.south && row.north <= kMostNorth && data->line(row);
    if (!sound) return damaged(fmt::format("line {} cannot be read", i));
    data->rows.push_back(row);
  }
  return Borders(std::move(data));
}

std::vector<BorderLine> Borders::within(Position center, double radius_m) const {
  std::vector<BorderLine> lines;
  std::vector<Touch> touches;
  for (const Box& box : boxes_around(center, radius_m)) touches.emplace_back(box);
  for (const Row& row : data_->rows) {
    const bool touched =
        std::any_of(touches.begin(), touches.end(), [&](const Touch& touch) { return touch(row); });
    if (touched) lines.push_back(*data_->line(row));
  }
  return lines;
}

std::vector<PlaneLine> Borders::on_plane(const Projection& projection, double radius_m) const {
  std::vector<PlaneLine> lines;
  for (const BorderLine& line : within(projection.center(), radius_m)) {
    add_on_plane(line, projection, lines);
  }
  return lines;
}

}  // namespace mastwise::map
