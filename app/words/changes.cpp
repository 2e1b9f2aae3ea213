#include "app/words/changes.hpp"

#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <vector>

#include <fmt/format.h>

namespace mastwise::words {
namespace {

std::string changed_facts(const StationChange& change, bool miles) {
  std::vector<std::string> facts;
  if (change.rf_channel_before) {
    facts.push_back(fill(say("RF {channel}, before {old}."),
                         {{"channel", std::string(to_text(change.rf_channel))},
                          {"old", std::string(to_text(*change.rf_channel_before))}}));
  }
  if (change.erp_kw_before && change.erp_kw) {
    facts.push_back(
        fill(say("Power {power}, before {old}."),
             {{"power", power(*change.erp_kw)}, {"old", power(*change.erp_kw_before)}}));
  }
  if (change.moved_m > 0.0) {
    facts.push_back(
        fill(say("Site moved {distance}."), {{"distance", distance(change.moved_m, miles)}}));
  }
  if (!change.call_sign_before.empty()) {
    facts.push_back(fill(say("Called {name} before."), {{"name", change.call_sign_before}}));
  }
  return fmt::format("{}", fmt::join(facts, " "));
}

}  // namespace

std::string change_title(const StationChange& change, bool miles) {
  std::string title = change.call_sign;
  if (!change.city.empty()) title += ", " + change.city;
  if (change.distance_m) title += ", " + whole_distance(*change.distance_m, miles);
  return title;
}

std::string change_facts(const StationChange& change, bool miles) {
  const std::string channel(to_text(change.rf_channel));
  switch (change.kind) {
    case StationChange::Kind::gone:
      return fill(say("Gone; it was on RF {channel}."), {{"channel", channel}});
    case StationChange::Kind::added:
      if (!change.erp_kw) return fill(say("New on RF {channel}."), {{"channel", channel}});
      return fill(say("New on RF {channel}, {power}."),
                  {{"channel", channel}, {"power", power(*change.erp_kw)}});
    case StationChange::Kind::changed:
      break;
  }
  return changed_facts(change, miles);
}

std::string lost_pin(const std::string& call_sign, const std::string& source,
                     const std::string& channel_instead, const std::string& source_instead) {
  std::string words = fill(say("{station}, which you pinned, is no longer listed by {source}."),
                           {{"station", call_sign}, {"source", source}});
  if (channel_instead.empty()) return words;
  return words + " " +
         fill(say("Now {source} lists it on RF {channel}."),
              {{"source", source_instead}, {"channel", channel_instead}});
}

}  // namespace mastwise::words
