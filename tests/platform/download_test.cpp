#include "platform/download.hpp"

#include "tests/support/file_server.hpp"
#include "tests/support/reference.hpp"
#include "tests/support/temporary_folder.hpp"
#include "tests/support/verb_arguments.hpp"

#include <atomic>
#include <chrono>
#include <fstream>

#include <catch2/catch.hpp>

using namespace mastwise;
using platform::DownloadEnd;
using test::contains;
using test::FileServer;
using test::HttpAnswer;
using test::HttpRequest;

namespace {

// 300 kB that no part of resembles another.
std::string downloaded_bytes(char seed = 1) {
  std::string bytes(300'000, '\0');
  std::uint32_t state = static_cast<std::uint32_t>(seed);
  for (char& byte : bytes) {
    state = state * 1'664'525u + 1'013'904'223u;
    byte = static_cast<char>(state >> 24);
  }
  return bytes;
}

struct Fetching {
  test::TemporaryFolder folder;
  platform::DownloadWish wish = {};

  explicit Fetching(const std::string& address) {
    wish.address = address;
    wish.to = folder / "file.bin";
    wish.allow_local_http = true;
    wish.stalled_after = std::chrono::seconds(2);
  }
  Result<platform::Download> run(const platform::DownloadWatch& watch = {}) {
    return platform::download(wish, watch);
  }
  std::string file() const { return test::read_file(wish.to); }
  bool is_there() const { return std::filesystem::exists(wish.to); }
  std::size_t names() const { return folder.content().size(); }
};

}  // namespace

TEST_CASE("a downloaded file has the server's bytes and leaves nothing beside it") {
  const std::string bytes = downloaded_bytes();
  FileServer server([&](const HttpRequest& request) {
    HttpAnswer answer = test::file_answer(request, bytes, "\"a\"");
    answer.drips = true;
    return answer;
  });
  Fetching fetching(server.base() + "/file");
  std::uint64_t most = 0, all = 0;
  const auto got = fetching.run([&](const platform::DownloadProgress& now) {
    CHECK(now.done_bytes >= most);
    most = now.done_bytes;
    all = now.all_bytes;
    return true;
  });
  REQUIRE(got);
  CHECK(got->end == DownloadEnd::whole);
  CHECK(got->bytes == bytes.size());
  CHECK(got->fetched_bytes == bytes.size());
  CHECK(most == bytes.size());
  CHECK(all == bytes.size());
  CHECK(fetching.file() == bytes);
  CHECK(fetching.names() == 1);
}

TEST_CASE("a line that is cut goes on by itself, and only the rest is fetched") {
  const std::string bytes = downloaded_bytes();
  std::atomic<int> asked = 0;
  FileServer server([&](const HttpRequest& request) {
    HttpAnswer answer = test::file_answer(request, bytes, "\"a\"");
    if (asked++ < 2) answer.cut_after = 70'000;
    return answer;
  });
  Fetching fetching(server.base() + "/file");
  const auto got = fetching.run();
  REQUIRE(got);
  CHECK(fetching.file() == bytes);
  CHECK(asked == 3);
  CHECK(server.requests()[1].headers.at("range") == "bytes=70000-");
  CHECK(server.requests()[1].headers.at("if-range") == "\"a\"");
  CHECK(server.requests()[2].headers.at("range") == "bytes=140000-");
  CHECK(server.sent() == bytes.size());
  CHECK(got->fetched_bytes == bytes.size());
}

TEST_CASE("a stopped download goes on later with the rest, and anew if the file has changed") {
  const std::string bytes = downloaded_bytes(1), later = downloaded_bytes(2);
  std::atomic<bool> changed = false, first = true;
  FileServer server([&](const HttpRequest& request) {
    HttpAnswer answer = changed ? test::file_answer(request, later, "\"b\"")
                                : test::file_answer(request, bytes, "\"a\"");
    if (first.exchange(false)) {
      answer.cut_after = 100'000;
      answer.stalls = true;
    }
    return answer;
  });
  Fetching fetching(server.base() + "/file");
  const auto got =
      fetching.run([](const platform::DownloadProgress& now) { return now.done_bytes < 100'000; });
  REQUIRE(got);
  REQUIRE(got->end == DownloadEnd::stopped);
  CHECK_FALSE(fetching.is_there());
  CHECK(std::filesystem::file_size(fetching.folder / "file.bin.part") == 100'000);
  const std::size_t before = server.sent();
  SECTION("the same file") {
    REQUIRE(fetching.run());
    CHECK(fetching.file() == bytes);
    CHECK(server.sent() - before == 200'000);
  }
  SECTION("another file") {
    changed = true;
    REQUIRE(fetching.run());
    CHECK(fetching.file() == later);
    CHECK(server.sent() - before == later.size());
  }
  SECTION("another address") {
    fetching.wish.address += "2";
    REQUIRE(fetching.run());
    CHECK(server.sent() - before == bytes.size());
  }
  SECTION("all bytes had come, but not the file's name") {
    std::ofstream(fetching.folder / "file.bin.part", std::ios::binary) << bytes;
    REQUIRE(fetching.run());
    CHECK(fetching.file() == bytes);
    CHECK(server.sent() - before == 1);
  }
  CHECK(fetching.names() == 1);
}

TEST_CASE("a server that ignores the version cannot mix two files") {
  const std::string bytes = downloaded_bytes(1), later = downloaded_bytes(2);
  std::atomic<int> asked = 0;
  FileServer server([&](HttpRequest request) {
    request.headers.erase("if-range");
    if (asked++ > 0) return test::file_answer(request, later, "\"b\"");
    HttpAnswer answer = test::file_answer(request, bytes, "\"a\"");
    answer.cut_after = 70'000;
    return answer;
  });
  Fetching fetching(server.base() + "/file");
  REQUIRE(fetching.run());
  CHECK(fetching.file() == later);
}

TEST_CASE("without a tag or date of the server, a cut download begins anew") {
  const std::string bytes = downloaded_bytes();
  std::atomic<int> asked = 0;
  FileServer server([&](const HttpRequest& request) {
    HttpAnswer answer = test::file_answer(request, bytes, "W/\"weak\"");
    if (asked++ == 0) answer.cut_after = 70'000;
    return answer;
  });
  Fetching fetching(server.base() + "/file");
  const auto cut = fetching.run();
  REQUIRE_FALSE(cut);
  CHECK(contains(cut.error().what, "cut before all had come"));
  REQUIRE(fetching.run());
  CHECK(fetching.file() == bytes);
  CHECK(server.requests()[1].headers.count("range") == 0);
}

TEST_CASE("a file that the server lacks or refuses is told from a fault, and writes nothing") {
  for (const auto& [status, end] :
       {std::pair(404, DownloadEnd::missing), std::pair(410, DownloadEnd::missing),
        std::pair(403, DownloadEnd::refused), std::pair(401, DownloadEnd::refused)}) {
    FileServer server([code = status](const HttpRequest&) {
      return HttpAnswer{.status = code, .body = "<html>no</html>"};
    });
    Fetching fetching(server.base() + "/file");
    const auto got = fetching.run();
    REQUIRE(got);
    CHECK(got->end == end);
    CHECK(got->fetched_bytes == 0);
    CHECK(fetching.names() == 0);
  }
  FileServer busy([](const HttpRequest&) { return HttpAnswer{.status = 503, .body = "busy"}; });
  Fetching fetching(busy.base() + "/file");
  const auto got = fetching.run();
  REQUIRE_FALSE(got);
  CHECK(got.error().what == "the server answers 503");
  CHECK(contains(got.error().remedy, "browser"));
  CHECK(fetching.names() == 0);
}

TEST_CASE("a stalled line ends in time, and what came stays for the next time") {
  const std::string bytes = downloaded_bytes();
  std::atomic<bool> first = true;
  FileServer server([&](const HttpRequest& request) {
    HttpAnswer answer = test::file_answer(request, bytes, "\"a\"");
    if (first.exchange(false)) {
      answer.cut_after = 50'000;
      answer.stalls = true;
    }
    return answer;
  });
  Fetching fetching(server.base() + "/file");
  const auto began = std::chrono::steady_clock::now();
  const auto got = fetching.run();
  CHECK(std::chrono::steady_clock::now() - began < std::chrono::seconds(10));
  REQUIRE_FALSE(got);
  CHECK(contains(got.error().what, "stalled: nothing came for 2 s"));
  REQUIRE(fetching.run());
  CHECK(fetching.file() == bytes);
  CHECK(server.sent() == bytes.size());
}

TEST_CASE("a wrong length or sum keeps nothing") {
  const std::string bytes = "abc";
  FileServer server(
      [&](const HttpRequest& request) { return test::file_answer(request, bytes, "\"a\""); });
  Fetching fetching(server.base() + "/file");
  // FIPS 180-2, appendix B.1: the sum of "abc".
  fetching.wish.sha256 = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
  REQUIRE(fetching.run());
  CHECK(fetching.file() == bytes);
  std::filesystem::remove(fetching.wish.to);
  fetching.wish.sha256[0] = 'c';
  const auto other = fetching.run();
  REQUIRE_FALSE(other);
  CHECK(contains(other.error().what, "ba7816bf"));
  CHECK(fetching.names() == 0);
  fetching.wish.sha256.clear();
  fetching.wish.bytes = 4;
  const auto shorter = fetching.run();
  REQUIRE_FALSE(shorter);
  CHECK(shorter.error().what == "the server's file has 3 bytes, not 4");
  CHECK(fetching.names() == 0);
}

TEST_CASE("a server that promises more than it sends gives no file") {
  FileServer server([](const HttpRequest&) {
    return HttpAnswer{.body = "half", .headers = {{"Content-Length", "8"}}};
  });
  Fetching fetching(server.base() + "/file");
  REQUIRE_FALSE(fetching.run());
  CHECK_FALSE(fetching.is_there());
}

TEST_CASE("a file larger than the free space is refused before it comes") {
  FileServer server([](const HttpRequest&) {
    return HttpAnswer{.body = "x", .headers = {{"Content-Length", "9000000000000000"}}};
  });
  Fetching fetching(server.base() + "/file");
  const auto got = fetching.run();
  REQUIRE_FALSE(got);
  CHECK(contains(got.error().what, "MB are free"));
  CHECK(fetching.names() == 0);
}

TEST_CASE("redirects are followed on this machine, but to no other scheme or host without https") {
  const std::string bytes = downloaded_bytes();
  std::string target;
  FileServer server([&](const HttpRequest& request) {
    if (request.path == "/moved") return test::file_answer(request, bytes, "\"a\"");
    return HttpAnswer{.status = 302, .body = "moved", .headers = {{"Location", target}}};
  });
  Fetching fetching(server.base() + "/file");
  target = "/moved";
  REQUIRE(fetching.run());
  CHECK(fetching.file() == bytes);
  std::filesystem::remove(fetching.wish.to);
  for (const char* other : {"file:///etc/hostname", "ftp://127.0.0.1/file", "http://192.0.2.1/file",
                            "http://127.0.0.1@192.0.2.1/file", "gopher://127.0.0.1/file"}) {
    INFO(other);
    target = other;
    const auto got = fetching.run();
    REQUIRE_FALSE(got);
    CHECK(contains(got.error().what, "only https"));
    CHECK(fetching.names() == 0);
  }
  target = "/file";
  const auto circle = fetching.run();
  REQUIRE_FALSE(circle);
  CHECK(contains(circle.error().what, "circle"));
}

TEST_CASE("plain http needs the option even on this machine, and is never spoken elsewhere") {
  FileServer server([](const HttpRequest&) { return HttpAnswer{.body = "x"}; });
  Fetching fetching(server.base() + "/file");
  fetching.wish.allow_local_http = false;
  REQUIRE_FALSE(fetching.run());
  fetching.wish.allow_local_http = true;
  fetching.wish.address = "http://192.0.2.1/file";
  REQUIRE_FALSE(fetching.run());
  fetching.wish.address = "not an address";
  REQUIRE_FALSE(fetching.run());
  CHECK(server.requests().empty());
}

TEST_CASE("nobody at the address is an error that says so") {
  std::string address;
  {
    const test::LoopbackServer gone;
    address = "http://127.0.0.1:" + std::to_string(gone.port()) + "/file";
  }
  Fetching fetching(address);
  const auto got = fetching.run();
  REQUIRE_FALSE(got);
  CHECK(got.error().where == address);
  CHECK(contains(got.error().remedy, "check the connection"));
  CHECK(fetching.names() == 0);
}
