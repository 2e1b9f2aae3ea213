#include "app/shell/logbook_keeper.hpp"

#include "app/service/damaged_files.hpp"
#include "platform/clock.hpp"

#include <algorithm>
#include <iterator>

namespace mastwise::shell {
namespace {

// The practice area's records stay in memory.
LogbookContent real_records(const Log& log) {
  LogbookContent content;
  const auto& stops = log.stops;
  std::copy_if(stops.begin(), stops.end(), std::back_inserter(content.stops),
               [](const StopRecord& stop) { return !is_practice(stop); });
  for (const OutcomeRecord& outcome : log.outcomes) {
    const bool real = std::any_of(content.stops.begin(), content.stops.end(),
                                  [&](const auto& one) { return one.id == outcome.stop_id; });
    if (real) content.outcomes.push_back(outcome);
  }
  return content;
}

}  // namespace

Result<Done> LogbookKeeper::open(const Log& known) {
  auto opened = service::open_logbook(path_, platform::utc_now());
  if (!opened) return opened.error();
  if (opened->unwritable) return *opened->unwritable;
  if (opened->rescued) {
    notice_ = opened->notice;
    if (const auto merged = opened->logbook->merge(real_records(known)); !merged) {
      return merged.error();
    }
  }
  logbook_ = std::move(opened->logbook);
  return Done{};
}

Result<Done> LogbookKeeper::write(const Change& change, const Log& known) {
  if (!logbook_) {
    if (auto done = open(known); !done) return done;
  }
  auto done = change(*logbook_);
  if (!done) logbook_.reset();
  return done;
}

Result<LogbookRecords> LogbookKeeper::records() {
  if (!logbook_) return Error{.what = "the logbook cannot be read now", .where = path_};
  return service::read_records(*logbook_);
}

}  // namespace mastwise::shell
