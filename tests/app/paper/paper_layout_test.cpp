#include "app/paper/layout.hpp"
#include "app/paper/print.hpp"
#include "app/service/startup.hpp"
#include "app/words/units.hpp"
#include "core/safety/prompts.hpp"
#include "tests/support/sanitized.hpp"

#include <cmath>
#include <cstring>

#include <cairo.h>
#include <catch2/catch.hpp>
#include <fmt/format.h>

// The card for the glove box: the texts on the page, and that they stay there.
namespace mastwise::paper {
namespace {

const Typefaces& typefaces() {
  static const Typefaces faces = [] {
    auto loaded = Typefaces::load(service::fonts_folder());
    REQUIRE(loaded);
    return *std::move(loaded);
  }();
  return faces;
}

const MagneticModel& magnetic() {
  static const MagneticModel model = [] {
    auto loaded = service::load_magnetic_model();
    REQUIRE(loaded);
    return *std::move(loaded);
  }();
  return model;
}

constexpr std::chrono::sys_days kDay{std::chrono::year(2026) / 7 / 2};

PaperCard card_at(Position from, Position to, std::optional<double> nose_deg) {
  std::optional<RigHeading> nose;
  if (nose_deg) nose = RigHeading::nose_at(Bearing<True>::degrees(*nose_deg));
  return card_of(CardFacts{
      .stop = from,
      .date = kDay,
      .day = std::chrono::local_days(kDay.time_since_epoch()),
      .aim = aim_card(from, to, kDay, magnetic(), nose),
      .chance_percent = 83.0,
      .slack = Slack{.left_deg = 23.0, .right_deg = 19.0},
      .context = {.stop_error_m = 50.0, .transmitter_error_m = 30.0, .deviation_sigma_deg = 2.0}});
}

// The places of the reference data's README: 207.950 degrees true, 222.09 magnetic.
PaperCard usual_card() {
  PaperCard card = card_at(*Position::at_deg(44.435217, -71.675993),
                           *Position::at_deg(44.352778, -71.736944), 300.0);
  card.title = "QBPA 6.1";
  card.about = "Basin Public, RF 9, 189 MHz high VHF, horizontal";
  return card;
}

PaperPlan long_plan(std::size_t headings, std::size_t stations, const std::string& name) {
  PaperPlan plan{.fewest_proved = false};
  for (std::size_t i = 0; i < headings; ++i) {
    const auto bearing = Bearing<True>::degrees(7.0 * static_cast<double>(i));
    PaperHeading heading{.bearing = bearing,
                         .magnetic = to_magnetic(bearing, Declination::east_deg(13.0)),
                         .slack = {.left_deg = 23.0, .right_deg = 19.0}};
    for (std::size_t k = 0; k < stations; ++k) {
      PlanStation station{.key = {}, .title = fmt::format("{}{}", name, k)};
      station.chance_percent = 95.0;
      heading.brings.push_back(station);
      heading.loses.push_back(station);
      heading.channels.push_back({std::to_string(k), station.title});
    }
    heading.remark = "Aim beside " + name;
    plan.headings.push_back(heading);
  }
  plan.out.assign(stations, name);
  return plan;
}

struct Box {
  double left, top, right, bottom;
};

// The box of a text's letters: B612 rises to 0.73 of its size, and letters may hang 0.2 below
// their line.
Box box_of(const Text& text) {
  const double width = typefaces().width(text.text, text.size_pt, text.weight);
  const bool figures = text.text.find_first_not_of("0123456789°") == std::string::npos;
  return {text.at.x, text.at.y - 0.73 * text.size_pt, text.at.x + width,
          text.at.y + (figures ? 0.0 : 0.2 * text.size_pt)};
}
Box box_of(const Shape& shape) {
  Box box{1e9, 1e9, -1e9, -1e9};
  for (const Spot& corner : shape.corners) {
    box = {std::min(box.left, corner.x), std::min(box.top, corner.y), std::max(box.right, corner.x),
           std::max(box.bottom, corner.y)};
  }
  return box;
}
Box box_of(const Arc& arc) {
  const double reach = arc.radius_pt + 0.5 * arc.width_pt;
  return {arc.center.x - reach, arc.center.y - reach, arc.center.x + reach, arc.center.y + reach};
}

// A third of an inch: printers cannot print nearer to the edge.
constexpr double kUnprintable_pt = 24.0;

std::string outside(const Page& page) {
  std::string found;
  for (const Mark& mark : page.marks) {
    const Box box = std::visit([](const auto& one) { return box_of(one); }, mark);
    if (box.left >= kUnprintable_pt && box.top >= kUnprintable_pt &&
        box.right <= page.size.width_pt - kUnprintable_pt &&
        box.bottom <= page.size.height_pt - kUnprintable_pt) {
      continue;
    }
    const auto* text = std::get_if<Text>(&mark);
    found += fmt::format("{} at {:.0f} {:.0f}\n", text != nullptr ? text->text : "a line", box.left,
                         box.top);
  }
  return found;
}

std::vector<Text> texts_of(const Page& page) {
  std::vector<Text> texts;
  for (const Mark& mark : page.marks) {
    if (const auto* text = std::get_if<Text>(&mark)) texts.push_back(*text);
  }
  return texts;
}

std::string overlaps(const Page& page) {
  constexpr double kTouch_pt = 0.3;
  const std::vector<Text> texts = texts_of(page);
  std::string found;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    for (std::size_t k = i + 1; k < texts.size(); ++k) {
      const Box a = box_of(texts[i]), b = box_of(texts[k]);
      const bool apart = a.right < b.left + kTouch_pt || b.right < a.left + kTouch_pt ||
                         a.bottom < b.top + kTouch_pt || b.bottom < a.top + kTouch_pt;
      if (!apart) found += texts[i].text + " | " + texts[k].text + "\n";
    }
  }
  return found;
}

std::string words_on(const Page& page) {
  std::string words;
  for (const Text& text : texts_of(page)) words += text.text + ' ';
  return words;
}

bool says(const Page& page, std::string_view words) {
  return words_on(page).find(words) != std::string::npos;
}

// The cards that could break the layout, each with its name.
std::vector<std::pair<std::string, PaperCard>> all_cards() {
  const std::string long_name(70, 'Q');
  std::vector<std::pair<std::string, PaperCard>> cards{{"usual", usual_card()}};
  const auto add = [&](const std::string& name) -> PaperCard& {
    return cards.emplace_back(name, usual_card()).second;
  };
  add("practice").practice = true;
  add("slack unknown").slack.reset();
  add("slack all round").slack = Slack{.left_deg = 180.0, .right_deg = 180.0};
  add("chance unknown").chance_percent.reset();
  add("stale").stop_stale = true;
  add("nothing to be had").plan = PaperPlan{.out = {"QFAR 3.1, 12 % at best"}};
  add("three headings").plan = long_plan(3, 4, "QAAA 4.");
  add("many headings").plan = long_plan(60, 5, "QAAA 4.");
  add("many stations").plan = long_plan(3, 90, "QAAA 4.");
  PaperCard& names = add("long names");
  names.title = names.about = long_name + " " + long_name;
  names.plan = long_plan(9, 30, long_name);
  PaperCard& all = add("everything at once");
  all.practice = all.stop_stale = true;
  all.plan = long_plan(60, 90, long_name + ' ');
  cards.emplace_back("nose unknown", card_at(*Position::at_deg(42.5, -118.5),
                                             *Position::at_deg(42.86, -118.1), std::nullopt));
  cards.emplace_back(
      "no compass", card_at(*Position::at_deg(85.8, 139.0), *Position::at_deg(85.9, 130.0), 200.0));
  for (int bearing_deg = 0; bearing_deg < 360; bearing_deg += 30) {
    const double angle = bearing_deg * M_PI / 180.0;
    cards.emplace_back(
        fmt::format("toward {}", bearing_deg),
        card_at(*Position::at_deg(42.5, -118.5),
                *Position::at_deg(42.5 + 0.3 * std::cos(angle), -118.5 + 0.4 * std::sin(angle)),
                bearing_deg));
  }
  return cards;
}

}  // namespace

