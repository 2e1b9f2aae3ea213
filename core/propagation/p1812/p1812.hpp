#pragma once

#include "core/result.hpp"

#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <vector>

// Recommendation ITU-R P.1812 (version 6 and later): the loss of one path between two antennas
// above known terrain, not exceeded for a share of time and of locations. Equation numbers are
// those of version 6; where the validation logs of Working Party 3K do not print them (section 4.7,
// attachment 2, letters within a group) they are from memory. Building entry (section 4.8) is
// omitted: a rig's antenna is outdoors.
//
// `analyze_path` analyzes a path once; `loss_for` then gives losses for any number of time and
// location percentages at little cost. Keep one `Scratch` per thread from path to path.
namespace mastwise::p1812 {

enum class Polarization : std::uint8_t { horizontal, vertical };

// Radio-climatic zones of table 2, with the numbers of the profiles published by Working Party 3K.
// Coastal land is below 100 m and within 50 km of the sea.
enum class Zone : std::uint8_t { sea = 1, coastal_land = 3, inland = 4 };

// The ground from the transmitter (first point) to the receiver (last point): at least 4 points, a
// millimeter or more apart.
struct Profile {
  // Distance of each point from the transmitter, km: 0, then strictly increasing. Empty: the points
  // are `spacing_km` apart, which is a little faster.
  std::span<const double> distances_km = {};
  double spacing_km = 0.0;
  std::span<const double> heights_m;  // above sea level, within [-500, 10,000]
  // Representative clutter height above ground, within [0, 500] m, one for each point; the two ends
  // count as 0 (equation 1c). Empty: no clutter.
  std::span<const double> clutter_m = {};
  std::span<const Zone> zones = {};  // one for each point; empty: all inland
};

// The distance over land to the sea that stands for no sea nearby.
inline constexpr double kNoCoast_km = 500.0;

// The lowest kilometer of the atmosphere over the path.
struct Refractivity {
  double gradient_n_per_km = 45.0;  // DN: median fall of refractivity over the first km, [0, 150]
  double sea_level_n = 325.0;       // N0: refractivity reduced to sea level, N-units, [200, 500]
};

// Clutter around an antenna that is below it, for the height-gain correction of Recommendation
// ITU-R P.2108 section 3.1 (P.1812's terminal clutter up to version 4; later versions include
// clutter at the ends only through `Profile::clutter_m`). 30 to 3,000 MHz.
struct TerminalClutter {
  enum class Kind : std::uint8_t {
    none,
    open,  // water, open, rural: (2b)
    built  // suburban, urban, trees, forest, dense urban: (2a)
  };
  Kind kind = Kind::none;
  double height_m = 0.0;         // R, above ground, within (0, 500]
  double street_width_m = 27.0;  // ws, within [1, 1000]; 27 if unknown
};

struct Link {
  double frequency_mhz = 0.0;  // 30 to 6,000
  Polarization polarization = Polarization::horizontal;
  double transmitter_height_m = 0.0;  // htg: above ground, 1 to 3,000
  double receiver_height_m = 0.0;     // hrg: above ground, 1 to 3,000
  // Latitude of the middle of the path, north positive, within [-90, 90]. Required.
  double path_latitude_deg = std::numeric_limits<double>::quiet_NaN();
  Refractivity refractivity = {};
  double transmitter_coast_km =
      kNoCoast_km;  // dct: over land from the antenna to the sea along the path
  double receiver_coast_km = kNoCoast_km;  // dcr; 0 at sea
  TerminalClutter transmitter_clutter = {};
  TerminalClutter receiver_clutter = {};
  // Standard deviation of the loss over locations in dB, [0, 30]; if empty, that of section 4.7.
  std::optional<double> location_deviation_db = {};
  double prediction_resolution_m = 500.0;  // wa: side of the square of locations
};

// Storage kept from path to path, so that a path needs no allocation. Threads must not share it.
struct Scratch {
  std::vector<double> surface_m;    // ground and clutter
  std::vector<double> reciprocals;  // 1/i
};

// Valid inputs near or beyond the tested range of the Recommendation.
enum class Warning : std::uint32_t {
  frequency_near_limit = 1U << 0,     // below 40 or above 5,000 MHz
  height_near_limit = 1U << 1,        // an antenna below 1.5 m or above 2,000 m
  distance_near_limit = 1U << 2,      // path shorter than 0.5 or longer than 1,000 km
  profile_coarse = 1U << 3,           // points more than 1 km apart on average, or under 10
  refractivity_near_limit = 1U << 4,  // DN below 20 or above 100, N0 below 250 or above 400
  antenna_below_clutter = 1U << 5,    // an antenna is lower than the clutter next to it
  mirrored_time = 1U << 6,            // above 50 % of time: see `loss_for`
};
using Warnings = std::uint32_t;
constexpr bool has(Warnings warnings, Warning one) {
  return (warnings & static_cast<Warnings>(one)) != 0;
}

// The delta-Bullington diffraction of section 4.3 at one effective Earth radius.
struct Diffraction {
  double bullington_actual_db = 0.0;  // Lbulla (21)
  double bullington_smooth_db = 0.0;  // Lbulls (21)
  double spherical_earth_db = 0.0;    // Ldsph (27)
  double loss_db = 0.0;               // Ld (39): Ld50 or Ldbeta
};

// Everything about a path that is independent of the percentages, with the symbols and equation
// numbers of the Recommendation.
struct Path {
  double frequency_ghz = 0.0;                     // f
  double distance_km = 0.0;                       // d
  double median_earth_radius_km = 0.0;            // ae (7a)
  double beta_earth_radius_km = 0.0;              // abeta (7b)
  double transmitter_altitude_m = 0.0;            // hts
  double receiver_altitude_m = 0.0;               // hrs
  bool line_of_sight = false;                     // over the bare ground, at ae
  double transmitter_horizon_km = 0.0;            // dlt (78)
  double receiver_horizon_km = 0.0;               // dlr (81a)
  double transmitter_elevation_mrad = 0.0;        // theta_t (76-78)
  double receiver_elevation_mrad = 0.0;           // theta_r (79-81)
  double angular_distance_mrad = 0.0;             // theta (82)
  double sea_fraction = 0.0;                      // omega
  double longest_land_km = 0.0;                   // dtm: inland and coastal
  double longest_inland_km = 0.0;                 // dlm
  double beta0_percent = 0.0;                     // beta0 (5)
  double smooth_transmitter_m = 0.0;              // hst (85)
  double smooth_receiver_m = 0.0;                 // hsr (86)
  double ducting_smooth_transmitter_m = 0.0;      // hst (90a)
  double ducting_smooth_receiver_m = 0.0;         // hsr (90b)
  double diffraction_smooth_transmitter_m = 0.0;  // hstd (89)
  double diffraction_smooth_receiver_m = 0.0;     // hsrd (89)
  double diffraction_transmitter_height_m = 0.0;  // hts' (37a)
  double diffraction_receiver_height_m = 0.0;     // hrs' (37b)
  double transmitter_effective_height_m = 0.0;    // hte (92a)
  double receiver_effective_height_m = 0.0;       // hre (92b)
  double terrain_roughness_m = 0.0;               // hm (93)
  double free_space_db = 0.0;                     // Lbfs (8)
  double beta_line_of_sight_db = 0.0;             // Lb0beta (11)
  Diffraction median = {};                        // at ae: Ld50
  Diffraction beta = {};                          // at abeta: Ldbeta
  double median_diffraction_db = 0.0;             // Lbd50 (42)
  double near_distance_factor = 0.0;              // Fk (58)
  double angular_factor = 0.0;                    // Fj (57)
  double ducting_fixed_coupling_db = 0.0;         // Af (47)
  double ducting_specific_db_per_mrad = 0.0;      // gamma_d (51)
  double ducting_angle_mrad = 0.0;                // theta' (52)
  double ducting_incidence_percent = 0.0;         // beta (54)
  double ducting_slope = 0.0;                     // Gamma (53a)
  double scatter_median_db = 0.0;                 // Lbs (44) without its term in p
  double transmitter_clutter_db = 0.0;            // Aht, P.2108 section 3.1
  double receiver_clutter_db = 0.0;               // Ahr
  double location_deviation_db = 0.0;             // sigma_loc (section 4.7)
  Warnings warnings = 0;
};

// Loss not exceeded for `time_percent` of an average year and `locations_percent` of the spots
// around the receiver: 1 % is the strong signal, 99 % the nearly permanent one.
struct Percentages {
  double time_percent = 50.0;       // p, 1 to 99
  double locations_percent = 50.0;  // pL, 1 to 99
};

// The loss of a path for one pair of percentages, with all its terms.
struct Loss {
  double line_of_sight_db = 0.0;           // Lb0p (10)
  double interpolation = 0.0;              // Fi (40)
  double diffraction_loss_db = 0.0;        // Ldp (41)
  double diffraction_db = 0.0;             // Lbd (43)
  double scatter_db = 0.0;                 // Lbs (44)
  double ducting_db = 0.0;                 // Lba (46)
  double lowest_line_of_sight_db = 0.0;    // Lminb0p (59)
  double lowest_ducting_db = 0.0;          // Lminbap (60)
  double diffraction_or_ducting_db = 0.0;  // Lbda (61)
  double without_scatter_db = 0.0;         // Lbam (62)
  double median_locations_db = 0.0;  // Lbc (63), with Aht and Ahr if terminal clutter is given
  double location_db = 0.0;          // Lloc (section 4.7)
  double basic_loss_db = 0.0;        // Lb (69)
  double field_dbuvm = 0.0;          // Ep (70): for 1 kW effective radiated power
  Warnings warnings = 0;
};

// All that P.1812 derives from the terrain and the link before the percentages (sections 3 and 4,
// attachment 1). Errors: an input out of its range, profile sizes that disagree, a path shorter
// than 0.25 or longer than 3,000 km, P.2108 clutter above 3 GHz.
Result<Path> analyze_path(const Profile& profile, const Link& link, Scratch& scratch);

// The loss of an analyzed path. `Path` must come from `analyze_path`. P.1812 is valid for 1 to 50 %
// of time. Above, Mastwise mirrors about the median, L(t) = 2 L(50) - L(100 - t), as the
// regulator's F(50,90) = 2 F(50,50) - F(50,10) does (47 CFR 73.699); the Recommendation does not
// define this, and `mirrored_time` is set. Only basic_loss_db and field_dbuvm are mirrored; the
// other terms are then those of 100 - t. Errors: a percentage outside [1, 99].
Result<Loss> loss_for(const Path& path, const Percentages& percentages);

// Both steps for a single use.
Result<Loss> loss_of(const Profile& profile, const Link& link, const Percentages& percentages,
                     Scratch& scratch);

}  // namespace mastwise::p1812
