#include "tests/support/action_examples.hpp"

#include "core/geo/geodesic.hpp"
#include "tests/support/gears_answer.hpp"
#include "tests/support/logbook_records.hpp"

namespace mastwise::test {
namespace {

Station some_station() {
  return Station{
      .id = "QABC-23",
      .call_sign = "QABC",
      .facility_id = "17",
      .name = "Basin \"Public\"",
      .network = "Basin",
      .programs = {{.virtual_channel = "6.1", .name = "é", .network = "B", .language = "en"}},
      .raster = Raster::atsc,
      .rf_channel = {.number = 23},
      .standard = BroadcastStandard::atsc3,
      .position = *Position::at_deg(42.123456789012345, -118.1),
      .site_amsl_m = 1851.5,
      .haat_m = 0.1,
      .polarization = Polarization::elliptical,
      .directional = true,
      .city = "Alkali Wells",
      .notes = {{.column = "a", .text = "b"}},
      .provenance = {.source = {.name = "s", .date = "2026-01-02"}, .line = 4}};
}

reception::Outlook some_outlook() {
  reception::Outlook outlook{.distance_m = 0.3,
                             .bearing = Bearing<True>::degrees(359.9),
                             .frequency_mhz = 527.0,
                             .band = Band::high_vhf,
                             .mode = reception::PathMode::area,
                             .terrain_coverage = 0.25,
                             .transmitter_height_m = 139.0,
                             .field_itm_dbuvm = 64.5,
                             .margin_db = -3.25,
                             .chance_percent = 41.5,
                             .amplifier_off = true};
  outlook.deviations.location_db = 5.5;
  outlook.deviations.noise_db = 2.1;
  outlook.decoding = gear::Decoding::may_need_hevc;
  outlook.obstacles.add({.distance_m = 11'300.0, .above_line_m = 64.0, .loss_db = 18.0});
  return outlook;
}

std::vector<reception::Reason> some_reasons() {
  namespace fact = reception::fact;
  const auto all = std::to_array<reception::Fact>(
      {fact::InTheWay{{.distance_m = 11'300.1, .above_line_m = 64.3, .earth_curve = true}},
       fact::RoughGround{.distance_m = 0.1, .assumed = true, .besides_obstacles = true},
       fact::AroundStop{reception::Surroundings::town, 4.1, 20.3},
       fact::Leaves{0.7, true},
       fact::CrossedPolarization{false},
       fact::SameChannel{{"QXYZ", 60'000.1, -3.3}},
       fact::NextChannel{{"QXYZ", 0.3, 0.7}},
       fact::Noise{69.1, gear::NoiseEnvironment::city, true},
       fact::HeadingError{6.1},
       fact::Fading{0.3},
       fact::ModelSpread{12.1, 0.3},
       fact::TransmitterPattern{true},
       fact::Shortfall{true},
       fact::Overload{-17.3},
       fact::Lesson{Band::high_vhf, -6.2, 4},
       fact::ClearLine{0.1},
       fact::NoTerrain{0.1, 0.3},
       fact::ModelLimit{itm::Warning::extreme_quantile},
       fact::Unknown{.what = reception::UnknownFact::standard,
                     .channel = RfChannel{.number = 23},
                     .distance_m = 0.7,
                     .assumed = BroadcastStandard::dvb_t2},
       fact::AmplifierOff{},
       fact::Decoding{gear::Decoding::may_be_encrypted, BroadcastStandard::atsc3},
       fact::AssumedMode{BroadcastStandard::dvb_t, "64QAM 2/3", 20.1, 0.3, 30.7}});
  static_assert(std::tuple_size_v<decltype(all)> == reception::kReasonKinds);
  std::vector<reception::Reason> reasons;
  for (const reception::Fact& fact : all) reasons.push_back({0.1, fact});
  return reasons;
}

MapSheet some_sheet() {
  return {.question = {.from = *Position::at_deg(0.1, 0.7), .practice = true, .radius_m = 0.3},
          .lines = {{map::LineKind::LakeShore, {{0.1, 0.2}, {-0.3, 1e6}}}},
          .relief = map::Relief{.grid = {2, 1, 30.1}, .shade = {0, 255}, .band = {1, 13}},
          .stations = {{0.1, -0.7}},
          .trouble = "t"};
}

RouteSheet some_route() {
  return {.question = {.here = {.from = *Position::at_deg(0.1, 0.7)},
                       .points = {*Position::at_deg(0.1, 0.7), *Position::at_deg(0.2, 0.3)},
                       .networks = {"n"},
                       .floor_percent = 40.0,
                       .step_km = 0.3},
          .done = 0.7,
          .length_km = 0.1,
          .rows = {{.network = "n",
                    .chances = {{.at_km = 0.1, .chance_percent = 0.7}, {.at_km = 0.3}},
                    .stretches = {{0.1, 0.3, 0.7, 0.9}}}},
          .trouble = "t"};
}

AreaSheet some_area() {
  return {
      .question = {.here = {.from = *Position::at_deg(0.1, 0.7), .practice = true},
                   .stations = {some_station()},
                   .radius_m = 0.3},
      .done = 0.7,
      .side = 2,
      .percent = {AreaSheet::kUnknown, 0, 99, 100},
      .here_percent = 0.1,
      .spots = {{.distance_m = 0.1, .bearing = Bearing<True>::degrees(0.3), .gain_percent = 0.7}},
      .trouble = "t"};
}

reception::PathPicture some_picture() {
  reception::PathPicture picture{.distance_m = 10'368.0, .frequency_mhz = 527.0};
  picture.points = {{.distance_m = 0.0, .ground_m = 268.0, .line_m = 272.5, .fresnel_m = 270.0},
                    {.distance_m = 90.0}};
  picture.obstacles = {{.obstacle = {.distance_m = 90.0}, .ground_m = 300.0}};
  return picture;
}

places::Place some_place() {
  return {.name = "São \"P\"",
          .country = "BR",
          .country_name = "Brazil",
          .admin = "27",
          .region = "r",
          .population = 12'345'678,
          .position = *Position::at_deg(-23.5475, -46.6361)};
}

PlacesAnswer some_places() {
  const Position near = *Position::at_deg(0.1, 0.7);
  places::Place hamlet = some_place();
  hamlet.population.reset();
  return {.question = {.typed = "sa", .near = near, .shown = {near}},
          .found = {{.place = some_place(), .way = path_between(near, some_place().position)},
                    {.place = hamlet}},
          .said = {{.position = near,
                    .near = places::NearPlace{.place = hamlet,
                                              .distance_m = 0.3,
                                              .bearing = Bearing<True>::degrees(0.1)}},
                   {.position = hamlet.position}},
          .trouble = "t"};
}

LogbookFilesAnswer some_files() {
  return {
      .question = {.task = LogbookTask::GiveBackup, .path = "/p", .day = "2026-07-02", .number = 3},
      .folders = {{.name = "n", .path = "/p"}},
      .files = {{.name = "f", .folder = "n", .path = "/p/f", .bytes = 5'000'000'000}},
      .said = {"a", "b"},
      .trouble = "t",
      .records =
          LogbookRecords{.stops = {test::full_stop("a1")}, .outcomes = {test::full_outcome("a1")}}};
}

KeptSweep some_sweep() {
  return {.station = {"s", "QABC-23"},
          .by = SweepBy::Handle,
          .band = Band::high_vhf,
          .scale = "dB",
          .readings = {{Bearing<Dial>::degrees(0.1), 0.3, milliseconds(2'500)},
                       {Bearing<Dial>::degrees(359.9), std::nullopt}},
          .peak = Bearing<Dial>::degrees(12.7),
          .sigma_deg = 1.1};
}

Sweep some_measured_sweep() {
  return {.station = {"s", "QABC-23"},
          .title = "QABC 6.1",
          .band = Band::high_vhf,
          .by = SweepBy::Handle,
          .scale = aim::Scale::decibel,
          .heading = Bearing<Dial>::degrees(0.1),
          .value = 0.3,
          .readings = {{Bearing<Dial>::degrees(0.7), -3.3}},
          .left_edge = Bearing<Dial>::degrees(359.9)};
}

IntakeAnswer some_intake() {
  TableReading reading{
      .kind = TableReading::Kind::Mapped, .source = {"s", "2026-01-02"}, .classes = "c"};
  reading.mapping = {.source = {"s", "2026-01-02"},
                     .separator = ';',
                     .comment = '#',
                     .raster = Raster::europe,
                     .datum = Datum::nad27,
                     .latitude = {.notation = AngleNotation::packed_dms, .column = "Lat"},
                     .longitude = {.column = "Lon", .positive_is_south_or_west = true}};
  reading.mapping.fields["erp_kw"] = {
      .column = "P", .factor = 0.001, .unknown = {"0"}, .values = {{"a", "b"}}};
  TableLook look{.reading = reading,
                 .renews = "s",
                 .known_by = "guess",
                 .doubts = {{Doubt::Kind::datum, "datum", {"WGS84", "NAD27"}, 1, "why"}},
                 .columns = {{"Lat", "442110"}},
                 .file_date = "2026-05-01",
                 .rows = 7,
                 .rejected = 1,
                 .first_rejected = {{3, "reason"}},
                 .sample = {{.call_sign = "QABC",
                             .rf_channel = "23",
                             .city = "Alkali Wells",
                             .position = *Position::at_deg(0.1, 0.2),
                             .at = map::PlanePoint{0.3, -0.4}}},
                 .programs = {{.call_sign = "QABC", .rf_channel = RfChannel{.number = 23}}},
                 .class_tables = {"Q"},
                 .trouble = "t"};
  look.map = CheckMap{
      .middle = *Position::at_deg(0.3, 0.6), .radius_m = 0.7, .lines = {{{0.1, 0.2}, {0.3, 0.4}}}};
  IntakeReport report{.of_programs = true, .rejected = 9, .first_stations = true};
  report.stations = {.source = {"s", ""},
                     .rows_read = 1,
                     .stations_added = 2,
                     .added_call_signs = {"QABC"},
                     .moved = {{"QXYZ", 0.1}},
                     .rejected = {{4, "r"}},
                     .remarks = {"m"}};
  report.programs = {.source = {"p", ""}, .programs = 3, .strangers = {"QFAR"}};
  report.ground = GroundReport{.land_cover = true,
                               .source = "Q",
                               .notice = "(c) Q",
                               .cells = {"N44W072"},
                               .filled = 4,
                               .unlisted_codes = {77}};
  return {.question = {.step = IntakeStep::TakingIn,
                       .look = 2,
                       .folder = "/f",
                       .path = "/f/t.csv",
                       .reading = reading,
                       .taking = 3},
          .generation = 4,
          .stations = {{{"s", "2026-01-02"}, 5}},
          .programs = {{{"p", ""}, 6}},
          .ground = {1, 2, {"(c) Q"}, {"p"}},
          .places = {{IntakeEntry::Kind::Folder, "/f", "f", 0}},
          .folder = IntakeFolder{"/f", "/", {{IntakeEntry::Kind::Set, "/f", "all", 8}}},
          .look = look,
          .doing = "d",
          .part = 0.1,
          .report = report,
          .trouble = "none"};
}

// One of every action, with no member at its default.

}  // namespace

std::vector<Action> every_action() {
  const Monotonic now(milliseconds(123'456));
  const Stop stop{
      .practice = true,
      .source = PositionSource::ByHand,
      .by_hand = *Position::at_deg(0.1, 0.2),
      .by_hand_error_m = 0.3,
      .by_name = "b",
      .nose = Nose{.heading = Bearing<Magnetic>::degrees(118.3),
                   .origin = Nose::Origin::BackedIn,
                   .sigma_deg = 1.1,
                   .taken_at = *Position::at_deg(0.7, 0.8),
                   .caution = RigHeadingCaution{.kind = RigHeadingCaution::Kind::sensor_declination,
                                                .set = Declination::east_deg(-5.1),
                                                .here = Declination::east_deg(13.3)}},
      .tail_mark = *Position::at_deg(0.3, 0.4),
      .target = some_station(),
      .strong_stations = {{.key = {"s", "QABC-23"},
                           .by = SweepBy::Handle,
                           .position = *Position::at_deg(0.5, 0.6),
                           .taken_at = *Position::at_deg(0.65, 0.75),
                           .peak_deg = 0.1,
                           .sigma_deg = 0.2}},
      .pinned = {{"s", "QABC-23"}},
      .noise = gear::NoiseEnvironment::quiet_rural,
      .inverter_on = true};
  const StationsAnswer answer{
      .question = {.from = *Position::at_deg(1.0 / 3.0, -0.7), .search = "a b", .practice = true},
      .rows = {{.station = some_station(), .outlook = some_outlook(), .reasons = some_reasons()},
               {.station = some_station()}},
      .measured = 64,
      .all = 400,
      .target_path = some_picture(),
      .target_slack = Slack{.left_deg = 0.1, .right_deg = 0.2},
      .plan = Plan{.steps = {{.bearing = Bearing<True>::degrees(0.3),
                              .slack = {.left_deg = 0.4, .right_deg = 0.5},
                              .brings = {{.key = {"s", "QABC-23"}, .title = "QABC 6.1"}},
                              .remarks = {{"QABC", "QXYZ", 12.3}}}},
                   .out = {{"QXYZ", 12.3}, {"QFAR", std::nullopt}},
                   .fewest_proved = false},
      .ahead = AheadTable{.networks = {"n"},
                          .places = {{.position = *Position::at_deg(0.1, 0.9),
                                      .offers = {std::nullopt, AheadOffer{.call_sign = "QABC"}}}}},
      .trouble = "none"};
  return {act::Tick{now, UtcTime(milliseconds(1'800'000'000'123))},
          act::ReceiverBytes{now, std::string("$GP\xFF\0\x80*\r\n", 10)},
          act::LinkChanged{{Link::State::Lost, "gone"}},
          act::Show{Place::Aim},
          act::SetStop{stop},
          act::UseReceiver{},
          act::NextSetting{"notation"},
          act::SwitchPractice{},
          act::TurnDial{},
          act::OpenKeypad{KeypadPurpose::Search},
          act::KeypadType{"°"},
          act::KeypadErase{},
          act::KeypadEraseAll{},
          act::KeypadPage{},
          act::KeypadNorth{},
          act::KeypadAccept{},
          act::KeypadClose{},
          act::NoseFromCourse{true},
          act::ForgetNose{},
          act::ClearSearch{},
          act::SelectStation{{"s", "QABC-23"}},
          act::NextChanceFloor{},
          act::SwitchGrouping{},
          act::OpenSheet{Sheet::Path},
          act::ChooseSurroundings{reception::Surroundings::forest},
          act::ChooseLeaves{reception::LeafChoice::bare},
          act::ChooseNoise{gear::NoiseEnvironment::quiet_rural, true},
          act::ChooseGear{{.preset = "p",
                           .height_m = 4.5,
                           .splits = 2,
                           .amplifier = false,
                           .decoders = gear::DecoderSet{gear::Decoder::atsc3_encrypted}}},
          act::StationsFound{answer},
          act::MarkEdge{.right = true},
          act::NextPlanFloor{},
          act::SwitchAlong{},
          act::RouteSurveyed{some_route()},
          act::UseGear{"p"},
          act::ToggleGear{"p"},
          act::NextNeighbors{},
          act::GearsCompared{test::some_gears()},
          act::SwitchMap{},
          act::MoveMap{{.drag = {0.1, 0.2}, .scale = 1.3, .turn_deg = 0.7, .about = {1.1, 2.2}}},
          act::TouchMap{{0.3, 0.6}},
          act::NextMapUp{},
          act::CenterMap{},
          act::SwitchArea{},
          act::NextAreaRadius{},
          act::MapDrawn{some_sheet()},
          act::AreaScanned{some_area()},
          act::Ask{Asking::Raise},
          act::ConfirmAsked{},
          act::RefuseAsked{},
          act::QuietAlarm{},
          act::Unplugged{},
          act::AntennaWritten{.trouble = "the disk is full"},
          act::Trouble{"disk full"},
          act::OpenField{Field::MapLength_mm},
          act::UseMapPlace{.by_net = true},
          act::KeepHandle{},
          act::ForgetHandle{},
          act::NoseFromSensor{},
          act::NoseFromSun{SunFrom::tail},
          act::MarkTail{},
          act::NoseFromPoints{},
          act::PinStation{{"s", "QABC-23"}},
          act::ChoosePlan{PlanFor::All},
          act::ScanStep{2},
          act::TickStation{{"s", "QABC-23"}},
          act::ChoosePointing{PointingMethod::sun_shadow},
          act::GoToRoof{},
          act::LeaveRoof{},
          act::BeginSweep{SweepBy::Handle},
          act::TurnSweep{-15.5},
          act::SetMeter{0.1},
          act::ReadMeter{.nothing = true},
          act::NextScale{},
          act::DropReading{},
          act::KeepSweep{},
          act::ForgetCorrection{},
          act::DropPlace{3},
          act::DropAllPlaces{},
          act::LogOutcome{{"s", "QABC-23"}, Outcome::breaks_up},
          act::NextWeather{},
          act::LogWritten{},
          act::SavePaper{},
          act::PaperSaved{"/data/cards/card.pdf"},
          act::OpenIntakeFolder{"/media/stick"},
          act::PickTable{"/media/stick/t.csv"},
          act::ChooseColumnOf{"latitude"},
          act::CorrectReading{"latitude", "Lat"},
          act::TakeIn{},
          act::StopTakingIn{},
          act::IntakeFound{some_intake()},
          act::PinNetwork{"Basin Public"},
          act::TickNetwork{{{"s", "QABC-23"}, "Basin Public"}},
          act::TakeBack{},
          act::UseEarlierStop{},
          act::NotSaved{3, "the disk is full"},
          act::PutSweepBack{some_measured_sweep()},
          act::Confirmed{Asking::MergeLogbook},
          act::PlaceTyped{*Position::at_deg(42.1, -118.7)},
          act::SweepKept{some_sweep()},
          act::SweepBack{"tablet-sweep-7"},
          act::OutcomeBack{test::full_outcome("a1"), test::full_outcome("a2")},
          act::PlacesBack{{*Position::at_deg(42.1, -118.7), *Position::at_deg(-0.1, 179.9)}},
          act::HandleBack{HandleChoice{.first_reading_deg = 0.1, .stow_deg = 12.3}},
          act::TakePlace{some_place()},
          act::PlacesFound{some_places()},
          act::AskMerge{"/p/f"},
          act::AskLogbookFiles{LogbookTask::TakeIn, "/p/f"},
          act::NextLogbookFolder{},
          act::LogbookFilesDone{some_files()}};
}

}  // namespace mastwise::test
