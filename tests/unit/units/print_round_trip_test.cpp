// What is printed is read back as the same quantity within the printed precision, on the safe side when it
// was rounded to a side. Over random quantities of every kind.

#include <catch2/catch.hpp>

#include <rapidcheck.h>
#include <cmath>
#include <cstdlib>
#include <string>

#include "units/parse.hpp"
#include "units/print.hpp"

using namespace firstpick;

namespace {

constexpr double noise = 2e-9;          // what print() takes for noise, twice
constexpr double three_figures = 0.01;  // the coarsest step of three figures, of 1.00
constexpr double two_steps_of_a_clock =
    2.0 / 60.0;  // two minutes in an hour: the coarsest step of a duration

// The same quantities in every run.
[[maybe_unused]] const int seed_is_set = setenv("RC_PARAMS", "seed=811 max_success=500", 1);

// A size between 1e-6 and 1e9 of the unit, each power of ten as likely as the next.
template <class Q>
Q any(Q unit) {
  const double exponent = *rc::gen::map(rc::gen::inRange(-6000, 9000), [](int n) { return n / 1000.0; });
  const bool minus = *rc::gen::arbitrary<bool>();
  return Q::from_value((minus ? -1.0 : 1.0) * std::pow(10.0, exponent) * unit.value());
}

template <class Q>
Q printed_and_read(Q q, UnitSystem system, Rounding rounding) {
  const std::string text = print(q, system, rounding);
  const auto read = parse<Q>(text);
  RC_ASSERT(std::holds_alternative<Q>(read));
  return std::get<Q>(read);
}

// `relative`, `absolute`: the coarsest step of the printed form.
template <class Q>
void survives(Q unit, double relative, Q absolute) {
  const Q q = any(unit);
  for (const UnitSystem system : {UnitSystem::us, UnitSystem::si}) {
    const double size = std::abs(q.value());
    const double step = std::max(relative * size, absolute.value()) * (1.0 + noise);
    const double near = printed_and_read(q, system, Rounding::nearest).value();
    const double above = std::abs(printed_and_read(q, system, Rounding::up).value());
    const double below = std::abs(printed_and_read(q, system, Rounding::down).value());
    RC_ASSERT(std::abs(near - q.value()) <= step / 2.0 + noise * size);
    RC_ASSERT(above >= size * (1.0 - noise));
    RC_ASSERT(above <= size + step);
    RC_ASSERT(below <= size * (1.0 + noise));
    RC_ASSERT(below >= size - step);
  }
}

template <class Q>
void holds(const std::string& what, Q unit, double relative, Q absolute = Q{}) {
  CAPTURE(what);
  CHECK(rc::check(what, [&] { survives(unit, relative, absolute); }));
}

}  // namespace

TEST_CASE("printed and read again: all but temperatures") {
  holds("length", m, three_figures, inch / 16.0);
  holds("area", m2, three_figures);
  holds("volume", m3, three_figures);
  holds("mass", kg, three_figures);
  holds("density", kg_per_m3, three_figures);
  holds("force", kN, three_figures);
  holds("stress", MPa, three_figures);
  holds("moment", kN * m, three_figures);
  holds("angle", radian, 0.0, 0.1 * deg);
  holds("duration", hour, two_steps_of_a_clock);
  holds("speed", m_per_s, three_figures);
  holds("acceleration", standard_gravity, three_figures);
  holds("ratio", Ratio{1.0}, three_figures);
  holds("stiffness", kN / mm, three_figures);
}

TEST_CASE("printed and read again: temperatures to a tenth of a degree") {
  CHECK(rc::check("temperature", [] {
    const double kelvin = *rc::gen::map(rc::gen::inRange(200000, 400000), [](int n) { return n / 1000.0; });
    const Temperature q = Temperature::from_value(kelvin);
    for (const UnitSystem system : {UnitSystem::us, UnitSystem::si})
      for (const Rounding rounding : {Rounding::nearest, Rounding::up, Rounding::down}) {
        const double step_K = rounding == Rounding::nearest ? 0.05 : 0.1;
        RC_ASSERT(std::abs(printed_and_read(q, system, rounding).value() - kelvin) <= step_K + 1e-9);
      }
  }));
}

TEST_CASE("a utilization is printed on its own side of 1 and never below its value") {
  CHECK(rc::check("utilization", [] {
    const double exponent = *rc::gen::map(rc::gen::inRange(-16000, 1000), [](int n) { return n / 1000.0; });
    const bool above = *rc::gen::arbitrary<bool>();
    const double u = above ? 1.0 + std::pow(10.0, exponent) : 1.0 / (1.0 + std::pow(10.0, exponent));
    const double printed = std::stod(print_utilization(u));
    RC_ASSERT((printed > 1.0) == (u > 1.0));
    RC_ASSERT(printed >= u * (1.0 - noise));
    RC_ASSERT(printed <= u + 0.0101);
  }));
}
