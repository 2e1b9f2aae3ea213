#include "app/cli/profile_table.hpp"
#include "app/cli/verbs.hpp"
#include "app/words/reasons.hpp"
#include "core/propagation/field.hpp"
#include "core/propagation/itm/itm.hpp"

#include <iostream>
#include <memory>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace mastwise::cli {
namespace {

using nlohmann::json;

struct LossOptions {
  std::string profile, model, polarization = "h";
  double frequency_mhz = 0.0, transmitter_m = 0.0, receiver_m = 0.0;
  double time_percent = 50.0, locations_percent = 50.0, situation_percent = 50.0;
  double clutter_m = 0.0, gradient_n_per_km = 45.0;
  std::optional<double> sea_level_n, location_deviation_db, latitude_deg;
  int climate = 5;
  double permittivity = 15.0, conductivity_s_per_m = 0.005;
  bool json = false;
};

json diffraction_json(const p1812::Diffraction& d) {
  return {{"Lbulla", d.bullington_actual_db},
          {"Lbulls", d.bullington_smooth_db},
          {"Ldsph", d.spherical_earth_db},
          {"Ld", d.loss_db}};
}

// Every intermediate value under its symbol in the Recommendation.
json p1812_json(const p1812::Path& path, const p1812::Loss& loss) {
  return {{"model", "p1812"},
          {"loss_db", loss.basic_loss_db},
          {"field_dbuvm_1kw", loss.field_dbuvm},
          {"Lb", loss.basic_loss_db},
          {"Ep", loss.field_dbuvm},
          {"Lbc", loss.median_locations_db},
          {"Lloc", loss.location_db},
          {"Lbfs", path.free_space_db},
          {"Lb0p", loss.line_of_sight_db},
          {"Lb0beta", path.beta_line_of_sight_db},
          {"Lbd50", path.median_diffraction_db},
          {"Lbd", loss.diffraction_db},
          {"Ldp", loss.diffraction_loss_db},
          {"Ld50", path.median.loss_db},
          {"Ldbeta", path.beta.loss_db},
          {"diffraction_median", diffraction_json(path.median)},
          {"diffraction_beta", diffraction_json(path.beta)},
          {"Lbs", loss.scatter_db},
          {"Lba", loss.ducting_db},
          {"Lminb0p", loss.lowest_line_of_sight_db},
          {"Lminbap", loss.lowest_ducting_db},
          {"Lbda", loss.diffraction_or_ducting_db},
          {"Lbam", loss.without_scatter_db},
          {"Aht", path.transmitter_clutter_db},
          {"Ahr", path.receiver_clutter_db},
          {"Fi", loss.interpolation},
          {"Fj", path.angular_factor},
          {"Fk", path.near_distance_factor},
          {"sigma_loc", path.location_deviation_db},
          {"d_km", path.distance_km},
          {"ae_km", path.median_earth_radius_km},
          {"abeta_km", path.beta_earth_radius_km},
          {"beta0_percent", path.beta0_percent},
          {"omega", path.sea_fraction},
          {"hts", path.transmitter_altitude_m},
          {"hrs", path.receiver_altitude_m},
          {"hte", path.transmitter_effective_height_m},
          {"hre", path.receiver_effective_height_m},
          {"hst", path.smooth_transmitter_m},
          {"hsr", path.smooth_receiver_m},
          {"hstd", path.diffraction_smooth_transmitter_m},
          {"hsrd", path.diffraction_smooth_receiver_m},
          {"hm", path.terrain_roughness_m},
          {"dlt_km", path.transmitter_horizon_km},
          {"dlr_km", path.receiver_horizon_km},
          {"theta_t_mrad", path.transmitter_elevation_mrad},
          {"theta_r_mrad", path.receiver_elevation_mrad},
          {"theta_mrad", path.angular_distance_mrad},
          {"line_of_sight", path.line_of_sight},
          {"warnings", loss.warnings}};
}

json itm_json(const itm::Path& path, const itm::Prediction& prediction, double frequency_mhz) {
  json warnings = json::array();
  for (const itm::Warning warning : itm::listed(prediction.warnings)) {
    warnings.push_back(words::model_limit(warning));
  }
  const auto terminal = [](const itm::Terminal& end) {
    return json{{"h_g_m", end.structural_height_m},
                {"h_e_m", end.effective_height_m},
                {"d_hzn_m", end.horizon_distance_m},
                {"theta_hzn_rad", end.horizon_angle_rad}};
  };
  return {{"model", "itm"},
          {"loss_db", prediction.loss_db},
          {"field_dbuvm_1kw", field_of_1kw_dbuvm(prediction.loss_db, frequency_mhz)},
          {"A_fs", path.free_space_loss_db},
          {"A_ref", path.reference_attenuation_db},
          {"A", prediction.attenuation_db},
          {"mode", words::model_range(path.range)},
          {"d_m", path.distance_m},
          {"delta_h_m", path.delta_h_m},
          {"N_s", path.surface_refractivity},
          {"theta_e_rad", path.horizon_angle_sum_rad},
          {"d_L_m", path.horizon_sum_m},
          {"transmitter", terminal(path.terminals[0])},
          {"receiver", terminal(path.terminals[1])},
          {"A_ed", path.diffraction.intercept_db},
          {"m_d_db_per_m", path.diffraction.slope_db_per_m},
          {"d_e_m", prediction.effective_distance_m},
          {"V_med", prediction.climate_median_db},
          {"sigma_T", prediction.time_deviation_db},
          {"sigma_L", prediction.location_deviation_db},
          {"sigma_S", prediction.situation_deviation_db},
          {"warnings", warnings},
          {"warning_bits", prediction.warnings}};
}

Result<json> p1812_loss(const LossOptions& options, ProfileTable& table) {
  if (table.clutter_m.empty() && options.clutter_m > 0.0) {
    table.clutter_m.assign(table.heights_m.size(), options.clutter_m);
  }
  const auto latitude_deg = options.latitude_deg ? options.latitude_deg : table.middle_latitude_deg;
  if (!latitude_deg) {
    return Error{.what = "P.1812 needs the latitude of the path's middle",
                 .remedy = "add a column lat to the profile, or --latitude"};
  }
  p1812::Link link{.frequency_mhz = options.frequency_mhz,
                   .transmitter_height_m = options.transmitter_m,
                   .receiver_height_m = options.receiver_m,
                   .path_latitude_deg = *latitude_deg,
                   .location_deviation_db = options.location_deviation_db};
  if (options.polarization == "v") link.polarization = p1812::Polarization::vertical;
  link.refractivity.gradient_n_per_km = options.gradient_n_per_km;
  link.refractivity.sea_level_n = options.sea_level_n.value_or(link.refractivity.sea_level_n);
  p1812::Scratch scratch;
  const p1812::Profile profile{.distances_km = table.distances_km,
                               .heights_m = table.heights_m,
                               .clutter_m = table.clutter_m,
                               .zones = table.zones};
  const auto path = p1812::analyze_path(profile, link, scratch);
  if (!path) return path.error();
  const auto loss = p1812::loss_for(*path, {.time_percent = options.time_percent,
                                            .locations_percent = options.locations_percent});
  if (!loss) return loss.error();
  return p1812_json(*path, *loss);
}

Result<json> itm_loss(const LossOptions& options, const ProfileTable& table) {
  const auto spacing_m = table.spacing_m();
  if (!spacing_m) {
    return Error{.what = "the Irregular Terrain Model needs evenly spaced points",
                 .where = options.profile,
                 .remedy = "resample the profile"};
  }
  itm::Link link{.frequency_mhz = options.frequency_mhz,
                 .transmitter_height_m = options.transmitter_m,
                 .receiver_height_m = options.receiver_m,
                 .relative_permittivity = options.permittivity,
                 .conductivity_s_per_m = options.conductivity_s_per_m,
                 .climate = static_cast<itm::Climate>(options.climate)};
  if (options.polarization == "v") link.polarization = itm::Polarization::vertical;
  link.sea_level_refractivity = options.sea_level_n.value_or(link.sea_level_refractivity);
  const auto path =
      itm::point_to_point(link, {.spacing_m = *spacing_m, .heights_m = table.heights_m});
  if (!path) return path.error();
  const auto prediction = itm::predict(*path, {.mode = itm::VariabilityMode::broadcast},
                                       {.time = options.time_percent,
                                        .location = options.locations_percent,
                                        .situation = options.situation_percent});
  if (!prediction) return prediction.error();
  return itm_json(*path, *prediction, options.frequency_mhz);
}

Result<Done> print_loss(const LossOptions& options) {
  auto table = read_profile_table(options.profile);
  if (!table) return table.error();
  const auto result =
      options.model == "itm" ? itm_loss(options, *table) : p1812_loss(options, *table);
  if (!result) return result.error();
  if (options.json) {
    std::cout << result->dump(2) << '\n';
  } else {
    std::cout << fmt::format("{:.2f} dB, {:.2f} dBuV/m from 1 kW\n",
                             (*result)["loss_db"].get<double>(),
                             (*result)["field_dbuvm_1kw"].get<double>());
  }
  return Done{};
}

}  // namespace

