#include "platform/download_exchange.hpp"

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <string_view>
#include <system_error>

#include <fmt/format.h>

namespace mastwise::platform {
namespace {

constexpr long kConnect_s = 30;

struct CloseEasy {
  void operator()(CURL* easy) const { curl_easy_cleanup(easy); }
};
struct CloseList {
  void operator()(curl_slist* list) const { curl_slist_free_all(list); }
};

long status_of(const Exchange& exchange) {
  long status = 0;
  curl_easy_getinfo(exchange.easy, CURLINFO_RESPONSE_CODE, &status);
  return status;
}

// "bytes 100-999/1000": the first byte and the length of the whole.
struct ContentRange {
  std::uint64_t first = 0, whole = 0;
};
std::optional<ContentRange> read_content_range(std::string_view text) {
  constexpr std::string_view kUnit = "bytes ";
  if (!text.starts_with(kUnit)) return std::nullopt;
  ContentRange range;
  const char* const end = text.data() + text.size();
  const auto first = std::from_chars(text.data() + kUnit.size(), end, range.first);
  const std::size_t slash = text.find('/');
  if (first.ec != std::errc() || slash == std::string_view::npos) return std::nullopt;
  const auto whole = std::from_chars(text.data() + slash + 1, end, range.whole);
  if (whole.ec != std::errc()) return std::nullopt;
  return range;
}

// Whether the rest that comes is of the version that the part began with.
bool continues(const Exchange& exchange, const ContentRange& range) {
  const FileVersion& now = exchange.version;
  const FileVersion& before = exchange.asked;
  return range.first == exchange.from && (before.bytes == 0 || range.whole == before.bytes) &&
         (now.tag.empty() || now.tag == before.tag) &&
         (now.modified.empty() || now.modified == before.modified);
}

std::size_t take_header(char* bytes, std::size_t size, std::size_t count, void* user) {
  auto& exchange = *static_cast<Exchange*>(user);
  const std::string_view line(bytes, size * count);
  const std::size_t colon = line.find(':');
  if (line.starts_with("HTTP/")) {
    exchange.content_range.clear();
    exchange.version.tag.clear();
    exchange.version.modified.clear();
  } else if (colon != std::string_view::npos) {
    std::string name(line.substr(0, colon));
    std::transform(name.begin(), name.end(), name.begin(), [](char letter) {
      return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter | 0x20) : letter;
    });
    std::string_view value = line.substr(colon + 1);
    while (!value.empty() && value.front() <= ' ') value.remove_prefix(1);
    while (!value.empty() && value.back() <= ' ') value.remove_suffix(1);
    if (name == "etag") exchange.version.tag = value;
    if (name == "last-modified") exchange.version.modified = value;
    if (name == "content-range") exchange.content_range = value;
  }
  return size * count;
}

Error write_fault(const std::filesystem::path& path, int number) {
  return {.what = "cannot write: " + std::generic_category().message(number),
          .where = path.string(),
          .remedy = "check that the disk has free space and that you may write there"};
}

// Decides by the head of the answer how its body goes to the disk. False: not at all.
bool begin_body(Exchange& exchange) {
  const long status = status_of(exchange);
  curl_off_t length = -1;
  curl_easy_getinfo(exchange.easy, CURLINFO_CONTENT_LENGTH_DOWNLOAD_T, &length);
  const std::uint64_t coming = length > 0 ? static_cast<std::uint64_t>(length) : 0;
  if (status == kHttpPartialContent) {
    const auto range = read_content_range(exchange.content_range);
    if (!range || !continues(exchange, *range)) {
      exchange.other_version = true;
      return false;
    }
    exchange.version = exchange.asked;
    exchange.version.bytes = range->whole;
  } else {
    exchange.from = 0;
    exchange.version.bytes = coming;
    forget_part(exchange.part);
  }
  const std::uint64_t all = exchange.version.bytes;
  if (exchange.wish.bytes != 0 && all != 0 && all != exchange.wish.bytes) {
    exchange.fault = Error{
        .what = fmt::format("the server's file has {} bytes, not {}", all, exchange.wish.bytes),
        .where = exchange.wish.address,
        .remedy = "the publisher may have changed it; look in a browser"};
    return false;
  }
  std::error_code unknown;
  const auto space = std::filesystem::space(exchange.part.parent_path(), unknown);
  if (!unknown && coming > space.available) {
    exchange.fault = Error{.what = fmt::format("{:.1f} MB are to come, and {:.1f} MB are free",
                                               static_cast<double>(coming) / 1e6,
                                               static_cast<double>(space.available) / 1e6),
                           .where = exchange.part.parent_path().string(),
                           .remedy = "make room, then try again"};
    return false;
  }
  exchange.version.address = exchange.wish.address;
  if (const auto noted = note_version(exchange.part, exchange.version); !noted) {
    exchange.fault = noted.error();
    return false;
  }
  exchange.file.reset(std::fopen(exchange.part.string().c_str(), exchange.from > 0 ? "ab" : "wb"));
  if (!exchange.file) exchange.fault = write_fault(exchange.part, errno);
  return exchange.file != nullptr;
}

std::size_t take_body(char* bytes, std::size_t size, std::size_t count, void* user) {
  auto& exchange = *static_cast<Exchange*>(user);
  const long status = status_of(exchange);
  constexpr std::uint64_t kMostOfErrorPage = 1 << 20;
  if (status != kHttpOk && status != kHttpPartialContent) {  // an error page
    exchange.arrived += size * count;
    return exchange.arrived > kMostOfErrorPage ? 0 : size * count;
  }
  if (!exchange.file && !begin_body(exchange)) return 0;
  if (std::fwrite(bytes, size, count, exchange.file.get()) != count) {
    exchange.fault = write_fault(exchange.part, errno);
    return 0;
  }
  exchange.arrived += size * count;
  return size * count;
}

int take_progress(void* user, curl_off_t, curl_off_t, curl_off_t, curl_off_t) {
  auto& exchange = *static_cast<Exchange*>(user);
  curl_off_t rate = 0;
  curl_easy_getinfo(exchange.easy, CURLINFO_SPEED_DOWNLOAD_T, &rate);
  if (!exchange.watch) return 0;
  const bool file_comes = exchange.file != nullptr;
  exchange.stopped =
      !exchange.watch({.done_bytes = exchange.from + (file_comes ? exchange.arrived : 0),
                       .all_bytes = exchange.version.bytes,
                       .bytes_per_s = static_cast<double>(rate)});
  return exchange.stopped ? 1 : 0;
}

}  // namespace