TEST_CASE("paper: all ink stays on the page and texts do not overlap") {
  for (const auto& [name, card] : all_cards()) {
    for (const PageSize size : {kLetter, kA4}) {
      const Page page = lay_out(card, size, typefaces());
      INFO(name << ", " << size.width_pt << " pt wide");
      CHECK(outside(page) == "");
      CHECK(overlaps(page) == "");
      if (test::kSanitized) break;
    }
  }
}

TEST_CASE("paper: the card prints the heading in every form") {
  const Page page = lay_out(usual_card(), kA4, typefaces());
  CHECK(says(page, "222°"));
  CHECK(says(page, "208° true"));
  CHECK(says(page, "42° magnetic, 28° true"));  // looking back: 180 degrees less
  CHECK(says(page, "199° to 241° magnetic"));   // 222.09 less 23, plus 19
  CHECK(says(page, "14.1° west of true north here on 2 July 2026"));
  CHECK(says(page, "Set your compass's declination to 14 W, then read 208"));
  CHECK(says(page, "92° left"));
  CHECK(says(page, "6.4 mi, 10.4 km"));
  for (const Notation notation :
       {Notation::Decimal, Notation::DegreesMinutes, Notation::DegreesMinutesSeconds,
        Notation::UtmUps, Notation::Mgrs}) {
    CHECK(says(page, format_position(*Position::at_deg(44.435217, -71.675993), notation)));
  }
  // 100 mm at 207.95 degrees: sine -0.4687, cosine -0.8833; 10,368 m on three scales.
  CHECK(says(page, "47 mm left and 88 mm down"));
  CHECK(says(page, "41 mm at 1:250,000, 21 mm at 1:500,000, 10 mm at 1:1,000,000"));
  CHECK_FALSE(says(page, "PRACTICE"));
}

