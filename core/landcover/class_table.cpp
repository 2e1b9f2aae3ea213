#include "core/landcover/class_table.hpp"

#include "core/import/mapping_json.hpp"

#include <algorithm>
#include <charconv>
#include <numeric>

#include <fmt/format.h>

namespace mastwise::landcover {
namespace {

using namespace mapping_json;

constexpr std::size_t kLongestNotice = 300;
constexpr int kFewestClasses = 3;  // that tell a product by its codes alone [our choice, no source]

std::uint8_t code_of(const std::string& text, const std::string& where) {
  int code = -1;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), code);
  if (fault != std::errc() || end != text.data() + text.size() || code < 0 || code > 255) {
    fail(where, fmt::format("\"{}\" is not a code from 0 to 255", text));
  }
  return static_cast<std::uint8_t>(code);
}

Color color_of(const std::string& text, const std::string& where) {
  std::uint32_t number = 0;
  const char* const digits = text.data() + std::min<std::size_t>(1, text.size());
  const auto [end, fault] = std::from_chars(digits, text.data() + text.size(), number, 16);
  if (text.size() != 7 || text[0] != '#' || fault != std::errc() ||
      end != text.data() + text.size()) {
    fail(where, fmt::format("\"{}\" is not a color", text), "write it like \"#006400\"");
  }
  return {.red = static_cast<std::uint8_t>(number >> 16),
          .green = static_cast<std::uint8_t>(number >> 8),
          .blue = static_cast<std::uint8_t>(number)};
}

ClassTable::Row row_of(const json& object, const std::string& where) {
  expect_object(object, where, {"name", "class", "color"});
  ClassTable::Row row{.name = needed_text(object, "name", where)};
  const std::string cover = needed_text(object, "class", where);
  const auto parsed = parse_cover_class(cover);
  if (!parsed || *parsed == CoverClass::unknown) {
    fail(where, fmt::format("the class \"{}\" is not known", cover),
         "choose one of: water, open, suburban, trees, urban, dense urban");
  }
  row.cover = *parsed;
  const std::string color = text_at(object, "color", where);
  if (!color.empty()) row.color = color_of(color, where);
  return row;
}

const json& array_at(const json& root, const char* key) {
  static const json kNone = json::array();
  const auto found = root.find(key);
  if (found == root.end()) return kNone;
  if (!found->is_array()) fail(key, "this is not a list", "write it in brackets, [ ]");
  return *found;
}

void read_lists(const json& root, ClassTable& table) {
  for (const json& name : array_at(root, "files")) {
    if (!name.is_string() || name.get<std::string>().empty()) {
      fail("files", "the beginning of a name is not text", "quote it");
    }
    table.files.push_back(name.get<std::string>());
  }
  for (const json& code : array_at(root, "no_data")) {
    if (!code.is_number_integer() || code < 0 || code > 255) {
      fail("no_data", "this is not a code from 0 to 255");
    }
    table.no_data.push_back(code.get<std::uint8_t>());
  }
}

std::string notice_of(const json& root) {
  std::string notice = needed_text(root, "notice", "notice");
  const bool plain = std::none_of(notice.begin(), notice.end(), [](char letter) {
    return static_cast<unsigned char>(letter) < 0x20 || letter == 0x7f;
  });
  if (!plain || notice.size() > kLongestNotice) {
    fail("notice", fmt::format("this is not one line of at most {} bytes", kLongestNotice));
  }
  return notice;
}

ClassTable table_of(const json& root) {
  expect_object(root, "top level", {"about", "name", "notice", "files", "no_data", "classes"});
  ClassTable table{.name = needed_text(root, "name", "name"), .notice = notice_of(root)};
  read_lists(root, table);
  const auto classes = root.find("classes");
  if (classes == root.end() || !classes->is_object() || classes->empty()) {
    fail("classes", "there are no classes", "add the classes by code, in braces, { }");
  }
  for (const auto& item : classes->items()) {
    const std::string where = "classes, " + item.key();
    const std::uint8_t code = code_of(item.key(), where);
    if (table.lists(code)) fail(where, "this code is given twice", "remove one of them");
    table.rows[code] = row_of(item.value(), where);
  }
  constexpr std::size_t kMostClasses = 255;
  if (table.rows.size() > kMostClasses) fail("classes", "all codes have a class; one must be free");
  return table;
}

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(), [](char letter) {
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter | 0x20) : letter;
  });
  return text;
}

