#pragma once

#include "core/result.hpp"
#include "core/sweep/dial.hpp"

#include <optional>
#include <span>

namespace mastwise::aim {

// Where the picture fails: going clockwise seen from above it holds from `left` to `right`.
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

// The middle between the two edges, for an antenna whose beam is alike to both sides.
// `with_picture`, a heading at which there is a picture, says which of the two middles is meant
// where left and right may be confused: the edges of a pair are exchanged if it does not lie
// between them. Several pairs are averaged. `edge_sigma_deg`, over 0, is the error of one edge (the
// play of a handle, the step of turning: common practice, no source, 3 degrees): the middle of one
// pair is off by 1 / sqrt(2) of it, that of n pairs by 1 / sqrt(2 n), or, from three pairs on, by
// as much as they scatter, whichever is more [propagation of independent errors].
// Refuses: no pair, two equal edges, middles of several pairs over 90 degrees apart.
Result<EdgeMiddle> middle_of_edges(std::span<const Edges> pairs,
                                   std::optional<Bearing<Dial>> with_picture = std::nullopt,
                                   double edge_sigma_deg = 3.0);

}  // namespace mastwise::aim
