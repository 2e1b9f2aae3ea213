// The system's gpsd, fed by gpsfake from a log and by a pseudo-terminal.
#include "platform/device_link.hpp"
#include "tests/support/link_news.hpp"
#include "tests/support/loopback_server.hpp"
#include "tests/support/nmea_text.hpp"
#include "tests/support/pty.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/temporary_folder.hpp"

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <set>
#include <thread>

#include <catch2/catch.hpp>
#include <fcntl.h>
#include <fmt/format.h>
#include <signal.h>
#include <sys/wait.h>

using namespace mastwise;
using namespace mastwise::platform;
using Kind = LinkNews::Kind;
using test::NewsBox;
using namespace std::chrono_literals;
namespace fs = std::filesystem;

namespace {

// A program of the system with what it starts, until it is stopped.
class Daemon {
 public:
  explicit Daemon(const std::vector<std::string>& command) {
    std::vector<char*> words;
    for (const std::string& word : command) words.push_back(const_cast<char*>(word.c_str()));
    words.push_back(nullptr);
    id_ = ::fork();
    REQUIRE(id_ >= 0);
    if (id_ != 0) return;
    ::setpgid(0, 0);
    const int nowhere = ::open("/dev/null", O_RDWR);
    for (const int stream : {0, 1, 2}) ::dup2(nowhere, stream);
    ::execvp(words.front(), words.data());
    ::_exit(127);
  }
  ~Daemon() { stop(); }
  Daemon(const Daemon&) = delete;
  Daemon& operator=(const Daemon&) = delete;

  void stop() {
    if (id_ <= 0) return;
    ::kill(-id_, SIGTERM);
    for (int tries = 0; tries < 100 && ::waitpid(id_, nullptr, WNOHANG) == 0; ++tries) {
      std::this_thread::sleep_for(20ms);
    }
    ::kill(-id_, SIGKILL);
    ::waitpid(id_, nullptr, 0);
    id_ = -1;
  }

 private:
  pid_t id_ = -1;
};

bool has_gpsd() {
  for (const char* program : {"/usr/sbin/gpsd", "/usr/sbin/gpsdctl", "/usr/bin/gpsfake"}) {
    if (fs::exists(program)) continue;
    test::skip(program);
    return false;
  }
  return true;
}

std::string free_port() {
  return std::to_string(test::LoopbackServer().port());
}

constexpr LinkTiming kUnhurried{50ms, 200ms, 20ms};

}  // namespace

TEST_CASE("Debian's gpsd passes on a recorded log sentence by sentence", "[gpsd]") {
  if (!has_gpsd()) return;
  const auto log = test::reference("nmea/bu353s4.log");
  if (!log) return;
  const auto lines = test::read_lines(*log);
  const std::set<std::string> known(lines.begin(), lines.end());
  const std::string port = free_port();
  const std::vector<std::string> command = {"gpsfake", "-q", "-c",         "0.02",
                                            "-P",      port, log->string()};
  Daemon gpsd(command);
  NewsBox box;
  DeviceLink link(gpsd_source("localhost:" + port), box.deliver(), kUnhurried);
  REQUIRE(box.wait_for_bytes(4000));
  // gpsd stops and is started again.
  gpsd.stop();
  REQUIRE(box.wait([](const auto& news, const auto&) { return news.back().kind == Kind::lost; }));
  const Daemon again(command);
  REQUIRE(box.wait_for(Kind::found, 2));
  REQUIRE(box.wait_for_bytes(box.bytes().size() + 2000));
  link.stop();
  // Every sentence is one of the log, with its date as the receiver told it. Once gpsd was stopped
  // in the middle of a sentence, whose rest is missing.
  std::string all = box.bytes();
  std::size_t sentences = 0;
  for (std::size_t end = all.find("\r\n"); end != std::string::npos; end = all.find("\r\n")) {
    const std::string line = all.substr(0, end);
    INFO(line);
    CHECK(known.count(line) == 1);
    ++sentences;
    all.erase(0, end + 2);
  }
  CHECK(all.empty());
  CHECK(sentences > 80);
}

TEST_CASE("a receiver unplugged from Debian's gpsd is told, and read when it is back", "[gpsd]") {
  if (!has_gpsd()) return;
  const test::TemporaryFolder folder;
  fs::permissions(folder / "", fs::perms(0755));  // gpsd gives up root's rights
  const std::string path = folder / "receiver";
  const auto plug_in = [&](const test::Pty& pty) {
    fs::permissions(pty.path(), fs::perms(0666));
    fs::remove(path);
    fs::create_symlink(pty.path(), path);
  };
  auto pty = std::make_unique<test::Pty>();
  plug_in(*pty);
  const std::string port = free_port();
  const std::string control = folder / "control";
  const Daemon gpsd({"gpsd", "-N", "-F", control, "-S", port, path});
  // As the system tells gpsd of what is plugged in and out.
  const auto tell = [&](const std::string& news) {
    const std::string command = "GPSD_SOCKET='" + control + "' gpsdctl " + news + " '" + path + "'";
    REQUIRE(std::system((command + " >/dev/null 2>&1").c_str()) == 0);
  };
  NewsBox box;
  DeviceLink link(gpsd_source("localhost:" + port), box.deliver(), kUnhurried);
  int second = 0;
  const auto send_until = [&](auto reached) {
    for (int tries = 0; tries < 400 && !reached(); ++tries) {
      const std::string time = fmt::format("1200{:02}.00", second++ % 60);
      REQUIRE(pty->send(
          test::sentence("GPRMC," + time + ",A,4426.113,N,07140.560,W,0.1,0.0,291126,,,A") +
          test::sentence("GPGGA," + time + ",4426.113,N,07140.560,W,1,08,1.0,300.0,M,-30.0,M,,")));
      std::this_thread::sleep_for(50ms);
    }
    REQUIRE(reached());
  };
  send_until([&] { return box.count(Kind::found) == 1; });
  pty.reset();
  tell("remove");
  REQUIRE(box.wait([](const auto& news, const auto&) {
    return news.back().text.find("gpsd has no receiver") != std::string::npos;
  }));
  pty = std::make_unique<test::Pty>();
  plug_in(*pty);
  tell("add");
  send_until([&] { return box.count(Kind::found) == 2; });
  CHECK(box.bytes().find("4426.113,N") != std::string::npos);
}
