#include "app/cli/arguments.hpp"
#include "app/cli/stop_options.hpp"
#include "app/cli/verbs.hpp"
#include "app/paper/layout.hpp"
#include "app/paper/print.hpp"
#include "app/service/clocks.hpp"
#include "app/service/startup.hpp"
#include "app/service/station_search.hpp"

#include <iostream>
#include <memory>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

struct CardOptions {
  std::string at, to, station, date, standing;
  StopOptions stop = {};
  std::optional<double> nose_deg;
  bool json = false;
  std::string pdf, png, page = "letter";
  int dots_per_inch = paper::kUsualDpi;
  bool plan = false;

  bool on_paper() const { return !pdf.empty() || !png.empty(); }
};

struct CardInputs {
  Position from;
  Destination to;
  std::optional<RigHeading> nose;
  std::optional<Standing> standing;
};

// Without a place or a station, the practice area is used.
Result<CardInputs> practice_inputs() {
  const auto practice = service::load_practice();
  if (!practice) return practice.error();
  const Station& station = practice->target;
  return CardInputs{practice->position, {station.position, station}, practice->nose, {}};
}

void check_usage(const CardOptions& options) {
  if (options.plan && !options.on_paper()) {
    wrong_usage({.what = "the plan is printed on the paper card only",
                 .where = "--plan",
                 .remedy = "add --pdf FILE or --png FILE, or use the verb plan"});
  }
  if (options.at.empty() && options.to.empty() && options.station.empty()) return;
  if (options.at.empty()) {
    wrong_usage({.what = "the card needs the place of the rig", .remedy = "add --at POSITION"});
  }
  if (options.to.empty() == options.station.empty()) {
    wrong_usage(
        {.what = "the card needs one target", .remedy = "add --to POSITION or --station CALL"});
  }
}

Result<CardInputs> card_inputs(const CardOptions& options) {
  if (options.at.empty() && options.to.empty() && options.station.empty()) {
    return practice_inputs();
  }
  const auto from = position_argument("--at", options.at);
  if (!from) return from.error();
  auto to = destination_argument(options.to, options.station, options.stop.catalog);
  if (!to) return to.error();
  const auto nose = nose_argument(options.nose_deg);
  if (!nose) return nose.error();
  if (*from == to->position) {
    return Error{
        .what = "the rig and the target are in the same place, so the heading is undefined",
        .remedy = "check --at and --to"};
  }
  return CardInputs{*from, std::move(*to), *nose, {}};
}

// Surveys the stop for the aiming tolerance, the chance and the plan.
Result<StationsAnswer> answer_of(const CardOptions& options, const CardInputs& inputs,
                                 std::chrono::local_days day) {
  const auto setting = stop_setting(options.stop, options.at.empty());
  if (!setting) return setting.error();
  StationsQuestion question = setting->question;
  question.from = inputs.from;
  question.month = month_of(day);
  if (const auto added = add_lessons(question); !added) return added.error();
  question.plan_for = PlanFor::All;
  if (inputs.to.station) question.target = key_of(*inputs.to.station);
  StationsAnswer answer = station_answerer(setting->sources)(
      question, {.publish = [](const StationsAnswer&) {}, .superseded = [] { return false; }});
  if (!answer.trouble.empty()) return Error{.what = answer.trouble};
  return answer;
}

Result<paper::PaperCard> paper_card(const CardOptions& options, const CardInputs& inputs,
                                    const AimCard& aim, UtcTime date, std::chrono::local_days day) {
  paper::CardFacts facts{
      .practice = options.at.empty(),
      .stop = inputs.from,
      .date = date,
      .day = day,
      .aim = aim,
      .station = inputs.to.station,
      .context = compass_context(aim, inputs.standing.value_or(Standing::well_clear))};
  if (!inputs.to.station && !options.plan) return paper::card_of(facts);
  const auto answer = answer_of(options, inputs, day);
  if (!answer) return answer.error();
  facts.slack = answer->target_slack;
  if (inputs.to.station) {
    const StationRow* row = find_row(*answer, key_of(*inputs.to.station));
    if (row != nullptr && row->outlook) {
      facts.chance_percent = row->outlook->chance_percent;
      facts.on_this_tv = row->outlook->decoding != gear::Decoding::impossible;
    }
  }
  if (options.plan) facts.answer = &*answer;
  return paper::card_of(facts);
}

