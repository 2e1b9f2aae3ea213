#include "app/words/reasons.hpp"

#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"
#include "core/gear/noise.hpp"
#include "core/gear/television.hpp"
#include "core/reception/surroundings.hpp"

#include <bit>
#include <cmath>

#include <fmt/format.h>

namespace mastwise::words {
namespace {

namespace fact = reception::fact;

std::string whole(double number) {
  return fmt::format("{:.0f}", number);
}

// One sentence for each alternative of reception::Fact.
class ReasonWords {
 public:
  ReasonWords(double decibel, bool miles) : decibel_(decibel), miles_(miles) {}

  std::string operator()(const fact::InTheWay& it) const {
    return with_cost(obstacle(it.obstacle, miles_));
  }
  std::string operator()(const fact::RoughGround& it) const {
    const std::string what = fill(it.assumed ? p_.assumed_hills : p_.uneven_ground,
                                  {{"distance", distance(it.distance_m)}});
    return fill(it.besides_obstacles ? p_.with_more_cost : p_.with_cost,
                {{"what", what}, {"cost", whole(decibel_)}});
  }
  std::string operator()(const fact::AroundStop& it) const {
    const std::string antenna = height(it.antenna_m, miles_);
    if (!it.clutter_m) return with_cost(fill(p_.low_antenna, {{"antenna", antenna}}));
    return with_cost(fill(p_.clutter, {{"around", say(to_text(it.around))},
                                       {"clutter", height(*it.clutter_m, miles_)},
                                       {"antenna", antenna}}));
  }
  std::string operator()(const fact::Leaves& it) const {
    return with_cost(
        fill(it.bare ? p_.bare_trees : p_.leaves, {{"depth", height(it.depth_m, miles_)}}));
  }
  std::string operator()(const fact::CrossedPolarization& it) const {
    return with_cost(it.antenna_horizontal ? p_.vertical_signal : p_.horizontal_signal);
  }
  std::string operator()(const fact::SameChannel& it) const {
    return with_cost(interferer(p_.same_channel, it));
  }
  std::string operator()(const fact::NextChannel& it) const {
    return with_cost(interferer(p_.next_channel, it));
  }
  std::string operator()(const fact::Noise& it) const {
    return with_cost(fill(
        it.measured      ? p_.noise_measured
        : it.inverter_on ? p_.noise_with_inverter
                         : p_.noise,
        {{"frequency", whole(it.frequency_mhz)}, {"environment", say(to_text(it.environment))}}));
  }
  std::string operator()(const fact::HeadingError& it) const {
    return with_cost(fill(p_.heading_error, {{"degrees", whole(it.sigma_deg)}}));
  }
  std::string operator()(const fact::Fading& it) const {
    return fill(p_.fading, {{"distance", distance(it.distance_m)}, {"cost", whole(decibel_)}});
  }
  std::string operator()(const fact::ModelSpread& it) const {
    return fill(p_.model_spread,
                {{"spread", whole(it.spread_db)}, {"distance", distance(it.distance_m)}});
  }
  std::string operator()(const fact::TransmitterPattern& it) const {
    return cost(it.known ? p_.pattern_known : p_.pattern_assumed);
  }
  std::string operator()(const fact::Shortfall& it) const {
    return cost(it.beyond_amplifier ? p_.too_weak_for_amplifier : p_.too_weak);
  }
  std::string operator()(const fact::Overload& it) const {
    return fill(it.by_towers ? p_.overload_by_towers : p_.overload,
                {{"sum", whole(it.sum_dbm)}, {"cost", whole(decibel_)}});
  }
  std::string operator()(const fact::Lesson& it) const;
  std::string operator()(const fact::ClearLine& it) const {
    return fill(p_.clear_line, {{"distance", distance(it.distance_m)}});
  }
  std::string operator()(const fact::NoTerrain& it) const {
    return fill(p_.no_terrain, {{"missing", distance(it.missing_m)},
                                {"distance", distance(it.distance_m)},
                                {"tile", it.tile}});
  }
  std::string operator()(const fact::ModelLimit& it) const { return model_limit(it.warning); }
  std::string operator()(const fact::Unknown& it) const;
  std::string operator()(const fact::AmplifierOff&) const {
    return cost(p_.amplifier_without_power);
  }
  std::string operator()(const fact::Decoding& it) const;
  std::string operator()(const fact::AssumedMode& it) const {
    return fill(p_.assumed_mode, {{"standard", std::string(to_text(it.standard))},
                                  {"mode", it.mode},
                                  {"needs", whole(it.needs_db)},
                                  {"least", whole(it.least_db)},
                                  {"most", whole(it.most_db)}});
  }
  std::string operator()(const fact::OnItsSide& it) const;

