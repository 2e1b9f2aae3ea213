#include "app/service/clocks.hpp"

#include "platform/files.hpp"
#include "platform/time_zones.hpp"

#include <memory>
#include <utility>

namespace mastwise::service {
namespace {

std::optional<zones::ZoneMap> load_zones() {
  auto file = platform::read_file(platform::assets_folder() + "/zones/zones.bin");
  if (!file) return std::nullopt;
  auto read = zones::ZoneMap::load(*std::move(file));
  if (!read) return std::nullopt;
  return *std::move(read);
}

LocalZone by(LocalZone::Origin origin, TimeZone zone) {
  return {.origin = origin, .clocks = std::make_shared<const TimeZone>(std::move(zone))};
}

}  // namespace

Clocks::Clocks(std::optional<zones::ZoneMap> places, Rules rules, std::optional<TimeZone> tablet)
    : places_(std::move(places)), rules_(std::move(rules)) {
  if (tablet) elsewhere_ = by(LocalZone::Origin::Tablet, *std::move(tablet));
}

Clocks Clocks::of_this_system() {
  return {load_zones(), platform::time_zone, platform::tablet_zone()};
}

LocalZone Clocks::at(const std::optional<Position>& position) {
  const std::string name = places_ && position ? places_->zone_at(*position) : std::string();
  if (name.empty()) return elsewhere_;
  const auto known = known_.find(name);
  if (known != known_.end()) return known->second;
  auto rules = rules_(name);
  LocalZone found = rules ? by(LocalZone::Origin::Place, *std::move(rules)) : elsewhere_;
  return known_.emplace(name, std::move(found)).first->second;
}

std::function<LocalZone(const std::optional<Position>&)> clocks_of_this_system() {
  return [clocks = std::make_shared<Clocks>(Clocks::of_this_system())](
             const std::optional<Position>& position) { return clocks->at(position); };
}

}  // namespace mastwise::service
