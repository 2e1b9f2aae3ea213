#include "core/nmea/framing.hpp"
#include "platform/byte_source.hpp"
#include "platform/clock.hpp"
#include "platform/serial_port.hpp"

#include <algorithm>
#include <cstring>
#include <string_view>

#include <fmt/format.h>

namespace mastwise::platform {
namespace {

// Knowledge kept for when the source is opened again.
struct Learnt {
  std::vector<int> speeds;  // the last successful one first
  SerialLanguage language;
  std::string spoke = {};  // the device that last spoke it
};

// A port that searches for its speed, and keeps it after the first good sentence.
class SerialSource : public ByteSource {
 public:
  SerialSource(std::unique_ptr<SerialPort> port, std::string path, milliseconds listen_for,
               std::shared_ptr<Learnt> learnt)
      : port_(std::move(port)),
        path_(std::move(path)),
        listen_for_(listen_for),
        learnt_(std::move(learnt)) {}

  Result<Chunk> read(std::span<char> into, milliseconds timeout) override {
    if (!heard_.empty() && kept_) return hand_on(into);
    if (kept_) return port_->read(into, timeout);
    if (!listening_ || monotonic_now() >= listen_until_) {
      if (const auto next = listen_at_next_speed(); !next) return next.error();
    }
    const auto chunk = port_->read(into, timeout);
    if (!chunk) return chunk;
    consider(std::string_view(into.data(), chunk->size));
    return kept_ ? hand_on(into) : Chunk{};
  }

 private:
  Result<Done> listen_at_next_speed() {
    if (next_speed_ == learnt_->speeds.size()) {
      const SerialLanguage& language = learnt_->language;
      return Error{.what = language.not_spoken, .where = path_, .remedy = language.remedy};
    }
    heard_.clear();
    understands_ = learnt_->language.listen();
    listen_until_ = monotonic_now() + listen_for_;
    listening_ = true;
    return port_->set_speed(learnt_->speeds[next_speed_++]);
  }

  void consider(std::string_view bytes) {
    heard_ += bytes;
    kept_ = understands_(bytes);
    if (!kept_) return;
    const auto served = learnt_->speeds.begin() + static_cast<std::ptrdiff_t>(next_speed_ - 1);
    std::rotate(learnt_->speeds.begin(), served, served + 1);
    learnt_->spoke = path_;
  }

  Chunk hand_on(std::span<char> into) {
    const std::size_t size = std::min(into.size(), heard_.size());
    std::memcpy(into.data(), heard_.data(), size);
    heard_.erase(0, size);
    return Chunk{size};
  }

  std::unique_ptr<SerialPort> port_;
  std::string path_;
  milliseconds listen_for_;
  std::shared_ptr<Learnt> learnt_;
  bool kept_ = false;
  bool listening_ = false;
  std::size_t next_speed_ = 0;
  Monotonic listen_until_{};
  std::function<bool(std::string_view)> understands_;
  std::string heard_;  // since the speed was set, not yet passed on
};

Result<std::unique_ptr<ByteSource>> open_serial(const std::string& path, milliseconds listen_for,
                                                const std::shared_ptr<Learnt>& learnt) {
  auto port = open_serial_port(path);
  if (!port) return port.error();
  return std::unique_ptr<ByteSource>(
      std::make_unique<SerialSource>(std::move(port).value(), path, listen_for, learnt));
}

// The device that last sent NMEA, else the one after `tried`, cyclically. `devices` is not empty.
const SerialDevice& next_device(const std::vector<SerialDevice>& devices, const std::string& spoke,
                                const std::string& tried) {
  const auto at = [&](const std::string& path) {
    return std::find_if(devices.begin(), devices.end(),
                        [&](const SerialDevice& device) { return device.path == path; });
  };
  if (const auto again = at(spoke); again != devices.end()) return *again;
  const auto last = at(tried);
  return last == devices.end() || last + 1 == devices.end() ? devices.front() : *(last + 1);
}

}  // namespace

SerialLanguage nmea_language() {
  return {.listen =
              [] {
                return [framer = nmea::Framer()](std::string_view bytes) mutable {
                  bool understood = false;
                  framer.feed(bytes, [&](std::string_view) { understood = true; });
                  return understood;
                };
              },
          .not_spoken = "no NMEA 0183 at any speed",
          .remedy = "check that this is a position receiver, and set it to NMEA 0183"};
}

std::vector<int> usual_serial_speeds() {
  return {4800, 9600, 38400, 115200, 19200, 57600, 230400};
}

Error unusual_speed(int baud, const std::string& path) {
  return {.what = fmt::format("{} baud is not a supported speed", baud),
          .where = path,
          .remedy = "use 4800, 9600, 19200, 38400, 57600, 115200 or 230400"};
}

OpenSource serial_source(std::string path, SerialSearch search) {
  const auto learnt =
      std::make_shared<Learnt>(Learnt{std::move(search.speeds), std::move(search.language)});
  return [=] { return open_serial(path, search.listen_for, learnt); };
}

OpenSource any_serial_source(SerialSearch search, std::function<std::vector<SerialDevice>()> list) {
  const auto learnt =
      std::make_shared<Learnt>(Learnt{std::move(search.speeds), std::move(search.language)});
  std::string tried;
  return [=]() mutable -> Result<std::unique_ptr<ByteSource>> {
    const std::vector<SerialDevice> devices = list();
    if (devices.empty()) {
      return Error{.what = "no serial device is connected",
                   .remedy = "plug in the receiver, or enter the position by hand"};
    }
    tried = next_device(devices, learnt->spoke, tried).path;
    learnt->spoke.clear();  // tried once more; if it stays silent, the others are next
    return open_serial(tried, search.listen_for, learnt);
  };
}

}  // namespace mastwise::platform
