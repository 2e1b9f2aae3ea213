#include "core/plan/scan_help.hpp"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

namespace mastwise {
namespace {

// The order in which a receiver that scans from low to high finds a station.
std::pair<double, RfChannel> scan_place(const Station& station) {
  const auto slot = channel_slot(station.raster, station.rf_channel);
  return {slot ? slot->low_mhz : 0.0, station.rf_channel};
}

double chance_or_least(const ScanCandidate& candidate) {
  return candidate.chance_percent.value_or(-1.0);
}

// The indexes of the candidates, best chance first, then by frequency.
std::vector<std::size_t> by_chance(std::span<const ScanCandidate> candidates) {
  std::vector<std::size_t> order(candidates.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    const auto key = [&](std::size_t i) {
      return std::pair(-chance_or_least(candidates[i]), scan_place(candidates[i].station));
    };
    return key(a) < key(b);
  });
  return order;
}

// Each once, in the order of the programs.
std::vector<std::string> virtual_channels(const Station& station) {
  std::vector<std::string> channels;
  for (const Program& program : station.programs) {
    const std::string& channel = program.virtual_channel;
    const bool is_new = std::find(channels.begin(), channels.end(), channel) == channels.end();
    if (!channel.empty() && is_new) channels.push_back(channel);
  }
  return channels;
}

std::vector<ChannelToEnter> channels_to_enter(std::span<const ScanCandidate> candidates) {
  std::vector<ChannelToEnter> channels;
  for (const std::size_t place : by_chance(candidates)) {
    const Station& station = candidates[place].station;
    const auto slot = channel_slot(station.raster, station.rf_channel);
    const auto center_mhz = slot ? std::optional(slot->center_mhz) : std::nullopt;
    auto channel = std::find_if(channels.begin(), channels.end(), [&](const auto& each) {
      return each.rf_channel == station.rf_channel && each.center_mhz == center_mhz;
    });
    if (channel == channels.end()) {
      channel = channels.insert(channel, {.rf_channel = station.rf_channel,
                                          .center_mhz = center_mhz,
                                          .chance_percent = candidates[place].chance_percent,
                                          .expected = {}});
    }
    channel->expected.push_back({place, station.call_sign, virtual_channels(station)});
  }
  return channels;
}

// "6.2" before "6.10" before "12.1"; other texts sort as text.
struct ByNumber {
  bool operator()(const std::string& a, const std::string& b) const {
    const auto key = [](const std::string& text) {
      const std::size_t dot = std::min(text.find('.'), text.size());
      const std::size_t minor = text.size() - dot;
      return std::tuple(dot, text.substr(0, dot), minor, text);
    };
    return key(a) < key(b);
  }
};

Twins twins_of(std::string virtual_channel, std::vector<std::size_t> places,
               std::span<const ScanCandidate> candidates) {
  std::stable_sort(places.begin(), places.end(), [&](std::size_t a, std::size_t b) {
    return scan_place(candidates[a].station) < scan_place(candidates[b].station);
  });
  Twins twins{.virtual_channel = std::move(virtual_channel), .by_scan = {}, .best = 0};
  for (const std::size_t place : places) {
    const ScanCandidate& each = candidates[place];
    const ScanCandidate& best = candidates[places[twins.best]];
    if (chance_or_least(each) > chance_or_least(best)) twins.best = twins.by_scan.size();
    twins.by_scan.push_back({place, each.station.call_sign, each.station.rf_channel,
                             each.distance_m, each.bearing, each.chance_percent});
  }
  return twins;
}

std::vector<Twins> all_twins(std::span<const ScanCandidate> candidates) {
  std::map<std::string, std::vector<std::size_t>, ByNumber> who_shows;
  for (std::size_t place = 0; place < candidates.size(); ++place) {
    for (std::string& channel : virtual_channels(candidates[place].station)) {
      who_shows[std::move(channel)].push_back(place);
    }
  }
  std::vector<Twins> all;
  for (const auto& [channel, places] : who_shows) {
    if (places.size() > 1) all.push_back(twins_of(channel, places, candidates));
  }
  return all;
}

}  // namespace

ScanPlan plan_scan(std::span<const ScanCandidate> candidates) {
  return {.channels = channels_to_enter(candidates), .twins = all_twins(candidates)};
}

ScanAdvice advise(std::span<const ScanCandidate> candidates, std::span<const ScanTick> ticks) {
  ScanAdvice advice{.state = ScanState::not_finished, .missing = {}};
  std::size_t found = 0;
  // In the order of the chances: whatever is found after a missing one had a smaller chance.
  bool strong_missing = false;
  double best_missing_percent = -1.0;
  for (const std::size_t place : by_chance(candidates)) {
    const ScanTick tick = place < ticks.size() ? ticks[place] : ScanTick::not_tried;
    const double chance_percent = chance_or_least(candidates[place]);
    if (tick == ScanTick::not_found) {
      if (advice.missing.empty()) best_missing_percent = chance_percent;
      advice.missing.push_back(place);
    } else if (tick == ScanTick::found) {
      ++found;
      strong_missing =
          strong_missing || (!advice.missing.empty() && candidates[place].chance_percent &&
                             chance_percent < best_missing_percent);
    }
  }
  const bool finished = !candidates.empty() && found + advice.missing.size() == candidates.size();
  if (finished && advice.missing.empty()) advice.state = ScanState::all_found;
  if (finished && !advice.missing.empty()) {
    advice.state = found == 0       ? ScanState::nothing_found
                   : strong_missing ? ScanState::strong_missing
                                    : ScanState::weak_missing;
  }
  return advice;
}

ScanChoice which_scan(const ReceiverList& list) {
  if (!list.made_at_this_stop) return ScanChoice::full;
  if (list.takes_channels_by_hand) return ScanChoice::by_hand;
  return list.made_on_this_heading ? ScanChoice::add_after_peak : ScanChoice::add_heading;
}

}  // namespace mastwise
