#include "platform/objects_windows.hpp"
#include "platform/sensor_source.hpp"
#include "platform/system_windows.hpp"

#include <array>
#include <utility>

// objects_windows.hpp comes first; the keys and classes of the others are defined here.
#include <initguid.h>
#include <oleauto.h>
#include <propidl.h>
#include <propkeydef.h>
#include <sensors.h>
#include <sensorsapi.h>

namespace mastwise::platform {
namespace {

using motion::Sample;
using motion::Vector;

// Members go from the last to the first.
struct OpenSensor {
  std::shared_ptr<ObjectUse> use;
  Owned<ISensor> sensor;
};

struct Type {
  Sample::Kind kind;
  const GUID& type;
  std::array<PROPERTYKEY, 3> axes;
  const char* lacking;
};

const Type& type_of(Sample::Kind kind) {
  static const Type acceleration{
      Sample::Kind::acceleration,
      SENSOR_TYPE_ACCELEROMETER_3D,
      {SENSOR_DATA_TYPE_ACCELERATION_X_G, SENSOR_DATA_TYPE_ACCELERATION_Y_G,
       SENSOR_DATA_TYPE_ACCELERATION_Z_G},
      "no accelerometer"};
  static const Type field{Sample::Kind::field,
                          SENSOR_TYPE_COMPASS_3D,
                          {SENSOR_DATA_TYPE_MAGNETIC_FIELD_STRENGTH_X_MILLIGAUSS,
                           SENSOR_DATA_TYPE_MAGNETIC_FIELD_STRENGTH_Y_MILLIGAUSS,
                           SENSOR_DATA_TYPE_MAGNETIC_FIELD_STRENGTH_Z_MILLIGAUSS},
                          "no magnetometer"};
  return kind == Sample::Kind::field ? field : acceleration;
}

std::optional<double> number(const PROPVARIANT& value) {
  if (value.vt == VT_R8) return value.dblVal;
  if (value.vt == VT_R4) return static_cast<double>(value.fltVal);
  return std::nullopt;
}

std::optional<Vector> read_axes(ISensor& sensor, const Type& type) {
  ISensorDataReport* given = nullptr;
  if (FAILED(sensor.GetData(&given))) return std::nullopt;
  const Owned<ISensorDataReport> report(given);
  std::array<double, 3> axes{};
  for (std::size_t i = 0; i < axes.size(); ++i) {
    PROPVARIANT value{};
    if (FAILED(report->GetSensorValue(type.axes[i], &value))) return std::nullopt;
    const auto axis = number(value);
    ::PropVariantClear(&value);
    if (!axis) return std::nullopt;
    axes[i] = *axis;
  }
  return from_windows(type.kind, {axes[0], axes[1], axes[2]});
}

std::string name_of(ISensor& sensor) {
  BSTR given = nullptr;
  if (FAILED(sensor.GetFriendlyName(&given))) return "a sensor without a name";
  std::string name = narrow({given, ::SysStringLen(given)});
  ::SysFreeString(given);
  return name;
}

// The first of its kind, or why there is none.
Result<AxisSensor> find_sensor(const std::shared_ptr<ObjectUse>& use, ISensorManager& manager,
                               Sample::Kind kind) {
  const Type& type = type_of(kind);
  const Error none{.what = type.lacking, .remedy = "use a compass in the hand"};
  ISensorCollection* given = nullptr;
  if (FAILED(manager.GetSensorsByType(type.type, &given))) return none;
  const Owned<ISensorCollection> all(given);
  ISensor* first = nullptr;
  if (FAILED(all->GetAt(0, &first))) return none;
  const auto opened =
      std::make_shared<OpenSensor>(OpenSensor{.use = use, .sensor = Owned<ISensor>(first)});
  ISensor& sensor = *opened->sensor;
  SensorState state{};
  if (SUCCEEDED(sensor.GetState(&state)) && state == SENSOR_STATE_ACCESS_DENIED) {
    return Error{.what = "Windows lets no program read " + name_of(sensor),
                 .remedy = "allow it in the system's privacy settings"};
  }
  if (!read_axes(sensor, type)) {
    return Error{.what = name_of(sensor) + " is not used: it cannot be read",
                 .remedy = "use a compass in the hand"};
  }
  return AxisSensor{
      .kind = kind, .name = name_of(sensor), .where = name_of(sensor), .read = [opened, &type] {
        return read_axes(*opened->sensor, type);
      }};
}

Result<std::unique_ptr<ByteSource>> open(const TabletSystem& system) {
  const auto use = std::make_shared<ObjectUse>();
  ISensorManager* given = nullptr;
  const HRESULT made = ::CoCreateInstance(CLSID_SensorManager, nullptr, CLSCTX_INPROC_SERVER,
                                          IID_ISensorManager, reinterpret_cast<void**>(&given));
  if (FAILED(made)) {
    return Error{.what = system_message("no sensors", static_cast<unsigned long>(made)),
                 .remedy = "use a compass in the hand"};
  }
  const Owned<ISensorManager> manager(given);
  auto level = find_sensor(use, *manager, Sample::Kind::acceleration);
  if (!level) return level.error();
  std::string name = level->name;
  std::vector<AxisSensor> sensors{*std::move(level)};
  if (system.field_wanted) {
    auto compass = find_sensor(use, *manager, Sample::Kind::field);
    name += compass ? ", " + compass->name : "; " + compass.error().what;
    if (compass) sensors.push_back(*std::move(compass));
  }
  return sensor_source(std::move(sensors), std::move(name), system);
}

}  // namespace

OpenSource tablet_sensor_source(TabletSystem system) {
  return [system] { return open(system); };
}

}  // namespace mastwise::platform
