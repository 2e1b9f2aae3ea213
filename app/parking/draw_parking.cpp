#include "app/parking/actions.hpp"
#include "app/parking/draw.hpp"
#include "app/parking/draw_sectors.hpp"
#include "app/shared/actions.hpp"
#include "app/ui/chance_mark.hpp"
#include "app/ui/choice.hpp"
#include "app/ui/column.hpp"
#include "app/ui/lit_row.hpp"
#include "app/ui/sheet_head.hpp"
#include "app/ui/shortened.hpp"
#include "app/words/chances.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "app/words/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

// The gears of the rig side by side, and which way to park.
namespace mastwise::screens {
namespace {

using ui::Align;
using ui::ButtonLook;
using ui::Column;
using ui::Face;
using words::fill;
using words::say;

constexpr float kPad = 16.0f, kOfferLine = 38.0f, kCount = 132.0f;

std::string count_words(std::size_t count, std::size_t all, const char* phrase) {
  return fill(say(phrase), {{"count", std::to_string(count)}, {"all", std::to_string(all)}});
}

// Which gear to raise, in one sentence.
std::string enough_words(const GearsAnswer& answer) {
  if (answer.networks.empty() && answer.unnamed == 0)
    return say("Nothing is likely here with any.");
  if (answer.rows.size() == 1) return say("The only antenna on the list.");
  if (!answer.enough) return say("No antenna brings in all of it.");
  return fill(say("{antenna} is enough."),
              {{"antenna", say(std::string_view(answer.rows[*answer.enough].name))}});
}

// One gear with its networks, from the top down; the whole row can be touched.
class GearCard {
 public:
  GearCard(Ui& ui, Rect area, const GearsAnswer& answer, const GearRow& row, bool in_use,
           bool miles)
      : ui_(ui),
        theme_(ui.theme()),
        area_(area),
        answer_(answer),
        row_(row),
        in_use_(in_use),
        miles_(miles) {}

  // Returns its bottom.
  float draw();

 private:
  std::string name() const { return say(std::string_view(row_.name)); }
  std::string under() const {
    return fill(in_use_ ? say("{height} up, in use") : say("{height} up"),
                {{"height", words::height(row_.height_m, miles_)}});
  }
  std::string only() const {
    return row_.only.empty() || answer_.rows.size() < 2
               ? std::string()
               : fill(say("Only with it: {names}"),
                      {{"names", fmt::format("{}", fmt::join(row_.only, ", "))}});
  }
  // The room of the count.
  float head() const { return answer_.networks.empty() || answer_.unnamed == 0 ? 88.0f : 120.0f; }
  float name_width() const { return area_.width() - 2.0f * kPad - kCount; }
  // As many as leave room for the names.
  std::size_t columns() const {
    constexpr float kLeast = 284.0f, kBetween = 20.0f;
    const float room = area_.width() - 2.0f * kPad + kBetween;
    return std::max<std::size_t>(1, static_cast<std::size_t>(room / (kLeast + kBetween)));
  }
  float height() const;
  void count(float top);
  float offers(float top);

