// The quantities of the program, checked by the compiler (Boost.Units, SI inside).
//
// Every value that crosses a function is one of these types. A bare double with its unit in the name lives only
// between the two neighbouring lines of a kernel or of an equation that is tied to units:
//
//   const double f_c_psi = in(psi, f_c);
//   const Stress f_r = 7.5 * std::sqrt(f_c_psi) * psi;
//
// Named units are constants of their quantity: `20.0 * MPa` is a Stress, `in(MPa, f_c)` the number of them.
#pragma once

#include <cmath>

#include <boost/units/absolute.hpp>
#include <boost/units/cmath.hpp>
#include <boost/units/pow.hpp>
#include <boost/units/quantity.hpp>
#include <boost/units/systems/si.hpp>
#include <boost/units/systems/si/mass_density.hpp>

namespace firstpick {

namespace bu = boost::units;

using Length = bu::quantity<bu::si::length>;
using Area = bu::quantity<bu::si::area>;
using Volume = bu::quantity<bu::si::volume>;
using Mass = bu::quantity<bu::si::mass>;
using Density = bu::quantity<bu::si::mass_density>;
using Force = bu::quantity<bu::si::force>;
using Stress = bu::quantity<bu::si::pressure>;   // also a pressure: adhesion, wind
using Moment = bu::quantity<bu::si::energy>;     // force x length is energy-typed in Boost.Units; si::torque is not
using Angle = bu::quantity<bu::si::plane_angle>; // radians inside; degrees at the edges
using Duration = bu::quantity<bu::si::time>;
using Speed = bu::quantity<bu::si::velocity>;
using Acceleration = bu::quantity<bu::si::acceleration>;
using Temperature = bu::quantity<bu::absolute<bu::si::temperature>>;
using Stiffness = decltype(Force{} / Length{});
using Inertia = decltype(Mass{} * Area{});       // mass moment of inertia about an axis
using Ratio = bu::quantity<bu::si::dimensionless>;

// Powers that homogeneous laws do not need and empirical ones do: h_ef^1.5, sqrt(f_c).
// Halves by the square root: std::pow takes three times as long as all the rest of a breakout strength.
template <long Numerator, long Denominator, class Q>
auto power(const Q& q) {
  using Exponent = bu::static_rational<Numerator, Denominator>;
  if constexpr (Numerator == 3 && Denominator == 2)
    return bu::power_typeof_helper<Q, Exponent>::type::from_value(q.value() * std::sqrt(q.value()));
  else
    return bu::pow<Exponent>(q);
}
template <class Q>
auto root(const Q& q) {
  return bu::sqrt(q);
}

// Dimensions of the coefficients in empirical anchor formulas, so that the compiler checks the whole formula.
using RootStress = decltype(root(Stress{}));                                            // k in k sqrt(f_c) -> stress
using BreakoutCoefficient = decltype(Force{} / (root(Stress{}) * power<3, 2>(Length{})));     // k_c sqrt(f_c) h^(3/2)
using DeepBreakoutCoefficient = decltype(Force{} / (root(Stress{}) * power<5, 3>(Length{}))); // sqrt(f_c) h^(5/3)

constexpr Length m = Length::from_value(1.0);
constexpr Length mm = Length::from_value(1e-3);
constexpr Length cm = Length::from_value(1e-2);
constexpr Length inch = Length::from_value(0.0254);
constexpr Length ft = Length::from_value(0.3048);
constexpr Length yard = Length::from_value(0.9144);
constexpr Area m2 = Area::from_value(1.0);
constexpr Area mm2 = Area::from_value(1e-6);
constexpr Area in2 = Area::from_value(0.0254 * 0.0254);
constexpr Area ft2 = Area::from_value(0.3048 * 0.3048);
constexpr Volume m3 = Volume::from_value(1.0);
constexpr Volume ft3 = Volume::from_value(0.3048 * 0.3048 * 0.3048);
constexpr Mass kg = Mass::from_value(1.0);
constexpr Mass tonne = Mass::from_value(1000.0);
constexpr double pound_in_kg = 0.45359237;          // exact by definition (international pound, 1959)
constexpr double standard_gravity_m_per_s2 = 9.80665;  // exact by definition (CGPM 1901)
constexpr Mass lb_mass = Mass::from_value(pound_in_kg);
constexpr Mass short_ton = Mass::from_value(2000 * pound_in_kg);
constexpr Mass long_ton = Mass::from_value(2240 * pound_in_kg);
constexpr Acceleration standard_gravity = Acceleration::from_value(standard_gravity_m_per_s2);
constexpr Force newton = Force::from_value(1.0);
constexpr Force kN = Force::from_value(1e3);
constexpr Force lbf = Force::from_value(pound_in_kg * standard_gravity_m_per_s2);
constexpr Force kip = Force::from_value(1e3 * pound_in_kg * standard_gravity_m_per_s2);
constexpr Force kgf = Force::from_value(standard_gravity_m_per_s2);
constexpr Force tf = Force::from_value(1e3 * standard_gravity_m_per_s2);
constexpr Stress Pa = Stress::from_value(1.0);
constexpr Stress kPa = Stress::from_value(1e3);
constexpr Stress MPa = Stress::from_value(1e6);
constexpr Stress psi = Stress::from_value(pound_in_kg * standard_gravity_m_per_s2 / (0.0254 * 0.0254));
constexpr Stress ksi = Stress::from_value(1e3 * pound_in_kg * standard_gravity_m_per_s2 / (0.0254 * 0.0254));
constexpr Stress psf = Stress::from_value(pound_in_kg * standard_gravity_m_per_s2 / (0.3048 * 0.3048));
constexpr Density kg_per_m3 = Density::from_value(1.0);
constexpr Density lb_per_ft3 = Density::from_value(pound_in_kg / (0.3048 * 0.3048 * 0.3048));
constexpr Angle radian = Angle::from_value(1.0);
constexpr Angle deg = Angle::from_value(3.14159265358979323846 / 180.0);
constexpr Duration second = Duration::from_value(1.0);
constexpr Duration minute = Duration::from_value(60.0);
constexpr Duration hour = Duration::from_value(3600.0);
constexpr Duration day = Duration::from_value(86400.0);
constexpr Speed m_per_s = Speed::from_value(1.0);
constexpr Speed m_per_min = Speed::from_value(1.0 / 60.0);
constexpr Speed ft_per_min = Speed::from_value(0.3048 / 60.0);

// How many of `unit` there are in `q`. A wrong dimension does not compile.
template <class Q>
constexpr double in(Q unit, Q q) {
  return q.value() / unit.value();
}

template <class Q>
bool is_finite(const Q& q) {
  return std::isfinite(q.value());
}
inline bool is_finite(double number) { return std::isfinite(number); }

inline double sine(Angle a) { return std::sin(a.value()); }
inline double cosine(Angle a) { return std::cos(a.value()); }

}  // namespace firstpick
