#include "platform/byte_source.hpp"

#include <algorithm>
#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace mastwise::platform {
namespace {

// gpsd's receiver, and what is opened if that fails before its first sentence.
class GpsdFirst : public ByteSource {
 public:
  GpsdFirst(std::unique_ptr<ByteSource> gpsd, std::shared_ptr<const HeldByGpsd> held,
            OpenSource other)
      : source_(std::move(gpsd)), held_(std::move(held)), other_(std::move(other)) {}

  Result<Chunk> read(std::span<char> into, milliseconds timeout) override {
    auto chunk = source_->read(into, timeout);
    if (chunk) {
      if (chunk->size > 0) other_ = nullptr;
      return chunk;
    }
    if (!other_) return chunk;
    auto other = std::exchange(other_, nullptr)();
    // Where nothing else is connected, the trouble is with the receiver that gpsd has.
    if (!other) return held_->paths.empty() ? other.error() : chunk.error();
    source_ = *std::move(other);
    return Chunk{};
  }

  std::string name() const override { return source_->name(); }

 private:
  std::unique_ptr<ByteSource> source_;
  std::shared_ptr<const HeldByGpsd> held_;
  OpenSource other_;  // empty once gpsd's receiver has spoken or failed
};

// The serial devices without those that gpsd holds, however either names them.
std::vector<SerialDevice> free_devices(const HeldByGpsd& held, std::vector<SerialDevice> devices) {
  std::erase_if(devices, [&](const SerialDevice& device) {
    return std::any_of(held.paths.begin(), held.paths.end(),
                       [&](const std::string& path) { return same_device(path, device.path); });
  });
  return devices;
}

}  // namespace

OpenSource any_receiver_source(std::string gpsd_address, GpsdPatience patience,
                               std::function<std::vector<SerialDevice>()> list,
                               SerialSearch search) {
  const auto held = std::make_shared<HeldByGpsd>();
  const auto gpsd = gpsd_source(std::move(gpsd_address), held, patience);
  // It keeps what it has learned, so it is not copied.
  const auto serial = std::make_shared<OpenSource>(any_serial_source(
      std::move(search), [held, list = std::move(list)] { return free_devices(*held, list()); }));
  const OpenSource other = [serial] { return (*serial)(); };
  return [=]() -> Result<std::unique_ptr<ByteSource>> {
    auto source = gpsd();
    if (!source) return other();
    return std::unique_ptr<ByteSource>(
        std::make_unique<GpsdFirst>(*std::move(source), held, other));
  };
}

}  // namespace mastwise::platform
