#pragma once

#include <array>
#include <cstddef>
#include <optional>

namespace mastwise {

template <std::size_t N>
using SquareMatrix = std::array<std::array<double, N>, N>;

// The inverse of a symmetric matrix by Gauss and Jordan, without exchanging rows, which a positive
// definite one does not need; empty if a pivot is not over `least_pivot`: too close to singular.
template <std::size_t N>
std::optional<SquareMatrix<N>> inverse(SquareMatrix<N> matrix, double least_pivot) {
  SquareMatrix<N> result{};
  for (std::size_t i = 0; i < N; ++i) result[i][i] = 1.0;
  for (std::size_t column = 0; column < N; ++column) {
    const double pivot = matrix[column][column];
    if (!(pivot > least_pivot)) return std::nullopt;
    for (std::size_t k = 0; k < N; ++k) {
      matrix[column][k] /= pivot;
      result[column][k] /= pivot;
    }
    for (std::size_t row = 0; row < N; ++row) {
      if (row == column) continue;
      const double factor = matrix[row][column];
      for (std::size_t k = 0; k < N; ++k) {
        matrix[row][k] -= factor * matrix[column][k];
        result[row][k] -= factor * result[column][k];
      }
    }
  }
  return result;
}

}  // namespace mastwise
