#pragma once

namespace mastwise::p1812 {

// beta0, the percentage of time in which the refractivity of the lowest 100 m may fall by more than
// 100 N-units/km (section 3.6, (2)-(5)). longest_land_km dtm and longest_inland_km dlm: at least 0;
// latitude within [-90, 90] degrees.
double ducting_incidence_percent(double longest_land_km, double longest_inland_km,
                                 double path_latitude_deg);

// tau (3), within [0, 1).
double inland_parameter(double longest_inland_km);

}  // namespace mastwise::p1812
