#include "app/ui/form_page.hpp"

#include "app/shared/actions.hpp"
#include "app/words/language.hpp"
#include "app/words/phrases.hpp"
#include "core/geo/notation.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace mastwise::ui {

FormPage::FormPage(Ui& ui, const char* name, Rect view, const Form& form, bool miles)
    : ui_(ui), name_(name), form_(form), miles_(miles), top_(ui.begin_page(name, view)) {
  view.top = top_;
  const auto [first, second] = halves(ui, view);
  first_ = first;
  second_ = second;
}

Rect FormPage::second(const Column& above) {
  bottom_ = std::max(bottom_, above.bottom());
  if (ui_.portrait()) second_.top = above.bottom() + 32.0f;
  return second_;
}

void FormPage::end(const Column& last) {
  ui_.end_page(name_, top_, std::max(bottom_, last.bottom()) + 16.0f);
}

void FormPage::field(Column& column, Field field) {
  const auto number = form_.number(field);
  const auto place = form_.place(field);
  const std::string value = number  ? fmt::format("{:g}", *number)
                            : place ? place_words(field, *place)
                                    : std::string(words::say("type"));
  const std::string name(kStoredNames<Field>.at(static_cast<std::size_t>(field)));
  if (column.field("field " + name, words::say(field_words(field, miles_)), value,
                   number || place)) {
    ui_.emit(act::OpenField{field});
  }
}

void FormPage::fields(Column& column, std::initializer_list<Field> all) {
  for (const Field one : all) field(column, one);
}

std::string FormPage::place_words(Field field, const Position& place) const {
  const std::string name = form_.name(field);
  return name.empty() ? format_position(place, Notation::Decimal) : name;
}

void draw_answer(Column& column, const FormAnswer& answer) {
  if (!answer.trouble.empty()) column.warning(words::sentence(answer.trouble));
  for (const std::string& line : answer.lines) column.plain(line, Face::TextBold);
}

}  // namespace mastwise::ui
