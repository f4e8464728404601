// Closed forms of a uniform beam on picks, with numbers computed from them beforehand by a separate script (three-moment
// equation and direct search for the best places); no publication.
//
//   two picks        at (sqrt(2) - 1)/2 from each end: hogging over the picks equals sagging between
//   pick and ground  pick at 1 - 1/sqrt(2) from the lifted end
//   three, four      rigid and level: three-moment equation; equalised: equal forces
//   inclined legs    H = V cot(angle), acting e above mid-depth: N = -H, moment + H e between the picks
//
// Moments in w L^2, reactions in w L. Tolerance: half a unit of the last printed digit.
//
// Computed piece-cracking

#include <catch2/catch.hpp>

#include <cmath>

#include "support/beam_lines.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

double hogging(const BeamState& state) { return -moment_kNm(state.most_hogging()); }
double sagging(const BeamState& state) { return moment_kNm(state.most_sagging()); }

BeamLine equalised(const std::vector<double>& at_m) {
  BeamLine beam = unit_beam();
  for (const double at : at_m) beam.forces.push_back(upward(at * m, 1.0 / static_cast<double>(at_m.size()) * kN));
  return beam;
}

}  // namespace

TEST_CASE("two picks at 0.20711 from each end") {
  const double c = 0.5 * (std::sqrt(2.0) - 1.0);
  CHECK(c == Approx(0.20711).margin(5e-6));
  const BeamState state = state_of(on_supports(unit_beam(), {c, 1.0 - c}));
  CHECK(hogging(state) == Approx(0.0214466).margin(5e-8));
  CHECK(sagging(state) == Approx(0.0214466).margin(5e-8));
}

TEST_CASE("two picks elsewhere: -w c^2/2, w L^2/8 - w L c/2") {
  const BeamState nearer = state_of(on_supports(unit_beam(), {0.20, 0.80}));
  CHECK(hogging(nearer) == Approx(0.0200).margin(5e-5));
  CHECK(sagging(nearer) == Approx(0.0250).margin(5e-5));
  const BeamState farther = state_of(on_supports(unit_beam(), {0.25, 0.75}));
  CHECK(hogging(farther) == Approx(0.03125).margin(5e-6));
  CHECK(moment_kNm(section_behind(farther, 0.5)) == Approx(0.0).margin(5e-6));
}

TEST_CASE("one pick and the ground at the other end") {
  const BeamLine beam = on_supports(unit_beam(), {0.0, 1.0 / std::sqrt(2.0)});
  CHECK(reaction_kN(beam, 1) == Approx(0.70711).margin(5e-6));
  CHECK(reaction_kN(beam, 0) == Approx(0.29289).margin(5e-6));
  CHECK(hogging(state_of(beam)) == Approx(0.0428932).margin(5e-8));
  CHECK(sagging(state_of(beam)) == Approx(0.0428932).margin(5e-8));
}

TEST_CASE("three picks, rigid and level") {
  const BeamLine beam = on_supports(unit_beam(), {0.14495, 0.5, 1.0 - 0.14495});
  CHECK(reaction_kN(beam, 0) == Approx(0.32247).margin(1.5e-5));  // the place is rounded to 5 digits
  CHECK(reaction_kN(beam, 1) == Approx(0.35505).margin(1.5e-5));
  CHECK(hogging(state_of(beam)) == Approx(0.0105051).margin(1e-6));  // the place is rounded to 5 digits
  CHECK(sagging(state_of(beam)) == Approx(0.00525).margin(5e-6));
}

TEST_CASE("three picks, equalised") {
  CHECK(hogging(state_of(equalised({0.13808, 0.5, 1.0 - 0.13808}))) == Approx(0.0095292).margin(5e-6));
  // In closed form: c^2 + 2 c/3 = 1/9, c = 0.138071, M = c^2/2 = 0.0095318. The search stopped a little beside it.
  const double c = (std::sqrt(8.0) - 2.0) / 6.0;
  CHECK(hogging(state_of(equalised({c, 0.5, 1.0 - c}))) == Approx(0.0095318).margin(5e-8));
}

