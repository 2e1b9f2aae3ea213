#include "core/sound/sounds.hpp"

#include "core/sound/wav.hpp"
#include "tests/support/spectrum.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <numbers>
#include <random>

#include <catch2/catch.hpp>

using namespace mastwise;
using namespace mastwise::sound;
using test::amplitude_at;
using test::strongest_hz;

namespace {

std::size_t samples_in(double seconds) {
  return static_cast<std::size_t>(seconds * kRate_hz);
}

Samples rendered(const Tone& tone, double seconds) {
  Mixer mixer;
  mixer.set_tone(tone);
  Samples samples(samples_in(seconds));
  mixer.render(samples);
  return samples;
}

// The samples and a fifth of a second after the tone is no longer wanted.
Samples with_its_end(const Tone& tone, double seconds) {
  Mixer mixer;
  mixer.set_tone(tone);
  Samples samples(samples_in(seconds + 0.2));
  const auto end = samples.begin() + static_cast<std::ptrdiff_t>(samples_in(seconds));
  mixer.render({samples.begin(), end});
  mixer.set_tone(std::nullopt);
  mixer.render({end, samples.end()});
  CHECK(mixer.silent());
  return samples;
}

std::span<const float> part(const Samples& samples, double from_s, double to_s) {
  return std::span(samples).subspan(samples_in(from_s), samples_in(to_s - from_s));
}

// Times at which a sounding half of a pulse begins.
int pulses(const Samples& samples) {
  constexpr std::size_t kWindow = 64;
  int count = 0;
  bool sounded = false;
  for (std::size_t i = 0; i + kWindow < samples.size(); i += kWindow) {
    const bool sounds = rms_dbfs(std::span(samples).subspan(i, kWindow)) > -30.0;
    if (sounds && !sounded) ++count;
    sounded = sounds;
  }
  return count;
}

Samples noise(std::size_t count, double peak) {
  std::mt19937 random(7);
  std::uniform_real_distribution<float> one(-static_cast<float>(peak), static_cast<float>(peak));
  Samples samples(count);
  for (float& sample : samples) sample = one(random);
  return samples;
}

}  // namespace

// By definition: a full sine has a power of 1/2, which is -3.01 dB, and an amplitude of 1.
TEST_CASE("the measures of this test know a sine", "[sound]") {
  Samples sine(samples_in(1.0));
  for (std::size_t i = 0; i < sine.size(); ++i) {
    sine[i] = static_cast<float>(
        std::sin(2.0 * std::numbers::pi * 700.0 * static_cast<double>(i) / kRate_hz));
  }
  CHECK(rms_dbfs(sine) == Approx(-3.0103).margin(0.001));
  CHECK(peak_dbfs(sine) == Approx(0.0).margin(0.01));
  CHECK(amplitude_at(sine, 700.0) == Approx(1.0).margin(0.001));
  CHECK(amplitude_at(sine, 750.0) < 0.001);
  CHECK(strongest_hz(sine, 500.0, 900.0) == Approx(700.0).margin(0.5));
}

// Fundamental 150 to 1000 Hz, at least four harmonics within 300 to 4000 Hz and 15 dB: IEC
// 60601-1-8, table 4 (as quoted by puiaudio.com/pages/iec-60601-1-8). 520 Hz within 10 %: NFPA 72
// (from memory) for people with hearing loss.
TEST_CASE("each pitch of the alarm has its fundamental and four strong harmonics", "[sound]") {
  const Samples samples = rendered(alarm(false), 4.0);
  for (const double from_s : {1.02, 1.27}) {
    const auto pitch = part(samples, from_s, from_s + 0.2);
    const double fundamental_hz = strongest_hz(pitch, 100.0, 4000.0);
    INFO(fundamental_hz << " Hz");
    CHECK((std::fabs(fundamental_hz - 520.0) < 52.0 || std::fabs(fundamental_hz - 780.0) < 15.0));
    CHECK(fundamental_hz >= 150.0);
    CHECK(fundamental_hz <= 1000.0);
    int strong = 0;
    for (int harmonic = 2; harmonic * fundamental_hz <= 4000.0; ++harmonic) {
      const double share =
          amplitude_at(pitch, harmonic * fundamental_hz) / amplitude_at(pitch, fundamental_hz);
      strong += 20.0 * std::log10(share) > -15.0 ? 1 : 0;
    }
    CHECK(strong >= 4);
  }
  CHECK(strongest_hz(part(samples, 1.02, 1.22), 100.0, 4000.0) !=
        Approx(strongest_hz(part(samples, 1.27, 1.47), 100.0, 4000.0)).margin(100.0));
}

