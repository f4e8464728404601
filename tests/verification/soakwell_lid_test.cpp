// A round soakwell lid of 800 kg, about 2 m across, on two inserts, that rolled over: WorkSafe WA, Safety Alert 10/2012.
//
// The alert gives weight, size and picks; 2400 kg/m3 and the pull of 10 kgf at the rim are assumed, and the angle of 13.6
// degrees is arithmetic from them, no publication. Tolerance: half a unit of the last printed digit.
//
// Computed roll-stability

#include <catch2/catch.hpp>

#include <cmath>

#include "demands/side_pull.hpp"

using namespace firstpick;

TEST_CASE("soakwell lid: 106 mm thick by its weight, rolls 13.6 degrees under 98 N at 1 m") {
  const double mass_kg = 800.0, radius_m = 1.0, density_kg_per_m3 = 2400.0;
  const double thickness_m = mass_kg / (M_PI * radius_m * radius_m * density_kg_per_m3);
  CHECK(thickness_m == Approx(0.1061).margin(0.00005));
  const Force weight = mass_kg * kg * standard_gravity;
  const Angle roll = demands::roll_under(Moment::from_value(98.0), weight, 0.0 * m, 0.053 * m);
  CHECK(in(deg, roll) == Approx(13.6).margin(0.05));
  CHECK(std::sin(roll.value()) == Approx(0.2357).margin(0.00005));
}
