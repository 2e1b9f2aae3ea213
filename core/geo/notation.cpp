#include "core/geo/notation.hpp"

#include "core/geo/degrees_notation.hpp"
#include "core/geo/grid_notation.hpp"
#include "core/geo/notation_tokens.hpp"

namespace mastwise {

Result<Position> parse_position(std::string_view text) {
  using namespace notation;
  if (auto position = parse_mgrs(text)) return *std::move(position);
  const Result<Comma> comma = meaning_of_commas(text);
  auto tokens = tokenize(text, comma ? *comma : Comma::Separates);
  if (!tokens) return tokens.error();
  if (auto position = parse_utm_ups(*tokens, text.size())) return *std::move(position);
  if (!comma) return comma.error();
  return parse_degrees(*std::move(tokens), text.size());
}

}  // namespace mastwise
