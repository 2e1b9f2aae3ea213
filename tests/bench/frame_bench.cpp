#include "platform/clock.hpp"
#include "platform/start.hpp"
#include "platform/system_paths.hpp"
#include "tests/bench/offscreen.hpp"

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <memory>
#include <sstream>
#include <string>
#include <vector>

#include <SDL_opengl.h>
#include <fmt/format.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

// The cost of a frame, as a multiple of an empty frame of the same window, drawn offscreen; the
// first frame after start; and the processor's use while idle. Choose parts by name:
//   frame_bench [frames] [start] [idle]     all of them without a name

using namespace mastwise;
using namespace mastwise::bench;

namespace {

// The practice area with its aim screen open.
const shell::RuntimeWish kPractice{.catalog_path = ":memory:"};
const std::vector<Action> kAim{act::Show{Place::Aim}};

void bench_frames(shell::GlWindow& window) {
  Offscreen program = start_program(window.metrics(), kPractice, kAim);
  shell::Session& session = program.runtime->session();
  Monotonic now = session.model().now;
  const double empty_ms = median_ms([&](int) { draw_empty(window); });
  const auto draw = [&] {
    now += milliseconds(16);
    program.painter->paint(program.interface->frame(now), program.interface->ground(),
                           program.interface->bitmaps());
    finish_frame(window);
  };
  const double still_ms = median_ms([&](int) { draw(); });

  session.act(act::TurnDial{});
  session.act(act::TurnDial{});
  bool moved = true;
  const auto turn = [&](int i) {
    const int tenths = (i + 20) * 17 % 3600;
    const std::string text = fmt::format("HEHDT,{}.{},T", tenths / 10, tenths % 10);
    unsigned checksum = 0;
    for (const char character : text) checksum ^= static_cast<unsigned char>(character);
    session.act(act::ReceiverBytes{now, fmt::format("${}*{:02X}\r\n", text, checksum)});
  };
  const double turning_ms = median_ms([&](int i) {
    turn(i);
    draw();
    moved = moved && program.interface->moving();
  });
  std::vector<double> code_ms;
  for (int i = 0; i < kFrames; ++i) {
    turn(i);
    now += milliseconds(16);
    const auto began = Clock::now();
    program.interface->frame(now);
    code_ms.push_back(ms_since(began));
  }
  fmt::print("empty frame: {:.2f} ms\n", empty_ms);
  fmt::print("frame of a still dial: {:.2f} ms, {:.2f} times an empty one\n", still_ms,
             still_ms / empty_ms);
  fmt::print("frame while the dial turns: {:.2f} ms, {:.2f} times an empty one{}\n", turning_ms,
             turning_ms / empty_ms, moved ? "" : " (BUT IT DID NOT ALWAYS TURN)");
  fmt::print("which are {:.0f} a second\n", 1000.0 / turning_ms);
  fmt::print("interface code of a turning frame: {:.0f} us\n", 1000.0 * median(std::move(code_ms)));
}

const shell::WindowWish kOffscreen{.offscreen = true};

// From start to the first presented frame, in a separate process, because the driver loads once.
// The workers are not waited for.
double first_frame_ms(bool whole_program) {
  int ends[2];
  if (pipe(ends) != 0) std::exit(1);
  const auto began = Clock::now();
  const pid_t child = fork();
  if (child == 0) {
    std::unique_ptr<shell::GlWindow> window;
    Offscreen program;
    if (whole_program) {
      shell::Opening opening = need(shell::open_and_start(kOffscreen, kPractice));
      window = std::move(opening.window);
      for (const Action& action : kAim) opening.runtime->session().act(action);
      program = begin_interface(std::move(opening.runtime), window->metrics(), opening.load_fonts);
      program.painter->paint(program.interface->frame(platform::monotonic_now()),
                             program.interface->ground(), program.interface->bitmaps());
      finish_frame(*window);
    } else {
      window = need(shell::GlWindow::open(kOffscreen));
      draw_empty(*window);
    }
    const double took_ms = ms_since(began);
    _exit(write(ends[1], &took_ms, sizeof took_ms) == sizeof took_ms ? 0 : 1);
  }
  close(ends[1]);
  double took_ms = 0.0;
  const bool told = read(ends[0], &took_ms, sizeof took_ms) == sizeof took_ms;
  close(ends[0]);
  waitpid(child, nullptr, 0);
  if (!told) std::exit(1);
  return took_ms;
}

void bench_start() {
  std::vector<double> empty, program;
  for (int i = 0; i < 7; ++i) {
    empty.push_back(first_frame_ms(false));
    program.push_back(first_frame_ms(true));
  }
  const double empty_ms = median(std::move(empty)), program_ms = median(std::move(program));
  fmt::print("first frame: {:.0f} ms; of an empty window {:.0f} ms; {:.2f} times\n", program_ms,
             empty_ms, program_ms / empty_ms);
}

// Processor time of a process so far, in seconds (proc(5): fields 14 and 15 of its stat).
double processor_s(pid_t process) {
  std::ifstream file(fmt::format("/proc/{}/stat", process));
  std::string text((std::istreambuf_iterator<char>(file)), {});
  // The second field may contain spaces; it ends with the last parenthesis.
  std::istringstream fields(text.substr(text.rfind(')') + 2));
  std::string skipped;
  for (int i = 0; i < 11; ++i) fields >> skipped;
  long user = 0, system = 0;
  fields >> user >> system;
  return static_cast<double>(user + system) / static_cast<double>(sysconf(_SC_CLK_TCK));
}

void bench_idle() {
  const std::string folder = std::filesystem::temp_directory_path().string() + "/mastwise_idle";
  const std::string program = platform::program_folder() + "/mastwise";
  const pid_t child = fork();
  if (child == 0) {
    setenv("SDL_VIDEODRIVER", "offscreen", 1);
    setenv("MASTWISE_DATA", folder.c_str(), 1);
    execl(program.c_str(), program.c_str(), nullptr);
    _exit(127);
  }
  constexpr int kSettleS = 4, kWatchedS = 20;
  sleep(kSettleS);
  const double before_s = processor_s(child);
  sleep(kWatchedS);
  const double used_s = processor_s(child) - before_s;
  const bool lives = waitpid(child, nullptr, WNOHANG) == 0;
  kill(child, SIGTERM);
  waitpid(child, nullptr, 0);
  std::filesystem::remove_all(folder);
  if (!lives) {
    fmt::print(stderr, "Mastwise ended by itself\n");
    std::exit(1);
  }
  fmt::print(
      "processor over {} s of nothing: {:.2f} s, {:.2f} % of one core (offscreen driver, which "
      "is asked for events 20 times a second)\n",
      kWatchedS, used_s, 100.0 * used_s / kWatchedS);
}

}  // namespace

int main(int argc, char* argv[]) {
  argv = platform::start_program(argc, argv);
  const std::vector<std::string> chosen(argv + 1, argv + argc);
  const auto wanted = [&](const char* part) {
    return chosen.empty() || std::find(chosen.begin(), chosen.end(), part) != chosen.end();
  };
  // The window of the other parts comes last: a loaded driver stays in every child.
  if (wanted("idle")) bench_idle();
  if (wanted("start")) bench_start();
  if (!wanted("frames")) return 0;
  const auto window = need(shell::GlWindow::open(kOffscreen));
  bench_frames(*window);
  return 0;
}
