#include "tests/app/session/stop_steps.hpp"

#include "tests/support/receiver_log.hpp"

namespace mastwise::test {

void paint_sides(Stage& stage) {
  for (std::size_t kind = 1; kind < reception::kSideKinds; ++kind) {
    stage.set(act::ChooseBrush{static_cast<reception::SideKind>(kind)});
    stage.set(act::PaintSide{kind - 1, false});
  }
}

void stand_parked(Stage& stage) {
  stage.set(act::UseReceiver{});
  for (int second = 0; second < 30; ++second) {
    const double off_deg = 1e-5 * (second % 7 - 3);
    stage.receive(epoch(36'000 + second, *Position::at_deg(42.5 + off_deg, -118.5 - off_deg)));
    stage.wait(milliseconds(1000));
  }
}

}  // namespace mastwise::test
