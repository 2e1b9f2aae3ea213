#include "platform/sensor_source.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <optional>
#include <sstream>
#include <vector>

#include <fmt/format.h>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;
using motion::Sample;
using motion::Vector;

using MountMatrix = std::array<double, 9>;  // by rows
constexpr MountMatrix kUnturned{1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0};
constexpr std::array kAxes{"x", "y", "z"};

std::optional<std::string> line_in(const fs::path& file) {
  std::ifstream in(file);
  std::string line;
  if (!std::getline(in, line)) return std::nullopt;
  return line;
}

std::optional<double> number_in(const fs::path& file) {
  std::ifstream in(file);
  in.imbue(std::locale::classic());
  double number = 0.0;
  if (!(in >> number) || !std::isfinite(number)) return std::nullopt;
  return number;
}

// A sensor of three axes in one of the kernel's folders.
struct Sensor {
  Sample::Kind kind;
  fs::path folder;
  std::string name;
  std::string stem;   // of its files: in_accel or in_magn
  double unit = 1.0;  // of the kernel's in ours
  std::array<double, 3> scale{}, offset{};
  MountMatrix mount = kUnturned;

  std::optional<Vector> read() const {
    std::array<double, 3> own{};
    for (std::size_t i = 0; i < kAxes.size(); ++i) {
      const auto raw = number_in(folder / fmt::format("{}_{}_raw", stem, kAxes[i]));
      if (!raw) return std::nullopt;
      own[i] = (*raw + offset[i]) * scale[i] * unit;
    }
    const auto row = [&](std::size_t at) {
      return mount[at] * own[0] + mount[at + 1] * own[1] + mount[at + 2] * own[2];
    };
    return Vector{row(0), row(3), row(6)};
  }
};

// Nine numbers, with commas between those of a row and semicolons between rows.
std::optional<MountMatrix> parse_matrix(std::string text) {
  for (char& c : text) {
    if (c == ',' || c == ';') c = ' ';
  }
  std::istringstream in(text);
  in.imbue(std::locale::classic());
  MountMatrix matrix{};
  for (double& number : matrix) {
    if (!(in >> number) || !std::isfinite(number)) return std::nullopt;
  }
  std::string rest;
  if (in >> rest) return std::nullopt;
  // A rotation: its rows have length one.
  constexpr double kRounded = 0.02;
  for (std::size_t row = 0; row < matrix.size(); row += 3) {
    const double squares = matrix[row] * matrix[row] + matrix[row + 1] * matrix[row + 1] +
                           matrix[row + 2] * matrix[row + 2];
    if (std::fabs(squares - 1.0) > kRounded) return std::nullopt;
  }
  return matrix;
}

// A figure of one axis, or the one for all of them.
std::optional<double> figure(const Sensor& sensor, const char* axis, const char* what) {
  const auto own = number_in(sensor.folder / fmt::format("{}_{}_{}", sensor.stem, axis, what));
  return own ? own : number_in(sensor.folder / fmt::format("{}_{}", sensor.stem, what));
}

// What is wrong with it; empty if it can be used.
std::string complete(Sensor& sensor) {
  for (const char* name : {"_mount_matrix", ""}) {
    const fs::path file =
        sensor.folder / (*name == '\0' ? std::string("in_mount_matrix") : sensor.stem + name);
    const auto text = line_in(file);
    if (!text) continue;
    const auto matrix = parse_matrix(*text);
    if (!matrix) return "its mount matrix is not one";
    sensor.mount = *matrix;
    break;
  }
  for (std::size_t i = 0; i < kAxes.size(); ++i) {
    const auto scale = figure(sensor, kAxes[i], "scale");
    if (!scale || *scale == 0.0)
      return fmt::format("the scale of its {} axis cannot be read", kAxes[i]);
    sensor.scale[i] = *scale;
    sensor.offset[i] = figure(sensor, kAxes[i], "offset").value_or(0.0);
    if (!number_in(sensor.folder / fmt::format("{}_{}_raw", sensor.stem, kAxes[i]))) {
      return fmt::format("its {} axis cannot be read", kAxes[i]);
    }
  }
  return {};
}

// The keyboard half of a folding tablet has an accelerometer, too.
bool in_base(const fs::path& folder) {
  for (const char* file : {"label", "location"}) {
    const auto says = line_in(folder / file);
    if (says && says->find("base") != std::string::npos) return true;
  }
  return false;
}

AxisSensor as_read(Sensor sensor) {
  return {
      .kind = sensor.kind, .name = sensor.name, .where = sensor.folder.string(), .read = [sensor] {
        return sensor.read();
      }};
}

struct Found {
  std::optional<Sensor> sensor;
  std::string lacking;  // why there is none
};

Found find_sensor(const fs::path& devices, Sample::Kind kind) {
  const bool field = kind == Sample::Kind::field;
  constexpr double kMicroteslasInGauss = 100.0;
  Found found{.sensor = {}, .lacking = field ? "no magnetometer" : "no accelerometer"};
  std::error_code failed;
  std::vector<fs::path> folders;
  for (const auto& entry : fs::directory_iterator(devices, failed)) folders.push_back(entry.path());
  std::sort(folders.begin(), folders.end());
  for (const fs::path& folder : folders) {
    Sensor sensor{.kind = kind,
                  .folder = folder,
                  .name = line_in(folder / "name").value_or(folder.filename().string()),
                  .stem = field ? "in_magn" : "in_accel",
                  .unit = field ? kMicroteslasInGauss : 1.0};
    const auto has = [&](const char* axis) {
      return fs::exists(folder / fmt::format("{}_{}_raw", sensor.stem, axis), failed);
    };
    if (std::none_of(kAxes.begin(), kAxes.end(), has) || in_base(folder)) continue;
    const std::string wrong = complete(sensor);
    if (wrong.empty()) return {.sensor = std::move(sensor), .lacking = {}};
    found.lacking = fmt::format("{} is not used: {}", sensor.name, wrong);
  }
  return found;
}

}  // namespace

OpenSource tablet_sensor_source(TabletSystem system) {
  return [system]() -> Result<std::unique_ptr<ByteSource>> {
    const fs::path devices = fs::path(system.root) / "sys/bus/iio/devices";
    Found level = find_sensor(devices, Sample::Kind::acceleration);
    if (!level.sensor) {
      return Error{
          .what = level.lacking, .where = devices.string(), .remedy = "use a compass in the hand"};
    }
    std::string name = level.sensor->name;
    std::vector<AxisSensor> sensors{as_read(*std::move(level.sensor))};
    if (system.field_wanted) {
      Found compass = find_sensor(devices, Sample::Kind::field);
      name += compass.sensor ? ", " + compass.sensor->name : "; " + compass.lacking;
      if (compass.sensor) sensors.push_back(as_read(*std::move(compass.sensor)));
    }
    return sensor_source(std::move(sensors), std::move(name), system);
  };
}

}  // namespace mastwise::platform
