// The one printer of quantities, in the units and with the figures a precast shop reads.
//
// Rounding is against the lift: a demand is printed with Rounding::up, a resistance with Rounding::down.
// A value within a relative 1e-9 of a printable number counts as that number, so that floating-point noise
// (0.1 + 0.2) does not push the last figure. What is not finite prints as words, never as a digit.
// What is printed can be read back by units/parse.hpp (but for sizes at the ends of a double, below 1e-300).
#pragma once

#include <string>

#include "units/quantity.hpp"

namespace firstpick {

enum class UnitSystem { us, si };
// up: away from zero, for demands; down: toward zero, for resistances.
enum class Rounding { nearest, up, down };

std::string print(Length, UnitSystem, Rounding = Rounding::nearest);  // 8 ft 4 1/2 in | 2100 mm
std::string print(Area, UnitSystem, Rounding = Rounding::nearest);  // 0.910 in2, 48.0 ft2 | 587 mm2, 4.46 m2
std::string print(Volume, UnitSystem, Rounding = Rounding::nearest);   // 128 ft3 | 3.62 m3
std::string print(Mass, UnitSystem, Rounding = Rounding::nearest);     // 19200 lb | 8709 kg, 12.4 t
std::string print(Density, UnitSystem, Rounding = Rounding::nearest);  // 150 lb/ft3 | 2403 kg/m3
std::string print(Force, UnitSystem, Rounding = Rounding::nearest);    // 350 lb, 19.2 kip | 350 N, 85.4 kN
std::string print(Stress, UnitSystem,
                  Rounding = Rounding::nearest);  // 2500 psi, 20.0 psf | 17.2 MPa, 0.958 kPa
std::string print(Moment, UnitSystem, Rounding = Rounding::nearest);        // 3.20 kip ft | 4.34 kN m
std::string print(Angle, UnitSystem, Rounding = Rounding::nearest);         // 60.0 deg
std::string print(Duration, UnitSystem, Rounding = Rounding::nearest);      // 14 h 30 min
std::string print(Speed, UnitSystem, Rounding = Rounding::nearest);         // 24.0 ft/min | 0.122 m/s
std::string print(Acceleration, UnitSystem, Rounding = Rounding::nearest);  // 32.2 ft/s2 | 9.81 m/s2
std::string print(Temperature, UnitSystem, Rounding = Rounding::nearest);   // 68 degF | 20 degC
std::string print(Ratio, UnitSystem, Rounding = Rounding::nearest);         // 3 %
std::string print(Stiffness, UnitSystem, Rounding = Rounding::nearest);     // 12.0 kip/in | 2.10 kN/mm

// As print(), with as many figures as it takes not to read like `limit`: 19.96 MPa is not told as "20.0 MPa
// is below 20.0 MPa".
template <class Q>
std::string print_apart(Q q, Q limit, UnitSystem);

// A number without a unit, `significant_figures` of them (1 to 17): 3 figures give "19.2", "0.0310", "1230".
std::string print_number(double number, int significant_figures, Rounding = Rounding::nearest);

// Demand over resistance, two decimals rounded up. More than 1 never reads "1.00": between 1 and 1.01 it
// shows the decimals it needs ("1.004"). At most 1 never reads more than "1.00".
std::string print_utilization(double utilization);

// The same choice of unit as print(), as a number for columns and drawings. Lengths in us are in inches or
// feet, durations in hours.
struct PrintedNumber {
  double value;
  std::string unit;
};
PrintedNumber in_print_unit(Length, UnitSystem);
PrintedNumber in_print_unit(Area, UnitSystem);
PrintedNumber in_print_unit(Volume, UnitSystem);
PrintedNumber in_print_unit(Mass, UnitSystem);
PrintedNumber in_print_unit(Density, UnitSystem);
PrintedNumber in_print_unit(Force, UnitSystem);
PrintedNumber in_print_unit(Stress, UnitSystem);
PrintedNumber in_print_unit(Moment, UnitSystem);
PrintedNumber in_print_unit(Angle, UnitSystem);
PrintedNumber in_print_unit(Duration, UnitSystem);
PrintedNumber in_print_unit(Speed, UnitSystem);
PrintedNumber in_print_unit(Acceleration, UnitSystem);
PrintedNumber in_print_unit(Temperature, UnitSystem);
PrintedNumber in_print_unit(Ratio, UnitSystem);
PrintedNumber in_print_unit(Stiffness, UnitSystem);

template <class Q>
std::string print_apart(Q q, Q limit, UnitSystem system) {
  std::string text = print(q, system);
  constexpr int all_figures = 17;  // tell any two doubles apart
  const PrintedNumber number = in_print_unit(q, system), other = in_print_unit(limit, system);
  for (int figures = 4; text == print(limit, system) && q != limit && figures <= all_figures; ++figures) {
    const std::string digits = print_number(number.value, figures);
    if (digits != print_number(other.value, figures)) text = digits + " " + number.unit;
  }
  return text;
}

}  // namespace firstpick
