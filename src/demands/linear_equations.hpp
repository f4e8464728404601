// A few linear equations, solved in place by Gaussian elimination with row exchange. At this size (10 to 22)
// a general library takes several times as long. A singular system gives what is not a number or not finite;
// the caller looks.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <utility>

namespace firstpick::demands {

template <std::size_t most>
class LinearEquations {
 public:
  void clear(std::size_t size) {
    size_ = size;
    for (std::size_t i = 0; i < size; ++i) std::fill_n(rows_[i].begin(), size + 1, 0.0);
  }
  double& operator()(std::size_t i, std::size_t j) { return rows_[i][j]; }
  double& right(std::size_t i) { return rows_[i][size_]; }  // after solve(): the unknowns

  void solve() {
    for (std::size_t k = 0; k < size_; ++k) {
      std::size_t pivot = k;
      for (std::size_t i = k + 1; i < size_; ++i)
        if (std::abs(rows_[i][k]) > std::abs(rows_[pivot][k])) pivot = i;
      if (pivot != k) std::swap_ranges(rows_[k].begin(), rows_[k].begin() + size_ + 1, rows_[pivot].begin());
      for (std::size_t i = k + 1; i < size_; ++i) {
        if (rows_[i][k] == 0.0 && rows_[k][k] != 0.0) continue;  // many are: ropes do not touch each other
        const double factor = rows_[i][k] / rows_[k][k];
        for (std::size_t j = k + 1; j <= size_; ++j) rows_[i][j] -= factor * rows_[k][j];
      }
    }
    for (std::size_t k = size_; k-- > 0;) {
      for (std::size_t j = k + 1; j < size_; ++j) right(k) -= rows_[k][j] * right(j);
      right(k) /= rows_[k][k];
    }
  }

 private:
  std::size_t size_ = 0;
  std::array<std::array<double, most + 1>, most> rows_;
};

}  // namespace firstpick::demands
