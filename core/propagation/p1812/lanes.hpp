#pragma once

#include <cstddef>
#include <cstring>

// Two doubles computed at once. Compilers do not vectorize a search for a maximum unless they may
// ignore NaN everywhere; explicit pairs do, with the same bits on every machine.
namespace mastwise::p1812 {

using Lanes = double __attribute__((vector_size(16)));
inline constexpr std::size_t kLanes = 2;

inline Lanes spread(double value) {
  return Lanes{value, value};
}

// One value of an array (Value is double), or two neighboring ones (Value is Lanes).
template <class Value>
Value read(const double* values) {
  Value value;
  std::memcpy(&value, values, sizeof value);
  return value;
}

// values[0], or values[0] and values[-1].
template <class Value>
Value read_backwards(const double* values);
template <>
inline double read_backwards<double>(const double* values) {
  return *values;
}
template <>
inline Lanes read_backwards<Lanes>(const double* values) {
  return Lanes{values[0], values[-1]};
}

// first, or first and first + 1.
template <class Value>
Value count_from(double first);
template <>
inline double count_from<double>(double first) {
  return first;
}
template <>
inline Lanes count_from<Lanes>(double first) {
  return Lanes{first, first + 1.0};
}

template <class Value>
Value larger(Value a, Value b) {
  return a > b ? a : b;
}

template <class Value>
Value smaller(Value a, Value b) {
  return a < b ? a : b;
}

inline double largest(Lanes lanes) {
  return larger(lanes[0], lanes[1]);
}
inline double smallest(Lanes lanes) {
  return smaller(lanes[0], lanes[1]);
}
inline double sum(Lanes lanes) {
  return lanes[0] + lanes[1];
}

}  // namespace mastwise::p1812
