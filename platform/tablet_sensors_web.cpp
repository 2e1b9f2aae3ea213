#include "core/motion/sensor_lines.hpp"
#include "platform/system_web.hpp"
#include "platform/tablet_sensors.hpp"

#include <algorithm>
#include <cstring>
#include <string>

namespace mastwise::platform {
namespace {

using motion::Sample;

// The accelerometer. No browser gives pages the field of the magnetometer, which the compass of the
// tablet needs to know its own iron.
class BrowserMotion final : public ByteSource {
 public:
  explicit BrowserMotion(milliseconds every) { web_motion_begin(static_cast<int>(every.count())); }
  ~BrowserMotion() override { web_motion_end(); }
  BrowserMotion(const BrowserMotion&) = delete;
  BrowserMotion& operator=(const BrowserMotion&) = delete;

  Result<Chunk> read(std::span<char> into, milliseconds) override {
    WebMotion felt;
    while (waiting_.size() < into.size()) {
      const WebNews news = web_motion_take(&felt);
      if (news == WebNews::nothing) break;
      if (news != WebNews::some) {
        return Error{.what = "the browser does not tell how this tablet moves",
                     .remedy = "allow motion sensors in the browser's settings of this page"};
      }
      waiting_ += motion::to_line({.kind = Sample::Kind::acceleration,
                                   .at_s = felt.at_s,
                                   .value = {felt.x_m_s2, felt.y_m_s2, felt.z_m_s2}});
    }
    const std::size_t size = std::min(into.size(), waiting_.size());
    std::memcpy(into.data(), waiting_.data(), size);
    waiting_.erase(0, size);
    return Chunk{size};
  }
  std::string name() const override { return "the browser's accelerometer; no magnetometer"; }

 private:
  std::string waiting_;
};

}  // namespace

OpenSource tablet_sensor_source(TabletSystem system) {
  return [every = system.every]() -> Result<std::unique_ptr<ByteSource>> {
    return std::unique_ptr<ByteSource>(std::make_unique<BrowserMotion>(every));
  };
}

}  // namespace mastwise::platform