TEST_CASE("paper: the card prints every caution with its source") {
  const Page page = lay_out(usual_card(), kLetter, typefaces());
  const std::string words = words_on(page);
  for (const auto* prompt : {&safety::before_raising(), &safety::before_roof(), &safety::weather(),
                             &safety::before_driving()}) {
    CHECK(says(page, prompt->title));
    CHECK(says(page, prompt->deference));
    for (const safety::Caution& caution : prompt->cautions) {
      INFO(caution.text);
      const std::size_t at = words.find(caution.text);
      REQUIRE(at != std::string::npos);
      // "[3]" after it, and that source below.
      const std::string rest = words.substr(at + caution.text.size() + 1);
      const std::string number = rest.substr(0, rest.find(']') + 1);
      CHECK(number.front() == '[');
      CHECK(says(page, number + " " + std::string(caution.source)));
    }
  }
}

TEST_CASE("paper: a cut list counts the rest") {
  PaperCard card = usual_card();
  constexpr std::size_t kHeadings = 60, kStations = 40;
  card.plan = long_plan(kHeadings, kStations, "QAAA 4.");
  const Page page = lay_out(card, kA4, typefaces());
  const std::string words = words_on(page);
  const auto count = [](const std::string& text, std::string_view part) {
    std::size_t times = 0;
    for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; ++at) ++times;
    return times;
  };
  const std::size_t shown = count(words, "23°, 19°");  // the tolerance of each row
  CHECK(shown >= 3);
  CHECK(shown < kHeadings);
  CHECK(says(page, fmt::format("and {} more headings", kHeadings - shown)));
  // Named and counted items of each list add up to all of them.
  const std::size_t list = words.find("QAAA 4.0 95 %");
  REQUIRE(list != std::string::npos);
  const std::string brings = words.substr(list, words.find(" more", list) - list);
  const std::size_t named = count(brings, "QAAA");
  const std::size_t counted = std::stoul(brings.substr(brings.rfind(' ')));
  CHECK(named + counted == kStations);
}

TEST_CASE("paper: the card lists all channel numbers if the names do not fit") {
  PaperCard card = usual_card();
  card.plan = long_plan(2, 20, "QAAA 4.");
  const Page page = lay_out(card, kLetter, typefaces());
  CHECK(says(page, "10, 11, 12, 13, 14, 15, 16, 17, 18, 19"));
  card.plan = long_plan(2, 2, "QAAA 4.");
  CHECK(says(lay_out(card, kLetter, typefaces()), "0 (QAAA 4.0), 1 (QAAA 4.1)"));
}

