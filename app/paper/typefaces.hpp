#pragma once

#include "app/paper/page.hpp"
#include "core/result.hpp"

#include <memory>
#include <string>
#include <string_view>

struct _cairo;  // cairo's own name of cairo_t

namespace mastwise::paper {

// Mastwise's fonts for paper. One thread at a time.
class Typefaces {
 public:
  static Result<Typefaces> load(const std::string& fonts_folder);

  // The text's width, in points.
  double width(std::string_view text, double size_pt, Weight weight) const;
  // The text with a question mark for each letter missing in the fonts.
  std::string printable(std::string_view text) const;
  // Sets the face for later text.
  void select(_cairo* context, double size_pt, Weight weight) const;

 private:
  struct Faces;
  explicit Typefaces(std::shared_ptr<const Faces> faces) : faces_(std::move(faces)) {}
  std::shared_ptr<const Faces> faces_;
};

}  // namespace mastwise::paper
