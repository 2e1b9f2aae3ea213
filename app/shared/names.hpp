#pragma once

#include <array>
#include <cstddef>
#include <string_view>
#include <type_traits>

// The names of enum values in settings and recordings, in the enum's order. A released name stays,
// so that old files still open. The first release stored numbers, which are read too.
namespace mastwise {

template <class E>
inline constexpr std::array<std::string_view, 0> kStoredNames{};

template <std::size_t N>
constexpr std::array<std::string_view, N> names(const std::string_view (&list)[N]) {
  return std::to_array(list);
}

template <class E>
concept StoredByName = std::is_enum_v<E> && !kStoredNames<E>.empty();

}  // namespace mastwise