 private:
  std::string distance(double distance_m) const { return words::distance(distance_m, miles_); }
  std::string cost(Phrase phrase) const { return fill(phrase, {{"cost", whole(decibel_)}}); }
  std::string with_cost(const std::string& what) const {
    return fill(p_.with_cost, {{"what", what}, {"cost", whole(decibel_)}});
  }
  std::string interferer(Phrase phrase, const fact::Interferer& it) const;

  const Phrases::Reasons& p_ = phrases().reasons;
  double decibel_;
  bool miles_;
};

// How the other signal compares: weaker where the wanted one is over it.
std::string ReasonWords::interferer(Phrase phrase, const fact::Interferer& it) const {
  const std::string level = fill(it.over_db >= 0.0 ? p_.weaker : p_.stronger,
                                 {{"decibel", whole(std::fabs(it.over_db))}});
  return fill(phrase, {{"station", it.call_sign.empty() ? p_.a_station : it.call_sign},
                       {"distance", distance(it.distance_m)},
                       {"level", level}});
}

std::string ReasonWords::operator()(const fact::Lesson& it) const {
  const std::string where =
      it.stops == 1 ? p_.last_stop : fill(p_.last_stops, {{"number", std::to_string(it.stops)}});
  const bool worse = it.bias_db < 0.0;
  std::string lesson =
      fill(worse ? p_.came_in_worse : p_.came_in_better, {{"band", say(to_text(it.band))},
                                                          {"decibel", whole(std::fabs(it.bias_db))},
                                                          {"where", where}});
  if (!worse) return lesson;
  // What to check when a band comes in worse than computed [common practice].
  return fill(it.band == Band::uhf ? p_.check_uhf : p_.check_vhf, {{"lesson", lesson}});
}

std::string ReasonWords::operator()(const fact::Unknown& it) const {
  using reception::UnknownFact;
  switch (it.what) {
    case UnknownFact::channel:
      return fill(p_.unknown_channel, {{"channel", it.channel ? to_text(*it.channel) : ""}});
    case UnknownFact::power:
      return p_.unknown_power;
    case UnknownFact::height:
      return p_.unknown_height;
    case UnknownFact::too_near:
      return fill(p_.too_near, {{"distance", height(it.distance_m.value_or(0.0), miles_)}});
    case UnknownFact::model_range:
      return p_.beyond_models;
    case UnknownFact::antenna_amsl:
      return p_.unknown_amsl;
    case UnknownFact::standard:
      return fill(p_.unknown_standard,
                  {{"standard", it.assumed ? std::string(to_text(*it.assumed)) : ""}});
  }
  return {};
}

std::string ReasonWords::operator()(const fact::OnItsSide& it) const {
  using reception::SideKind;
  const auto phrase = [&]() -> Phrase {
    switch (it.side.kind) {
      case SideKind::unmarked:
      case SideKind::open:
        return "";
      case SideKind::trees:
        return it.bare ? p_.bare_trees_beside : p_.trees_beside;
      case SideKind::rig:
        return p_.rig_beside;
      case SideKind::hill:
        return p_.hill_beside;
    }
    return "";
  };
  return with_cost(fill(phrase(), {{"distance", height(it.side.distance_m, miles_)},
                                   {"height", height(it.side.height_m, miles_)}}));
}

std::string ReasonWords::operator()(const fact::Decoding& it) const {
  const auto phrase = [&]() -> Phrase {
    switch (it.decoding) {
      case gear::Decoding::possible:
        return "";
      case gear::Decoding::may_be_encrypted:
        return p_.may_be_encrypted;
      case gear::Decoding::may_need_hevc:
        return p_.may_need_hevc;
      case gear::Decoding::standard_unknown:
        return p_.standard_may_differ;
      case gear::Decoding::impossible:
        return p_.cannot_decode;
    }
    return "";
  };
  return fill(phrase(), {{"standard", std::string(to_text(it.standard))}});
}

// A few words for each alternative of reception::Fact.
class BriefWords {
 public:
  explicit BriefWords(bool miles) : miles_(miles) {}

