#pragma once

#include "core/result.hpp"

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <string>

namespace mastwise::platform {

struct DownloadProgress {
  std::uint64_t done_bytes = 0;
  std::uint64_t all_bytes = 0;  // 0: the server has not said
  double bytes_per_s = 0.0;     // since the connection began
};
// Called about once a second and more often; returns false to stop.
using DownloadWatch = std::function<bool(const DownloadProgress&)>;

struct DownloadWish {
  std::string address = {};                // https
  std::filesystem::path to = {};           // in a folder that exists; an existing file is replaced
  std::uint64_t bytes = 0;                 // that it must have; 0: any number
  std::string sha256 = {};                 // that it must have, in lower case; empty: not checked
  bool allow_local_http = false;           // plain http too, but only to this machine: for tests
  std::chrono::seconds stalled_after{60};  // without a byte; above 0
};

enum class DownloadEnd {
  whole,    // the file is there
  missing,  // the server has no such file (404, 410): nothing was written
  refused,  // the server refuses this (401, 403): nothing was written
  stopped,  // by the watch: what came is kept for the next time
};

struct Download {
  DownloadEnd end = DownloadEnd::whole;
  std::uint64_t bytes = 0;          // of the file
  std::uint64_t fetched_bytes = 0;  // that came over the line now
};

// Downloads one file. It grows as "<to>.part" and gets its name when it is whole. Beside it,
// "<to>.part.of" says which version of the file that is, so that a later call fetches only the
// rest, and everything anew if the server has another version meanwhile (RFC 9110, If-Range). After
// a cut in the middle it goes on at once, a few times, as long as bytes arrive. Only https is
// spoken, also after redirects, of which five are followed; the certificate is checked. Errors: no
// connection, a stalled or cut line, an answer other than above, a redirect to anything but https,
// another length or sum than wished (then nothing is kept), a full disk (told before the file is
// fetched, if the server says its size).
Result<Download> download(const DownloadWish& wish, const DownloadWatch& watch = {});

}  // namespace mastwise::platform
