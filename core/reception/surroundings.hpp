#pragma once

#include "core/gear/noise.hpp"
#include "core/result.hpp"

#include <chrono>
#include <cstdint>
#include <optional>
#include <string_view>

namespace mastwise::reception {

// The surroundings of the antenna at the stop.
enum class Surroundings : std::uint8_t { open, scrub, scattered_trees, forest, houses, town };

// "open", "scrub", "scattered trees", "forest", "houses", "town"; parsing ignores case.
std::string_view to_text(Surroundings surroundings);
Result<Surroundings> parse_surroundings(std::string_view text);

// The surroundings as input of the models.
struct SurroundingsFigures {
  // Representative height above ground up to which the surroundings shield an antenna, m: 10 for
  // open land and houses, 15 for trees, 20 for a town [Recommendation ITU-R P.1812-4 table 5 and
  // P.2108-1 table 3, from memory; scrub counts as open land].
  double clutter_height_m = 10.0;
  bool built = false;     // shields as an edge, P.2108 (2a); else as open ground, (2b)
  bool wooded = false;    // the shield is trees, which also let a part through
  double leaves_m = 0.0;  // default depth of trees in front of the antenna [cp]
  gear::NoiseEnvironment noise = gear::NoiseEnvironment::rural;
};
SurroundingsFigures figures(Surroundings surroundings);

// Height above ground in m of the computed path: the antenna's, or the top of the surroundings if
// that is higher.
double calculated_height_m(Surroundings surroundings, double antenna_height_m);

// Whether the trees bear leaves: by the calendar, or as a person sees them. Evergreens are in leaf
// all year.
enum class LeafChoice : std::uint8_t { by_season, in_leaf, bare };

// "season", "on", "off"; parsing ignores case.
std::string_view to_text(LeafChoice choice);
Result<LeafChoice> parse_leaf_choice(std::string_view text);

// Whether broadleaf trees are in leaf for half of the month or more:
//   latitude under 25 degrees   all year: leaves follow the rains there, not the month
//   25 to 33                    March to November
//   33 to 39                    April to November
//   39 to 52                    May to October
//   52 and more                 May to September
// South of the equator six months later [common practice, no source; mountains are later in spring
// and earlier in fall]. Latitude within [-90, 90].
bool leafy_month(double latitude_deg, std::chrono::month month);

// The same, unless the person says what the trees are like.
bool in_leaf(LeafChoice choice, double latitude_deg, std::chrono::month month);

// Loss of `depth_m` (0 or more) of trees in front of the antenna, dB, for 30 to 3,000 MHz:
// Am (1 - exp(-d gamma / Am)), with gamma and Am interpolated over the logarithm of the frequency
// between the values measured at 106, 466 and 949 MHz and constant beyond them. Source:
// Recommendation ITU-R P.833 section 2.1 (1) and its table, in woodland. Bare trees have gamma
// / 1.2: in leaf it is about 20 % greater at about 1 GHz [P.833 section 2]; used at all
// frequencies.
double leaves_loss_db(double depth_m, double frequency_mhz, bool in_leaf = true);

// Loss of the surroundings from their top down to the antenna, in dB.
struct LocalLoss {
  double surroundings_db = 0.0;  // ground, houses or trees, without the leaves
  double leaves_db = 0.0;        // or of the bare trees in their place
  double side_db = 0.0;          // what an obstacle on the signal's side adds
  double total_db() const { return surroundings_db + leaves_db + side_db; }

  // Of surroundings and leaves, what stands in the way: the rest is the low antenna's over open
  // ground.
  double blocked_db = 0.0;
};

// The height-gain correction of P.2108-1 section 3.1 from the top of the surroundings down to the
// antenna (above ground in m, at least 1), plus leaves. Among trees the field arrives both over
// their tops, (2a), and through the leaves over open ground, (2b) and P.833; the powers of both add
// [P.833 section 3: the paths over and through a wood are combined by power]. `leaves_m` replaces
// the default depth of trees. Frequency within [30, 3000] MHz. No `side_db` yet.
LocalLoss local_loss(Surroundings surroundings, std::optional<double> leaves_m,
                     double antenna_height_m, double frequency_mhz, bool in_leaf = true);

}  // namespace mastwise::reception
