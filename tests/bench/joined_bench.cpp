#include "core/import/joined_import.hpp"
#include "core/import/record_reader.hpp"

#include <algorithm>
#include <chrono>
#include <fstream>
#include <functional>
#include <memory>
#include <string>

#include <fmt/format.h>

// Speed and memory of reading a large set of joined tables: 495 MB with 10,000 television
// facilities among 200,000, generated while they are read.
namespace {

using namespace mastwise;
using Clock = std::chrono::steady_clock;

// Records generated one by one, so that the tables are never in memory.
class MadeStream : public ByteStream {
 public:
  MadeStream(std::string header, std::size_t count, std::function<std::string(std::size_t)> make)
      : rest_(std::move(header)), count_(count), make_(std::move(make)) {}
  Result<std::size_t> read(std::span<char> into) override {
    while (rest_.size() < into.size() && next_ < count_) rest_ += make_(next_++);
    const std::size_t given = std::min(rest_.size(), into.size());
    std::copy_n(rest_.begin(), given, into.begin());
    rest_.erase(0, given);
    return given;
  }
  std::uint64_t size() const override { return 0; }

 private:
  std::string rest_;
  std::size_t count_;
  std::function<std::string(std::size_t)> make_;
  std::size_t next_ = 0;
};

std::string key(char kind, std::size_t number) {
  return fmt::format("{}0000000-0000-4000-8000-{:012}", kind, number);
}

class MadeFiles : public TableFiles {
 public:
  Result<std::unique_ptr<ByteStream>> open(const std::string& name) override {
    const auto made = [](std::string header, std::size_t count,
                         std::function<std::string(std::size_t)> make) {
      return std::unique_ptr<ByteStream>(
          std::make_unique<MadeStream>(std::move(header), count, std::move(make)));
    };
    const std::string text(120, 'r');
    if (name == "facility") {
      return made("fac|call|service|lat|lon|app|remark|^|\n", 200'000, [text](std::size_t i) {
        return fmt::format("{}|Q{:05}|{}|{:.4f}|{:.4f}|{}|{}\nand more|^|\n", i, i % 90'000,
                           i % 20 == 0 ? "TV" : "FM", 25.0 + static_cast<double>(i % 2000) / 100.0,
                           -120.0 + static_cast<double>(i % 5000) / 100.0, key('a', i), text);
      });
    }
    if (name == "antenna") {
      return made("ant|app|ch|erp|remark|^|\n", 400'000, [text](std::size_t i) {
        return fmt::format("{}|{}|{}|{}|{}|^|\n", key('b', i), key('a', i), 14 + i % 23,
                           1 + i % 999, text);
      });
    }
    return made("ant|az|field|^|\n", 36 * 200'000, [](std::size_t i) {
      return fmt::format("{}|{}.0|{:.3f}|^|\n", key('b', i / 36), i % 36 * 10,
                         0.1 + 0.9 * static_cast<double>(i % 36) / 35.0);
    });
  }
};

const char* const kMapping = R"({
  "source": {"name": "PRACTICE"}, "separator": "|", "record_end": "|^|", "raster": "ATSC",
  "datum": "WGS84",
  "tables": [{"name": "f", "file": "facility", "where": {"service": ["TV"]}},
             {"name": "a", "file": "antenna", "key": "app", "joins": "f.app"}],
  "pattern": {"file": "pattern", "key": "ant", "joins": "a.ant", "azimuth": "az",
              "field": "field"},
  "latitude": {"notation": "decimal", "column": "f.lat", "positive": "north"},
  "longitude": {"notation": "decimal", "column": "f.lon", "positive": "east"},
  "fields": {"call_sign": "f.call", "facility_id": "f.fac", "rf_channel": "a.ch",
             "erp_kw": "a.erp"}})";

// The peak memory of the process, kB; 0 if the system does not report it.
long peak_kb() {
  std::ifstream status("/proc/self/status");
  std::string word;
  long kb = 0;
  while (status >> word) {
    if (word == "VmHWM:") status >> kb;
  }
  return kb;
}

}  // namespace

int main() {
  const auto mapping = parse_joined_mapping(kMapping);
  if (!mapping) return 1;
  MadeFiles files;
  std::uint64_t bytes = 0;
  for (const char* name : {"facility", "antenna", "pattern"}) {
    const auto stream = files.open(name);
    std::string piece(1 << 18, '\0');
    while (const auto got = *(*stream)->read({piece.data(), piece.size()})) bytes += got;
  }
  const long before_kb = peak_kb();
  const auto start = Clock::now();
  const auto table = read_joined_tables(files, *mapping);
  const double seconds = std::chrono::duration<double>(Clock::now() - start).count();
  if (!table) {
    fmt::print("{}\n", table.error().message());
    return 1;
  }
  const double megabytes = static_cast<double>(bytes) / 1e6;
  fmt::print(
      "joined tables of {:.0f} MB: {} stations in {:.1f} s, {:.0f} MB a second (making them "
      "included)\n",
      megabytes, table->stations.size(), seconds, megabytes / seconds);
  fmt::print("peak memory {:.1f} MB before, {:.1f} MB after, stations with patterns included\n",
             static_cast<double>(before_kb) / 1e3, static_cast<double>(peak_kb()) / 1e3);
  return 0;
}
