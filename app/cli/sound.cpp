#include "app/cli/verbs.hpp"
#include "app/service/speech.hpp"
#include "app/session/spoken_cues.hpp"
#include "app/session/turn_tone.hpp"
#include "app/words/spoken.hpp"
#include "core/sound/sounds.hpp"
#include "core/sound/wav.hpp"
#include "platform/atomic_save.hpp"

#include <algorithm>
#include <cmath>
#include <iostream>
#include <memory>

#include <fmt/format.h>

// Renders what the app sounds into a file, so that anybody can hear it.
namespace mastwise::cli {
namespace {

struct SoundOptions {
  std::string name, file;
  double degrees = 40.0;
  double seconds = 6.0;
  bool left = false, quiet = false, speech = false;
};

const std::vector<std::string> kNames{"alarm", "turn", "on-heading", "confirm", "walk"};

sound::Samples rendered(sound::Mixer& mixer, double seconds) {
  sound::Samples samples(static_cast<std::size_t>(seconds * sound::kRate_hz));
  mixer.render(samples);
  return samples;
}

void append(sound::Samples& all, const sound::Samples& more) {
  all.insert(all.end(), more.begin(), more.end());
}

// A tone for a time, and its end.
sound::Samples tone_alone(const sound::Tone& tone, double seconds) {
  constexpr double kEnd_s = 0.1;
  sound::Mixer mixer;
  mixer.set_tone(tone);
  sound::Samples samples = rendered(mixer, seconds);
  mixer.set_tone(std::nullopt);
  append(samples, rendered(mixer, kEnd_s));
  return samples;
}

// What the model lets be heard while `change` moves it on, in steps of a twentieth of a second.
Result<sound::Samples> heard(Model model, double seconds, bool speech,
                             const std::function<void(Model&, double seconds)>& change) {
  constexpr milliseconds kStep{50};
  sound::Mixer mixer;
  SpokenCues cues;
  Speech voice;
  sound::Samples samples;
  const auto steps = static_cast<int>(seconds * 1000.0 / static_cast<double>(kStep.count()));
  for (int step = 0; step < steps; ++step) {
    model.now += kStep;
    const double step_s = static_cast<double>(kStep.count()) / 1000.0;
    change(model, step * step_s);
    mixer.set_tone(tone_of(model));
    if (const auto words = cues.next(model, mixer.inserting()); words && speech) {
      auto spoken = voice.of(*words);
      if (!spoken) return spoken.error();
      mixer.insert(*std::move(spoken));
    }
    append(samples, rendered(mixer, step_s));
  }
  mixer.set_tone(std::nullopt);
  mixer.drop();
  append(samples, rendered(mixer, 0.1));
  return samples;
}

// A model in which nothing is known yet.
Model empty_model() {
  return Model{Shared{.receiver = nmea::Receiver(std::chrono::sys_days{})}};
}

Result<sound::Samples> alarm(const SoundOptions& options) {
  Model model = empty_model();
  model.safety.drive = safety::Drive::Alarm;
  if (options.quiet) model.safety.quiet_until = Monotonic::max();
  return heard(model, options.seconds, options.speech, [](Model&, double) {});
}

// The antenna is turned to the heading at a steady pace after a second and a half, and then held.
Result<sound::Samples> walk(const SoundOptions& options) {
  constexpr double kStill_s = 1.5, kPace_deg_per_s = 5.0;
  Model model = empty_model();
  model.safety.roof = true;
  model.settings.speech = options.speech;
  model.findings.slack = Slack{.left_deg = 20.0, .right_deg = 20.0};
  return heard(model, options.seconds, options.speech, [&](Model& now, double seconds) {
    const double turned_deg = kPace_deg_per_s * std::max(0.0, seconds - kStill_s);
    const double left_deg = std::max(0.0, options.degrees - turned_deg);
    now.findings.turn = Turn::clockwise_deg(options.left ? -left_deg : left_deg);
  });
}

Result<sound::Samples> sound_of(const SoundOptions& options) {
  if (options.name == "alarm") return alarm(options);
  if (options.name == "walk") return walk(options);
  if (options.name == "confirm") return sound::confirm();
  if (options.name == "on-heading") return tone_alone(sound::on_heading(), options.seconds);
  const Turn turn = Turn::clockwise_deg(options.left ? -options.degrees : options.degrees);
  return tone_alone(sound::turning(turn), options.seconds);
}

Result<Done> write_sound(const SoundOptions& options) {
  const auto samples = sound_of(options);
  if (!samples) return samples.error();
  const std::string bytes = sound::wav_bytes(*samples);
  const auto saved = platform::save_atomically(options.file, std::as_bytes(std::span(bytes)));
  if (!saved) return saved.error();
  std::cout << fmt::format("{}: {:.2f} s, peak {:.1f} dBFS, RMS {:.1f} dBFS\n", options.name,
                           static_cast<double>(samples->size()) / sound::kRate_hz,
                           sound::peak_dbfs(*samples), sound::rms_dbfs(*samples));
  return Done{};
}

}  // namespace

void add_sound(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<SoundOptions>();
  CLI::App* verb = program.add_subcommand("sound", "Render a sound of the app into a WAV file");
  verb->add_option("name", options->name, "alarm, turn, on-heading, confirm or walk")
      ->required()
      ->check(CLI::IsMember(kNames));
  verb->add_option("file", options->file, "WAV file to write")->required();
  verb->add_option("--degrees", options->degrees, "for turn and walk: how far (default: 40)")
      ->check(CLI::Range(0.0, 180.0));
  verb->add_option("--seconds", options->seconds, "how long (default: 6)")
      ->check(CLI::Range(0.1, 600.0));
  verb->add_flag("--left", options->left, "turn left");
  verb->add_flag("--quiet", options->quiet, "for alarm: as it is for 30 s after a touch");
  verb->add_flag("--speech", options->speech, "for alarm and walk: with words");
  verb->callback([&chosen, options] { chosen = [options] { return write_sound(*options); }; });
}

}  // namespace mastwise::cli
