#include "app/shell/paper_file.hpp"

#include "app/paper/layout.hpp"
#include "app/paper/print.hpp"
#include "app/service/startup.hpp"
#include "app/words/language.hpp"
#include "core/text/iso_time.hpp"
#include "core/text/words.hpp"

#include <filesystem>
#include <system_error>

#include <fmt/format.h>

namespace mastwise::shell {
namespace {

// "card-2026-07-02T180405Z-QBPA.pdf": letters and digits that every system allows in a name.
std::string file_name(const Shared& shared) {
  std::string name = "card-";
  for (const char c : iso_utc_seconds(moment_of(shared))) {
    if (c != ':') name += c;
  }
  name += '-';
  for (const char c : shared.stop.target->call_sign) {
    if (words::is_letter(c) || words::is_digit(c)) name += c;
  }
  return name + ".pdf";
}

}  // namespace

Result<std::string> save_card(const Shared& shared, const std::string& folder) {
  const words::InEnglish english;  // as the card of the verb
  const auto card = paper::card_of(shared);
  if (!card) return card.error();
  std::error_code trouble;
  std::filesystem::create_directories(folder, trouble);
  if (trouble) {
    return Error{.what = "cannot make the folder for cards: " + trouble.message(),
                 .where = folder,
                 .remedy = "point MASTWISE_DATA at a writable folder"};
  }
  const auto typefaces = paper::Typefaces::load(service::fonts_folder());
  if (!typefaces) return typefaces.error();
  const paper::Page page =
      paper::lay_out(*card, shared.settings.miles ? paper::kLetter : paper::kA4, *typefaces);
  std::string path = folder + '/' + file_name(shared);
  if (const auto saved = save_pdf(page, *typefaces, path); !saved) return saved.error();
  return path;
}

}  // namespace mastwise::shell