  Ui& ui_;
  const ui::Theme& theme_;
  Rect area_;
  const GearsAnswer& answer_;
  const GearRow& row_;
  bool in_use_, miles_;
  bool lit_ = false;
};

float GearCard::height() const {
  const auto names = static_cast<float>(ui_.wrapped(name(), name_width(), Face::TextBold).size());
  const auto lines = static_cast<float>((row_.offers.size() + columns() - 1) / columns());
  const std::string words = only();
  const float width = area_.width() - 2.0f * kPad;
  const auto extra =
      words.empty() ? 0.0f : static_cast<float>(ui_.wrapped(words, width, Face::Text).size());
  return std::max(head(), 54.0f + ui_.line(28.0f, Face::TextBold) * names) + kOfferLine * lines +
         ui_.line(32.0f, Face::Text) * extra + 10.0f;
}

void GearCard::count(float top) {
  const float right = area_.right - kPad;
  const bool named = !answer_.networks.empty();
  const std::size_t brought = named ? row_.networks : row_.unnamed;
  const std::size_t all = named ? answer_.networks.size() : answer_.unnamed;
  ui_.canvas().text({right, top + 40.0f}, count_words(brought, all, "{count} of {all}"),
                    Face::Cardinal, theme_.ink, Align::Right);
  const ui::Color ink = ui::second_ink_on_row(theme_, lit_);
  ui_.canvas().text({right, top + 72.0f}, named ? say("networks") : say("stations"), Face::Text,
                    ink, Align::Right);
  if (!named || answer_.unnamed == 0) return;
  ui_.canvas().text(
      {right, top + 104.0f},
      count_words(row_.unnamed, answer_.unnamed,
                  answer_.unnamed == 1 ? "{count} of {all} other" : "{count} of {all} others"),
      Face::Text, ink, Align::Right);
}

// Each network at the same place in every card: its name, the chance and its mark.
float GearCard::offers(float top) {
  constexpr float kMark = 60.0f, kNumber = 66.0f, kBetween = 20.0f;
  const std::size_t columns = this->columns();
  const float width = (area_.width() - 2.0f * kPad - kBetween * static_cast<float>(columns - 1)) /
                      static_cast<float>(columns);
  for (std::size_t i = 0; i < row_.offers.size(); ++i) {
    const float left = area_.left + kPad + static_cast<float>(i % columns) * (width + kBetween);
    const float baseline = top + kOfferLine * static_cast<float>(i / columns) + 24.0f;
    const auto& percent = row_.offers[i].chance_percent;
    const bool likely =
        percent && reception::chance_word(*percent) <= reception::ChanceWord::likely;
    const Face face = likely ? Face::TextBold : Face::Text;
    const ui::Color ink = likely ? theme_.ink : ui::second_ink_on_row(theme_, lit_);
    const float number = std::max(kNumber, ui_.canvas().text_width("100 %", Face::TextBold) + 8.0f);
    const float room = width - kMark - number - 8.0f;
    ui::text_within(ui_.canvas(), {left, baseline}, room, answer_.networks[i], face, ink);
    const float right = left + width;
    if (!percent) {
      ui_.canvas().text({right, baseline}, say("unknown"), Face::Text, ink, Align::Right);
      continue;
    }
    ui_.canvas().text({right - kMark - 8.0f, baseline}, words::chance_number(*percent), face, ink,
                      Align::Right);
    ui::draw_chance_mark(ui_, {right - kMark, baseline - 16.0f, right, baseline - 1.0f},
                         reception::chance_word(*percent));
  }
  const std::size_t lines = (row_.offers.size() + columns - 1) / columns;
  return top + kOfferLine * static_cast<float>(lines);
}

float GearCard::draw() {
  const Rect card{area_.left, area_.top, area_.right, area_.top + height()};
  const std::string target = "use gear " + row_.name;
  if (ui_.touchable(target, card, !in_use_, "gears")) ui_.emit(act::UseGear{row_.name});
  lit_ = in_use_ || ui_.pressed(target);
  if (lit_) ui_.canvas().fill(card.inset(2.0f), theme_.lobe, 10.0f);
  const float left = area_.left + kPad;
  float y = ui_.paragraph({left, card.top + 34.0f}, name_width(), 28.0f, name(), Face::TextBold,
                          theme_.ink);
  ui_.canvas().text({left, y}, under(), Face::Text, ui::second_ink_on_row(theme_, lit_));
  count(card.top);
  y = offers(std::max(card.top + head(), y + 12.0f));
  if (const std::string words = only(); !words.empty()) {
    ui_.paragraph({left, y + 28.0f}, area_.width() - 2.0f * kPad, 32.0f, words, Face::Text,
                  ui::second_ink_on_row(theme_, lit_));
  }
  ui_.canvas().line({card.left, card.bottom}, {card.right, card.bottom}, theme_.rule, 1.5f);
  return card.bottom;
}

// The choice beside its label, or below it where that leaves its words no room.
constexpr float kNeighborsHeight = 72.0f, kNeighborsLabel = 36.0f, kNeighborsBeside = 590.0f;

float neighbors_height(float width) {
  return width < kNeighborsBeside ? kNeighborsLabel + kNeighborsHeight : kNeighborsHeight;
}

// Where rigs are expected on the next sites.
void draw_neighbors(Ui& ui, Rect row, const ParkingState& parking) {
  constexpr float kLabel = 150.0f;
  const bool beside = row.height() <= kNeighborsHeight;
  ui::text_within(ui.canvas(), {row.left, beside ? row.center().y + 9.0f : row.top + 26.0f},
                  beside ? kLabel - 10.0f : row.width(), say("Neighbors"), Face::Text,
                  ui.theme().ink);
  (beside ? row.left : row.top) += beside ? kLabel : kNeighborsLabel;
  const std::array options{ui::Option{"left", say("Left")}, ui::Option{"both", say("Both")},
                           ui::Option{"right", say("Right")}, ui::Option{"none", say("None")}};
  constexpr std::array kEach{Neighbors::left, Neighbors::both, Neighbors::right, Neighbors::none};
  const auto chosen = static_cast<std::size_t>(
      std::find(kEach.begin(), kEach.end(), parking.neighbors) - kEach.begin());
  const auto touched = ui::segmented(ui, "neighbors", row, options, chosen);
  if (touched) ui.emit(act::ChooseNeighbors{kEach[*touched]});
}

// How low things in the sectors must be.
std::string low_words(const GearRow& row, bool miles) {
  constexpr double kLeast_m = 0.5;
  double lowest_m = row.height_m;
  for (const KeptSector& sector : row.sectors) lowest_m = std::min(lowest_m, sector.harmless_m);
  const std::string away = words::height(kNearObstacle_m, miles);
  if (lowest_m < kLeast_m) {
    return fill(say("In the sectors nothing may stand within {distance}."), {{"distance", away}});
  }
  return fill(say("In the sectors keep what stands {distance} away lower than {height}."),
              {{"distance", away}, {"height", words::height(lowest_m, miles)}});
}

// Which way to park, below the gears.
void draw_which_way(Column& column, const Shared& shared, const ParkingState& parking) {
  const GearRow& row = parking.answer->rows[*parking.row];
  column.heading(say("WHICH WAY TO PARK"));
  if (row.sectors.empty()) {
    column.plain(say("No wanted station is likely with this antenna: no sector to keep clear."));
    return;
  }
  column.plain(low_words(row, shared.settings.miles));
  const double error_deg = parking.answer->question.here.heading_error_deg;
  column.line(fill(say("The inner ring shows the nose headings. A sector has the clearance of "
                       "ITU-R P.526 for each station, and ± {degrees}° for your compass."),
                   {{"degrees", fmt::format("{:.0f}", std::max(1.0, error_deg))}}),
              Face::Text);
}

void draw_page(Ui& ui, Rect view, const Shared& shared, const ParkingState& parking) {
  const GearsAnswer& answer = *parking.answer;
  Rect page = view;
  const float begun = page.top = ui.begin_page("parking", view);
  const float first = ui.paragraph({page.left, page.top + 30.0f}, page.width(), 34.0f,
                                   enough_words(answer), Face::Value, ui.theme().ink);
  float y = first - 18.0f;
  for (std::size_t i = 0; i < answer.rows.size(); ++i) {
    const bool in_use = parking.row == i;
    y = GearCard(ui, {page.left, y, page.right, y}, answer, answer.rows[i], in_use,
                 shared.settings.miles)
            .draw();
  }
  page.top = y;
  Column column(ui, page);
  if (column.button("antennas", say("Antennas on this rig"), 0, 1)) {
    ui.emit(act::OpenSheet{Sheet::Antennas});
  }
  column.space(24.0f);
  if (parking.row) draw_which_way(column, shared, parking);
  ui.end_page("parking", begun, column.bottom() + 16.0f);
}

}  // namespace

void draw_parking_sheet(Ui& ui, const Shared& shared, const ParkingState& parking) {
  const Rect area = draw_sheet_head(ui, say("Which antenna is enough"), Sheet::Gear);
  if (!parking.answer || !shared.findings.position) {
    Column column(ui, area);
    column.plain(shared.findings.position ? say("Computing the paths.")
                                          : say("Position unknown. Set it under Here."));
    return;
  }
  if (!parking.answer->trouble.empty()) {
    Column column(ui, area);
    column.warning(parking.answer->trouble);
    return;
  }
  constexpr float kBetween = 32.0f;
  Rect picture = area, page = area;
  if (ui.portrait()) {
    picture.bottom = area.top + 0.5f * area.height();
    page.top = picture.bottom + kBetween / 2.0f;
  } else {
    picture.right = area.left + 0.49f * area.width();
    page.left = picture.right + kBetween;
  }
  if (parking.row) {
    const float height = neighbors_height(picture.width());
    draw_neighbors(ui, {picture.left, picture.top, picture.right, picture.top + height}, parking);
    picture.top += height + kPad;
    draw_sectors(ui, picture, shared, parking);
  }
  draw_page(ui, page, shared, parking);
}

// Every preset, those that the rig has marked.
void draw_antennas_sheet(Ui& ui, const Shared& shared) {
  constexpr float kRow = 88.0f, kBox = 34.0f;
  const Rect area = draw_sheet_head(ui, say("Antennas on this rig"), Sheet::Parking);
  const std::vector<gear::Gear> presets = gear::presets();
  const std::vector<GearChoice> has = rig_gears(shared.settings);
  const float offset = ui.begin_scroll("antennas", area, kRow * static_cast<float>(presets.size()));
  float top = area.top - offset;
  for (const gear::Gear& preset : presets) {
    const Rect row{area.left, top, area.right, top + kRow};
    const std::string target = "antenna " + preset.name;
    const bool in_use = gear_of(shared.settings.gear).name == preset.name;
    const bool on_rig = std::any_of(has.begin(), has.end(), [&](const GearChoice& choice) {
      return gear_of(choice).name == preset.name;
    });
    if (ui.touchable(target, row, !in_use, "antennas")) ui.emit(act::ToggleGear{preset.name});
    const bool lit = ui.pressed(target);
    if (lit) ui.canvas().fill(row.inset(2.0f), ui.theme().lobe, 10.0f);
    const Rect box{row.left + 16.0f, row.center().y - kBox / 2.0f, row.left + 16.0f + kBox,
                   row.center().y + kBox / 2.0f};
    ui.canvas().outline(box, ui.theme().ink, 3.0f, 6.0f);
    if (on_rig) ui.canvas().fill(box.inset(8.0f), ui.theme().accent, 3.0f);
    const float left = box.right + 20.0f, baseline = row.center().y + 9.0f;
    ui::text_within(ui.canvas(), {left, baseline}, row.right - left - 120.0f,
                    say(std::string_view(preset.name)), on_rig ? Face::TextBold : Face::Text,
                    ui.theme().ink);
    ui.canvas().text({row.right - 16.0f, baseline},
                     in_use ? say("in use") : words::height(preset.height_m, shared.settings.miles),
                     Face::Text, ui::second_ink_on_row(ui.theme(), lit), Align::Right);
    ui.canvas().line({row.left, row.bottom}, {row.right, row.bottom}, ui.theme().rule, 1.5f);
    top += kRow;
  }
  ui.end_scroll();
}

}  // namespace mastwise::screens
