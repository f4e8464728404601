// What must hold for every piece taken as a line: balance, mirror, superposition, splitting.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "support/beam_lines.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

constexpr int beams = 200;

BeamLine mirrored(const BeamLine& beam) {
  const Length end = beam.steps.back().to;
  BeamLine other;
  for (const BeamStep& step : beam.steps) {
    other.steps.insert(other.steps.begin(), step);
    other.steps.front().from = end - step.to;
    other.steps.front().to = end - step.from;
  }
  for (const BeamForce& force : beam.forces)
    other.forces.push_back({end - force.at, force.height, -force.along, force.up});
  return other;
}

// A pair of legs that press the piece together between its first and last force.
BeamLine with_thrust(BeamLine beam, double thrust_kN, double height_m) {
  beam.forces.front().along += thrust_kN * kN;
  beam.forces.back().along -= thrust_kN * kN;
  for (BeamForce& force : beam.forces) force.height = height_m * m;
  return beam;
}

double total_kN(const BeamLine& beam) {
  double sum = 0.0;
  for (const BeamStep& step : beam.steps) sum += in(kN, Force{step.load * (step.to - step.from)});
  return sum;
}

}  // namespace

TEST_CASE("supports carry the load and its moment") {
  BeamDice dice(1);
  for (int i = 0; i < beams; ++i) {
    const BeamLine beam = dice.stepped();
    const auto at_m = dice.supports(beam, 2 + i % 4);
    const BeamLine held = on_supports(beam, at_m);
    double force = 0.0, moment = 0.0;
    for (std::size_t s = 0; s < at_m.size(); ++s) {
      force += reaction_kN(held, s);
      moment += reaction_kN(held, s) * at_m[s];
    }
    for (const BeamStep& step : beam.steps) {
      const double load = in(kN, Force{step.load * (step.to - step.from)});
      force -= load;
      moment -= load * 0.5 * in(m, step.from + step.to);
    }
    CAPTURE(i);
    CHECK(force == Approx(0.0).margin(1e-9 * total_kN(beam)));
    CHECK(moment == Approx(0.0).margin(1e-8 * total_kN(beam)));
  }
}

TEST_CASE("a mirrored piece has mirrored stresses") {
  BeamDice dice(2);
  for (int i = 0; i < beams; ++i) {
    const BeamLine beam = dice.stepped();
    const BeamLine held = with_thrust(on_supports(beam, dice.supports(beam, 2 + i % 3)), dice.between(0.0, 30.0), 0.4);
    const BeamState one = state_of(held), other = state_of(mirrored(held));
    CAPTURE(i);
    // In pascals; margins of a thousandth of a newton metre and a tenth of a pascal for what is zero.
    CHECK(one.most_top_tension().top_stress.value() ==
          Approx(other.most_top_tension().top_stress.value()).epsilon(1e-8).margin(0.1));
    CHECK(one.most_bottom_tension().bottom_stress.value() ==
          Approx(other.most_bottom_tension().bottom_stress.value()).epsilon(1e-8).margin(0.1));
    CHECK(one.most_sagging().moment.value() == Approx(other.most_sagging().moment.value()).epsilon(1e-8).margin(1e-3));
    CHECK(one.most_hogging().moment.value() == Approx(other.most_hogging().moment.value()).epsilon(1e-8).margin(1e-3));
  }
}

TEST_CASE("moments of two loads add up") {
  BeamDice dice(3);
  for (int i = 0; i < beams; ++i) {
    BeamLine light = dice.stepped();
    BeamLine heavy = light, both = light;
    for (std::size_t s = 0; s < light.steps.size(); ++s) {
      heavy.steps[s].load = dice.between(1.0, 9.0) * kN / m;
      both.steps[s].load = light.steps[s].load + heavy.steps[s].load;
    }
    const auto at_m = dice.supports(light, 4);
    light = on_supports(light, at_m), heavy = on_supports(heavy, at_m), both = on_supports(both, at_m);
    const double end_m = in(m, both.steps.back().to);
    CAPTURE(i);
    for (const double at : at_m) {
      const double sum = moment_kNm(section_behind(state_of(light), at)) + moment_kNm(section_behind(state_of(heavy), at));
      CHECK(moment_kNm(section_behind(state_of(both), at)) ==
            Approx(sum).margin(1e-9 * total_kN(both) * end_m));
    }
  }
}

TEST_CASE("a step split in two changes nothing") {
  BeamDice dice(4);
  for (int i = 0; i < beams; ++i) {
    const BeamLine beam = dice.stepped();
    BeamLine split = beam;
    const BeamStep& whole = beam.steps.front();
    const Length middle = whole.from + dice.between(0.1, 0.9) * (whole.to - whole.from);
    split.steps.front().from = middle;
    split.steps.insert(split.steps.begin(), whole);
    split.steps.front().to = middle;
    const auto at_m = dice.supports(beam, 2 + i % 4);
    const BeamState one = state_of(on_supports(beam, at_m)), two = state_of(on_supports(split, at_m));
    CAPTURE(i);
    CHECK(one.most_sagging().moment.value() == Approx(two.most_sagging().moment.value()).epsilon(1e-8).margin(1e-3));
    CHECK(one.most_hogging().moment.value() == Approx(two.most_hogging().moment.value()).epsilon(1e-8).margin(1e-3));
  }
}

TEST_CASE("no section anywhere is worse than the extremes that are told") {
  BeamDice dice(5);
  for (int i = 0; i < beams; ++i) {
    const BeamLine beam = dice.stepped();
    const BeamLine held = on_supports(beam, dice.supports(beam, 2 + i % 3));
    const BeamState exact = state_of(held);
    BeamLine sampled = held;  // a force of nothing makes a section where it acts
    for (int n = 1; n < 400; ++n) sampled.forces.push_back(upward(beam.steps.back().to * (n / 400.0), Force{}));
    const BeamState fine = state_of(sampled);
    const double margin = 1e-9 * std::abs(fine.most_sagging().moment.value()) + 1e-6;
    CAPTURE(i);
    CHECK(fine.most_sagging().moment.value() <= exact.most_sagging().moment.value() + margin);
    CHECK(-fine.most_hogging().moment.value() <= -exact.most_hogging().moment.value() + margin);
    CHECK(fine.most_top_tension().top_stress.value() <= exact.most_top_tension().top_stress.value() + 1e-3);
  }
}

TEST_CASE("flatter legs above mid-depth never lower the tension below") {
  BeamDice dice(6);
  for (int i = 0; i < beams; ++i) {
    const BeamLine beam{{rectangle_step(0.0, 10.0, 0.4, dice.between(0.2, 0.8), 5.0)}, {}};
    const BeamLine held = on_supports(beam, {dice.between(0.5, 3.0), dice.between(7.0, 9.5)});
    const double thrust_kN = dice.between(0.0, 50.0), top_m = in(m, beam.steps.front().top);
    const auto tension = [&](double thrust) {
      return state_of(with_thrust(held, thrust, top_m)).most_bottom_tension().bottom_stress.value();
    };
    CAPTURE(i);
    CHECK(tension(thrust_kN) <= tension(1.5 * thrust_kN) + 1e-6);
  }
}
