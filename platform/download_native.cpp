#include "platform/atomic_save.hpp"
#include "platform/download.hpp"
#include "platform/download_exchange.hpp"
#include "platform/download_version.hpp"
#include "platform/pack_file.hpp"

#include <memory>
#include <mutex>
#include <optional>
#include <system_error>

#include <curl/curl.h>
#include <fmt/format.h>

namespace mastwise::platform {
namespace {

namespace fs = std::filesystem;

constexpr int kMostRedirects = 5;
constexpr int kMostTries = 5;

struct CloseUrl {
  void operator()(CURLU* url) const { curl_url_cleanup(url); }
};

Error line_error(const std::string& address, const std::string& what) {
  return {.what = what,
          .where = address,
          .remedy = "check the connection and try again: it goes on from where it stopped"};
}

std::string part_of(const std::string& address, CURLUPart part) {
  const std::unique_ptr<CURLU, CloseUrl> url(curl_url());
  char* text = nullptr;
  std::string found;
  if (curl_url_set(url.get(), CURLUPART_URL, address.c_str(), 0) == CURLUE_OK &&
      curl_url_get(url.get(), part, &text, 0) == CURLUE_OK) {
    found = text;
  }
  curl_free(text);
  return found;
}

bool is_allowed(const std::string& address, bool local_http) {
  const std::string scheme = part_of(address, CURLUPART_SCHEME);
  const std::string host = part_of(address, CURLUPART_HOST);
  if (scheme == "https") return !host.empty();
  return scheme == "http" && local_http &&
         (host == "127.0.0.1" || host == "localhost" || host == "[::1]");
}

// The part that a request completes. The last byte of a part that has all of them is asked for
// again, so that the server says whether its file is still the same.
void find_part(Exchange& exchange) {
  exchange.asked = noted_version(exchange.part, exchange.wish.address);
  std::error_code missing;
  std::uint64_t size = fs::file_size(exchange.part, missing);
  if (missing || size == 0 || validator(exchange.asked).empty()) return;
  if (exchange.asked.bytes != 0 && size >= exchange.asked.bytes) {
    size = exchange.asked.bytes - 1;
    fs::resize_file(exchange.part, size, missing);
    if (missing) return;
  }
  exchange.from = size;
}

// The end of a part with all its bytes.
Result<Done> complete(const Exchange& exchange) {
  const DownloadWish& wish = exchange.wish;
  std::error_code unreadable;
  const std::uint64_t size = fs::file_size(exchange.part, unreadable);
  const std::uint64_t right = wish.bytes != 0 ? wish.bytes : exchange.version.bytes;
  if (right != 0 && size != right) {
    forget_part(exchange.part);
    return Error{.what = fmt::format("{} bytes came, not {}; they were deleted", size, right),
                 .where = wish.address,
                 .remedy = "try again, or get the file in a browser"};
  }
  if (!wish.sha256.empty()) {
    const auto sum = sha256_of(exchange.part);
    if (!sum) return sum.error();
    if (*sum != wish.sha256) {
      forget_part(exchange.part);
      return Error{.what = "the file is not the published one: its SHA-256 sum is " + *sum +
                           "; it was deleted",
                   .where = wish.address,
                   .remedy = "try again, or get the file in a browser"};
    }
  }
  if (const auto placed = put_in_place(exchange.part, wish.to); !placed) return placed.error();
  forget_version(exchange.part);
  return Done{};
}

std::optional<DownloadEnd> end_by(long status) {
  constexpr long kUnauthorized = 401, kForbidden = 403, kNotFound = 404, kGone = 410;
  if (status == kNotFound || status == kGone) return DownloadEnd::missing;
  if (status == kUnauthorized || status == kForbidden) return DownloadEnd::refused;
  return std::nullopt;
}

Error not_allowed(const std::string& address) {
  return {.what = "this address is not fetched from: only https is",
          .where = address,
          .remedy = "get the file in a browser, if you trust the address"};
}

Error broken(const Exchange& exchange, const std::string& address) {
  if (exchange.code == CURLE_OPERATION_TIMEDOUT) {
    return line_error(address, fmt::format("the line has stalled: nothing came for {} s",
                                           exchange.wish.stalled_after.count()));
  }
  if (exchange.code == CURLE_PARTIAL_FILE || exchange.code == CURLE_RECV_ERROR) {
    return line_error(address, "the line was cut before all had come");
  }
  return line_error(address, curl_easy_strerror(exchange.code));
}

}  // namespace

Result<Download> download(const DownloadWish& wish, const DownloadWatch& watch) {
  static std::once_flag started;
  std::call_once(started, [] { curl_global_init(CURL_GLOBAL_DEFAULT); });
  constexpr long kRangeNotSatisfiable = 416;
  Download report;
  std::string address = wish.address;
  int redirects = 0;
  for (int tries = 0;;) {
    if (!is_allowed(address, wish.allow_local_http)) return not_allowed(address);
    Exchange exchange{.wish = wish, .watch = watch, .part = wish.to.string() + ".part"};
    find_part(exchange);
    perform(exchange, address);
    const bool has_file = exchange.status == kHttpOk || exchange.status == kHttpPartialContent;
    if (has_file) report.fetched_bytes += exchange.arrived;
    if (exchange.stopped) {
      report.end = DownloadEnd::stopped;
      return report;
    }
    if (exchange.fault) return *exchange.fault;
    if (exchange.other_version || exchange.status == kRangeNotSatisfiable) {
      forget_part(exchange.part);
      if (++tries < kMostTries) continue;
      return line_error(address, "the server's file changes all the time");
    }
    if (!exchange.redirect.empty()) {
      if (++redirects > kMostRedirects) return line_error(address, "this redirects in a circle");
      address = exchange.redirect;
      continue;
    }
    if (const auto end = end_by(exchange.status)) {
      report.end = *end;
      return report;
    }
    if (exchange.status != 0 && !has_file) {
      return Error{.what = fmt::format("the server answers {}", exchange.status),
                   .where = address,
                   .remedy = "try again later, or get the file in a browser"};
    }
    if (exchange.code != CURLE_OK) {
      // The rest comes at once if the line is still there and the server can send it.
      const bool goes_on = exchange.arrived > 0 && !validator(exchange.version).empty() &&
                           exchange.code != CURLE_OPERATION_TIMEDOUT;
      if (goes_on && ++tries < kMostTries) continue;
      return broken(exchange, address);
    }
    if (const auto done = complete(exchange); !done) return done.error();
    std::error_code unknown;
    report.bytes = fs::file_size(wish.to, unknown);
    return report;
  }
}

}  // namespace mastwise::platform