void add_loss(CLI::App& program, Job& chosen) {
  auto o = std::make_shared<LossOptions>();
  CLI::App* verb = program.add_subcommand("loss", "Compute the loss of one path by one model");
  verb->add_option("--profile", o->profile, "columns d_km,h_m[,lat,lon,clutter_m,zone]")
      ->required();
  verb->add_option("--model", o->model, "p1812 or itm")
      ->required()
      ->check(CLI::IsMember({"p1812", "itm"}));
  verb->add_option("--frequency-mhz", o->frequency_mhz, "transmission frequency")->required();
  verb->add_option("--time", o->time_percent, "percent of time (default: 50)");
  verb->add_option("--locations", o->locations_percent, "percent of locations (default: 50)");
  verb->add_option("--tx-agl", o->transmitter_m, "transmitter's antenna above ground, m")
      ->required();
  verb->add_option("--rx-agl", o->receiver_m, "receiver's antenna above ground, m")->required();
  verb->add_option("--polarization", o->polarization, "h or v (default: h)")
      ->check(CLI::IsMember({"h", "v"}));
  verb->add_option("--clutter-m", o->clutter_m, "P.1812: clutter height at every point, m");
  verb->add_option("--dn", o->gradient_n_per_km,
                   "P.1812: refractivity gradient, N/km (default: 45)");
  verb->add_option("--n0", o->sea_level_n,
                   "sea-level refractivity (default: 325 for P.1812, 301 for ITM)");
  verb->add_option("--sigma-loc", o->location_deviation_db, "P.1812: location spread, dB");
  verb->add_option("--latitude", o->latitude_deg, "P.1812: latitude of the path's middle, degrees");
  verb->add_option("--climate", o->climate, "ITM: climate, 1 to 7 (default: 5)")
      ->check(CLI::Range(1, 7));
  verb->add_option("--situation", o->situation_percent, "ITM: percent of situations (default: 50)");
  verb->add_option("--permittivity", o->permittivity, "ITM: ground permittivity (default: 15)");
  verb->add_option("--conductivity", o->conductivity_s_per_m,
                   "ITM: ground conductivity, S/m (default: 0.005)");
  verb->add_flag("--json", o->json, "print one JSON object");
  verb->callback([&chosen, o] { chosen = [o] { return print_loss(*o); }; });
}

}  // namespace mastwise::cli