TEST_CASE("paper: the dial shows the tolerance band and the arrow on the bearing") {
  const PaperCard card = usual_card();
  const Page page = lay_out(card, kLetter, typefaces());
  const double bearing_deg = card.aim.bearing_true.degrees();
  const Arc* ring = nullptr;
  const Arc* band = nullptr;
  for (const Mark& mark : page.marks) {
    const auto* arc = std::get_if<Arc>(&mark);
    if (arc == nullptr) continue;
    const bool whole = arc->to_deg - arc->from_deg == 360.0;
    if (whole && (ring == nullptr || arc->radius_pt > ring->radius_pt)) ring = arc;
  }
  REQUIRE(ring != nullptr);
  // The protractor has an arc of its own.
  for (const Mark& mark : page.marks) {
    const auto* arc = std::get_if<Arc>(&mark);
    if (arc == nullptr || arc->center.y != ring->center.y) continue;
    if (arc->to_deg - arc->from_deg != 360.0) band = arc;
  }
  REQUIRE(band != nullptr);
  CHECK(band->from_deg == Approx(bearing_deg - 23.0));
  CHECK(band->to_deg == Approx(bearing_deg + 19.0));
  // The filled triangle whose first corner is the tip.
  bool arrow = false;
  for (const Mark& mark : page.marks) {
    const auto* shape = std::get_if<Shape>(&mark);
    if (shape == nullptr || !shape->filled || shape->corners.size() != 3) continue;
    const double right = shape->corners[0].x - ring->center.x;
    const double up = ring->center.y - shape->corners[0].y;
    if (std::hypot(right, up) > ring->radius_pt) continue;  // the heading of the sight line
    CHECK(fold_circle_deg(std::atan2(right, up) * 180.0 / M_PI) == Approx(bearing_deg));
    arrow = true;
  }
  CHECK(arrow);
}

TEST_CASE("paper: the card shows no compass number where no compass works") {
  const PaperCard card =
      card_at(*Position::at_deg(85.8, 139.0), *Position::at_deg(85.9, 130.0), std::nullopt);
  REQUIRE(card.aim.field.zone == MagneticField::Zone::Blackout);
  const Page page = lay_out(card, kLetter, typefaces());
  CHECK(says(page, "NO COMPASS WORKS HERE"));
  CHECK(says(page, words::whole_degrees(card.aim.bearing_true)));
  CHECK_FALSE(says(page, "° magnetic"));
  CHECK_FALSE(says(page, "A compass with its declination"));
  CHECK_FALSE(says(page, "magnetic north"));
}

TEST_CASE("paper: letters missing in the fonts print as question marks") {
  CHECK(typefaces().printable("QBPA 6.1 ± 3°, 42°30′N, é") == "QBPA 6.1 ± 3°, 42°30′N, é");
  CHECK(typefaces().printable("Ж") == "?");
  CHECK(typefaces().printable("a\xFF") == "a?");
}

TEST_CASE("paper: the picture has its size, only grays, and white edges") {
  const Page page = lay_out(usual_card(), kA4, typefaces());
  auto bytes = png_of(page, typefaces(), 100);
  REQUIRE(bytes);
  struct Reading {
    const std::string& bytes;
    std::size_t at = 0;
  } reading{*bytes};
  cairo_surface_t* picture = cairo_image_surface_create_from_png_stream(
      [](void* from, unsigned char* into, unsigned int length) {
        auto& read = *static_cast<Reading*>(from);
        if (read.bytes.size() - read.at < length) return CAIRO_STATUS_READ_ERROR;
        std::memcpy(into, read.bytes.data() + read.at, length);
        read.at += length;
        return CAIRO_STATUS_SUCCESS;
      },
      &reading);
  REQUIRE(cairo_surface_status(picture) == CAIRO_STATUS_SUCCESS);
  const int width = cairo_image_surface_get_width(picture);
  const int height = cairo_image_surface_get_height(picture);
  CHECK(width == 827);    // 210 mm at 100 dots per inch
  CHECK(height == 1169);  // 297 mm
  const unsigned char* rows = cairo_image_surface_get_data(picture);
  const int stride = cairo_image_surface_get_stride(picture);
  int colored = 0, dark = 0, at_edge = 0;
  constexpr int kEdge = 33;  // a third of an inch
  for (int y = 0; y < height; ++y) {
    for (int x = 0; x < width; ++x) {
      const unsigned char* pixel = rows + y * stride + 4 * x;
      colored += pixel[0] != pixel[1] || pixel[1] != pixel[2];
      dark += pixel[0] < 128;
      const bool edge = x < kEdge || y < kEdge || x >= width - kEdge || y >= height - kEdge;
      at_edge += edge && pixel[0] != 255;
    }
  }
  cairo_surface_destroy(picture);
  CHECK(colored == 0);
  CHECK(at_edge == 0);
  // Some ink, but not a black sheet.
  CHECK(dark > width * height / 100);
  CHECK(dark < width * height / 5);
}

}  // namespace mastwise::paper
