#include "core/reception/rivals.hpp"

#include "core/reception/unknown_pattern.hpp"
#include "tests/support/sanitized.hpp"

#include <cmath>
#include <random>
#include <vector>

#include <catch2/catch.hpp>

namespace mastwise::reception {

namespace {

const int kDraws = test::kSanitized ? 100'000 : 1'000'000;

double mw(double db) {
  return std::pow(10.0, db / 10.0);
}

// Normal deviates for all cases: of the wanted power and of three interferers.
struct Draws {
  std::vector<std::array<double, 4>> each;
  Draws() : each(kDraws) {
    std::mt19937_64 random(20);
    std::normal_distribution<double> normal;
    for (auto& draw : each) {
      for (double& deviate : draw) deviate = normal(random);
    }
  }
};

const Draws& draws() {
  static const Draws all;
  return all;
}

double simulated_percent(double wanted_dbm, double deviation_db,
                         const std::vector<Level>& interferers) {
  int good = 0;
  for (const auto& draw : draws().each) {
    double needed_mw = 1.0;  // 0 dBm without others
    for (std::size_t i = 0; i < interferers.size(); ++i) {
      needed_mw += mw(interferers[i].median_dbm + draw[i + 1] * interferers[i].deviation_db);
    }
    good += mw(wanted_dbm + draw[0] * deviation_db) > needed_mw ? 1 : 0;
  }
  return 100.0 * good / kDraws;
}

}  // namespace

TEST_CASE("the chance against stations from elsewhere agrees with a million evenings") {
  for (const double wanted_dbm : {-3.0, 6.0, 15.0}) {
    for (const double deviation_db : {7.0, 11.0}) {
      for (const double median_dbm : {-25.0, -8.0, 2.0, 12.0}) {
        for (const double their_deviation_db : {6.0, 14.0}) {
          for (const std::size_t stations : {std::size_t{1}, std::size_t{3}}) {
            const std::vector<Level> all{{median_dbm, their_deviation_db},
                                         {median_dbm - 3.0, 9.0},
                                         {median_dbm - 6.0, their_deviation_db}};
            const std::vector<Level> some(all.begin(),
                                          all.begin() + static_cast<std::ptrdiff_t>(stations));
            Rivals rivals{.needed_alone_dbm = 0.0, .strongest = some.front()};
            if (stations == 3) rivals.others = independent_sum(some[1], some[2]);
            INFO(wanted_dbm << " dB over the noise's need, +- " << deviation_db << ", against "
                            << stations << " of " << median_dbm << " +- " << their_deviation_db);
            CHECK(Requirement(rivals).chance_percent(wanted_dbm, {.deviation_db = deviation_db}) ==
                  Approx(simulated_percent(wanted_dbm, deviation_db, some)).margin(1.0));
          }
        }
      }
    }
  }
}

TEST_CASE("the sum of two powers has the moments of a million draws") {
  for (const auto& [a, b] :
       {std::pair(Level{0.0, 6.0}, Level{0.0, 6.0}), std::pair(Level{0.0, 12.0}, Level{-5.0, 6.0}),
        std::pair(Level{3.0, 8.0}, Level{-12.0, 14.0}),
        std::pair(Level{0.0, 0.0}, Level{4.0, 9.0})}) {
    double sum = 0.0, squares = 0.0;
    for (const auto& draw : draws().each) {
      const double total_db = 10.0 * std::log10(mw(a.median_dbm + draw[0] * a.deviation_db) +
                                                mw(b.median_dbm + draw[1] * b.deviation_db));
      sum += total_db;
      squares += total_db * total_db;
    }
    const double mean_db = sum / kDraws;
    const Level found = independent_sum(a, b);
    CHECK(found.median_dbm == Approx(mean_db).margin(0.05));
    CHECK(found.deviation_db ==
          Approx(std::sqrt(squares / kDraws - mean_db * mean_db)).margin(0.05));
    const Level swapped = independent_sum(b, a);
    CHECK(swapped.median_dbm == Approx(found.median_dbm).margin(0.02));
    CHECK(swapped.deviation_db == Approx(found.deviation_db).margin(0.02));
  }
}

TEST_CASE("an interferer that is strong one evening in ten costs little on the others") {
  // 10 dB below the noise's need in the median, as strong as it for a tenth of the time: taken as
  // always there it would cost 3 dB.
  const Rivals rivals{.needed_alone_dbm = 0.0, .strongest = Level{-10.0, 10.0 / 1.2816}};
  const Spread spread{.deviation_db = 8.0};
  const double alone = chance_percent(8.0, spread);
  const double against = Requirement(rivals).chance_percent(8.0, spread);
  CHECK(against < alone);
  CHECK(against > (alone + chance_percent(5.0, spread)) / 2.0);
  CHECK(rivals.needed_dbm() == Approx(0.414).margin(0.001));  // 10 log 1.1
}

TEST_CASE("stronger interference never raises the chance") {
  for (const double wanted_dbm : {-10.0, 0.0, 10.0, 25.0}) {
    const Spread spread{.deviation_db = 8.0};
    double before = chance_percent(wanted_dbm, spread);
    for (double median_dbm = -60.0; median_dbm < 40.0; median_dbm += 0.5) {
      const Rivals rivals{.needed_alone_dbm = 0.0, .strongest = Level{median_dbm, 10.0}};
      const double here = Requirement(rivals).chance_percent(wanted_dbm, spread);
      CHECK(here <= before + 0.02);
      before = here;
    }
  }
}

TEST_CASE("an unknown pattern keeps even a strong station from being certain") {
  double mean_db = 0.0, square_db = 0.0, probability = 0.0;
  for (const PatternLoss& each : kUnknownPattern) {
    probability += each.probability;
    mean_db += each.probability * each.loss_db;
    square_db += each.probability * each.loss_db * each.loss_db;
  }
  CHECK(probability == Approx(1.0));
  CHECK(kUnknownPatternMean_db == Approx(mean_db));
  CHECK(kUnknownPatternDeviation_db ==
        Approx(std::sqrt(square_db - mean_db * mean_db)).margin(0.01));
  // 12 dB over the need after the mean loss, within 4 dB: a null of 14 dB, one time in ten, leaves
  // 1.4 dB.
  const double by_hand = 90.0 + 10.0 * 0.637;  // Phi(1.4 / 4) = 0.637
  CHECK(chance_percent(12.0, Spread{.deviation_db = 4.0, .unknown_pattern = true}) ==
        Approx(by_hand).margin(1.0));
  CHECK(chance_percent(12.0, Spread{.deviation_db = std::hypot(4.0, kUnknownPatternDeviation_db)}) >
        98.0);
}

}  // namespace mastwise::reception
