#include "units/print.hpp"

#include <cmath>
#include <span>

#include <fmt/format.h>

#include "units/decimal_text.hpp"

namespace firstpick {
namespace {

// A unit of a kind of quantity, used from so many of it upwards. Largest first; the last starts at zero.
struct PrintUnit {
  const char* name;
  double si;
  double from;
};

constexpr double g = standard_gravity_m_per_s2;
constexpr double ft2_si = ft2.value(), ft3_si = ft3.value();

constexpr PrintUnit length_us[] = {{"ft", ft.value(), 10.0}, {"in", inch.value(), 0.0}};
constexpr PrintUnit length_si[] = {{"m", 1.0, 10.0}, {"mm", mm.value(), 0.0}};
constexpr PrintUnit area_us[] = {{"ft2", ft2_si, 10.0}, {"in2", in2.value(), 0.0}};
constexpr PrintUnit area_si[] = {{"m2", 1.0, 1.0}, {"mm2", mm2.value(), 0.0}};
constexpr PrintUnit volume_us[] = {{"ft3", ft3_si, 0.0}};
constexpr PrintUnit volume_si[] = {{"m3", 1.0, 0.0}};
constexpr PrintUnit mass_us[] = {{"lb", lb_mass.value(), 0.0}};
constexpr PrintUnit mass_si[] = {{"t", tonne.value(), 10.0}, {"kg", 1.0, 0.0}};
constexpr PrintUnit density_us[] = {{"lb/ft3", lb_per_ft3.value(), 0.0}};
constexpr PrintUnit density_si[] = {{"kg/m3", 1.0, 0.0}};
constexpr PrintUnit force_us[] = {{"kip", kip.value(), 10.0}, {"lb", lbf.value(), 0.0}};
constexpr PrintUnit force_si[] = {{"kN", kN.value(), 1.0}, {"N", 1.0, 0.0}};
constexpr PrintUnit stress_us[] = {
    {"ksi", ksi.value(), 20.0}, {"psi", psi.value(), 1.0}, {"psf", psf.value(), 0.0}};
constexpr PrintUnit stress_si[] = {{"MPa", MPa.value(), 0.1}, {"kPa", kPa.value(), 0.0}};
constexpr PrintUnit moment_us[] = {{"kip ft", kip.value() * ft.value(), 1.0},
                                   {"lb ft", lbf.value() * ft.value(), 0.0}};
constexpr PrintUnit moment_si[] = {{"kN m", 1e3, 1.0}, {"N m", 1.0, 0.0}};
constexpr PrintUnit speed_us[] = {{"ft/min", ft_per_min.value(), 0.0}};
constexpr PrintUnit speed_si[] = {{"m/s", 1.0, 0.0}};
constexpr PrintUnit acceleration_us[] = {{"ft/s2", ft.value(), 0.0}};
constexpr PrintUnit acceleration_si[] = {{"m/s2", 1.0, 0.0}};
constexpr PrintUnit stiffness_us[] = {{"kip/in", kip.value() / inch.value(), 1.0},
                                      {"lb/in", lbf.value() / inch.value(), 0.0}};
constexpr PrintUnit stiffness_si[] = {{"kN/mm", 1e6, 1.0}, {"N/mm", 1e3, 0.0}};

static_assert(lbf.value() == lb_mass.value() * g);

const PrintUnit& chosen(double si, std::span<const PrintUnit> units) {
  for (const PrintUnit& u : units.first(units.size() - 1))
    if (std::abs(si) >= u.from * u.si * (1.0 - 1e-9)) return u;  // 10 kip less noise is 10 kip
  return units.back();
}

template <class Q>
PrintedNumber number_in(Q q, UnitSystem system, std::span<const PrintUnit> us,
                        std::span<const PrintUnit> si) {
  const PrintUnit& unit = chosen(q.value(), system == UnitSystem::us ? us : si);
  return {q.value() / unit.si, unit.name};
}

constexpr int usual_figures = 3;

std::string with_unit(const std::string& number, std::string_view unit, double value) {
  return std::isfinite(value) ? fmt::format("{} {}", number, unit) : number;
}

template <class Q>
std::string with_usual_figures(Q q, UnitSystem system, Rounding rounding) {
  const PrintedNumber p = in_print_unit(q, system);
  return with_unit(figures_or_whole(p.value, usual_figures, rounding), p.unit, p.value);
}

template <class Q>
std::string with_needed_figures(Q q, UnitSystem system, Rounding rounding) {
  const PrintedNumber p = in_print_unit(q, system);
  return with_unit(without_trailing_zeros(figures_or_whole(p.value, usual_figures, rounding)), p.unit,
                   p.value);
}

template <class Q>
std::string with_one_decimal(Q q, UnitSystem system, Rounding rounding) {
  const PrintedNumber p = in_print_unit(q, system);
  return with_unit(fixed_decimals(p.value, 1, rounding), p.unit, p.value);
}

// 100 sixteenths -> "6 1/4 in"; feet are written as soon as there are any, with their inches even if 0.
std::string feet_and_inches(long long sixteenths) {
  constexpr long long per_foot = 192;  // sixteenths
  const long long feet = sixteenths / per_foot;
  const long long inches = sixteenths / 16 % 12;
  long long above = sixteenths % 16;
  long long below = 16;
  while (above != 0 && above % 2 == 0) above /= 2, below /= 2;

  std::string text = feet != 0 ? fmt::format("{} ft ", feet) : "";
  if (feet != 0 || inches != 0 || above == 0) text += fmt::format("{} ", inches);
  if (above != 0) text += fmt::format("{}/{} ", above, below);
  return text + "in";
}

// Sixteenths of an inch as on a tape; below an inch a size that is not on the tape keeps its decimals.
std::string length_on_the_tape(Length length, Rounding rounding) {
  const double size_in = std::abs(in(inch, length));
  const double tape = size_in * 16.0;
  const bool on_the_tape = std::abs(tape - std::round(tape)) <= 1e-9 * tape;
  constexpr double longest_ft = 1e6;
  if (!(size_in < longest_ft * 12.0) || (size_in < 1.0 && !on_the_tape))
    return with_usual_figures(length, UnitSystem::us, rounding);
  const double sixteenths = rounded_count(tape, rounding);
  const bool minus = length < Length{} && sixteenths > 0.0;
  return (minus ? "-" : "") + feet_and_inches(static_cast<long long>(sixteenths));
}

// Whole steps of a clock: seconds within the hour, minutes within two days, then hours.
std::string on_the_clock(Duration duration, Rounding rounding) {
  const double size_s = std::abs(duration.value());
  const double step_s = size_s < 3600.0 ? 1.0 : size_s < 48.0 * 3600.0 ? 60.0 : 3600.0;
  const auto seconds = static_cast<long long>(rounded_count(size_s / step_s, rounding) * step_s);
  const bool with_days = step_s == 3600.0;

  std::string text = duration < Duration{} ? "-" : "";
  const auto add = [&](long long n, const char* unit) {
    if (n != 0) text += fmt::format("{} {} ", n, unit);
  };
  if (with_days) add(seconds / 86400, "d");
  add(with_days ? seconds / 3600 % 24 : seconds / 3600, "h");
  add(seconds / 60 % 60, "min");
  add(seconds % 60, "s");
  text.pop_back();
  return text;
}

}  // namespace

PrintedNumber in_print_unit(Length q, UnitSystem s) { return number_in(q, s, length_us, length_si); }
PrintedNumber in_print_unit(Area q, UnitSystem s) { return number_in(q, s, area_us, area_si); }
PrintedNumber in_print_unit(Volume q, UnitSystem s) { return number_in(q, s, volume_us, volume_si); }
PrintedNumber in_print_unit(Mass q, UnitSystem s) { return number_in(q, s, mass_us, mass_si); }
PrintedNumber in_print_unit(Density q, UnitSystem s) { return number_in(q, s, density_us, density_si); }
PrintedNumber in_print_unit(Force q, UnitSystem s) { return number_in(q, s, force_us, force_si); }
PrintedNumber in_print_unit(Stress q, UnitSystem s) { return number_in(q, s, stress_us, stress_si); }
PrintedNumber in_print_unit(Moment q, UnitSystem s) { return number_in(q, s, moment_us, moment_si); }
PrintedNumber in_print_unit(Speed q, UnitSystem s) { return number_in(q, s, speed_us, speed_si); }
PrintedNumber in_print_unit(Acceleration q, UnitSystem s) {
  return number_in(q, s, acceleration_us, acceleration_si);
}
PrintedNumber in_print_unit(Stiffness q, UnitSystem s) { return number_in(q, s, stiffness_us, stiffness_si); }
PrintedNumber in_print_unit(Angle q, UnitSystem) { return {in(deg, q), "deg"}; }
PrintedNumber in_print_unit(Duration q, UnitSystem) { return {in(hour, q), "h"}; }
PrintedNumber in_print_unit(Ratio q, UnitSystem) { return {100.0 * q.value(), "%"}; }
PrintedNumber in_print_unit(Temperature q, UnitSystem s) {
  if (s == UnitSystem::us) return {q.value() * 9.0 / 5.0 - 459.67, "degF"};
  return {q.value() - 273.15, "degC"};
}

std::string print(Area q, UnitSystem s, Rounding r) { return with_usual_figures(q, s, r); }
std::string print(Volume q, UnitSystem s, Rounding r) { return with_usual_figures(q, s, r); }
std::string print(Mass q, UnitSystem s, Rounding r) { return with_usual_figures(q, s, r); }
std::string print(Density q, UnitSystem s, Rounding r) { return with_usual_figures(q, s, r); }
std::string print(Force q, UnitSystem s, Rounding r) { return with_usual_figures(q, s, r); }
std::string print(Stress q, UnitSystem s, Rounding r) { return with_usual_figures(q, s, r); }
std::string print(Moment q, UnitSystem s, Rounding r) { return with_usual_figures(q, s, r); }
std::string print(Speed q, UnitSystem s, Rounding r) { return with_usual_figures(q, s, r); }
std::string print(Acceleration q, UnitSystem s, Rounding r) { return with_usual_figures(q, s, r); }
std::string print(Stiffness q, UnitSystem s, Rounding r) { return with_usual_figures(q, s, r); }
std::string print(Ratio q, UnitSystem s, Rounding r) { return with_needed_figures(q, s, r); }
std::string print(Angle q, UnitSystem s, Rounding r) { return with_one_decimal(q, s, r); }

std::string print(Length q, UnitSystem s, Rounding r) {
  if (s == UnitSystem::us) return length_on_the_tape(q, r);
  const PrintedNumber p = in_print_unit(q, s);
  if (p.unit == "m") return with_unit(fixed_decimals(p.value, 3, r), p.unit, p.value);  // to the millimetre
  return with_needed_figures(q, s, r);
}

std::string print(Duration q, UnitSystem, Rounding r) {
  const double size_s = std::abs(q.value());
  constexpr double longest_s = 1e6 * 86400.0;
  if (size_s >= 60.0 && size_s < longest_s) return on_the_clock(q, r);
  if (size_s < 60.0)
    return with_unit(without_trailing_zeros(figures_or_whole(q.value(), usual_figures, r)), "s", q.value());
  return with_unit(figures_or_whole(in(day, q), usual_figures, r), "d", in(day, q));
}

std::string print(Temperature q, UnitSystem s, Rounding r) {
  if (q.value() < 1.0) return with_unit(figures_or_whole(q.value(), usual_figures, r), "K", q.value());
  const PrintedNumber p = in_print_unit(q, s);
  return with_unit(without_trailing_zeros(fixed_decimals(p.value, 1, r)), p.unit, p.value);
}

}  // namespace firstpick
