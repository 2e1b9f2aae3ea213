#pragma once

#include "platform/byte_source.hpp"

#include <algorithm>
#include <memory>
#include <string>

namespace mastwise::test {

// A device that plays a log and whose i-th read fails once. It delivers the rest after it is opened
// again, like the buffer of a receiver or kernel.
struct FaultyDevice {
  std::string log;
  std::size_t piece = 64;     // bytes a read
  std::size_t failing_read;   // counted from 0 over all openings
  std::size_t failing_opens;  // of those right after the failed read
  std::size_t delivered = 0;
  std::size_t reads = 0;
};

inline platform::OpenSource faulty_source(std::shared_ptr<FaultyDevice> device) {
  class Source : public platform::ByteSource {
   public:
    explicit Source(std::shared_ptr<FaultyDevice> device) : device_(std::move(device)) {}
    Result<platform::Chunk> read(std::span<char> into, milliseconds) override {
      if (device_->reads++ == device_->failing_read) return Error{.what = "the plug fell out"};
      const std::size_t size =
          std::min({device_->piece, into.size(), device_->log.size() - device_->delivered});
      device_->log.copy(into.data(), size, device_->delivered);
      device_->delivered += size;
      return platform::Chunk{size, device_->delivered == device_->log.size()};
    }

   private:
    std::shared_ptr<FaultyDevice> device_;
  };
  return [device]() -> Result<std::unique_ptr<platform::ByteSource>> {
    if (device->reads > device->failing_read && device->failing_opens > 0) {
      --device->failing_opens;
      return Error{.what = "nobody there"};
    }
    return std::unique_ptr<platform::ByteSource>(std::make_unique<Source>(device));
  };
}

}  // namespace mastwise::test
