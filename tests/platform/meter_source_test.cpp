#include "platform/meter_source.hpp"

#include "core/sweep/meter_lines.hpp"
#include "platform/device_link.hpp"
#include "tests/support/link_news.hpp"
#include "tests/support/pty.hpp"
#include "tests/support/temporary_folder.hpp"

#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <string>

#include <catch2/catch.hpp>
#include <linux/dvb/frontend.h>
#include <sys/ioctl.h>

using namespace mastwise;
using namespace mastwise::platform;
using namespace std::chrono_literals;
using Kind = LinkNews::Kind;
using test::NewsBox;
using test::Pty;

namespace {

constexpr LinkTiming kMeterHurry{5ms, 20ms, 5ms};

// A tuner's driver, by the kernel's own structures.
struct FakeTuner {
  fe_status status = FE_HAS_LOCK;
  dtv_stats cnr{}, strength{};
  int answers_properties = 1;  // 0: a driver of before version 5.10

  int control(unsigned long request, void* argument) {
    if (request == FE_READ_STATUS) {
      *static_cast<fe_status*>(argument) = status;
      return 0;
    }
    if (request != FE_GET_PROPERTY || answers_properties == 0) {
      errno = EOPNOTSUPP;
      return -1;
    }
    auto& all = *static_cast<dtv_properties*>(argument);
    for (std::uint32_t i = 0; i < all.num; ++i) {
      dtv_property& one = all.props[i];
      const bool is_cnr = one.cmd == DTV_STAT_CNR;
      if (!is_cnr && one.cmd != DTV_STAT_SIGNAL_STRENGTH) continue;
      one.u.st.len = 1;
      std::memcpy(&one.u.st.stat[0], is_cnr ? &cnr : &strength, sizeof(dtv_stats));
    }
    return 0;
  }
};

dtv_stats decibel_stat(long long thousandths) {
  dtv_stats stat{};
  stat.scale = FE_SCALE_DECIBEL;
  stat.svalue = thousandths;
  return stat;
}
dtv_stats relative_stat(unsigned long long of_65535) {
  dtv_stats stat{};
  stat.scale = FE_SCALE_RELATIVE;
  stat.uvalue = of_65535;
  return stat;
}

// What the source says of the tuner, or its error.
std::string said_of(FakeTuner& tuner) {
  const test::TemporaryFolder folder;
  const std::filesystem::path adapter = folder.path() / "dev/dvb/adapter0";
  std::filesystem::create_directories(adapter);
  std::ofstream(adapter / "frontend0") << "";
  const DvbSystem system{.root = folder.path().string(),
                         .control =
                             [&](int descriptor, unsigned long request, void* argument) {
                               return descriptor >= 0 ? tuner.control(request, argument) : -1;
                             },
                         .every = 1ms};
  const auto source = dvb_meter_source({}, system)();
  if (!source) return source.error().message();
  std::array<char, 128> bytes{};
  for (int i = 0; i < 100; ++i) {
    const auto chunk = (*source)->read(bytes, 5ms);
    if (!chunk) return chunk.error().message();
    if (chunk->size > 0) return {bytes.data(), chunk->size};
  }
  return "nothing";
}

}  // namespace

// The scales are those of the Linux DVB API's "Frontend statistics indicators": thousandths of a
// decibel, of 1 mW for the strength, and 0 to 65535.
TEST_CASE("a tuner's statistics become lines of a meter") {
  FakeTuner tuner;
  tuner.cnr = decibel_stat(21'430);
  tuner.strength = decibel_stat(-51'500);
  CHECK(said_of(tuner) == "SNR 21.43 dB\nLEVEL -51.50 dBm\n");
  tuner.cnr = relative_stat(32768);
  tuner.strength = relative_stat(65535);
  CHECK(said_of(tuner) == "QUALITY 50.0 %\n");
  tuner.cnr = dtv_stats{};
  CHECK(said_of(tuner) == "QUALITY 100.0 %\n");
  tuner.strength = decibel_stat(-30'000);
  CHECK(said_of(tuner) == "LEVEL -30.00 dBm\n");
  tuner.status = FE_HAS_SIGNAL;
  CHECK(said_of(tuner) == "NONE\n");
}

TEST_CASE("a tuner without statistics says so") {
  FakeTuner tuner;
  CHECK(said_of(tuner).find("neither quality nor strength") != std::string::npos);
  tuner.answers_properties = 0;
  CHECK(said_of(tuner).find("has no statistics") != std::string::npos);
  const auto none = dvb_meter_source({.adapter = 7}, {.root = "/nowhere", .control = {}})();
  REQUIRE_FALSE(none);
  CHECK(none.error().message().find("adapter7/frontend0") != std::string::npos);
}

TEST_CASE("tuners are found by their nodes") {
  const test::TemporaryFolder folder;
  for (const char* node : {"adapter1/frontend0", "adapter0/frontend1", "adapter0/frontend0",
                           "adapter0/demux0", "adapterx/frontend0", "adapter10/frontend0"}) {
    const auto path = folder.path() / "dev/dvb" / node;
    std::filesystem::create_directories(path.parent_path());
    std::ofstream(path) << "";
  }
  CHECK(list_dvb_tuners(folder.path().string()) ==
        std::vector<DvbTuner>{{0, 0}, {0, 1}, {1, 0}, {10, 0}});
  CHECK(list_dvb_tuners("/nowhere").empty());
}

TEST_CASE("a meter on a serial line is found at its speed, and bytes of another are not") {
  Pty pty;
  NewsBox box;
  DeviceLink link(serial_meter_source(pty.path(), {4800, 9600}, 20s), box.deliver(), kMeterHurry);
  const std::string text = "# PRACTICE meter\r\nSNR 21.4 dB\r\n";
  REQUIRE(pty.send(text));
  REQUIRE(box.wait_for_bytes(text.size()));
  CHECK(box.bytes() == text);
  CHECK(box.count(Kind::found) == 1);
  link.stop();

  NewsBox deaf;
  Pty other;
  DeviceLink lost(serial_meter_source(other.path(), {4800, 9600}, 30ms), deaf.deliver(),
                  kMeterHurry);
  REQUIRE(other.send("$GPGLL,4426.0,N,07140.0,W,120010,A,A*00\r\n"));
  REQUIRE(deaf.wait_for(Kind::lost));
  CHECK(deaf.news().front().text.find("no reading of a meter at any speed") != std::string::npos);
}
