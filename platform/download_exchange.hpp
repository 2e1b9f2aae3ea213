#pragma once

#include "platform/download.hpp"
#include "platform/download_version.hpp"

#include <cstdio>
#include <memory>
#include <optional>

#include <curl/curl.h>

namespace mastwise::platform {

inline constexpr long kHttpOk = 200, kHttpPartialContent = 206;

struct CloseFile {
  void operator()(std::FILE* file) const { std::fclose(file); }
};

// One request of a download, and its answer.
struct Exchange {
  const DownloadWish& wish;
  const DownloadWatch& watch;
  std::filesystem::path part = {};
  std::uint64_t from = 0;  // bytes of the part, which need not come again
  FileVersion asked = {};  // that those are of

  // Set by perform().
  CURL* easy = nullptr;
  FileVersion version = {};  // of the answer
  std::string content_range = {};
  std::unique_ptr<std::FILE, CloseFile> file = {};
  std::uint64_t arrived = 0;  // bytes of the body
  CURLcode code = CURLE_OK;
  long status = 0;
  std::string redirect = {};  // where the answer sends us, if anywhere
  std::optional<Error> fault = {};
  bool stopped = false;
  bool other_version = false;  // the rest that came is not of this file
};

// Sends the request and writes the body of a 200 or 206 to the part. Follows no redirect.
void perform(Exchange& exchange, const std::string& address);

}  // namespace mastwise::platform
