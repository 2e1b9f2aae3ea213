#pragma once

namespace mastwise::itm {

// Delta h(s): the irregularity of a stretch of terrain, in m. Source: Algorithm (3.9).
double stretch_irregularity_m(double delta_h_m, double stretch_m);

// sigma_h of terrain with the given stretch irregularity, in m. Source: Algorithm (3.10).
double height_deviation_m(double stretch_irregularity_m);

}  // namespace mastwise::itm
