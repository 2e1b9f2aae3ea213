#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

// Where a person stands with a compass or a sight: how far the rig's steel pulls the needle there,
// and how far off the antenna a sight from there may lead.
namespace mastwise {

enum class Standing : std::uint8_t {
  beside_rig,
  on_roof,
  picnic_table,
  few_steps_off,  // the least distance of the field manuals
  well_clear,     // the better one
};
inline constexpr std::array kStandings{Standing::beside_rig, Standing::on_roof,
                                       Standing::picnic_table, Standing::few_steps_off,
                                       Standing::well_clear};
std::string_view to_text(Standing standing);  // "beside the rig"
// beside, roof, table, steps or clear, and back; std::nullopt for any other name.
std::string_view short_name(Standing standing);
std::optional<Standing> parse_standing(std::string_view name);

// Distance between the compass and the middle of the rig's nearest steel, meters. 5 and 18 m are
// keep_away_distances(); the others are our choice, no source.
double from_rig_m(Standing standing);

// Whether a compass gives no answer there. So near, the rig is no dipole, and a step changes the
// needle by more than its error.
bool refuses_compass(Standing standing);

// Magnetic moments, A m^2, from memory: S. Breiner, Applications Manual for Portable Magnetometers
// (1973) has 100 to 1,000 for a ton of iron, and 40 nT at 30 ft from a car of one ton, which makes
// 306. For the rig, 3 tons of steel. For a picnic table, a frame of 30 kg. A phone and keys: common
// practice, no source.
inline constexpr double kRigMoment_am2 = 1000.0;
inline constexpr double kTableMoment_am2 = 9.0;
inline constexpr double kCarriedMoment_am2 = 0.1;
inline constexpr double kTableIron_m = 0.7;    // from the compass, our choice, no source
inline constexpr double kCarriedIron_m = 0.3;  // likewise

// Standard deviation of a horizontal component of a dipole's field, nT, `distance_m` (over 0)
// beside it, every direction of the moment as likely: sqrt(5/6) mu0 m / (4 pi r^3), for the mean
// square is m^2 (1 + 3 cos^2) / 3 at an angle to the line of sight. Source: the field (3 (m.n) n -
// m) mu0 / (4 pi r^3) [J. D. Jackson, Classical Electrodynamics, 3rd ed. (5.56)].
double dipole_sigma_nt(double moment_am2, double distance_m);

// Standard deviation of the needle there, degrees: atan(pull / H) of the rig, the table and what
// the person carries, against the horizontal field `horizontal_nt` (over 0). Beside the rig and on
// the roof it only shows how useless a compass is.
double deviation_sigma_deg(Standing standing, double horizontal_nt);

// Error, degrees, of pointing the antenna at a far mark that was sighted `offset_m` (at least 0)
// from the antenna: atan(offset / distance) with the mark `mark_m` (over 0) away.
double parallax_deg(double offset_m, double mark_m);
// The least distance of a mark for kSightLine_deg.
double least_mark_m(double offset_m);

// Standing so that the mast is on the line and turning the antenna until its boom is end-on.
// Common practice, no source. A mark at least_mark_m() or farther is as good.
inline constexpr double kSightLine_deg = 1.0;

}  // namespace mastwise
