#include "tests/support/action_parts.hpp"

#include "core/geo/geodesic.hpp"
#include "tests/support/gears_answer.hpp"
#include "tests/support/logbook_records.hpp"

namespace mastwise::test {

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
       fact::AssumedMode{BroadcastStandard::dvb_t, "64QAM 2/3", 20.1, 0.3, 30.7},
       fact::OnItsSide{{reception::SideKind::hill, 300.1, 40.2}, true}});
  static_assert(std::tuple_size_v<decltype(all)> == reception::kReasonKinds);
  std::vector<reception::Reason> reasons;
  for (const reception::Fact& fact : all) reasons.push_back({0.1, fact});
  return reasons;
}

MapSheet some_sheet() {
  return {.question = {.from = *Position::at_deg(0.1, 0.7),
                       .practice = true,
                       .radius_m = 0.3,
                       .target = some_station(),
                       .antenna_m = 3.1},
          .lines = {{map::LineKind::LakeShore, {{0.1, 0.2}, {-0.3, 1e6}}}},
          .relief = map::Relief{.grid = {2, 1, 30.1}, .shade = {0, 255}, .band = {1, 13}},
          .stations = {{0.1, -0.7}},
          .towns = {{"n", {0.3, -0.1}, 7}},
          .regions = {{"r", {{0.2, 0.9}, {-0.4, 0.1}}}},
          .shadow = reception::RidgeShadow{2, 30.1, {0, 1, 11, 254}},
          .trouble = "t"};
}

RouteSheet some_route() {
  return {.question = {.here = {.from = *Position::at_deg(0.1, 0.7)},
                       .points = {*Position::at_deg(0.1, 0.7), *Position::at_deg(0.2, 0.3)},
                       .networks = {"n"},
                       .step_km = 0.3},
          .done = 0.7,
          .length_km = 0.1,
          .rows = {{.network = "n",
                    .chances = {{.at_km = 0.1, .chance_percent = 0.7}, {.at_km = 0.3}}}},
          .without_terrain = {{0.1, 0.3}},
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
      .left_out = {"QNOT"},
      .trouble = "t"};
}

reception::PathPicture some_picture() {
  reception::PathPicture picture{.distance_m = 10'368.0, .frequency_mhz = 527.0};
  picture.points = {{.distance_m = 0.0, .ground_m = 268.0, .line_m = 272.5, .fresnel_m = 270.0},
                    {.distance_m = 90.0}};
  picture.obstacles = {{.obstacle = {.distance_m = 90.0}, .ground_m = 300.0}};
  return picture;
}

reception::SignalBudget some_budget() {
  return {
      .erp_kw = 32.1,
      .tower_db = 162.3,
      .steps = {{.what = reception::SignalLoss::distance, .decibel = 107.7, .distance_m = 49'889.6},
                {.what = reception::SignalLoss::low_antenna, .decibel = 6.1, .height_m = 4.6},
                {.what = reception::SignalLoss::next_channel,
                 .decibel = 9.9,
                 .distance_m = 90.0,
                 .station = "QLSB"}},
      .margin_db = 38.6,
      .margin_p1812_db = 43.6,
      .margin_itm_db = 33.6};
}

places::PopulatedPlace some_place() {
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
  places::PopulatedPlace hamlet = some_place();
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
          .no_meter = true,
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
                     .changes = {{.kind = StationChange::Kind::gone,
                                  .id = "i",
                                  .call_sign = "QABC",
                                  .city = "c",
                                  .state = "s",
                                  .rf_channel = RfChannel{.number = 9, .letter = 'A'},
                                  .erp_kw = 0.1,
                                  .distance_m = 0.2,
                                  .call_sign_before = "QXYZ",
                                  .rf_channel_before = RfChannel{.number = 8},
                                  .erp_kw_before = 0.3,
                                  .moved_m = 0.4}},
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
                       .taking = 3,
                       .way = {*Position::at_deg(0.1, 0.7)},
                       .practice = true},
          .generation = 4,
          .stations = {{{"s", "2026-01-02"}, 5}},
          .programs = {{{"p", ""}, 6}},
          .ground = {1, 2, {"(c) Q"}, {"p"}},
          .around = GroundAround{.squares = {{.cell = "N44W072",
                                              .held = SquareHeld::Sea,
                                              .land_cover = true,
                                              .near_km2 = 0.3,
                                              .corners = {{{0.1, 0.2}}}}},
                                 .way = {{0.1, 0.3}},
                                 .reach = {{{{0.1, 0.2}, {0.3, 0.7}}}}},
          .disk = DiskUse{.ground_bytes = 1, .station_bytes = 2, .free_bytes = 3},
          .places = {{IntakeEntry::Kind::Folder, "/f", "f", 0}},
          .folder = IntakeFolder{"/f", "/", {{IntakeEntry::Kind::Set, "/f", "all", 8}}},
          .look = look,
          .doing = "d",
          .part = 0.1,
          .report = report,
          .trouble = "none"};
}

}  // namespace mastwise::test
