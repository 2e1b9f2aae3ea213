#include "platform/device_link.hpp"

#include "core/nmea/receiver.hpp"
#include "tests/support/faulty_source.hpp"
#include "tests/support/link_news.hpp"
#include "tests/support/nmea_text.hpp"
#include "tests/support/reference.hpp"

#include <atomic>
#include <filesystem>
#include <fstream>
#include <memory>
#include <string>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::platform;
using Kind = LinkNews::Kind;
using test::NewsBox;
using namespace std::chrono_literals;

namespace {

constexpr LinkTiming kHurry{1ms, 4ms, 5ms};

// A source that is silent forever.
class Silence : public ByteSource {
 public:
  Result<Chunk> read(std::span<char>, milliseconds timeout) override {
    std::this_thread::sleep_for(timeout);
    return Chunk{};
  }
};

}  // namespace

TEST_CASE("any failed read loses nothing, and the link recovers") {
  std::string log;
  if (const auto path = test::reference("nmea/garmin48.log")) {
    log = test::read_file(*path);
  } else {
    for (int i = 0; i < 60; ++i) log += test::sentence("HEHDT," + std::to_string(i) + ".0,T");
  }
  const std::size_t reads = log.size() / test::FaultyDevice{}.piece + 1;
  for (std::size_t failing = 0; failing < reads; ++failing) {
    INFO("the failing read is " << failing);
    const auto device = std::make_shared<test::FaultyDevice>(
        test::FaultyDevice{.log = log, .failing_read = failing, .failing_opens = failing % 3});
    NewsBox box;
    DeviceLink link(test::faulty_source(device), box.deliver(), kHurry);
    REQUIRE(box.wait_for(Kind::ended));
    link.stop();
    CHECK(box.bytes() == log);
    CHECK(box.count(Kind::lost) == (failing % 3 == 0 ? 1 : 2));
    CHECK(box.count(Kind::found) == (failing == 0 ? 1 : 2));
    CHECK(box.news().back().kind == Kind::ended);
  }
}

TEST_CASE("a link that cannot open retries and reports the reason once") {
  NewsBox box;
  std::atomic<int> tries{0};
  DeviceLink link(
      [&]() -> Result<std::unique_ptr<ByteSource>> {
        ++tries;
        return Error{.what = "nobody there", .remedy = "knock"};
      },
      box.deliver(), kHurry);
  const auto began = std::chrono::steady_clock::now();
  while (tries < 5 && std::chrono::steady_clock::now() - began < 20s) {
    std::this_thread::sleep_for(1ms);
  }
  link.stop();
  CHECK(tries >= 5);
  REQUIRE(box.news().size() == 1);
  CHECK(box.news().front().text == "nobody there; knock");
}

TEST_CASE("a link waiting to retry stops at once") {
  NewsBox box;
  const auto began = std::chrono::steady_clock::now();
  {
    DeviceLink link(
        []() -> Result<std::unique_ptr<ByteSource>> { return Error{.what = "nobody there"}; },
        box.deliver(), {1h, 1h, 5ms});
    REQUIRE(box.wait_for(Kind::lost));
  }
  CHECK(std::chrono::steady_clock::now() - began < 60s);
}

TEST_CASE("a link on a silent device stops within a read's time, and may be stopped twice") {
  NewsBox box;
  DeviceLink link(
      []() -> Result<std::unique_ptr<ByteSource>> {
        return std::unique_ptr<ByteSource>(std::make_unique<Silence>());
      },
      box.deliver(), kHurry);
  link.stop();
  link.stop();
  CHECK(box.news().empty());
}

TEST_CASE("a file is played whole, at once or at a pace") {
  const auto file = std::filesystem::temp_directory_path() / "mastwise_file_source_test.log";
  std::string log;
  for (int i = 0; i < 300; ++i) log += test::sentence("HEHDT," + std::to_string(i) + ".0,T");
  std::ofstream(file, std::ios::binary) << log;
  for (const auto pace : {std::optional<double>(), std::optional<double>(50000.0)}) {
    NewsBox box;
    const auto began = std::chrono::steady_clock::now();
    DeviceLink link(file_source(file, pace), box.deliver(), kHurry);
    REQUIRE(box.wait_for(Kind::ended));
    CHECK(box.bytes() == log);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - began;
    if (pace) CHECK(took.count() > 0.9 * static_cast<double>(log.size()) / *pace);
  }
  std::filesystem::remove(file);
  const auto missing = file_source(file)();
  REQUIRE_FALSE(missing);
  CHECK(missing.error().where == file.string());
}
