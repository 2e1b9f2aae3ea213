#include "app/cli/arguments.hpp"
#include "app/service/clocks.hpp"
#include "app/service/practice_log.hpp"
#include "app/service/startup.hpp"
#include "app/shell/shot.hpp"
#include "app/shell/verbs.hpp"
#include "core/motion/sensor_lines.hpp"
#include "platform/clock.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <memory>
#include <numbers>

#include <fmt/format.h>

namespace mastwise::cli {
namespace {

struct ShotOptions {
  std::string screen, file, size = "1280x800", at, station, catalog, terrain, date, table,
                            seen_by = "usual", text_size = "usual";
  std::optional<double> nose_deg;
  std::optional<float> dots_per_inch;
  int focus = 0;
  bool night = false, red = false, spanish = false;
};

using Screens = std::map<std::string, std::vector<Action>>;

// Every sheet has its stored name: logbook-files.
void add_sheets(Screens& screens) {
  for (std::size_t i = 1; i < kStoredNames<Sheet>.size(); ++i) {
    std::string name(kStoredNames<Sheet>[i]);
    std::replace(name.begin(), name.end(), '_', '-');
    screens.emplace(name, std::vector<Action>{act::OpenSheet{static_cast<Sheet>(i)}});
  }
}

void add_guides(Screens& screens) {
  for (std::size_t i = 1; i < kStoredNames<Guide>.size(); ++i) {
    screens.emplace("guide-" + std::string(kStoredNames<Guide>[i]),
                    std::vector<Action>{act::OpenGuide{static_cast<Guide>(i)}});
  }
}

// A sentence with its checksum.
std::string checked(const std::string& sentence) {
  unsigned sum = 0;
  for (const char character : sentence) sum ^= static_cast<unsigned char>(character);
  return fmt::format("${}*{:02X}\r\n", sentence, sum);
}

// A sentence of a receiver, now.
Action received(const std::string& sentence) {
  return act::ReceiverBytes{platform::monotonic_now(), checked(sentence)};
}

// The roof while a sensor turns with the antenna.
std::vector<Action> on_roof(const std::string& sentence) {
  return {act::Show{Place::Aim}, act::GoToRoof{}, act::ConfirmAsked{}, received(sentence)};
}

// A sweep that reads itself: slowly over half the beam, too fast over the peak, and on.
std::vector<Action> live_sweep() {
  std::vector<Action> acts{act::Show{Place::Peak}, act::ChooseTurnBy{SweepBy::Sensor},
                           act::ConnectMeter{"dvb:0.0"}, act::BeginSweep{SweepBy::Sensor}};
  const auto beam = gear::Pattern::directional(60.0, 13.0);
  constexpr double kStation_deg = 34.0;
  Monotonic now = platform::monotonic_now();
  double heading_deg = kStation_deg - 70.0;
  const auto turn = [&](double rate_dps, int quarters) {
    for (int i = 0; i < quarters; ++i) {
      now += milliseconds(250);
      heading_deg += rate_dps / 4.0;
      const std::string sentence = fmt::format("HEHDT,{:.1f},T", fold_circle_deg(heading_deg));
      acts.push_back(act::ReceiverBytes{now, checked(sentence)});
      const double late_deg = heading_deg - rate_dps;
      const double snr_db = 23.0 + 0.4 * std::sin(1.7 * i) +
                            beam.relative_db(Turn::clockwise_deg(late_deg - kStation_deg));
      acts.push_back(act::MeterBytes{now, fmt::format("SNR {:.1f} dB\n", snr_db)});
    }
  };
  turn(3.0, 68);
  turn(16.0, 8);
  turn(3.0, 48);
  return acts;
}

// 50 knots to the north.
Action drive() {
  return received("GPRMC,180000.00,A,4244.0000,N,11824.0000,W,50.0,10.0,020726,,,A");
}

// An invented sensor on the rig that a drive all around has shown to deviate.
std::vector<Action> deviation_card() {
  act::StretchesBack driven;
  for (int i = 0; i < 24; ++i) {
    const double read_deg = 15.0 * i, radians = read_deg * std::numbers::pi / 180.0;
    const double curve_deg =
        1.5 + 7.0 * std::sin(radians) - 4.0 * std::cos(radians) + 2.0 * std::sin(2.0 * radians);
    driven.stretches.push_back({.read = Bearing<Magnetic>::degrees(read_deg),
                                .deviation_deg = curve_deg + (i * 7 % 5 - 2) * 0.5,
                                .horizontal_nt = 20'900.0,
                                .at = service::build_date()});
  }
  return {driven, act::ChooseSetting{"sensor_mount", "rig"}, act::OpenSheet{Sheet::Sensor}};
}

// An invented tablet that has seen so many of 200 directions, then is held toward magnetic 120
// degrees, with the field of some steel below it.
std::vector<Action> held_tablet(int directions, double steel_ut) {
  using motion::Vector;
  using Kind = motion::Sample::Kind;
  constexpr double kRadian = std::numbers::pi / 180.0, kTotal_ut = 50.5, kDip = 65.5 * kRadian;
  const Vector iron_ut{21.0, -13.0, 8.0};
  std::string lines;
  double at_s = 0.0;
  const auto say = [&](const Vector& up, const Vector& field_ut) {
    at_s += 0.125;
    lines += motion::to_line({.kind = Kind::acceleration, .at_s = at_s, .value = 9.80665 * up});
    lines += motion::to_line({.kind = Kind::field, .at_s = at_s, .value = field_ut + iron_ut});
  };
  for (int i = 0; i < directions; ++i) {
    const double z = 1.0 - (2.0 * i + 1.0) / 200.0, around = 137.508 * kRadian * i;
    const double flat = std::sqrt(1.0 - z * z);
    say({0.0, 0.0, 1.0}, kTotal_ut * Vector{flat * std::cos(around), flat * std::sin(around), z});
  }
  constexpr double kTilt = 60.0 * kRadian, kFaces = 120.0 * kRadian;
  const Vector up{0.0, std::sin(kTilt), std::cos(kTilt)};
  const Vector ahead{0.0, std::cos(kTilt), -std::sin(kTilt)}, right{1.0, 0.0, 0.0};
  const Vector north = std::cos(kFaces) * ahead - std::sin(kFaces) * right;
  for (int i = 0; i < 16; ++i) {
    say(up, kTotal_ut * std::cos(kDip) * north - (kTotal_ut * std::sin(kDip) + steel_ut) * up);
  }
  return {act::OpenSheet{Sheet::Tablet},
          act::TabletLinkChanged{Link{Link::State::Open, "invented sensors"}},
          act::TabletBytes{platform::monotonic_now(), lines}};
}

// Among the practice area's hills, 300 m that change the target's tolerance and what comes in.
std::vector<Action> short_move() {
  return {act::Show{Place::Aim},
          act::OpenKeypad{KeypadPurpose::Position},
          act::KeypadType{"42.57095,-118.85602"},
          act::KeypadAccept{},
          act::OpenKeypad{KeypadPurpose::Position},
          act::KeypadType{"42.57008,-118.85256"},
          act::KeypadAccept{}};
}

// An invented row of radiators, 1.4 wavelengths long, at a place of the practice area where one of
// its nulls, 48 degrees aside, belongs on what disturbs the target.
Result<std::vector<Action>> on_null() {
  const auto practice = service::load_practice();
  if (!practice) return practice.error();
  const auto station = practice_station(practice->stations, "QWSB");
  if (!station) return station.error();
  std::string table = "angle,relative_db\n";
  for (int degree = -180; degree < 180; degree += 3) {
    const double x =
        1.4 * std::numbers::pi * std::sin(std::max(std::abs(degree), 1) * std::numbers::pi / 180.0);
    const double front = std::fabs(std::sin(x) / x);
    const double field = std::abs(degree) <= 90 ? front : std::max(0.1 * front, 0.06);
    table += fmt::format("{},{:.2f}\n", degree, 20.0 * std::log10(std::max(field, 1e-3)));
  }
  return std::vector<Action>{act::ChooseGear{{.pattern_table = table}},
                             act::OpenKeypad{KeypadPurpose::Position},
                             act::KeypadType{"42.81532,-118.15"}, act::KeypadAccept{},
                             act::SelectStation{key_of(*station)}};
}

std::vector<Action> then(std::vector<Action> acts, const std::vector<Action>& more) {
  acts.insert(acts.end(), more.begin(), more.end());
  return acts;
}

// The screens by their command line names, and the actions that open them.
const Screens& screens() {
  static const Screens kScreens = [] {
    Screens screens{
        {"here", {act::Show{Place::Here}}},
        {"painted",
         {act::Show{Place::Here}, act::PaintSide{0, true}, act::PaintSide{1, true}, act::EndWipe{},
          act::ChooseBrush{reception::SideKind::open}, act::PaintSide{2, true},
          act::PaintSide{7, true}, act::EndWipe{}, act::ChooseBrush{reception::SideKind::rig},
          act::PaintSide{6, false}, act::ChooseBrush{reception::SideKind::hill},
          act::PaintSide{3, false}}},
        {"stations", {act::Show{Place::Stations}}},
        {"map", {act::Show{Place::Map}}},
        {"map-place", {act::Show{Place::Map}, act::HoldMap{{90.0, 70.0}}}},
        {"map-station", {act::Show{Place::Map}, act::TouchMap{{110.0, -120.0}}}},
        {"best-spot", {act::Show{Place::Map}, act::SwitchArea{}}},
        {"aim", {act::Show{Place::Aim}}},
        {"aim-by-rig", {act::Show{Place::Aim}, act::StandAt{Standing::beside_rig}}},
        {"peak", {act::Show{Place::Peak}}},
        {"sweep",
         {act::Show{Place::Peak}, act::BeginSweep{SweepBy::Compass},
          act::ReadMeter{.nothing = false}, act::SetMeter{-12.0}, act::ReadMeter{.nothing = false},
          act::SetMeter{8.0}, act::ReadMeter{.nothing = false}}},
        {"sweep-live", live_sweep()},
        {"noise-found",
         {act::OpenSheet{Sheet::NoiseHunt}, act::BeginHunt{}, act::ReadHunt{},
          act::TurnedOff{"Inverter"}, act::SetHunt{5.0}, act::ReadHunt{}, act::TurnedOff{"Fridge"},
          act::ReadHunt{}}},
        {"logbook", {act::Show{Place::Logbook}}},
        {"ahead", {act::Show{Place::Ahead}}},
        {"ahead-places",
         {act::Show{Place::Ahead}, act::OpenField{Field::AheadPlace},
          act::KeypadType{"43.1,-118.2"}, act::KeypadAccept{}, act::OpenField{Field::AheadPlace},
          act::KeypadType{"43.6,-119.4"}, act::KeypadAccept{}, act::OpenField{Field::AheadPlace},
          act::KeypadType{"44.6,-119.4"}, act::KeypadAccept{}}},
        {"logbook-nights", {act::Show{Place::Logbook}}},
        {"data-way",
         {act::Show{Place::Ahead}, act::OpenField{Field::AheadPlace},
          act::KeypadType{"43.1,-118.2"}, act::KeypadAccept{}, act::OpenField{Field::AheadPlace},
          act::KeypadType{"44.6,-119.4"}, act::KeypadAccept{}, act::OpenSheet{Sheet::Import}}},
        {"aim-moved", short_move()},
        {"aim-null", {act::Show{Place::Aim}}},
        {"roof", {act::Show{Place::Aim}, act::GoToRoof{}, act::ConfirmAsked{}}},
        {"type-position", {act::OpenKeypad{KeypadPurpose::Position}}},
        {"type-place",
         {act::OpenKeypad{KeypadPurpose::Position}, act::KeypadPage{}, act::KeypadType{"SPRINGF"}}},
        {"type-heading", {act::OpenKeypad{KeypadPurpose::Nose}}},
        {"search", {act::OpenKeypad{KeypadPurpose::Search}}},
        {"sensor-card", deviation_card()},
        {"tablet-learns", held_tablet(90, 0.0)},
        {"tablet-points",
         then(held_tablet(200, 0.0), {act::ChoosePointing{PointingMethod::tablet_magnetometer}})},
        {"tablet-by-steel", held_tablet(200, 20.0)},
        {"aim-by-tablet",
         then(held_tablet(200, 0.0), {act::ChoosePointing{PointingMethod::tablet_magnetometer},
                                      act::OpenSheet{Sheet::None}, act::Show{Place::Aim}})},
        {"roof-turn", on_roof("HEHDT,320.0,T")},
        {"roof-good", on_roof("HEHDT,34.0,T")},
        {"under-way",
         {act::Show{Place::Ahead}, act::OpenField{Field::AheadPlace},
          act::KeypadType{"43.586,-119.054"}, act::KeypadAccept{}, drive()}},
        {"alarm", {act::Ask{Asking::Raise}, act::ConfirmAsked{}, drive()}},
        {"seems-to-move", {act::Ask{Asking::Raise}, act::ConfirmAsked{}, act::Ask{Asking::Moving}}},
        {"raise", {act::Ask{Asking::Raise}}},
        {"before-roof", {act::Ask{Asking::Roof}}},
        {"weather", {act::Ask{Asking::Weather}}},
        {"before-driving", {act::Ask{Asking::Drive}}},
        {"after-alarm", {act::Ask{Asking::AfterAlarm}}},
        {"channels", {act::ScanStep{0}}},
        {"parking",
         {act::ToggleGear{"Omnidirectional roof disc with amplifier"},
          act::ToggleGear{"Long Yagi on a pole with amplifier"}, act::OpenSheet{Sheet::Parking}}},
        {"data", {act::OpenSheet{Sheet::Import}}},
        {"fetch", {act::OpenSheet{Sheet::Import}, act::ShowOffers{}}},
        {"fetch-offer",
         {act::OpenSheet{Sheet::Import}, act::ShowOffers{}, act::PickOffer{"glo_90"}}},
        {"fetch-in-browser", {act::InBrowser{}, act::OpenSheet{Sheet::Import}, act::ShowOffers{}}},
        {"fetch-offer-in-browser",
         {act::InBrowser{}, act::OpenSheet{Sheet::Import}, act::ShowOffers{},
          act::PickOffer{"us_lms"}}},
        {"settings-without-voice", {act::VoiceAnswered{false}, act::OpenSheet{Sheet::Settings}}},
        {"table", {act::OpenSheet{Sheet::Import}}},
    };
    add_sheets(screens);
    add_guides(screens);
    return screens;
  }();
  return kScreens;
}

std::string screen_names() {
  std::string names;
  for (const auto& [name, acts] : screens()) names += (names.empty() ? "" : ", ") + name;
  return names;
}

Result<Destination> practice_destination(const std::string& call_sign) {
  const auto practice = service::load_practice();
  if (!practice) return practice.error();
  const auto station = practice_station(practice->stations, call_sign);
  if (!station) return station.error();
  return Destination{station->position, *station};
}

Result<Done> draw_shot(const ShotOptions& options) {
  const auto size = size_argument(options.size);
  if (!size) return size.error();
  shell::Shot shot;
  const auto screen = screens().find(options.screen);
  if (screen == screens().end()) {
    return Error{.what = "no screen named " + options.screen,
                 .remedy = "use one of " + screen_names()};
  }
  shot.acts = screen->second;
  if (options.screen == "table") shot.acts.push_back(act::PickTable{options.table});
  if (options.screen == "aim-null") {
    const auto acts = on_null();
    if (!acts) return acts.error();
    shot.acts = then(std::move(shot.acts), *acts);
  }
  if (options.night) shot.look = LookChoice::Night;
  if (options.red) shot.look = LookChoice::Red;
  if (options.spanish) shot.language = Language::Spanish;
  const auto& sizes = kStoredNames<TextSize>;
  const auto text_size = std::find(sizes.begin(), sizes.end(), options.text_size);
  shot.text_size = static_cast<TextSize>(text_size - sizes.begin());
  const auto eyes = std::find(ui::kEyeNames.begin(), ui::kEyeNames.end(), options.seen_by);
  shot.eyes = ui::kEyes[static_cast<std::size_t>(eyes - ui::kEyeNames.begin())];
  shot.keys = options.focus;
  shot.file = options.file;
  shot.window.width_px = size->width_px;
  shot.window.height_px = size->height_px;
  shot.window.dots_per_inch = options.dots_per_inch;
  const auto nose = nose_argument(options.nose_deg);
  if (!nose) return nose.error();
  shot.nose = *nose;
  if (!options.at.empty()) {
    const auto at = position_argument("--at", options.at);
    if (!at) return at.error();
    shot.at = *at;
  }
  const auto clocks = service::clocks_of_this_system();
  const auto date = date_argument("--date", options.date, *clocks(shot.at).clocks);
  if (!date) return date.error();
  shot.date = *date;
  if (options.screen == "logbook-nights") {
    const auto practice = service::load_practice();
    if (!practice) return practice.error();
    LogbookFilesAnswer answer;
    answer.records = service::practice_log(*practice, shot.date);
    shot.acts.insert(shot.acts.begin(), act::LogbookFilesDone{std::move(answer)});
  }
  if (!options.station.empty()) {
    const auto found = options.at.empty()
                           ? practice_destination(options.station)
                           : destination_argument({}, options.station, options.catalog);
    if (!found) return found.error();
    shot.target = found->station;
  }
  const auto path = catalog_path(options.catalog);
  if (!path) return path.error();
  shot.catalog = *path;
  const auto terrain = options.terrain.empty() ? service::terrain_folder() : options.terrain;
  if (!terrain) return terrain.error();
  shot.terrain_folder = *terrain;
  return shell::draw_shot(shot);
}

}  // namespace

void add_shot(CLI::App& program, Job& chosen) {
  auto options = std::make_shared<ShotOptions>();
  CLI::App* verb = program.add_subcommand("shot", "Draw a screen into a PNG, without a display");
  verb->add_option("screen", options->screen, screen_names())->required();
  verb->add_option("file", options->file, "PNG file to write")->required();
  verb->add_option("--size", options->size, "pixels (default: 1280x800)");
  verb->add_option("--dpi", options->dots_per_inch, "dots per inch of the screen")
      ->check(CLI::Range(50.0f, 600.0f));
  verb->add_flag("--night", options->night, "use night colors");
  verb->add_flag("--red", options->red, "use red on black");
  verb->add_option("--seen-by", options->seen_by, "draw as eyes without one kind of cone see it")
      ->check(CLI::IsMember(std::vector<std::string>(ui::kEyeNames.begin(), ui::kEyeNames.end())));
  verb->add_option("--focus", options->focus, "show the focus of keys on the target of this number")
      ->check(CLI::Range(1, 200));
  verb->add_flag("--spanish", options->spanish, "in Spanish");
  verb->add_option("--text", options->text_size, "size of the texts")
      ->check(CLI::IsMember(
          std::vector<std::string>(kStoredNames<TextSize>.begin(), kStoredNames<TextSize>.end())));
  verb->add_option("--at", options->at, "position of the rig (default: the practice area)");
  verb->add_option("--station", options->station, "target station");
  verb->add_option("--nose", options->nose_deg, "true heading of the rig's nose in degrees");
  verb->add_option("--table", options->table, "for the screen table: the station table to show");
  verb->add_option("--date", options->date, "date for the declination (default: today)");
  verb->add_option("--catalog", options->catalog, "catalog file to use instead of yours");
  verb->add_option("--terrain", options->terrain,
                   "folder of elevation tiles to use instead of yours");
  verb->callback([&chosen, options] { chosen = [options] { return draw_shot(*options); }; });
}

}  // namespace mastwise::cli
