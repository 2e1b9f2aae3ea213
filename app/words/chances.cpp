#include "app/words/chances.hpp"

#include "app/words/language.hpp"
#include "app/words/phrases.hpp"

#include <algorithm>
#include <vector>

#include <fmt/format.h>

namespace mastwise::words {

std::string chance_number(double percent) {
  // No evening is certain.
  constexpr double kMost = 99.0;
  return fmt::format("{:.0f} %", std::min(kMost, percent));
}

std::string chance_number(const reception::Outlook& outlook) {
  return outlook.chance_percent ? chance_number(*outlook.chance_percent) : "";
}

std::string chance_word(const reception::Outlook& outlook) {
  if (outlook.decoding == gear::Decoding::impossible) return phrases().chances.not_on_this_tv;
  if (!outlook.chance_percent) return phrases().chances.unknown;
  return say(to_text(reception::chance_word(*outlook.chance_percent)));
}

std::string models(const reception::Outlook& outlook) {
  const auto& p = phrases().chances;
  if (!outlook.field_dbuvm) return p.not_computed;
  const std::string field = fmt::format("{:.0f}", *outlook.field_dbuvm);
  if (!outlook.spread_db) return fill(p.area_field, {{"field", field}});
  return fill(p.field, {{"field", field}, {"spread", fmt::format("{:.0f}", *outlook.spread_db)}});
}

std::string evening() {
  return phrases().chances.ordinary_evening;
}

std::string surroundings(reception::Surroundings surroundings, bool in_leaf) {
  const auto& p = phrases().chances;
  const std::string around = say(to_text(surroundings));
  if (reception::figures(surroundings).leaves_m == 0.0) return around;
  return fill(in_leaf ? p.in_leaf : p.bare, {{"around", around}});
}

std::string slack(const std::optional<Slack>& slack) {
  const auto& p = phrases().chances;
  if (!slack) return p.tolerance_unknown;
  if (slack->all_round()) return p.any_heading;
  return fill(p.tolerance, {{"left", fmt::format("{:.0f}", slack->left_deg)},
                            {"right", fmt::format("{:.0f}", slack->right_deg)}});
}

std::string aimed_beside(const std::string& station, const std::string& interferer,
                         double gain_percent) {
  return fill(phrases().chances.beside, {{"station", station},
                                         {"interferer", interferer},
                                         {"gain", fmt::format("{:.0f}", gain_percent)}});
}

std::string on_null(const std::string& station, const std::string& interferer,
                    const std::string& heading, double gain_percent,
                    const std::vector<std::string>& loses) {
  constexpr std::size_t kNamed = 2;
  const std::string gains =
      fill(say("At {heading} a null lies on {interferer}: {station} gains {gain} points"),
           {{"heading", heading},
            {"interferer", interferer},
            {"station", station},
            {"gain", fmt::format("{:.0f}", gain_percent)}});
  if (loses.empty()) return gains;
  if (loses.size() > kNamed) {
    return fill(say("{gains}, {count} stations are lost"),
                {{"gains", gains}, {"count", std::to_string(loses.size())}});
  }
  const std::string names =
      loses.size() == 1 ? loses.front()
                        : fill(say("{one} and {other}"), {{"one", loses[0]}, {"other", loses[1]}});
  return fill(say("{gains}, lost: {names}"), {{"gains", gains}, {"names", names}});
}

std::string at_best(const std::string& name, const std::optional<double>& best_percent) {
  if (!best_percent) return name;
  return fill(phrases().chances.at_best,
              {{"name", name}, {"chance", chance_number(*best_percent)}});
}

std::string programs(const Station& station) {
  std::string line;
  for (const Program& program : station.programs) {
    if (!line.empty()) line += ", ";
    line += program.virtual_channel;
    const std::string& name = program.name.empty() ? program.network : program.name;
    if (!name.empty()) line += (program.virtual_channel.empty() ? "" : " ") + name;
  }
  return line;
}

std::string title(const Station& station) {
  if (station.programs.empty() || station.programs.front().virtual_channel.empty()) {
    return station.call_sign;
  }
  return station.call_sign + " " + station.programs.front().virtual_channel;
}

std::string carries(const Station& station) {
  std::vector<std::string> names;
  const auto add = [&](const std::string& name) {
    if (!name.empty() && std::find(names.begin(), names.end(), name) == names.end()) {
      names.push_back(name);
    }
  };
  add(station.network);
  for (const Program& program : station.programs) add(program.network);
  if (!names.empty()) return fmt::format("{}", fmt::join(names, ", "));
  if (station.state.empty()) return station.city;
  return station.city.empty() ? station.state : station.city + ", " + station.state;
}

}  // namespace mastwise::words
