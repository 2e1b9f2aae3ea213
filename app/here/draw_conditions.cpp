#include "app/here/actions.hpp"
#include "app/here/draw.hpp"
#include "app/ui/layout.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/words/chances.hpp"

#include <array>
#include <optional>
#include <string>

// Sheets that cover the places: the noise at the stop, and what the TV decodes.
namespace mastwise::screens {
namespace {

using gear::NoiseEnvironment;
using ui::ButtonLook;

struct NoiseChoice {
  std::optional<NoiseEnvironment> noise;
  const char* name;
  const char* label;
};
constexpr std::array kNoises{
    NoiseChoice{NoiseEnvironment::quiet_rural, "quiet rural", "Quiet rural: no power lines"},
    NoiseChoice{NoiseEnvironment::rural, "rural", "Rural: country, campground"},
    NoiseChoice{NoiseEnvironment::residential, "residential", "Residential: houses"},
    NoiseChoice{NoiseEnvironment::city, "city", "City: shops, traffic"},
};

// The buttons in two columns, from the top down.
class Grid {
 public:
  Grid(Ui& ui, Rect area) : ui_(ui), area_(area) {}

  bool button(const std::string& name, const std::string& label, bool chosen) {
    const float width = (area_.width() - kGap) / 2.0f;
    const float left = area_.left + static_cast<float>(count_ % 2) * (width + kGap);
    const float top = area_.top + static_cast<float>(count_ / 2) * (kHeight + kGap);
    ++count_;
    return ui_.button(name, {left, top, left + width, top + kHeight}, label,
                      chosen ? ButtonLook::Filled : ButtonLook::Plain);
  }
  float bottom() const {
    return area_.top + static_cast<float>((count_ + 1) / 2) * (kHeight + kGap);
  }

 private:
  static constexpr float kHeight = 80.0f, kGap = 16.0f;
  Ui& ui_;
  Rect area_;
  std::size_t count_ = 0;
};

// Where the stations around are sent, which tells what a TV usually decodes.
Raster raster_here(const Shared& shared) {
  if (shared.stop.target) return shared.stop.target->raster;
  if (shared.stations && !shared.stations->rows.empty()) {
    return shared.stations->rows.front().station.raster;
  }
  return Raster::atsc;
}

void note(Ui& ui, Rect area, float top, const std::string& words) {
  ui.paragraph({area.left, top + 20.0f}, area.width(), 26.0f, words, ui::Face::Word,
               ui.theme().second_ink);
}

}  // namespace

void draw_noise_sheet(Ui& ui, const Shared& shared) {
  const Rect area = draw_sheet_head(ui, "How noisy is it here?");
  const Stop& stop = shared.stop;
  Grid grid(ui, area);
  const auto usual = reception::figures(stop.surroundings).noise;
  if (grid.button("noise as around", "As around: " + std::string(to_text(usual)), !stop.noise)) {
    ui.emit(act::ChooseNoise{std::nullopt, stop.inverter_on});
  }
  if (grid.button("inverter", stop.inverter_on ? "Inverter is on" : "Inverter is off",
                  stop.inverter_on)) {
    ui.emit(act::ChooseNoise{stop.noise, !stop.inverter_on});
  }
  for (const NoiseChoice& choice : kNoises) {
    if (grid.button(std::string("noise ") + choice.name, choice.label,
                    stop.noise == choice.noise)) {
      ui.emit(act::ChooseNoise{choice.noise, stop.inverter_on});
    }
  }
  note(
      ui, area, grid.bottom(),
      "Noise matters most on channels 2 to 13. The rig's inverter, charger and lamps are often the "
      "loudest: turn them off while you watch.");
}

void draw_television_sheet(Ui& ui, const Shared& shared) {
  const Rect area = draw_sheet_head(ui, "What can the TV decode?");
  const GearChoice& choice = shared.settings.gear;
  const gear::DecoderSet now = choice.decoders.value_or(gear::usual_decoders(raster_here(shared)));
  Grid grid(ui, area);
  for (const gear::Decoder decoder : gear::kDecoders) {
    const bool has = now.has(decoder);
    const std::string label(to_text(decoder));
    if (!grid.button("decodes " + label, label, has)) continue;
    GearChoice other = choice;
    other.decoders = now;
    has ? other.decoders->remove(decoder) : other.decoders->add(decoder);
    ui.emit(act::ChooseGear{other});
  }
  if (grid.button("decodes the usual", "Usual here", !choice.decoders)) {
    GearChoice other = choice;
    other.decoders.reset();
    ui.emit(act::ChooseGear{other});
  }
  note(ui, area, grid.bottom(),
       choice.decoders ? "The TV's manual lists what its tuner decodes."
                       : "Not set: the usual kind of TV is assumed. The TV's manual lists what its "
                         "tuner decodes.");
}

}  // namespace mastwise::screens
