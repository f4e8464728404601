#include "demands/linear_equations.hpp"

#include <catch2/catch.hpp>

#include "support/hung_pieces.hpp"

using firstpick::demands::LinearEquations;

TEST_CASE("the unknowns fulfil the equations") {
  firstpick::tests::Dice dice(1);
  for (std::size_t size = 1; size <= 12; ++size) {
    LinearEquations<12> equations;
    equations.clear(size);
    std::vector<std::vector<double>> left(size, std::vector<double>(size));
    std::vector<double> unknown(size), right(size, 0.0);
    for (double& x : unknown) x = dice.between(-1.0, 1.0);
    for (std::size_t i = 0; i < size; ++i)
      for (std::size_t j = 0; j < size; ++j) {
        left[i][j] = i == j && size > 1 ? 0.0 : dice.between(-1.0, 1.0);  // no pivot on the diagonal
        equations(i, j) = left[i][j];
        right[i] += left[i][j] * unknown[j];
      }
    for (std::size_t i = 0; i < size; ++i) equations.right(i) = right[i];
    equations.solve();
    for (std::size_t i = 0; i < size; ++i) {
      CAPTURE(size, i);
      CHECK(equations.right(i) == Approx(unknown[i]).margin(1e-11));
    }
  }
}

TEST_CASE("a singular system gives no finite answer") {
  LinearEquations<2> equations;
  equations.clear(2);
  equations(0, 0) = 1.0;
  equations(0, 1) = 2.0;
  equations(1, 0) = 2.0;
  equations(1, 1) = 4.0;
  equations.right(0) = 1.0;
  equations.right(1) = 1.0;
  equations.solve();
  CHECK_FALSE(std::isfinite(equations.right(1)));
}
