#include "app/cli/place_options.hpp"

#include "app/cli/arguments.hpp"

namespace mastwise::cli {

void add_place_options(CLI::App& verb, PlaceOptions& options) {
  verb.add_option("--at", options.at, "the place (default: the practice area)");
  add_stop_options(verb, options.stop);
}

Result<StopSetting> place_of(const PlaceOptions& options) {
  const auto setting = stop_setting(options.stop, options.at.empty());
  if (!setting) return setting.error();
  StopSetting place = *setting;
  place.question.from = place.practice_position;
  if (!options.at.empty()) {
    const auto at = position_argument("--at", options.at);
    if (!at) return at.error();
    place.question.from = *at;
  }
  if (const auto added = add_lessons(place.question); !added) return added.error();
  return place;
}

}  // namespace mastwise::cli
