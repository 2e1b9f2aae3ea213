#pragma once

namespace mastwise::p1812 {

// Loss J(v) over a single knife edge in dB (12), also Recommendation ITU-R P.526 (31):
// 0 for v <= -0.78. v is the Fresnel-Kirchhoff parameter, dimensionless.
double knife_edge_loss_db(double v);

}  // namespace mastwise::p1812
