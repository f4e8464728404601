// Distances of straight lines with ends, by hand.

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

#include "demands/segments_apart.hpp"

using namespace firstpick;

namespace {

using Segment = std::array<Position, 2>;

Position at(double x, double y, double z) { return {x * m, y * m, z * m}; }

double apart(const Segment& a, const Segment& b) {
  const double one = in(m, demands::segments_apart(a, b)), other = in(m, demands::segments_apart(b, a));
  CHECK(one == Approx(other).margin(1e-12));
  return one;
}

}  // namespace

TEST_CASE("lines that cross, pass over each other, end beside each other, run side by side, or are points") {
  const Segment along_x{at(-1, 0, 0), at(1, 0, 0)};
  CHECK(apart(along_x, {at(0, -1, 0), at(0, 1, 0)}) == Approx(0.0).margin(1e-12));
  CHECK(apart(along_x, {at(0, -1, 0.3), at(0, 1, 0.3)}) == Approx(0.3));
  CHECK(apart(along_x, {at(4, -1, 0), at(4, 1, 0)}) == Approx(3.0));
  CHECK(apart(along_x, {at(4, 4, 0), at(4, 6, 0)}) == Approx(5.0));
  CHECK(apart(along_x, {at(0.5, 0.2, 0), at(3, 0.2, 0)}) == Approx(0.2));
  CHECK(apart(along_x, {at(2, 0.2, 0), at(3, 0.2, 0)}) == Approx(std::hypot(1.0, 0.2)));
  CHECK(apart(along_x, {at(0, 2, 0), at(0, 2, 0)}) == Approx(2.0));
  CHECK(apart({at(1, 1, 1), at(1, 1, 1)}, {at(1, 1, 3), at(1, 1, 3)}) == Approx(2.0));
}

TEST_CASE("no pair of points of two random lines is nearer than they are said to be, and some pair is as near") {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> place(-2.0, 2.0);
  for (int i = 0; i < 200; ++i) {
    const auto any = [&] { return at(place(random), place(random), place(random)); };
    const Segment a{any(), any()}, b{any(), any()};
    const double said = apart(a, b);
    double least = INFINITY;
    for (int s = 0; s <= 100; ++s)
      for (int t = 0; t <= 100; ++t)
        least = std::min(least, in(m, norm(a[0] + (s / 100.0) * (a[1] - a[0]) - (b[0] + (t / 100.0) * (b[1] - b[0])))));
    CHECK(said <= least + 1e-12);
    CHECK(said >= least - 0.06);  // between the points of the grid
  }
}
