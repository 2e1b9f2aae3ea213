#include "app/paper/typefaces.hpp"

#include "core/text/utf8.hpp"
#include "platform/files.hpp"

#include <array>

#include <cairo-ft.h>
#include <ft2build.h>
#include FT_FREETYPE_H

namespace mastwise::paper {
namespace {

// Widths are measured at this size and scale with it.
constexpr double kMeasured_pt = 100.0;

using Library = std::shared_ptr<FT_LibraryRec_>;
using Options = std::unique_ptr<cairo_font_options_t, decltype(&cairo_font_options_destroy)>;
using Face = std::unique_ptr<cairo_font_face_t, decltype(&cairo_font_face_destroy)>;
using Scaled = std::unique_ptr<cairo_scaled_font_t, decltype(&cairo_scaled_font_destroy)>;

// Letters keep their positions on paper, without a screen's pixel grid.
Options exact_options() {
  Options options(cairo_font_options_create(), &cairo_font_options_destroy);
  cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
  return options;
}

// Data that a cairo face needs; cairo keeps it longer than we do.
struct Held {
  Library library;
  std::string bytes;  // of the file: FreeType knows no name with letters of another code page
  FT_Face face = nullptr;
};

void let_go(void* data) {
  auto* held = static_cast<Held*>(data);
  FT_Done_Face(held->face);
  delete held;
}

struct Opened {
  Face face{nullptr, &cairo_font_face_destroy};
  FT_Face letters = nullptr;
};

Result<Opened> open(const Library& library, const std::string& path) {
  static const cairo_user_data_key_t kHeld{};
  const auto refused = [&] {
    return Error{.what = "the font file is missing or damaged",
                 .where = path,
                 .remedy = "build again, or point MASTWISE_ASSETS at Mastwise's assets"};
  };
  auto bytes = platform::read_file(path);
  if (!bytes) return refused();
  auto held = std::make_unique<Held>(Held{.library = library, .bytes = *std::move(bytes)});
  if (FT_New_Memory_Face(library.get(), reinterpret_cast<const FT_Byte*>(held->bytes.data()),
                         static_cast<FT_Long>(held->bytes.size()), 0, &held->face) != 0) {
    return refused();
  }
  const FT_Face letters = held->face;
  Face face(cairo_ft_font_face_create_for_ft_face(letters, 0), &cairo_font_face_destroy);
  if (cairo_font_face_set_user_data(face.get(), &kHeld, held.get(), &let_go) !=
      CAIRO_STATUS_SUCCESS) {
    face.reset();
    FT_Done_Face(letters);
    return refused();
  }
  held.release();
  return Opened{std::move(face), letters};
}

Scaled measured(cairo_font_face_t* face) {
  cairo_matrix_t size, as_is;
  cairo_matrix_init_scale(&size, kMeasured_pt, kMeasured_pt);
  cairo_matrix_init_identity(&as_is);
  return {cairo_scaled_font_create(face, &size, &as_is, exact_options().get()),
          &cairo_scaled_font_destroy};
}

char32_t code_point(std::string_view character) {
  const auto byte = [&](std::size_t i) {
    return static_cast<char32_t>(static_cast<unsigned char>(character[i]));
  };
  constexpr std::array<char32_t, 5> kLead{0, 0x7F, 0x1F, 0x0F, 0x07};
  char32_t code = byte(0) & kLead[character.size()];
  for (std::size_t i = 1; i < character.size(); ++i) code = code << 6U | (byte(i) & 0x3FU);
  return code;
}

}  // namespace

struct Typefaces::Faces {
  std::array<Opened, 2> opened;
  std::array<Scaled, 2> measured;
};

Result<Typefaces> Typefaces::load(const std::string& fonts_folder) {
  FT_Library started = nullptr;
  if (FT_Init_FreeType(&started) != 0) return Error{.what = "the font library does not start"};
  const Library library(started, [](FT_Library one) { FT_Done_FreeType(one); });
  auto regular = open(library, fonts_folder + "/B612-Regular.otf");
  if (!regular) return regular.error();
  auto bold = open(library, fonts_folder + "/B612-Bold.otf");
  if (!bold) return bold.error();
  std::array<Scaled, 2> scaled{measured(regular->face.get()), measured(bold->face.get())};
  return Typefaces(std::make_shared<const Faces>(
      Faces{{*std::move(regular), *std::move(bold)}, std::move(scaled)}));
}

double Typefaces::width(std::string_view text, double size_pt, Weight weight) const {
  cairo_text_extents_t extents;
  cairo_scaled_font_text_extents(faces_->measured[static_cast<std::size_t>(weight)].get(),
                                 std::string(text).c_str(), &extents);
  return extents.x_advance * size_pt / kMeasured_pt;
}

std::string Typefaces::printable(std::string_view text) const {
  std::string result;
  while (!text.empty()) {
    const std::size_t length = utf8_length(text);
    const std::string_view character = text.substr(0, std::max<std::size_t>(1, length));
    text.remove_prefix(character.size());
    bool known = length != 0;
    for (const Opened& one : faces_->opened) {
      known = known && FT_Get_Char_Index(one.letters, code_point(character)) != 0;
    }
    if (known) {
      result += character;
    } else {
      result += '?';
    }
  }
  return result;
}

void Typefaces::select(cairo_t* context, double size_pt, Weight weight) const {
  cairo_set_font_face(context, faces_->opened[static_cast<std::size_t>(weight)].face.get());
  cairo_set_font_size(context, size_pt);
  cairo_set_font_options(context, exact_options().get());
}

}  // namespace mastwise::paper