// Two pitches in turn, each a quarter of a second: 2 changes up and 2 down each second, within the
// 0.5 to 4 Hz of ISO 7731 (from memory).
TEST_CASE("the alarm is as loud as it can be, all the time, and does not clip", "[sound]") {
  const Samples samples = rendered(alarm(false), 4.0);
  CHECK(peak_dbfs(samples) < -0.5);
  CHECK(peak_dbfs(samples) > -1.6);
  CHECK(rms_dbfs(samples) > -4.0);
  for (double from_s = 0.1; from_s < 3.8; from_s += 0.1) {
    INFO(from_s);
    CHECK(rms_dbfs(part(samples, from_s, from_s + 0.1)) > -4.5);
  }
  // At least 10 dB quieter, still well over a room's noise.
  const double quieter_db = rms_dbfs(samples) - rms_dbfs(rendered(alarm(true), 4.0));
  CHECK(quieter_db == Approx(14.0).margin(0.3));
}

TEST_CASE("pulses tell how far to turn: faster and higher toward the heading", "[sound]") {
  double before_hz = 0.0;
  int before = 0;
  for (const double far_deg : {120.0, 60.0, 30.0, 5.0}) {
    Tone tone = turning(Turn::clockwise_deg(far_deg));
    const Samples samples = rendered(tone, 4.0);
    tone.glide_octaves = 0.0;
    const double pitch_hz = strongest_hz(rendered(tone, 4.0), 300.0, 1300.0);
    INFO(far_deg << " degrees: " << pulses(samples) << " pulses at " << pitch_hz << " Hz");
    CHECK(pulses(samples) > before);
    CHECK(pitch_hz > before_hz);
    before = pulses(samples);
    before_hz = pitch_hz;
  }
  // 2 a second far away, 10 a second at the heading, as the header says.
  CHECK(pulses(rendered(turning(Turn::clockwise_deg(170.0)), 4.0)) == 8);
  CHECK(pulses(rendered(turning(Turn::clockwise_deg(0.1)), 4.0)) == Approx(40).margin(1));
}

TEST_CASE("each pulse rises for a turn to the right and falls for one to the left", "[sound]") {
  for (const double turn_deg : {90.0, -90.0}) {
    const Samples samples = rendered(turning(Turn::clockwise_deg(turn_deg)), 1.0);
    // The sounding half of the second pulse is from 0.5 to 0.75 s.
    const double begin_hz = strongest_hz(part(samples, 0.51, 0.59), 300.0, 900.0);
    const double end_hz = strongest_hz(part(samples, 0.66, 0.74), 300.0, 900.0);
    INFO(turn_deg << ": " << begin_hz << " to " << end_hz << " Hz");
    CHECK((end_hz - begin_hz) * turn_deg > 0.0);
    CHECK(std::fabs(end_hz - begin_hz) > 40.0);
  }
}

TEST_CASE("on the heading the tone is steady and without a pause", "[sound]") {
  const Samples samples = rendered(on_heading(), 2.0);
  CHECK(pulses(samples) == 1);
  CHECK(strongest_hz(part(samples, 0.5, 1.5), 300.0, 2000.0) == Approx(1040.0).margin(1.0));
  for (double from_s = 0.1; from_s < 1.9; from_s += 0.1) {
    CHECK(rms_dbfs(part(samples, from_s, from_s + 0.1)) == Approx(-9.03).margin(0.1));
  }
}

