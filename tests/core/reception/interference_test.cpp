#include "core/gear/modes.hpp"
#include "core/geo/geodesic.hpp"
#include "core/reception/protection.hpp"
#include "core/reception/survey.hpp"
#include "tests/core/reception/invented_country.hpp"
#include "tests/support/sanitized.hpp"

#include <algorithm>
#include <cmath>
#include <random>

#include <catch2/catch.hpp>

namespace mastwise::reception {

namespace {

const Reason* reason(const Prospect& prospect, ReasonKind kind) {
  const auto found = std::find_if(prospect.reasons.begin(), prospect.reasons.end(),
                                  [kind](const Reason& each) { return each.kind() == kind; });
  return found == prospect.reasons.end() ? nullptr : &*found;
}

const Prospect& of(const std::vector<Prospect>& list, std::string_view call_sign) {
  const auto found = std::find_if(list.begin(), list.end(), [&](const Prospect& each) {
    return each.station.call_sign == call_sign;
  });
  REQUIRE(found != list.end());
  return *found;
}

Receiver with_beam() {
  Receiver receiver = test::roof_antenna();
  receiver.gear.amplifier.reset();
  receiver.gear.antenna.uhf = {6.0, gear::Pattern::directional(60.0, 15.0)};
  return receiver;
}

Receiver with_amplifier() {
  Receiver receiver = with_beam();
  receiver.gear.amplifier =
      gear::Amplifier{.gain_db = 16, .noise_figure_db = 3, .overload_dbm = -20};
  return receiver;
}

}  // namespace

TEST_CASE("channels are the same, adjacent or apart") {
  const auto slot = [](int number) { return *channel_slot(Raster::atsc, {number}); };
  CHECK(channel_relation(slot(20), slot(20)) == ChannelRelation::same);
  CHECK(channel_relation(slot(20), slot(19)) == ChannelRelation::lower_next);
  CHECK(channel_relation(slot(20), slot(21)) == ChannelRelation::upper_next);
  CHECK(channel_relation(slot(20), slot(22)) == ChannelRelation::apart);
  // Channels 4 and 5 have 4 MHz between them [47 CFR 73.603].
  CHECK(channel_relation(slot(4), slot(5)) == ChannelRelation::apart);
}

// OET Bulletin 69: with x dB over the noise threshold, a station on the same channel must be
// 15 + 10 log(1 / (1 - 10^(-x / 10))) dB below. The sum of weighted powers agrees.
TEST_CASE("the sum of noise and interference gives the protection ratio with noise") {
  const double ratio = ratio_db(protection(BroadcastStandard::atsc1, 15.19), ChannelRelation::same);
  for (const double x : {0.5, 1.0, 3.0, 10.0, 30.0}) {
    const double wanted_over_disturbing =
        15.0 + 10.0 * std::log10(1.0 / (1.0 - std::pow(10.0, -x / 10.0)));
    const double noise_mw = std::pow(10.0, -x / 10.0);  // of 1 mW needed
    const double disturbance_mw = std::pow(10.0, (ratio - wanted_over_disturbing) / 10.0);
    CHECK(noise_mw + disturbance_mw == Approx(1.0));
  }
}

// Recommendation ITU-R BT.1368, from memory: 19 dB in a Gaussian and 20 dB in a Ricean channel for
// DVB-T 64QAM 2/3 against DVB-T on the same channel.
TEST_CASE("an OFDM signal on the same channel counts as noise, with the receiver's margin once") {
  const auto& mode = gear::default_mode(BroadcastStandard::dvb_t);
  for (const auto& [channel, published_db] :
       {std::pair(gear::ChannelKind::gaussian, 19.0), std::pair(gear::ChannelKind::ricean, 20.0)}) {
    const auto ratios = protection(BroadcastStandard::dvb_t, mode.required_cn_db(channel));
    CHECK(ratio_db(ratios, ChannelRelation::same) == Approx(published_db).margin(1.0));
  }
}

TEST_CASE("a station on the same channel takes margin, less so behind the antenna") {
  const auto tiles = test::country(1, test::flat(200.0));
  const Station wanted = test::named_station("QWNT", 30e3, 0.0, 20, 30.0);
  const auto alone = survey(with_beam(), {wanted}, tiles);
  const auto beside =
      survey(with_beam(), {wanted, test::named_station("QDST", 60e3, 10.0, 20, 30.0)}, tiles);
  const Prospect& disturbed = of(beside, "QWNT");
  CHECK(*disturbed.outlook.margin_db < *alone.at(0).outlook.margin_db - 3.0);
  const Reason* why = reason(disturbed, ReasonKind::same_channel);
  REQUIRE(why);
  const auto& other = std::get<fact::SameChannel>(why->fact);
  CHECK(other.call_sign == "QDST");
  CHECK(other.distance_m == Approx(60e3).margin(1.0));
  CHECK(why->decibel ==
        Approx(*alone[0].outlook.margin_db - *disturbed.outlook.margin_db).margin(0.01));
  const auto apart =
      survey(with_beam(), {wanted, test::named_station("QDST", 60e3, 80.0, 20, 30.0)}, tiles);
  CHECK(*of(apart, "QWNT").outlook.margin_db > *disturbed.outlook.margin_db + 5.0);
  CHECK(disturbed.outlook.deviations.interference_db > 0.0);
}

TEST_CASE("a neighboring channel disturbs only if it is far stronger") {
  const auto tiles = test::country(1, test::flat(200.0));
  const Station wanted = test::named_station("QWNT", 60e3, 0.0, 20, 1.0);
  const auto mild =
      survey(with_beam(), {wanted, test::named_station("QNXT", 60e3, 5.0, 21, 1.0)}, tiles);
  CHECK(reason(of(mild, "QWNT"), ReasonKind::next_channel) == nullptr);
  const auto strong =
      survey(with_beam(), {wanted, test::named_station("QNXT", 5e3, 5.0, 21, 500.0)}, tiles);
  const Reason* why = reason(of(strong, "QWNT"), ReasonKind::next_channel);
  REQUIRE(why);
  const auto& other = std::get<fact::NextChannel>(why->fact);
  CHECK(other.call_sign == "QNXT");
  CHECK(other.distance_m == Approx(5e3).margin(1.0));
}

TEST_CASE("two stations of one tower fade together and keep their lead") {
  const auto tiles = test::country(1, test::flat(200.0));
  const Station wanted = test::named_station("QWNT", 55e3, 0.0, 20, 1.0);
  const auto alone = survey(with_beam(), {wanted}, tiles);
  REQUIRE(*alone.at(0).outlook.chance_percent > 60.0);
  const auto chance_beside = [&](double times_as_strong) {
    const Station neighbor = test::named_station("QNXT", 55e3, 0.0, 21, times_as_strong);
    return *of(survey(with_beam(), {wanted, neighbor}, tiles), "QWNT").outlook.chance_percent;
  };
  // ATSC 1.0 stands a neighbor 26 dB stronger. One of 0 dB has 26 dB in hand, whatever the evening.
  CHECK(chance_beside(1.0) == Approx(*alone[0].outlook.chance_percent).margin(0.1));
  const auto list =
      survey(with_beam(), {wanted, test::named_station("QNXT", 55e3, 0.0, 21, 1.0)}, tiles);
  CHECK(reason(of(list, "QWNT"), ReasonKind::next_channel) == nullptr);
  // One of 36 dB shuts it out on every evening.
  CHECK(chance_beside(4000.0) < 1.0);

  // Against a million evenings: the wanted power D and the neighbor's, both with the same fading
  // and 2 dB between them, need D >= N + w D.
  const Prospect& whole = alone[0];
  const double margin_db = *whole.outlook.margin_db;
  const double deviation_db = whole.outlook.deviations.total_db();
  const double ratio =
      ratio_db(protection(BroadcastStandard::atsc1, 15.19), ChannelRelation::upper_next);
  // The same field is received a little weaker on the higher channel [effective area, 20 log f].
  const Outlook& own = of(list, "QWNT").outlook;
  const Outlook& neighbor = of(list, "QNXT").outlook;
  const double off_db = *neighbor.field_dbuvm - *own.field_dbuvm -
                        20.0 * std::log10(neighbor.frequency_mhz / own.frequency_mhz);
  std::mt19937 random(7);
  std::normal_distribution<double> normal;
  for (const double stronger_db : {0.0, 10.0, 18.0, 22.0, 24.0}) {
    int good = 0;
    const int kEvenings = test::kSanitized ? 20'000 : 1'000'000;
    for (int i = 0; i < kEvenings; ++i) {
      const double over_need_db = margin_db + deviation_db * normal(random);
      const double share =
          std::pow(10.0, (stronger_db + off_db + ratio + 2.0 * normal(random)) / 10.0);
      good += std::pow(10.0, over_need_db / 10.0) * (1.0 - share) >= 1.0 ? 1 : 0;
    }
    INFO(stronger_db << " dB stronger, off by " << off_db);
    CHECK(chance_beside(std::pow(10.0, stronger_db / 10.0)) ==
          Approx(100.0 * good / kEvenings).margin(1.0));
  }
}

// Two transmitters of one program: equal powers are 3 dB more, if the receiver can add them.
TEST_CASE("another transmitter of the program helps, unless its echo is too late") {
  const auto tiles = test::country(2, test::flat(200.0));
  const gear::Pattern everywhere = gear::Pattern::omnidirectional();
  Receiver receiver = with_beam();
  receiver.gear.antenna.uhf = {0.0, everywhere};
  const Station wanted = test::named_station("QWNT", 40e3, 0.0, 20, 30.0);
  const double alone_db = *survey(receiver, {wanted}, tiles).at(0).outlook.margin_db;
  const auto beside_db = [&](const Station& other) {
    Survey both(receiver, {wanted, other}, tiles);
    Scratch scratch;
    both.measure(0, both.size(), scratch);
    both.weigh();
    return *both.outlook(0)->margin_db;
  };
  CHECK(beside_db(test::named_station("QWNT", 40e3, 40.0, 20, 30.0)) - alone_db ==
        Approx(3.0).margin(0.1));
  // 11 km are 37 us, within the equalizer's 40; 14 km are 47 us.
  CHECK(beside_db(test::named_station("QWNT", 51e3, 40.0, 20, 1000.0)) > alone_db + 1.0);
  CHECK(beside_db(test::named_station("QWNT", 54e3, 40.0, 20, 1000.0)) < alone_db - 3.0);
  // Another program on the channel is no help.
  CHECK(beside_db(test::named_station("QOTH", 40e3, 40.0, 20, 30.0)) < alone_db - 3.0);
}

// DVB-T with a guard interval of 224 us reaches 67 km; see echo_reach_us().
TEST_CASE("transmitters of one single-frequency network help under different call signs") {
  const auto tiles = test::country(2, test::flat(200.0));
  Receiver receiver = with_beam();
  receiver.gear.antenna.uhf = {0.0, gear::Pattern::omnidirectional()};
  const auto of_network = [](const char* call_sign, double distance_m, double bearing_deg,
                             const char* multiplex) {
    Station station = test::named_station(call_sign, distance_m, bearing_deg, 20, 30.0);
    station.standard = BroadcastStandard::dvb_t;
    station.multiplex = multiplex;
    return station;
  };
  const Station wanted = of_network("QWNT", 40e3, 0.0, "North 1");
  const double alone_db = *survey(receiver, {wanted}, tiles).at(0).outlook.margin_db;
  const auto beside_db = [&](const Station& other) {
    return *of(survey(receiver, {wanted, other}, tiles), "QWNT").outlook.margin_db;
  };
  CHECK(beside_db(of_network("QTWO", 40e3, 40.0, "North 1")) - alone_db == Approx(3.0).margin(0.1));
  CHECK(beside_db(of_network("QTWO", 40e3, 40.0, "South 1")) < alone_db - 3.0);
  CHECK(beside_db(of_network("QTWO", 40e3, 40.0, "")) < alone_db - 3.0);
}

TEST_CASE("a station listed twice does not disturb itself") {
  const auto tiles = test::country(1, test::flat(200.0));
  const Station wanted = test::named_station("QWNT", 30e3, 0.0, 20, 30.0);
  Station renamed = wanted;
  renamed.call_sign = "QOLD";
  const auto alone = survey(with_beam(), {wanted}, tiles);
  const auto twice = survey(with_beam(), {wanted, renamed}, tiles);
  CHECK(*of(twice, "QWNT").outlook.margin_db == *alone.at(0).outlook.margin_db);
}

TEST_CASE("too strong a signal advises turning the amplifier off") {
  const auto tiles = test::country(1, test::flat(200.0));
  const Receiver receiver = with_amplifier();
  const Station wanted = test::named_station("QWNT", 40e3, 0.0, 20, 30.0);
  const auto alone = survey(receiver, {wanted}, tiles);
  CHECK_FALSE(alone.at(0).outlook.amplifier_off);
  const auto list =
      survey(receiver, {wanted, test::named_station("QBIG", 2e3, 0.0, 30, 1000.0)}, tiles);
  const Prospect& overloaded = of(list, "QWNT");
  CHECK(overloaded.outlook.amplifier_off);
  const Reason* why = reason(overloaded, ReasonKind::overload);
  REQUIRE(why);
  CHECK(std::get<fact::Overload>(why->fact).sum_dbm == Approx(-20.0 + why->decibel));
  CHECK(*overloaded.outlook.margin_db < *alone[0].outlook.margin_db - 3.0);
}

TEST_CASE("a radio or cell tower near the rig overloads the amplifier, and only that") {
  const auto tiles = test::country(1, test::flat(200.0));
  const Receiver receiver = with_amplifier();
  const Station wanted = test::named_station("QWNT", 40e3, 0.0, 20, 30.0);
  const auto alone = survey(receiver, {wanted}, tiles);
  for (const gear::NearTowers& towers : {gear::NearTowers{.radio = gear::TowerRange::beside},
                                         gear::NearTowers{.cell = gear::TowerRange::beside}}) {
    Receiver beside = receiver;
    beside.towers = towers;
    const auto overloaded = survey(beside, {wanted}, tiles);
    CHECK(overloaded.at(0).outlook.amplifier_off);
    const Reason* why = reason(overloaded.at(0), ReasonKind::overload);
    REQUIRE(why);
    CHECK(std::get<fact::Overload>(why->fact).by_towers);
    CHECK(std::get<fact::Overload>(why->fact).sum_dbm ==
          Approx(*gear::near_towers_dbm(beside.gear.antenna, towers)).margin(0.5));
    // What stays is the chance with the amplifier off.
    Receiver off = receiver;
    off.gear = gear::switched_off(off.gear);
    CHECK(*overloaded.at(0).outlook.margin_db ==
          Approx(*survey(off, {wanted}, tiles).at(0).outlook.margin_db).margin(0.01));
    beside.gear.amplifier.reset();
    Receiver without = receiver;
    without.gear.amplifier.reset();
    CHECK(*survey(beside, {wanted}, tiles).at(0).outlook.margin_db ==
          *survey(without, {wanted}, tiles).at(0).outlook.margin_db);
  }
  // One that hears little of it goes on.
  Receiver deaf = receiver;
  deaf.gear.antenna.low_vhf.gain_dbd = -60.0;
  deaf.towers = {.radio = gear::TowerRange::beside};
  CHECK(*survey(deaf, {wanted}, tiles).at(0).outlook.margin_db ==
        *survey(receiver, {wanted}, tiles).at(0).outlook.margin_db);
}

TEST_CASE("crossed polarization has the trade's loss") {
  const auto tiles = test::country(1, test::flat(200.0));
  Station level = test::named_station("QLEV", 30e3, 0.0, 20, 30.0);
  Station upright = test::named_station("QUPR", 30e3, 0.0, 30, 30.0);
  upright.polarization = Polarization::vertical;
  Station turning = test::named_station("QELL", 30e3, 0.0, 33, 30.0);
  turning.polarization = Polarization::elliptical;
  const auto list = survey(with_beam(), {level, upright, turning}, tiles);
  CHECK(reason(of(list, "QLEV"), ReasonKind::polarization) == nullptr);
  CHECK(reason(of(list, "QELL"), ReasonKind::polarization) == nullptr);
  const Reason* why = reason(of(list, "QUPR"), ReasonKind::polarization);
  REQUIRE(why);
  CHECK(std::get<fact::CrossedPolarization>(why->fact).antenna_horizontal);
  CHECK(why->decibel == 15.0);  // common practice: 10 to 20 dB
}

}  // namespace mastwise::reception