TEST_CASE("four picks, rigid and level") {
  const BeamLine best = on_supports(unit_beam(), {0.10545, 0.38727, 1.0 - 0.38727, 1.0 - 0.10545});
  CHECK(reaction_kN(best, 0) == Approx(0.24636).margin(5e-6));
  CHECK(reaction_kN(best, 1) == Approx(0.25364).margin(5e-6));
  CHECK(hogging(state_of(best)) == Approx(0.0055597).margin(1e-6));

  const BeamLine near = on_supports(unit_beam(), {0.104, 0.396, 0.604, 0.896});
  const BeamState state = state_of(near);
  CHECK(reaction_kN(near, 0) == Approx(0.24897).margin(5e-6));
  CHECK(reaction_kN(near, 1) == Approx(0.25103).margin(5e-6));
  CHECK(moment_kNm(section_behind(state, 0.104)) == Approx(-0.00541).margin(5e-6));
  CHECK(moment_kNm(section_behind(state, 0.396)) == Approx(-0.00571).margin(5e-6));
  CHECK(sagging(state) == Approx(0.0051).margin(5e-5));

  const BeamLine equal_moments = on_supports(unit_beam(), {0.107, 0.369, 0.631, 0.893});
  CHECK(reaction_kN(equal_moments, 0) == Approx(0.238).margin(5e-4));
  CHECK(reaction_kN(equal_moments, 1) == Approx(0.262).margin(5e-4));
  CHECK(hogging(state_of(equal_moments)) == Approx(0.00572).margin(2e-5));  // places rounded to 3 digits
}

TEST_CASE("four picks, equalised") {
  CHECK(hogging(state_of(equalised({0.10356, 0.39620, 0.60380, 0.89644}))) == Approx(0.0053613).margin(2e-6));  // places and M searched
}

TEST_CASE("a running block on the second and third of three picks: L 10 m, w 8 kN/m") {
  BeamLine beam{{rectangle_step(0.0, 10.0, 0.3, 0.4, 8.0)}, {}};
  const double block_kN = 80.0 * (5.0 - 1.5) / ((5.0 - 1.5) + (8.5 - 1.5));
  CHECK(block_kN == Approx(26.667).margin(5e-4));
  beam.forces = {upward(1.5 * m, (80.0 - 2.0 * block_kN) * kN), upward(5.0 * m, block_kN * kN),
                 upward(8.5 * m, block_kN * kN)};
  const BeamState state = state_of(beam);
  CHECK(moment_kNm(section_behind(state, 1.5)) == Approx(-9.000).margin(5e-4));
  CHECK(moment_kNm(section_behind(state, 5.0)) == Approx(-6.667).margin(5e-4));
  CHECK(moment_kNm(section_behind(state, 8.5)) == Approx(-9.000).margin(5e-4));
  CHECK(sagging(state) == Approx(4.444).margin(5e-4));
}

TEST_CASE("beam 12 m x 0.4 x 0.6 m on inclined legs, density 2450, c 2.4852 m") {
  struct Row {
    double angle_deg, leg_kN, thrust_kN, moment_kNm, bottom_MPa, top_MPa;
  };
  const double w = 0.4 * 0.6 * 2450.0 * standard_gravity_m_per_s2 / 1000.0, c = 2.4852, V = 0.5 * 12.0 * w;
  CHECK(w == Approx(5.76631).margin(5e-6));
  CHECK(V == Approx(34.59786).margin(2e-5));
  for (const Row& row : {Row{90, 34.598, 0.0, 17.811, 0.7421, -0.7421}, Row{75, 35.818, 9.270, 20.592, 0.8194, -0.8966},
                         Row{60, 39.950, 19.975, 23.8035, 0.9086, -1.0750},
                         Row{45, 48.929, 34.598, 28.190, 1.0304, -1.3188},
                         Row{30, 69.196, 59.925, 35.789, 1.2415, -1.7409}}) {
    CAPTURE(row.angle_deg);
    const double angle = row.angle_deg * deg.value();
    const double T = V / std::sin(angle), H = T * std::cos(angle);
    CHECK(T == Approx(row.leg_kN).margin(5e-4));
    CHECK(H == Approx(row.thrust_kN).margin(5e-4));
    BeamLine beam{{rectangle_step(0.0, 12.0, 0.4, 0.6, w)}, {}};
    beam.forces = {{c * m, 0.6 * m, H * kN, V * kN}, {(12.0 - c) * m, 0.6 * m, -H * kN, V * kN}};
    const BeamState state = state_of(beam);
    const BeamSection& middle = state.most_sagging();
    CHECK(moment_kNm(middle) == Approx(row.moment_kNm).margin(5e-4));
    CHECK(in(MPa, middle.bottom_stress) == Approx(row.bottom_MPa).margin(5e-5));
    CHECK(in(MPa, middle.top_stress) == Approx(row.top_MPa).margin(5e-5));
    if (row.angle_deg != 60) continue;
    CHECK(moment_kNm(section_behind(state, c)) == Approx(-11.8145).margin(5e-5));
    CHECK(in(MPa, section_behind(state, c).top_stress) == Approx(0.4090).margin(5e-5));
    CHECK(in(MPa, section_behind(state, c).bottom_stress) == Approx(-0.5755).margin(5e-5));
    CHECK(in(MPa, section_before(state, c).top_stress) == Approx(0.7420).margin(5e-5));
  }
}
