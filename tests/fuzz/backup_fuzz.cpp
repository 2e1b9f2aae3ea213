#include "core/logbook/logbook.hpp"
#include "core/logbook/logbook_csv.hpp"
#include "tests/fuzz/fuzz.hpp"
#include "tests/support/logbook_records.hpp"

#include <sstream>

using namespace mastwise;

// Another tablet's logbook with damaged bytes: four bytes of input are a place and what is written
// there. It is refused with a reason, or its records can be merged and exported. So is the tablet's
// own logbook after the same damage.
namespace {

const fuzz::Scratch& scratch() {
  static const fuzz::Scratch kScratch;
  return kScratch;
}

std::string whole_logbook() {
  const std::string path = scratch().file("whole");
  auto logbook = Logbook::open(path);
  fuzz::require(logbook && logbook->put(test::full_stop("one")) &&
                logbook->put(test::stop_record("two", 44.5, -71.5)) &&
                logbook->put(test::full_outcome("one")) &&
                logbook->put(test::outcome_record("two", "QAAC", Outcome::steady)) &&
                logbook->put(test::sweep_record("sweep", "one")) &&
                logbook->keep_settings(R"({"miles":false})") &&
                logbook->keep_working_state(R"({"search":"QAAB"})") &&
                logbook->keep_antenna({.antenna = safety::Antenna::Raised}));
  std::ifstream file(path, std::ios::binary);
  std::ostringstream bytes;
  bytes << file.rdbuf();
  return bytes.str();
}

std::string damaged(const std::uint8_t* data, std::size_t size) {
  static const std::string kWhole = whole_logbook();
  std::string bytes = kWhole;
  for (; size >= 4; data += 4, size -= 4) {
    const std::size_t place = (std::size_t{data[0]} << 16 | std::size_t{data[1]} << 8 | data[2]);
    bytes[place % bytes.size()] = static_cast<char>(data[3]);
  }
  if (size > 0) bytes.resize(bytes.size() * data[0] / 256);
  return bytes;
}

void check(const LogbookContent& content) {
  auto logbook = Logbook::open(":memory:");
  fuzz::require(static_cast<bool>(logbook));
  const auto report = logbook->merge(content);
  if (!fuzz::read_or_told(report)) return;
  const auto merged = logbook->content();
  fuzz::require(static_cast<bool>(merged));
  fuzz::require(merged->stops.size() <= content.stops.size());
  const auto again = logbook->merge(*merged);
  fuzz::require(again && again->stops.added == 0 && again->outcomes.renewed == 0);
  fuzz::require(static_cast<bool>(read_logbook_csv(logbook_csv(*merged))));
}

void check_own(const std::string& path) {
  auto logbook = Logbook::open(path);
  if (!fuzz::read_or_told(logbook)) return;
  static_cast<void>(fuzz::read_or_told(logbook->antenna()));
  static_cast<void>(fuzz::read_or_told(logbook->antenna_changes()));
  static_cast<void>(fuzz::read_or_told(logbook->settings()));
  static_cast<void>(fuzz::read_or_told(logbook->working_state()));
  static_cast<void>(fuzz::read_or_told(logbook->trusted_date()));
  static_cast<void>(fuzz::read_or_told(logbook->stops_near(*Position::at_deg(44.5, -71.5))));
  static_cast<void>(fuzz::read_or_told(logbook->put(test::stop_record("new", 44.5, -71.5))));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string path = scratch().write("damaged", damaged(data, size));
  const auto content = read_logbook(path);
  if (fuzz::read_or_told(content)) check(*content);
  check_own(path);
  std::error_code ignored;
  std::filesystem::remove(path + "-journal", ignored);
  return 0;
}
