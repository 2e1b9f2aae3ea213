#include "platform/byte_source.hpp"
#include "platform/clock.hpp"

#include <algorithm>
#include <fstream>
#include <limits>
#include <thread>

namespace mastwise::platform {
namespace {

class FileSource : public ByteSource {
 public:
  FileSource(std::ifstream file, std::optional<double> bytes_per_second)
      : file_(std::move(file)), bytes_per_second_(bytes_per_second), began_(monotonic_now()) {}

  Result<Chunk> read(std::span<char> into, milliseconds timeout) override {
    std::size_t due = bytes_due();
    if (due == 0) {
      std::this_thread::sleep_for(std::min(timeout, milliseconds(20)));
      due = bytes_due();
    }
    const std::size_t wanted = std::min(due, into.size());
    if (wanted == 0) return Chunk{};
    file_.read(into.data(), static_cast<std::streamsize>(wanted));
    const auto size = static_cast<std::size_t>(file_.gcount());
    played_ += static_cast<double>(size);
    return Chunk{size, size < wanted};
  }

 private:
  std::size_t bytes_due() const {
    if (!bytes_per_second_) return std::numeric_limits<std::size_t>::max();
    const double seconds = std::chrono::duration<double>(monotonic_now() - began_).count();
    return static_cast<std::size_t>(std::max(0.0, seconds * *bytes_per_second_ - played_));
  }

  std::ifstream file_;
  std::optional<double> bytes_per_second_;
  Monotonic began_;
  double played_ = 0.0;
};

}  // namespace

OpenSource file_source(std::filesystem::path file, std::optional<double> bytes_per_second) {
  return [=]() -> Result<std::unique_ptr<ByteSource>> {
    std::ifstream stream(file, std::ios::binary);
    if (!stream || std::filesystem::is_directory(file)) {
      return Error{.what = "cannot read the file",
                   .where = file.string(),
                   .remedy = "check its name and that you may read it"};
    }
    return std::unique_ptr<ByteSource>(
        std::make_unique<FileSource>(std::move(stream), bytes_per_second));
  };
}

}  // namespace mastwise::platform
