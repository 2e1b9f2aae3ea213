#pragma once

#include "app/shared/form.hpp"
#include "app/shared/settings.hpp"
#include "app/ui/column.hpp"
#include "app/ui/ui.hpp"

#include <initializer_list>
#include <string>

namespace mastwise::ui {

// Fields to type and their results, in two columns where the screen is wide.
class FormPage {
 public:
  FormPage(Ui& ui, const char* name, Rect view, const Form& form, bool miles);
  Rect first() const { return first_; }
  // Beside the first column, or below it where the screen is upright.
  Rect second(const Column& above);
  void end(const Column& last);

  // A field with its value and the action that edits it.
  void field(Column& column, Field field);
  void fields(Column& column, std::initializer_list<Field> all);

 private:
  std::string place_words(Field field, const Position& place) const;

  Ui& ui_;
  const char* name_;
  const Form& form_;
  bool miles_;
  float top_;
  Rect first_, second_;
  float bottom_ = 0.0f;
};

// What a form found.
void draw_answer(Column& column, const FormAnswer& answer);

}  // namespace mastwise::ui
