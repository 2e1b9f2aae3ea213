#include "app/cli/arguments.hpp"
#include "app/cli/verbs.hpp"
#include "app/words/units.hpp"
#include "core/gear/gear.hpp"
#include "core/sweep/sweep.hpp"
#include "core/sweep/sweep_table.hpp"
#include "core/text/words.hpp"
#include "platform/files.hpp"

#include <iostream>
#include <memory>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

using nlohmann::json;

struct PeakOptions {
  std::string file, gear, band = "uhf", pattern, scale = "quality";
  std::optional<double> noise;
  bool json = false;
};

Result<Band> band_argument(const std::string& text) {
  if (text == "low-vhf") return Band::low_vhf;
  if (text == "high-vhf") return Band::high_vhf;
  if (text == "uhf") return Band::uhf;
  return Error{.what = fmt::format("\"{}\" is not a band", text),
               .where = "--band",
               .remedy = "choose one of: low-vhf, high-vhf, uhf"};
}

// The pattern given by --pattern, else the gear's pattern in the band.
Result<gear::Pattern> antenna_pattern(const PeakOptions& options) {
  const auto band = band_argument(options.band);
  if (!band) return band.error();
  const auto table = pattern_argument(options.pattern);
  if (!table) return table.error();
  if (!table->empty()) return gear::Pattern::from_table(*table);
  const auto gear =
      options.gear.empty() ? Result(gear::presets().front()) : gear::preset(options.gear);
  if (!gear) return gear.error();
  return gear->antenna.in(*band).pattern;
}

json fit_json(const aim::SweepFit& fit, Bearing<Dial> next_heading) {
  json printed{{"peak_deg", fit.peak.degrees()},     {"sigma_deg", fit.sigma_deg},
               {"error_deg", fit.error95_deg},       {"noise", fit.noise},
               {"other_face_deg", nullptr},          {"second_lobe_deg", nullptr},
               {"second_lobe_db", nullptr},          {"enough", fit.enough},
               {"more_headings", fit.more_headings}, {"next_heading_deg", next_heading.degrees()}};
  if (fit.other_face) printed["other_face_deg"] = fit.other_face->degrees();
  if (fit.second_lobe) {
    printed["second_lobe_deg"] = fit.second_lobe->heading.degrees();
    printed["second_lobe_db"] = fit.second_lobe->relative_db;
  }
  return printed;
}

std::string fit_text(const aim::SweepFit& fit, Bearing<Dial> next_heading) {
  std::string text;
  const auto line = [&](std::string_view label, const std::string& value) {
    text += fmt::format("  {:<18}{}\n", label, value);
  };
  line("Peak",
       fmt::format("{}, within {} 95 times of 100", words::tenths_of_degree(fit.peak.degrees()),
                   words::tenths_of_degree(fit.error95_deg)));
  if (fit.other_face) {
    line("Or behind", words::whole_degrees(*fit.other_face) + " fits as well");
  }
  if (fit.second_lobe) {
    line("Reflection", fmt::format("at about {}, {:.0f} dB weaker",
                                   words::whole_degrees(fit.second_lobe->heading),
                                   -fit.second_lobe->relative_db));
  }
  line("Meter", fmt::format("unsteady by {:.1f}", fit.noise));
  line("State", fit.enough ? "enough: turn to the peak"
                : fit.more_headings == 1
                    ? "read at least 1 more heading"
                    : fmt::format("read at least {} more headings", fit.more_headings));
  line("Next heading", words::whole_degrees(next_heading));
  return text;
}

Result<Done> print_peak(const PeakOptions& options) {
  const auto scale = words::parse_choice(options.scale, aim::kScales, "a scale");
  if (!scale) return scale.error();
  const auto pattern = antenna_pattern(options);
  if (!pattern) return pattern.error();
  const auto fitter = aim::SweepFitter::for_pattern(*pattern);
  if (!fitter) return fitter.error();
  const auto text = platform::read_file(options.file);
  if (!text) return text.error();
  const auto in_file = [&](Error error) {
    error.where = error.where.empty() ? options.file : options.file + ", " + error.where;
    return error;
  };
  const auto readings = aim::read_sweep(*text);
  if (!readings) return in_file(readings.error());
  const aim::SweepOptions how{.scale = *scale, .noise = options.noise};
  const auto fit = fitter->fit(*readings, how);
  if (!fit) return in_file(fit.error());
  const auto next = fitter->next_heading(*readings, how);
  if (!next) return in_file(next.error());
  if (options.json) {
    print(fit_json(*fit, *next));
  } else {
    std::cout << fit_text(*fit, *next);
  }
  return Done{};
}

}  // namespace

void add_peak(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<PeakOptions>();
  CLI::App* verb = program.add_subcommand("peak", "Find the peak in a sweep of meter readings");
  verb->add_option("file", options->file,
                   "a table of heading_deg, reading and optionally waiting_s")
      ->required();
  verb->add_option("--gear", options->gear,
                   "name of a gear preset; an unknown name lists them all");
  verb->add_option("--band", options->band, "low-vhf, high-vhf or uhf (default: uhf)");
  verb->add_option("--pattern", options->pattern,
                   "custom antenna pattern: a table of angle_deg and db or field");
  verb->add_option("--scale", options->scale,
                   "quality (0 to 100), db, bars (0 to 5) or bars10 (default: quality)");
  verb->add_option("--noise", options->noise,
                   "one sigma of a reading in the meter's units (default: estimated)");
  verb->add_flag("--json", options->json, "print one JSON object");
  verb->callback([&chosen, options] { chosen = [options] { return print_peak(*options); }; });
}

}  // namespace mastwise::cli
