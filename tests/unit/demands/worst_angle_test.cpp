// The search for the worst angle finds a maximum between its samples.

#include <catch2/catch.hpp>

#include <cmath>

#include "demands/worst_angle.hpp"

using namespace firstpick;
using namespace firstpick::demands;

TEST_CASE("samples hold both ends and are no farther apart than the step") {
  const auto all = angles_between(90.0 * deg, 0.0 * deg, 3.0 * deg);
  REQUIRE(all.size() == 31);
  CHECK(all.front() == Angle{});
  CHECK(in(deg, all.back()) == Approx(90.0));
  const auto odd = angles_between(10.0 * deg, 17.0 * deg, 3.0 * deg);
  REQUIRE(odd.size() == 4);
  for (std::size_t i = 1; i < odd.size(); ++i) CHECK(in(deg, odd[i] - odd[i - 1]) <= 3.0);
}

TEST_CASE("a smooth maximum, a kink, and one at either end are found") {
  const auto samples = angles_between(0.0 * deg, 90.0 * deg, 3.0 * deg);
  for (double peak = 0.4; peak < 90.0; peak += 7.3) {
    const auto smooth = worst_angle(samples, [&](Angle a) { return std::cos((a - peak * deg).value()); });
    CHECK(in(deg, smooth) == Approx(peak).margin(1e-5));
    const auto kink = worst_angle(samples, [&](Angle a) { return -std::abs(in(deg, a) - peak); });
    CHECK(in(deg, kink) == Approx(peak).margin(1e-5));
  }
  CHECK(worst_angle(samples, [](Angle a) { return a.value(); }) == samples.back());
  CHECK(worst_angle(samples, [](Angle a) { return -a.value(); }) == samples.front());
}

TEST_CASE("what is not a number is met wherever the search looks, at its first place and at its last") {
  const auto samples = angles_between(0.0 * deg, 90.0 * deg, 3.0 * deg);
  int last = 0;
  const Angle peak = worst_angle(samples, [&](Angle a) { return ++last, -std::abs(in(deg, a) - 40.3); });
  CHECK(in(deg, peak) == Approx(40.3).margin(1e-5));
  // 31 samples, two places between them, one more for each step from 6 degrees to 1e-7 rad, the place found:
  // ln(0.10472/1e-7)/ln(1.618034) = 28.8.
  CHECK(last == 31 + 2 + 29 + 1);
  for (int none = 1; none <= last; ++none) {
    int count = 0;
    Angle at{};
    const Angle met = worst_angle(samples, [&](Angle a) {
      if (++count != none) return -std::abs(in(deg, a) - 40.3);
      at = a;
      return std::nan("");
    });
    CAPTURE(none);
    CHECK(count == none + (none == 32 ? 1 : 0));  // the first two places are looked at together
    CHECK(met == at);
  }
}

TEST_CASE("what is not a number is met, not passed over") {
  const auto samples = angles_between(0.0 * deg, 90.0 * deg, 3.0 * deg);
  const auto found = worst_angle(samples, [](Angle a) { return in(deg, a) > 50.0 ? std::nan("") : 1.0; });
  CHECK(in(deg, found) > 50.0);
  // Between two samples, beside the largest of them.
  const auto narrow = worst_angle(samples, [](Angle a) {
    const double at = in(deg, a);
    return at > 87.6 && at < 88.9 ? std::nan("") : at < 87.6 ? 1.0 / (88.0 - at) : 0.0;
  });
  CHECK((in(deg, narrow) > 87.6 && in(deg, narrow) < 88.9));
}