void perform(Exchange& exchange, const std::string& address) {
  const std::unique_ptr<CURL, CloseEasy> easy(curl_easy_init());
  exchange.easy = easy.get();
  const auto set = [&](CURLoption option, auto value) {
    curl_easy_setopt(easy.get(), option, value);
  };
  set(CURLOPT_URL, address.c_str());
  set(CURLOPT_PROTOCOLS_STR, exchange.wish.allow_local_http ? "https,http" : "https");
  set(CURLOPT_FOLLOWLOCATION, 0L);
  set(CURLOPT_NOSIGNAL, 1L);
  set(CURLOPT_USERAGENT, "Mastwise");
  set(CURLOPT_CONNECTTIMEOUT, kConnect_s);
  set(CURLOPT_LOW_SPEED_LIMIT, 1L);
  set(CURLOPT_LOW_SPEED_TIME, static_cast<long>(exchange.wish.stalled_after.count()));
  set(CURLOPT_HEADERFUNCTION, &take_header);
  set(CURLOPT_HEADERDATA, static_cast<void*>(&exchange));
  set(CURLOPT_WRITEFUNCTION, &take_body);
  set(CURLOPT_WRITEDATA, static_cast<void*>(&exchange));
  set(CURLOPT_NOPROGRESS, 0L);
  set(CURLOPT_XFERINFOFUNCTION, &take_progress);
  set(CURLOPT_XFERINFODATA, static_cast<void*>(&exchange));
  if (exchange.wish.allow_local_http) set(CURLOPT_NOPROXY, "127.0.0.1,localhost,::1");
  std::unique_ptr<curl_slist, CloseList> headers;
  if (exchange.from > 0) {
    const std::string range = fmt::format("{}-", exchange.from);
    set(CURLOPT_RANGE, range.c_str());
    const std::string same = "If-Range: " + validator(exchange.asked);
    headers.reset(curl_slist_append(nullptr, same.c_str()));
    set(CURLOPT_HTTPHEADER, headers.get());
  }
  exchange.code = curl_easy_perform(easy.get());
  exchange.status = status_of(exchange);
  const char* redirect = nullptr;
  curl_easy_getinfo(easy.get(), CURLINFO_REDIRECT_URL, &redirect);
  if (redirect != nullptr) exchange.redirect = redirect;
  // A file of no bytes has no body.
  if (exchange.code == CURLE_OK && exchange.status == kHttpOk && !exchange.file) {
    begin_body(exchange);
  }
  if (exchange.file && std::fclose(exchange.file.release()) != 0) {
    exchange.fault = write_fault(exchange.part, errno);
  }
  exchange.easy = nullptr;
}

}  // namespace mastwise::platform
