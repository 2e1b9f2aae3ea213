#pragma once

#include "core/result.hpp"
#include "core/text/json_text.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

// Helpers shared by the readers of mapping files.
namespace mastwise::mapping_json {

using nlohmann::json;
using Keys = std::vector<std::string_view>;

// Thrown and caught only within read(): a mapping is a tree, and its first fault ends the reading.
struct Fault {
  Error error;
};

[[noreturn]] inline void fail(std::string where, std::string what, std::string remedy = {}) {
  throw Fault{Error{std::move(what), "mapping, " + std::move(where), std::move(remedy)}};
}

inline void expect_object(const json& object, const std::string& where, const Keys& known) {
  if (!object.is_object()) fail(where, "this is not an object", "write it in braces, { }");
  for (const auto& item : object.items()) {
    if (std::find(known.begin(), known.end(), item.key()) == known.end()) {
      fail(where, fmt::format("the key \"{}\" is not known", item.key()),
           fmt::format("choose one of: {}", fmt::join(known, ", ")));
    }
  }
}

inline std::string text_at(const json& object, const std::string& key, const std::string& where) {
  const auto found = object.find(key);
  if (found == object.end()) return {};
  if (!found->is_string()) fail(where, fmt::format("\"{}\" is not text", key), "quote it");
  return found->get<std::string>();
}

inline bool flag_at(const json& object, const std::string& key, const std::string& where) {
  const auto found = object.find(key);
  if (found == object.end()) return false;
  if (!found->is_boolean()) fail(where, fmt::format("\"{}\" is neither true nor false", key));
  return found->get<bool>();
}

inline std::vector<std::string> texts_at(const json& object, const std::string& key,
                                         const std::string& where) {
  std::vector<std::string> texts;
  const auto found = object.find(key);
  if (found == object.end()) return texts;
  if (!found->is_array()) fail(where, fmt::format("\"{}\" is not a list", key), "use brackets");
  for (const json& text : *found) {
    if (!text.is_string())
      fail(where, fmt::format("\"{}\" contains something other than text", key), "quote it");
    texts.push_back(text.get<std::string>());
  }
  return texts;
}

inline std::map<std::string, std::vector<std::string>> filter_at(const json& object,
                                                                 const std::string& key,
                                                                 const std::string& where) {
  std::map<std::string, std::vector<std::string>> filter;
  const auto found = object.find(key);
  if (found == object.end()) return filter;
  if (!found->is_object()) fail(where, fmt::format("\"{}\" is not an object", key), "use braces");
  for (const auto& item : found->items()) {
    filter[item.key()] = texts_at(*found, item.key(), where + ", " + key);
  }
  return filter;
}

inline std::string needed_text(const json& object, const std::string& key,
                               const std::string& where) {
  std::string text = text_at(object, key, where);
  if (text.empty()) fail(where, fmt::format("\"{}\" is missing", key), "add it");
  return text;
}

template <class Value>
Value taken(const Result<Value>& value, const std::string& where) {
  if (!value) fail(where, value.error().what, value.error().remedy);
  return *value;
}

inline Error malformed(std::string_view text, std::size_t byte) {
  const std::size_t at = std::min(byte == 0 ? 0 : byte - 1, text.size());
  const auto line =
      1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n');
  return Error{.what = "this is not valid JSON",
               .where = fmt::format("mapping, line {}", line),
               .remedy = "look there for a missing or extra comma, quote or brace",
               .character = at};
}

// Reads a mapping's text by a function that may fail().
template <class Value, class Reader>
Result<Value> read(std::string_view text, const Reader& reader) {
  if (nests_too_deep(text)) {
    return Error{.what = "this nests too deep for a mapping",
                 .where = "mapping",
                 .remedy = "choose another file"};
  }
  try {
    return reader(json::parse(text.begin(), text.end()));
  } catch (const Fault& fault) {
    return fault.error;
  } catch (const json::parse_error& error) {
    return malformed(text, error.byte);
  } catch (const json::exception& error) {
    return Error{.what = error.what(), .where = "mapping"};
  }
}

}  // namespace mastwise::mapping_json
