// AISC Design Guide 1, 2nd ed., table 3.2 (p. 21): pullout of headed rods, 0.7 x 8 A_brg f'c, in kip.
// Quoted at second hand. The copy labels the columns with grades of steel; the numbers are those of f'c 3,
// 4 and 5 ksi. Tolerance: half a unit of the last printed digit of the force, and of A_brg, from which it
// was not computed as printed.
//
// Outside  us insert-pullout

#include <array>

#include <catch2/catch.hpp>

#include "resistances/pullout.hpp"
#include "support/assessed.hpp"
#include "support/headed_face.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

struct Row {
  double d_a_in, A_brg_in2, A_brg_half_digit, at_3_ksi, at_4_ksi, at_5_ksi;
  std::array<double, 3> force_half_digit;
};
constexpr std::array<double, 3> tenths{0.05, 0.05, 0.05};
constexpr Row table_3_2[] = {
    {0.625, 0.689, 0.0005, 11.6, 15.4, 19.3, tenths},
    {0.75, 0.906, 0.0005, 15.2, 20.3, 25.4, tenths},
    {0.875, 1.22, 0.005, 20.5, 27.3, 34.1, tenths},
    {1.0, 1.50, 0.005, 25.2, 33.6, 42.0, tenths},
    {1.125, 1.81, 0.005, 30.4, 40.5, 50.7, tenths},
    {1.25, 2.24, 0.005, 37.7, 50.2, 62.8, tenths},
    {1.5, 3.13, 0.005, 52.6, 70.1, 87.7, tenths},
    {2.0, 5.35, 0.005, 90.0, 120.0, 150.0, {0.05, 0.5, 0.5}},
};

}  // namespace

TEST_CASE("table 3.2, p. 21: pullout of headed rods in cracked concrete, phi 0.70") {
  const double phi = 0.7;
  for (const Row& row : table_3_2) {
    const std::array<double, 3> printed{row.at_3_ksi, row.at_4_ksi, row.at_5_ksi};
    for (std::size_t i = 0; i < printed.size(); ++i) {
      const double f_c_ksi = 3.0 + static_cast<double>(i);
      CAPTURE(row.d_a_in, row.A_brg_in2, f_c_ksi);
      HeadedFace face = wide_face();
      HeadedInsert& rod = face.add("rod", 0.0 * inch, 0.0 * inch);
      rod.A_brg = row.A_brg_in2 * in2;
      Trace trace;
      const Force N_pn = assessed(pullout(rod, f_c_ksi * ksi, us_rules().headed, trace)).value;
      const double from_area = phi * 8.0 * f_c_ksi * row.A_brg_half_digit;
      CHECK(phi * in(kip, N_pn) ==
            Approx(printed[i]).margin(row.force_half_digit[i] + from_area).epsilon(0.0));
    }
  }
}
