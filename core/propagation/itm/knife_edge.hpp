#pragma once

namespace mastwise::itm {

// Fresnel knife-edge attenuation in dB from the square of v (0 or more). Source: Algorithm (6.1).
double knife_edge_db(double v_squared);

}  // namespace mastwise::itm
