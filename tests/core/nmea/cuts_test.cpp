#include "core/nmea/receiver.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/sanitized.hpp"

#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::nmea;

namespace {

Receiver hear(const std::string& bytes, std::size_t cut) {
  Receiver receiver{sys_days(std::chrono::year(2000) / 1 / 1)};
  receiver.feed(std::string_view(bytes).substr(0, cut), Monotonic{});
  receiver.feed(std::string_view(bytes).substr(cut), Monotonic{});
  return receiver;
}

}  // namespace

// Each cut reads the whole log again, so only the first part of the longest logs is used.
TEST_CASE("a log cut anywhere gives the same receiver") {
  constexpr std::size_t kEnough = 7100;
  const std::size_t kStep = test::kSanitized ? 17 : 1;
  for (const char* log :
       {"bu353s4", "garmin48", "gp-320fw-2019-04-07-coldboot", "hemi", "humminbird-M37", "mtk-3301",
        "nmea-fuzzy-cases", "saab-r4", "tnt-revolution", "ublox-zed-f9p-nmea"}) {
    const auto path = test::reference("nmea/" + std::string(log) + ".log");
    if (!path) return;
    INFO(log);
    const std::string bytes = test::read_file(*path).substr(0, kEnough);
    const Receiver whole = hear(bytes, 0);
    std::size_t different = 0;
    for (std::size_t cut = 1; cut < bytes.size(); cut += kStep)
      different += hear(bytes, cut) != whole;
    CHECK(different == 0);
  }
}

TEST_CASE("a log fed byte by byte gives the same receiver") {
  for (const char* log : {"hemi", "ublox-zed-f9p-nmea"}) {
    const auto path = test::reference("nmea/" + std::string(log) + ".log");
    if (!path) return;
    INFO(log);
    const std::string bytes = test::read_file(*path);
    Receiver bytewise{sys_days(std::chrono::year(2000) / 1 / 1)};
    for (const char& byte : bytes) bytewise.feed(std::string_view(&byte, 1), Monotonic{});
    CHECK(bytewise == hear(bytes, 0));
  }
}
