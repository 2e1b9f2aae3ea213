#include "app/paper/print.hpp"

#include "platform/atomic_save.hpp"

#include <cmath>
#include <memory>
#include <numbers>
#include <span>

#include <cairo-pdf.h>

namespace mastwise::paper {
namespace {

using Surface = std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)>;
using Context = std::unique_ptr<cairo_t, decltype(&cairo_destroy)>;

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

class Printer {
 public:
  Printer(cairo_t* context, const Typefaces& typefaces)
      : context_(context), typefaces_(typefaces) {}

  void operator()(const Text& text) const {
    ink(text.gray);
    typefaces_.select(context_, text.size_pt, text.weight);
    cairo_move_to(context_, text.at.x, text.at.y);
    cairo_show_text(context_, text.text.c_str());
  }
  void operator()(const Shape& shape) const {
    ink(shape.gray);
    cairo_new_path(context_);  // text leaves a point behind
    for (const Spot& corner : shape.corners) cairo_line_to(context_, corner.x, corner.y);
    if (shape.closed) cairo_close_path(context_);
    if (shape.filled) {
      cairo_fill(context_);
    } else {
      stroke(shape.width_pt);
    }
  }
  void operator()(const Arc& arc) const {
    ink(arc.gray);
    const auto from_right = [](double from_top_deg) {
      return (from_top_deg - 90.0) * std::numbers::pi / 180.0;
    };
    cairo_new_path(context_);
    cairo_arc(context_, arc.center.x, arc.center.y, arc.radius_pt, from_right(arc.from_deg),
              from_right(arc.to_deg));
    stroke(arc.width_pt);
  }

 private:
  void ink(double gray) const { cairo_set_source_rgb(context_, gray, gray, gray); }
  void stroke(double width_pt) const {
    cairo_set_line_width(context_, width_pt);
    cairo_stroke(context_);
  }

  cairo_t* context_;
  const Typefaces& typefaces_;
};

Result<Done> draw(cairo_surface_t* surface, const Page& page, const Typefaces& typefaces,
                  double dots_per_point) {
  const Context context(cairo_create(surface), &cairo_destroy);
  cairo_scale(context.get(), dots_per_point, dots_per_point);
  cairo_set_source_rgb(context.get(), 1.0, 1.0, 1.0);
  cairo_paint(context.get());
  const Printer printer(context.get(), typefaces);
  for (const Mark& mark : page.marks) std::visit(printer, mark);
  const cairo_status_t status = cairo_status(context.get());
  if (status == CAIRO_STATUS_SUCCESS) return Done{};
  return Error{.what = std::string("cannot draw the page: ") + cairo_status_to_string(status)};
}

}  // namespace

Result<std::string> pdf_of(const Page& page, const Typefaces& typefaces) {
  std::string bytes;
  const Surface surface(
      cairo_pdf_surface_create_for_stream(&append, &bytes, page.size.width_pt, page.size.height_pt),
      &cairo_surface_destroy);
  const auto say = [&](cairo_pdf_metadata_t what, const std::string& text) {
    cairo_pdf_surface_set_metadata(surface.get(), what, text.c_str());
  };
  say(CAIRO_PDF_METADATA_TITLE, page.title);
  say(CAIRO_PDF_METADATA_CREATOR, "Mastwise");
  say(CAIRO_PDF_METADATA_CREATE_DATE, page.made_on);
  if (const auto drawn = draw(surface.get(), page, typefaces, 1.0); !drawn) return drawn.error();
  cairo_surface_finish(surface.get());
  const cairo_status_t status = cairo_surface_status(surface.get());
  if (status == CAIRO_STATUS_SUCCESS) return bytes;
  return Error{.what = std::string("cannot make the PDF: ") + cairo_status_to_string(status)};
}

Result<std::string> png_of(const Page& page, const Typefaces& typefaces, int dots_per_inch) {
  constexpr double kPointsPerInch = 72.0;
  const double dots_per_point = dots_per_inch / kPointsPerInch;
  const auto dots = [&](double points) {
    return static_cast<int>(std::lround(points * dots_per_point));
  };
  const Surface surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, dots(page.size.width_pt),
                                                   dots(page.size.height_pt)),
                        &cairo_surface_destroy);
  const auto drawn = draw(surface.get(), page, typefaces, dots_per_point);
  if (!drawn) return drawn.error();
  std::string bytes;
  const cairo_status_t status = cairo_surface_write_to_png_stream(surface.get(), &append, &bytes);
  if (status == CAIRO_STATUS_SUCCESS) return bytes;
  return Error{.what = std::string("cannot make the picture: ") + cairo_status_to_string(status)};
}

namespace {

Result<Done> save(const Result<std::string>& bytes, const std::string& path) {
  if (!bytes) return bytes.error();
  return platform::save_atomically(path, std::as_bytes(std::span(*bytes)));
}

}  // namespace

Result<Done> save_pdf(const Page& page, const Typefaces& typefaces, const std::string& path) {
  return save(pdf_of(page, typefaces), path);
}

Result<Done> save_png(const Page& page, const Typefaces& typefaces, int dots_per_inch,
                      const std::string& path) {
  return save(png_of(page, typefaces, dots_per_inch), path);
}

}  // namespace mastwise::paper
