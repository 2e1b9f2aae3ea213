#include "app/model/listing.hpp"

#include "app/words/chances.hpp"
#include "app/words/times.hpp"
#include "core/text/words.hpp"

#include <set>

namespace mastwise {
namespace {

// The rows with the chosen chance; by network, only the best row of each network.
void find_listed(const Model& model, Findings& findings) {
  const double floor_percent = kChanceFloors[model.chance_floor];
  std::set<std::string> brought;
  for (std::size_t i = 0; i < model.stations->rows.size(); ++i) {
    const StationRow& row = model.stations->rows[i];
    const double chance =
        row.outlook && row.outlook->chance_percent ? *row.outlook->chance_percent : 0.0;
    if (chance < floor_percent) continue;
    if (!model.by_network) {
      findings.listed.push_back(i);
      continue;
    }
    std::string first;
    for (const std::string& network : networks_of(row.station)) {
      if (brought.insert(network).second && first.empty()) first = network;
    }
    if (first.empty()) continue;
    findings.listed.push_back(i);
    findings.brought.push_back(first);
  }
}

bool begins_with(std::string_view text, std::string_view beginning) {
  return text.size() >= beginning.size() &&
         words::same_word(text.substr(0, beginning.size()), beginning);
}

// The one network that starts with the searched text.
std::string pinnable_network(const Model& model) {
  const std::string_view wanted = words::trimmed(model.search);
  if (wanted.empty()) return {};
  std::set<std::string> found;
  for (const StationRow& row : model.stations->rows) {
    for (const std::string& network : networks_of(row.station)) {
      if (begins_with(network, wanted)) found.insert(network);
    }
  }
  return found.size() == 1 ? *found.begin() : std::string();
}

// Rows come best first.
std::string wanted_line(const std::vector<StationRow>& rows, const std::string& network) {
  for (const StationRow& row : rows) {
    if (!carries(row.station, network)) continue;
    std::string line = network + ": " + words::title(row.station);
    if (row.outlook) line += ", " + words::chance_number(*row.outlook);
    return line;
  }
  return network + ": no station here";
}

// The gravest caution; another of the same weight adds nothing.
std::string caution_of(const Model& model, const Findings& findings) {
  std::string oldest;
  for (const std::size_t listed : findings.listed) {
    const std::string& date = model.stations->rows[listed].station.provenance.source.date;
    if (!date.empty() && (oldest.empty() || date < oldest)) oldest = date;
  }
  const std::string caution = words::data_caution(oldest, findings.date);
  return caution.empty() ? caution
                         : "Data " + words::data_age(oldest, findings.date) + ". " + caution;
}

}  // namespace

void derive_listing(const Model& model, Findings& findings) {
  if (!model.stations) return;
  find_listed(model, findings);
  findings.pinnable = pinnable_network(model);
  findings.data_caution = caution_of(model, findings);
  if (!model.stations->question.search.empty()) return;
  for (const std::string& network : model.settings.pinned_networks) {
    findings.wanted.push_back(wanted_line(model.stations->rows, network));
  }
}

void derive_networks(const Model& model, Findings& findings) {
  if (!model.stations) return;
  std::set<std::string> networks(model.settings.pinned_networks.begin(),
                                 model.settings.pinned_networks.end());
  for (const StationRow& row : model.stations->rows) {
    for (std::string& network : networks_of(row.station)) networks.insert(std::move(network));
  }
  findings.networks_around.assign(networks.begin(), networks.end());
}

}  // namespace mastwise
