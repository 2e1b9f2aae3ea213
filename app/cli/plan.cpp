#include "app/cli/arguments.hpp"
#include "app/cli/place_options.hpp"
#include "app/cli/verbs.hpp"
#include "app/service/clocks.hpp"
#include "app/service/plan_words.hpp"
#include "app/service/startup.hpp"
#include "app/words/chances.hpp"
#include "app/words/units.hpp"
#include "core/plan/turn_plan.hpp"
#include "core/reception/compare.hpp"
#include "core/text/words.hpp"

#include <algorithm>
#include <iostream>
#include <memory>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

using nlohmann::json;
using reception::Survey;

// A station that no heading brings within reach does not get a line.
constexpr double kLongShot_percent = 10.0;

struct PlanOptions {
  PlaceOptions place = {};
  std::vector<std::string> want, pin;
  std::string network, date;
  bool all = false;
  double floor_percent = kUsualFloor_percent;
  bool json = false;
};

// A plan with what is needed to say it.
struct Planned {
  const Survey& survey;
  const ChanceCurveList& curves;
  const TurnPlanRequest& request;
  TurnPlan plan;
  Declination declination;
};

Result<Done> add_call_signs(const Survey& survey, const std::vector<std::string>& call_signs,
                            bool pinned, std::vector<PlanWish>& wishes) {
  for (const std::string& call_sign : call_signs) {
    PlanWish wish = wish_for(survey, [&](const Station& station) {
      return words::same_word(station.call_sign, call_sign);
    });
    if (wish.stations.empty()) {
      return Error{.what = "no station " + call_sign + " is in reach of this place",
                   .where = pinned ? "--pin" : "--want",
                   .remedy = "run survey to list the stations in reach"};
    }
    wish.pinned = pinned;
    wishes.push_back(std::move(wish));
  }
  return Done{};
}

Result<std::vector<PlanWish>> wishes_of(const PlanOptions& options, const Survey& survey,
                                        const ChanceCurveList& curves) {
  std::vector<PlanWish> wishes;
  if (const auto added = add_call_signs(survey, options.pin, true, wishes); !added) {
    return added.error();
  }
  if (const auto added = add_call_signs(survey, options.want, false, wishes); !added) {
    return added.error();
  }
  if (!options.network.empty()) {
    const reception::Wish network{reception::Wish::Kind::network, options.network};
    wishes.push_back(wish_for(
        survey, [&](const Station& station) { return reception::grants(station, network); }));
    if (wishes.back().stations.empty()) {
      return Error{.what = "no station in reach of this place carries " + options.network,
                   .where = "--network",
                   .remedy = "run survey to list the stations in reach"};
    }
  }
  if (!options.all && !wishes.empty()) return wishes;
  for (PlanWish& wish : likely_wishes(curves, kLongShot_percent)) {
    wishes.push_back(std::move(wish));
  }
  return wishes;
}

json station_json(const Station& station) {
  return {{"call_sign", station.call_sign}, {"rf_channel", station.rf_channel.number}};
}

json heading_json(const Planned& planned, const PlannedHeading& heading) {
  json brings = json::array(), loses = json::array(), off_axis_for = json::array();
  for (const Brought& each : heading.brings) {
    json station = station_json(planned.survey.station(each.station));
    station.update({{"chance", each.chance_percent},
                    {"best_chance", each.best_percent},
                    {"wanted", each.wished},
                    {"relied_on", each.relied_on}});
    brings.push_back(std::move(station));
  }
  for (const Lost& each : heading.loses) {
    json station = station_json(planned.survey.station(each.station));
    station.update({{"chance", each.chance_percent},
                    {"best_chance", each.best_percent},
                    {"wanted", each.wished}});
    loses.push_back(std::move(station));
  }
  for (const OffAxis& each : heading.off_axis_for) {
    off_axis_for.push_back({{"station", station_json(planned.survey.station(each.station))},
                            {"interferer", station_json(planned.survey.station(each.interferer))},
                            {"gain_percent", each.gain_percent}});
    const auto aim = null_aim_at(planned.survey, planned.curves, each.station, heading.bearing,
                                 planned.request.floor_percent);
    if (!aim) continue;
    json lost = json::array();
    for (const std::size_t one : aim->loses) {
      lost.push_back(station_json(planned.survey.station(one)));
    }
    off_axis_for.back()["null"] = {{"width_deg", aim->null.width_deg},
                                   {"depth_db", aim->null.depth_db},
                                   {"loses", std::move(lost)}};
  }
  return {{"bearing_true_deg", heading.bearing.degrees()},
          {"bearing_magnetic_deg", to_magnetic(heading.bearing, planned.declination).degrees()},
          {"slack_left_deg", heading.slack.left_deg},
          {"slack_right_deg", heading.slack.right_deg},
          {"brings", brings},
          {"loses", loses},
          {"off_axis_for", off_axis_for}};
}

json plan_json(const Planned& planned) {
  json headings = json::array(), out_of_plan = json::array();
  for (const PlannedHeading& heading : planned.plan.headings) {
    headings.push_back(heading_json(planned, heading));
  }
  for (const OutOfPlan& each : planned.plan.out_of_plan) {
    const PlanWish& wish = planned.request.wishes[each.wish];
    json station =
        station_json(planned.survey.station(each.station.value_or(wish.stations.front())));
    station["best_chance"] = each.best_percent ? json(*each.best_percent) : json(nullptr);
    station["pinned"] = wish.pinned;
    out_of_plan.push_back(std::move(station));
  }
  return {{"headings", headings},
          {"out_of_plan", out_of_plan},
          {"floor_percent", planned.request.floor_percent},
          {"fewest_proved", planned.plan.fewest_proved}};
}

