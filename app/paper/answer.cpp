#include "app/paper/sections.hpp"
#include "app/words/chances.hpp"
#include "app/words/headings.hpp"
#include "app/words/needle.hpp"
#include "app/words/phrases.hpp"
#include "app/words/times.hpp"
#include "app/words/units.hpp"
#include "core/headings/needle.hpp"
#include "core/reception/chance.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include <fmt/format.h>

// The compass number, and the heading in every other form.
namespace mastwise::paper {
namespace {

constexpr Style kAnswer{60.0, Weight::Bold};
constexpr Style kUnit{12.0};
constexpr Style kSaid{9.0};
constexpr Style kSaidLabel{8.0, Weight::Regular, 0.30};
constexpr Style kValue{9.4, Weight::Bold};

const Saying* find(const PaperCard& card, SayingKind kind) {
  const auto found = std::find_if(card.sayings.begin(), card.sayings.end(),
                                  [&](const Saying& one) { return one.kind == kind; });
  return found == card.sayings.end() ? nullptr : &*found;
}

class Pairs {
 public:
  Pairs(Pen& pen, const Area& area) : pen_(pen), area_(area), y_(area.top) {}
  double bottom() const { return y_; }

  void add(const std::string& label, const std::string& value) {
    constexpr double kRow_pt = 12.6, kBaseline_pt = 9.4;
    pen_.text_within({area_.left, y_ + kBaseline_pt},
                     area_.width() - pen_.width(value, kValue) - 6.0, label, kSaidLabel);
    pen_.text({area_.right, y_ + kBaseline_pt}, value, kValue, Align::Right);
    y_ += kRow_pt;
    pen_.line({area_.left, y_}, {area_.right, y_}, 0.35, kRuleGray);
  }

 private:
  Pen& pen_;
  Area area_;
  double y_;
};

std::string where_read(const PaperCard& card) {
  return refuses_compass(card.read_at) || card.read_at == Standing::picnic_table
             ? std::string(to_text(card.read_at))
             : words::height(from_rig_m(card.read_at), card.miles) + " from the rig";
}

double write_number(Pen& pen, const PaperCard& card, const Area& area) {
  const Saying* plain = find(card, SayingKind::magnetic_bearing);
  pen.text({area.left, area.top + 7.0},
           plain != nullptr ? "ON A COMPASS WITH ITS DECLINATION SET TO 0"
                            : "FROM TRUE NORTH: NO COMPASS WORKS HERE",
           kLabel);
  const std::string number = plain != nullptr ? words::whole_degrees(card.aim.bearing_magnetic)
                                              : words::whole_degrees(card.aim.bearing_true);
  const double baseline = area.top + 59.0;
  pen.text({area.left - 2.0, baseline}, number, kAnswer);
  const double beside = area.left + pen.width(number, kAnswer) + 8.0;
  pen.text({beside, baseline - 31.0}, plain != nullptr ? "magnetic" : "true", kUnit);
  if (plain != nullptr) {
    pen.text({beside, baseline - 18.0},
             fmt::format("± {:.0f}° read {}", std::ceil(plain->sigma_deg), where_read(card)),
             kSaid);
  }
  return baseline + 5.0;
}

// The aiming tolerance in compass degrees.
std::string slack_words(const PaperCard& card) {
  const bool needle = find(card, SayingKind::magnetic_bearing) != nullptr;
  if (!card.slack || card.slack->all_round() || !needle) return words::slack(card.slack) + ".";
  const auto reads = [&](double off_deg) {
    return words::whole_degrees(card.aim.bearing_magnetic + Turn::clockwise_deg(off_deg));
  };
  return fmt::format("{}: {} to {} magnetic.", words::slack(card.slack),
                     reads(-card.slack->left_deg), reads(card.slack->right_deg));
}

std::string chance(const PaperCard& card) {
  if (!card.on_this_tv) return words::phrases().chances.not_on_this_tv;
  if (!card.chance_percent) return words::phrases().chances.unknown;
  return words::chance_number(*card.chance_percent) + ", " +
         std::string(to_text(reception::chance_word(*card.chance_percent)));
}

}  // namespace

double write_label(Pen& pen, const Area& area, std::string_view words) {
  constexpr double kBaseline_pt = 7.0, kLine_pt = 10.5, kBelow_pt = 3.0;
  pen.text({area.left, area.top + kBaseline_pt}, words, kLabel);
  pen.line({area.left, area.top + kLine_pt}, {area.right, area.top + kLine_pt}, kRule_pt,
           kRuleGray);
  return area.top + kLine_pt + kBelow_pt;
}

double write_answer(Pen& pen, const PaperCard& card, const Area& area) {
  const AimCard& aim = card.aim;
  double y = write_number(pen, card, area);
  y = pen.paragraph({area.left, y}, area.width(), slack_words(card), {9.0, Weight::Bold}) + 3.0;
  Pairs pairs(pen, {area.left, y, area.right, area.bottom});
  pairs.add("On the map", words::whole_degrees(aim.bearing_true) + " true");
  const bool needle = aim.field.zone != MagneticField::Zone::Blackout;
  const std::string back = words::whole_degrees(aim.bearing_true.reciprocal()) + " true";
  pairs.add("Looking back",
            needle ? words::whole_degrees(aim.bearing_magnetic.reciprocal()) + " magnetic, " + back
                   : back);
  pairs.add("On the map's grid lines, zone " + aim.grid.name,
            words::whole_degrees(aim.bearing_grid) + " grid");
  pairs.add("Distance",
            words::distance(aim.distance_m, true) + ", " + words::distance(aim.distance_m, false));
  pairs.add("Chance " + words::evening(), chance(card));
  if (!aim.rig_angle) {
    pairs.add("From the rig's nose", "unknown");
    return pairs.bottom();
  }
  pairs.add("From the rig's nose", words::from_nose(*aim.rig_angle));
  return pen.paragraph({area.left, pairs.bottom() + 2.0}, area.width(),
                       words::sentence(words::rig_sides(*aim.rig_angle)) +
                           ". Right and left are as seen facing the nose.",
                       kBody);
}

double write_norths(Pen& pen, const PaperCard& card, const Area& area) {
  double y = write_label(pen, area, "WHICH NORTH");
  const auto say = [&](const std::string& words, const Style& style) {
    y = pen.paragraph({area.left, y}, area.width(), words, style) + 1.5;
  };
  const MagneticField& field = card.aim.field;
  say(fmt::format("The needle points {} of true north here on {}, ±\u00a0{:.1f}°.",
                  words::declination(field.declination), words::date(card.day),
                  field.declination_sigma_deg),
      kBodyBold);
  say(fmt::format("The field {}: use a needle made for {} or any zone.",
                  words::dip(field.inclination_deg),
                  words::needle_zone(needle_zone(field.inclination_deg))),
      kBody);
  for (const SayingKind kind : {SayingKind::magnetic_bearing, SayingKind::set_compass}) {
    if (const Saying* saying = find(card, kind))
      // A compass needs no clock.
      say(words::heading(saying->said_as, card.miles, utc_zone()) + ".", kBody);
  }
  if (field.zone == MagneticField::Zone::Blackout) {
    say("The earth's field is too weak here for any compass.", kBodyBold);
  }
  if (field.zone == MagneticField::Zone::Caution) {
    say("Near the magnetic pole, a needle is slow and may be wrong.", kBodyBold);
  }
  if (field.beyond_model_end) {
    say("The date is beyond the magnetic model: the compass number may be off.", kBodyBold);
  }
  return y;
}

}  // namespace mastwise::paper
