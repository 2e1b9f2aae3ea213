#include "app/words/checks.hpp"
#include "app/words/headings.hpp"
#include "app/words/reasons.hpp"
#include "app/words/receivers.hpp"
#include "app/words/scans.hpp"
#include "app/words/units.hpp"
#include "core/gear/noise.hpp"
#include "core/gear/television.hpp"
#include "core/geo/geodesic.hpp"
#include "core/reception/surroundings.hpp"
#include "core/text/iso_time.hpp"

#include <string>
#include <vector>

#include <catch2/catch.hpp>

using namespace mastwise;

namespace {

namespace fact = reception::fact;

std::string said(double decibel, reception::Fact fact, bool miles = false) {
  return words::reason({decibel, std::move(fact)}, miles);
}

HandleTurn handle_turn(double reading_deg, double clockwise_deg, RigSide side, double past_deg) {
  return {.reading = HandleReading::dial_deg(reading_deg),
          .clockwise_from_below_deg = clockwise_deg,
          .past_deg = past_deg,
          .swings_toward = side};
}

}  // namespace

TEST_CASE("each loss is named with its decibels") {
  const reception::Obstacle ridge{.distance_m = 11'300.0, .above_line_m = 64.0};
  CHECK(said(18.2, fact::InTheWay{ridge}) == "ridge 11.3 km away, 64 m above the line: -18 dB");
  const reception::Obstacle low{.distance_m = 40'000.0, .above_line_m = -3.0, .earth_curve = true};
  CHECK(said(4.0, fact::InTheWay{low}) ==
        "curve of the earth 40.0 km away, 3.0 m below the line: -4 dB");
  CHECK(said(9.0, fact::RoughGround{.distance_m = 60e3}) == "uneven ground over 60.0 km: -9 dB");
  CHECK(said(9.0, fact::RoughGround{60e3, true, true}) ==
        "ordinary hills over 60.0 km: another -9 dB");
  CHECK(said(7.0, fact::AroundStop{reception::Surroundings::houses, 4.0, 10.0}) ==
        "houses 10 m high around the stop, antenna at 4.0 m: -7 dB");
  CHECK(said(3.0, fact::AroundStop{reception::Surroundings::open, 3.0, {}}) ==
        "antenna only 3.0 m above the ground: -3 dB");
  CHECK(said(5.0, fact::Leaves{20.0}) == "20 m of leaves in front of the antenna: -5 dB");
  CHECK(said(4.0, fact::Leaves{20.0, true}) == "20 m of bare trees in front of the antenna: -4 dB");
  CHECK(said(15.0, fact::CrossedPolarization{true}) ==
        "vertical signal, horizontal antenna: -15 dB");
  CHECK(said(15.0, fact::CrossedPolarization{false}) ==
        "horizontal signal, vertical antenna: -15 dB");
  CHECK(said(2.0, fact::Noise{69.0, gear::NoiseEnvironment::rural}) ==
        "noise at 69 MHz (rural surroundings): -2 dB");
  CHECK(said(12.0, fact::Noise{69.0, gear::NoiseEnvironment::quiet_rural, true}) ==
        "noise at 69 MHz (quiet rural surroundings, the inverter is on): -12 dB");
  CHECK(said(10.0, fact::AmplifierOff{}) == "the amplifier has no power: -10 dB");
  CHECK(said(1.4, fact::HeadingError{6.0}) == "aiming error of 6 degrees with this antenna: -1 dB");
}

TEST_CASE("what the TV cannot decode is said plainly, and what is not known as not known") {
  using gear::Decoding;
  CHECK(said(0.0, fact::Decoding{Decoding::impossible, BroadcastStandard::atsc3}) ==
        "this TV cannot decode ATSC 3.0");
  CHECK(said(0.0, fact::Decoding{Decoding::may_be_encrypted, BroadcastStandard::atsc3}) ==
        "ATSC 3.0 may be encrypted, and this TV cannot decrypt it");
  CHECK(said(0.0, fact::Decoding{Decoding::may_need_hevc, BroadcastStandard::dvb_t2}) ==
        "DVB-T2 may send HEVC, which this TV cannot decode");
  CHECK(said(0.0, fact::Decoding{Decoding::standard_unknown, BroadcastStandard::dvb_t}) ==
        "standard unknown, and this TV cannot decode the usual DVB-T");
  CHECK(said(0.0, fact::AssumedMode{BroadcastStandard::dvb_t, "64QAM 2/3", 20.1, 6.6, 24.0}) ==
        "mode unknown: DVB-T 64QAM 2/3 assumed, needs 20 dB over noise (others 7 to 24)");
}

TEST_CASE("an obstacle beside the rig is named with its distance, height and cost") {
  using reception::SideKind;
  CHECK(said(6.2, fact::OnItsSide{{SideKind::trees, 15.0, 8.0}, false}) ==
        "trees on this side, 15 m away, 8.0 m high: -6 dB");
  CHECK(said(5.0, fact::OnItsSide{{SideKind::trees, 15.0, 8.0}, true}) ==
        "bare trees on this side, 15 m away, 8.0 m high: -5 dB");
  CHECK(said(9.0, fact::OnItsSide{{SideKind::rig, 8.0, 4.0}, false}) ==
        "rig on this side, 8.0 m away, 4.0 m high: -9 dB");
  CHECK(said(12.0, fact::OnItsSide{{SideKind::hill, 150.0, 60.0}, false}) ==
        "hill on this side, 150 m away, 60 m high: -12 dB");
  const words::Brief brief = words::brief(
      {.decibel = 6.2, .fact = fact::OnItsSide{{SideKind::trees, 15.0, 8.0}, false}}, false);
  CHECK(brief.what == "Trees on this side");
  CHECK(brief.cost == "costs 6 dB");
}

TEST_CASE("interferers are named with their level relative to the wanted station") {
  CHECK(said(5.0, fact::SameChannel{{"QDST", 60e3, 12.0}}) ==
        "same channel as QDST, 60.0 km away and 12 dB weaker: -5 dB");
  CHECK(said(8.0, fact::NextChannel{{"", 5e3, -30.0}}) ==
        "channel next to a station, 5.0 km away and 30 dB stronger: -8 dB");
}

TEST_CASE("a shortfall shows whether an amplifier can help") {
  CHECK(said(9.0, fact::Shortfall{false}) == "9 dB too weak");
  CHECK(said(56.3, fact::Shortfall{true}) == "56 dB too weak; no amplifier can make that up");
  CHECK(said(3.0, fact::Overload{-17.0}) ==
        "strong signals add up to -17 dBm, 3 dB too much for the amplifier: turn the amplifier "
        "off");
}

TEST_CASE("each uncertainty shows its amount") {
  CHECK(said(7.0, fact::Fading{60e3}) == "one evening in ten fades by 7 dB or more over 60.0 km");
  CHECK(said(6.0, fact::ModelSpread{12.0, 60e3}) == "the two models differ by 12 dB over 60.0 km");
  CHECK(said(12.0, fact::TransmitterPattern{true}) ==
        "the station sends 12 dB less this way than its strongest way");
  CHECK(said(6.0, fact::TransmitterPattern{false}) ==
        "directional station, pattern unknown: 6 dB less assumed");
}

TEST_CASE("the logbook's lesson shows band, decibels, stops and what to check") {
  CHECK(said(6.2, fact::Lesson{Band::high_vhf, -6.2, 4}) ==
        "high VHF came in 6 dB worse than computed at your last 4 stops: is the inverter on?");
  CHECK(said(6.2, fact::Lesson{Band::uhf, -6.2, 1}) ==
        "UHF came in 6 dB worse than computed at your last stop: are the cable and its plugs "
        "good?");
  CHECK(said(0.0, fact::Lesson{Band::uhf, 4.0, 1}) ==
        "UHF came in 4 dB better than computed at your last stop");
}

TEST_CASE("each missing fact has a full sentence") {
  using reception::UnknownFact;
  const auto unknown = [](UnknownFact what) { return said(0.0, fact::Unknown{.what = what}); };
  CHECK(said(0.0, fact::ClearLine{40e3}) == "nothing in the way over 40.0 km");
  CHECK(said(0.0, fact::NoTerrain{40e3, 60e3, "N44W073"}) ==
        "40.0 km of 60.0 km not in your terrain: import N44W073");
  CHECK(said(0.0, fact::ModelLimit{itm::Warning::long_path}) == "the path is longer than 1,000 km");
  CHECK(said(0.0, fact::Unknown{.what = UnknownFact::channel, .channel = RfChannel{3, 'A'}}) ==
        "RF channel 3A is not in the channel plan");
  CHECK(unknown(UnknownFact::power) ==
        "the station's power is unknown, so its signal cannot be computed");
  CHECK(unknown(UnknownFact::height) == "the height of the station's antenna is unknown");
  CHECK(said(0.0, fact::Unknown{.what = UnknownFact::too_near, .distance_m = 60.0}) ==
        "only 60 m from the transmitter: too near to compute");
  CHECK(unknown(UnknownFact::model_range) ==
        "the heights on this path are outside the models' range");
  CHECK(unknown(UnknownFact::antenna_amsl) ==
        "the antenna's height above sea level is unknown: ordinary hills assumed");
  CHECK(said(0.0,
             fact::Unknown{.what = UnknownFact::standard, .assumed = BroadcastStandard::atsc1}) ==
        "standard unknown, " + std::string(to_text(BroadcastStandard::atsc1)) + " assumed");
  for (unsigned bit = 0; bit < 14; ++bit) {
    CHECK_FALSE(words::model_limit(static_cast<itm::Warning>(1u << bit)).empty());
  }
}

// 1 mile is 1,609.344 m and 1 foot 0.3048 m (1959 agreement).
TEST_CASE("facts also come in miles and feet") {
  const reception::Obstacle ridge{.distance_m = 10 * 1609.344, .above_line_m = 210 * 0.3048};
  CHECK(said(18.0, fact::InTheWay{ridge}, true) ==
        "ridge 10.0 mi away, 210 ft above the line: -18 dB");
  CHECK(words::rig_moved(100 * 0.3048, true) ==
        "the rig has moved 100 ft since its heading was set: set it again");
  CHECK(words::rig_moved(33.0, false) ==
        "the rig has moved 33 m since its heading was set: set it again");
}

TEST_CASE("every form of a heading is an instruction") {
  const auto heading = [](SaidAs said) { return words::heading(said, false, utc_zone()); };
  CHECK(heading(Bearing<True>::degrees(37.0)) == "True bearing 37");
  CHECK(heading(OnGrid{Bearing<Grid>::degrees(36.3), "12N"}) ==
        "On a map with the grid of zone 12N: 36 from its grid lines");
  CHECK(heading(Bearing<Magnetic>::degrees(24.0)) ==
        "A compass with its declination set to 0 reads 24");
  CHECK(heading(OnSetCompass{Declination::east_deg(13.0), Bearing<True>::degrees(37.0)}) ==
        "Set your compass's declination to 13 E, then read 37");
  CHECK(heading(RigAngle::clockwise_deg(97.0)) == "three o'clock, square off the right side");
  CHECK(heading(FromStars{{sky::GuideBody::jupiter, Bearing<True>::degrees(130.0), 34.7,
                           Turn::clockwise_deg(38.0)},
                          {sky::GuideBody::polaris, Bearing<True>::degrees(0.4), 44.7,
                           Turn::clockwise_deg(0.2)}}) ==
        "Face Jupiter (SE, 35 degrees up): the heading is 38 degrees right; or Polaris (N, 45 "
        "degrees up): straight along it");
  CHECK(heading(FromLandmark{Turn::clockwise_deg(-53.0), "the church tower"}) ==
        "Face the church tower: the heading is 53 degrees left");
  CHECK(heading(FromLandmark{Turn::clockwise_deg(1.0), "Bend", true}) ==
        "Face the middle of Bend: the heading is 1 degree right");
  CHECK(heading(FromLandmark{Turn::clockwise_deg(0.3)}) ==
        "Face the landmark: the heading is straight along it");
  CHECK(heading(WalkTo{*Position::at_deg(45.0, -110.0), 200.0}) ==
        "Walk 200 m from the rig until the receiver shows 45.000000, -110.000000: the station is "
        "in line with the rig and that point");
}

TEST_CASE("the shadow of a plumb line gives times first, an angle second") {
  const UtcTime now = parse_iso_utc("2026-07-02T14:00:00Z").value();
  const std::vector<sky::SunMark> marks{
      {now + std::chrono::milliseconds(4'015'900), sky::ShadowLies::Left, 0.36},
      {now + std::chrono::hours(11), sky::ShadowLies::Along, 0.48}};
  const ShadowAngle angle{Turn::clockwise_deg(-23.0), Turn::clockwise_deg(-24.25)};
  CHECK(words::heading(FromShadow{now, marks, angle}, false, utc_zone()) ==
        "Look along a plumb line's shadow, away from the sun: at 15:07 UTC the heading is square "
        "to its right; at 01:00 UTC tomorrow the heading is straight along it; by angle, "
        "the heading is now 23 degrees left, and 24 degrees left in five minutes");
  CHECK(words::brief_heading(FromShadow{now, marks, angle}, false, utc_zone()) ==
        "Look along a plumb line's shadow, away from the sun: at 15:07 UTC the heading is square "
        "to its right");
  CHECK(words::sun_mark(marks[1], now - std::chrono::hours(24), utc_zone()) ==
        "at 01:00 UTC on 3 July 2026 the heading is straight along it");
  // Seven hours behind UTC both are of the same day.
  const TimeZone pacific{
      .name = "", .periods = {{.begin = {}, .ahead = -std::chrono::hours(7), .short_name = "PDT"}}};
  const sky::SunMark evening{now + std::chrono::hours(11), sky::ShadowLies::Against, 0.48};
  CHECK(words::sun_mark(evening, now, pacific) ==
        "at 18:00 PDT the heading is straight behind you");
}

TEST_CASE("the handle's turn gives direction, amount and where the antenna swings") {
  CHECK(words::handle_turn(handle_turn(40.0, 40.0, RigSide::left, 0.0)) ==
        "Look up and turn the handle clockwise by 40 degrees to 40; the antenna swings toward the "
        "left side of the rig");
  CHECK(words::handle_turn(handle_turn(320.0, -40.0, RigSide::right, 8.0)) ==
        "Look up and turn the handle counterclockwise by 40 degrees to 320; the antenna swings "
        "toward the right side of the rig; go 8 degrees past it and come back, to take up the "
        "play");
  CHECK(words::handle_turn(handle_turn(90.0, 0.3, RigSide::nose, 0.0)) == "Leave the handle at 90");
}

TEST_CASE("each classic mistake shows the wrong reading, the right one and the aiming error") {
  const auto heading = Bearing<True>::degrees(90.0);
  const NorthMistakes east = north_mistakes(heading, Declination::east_deg(10.0));
  CHECK(words::north_mistake(east.map_north_as_magnetic) ==
        "Reading the map's 90 on a plain compass, instead of 80, aims 10 degrees too far right");
  CHECK(words::north_mistake(east.declination_twice) ==
        "Reading 80 on a compass that has its declination set, instead of 90, aims 10 degrees too "
        "far left");
  CHECK(words::north_mistake(east.wrong_sign) ==
        "Turning the declination the wrong way, to 100 instead of 80, aims 20 degrees too far "
        "right");
  const NorthMistakes none = north_mistakes(heading, Declination::east_deg(0.2));
  CHECK(words::north_mistake(none.map_north_as_magnetic) ==
        "Reading the map's 90 on a plain compass, instead of 90, makes no difference here");
}

TEST_CASE("rig heading cautions name their condition") {
  using Kind = RigHeadingCaution::Kind;
  CHECK(words::rig_heading_caution({Kind::trailer_in_line}) ==
        "the trailer must be in line with its tow vehicle");
  CHECK(words::rig_heading_caution(
            {Kind::sensor_declination, Declination::east_deg(-5.0), Declination::east_deg(13.0)}) ==
        "the sensor is set to declination 5 W, but here it is 13 E");
}

TEST_CASE("compass checks print their result and advice") {
  const auto magnetic = [](double degrees) { return Bearing<Magnetic>::degrees(degrees); };
  CHECK(words::reciprocal(check_reciprocal(magnetic(40.0), magnetic(221.0))) ==
        "The two readings agree: the needle is pulled the same at both spots, or at neither. Sun, "
        "star or a strong station can tell");
  CHECK(words::reciprocal(check_reciprocal(magnetic(33.0), magnetic(220.0))) ==
        "The two readings disagree by 7 degrees: iron pulls the needle at one of the spots. Read "
        "again from a third, farther from iron");
  const auto apart = compare_headings(magnetic(10.0), 3.0, magnetic(22.0), 4.0);
  REQUIRE(apart);
  CHECK(words::agreement(*apart) ==
        "12 degrees apart, where 5 would be usual: in doubt: measure again");

  using aim::DialCorrection;
  const aim::DialCheck low{.stations = 2,
                           .correction = DialCorrection{.turn = Turn::clockwise_deg(13.0),
                                                        .sigma_deg = 2.2,
                                                        .dial_sigma_deg = 1.0,
                                                        .implausible = false,
                                                        .contradicts = 1},
                           .off = Turn::clockwise_deg(4.0)};
  CHECK(words::compass_check(low, Bearing<Dial>::degrees(24.0)) ==
        "By 2 checks, this compass reads 4° too low here: turn to 24° on it, ± 3°. The checks "
        "contradict each other");
  CHECK(words::compass_agrees(low) ==
        "By 2 checks, the compass agrees with the map here within its ± 3°: nothing to correct");
  CHECK(words::handle_check(low, HandleReading::dial_deg(24.0)) ==
        "By 2 checks, nose and handle together are 4° off here: set the handle to 24, "
        "± 3°. The checks contradict each other");
  aim::DialCheck far = low;
  far.correction->implausible = true;
  CHECK(words::compass_check(far, std::nullopt).find("Nothing is corrected.") != std::string::npos);
}

TEST_CASE("every trouble of the receiver is said, with its seconds and satellites") {
  nmea::Fix fix;
  fix.silent_for = milliseconds(42'000);
  for (int trouble = 1; trouble <= static_cast<int>(nmea::FixTrouble::impossible_position);
       ++trouble) {
    fix.why_not_good = static_cast<nmea::FixTrouble>(trouble);
    CHECK_FALSE(words::fix_trouble(fix).empty());
  }
  fix.why_not_good = nmea::FixTrouble::silent;
  CHECK(words::fix_trouble(fix) == "nothing received for 42 s; check the cable and the power");
  fix.why_not_good = nmea::FixTrouble::receiver_says_void;
  CHECK(words::fix_trouble(fix) == "the receiver has no fix yet");
  fix.satellites = 3;
  CHECK(words::fix_trouble(fix) == "the receiver has no fix yet, with 3 satellites");
  fix.why_not_good = nmea::FixTrouble::none;
  CHECK(words::fix_trouble(fix).empty());
}

TEST_CASE("the scan's advice says what to do") {
  CHECK(words::scan_choice(ScanChoice::full).find("aim first") != std::string::npos);
  CHECK(words::scan_state(ScanState::weak_missing).find("peak") != std::string::npos);
  for (const char* part : {"amplifier", "cable", "polarization"}) {
    CHECK(words::scan_state(ScanState::nothing_found).find(part) != std::string::npos);
  }
  const Twins twins{.virtual_channel = "6.1",
                    .by_scan = {{0, "QFAR", {9}, 90e3, {}, {}}, {1, "QNEA", {23}, 9e3, {}, {}}},
                    .best = 1};
  CHECK(words::twins(twins, false) ==
        "6.1 is shown by QFAR (RF 9, 90.0 km) and QNEA (RF 23, 9.0 km): a scan may store the other "
        "first; enter RF 23 by hand.");
}
