#include "app/guide/guides.hpp"
#include "tests/app/session/views.hpp"

namespace mastwise::test {

std::vector<View> guide_views() {
  constexpr std::array kNames{"guide of Here", "guide of Stations", "guide of Map",
                              "guide of Aim",  "guide of Plan",     "guide of Path",
                              "guide of Peak", "guide of Logbook",  "guide of Ahead",
                              "guide of Data", "guide of the roof"};
  std::vector<View> views;
  for (const GuidePage& page : guide_pages()) {
    const Guide guide = page.guide;
    views.push_back(
        {kNames.at(views.size()), [guide](Stage& s) { press(s, act::OpenGuide{guide}); }});
  }
  return views;
}

}  // namespace mastwise::test