Result<Done> write_paper(const CardOptions& options, const paper::PaperCard& card) {
  const auto typefaces = paper::Typefaces::load(service::fonts_folder());
  if (!typefaces) return typefaces.error();
  const paper::Page page =
      paper::lay_out(card, options.page == "a4" ? paper::kA4 : paper::kLetter, *typefaces);
  if (!options.pdf.empty()) {
    if (const auto saved = save_pdf(page, *typefaces, options.pdf); !saved) return saved;
  }
  if (options.png.empty()) return Done{};
  return save_png(page, *typefaces, options.dots_per_inch, options.png);
}

Result<Done> print_card(const CardOptions& options) {
  auto inputs = card_inputs(options);
  if (!inputs) return inputs.error();
  if (!options.standing.empty()) {
    inputs->standing = parse_standing(options.standing);
    if (!inputs->standing) {
      return Error{.what = "unknown place to stand",
                   .where = "--standing " + options.standing,
                   .remedy = "choose beside, roof, table, steps (5 m off) or clear (18 m off)"};
    }
  }
  const LocalZone zone = service::Clocks::of_this_system().at(inputs->from);
  const auto date = date_argument("--date", options.date, *zone.clocks);
  if (!date) return date.error();
  const auto day = local_day(*date, *zone.clocks);
  const auto magnetic = service::load_magnetic_model();
  if (!magnetic) return magnetic.error();
  const AimCard card = aim_card(inputs->from, inputs->to.position, *date, *magnetic, inputs->nose);
  if (options.on_paper()) {
    const auto facts = paper_card(options, *inputs, card, *date, day);
    if (!facts) return facts.error();
    if (const auto written = write_paper(options, *facts); !written) return written;
  }
  if (options.json) {
    print(card_json(card, inputs->standing));
    return Done{};
  }
  const bool practice = options.at.empty();
  if (practice) std::cout << kPracticeLine;
  std::cout << card_text(card, inputs->standing, inputs->from, inputs->to, day);
  return Done{};
}

}  // namespace

void add_card(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<CardOptions>();
  CLI::App* verb = program.add_subcommand("card", "The heading from a place to a station");
  verb->add_option("--at", options->at, "position of the rig, in any notation");
  auto* to = verb->add_option("--to", options->to, "the target, in any notation");
  verb->add_option("--station", options->station, "the target, as a call sign in the catalog")
      ->excludes(to);
  verb->add_option("--date", options->date, "date for the declination (default: today)");
  verb->add_option("--nose", options->nose_deg, "true heading of the rig's nose in degrees");
  verb->add_option("--standing", options->standing,
                   "where the compass is read: beside (the rig), roof, table, steps (5 m off) or "
                   "clear (18 m off); without it the error is unknown");
  verb->add_flag("--json", options->json, "print one JSON object");
  verb->add_option("--pdf", options->pdf, "write the paper card to this PDF file");
  verb->add_option("--png", options->png, "write the paper card to this PNG file");
  verb->add_flag("--plan", options->plan,
                 "paper card: add the fewest headings that bring in all likely stations");
  verb->add_option("--page", options->page, "paper size, letter or a4 (default: letter)")
      ->transform(CLI::IsMember({"letter", "a4"}, CLI::ignore_case));
  verb->add_option("--dpi", options->dots_per_inch, "dots per inch of the PNG (default: 150)")
      ->check(CLI::Range(paper::kLeastDpi, paper::kMostDpi));
  add_stop_options(*verb, options->stop);
  verb->callback([&chosen, options] {
    check_usage(*options);
    chosen = [options] { return print_card(*options); };
  });
}

}  // namespace mastwise::cli
