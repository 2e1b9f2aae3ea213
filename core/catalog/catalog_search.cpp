#include "core/catalog/catalog_search.hpp"

#include "core/text/words.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace mastwise::catalog_search {
namespace {

void add(std::string& texts, std::string_view text) {
  if (text.empty()) return;
  if (!texts.empty()) texts += ' ';
  texts += text;
}

// Splits "6.1" and "6-1" into {"6", "1"}, "6" into {"6", ""}, anything else into two empty texts.
struct VirtualChannel {
  std::string_view major_number;
  std::string_view minor_number;
};
VirtualChannel split_virtual(std::string_view text) {
  const std::size_t mark = std::min(text.find_first_of(".-"), text.size());
  const std::string_view first = text.substr(0, mark);
  const std::string_view second = text.substr(std::min(mark + 1, text.size()));
  const auto all_digits = [](std::string_view part) {
    return std::all_of(part.begin(), part.end(), words::is_digit);
  };
  if (first.empty() || !all_digits(first) || !all_digits(second)) return {};
  return {first, second};
}

bool can_match(std::string_view word) {
  return std::any_of(word.begin(), word.end(), [](char c) {
    return words::is_digit(c) || words::is_letter(c) || static_cast<unsigned char>(c) >= 0x80;
  });
}

std::string quoted(std::string_view word) {
  std::string text = "\"";
  for (const char c : word) {
    if (c == '"') text += '"';
    // FTS5 reads a text only up to its first NUL.
    text += c == '\0' ? ' ' : c;
  }
  return text + '"';
}

bool names_a_channel(std::string_view word) {
  return words::same_word(word, "rf") || words::same_word(word, "ch") ||
         words::same_word(word, "channel");
}

std::string rf_term(std::string_view channel) {
  return fmt::format("channels : {}", quoted(fmt::format("rf{}", channel)));
}

std::string text_term(std::string_view word) {
  return fmt::format("{{call_sign name network programs place}} : {} *", quoted(word));
}

std::string term(std::string_view word) {
  const bool rf = word.size() > 2 && words::same_word(word.substr(0, 2), "rf");
  if (rf && words::is_digit(word[2])) return rf_term(word.substr(2));
  const VirtualChannel channel = split_virtual(word);
  if (!channel.minor_number.empty()) {
    return fmt::format("channels : {}",
                       quoted(fmt::format("v{}x{}", channel.major_number, channel.minor_number)));
  }
  if (!channel.major_number.empty()) {
    return fmt::format("({} OR channels : {} OR {})", rf_term(channel.major_number),
                       quoted(fmt::format("v{}", channel.major_number)), text_term(word));
  }
  if (words::is_digit(word.front()))
    return fmt::format("({} OR {})", rf_term(word), text_term(word));
  return text_term(word);
}

// Words beyond what anyone types are ignored: FTS5 would refuse the text of a whole book.
std::vector<std::string_view> split_words(std::string_view typed) {
  constexpr std::size_t kMostWords = 16;
  std::vector<std::string_view> all;
  while (!(typed = words::trimmed(typed)).empty() && all.size() < kMostWords) {
    const std::size_t end = std::min(typed.find_first_of(" \t\r\n,;"), typed.size());
    if (can_match(typed.substr(0, end))) all.push_back(typed.substr(0, end));
    typed.remove_prefix(std::min(std::max<std::size_t>(end, 1), typed.size()));
  }
  return all;
}

}  // namespace

Words words_of(const Station& station) {
  Words result;
  result.networks = station.network;
  add(result.place, station.city);
  add(result.place, station.state);
  add(result.channels, fmt::format("rf{}", to_text(station.rf_channel)));
  for (const Program& program : station.programs) {
    add(result.networks, program.network);
    add(result.programs, program.name);
    const VirtualChannel channel = split_virtual(program.virtual_channel);
    if (channel.major_number.empty()) continue;
    add(result.channels, fmt::format("v{}", channel.major_number));
    if (channel.minor_number.empty()) continue;
    add(result.channels, fmt::format("v{}x{}", channel.major_number, channel.minor_number));
  }
  return result;
}

std::string match_query(std::string_view typed) {
  const auto all = split_words(typed);
  std::string query;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const bool rf_follows =
        names_a_channel(all[i]) && i + 1 < all.size() && words::is_digit(all[i + 1].front());
    if (!query.empty()) query += " AND ";
    // "rf 23" is one term; "ch 6.1" can only be a virtual channel.
    if (rf_follows && split_virtual(all[i + 1]).minor_number.empty()) {
      query += words::same_word(all[i], "rf") ? rf_term(all[i + 1]) : term(all[i + 1]);
      ++i;
    } else if (rf_follows) {
      query += term(all[++i]);
    } else {
      query += term(all[i]);
    }
  }
  return query;
}

}  // namespace mastwise::catalog_search