  std::string operator()(const fact::InTheWay& it) const {
    if (it.obstacle.earth_curve) return p_.curve;
    return fill(p_.ridge, {{"distance", whole_distance(it.obstacle.distance_m, miles_)}});
  }
  std::string operator()(const fact::RoughGround& it) const {
    return it.assumed ? p_.assumed_hills : p_.uneven_ground;
  }
  std::string operator()(const fact::AroundStop& it) const {
    return it.clutter_m ? sentence(say(to_text(it.around))) : p_.low_antenna;
  }
  std::string operator()(const fact::Leaves& it) const {
    return it.bare ? p_.bare_trees : p_.leaves;
  }
  std::string operator()(const fact::CrossedPolarization&) const { return p_.polarization; }
  std::string operator()(const fact::SameChannel& it) const { return by(p_.same_channel, it); }
  std::string operator()(const fact::NextChannel& it) const { return by(p_.next_channel, it); }
  std::string operator()(const fact::Noise& it) const {
    if (it.measured) return p_.noise_measured;
    return it.inverter_on ? p_.noise_with_inverter : p_.noise;
  }
  std::string operator()(const fact::HeadingError& it) const {
    return fill(p_.aim, {{"degrees", whole(it.sigma_deg)}});
  }
  std::string operator()(const fact::Fading&) const { return p_.fading; }
  std::string operator()(const fact::ModelSpread& it) const {
    return fill(p_.models, {{"spread", whole(it.spread_db)}});
  }
  std::string operator()(const fact::TransmitterPattern&) const { return p_.pattern; }
  std::string operator()(const fact::Shortfall&) const { return p_.too_weak; }
  std::string operator()(const fact::Overload&) const { return p_.too_strong; }
  std::string operator()(const fact::Lesson& it) const {
    return it.bias_db < 0.0 ? p_.came_in_worse : p_.came_in_better;
  }
  std::string operator()(const fact::ClearLine&) const { return p_.clear_line; }
  std::string operator()(const fact::NoTerrain&) const { return p_.no_terrain; }
  std::string operator()(const fact::ModelLimit&) const { return p_.beyond_models; }
  std::string operator()(const fact::Unknown&) const { return p_.fact_unknown; }
  std::string operator()(const fact::AmplifierOff&) const { return p_.amplifier_off; }
  std::string operator()(const fact::Decoding& it) const {
    return sentence(ReasonWords(0.0, miles_)(it));
  }
  std::string operator()(const fact::AssumedMode&) const { return p_.assumed_mode; }
  std::string operator()(const fact::OnItsSide& it) const {
    using reception::SideKind;
    switch (it.side.kind) {
      case SideKind::unmarked:
      case SideKind::open:
        break;
      case SideKind::trees:
        return p_.trees_beside;
      case SideKind::rig:
        return p_.rig_beside;
      case SideKind::hill:
        return p_.hill_beside;
    }
    return {};
  }

 private:
  std::string by(Phrase phrase, const fact::Interferer& it) const {
    const Phrase unnamed = phrases().reasons.a_station;
    return fill(phrase, {{"station", it.call_sign.empty() ? unnamed : it.call_sign}});
  }

  const Phrases::Briefs& p_ = phrases().briefs;
  bool miles_;
};

// The spread of the models is in the words already.
bool says_cost(const reception::Reason& reason) {
  return std::lround(reason.decibel) > 0 && !std::holds_alternative<fact::ModelSpread>(reason.fact);
}

}  // namespace

Brief brief(const reception::Reason& reason, bool miles) {
  Brief brief{.what = std::visit(BriefWords(miles), reason.fact)};
  if (says_cost(reason)) {
    brief.cost = fill(phrases().briefs.costs, {{"cost", whole(reason.decibel)}});
  }
  return brief;
}

std::string reason(const reception::Reason& reason, bool miles) {
  return std::visit(ReasonWords(reason.decibel, miles), reason.fact);
}

std::string obstacle(const reception::Obstacle& obstacle, bool miles) {
  const auto& p = phrases().reasons;
  const bool above = obstacle.above_line_m >= 0.0;
  const Phrase phrase = obstacle.earth_curve ? (above ? p.curve_above : p.curve_below)
                                             : (above ? p.ridge_above : p.ridge_below);
  return fill(phrase, {{"distance", distance(obstacle.distance_m, miles)},
                       {"height", height(std::fabs(obstacle.above_line_m), miles)}});
}

std::string model_limit(itm::Warning warning) {
  return named(phrases().reasons.model_limits,
               std::countr_zero(static_cast<std::uint32_t>(warning)));
}

std::string model_range(itm::Range range) {
  return named(phrases().reasons.model_ranges, range);
}

}  // namespace mastwise::words
