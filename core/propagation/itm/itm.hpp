#pragma once

#include "core/result.hpp"

#include <array>
#include <complex>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

// The Irregular Terrain Model of the NTIA Institute for Telecommunication Sciences, version 1.2.2:
// the median basic transmission loss of a radio path of 1 to 2,000 km between 20 MHz and 20 GHz,
// and its variation in time, from place to place and between situations.
//
// Sources. "Algorithm" below is G. A. Hufford, "The ITS Irregular Terrain Model, version 1.2.2: The
// Algorithm" (NTIA/ITS, 1995); the numbers in brackets are its equations. "TR 82-100" is G. A.
// Hufford, A. G. Longley and W. A. Kissick, "A Guide to the Use of the ITS Irregular Terrain Model
// in the Area Prediction Mode", NTIA Report 82-100 (1982). Figures and equation numbers are from
// memory; NTIA's published test vectors check the results.
namespace mastwise::itm {

enum class Polarization { horizontal, vertical };

// Radio climates of TR 82-100, with its numbers.
enum class Climate {
  equatorial = 1,
  continental_subtropical = 2,
  maritime_subtropical = 3,
  desert = 4,
  continental_temperate = 5,
  maritime_temperate_over_land = 6,
  maritime_temperate_over_sea = 7,
};

// The radio link without its terrain. Values outside the ranges given here are refused.
struct Link {
  double frequency_mhz = 0;         // 20 to 20,000
  double transmitter_height_m = 0;  // above the ground, 0.5 to 3,000
  double receiver_height_m = 0;     // above the ground, 0.5 to 3,000
  Polarization polarization = Polarization::horizontal;
  double relative_permittivity = 15;  // of the ground, 1 or more; 15 is average ground [TR 82-100]
  double conductivity_s_per_m = 0.005;  // of the ground, above 0; 0.005 is average ground
  Climate climate = Climate::continental_temperate;
  double sea_level_refractivity = 301;  // N-units, 250 to 400; 301 goes with a 4/3 earth
};

// Ground heights above sea level, evenly spaced from the transmitter's foot to the receiver's, over
// 1 to 2,000,000 m.
struct TerrainProfile {
  double spacing_m = 0;               // above 0
  std::span<const double> heights_m;  // at least 3, each -1,000 to 10,000
};

// How carefully a terminal of the area mode was placed for good reception [TR 82-100, Algorithm 3].
enum class Siting { random, careful, very_careful };

struct AreaTerrain {
  double delta_h_m = 90;  // interdecile range of heights, 0 to 3,000; 90 is hills [TR 82-100]
  Siting transmitter_siting = Siting::random;
  Siting receiver_siting = Siting::random;
};

// Valid input near or beyond the range for which the model was made.
enum class Warning : std::uint32_t {
  transmitter_height = 1u << 0,         // outside 1 to 1,000 m
  receiver_height = 1u << 1,            // outside 1 to 1,000 m
  frequency = 1u << 2,                  // outside 40 to 10,000 MHz
  long_path = 1u << 3,                  // above 1,000 km
  short_path = 1u << 4,                 // below 1 km
  steep_path = 1u << 5,                 // the direct ray is steeper than 0.2 rad
  transmitter_horizon_steep = 1u << 6,  // horizon more than 0.2 rad up or down
  receiver_horizon_steep = 1u << 7,
  transmitter_horizon_near = 1u << 8,  // closer than a tenth of the smooth earth's
  receiver_horizon_near = 1u << 9,
  transmitter_horizon_far = 1u << 10,  // beyond three times the smooth earth's
  receiver_horizon_far = 1u << 11,
  thin_air = 1u << 12,          // surface refractivity below 250 N-units
  extreme_quantile = 1u << 13,  // a percentage beyond 3.1 standard deviations
};

using Warnings = std::uint32_t;  // a set of Warning bits

constexpr bool has(Warnings set, Warning warning) {
  return (set & static_cast<Warnings>(warning)) != 0;
}

// The warnings of the set, in the order of the enumeration.
std::vector<Warning> listed(Warnings set);

// The stored name of a warning: "long_path"; empty for an unknown bit.
std::string_view to_text(Warning warning);

// The formula of (4.1) that gives the reference attenuation.
enum class Range { line_of_sight, diffraction, scatter };

// The model's values for one end of the path.
struct Terminal {
  double structural_height_m = 0;        // h_g, above the ground
  double effective_height_m = 0;         // h_e, above the terrain that acts as reflecting plane
  double horizon_distance_m = 0;         // d_L
  double smooth_horizon_distance_m = 0;  // d_Ls, over a smooth earth (3.5)
  double horizon_angle_rad = 0;          // theta_e, above the horizontal
};

struct DiffractionFit {       // A = intercept + slope d
  double intercept_db = 0;    // A_ed (4.8)
  double slope_db_per_m = 0;  // m_d (4.7)
};

struct LineOfSightFit {       // A = intercept + K1 d + K2 ln d
  double intercept_db = 0;    // A_el
  double slope_db_per_m = 0;  // K_1
  double logarithm_db = 0;    // K_2
};

struct ScatterFit {                // A = intercept + slope d from the starting distance on
  double intercept_db = 0;         // A_es (4.59)
  double slope_db_per_m = 0;       // m_s (4.57)
  double starting_distance_m = 0;  // d_x (4.58)
};

// A path with its reference attenuation and all intermediate values.
struct Path {
  double distance_m = 0;
  double frequency_mhz = 0;
  Climate climate = Climate::continental_temperate;
  double wave_number_per_m = 0;      // k (1.1)
  double mean_elevation_m = 0;       // z_s, of the middle 80 % of the profile; 0 in the area mode
  double surface_refractivity = 0;   // N_s, N-units (1.2)
  double earth_curvature_per_m = 0;  // gamma_e (1.3)
  std::complex<double> ground_impedance;  // Z_g, relative to free space (1.4)
  double delta_h_m = 0;                   // terrain irregularity
  std::array<Terminal, 2> terminals;      // transmitter, receiver
  double horizon_sum_m = 0;               // d_L (3.7)
  double smooth_horizon_sum_m = 0;        // d_Ls (3.6)
  double horizon_angle_sum_rad = 0;       // theta_e (3.8)
  DiffractionFit diffraction;
  std::optional<LineOfSightFit> line_of_sight;  // if the distance is below d_Ls
  std::optional<ScatterFit> scatter;            // otherwise, if a common volume exists
  Range range = Range::line_of_sight;
  double reference_attenuation_db = 0;  // A_ref, median below free space (4.1)
  double free_space_loss_db = 0;
  Warnings warnings = 0;
};

// Point-to-point mode on a terrain profile. Returns the path, or an Error that names the first
// quantity of `link` or `profile` out of range, or ground and geometry for which the model's
// approximations have no value. Allocates only on failure. Source: Algorithm 1, 3, 4 and 6.
Result<Path> point_to_point(const Link& link, const TerrainProfile& profile);

// Area mode: only the irregularity of the terrain is known. `distance_m` is 1 to 2,000,000.
// Otherwise like point_to_point. Source: Algorithm 1, 3, 4 and 6; TR 82-100.
Result<Path> area(const Link& link, const AreaTerrain& terrain, double distance_m);

// Which variations the user of the loss experiences, and which are unknown.
enum class VariabilityMode {
  single_message = 0,  // all three are one: only the situation percentage counts
  individual = 1,      // time, and situation with location
  mobile = 2,          // time with location, and situation
  broadcast = 3,       // all three apart
};

struct Variability {
  VariabilityMode mode = VariabilityMode::broadcast;
  bool location_varies = true;   // false if the exact place is known
  bool situation_varies = true;  // false for interference problems
};

// The customary code of a Variability: 0 to 3 for the mode, plus 10 without location variability,
// plus 20 without situation variability. Source: TR 82-100.
Result<Variability> variability_from_code(int code);

// The shares of time, places and similar situations in which the loss is not exceeded. Each above 0
// and below 100.
struct Percentages {
  double time = 50;
  double location = 50;
  double situation = 50;
};

// The two-number form: reliability over time variations, confidence over situations.
constexpr Percentages reliability_and_confidence(double reliability, double confidence) {
  return {.time = reliability, .location = 50, .situation = confidence};
}

struct Prediction {
  double loss_db = 0;                 // basic transmission loss
  double attenuation_db = 0;          // its part above free space
  double effective_distance_m = 0;    // d_e (5.3)
  double climate_median_db = 0;       // V_med
  double time_deviation_db = 0;       // sigma_T at the time percentage
  double location_deviation_db = 0;   // sigma_L
  double situation_deviation_db = 0;  // sigma_S
  Warnings warnings = 0;              // of the path and of the percentages
};

// The loss of a path not exceeded for the given percentages. Error if a percentage or the mode is
// out of range. Source: Algorithm 5.
Result<Prediction> predict(const Path& path, const Variability& variability,
                           const Percentages& percentages);

}  // namespace mastwise::itm