bool fits_codes(const ClassTable& table, const RasterTraits& traits) {
  for (std::size_t code = 0; code < traits.codes.size(); ++code) {
    if (traits.codes[code] && !table.lists(static_cast<std::uint8_t>(code))) return false;
  }
  return true;
}

bool fits_name(const ClassTable& table, const RasterTraits& traits) {
  const std::string name = lower(traits.file_name);
  return std::any_of(table.files.begin(), table.files.end(), [&](const std::string& beginning) {
    return name.starts_with(lower(beginning));
  });
}

bool fits_palette(const ClassTable& table, const RasterTraits& traits) {
  std::size_t colors = 0;
  for (const auto& [code, row] : table.rows) {
    if (!row.color) continue;
    if (code >= traits.palette.size() || traits.palette[code] != *row.color) return false;
    ++colors;
  }
  return colors > 0;
}

int classes_found(const ClassTable& table, const RasterTraits& traits) {
  int found = 0;
  for (const auto& [code, row] : table.rows) found += traits.codes[code] ? 1 : 0;
  return found;
}

std::string names_of(std::span<const ClassTable> tables) {
  std::vector<std::string> names;
  for (const ClassTable& table : tables) names.push_back(table.name);
  return fmt::format("{}", fmt::join(names, ", "));
}

std::string codes_of(const RasterTraits& traits) {
  constexpr std::size_t kShown = 8;
  std::vector<std::size_t> codes;
  for (std::size_t code = 0; code < traits.codes.size(); ++code) {
    if (traits.codes[code]) codes.push_back(code);
  }
  const bool more = codes.size() > kShown;
  codes.resize(std::min(codes.size(), kShown));
  return fmt::format("{}{}", fmt::join(codes, ", "), more ? " and more" : "");
}

Result<std::size_t> chosen_table(std::span<const ClassTable> tables, const RasterTraits& traits,
                                 std::string_view chosen) {
  for (std::size_t i = 0; i < tables.size(); ++i) {
    if (lower(tables[i].name) != lower(std::string(chosen))) continue;
    if (classes_found(tables[i], traits) > 0) return i;
    return Error{
        .what = fmt::format("its codes {} are not those of {}", codes_of(traits), tables[i].name),
        .remedy = "choose another class table: " + names_of(tables)};
  }
  return Error{.what = fmt::format("\"{}\" is not a class table", chosen),
               .remedy = "choose one of: " + names_of(tables)};
}

}  // namespace

bool ClassTable::lists(std::uint8_t code) const {
  return rows.count(code) != 0 || std::find(no_data.begin(), no_data.end(), code) != no_data.end();
}

CoverClass ClassTable::of(std::uint8_t code) const {
  const auto found = rows.find(code);
  return found == rows.end() ? CoverClass::unknown : found->second.cover;
}

Result<ClassTable> read_class_table(std::string_view text) {
  auto table = mapping_json::read<ClassTable>(text, table_of);
  if (table) return table;
  Error error = table.error();
  constexpr std::string_view kMapping = "mapping";
  if (error.where.starts_with(kMapping)) error.where.replace(0, kMapping.size(), "class table");
  return error;
}

Result<std::size_t> recognize(std::span<const ClassTable> tables, const RasterTraits& traits,
                              std::string_view chosen) {
  if (!chosen.empty()) return chosen_table(tables, traits, chosen);
  const auto by_codes = [](const ClassTable& table, const RasterTraits& of) {
    return classes_found(table, of) >= kFewestClasses;
  };
  for (const auto fits : {+fits_name, +fits_palette, +by_codes}) {
    std::vector<std::size_t> fitting;
    for (std::size_t i = 0; i < tables.size(); ++i) {
      if (fits_codes(tables[i], traits) && fits(tables[i], traits)) fitting.push_back(i);
    }
    if (fitting.size() == 1) return fitting.front();
  }
  return Error{.what = fmt::format("cannot tell whose land cover classes these are (codes {})",
                                   codes_of(traits)),
               .remedy = "choose the class table: " + names_of(tables)};
}

CoverClass commonest(const std::array<std::uint32_t, kCoverClasses>& votes) {
  const std::uint32_t all = std::accumulate(votes.begin(), votes.end(), std::uint32_t{0});
  const std::uint32_t known = all - votes[0];
  if (known == 0 || 2 * known < all) return CoverClass::unknown;
  std::size_t most = votes.size() - 1;
  for (std::size_t i = most; i > 0; --i) {
    if (votes[i] > votes[most]) most = i;
  }
  return static_cast<CoverClass>(most);
}

}  // namespace mastwise::landcover
