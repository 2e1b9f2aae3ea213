#include "platform/clock.hpp"
#include "platform/descriptor_linux.hpp"
#include "platform/meter_source.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cstring>
#include <filesystem>
#include <optional>
#include <thread>

#include <fcntl.h>
#include <fmt/format.h>
#include <linux/dvb/frontend.h>
#include <sys/ioctl.h>

namespace mastwise::platform {
namespace {

std::string node_of(const std::string& root, const DvbTuner& tuner) {
  return (std::filesystem::path(root) / "dev/dvb" / fmt::format("adapter{}", tuner.adapter) /
          fmt::format("frontend{}", tuner.frontend))
      .string();
}

// The first value of a statistic: for the whole channel, before those of its layers.
std::optional<dtv_stats> first_of(const dtv_property& property) {
  if (property.u.st.len == 0) return std::nullopt;
  dtv_stats first{};
  std::memcpy(&first, &property.u.st.stat[0], sizeof(first));
  if (first.scale == FE_SCALE_NOT_AVAILABLE) return std::nullopt;
  return first;
}

// FE_SCALE_DECIBEL counts thousandths of a decibel, of signal strength over 1 mW.
double decibels(const dtv_stats& stat) {
  return static_cast<double>(stat.svalue) / 1000.0;
}
double percent(const dtv_stats& stat) {
  constexpr double kFull = 65535.0;
  return std::min(static_cast<double>(stat.uvalue) / kFull, 1.0) * 100.0;
}

class DvbSource : public ByteSource {
 public:
  DvbSource(Descriptor frontend, std::string path, DvbSystem system)
      : frontend_(std::move(frontend)), path_(std::move(path)), system_(std::move(system)) {}

  Result<Chunk> read(std::span<char> into, milliseconds timeout) override {
    if (text_.empty()) {
      const Monotonic now = monotonic_now();
      if (now < next_) {
        std::this_thread::sleep_for(std::min(timeout, next_ - now));
        return Chunk{};
      }
      next_ = now + system_.every;
      if (const auto read = read_tuner(); !read) return read.error();
    }
    const std::size_t size = std::min(into.size(), text_.size());
    std::memcpy(into.data(), text_.data(), size);
    text_.erase(0, size);
    return Chunk{size};
  }

 private:
  int control(unsigned long request, void* argument) const {
    return system_.control(frontend_.number(), request, argument);
  }

  Result<Done> read_tuner() {
    fe_status status{};
    if (control(FE_READ_STATUS, &status) != 0) {
      return system_error("cannot read the tuner's state", path_);
    }
    if ((status & FE_HAS_LOCK) == 0) {
      text_ = "NONE\n";
      return Done{};
    }
    std::array<dtv_property, 2> asked{};
    asked[0].cmd = DTV_STAT_CNR;
    asked[1].cmd = DTV_STAT_SIGNAL_STRENGTH;
    dtv_properties all{.num = static_cast<__u32>(asked.size()), .props = asked.data()};
    if (control(FE_GET_PROPERTY, &all) != 0) {
      return system_error("the tuner's driver has no statistics", path_);
    }
    if (const auto cnr = first_of(asked[0])) {
      text_ = cnr->scale == FE_SCALE_DECIBEL ? fmt::format("SNR {:.2f} dB\n", decibels(*cnr))
                                             : fmt::format("QUALITY {:.1f} %\n", percent(*cnr));
    }
    if (const auto strength = first_of(asked[1])) {
      if (strength->scale == FE_SCALE_DECIBEL) {
        text_ += fmt::format("LEVEL {:.2f} dBm\n", decibels(*strength));
      } else if (text_.empty()) {
        text_ = fmt::format("QUALITY {:.1f} %\n", percent(*strength));
      }
    }
    if (!text_.empty()) return Done{};
    return Error{.what = "the tuner has lock but reports neither quality nor strength",
                 .where = path_,
                 .remedy = "type what the TV's own meter shows"};
  }

  Descriptor frontend_;
  std::string path_;
  DvbSystem system_;
  Monotonic next_{};
  std::string text_;
};

// The number after a prefix, as in "adapter3".
std::optional<int> number_after(const std::string& name, std::string_view prefix) {
  if (!name.starts_with(prefix)) return std::nullopt;
  int number = 0;
  const char* end = name.data() + name.size();
  const auto [rest, trouble] = std::from_chars(name.data() + prefix.size(), end, number);
  return trouble == std::errc() && rest == end ? std::optional(number) : std::nullopt;
}

}  // namespace

DvbSystem this_system() {
  return {.control = [](int descriptor, unsigned long request, void* argument) {
    return ::ioctl(descriptor, request, argument);
  }};
}

OpenSource dvb_meter_source(DvbTuner tuner, DvbSystem system) {
  return [=]() -> Result<std::unique_ptr<ByteSource>> {
    const std::string path = node_of(system.root, tuner);
    // Reading only: the program that tunes keeps the right to do so.
    Descriptor frontend(::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC));
    if (!frontend.is_open()) return system_error("cannot open the tuner", path);
    return std::unique_ptr<ByteSource>(
        std::make_unique<DvbSource>(std::move(frontend), path, system));
  };
}

std::vector<DvbTuner> list_dvb_tuners(const std::string& root) {
  namespace fs = std::filesystem;
  std::vector<DvbTuner> tuners;
  std::error_code failed;
  for (const auto& adapter : fs::directory_iterator(fs::path(root) / "dev/dvb", failed)) {
    const auto number = number_after(adapter.path().filename().string(), "adapter");
    if (!number) continue;
    for (const auto& node : fs::directory_iterator(adapter.path(), failed)) {
      const auto frontend = number_after(node.path().filename().string(), "frontend");
      if (frontend) tuners.push_back({*number, *frontend});
    }
  }
  std::sort(tuners.begin(), tuners.end(), [](const DvbTuner& a, const DvbTuner& b) {
    return a.adapter != b.adapter ? a.adapter < b.adapter : a.frontend < b.frontend;
  });
  return tuners;
}

}  // namespace mastwise::platform
