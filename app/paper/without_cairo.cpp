#include "app/paper/print.hpp"
#include "app/paper/typefaces.hpp"

// In a browser: cairo, which draws the paper card, is not part of that form.
namespace mastwise::paper {
namespace {

Error no_paper() {
  return {.what = "Mastwise prints no card in a browser",
          .remedy = "read the card on the screen, or print it with Mastwise on Debian or Windows"};
}

}  // namespace

struct Typefaces::Faces {};

Result<Typefaces> Typefaces::load(const std::string&) {
  return no_paper();
}

double Typefaces::width(std::string_view, double, Weight) const {
  return 0.0;
}

std::string Typefaces::printable(std::string_view text) const {
  return std::string(text);
}

void Typefaces::select(_cairo*, double, Weight) const {}

Result<std::string> pdf_of(const Page&, const Typefaces&) {
  return no_paper();
}

Result<std::string> png_of(const Page&, const Typefaces&, int) {
  return no_paper();
}

Result<Done> save_pdf(const Page&, const Typefaces&, const std::string&) {
  return no_paper();
}

Result<Done> save_png(const Page&, const Typefaces&, int, const std::string&) {
  return no_paper();
}

}  // namespace mastwise::paper
