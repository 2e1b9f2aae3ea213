#pragma once

#include "core/result.hpp"
#include "core/sweep/dial.hpp"

#include <optional>
#include <span>

namespace mastwise::aim {

// Where the picture fails: clockwise seen from above, the picture is good from `left` to `right`.
struct Edges {
  Bearing<Dial> left;
  Bearing<Dial> right;
};

struct EdgeMiddle {
  Bearing<Dial> middle;
  double sigma_deg;
  double width_deg;  // from edge to edge, over 0 and under 360
  bool operator==(const EdgeMiddle&) const = default;
};

// The middle between the two edges, for an antenna with a symmetrical beam. `with_picture`, a
// heading with a picture, decides which of the two middles is meant if left and right may be
// confused: a pair's edges are exchanged if it is not between them. Several pairs are averaged.
// `edge_sigma_deg`, over 0, is the error of one edge (the play of a handle, the step of turning:
// common practice, no source, 3 degrees). The middle of one pair is off by 1 / sqrt(2) of it, that
// of n pairs by 1 / sqrt(2 n); from three pairs on, by their scatter if that is larger [propagation
// of independent errors]. Errors: no pair, two equal edges, middles of several pairs over 90
// degrees apart.
Result<EdgeMiddle> middle_of_edges(std::span<const Edges> pairs,
                                   std::optional<Bearing<Dial>> with_picture = std::nullopt,
                                   double edge_sigma_deg = 3.0);

}  // namespace mastwise::aim