std::string station_line(const Station& station, double chance_percent) {
  return fmt::format("  {:>6} {:<12} {:<14} RF {}", words::chance_number(chance_percent),
                     to_text(reception::chance_word(chance_percent)), words::title(station),
                     to_text(station.rf_channel));
}

void print_heading(const Planned& planned, const PlannedHeading& heading) {
  const std::string slack = heading.slack.all_round()
                                ? std::string("any heading works")
                                : fmt::format("good from {} left to {} right",
                                              words::tenths_of_degree(heading.slack.left_deg),
                                              words::tenths_of_degree(heading.slack.right_deg));
  std::cout << fmt::format("{} true, {} magnetic: {}\n", words::whole_degrees(heading.bearing),
                           words::whole_degrees(to_magnetic(heading.bearing, planned.declination)),
                           slack);
  for (const Brought& each : heading.brings) {
    std::cout << station_line(planned.survey.station(each.station), each.chance_percent)
              << (each.wished ? "\n" : "  (also)\n");
  }
  for (const OffAxis& each : heading.off_axis_for) {
    std::cout << fmt::format("  aimed beside {} so that {} disturbs less: {:.0f} % more\n",
                             words::title(planned.survey.station(each.station)),
                             words::title(planned.survey.station(each.interferer)),
                             each.gain_percent);
  }
  if (!heading.loses.empty()) std::cout << "  lost here:\n";
  for (const Lost& each : heading.loses) {
    std::cout << station_line(planned.survey.station(each.station), each.chance_percent)
              << fmt::format(", elsewhere {}\n", words::chance_number(each.best_percent));
  }
}

void print_text(const Planned& planned) {
  for (const PlannedHeading& heading : planned.plan.headings) print_heading(planned, heading);
  if (planned.plan.headings.empty()) std::cout << "No heading brings in the wanted stations.\n";
  if (!planned.plan.fewest_proved) {
    std::cout << "A plan with fewer headings may exist: the search stopped early.\n";
  }
  if (!planned.plan.out_of_plan.empty()) std::cout << "Not received at any heading:\n";
  for (const OutOfPlan& each : planned.plan.out_of_plan) {
    const PlanWish& wish = planned.request.wishes[each.wish];
    const Station& station = planned.survey.station(each.station.value_or(wish.stations.front()));
    const std::string pinned = wish.pinned ? ", pinned" : "";
    if (each.best_percent) {
      std::cout << station_line(station, *each.best_percent) << " at best" << pinned << '\n';
    } else {
      std::cout << fmt::format("  {}: chance unknown{}\n", words::title(station), pinned);
    }
  }
}

Result<Done> print_plan(const PlanOptions& options) {
  const auto place = place_of(options.place);
  if (!place) return place.error();
  const LocalZone zone = service::Clocks::of_this_system().at(place->question.from);
  const auto date = date_argument("--date", options.date, *zone.clocks);
  if (!date) return date.error();
  const auto magnetic = service::load_magnetic_model();
  if (!magnetic) return magnetic.error();
  StopSurveyor surveyor(place->sources);
  StationsQuestion question = place->question;
  question.month = month_of(local_day(*date, *zone.clocks));
  const reception::Receiver receiver = receiver_of(question);
  const auto survey = surveyor.countries().of_whole_land(
      question.practice, [&]() -> Result<std::optional<reception::Survey>> {
        const auto visited = surveyor.countries().visit(question.practice);
        if (!visited) return visited.error();
        return surveyor.survey(*visited->country, receiver, {});
      });
  if (!survey) return survey.error();
  const ChanceCurveList curves = surveyor.curves(**survey);
  const auto wishes = wishes_of(options, **survey, curves);
  if (!wishes) return wishes.error();
  const TurnPlanRequest request{.wishes = *wishes, .floor_percent = options.floor_percent};
  const Planned planned{.survey = **survey,
                        .curves = curves,
                        .request = request,
                        .plan = turn_plan(curves, request),
                        .declination = magnetic->at(receiver.position, *date).declination};
  if (options.json) {
    print(plan_json(planned));
    return Done{};
  }
  if (place->question.practice) std::cout << kPracticeLine;
  print_text(planned);
  return Done{};
}

}  // namespace

void add_plan(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<PlanOptions>();
  CLI::App* verb =
      program.add_subcommand("plan", "Find the fewest headings that bring in the wanted stations");
  add_place_options(*verb, options->place);
  verb->add_option("--want", options->want, "wanted call signs (default: everything)")
      ->delimiter(',');
  verb->add_option("--network", options->network, "any station of this network");
  verb->add_flag("--all", options->all, "every station that can be received");
  verb->add_option("--pin", options->pin, "call signs that every plan must bring in")
      ->delimiter(',');
  verb->add_option("--floor", options->floor_percent, "lowest chance that counts, in percent")
      ->check(CLI::Range(1.0, 99.0));
  verb->add_option("--date", options->date, "date for the declination (default: today)");
  verb->add_flag("--json", options->json, "print one JSON object");
  verb->callback([&chosen, options] { chosen = [options] { return print_plan(*options); }; });
}

}  // namespace mastwise::cli