// A click spreads over all frequencies, while no tone has anything above 4 kHz. A cut from half of
// full scale gives 0.5 / (2 sin(w / 2)) * 4 / 110 at the middle of a Hann window of 110 samples,
// w = 2 pi 7000 / 22050: 0.01. Fades of 10 ms leave less than a tenth of that.
TEST_CASE("nothing clicks at begin, end or change", "[sound]") {
  const auto check_smooth = [](const Samples& samples, const char* what) {
    constexpr std::size_t kWindow = 110, kStep = 22;
    CHECK(std::fabs(samples.front()) < 0.002f);
    CHECK(samples.back() == 0.0f);
    double loudest = 0.0;
    for (std::size_t from = 0; from + kWindow < samples.size(); from += kStep) {
      for (const double frequency_hz : {7'000.0, 8'500.0, 10'000.0}) {
        const auto window = std::span(samples).subspan(from, kWindow);
        loudest = std::max(loudest, amplitude_at(window, frequency_hz));
      }
    }
    INFO(what);
    CHECK(loudest < 0.001);
  };
  check_smooth(with_its_end(alarm(false), 1.1), "alarm");
  check_smooth(with_its_end(turning(Turn::clockwise_deg(20.0)), 1.03), "turning");
  check_smooth(with_its_end(on_heading(), 0.5), "on the heading");
  check_smooth(confirm(), "confirm");
  // From one tone to another, also of another timbre.
  Mixer mixer;
  Samples samples(samples_in(1.6));
  const std::optional<Tone> tones[]{
      turning(Turn::clockwise_deg(80.0)), on_heading(), alarm(false), alarm(true),
      turning(Turn::clockwise_deg(-3.0)), std::nullopt};
  std::size_t from = 0;
  for (const auto& tone : tones) {
    mixer.set_tone(tone);
    const std::size_t length = tone ? samples_in(0.257) : samples.size() - from;
    mixer.render(std::span(samples).subspan(from, length));
    from += length;
  }
  check_smooth(samples, "changes");
}

TEST_CASE("the confirming sound is two notes, short and not loud", "[sound]") {
  const Samples samples = confirm();
  CHECK(static_cast<double>(samples.size()) / kRate_hz == Approx(0.24).margin(0.01));
  CHECK(strongest_hz(part(samples, 0.02, 0.1), 300.0, 2000.0) == Approx(660.0).margin(8.0));
  CHECK(strongest_hz(part(samples, 0.13, 0.21), 300.0, 2000.0) == Approx(880.0).margin(8.0));
  CHECK(peak_dbfs(samples) == Approx(-6.0).margin(0.2));
}

TEST_CASE("the tone makes way for words and comes back, and the sum never clips", "[sound]") {
  Mixer mixer;
  mixer.set_tone(alarm(false));
  Samples before(samples_in(0.5)), during(samples_in(1.0)), after(samples_in(0.5));
  mixer.render(before);
  // Silent words show that the tone is gone.
  Samples words(samples_in(0.9), 0.0f);
  mixer.insert(words);
  CHECK(mixer.inserting());
  mixer.render(during);
  CHECK(rms_dbfs(part(during, 0.05, 0.85)) < -100.0);
  mixer.render(after);
  CHECK_FALSE(mixer.inserting());
  CHECK(rms_dbfs(part(after, 0.1, 0.4)) > -4.5);
  // Loud words under the loudest tone.
  mixer.insert(noise(samples_in(0.5), 0.8));
  Samples loud(samples_in(1.0));
  mixer.render(loud);
  CHECK(peak_dbfs(loud) < -0.5);
}

TEST_CASE("dropped words end within 20 ms and the next ones are whole", "[sound]") {
  Mixer mixer;
  mixer.insert(Samples(samples_in(1.0), 0.5f));
  mixer.insert(Samples(samples_in(1.0), 0.5f));
  Samples begun(samples_in(0.2)), end(samples_in(0.1));
  mixer.render(begun);
  mixer.drop();
  mixer.render(end);
  CHECK_FALSE(mixer.inserting());
  CHECK(rms_dbfs(part(end, 0.02, 0.1)) < -100.0);
  CHECK(test::largest_step(end) < 0.01);
  mixer.insert(Samples(100, 0.25f));
  Samples next(200);
  mixer.render(next);
  CHECK(std::count(next.begin(), next.end(), 0.25f) == 100);
}

// 18 dB from power to peak are usual for speech (common practice, no source).
TEST_CASE("speech is made as loud as the tones without clipping", "[sound]") {
  Samples speech = noise(samples_in(1.0), 0.05);
  for (std::size_t i = 0; i < speech.size(); i += 2'000) speech[i] = 0.4f;
  const Samples loud = leveled(speech);
  CHECK(peak_dbfs(loud) < -1.9);
  CHECK(rms_dbfs(loud) == Approx(-15.0).margin(1.5));
  CHECK(loud.front() == 0.0f);
  CHECK(loud.back() == 0.0f);
  CHECK(peak_dbfs(leveled(Samples(1'000, 0.0f))) == -120.0);
  CHECK(leveled({}).empty());
}

// The bytes by the format's description: 44 bytes of head, then 16-bit samples, the low byte first.
TEST_CASE("a WAV file has its head and its samples", "[sound]") {
  const std::string bytes = wav_bytes(Samples{0.0f, 1.0f, -1.0f, 0.5f, 7.0f});
  const auto number = [&](std::size_t at, int count) {
    std::uint32_t value = 0;
    for (int i = count - 1; i >= 0; --i) {
      value = value << 8 | static_cast<unsigned char>(bytes[at + static_cast<std::size_t>(i)]);
    }
    return value;
  };
  REQUIRE(bytes.size() == 44 + 2 * 5);
  CHECK(bytes.substr(0, 4) == "RIFF");
  CHECK(number(4, 4) == bytes.size() - 8);
  CHECK(bytes.substr(8, 8) == "WAVEfmt ");
  CHECK(number(20, 2) == 1);  // PCM
  CHECK(number(22, 2) == 1);  // channel
  CHECK(number(24, 4) == 22'050);
  CHECK(number(28, 4) == 44'100);
  CHECK(number(34, 2) == 16);
  CHECK(bytes.substr(36, 4) == "data");
  CHECK(number(40, 4) == 10);
  CHECK(number(44, 2) == 0);
  CHECK(number(46, 2) == 32'767);
  CHECK(number(48, 2) == 65'536 - 32'767);
  CHECK(number(50, 2) == 16'384);
  CHECK(number(52, 2) == 32'767);  // cut
}

// The least 16-bit number is -1, half of it upward one half.
TEST_CASE("16-bit samples become shares of full scale", "[sound]") {
  const std::vector<std::int16_t> pcm{-32'768, 0, 16'384};
  CHECK(from_pcm(pcm) == std::vector<float>{-1.0F, 0.0F, 0.5F});
}
