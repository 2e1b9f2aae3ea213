#include "app/cli/arguments.hpp"
#include "app/cli/verbs.hpp"
#include "app/shell/startup.hpp"

#include <iostream>
#include <memory>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

struct CardOptions {
  std::string at, to, station, date, catalog;
  std::optional<double> nose_deg;
  bool json = false;
};

struct CardInputs {
  Position from;
  Destination to;
  std::optional<RigHeading> nose;
};

// With neither a place nor a station: the practice area's.
Result<CardInputs> practice_inputs() {
  const auto practice = shell::load_practice();
  if (!practice) return practice.error();
  const Station& station = practice->target;
  return CardInputs{practice->position, {station.position, station}, practice->nose};
}

Result<CardInputs> card_inputs(const CardOptions& options) {
  if (options.at.empty() && options.to.empty() && options.station.empty()) {
    return practice_inputs();
  }
  if (options.at.empty()) {
    return Error{.what = "the card needs the place of the rig", .remedy = "add --at POSITION"};
  }
  if (options.to.empty() == options.station.empty()) {
    return Error{.what = "the card needs one aim",
                 .remedy = "add either --to POSITION or --station CALL"};
  }
  const auto from = position_argument("--at", options.at);
  if (!from) return from.error();
  auto to = destination_argument(options.to, options.station, options.catalog);
  if (!to) return to.error();
  const auto nose = nose_argument(options.nose_deg);
  if (!nose) return nose.error();
  if (*from == to->position) {
    return Error{.what = "the rig and the aim are the same place, so there is no heading",
                 .remedy = "check --at and --to"};
  }
  return CardInputs{*from, std::move(*to), *nose};
}

Result<Done> print_card(const CardOptions& options) {
  const auto inputs = card_inputs(options);
  if (!inputs) return inputs.error();
  const auto date = date_argument("--date", options.date);
  if (!date) return date.error();
  const auto magnetic = shell::load_magnetic_model();
  if (!magnetic) return magnetic.error();
  const AimCard card = aim_card(inputs->from, inputs->to.position, *date, *magnetic, inputs->nose);
  if (options.json) {
    print(card_json(card));
    return Done{};
  }
  const bool practice = options.at.empty();
  if (practice) std::cout << kPracticeLine;
  std::cout << card_text(card, inputs->from, inputs->to, *date);
  return Done{};
}

}  // namespace

void add_card(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<CardOptions>();
  CLI::App* verb = program.add_subcommand("card", "The heading from a place to a station");
  verb->add_option("--at", options->at, "where the rig stands, in any notation");
  auto* to = verb->add_option("--to", options->to, "the aim, in any notation");
  verb->add_option("--station", options->station, "the aim, as a call sign of the catalog")
      ->excludes(to);
  verb->add_option("--catalog", options->catalog, "the catalog's file in place of the user's own");
  verb->add_option("--date", options->date, "the date for the declination; today if not given");
  verb->add_option("--nose", options->nose_deg, "true heading of the rig's nose in degrees");
  verb->add_flag("--json", options->json, "print one JSON object");
  verb->callback([&chosen, options] { chosen = [options] { return print_card(*options); }; });
}

}  // namespace mastwise::cli
