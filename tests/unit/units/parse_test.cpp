// What people write is read, and means what they meant. Expected values stand as a plain number of one unit.

#include <catch2/catch.hpp>

#include <clocale>
#include <cmath>
#include <string>
#include <string_view>

#include "unit/units/reading.hpp"
#include "units/parse.hpp"

using namespace firstpick;
using firstpick::tests::read_as;

namespace {

template <class Q>
struct Written {
  std::string_view text;
  Q meant;
};

template <class Q, std::size_t count>
void reads_as_meant(const Written<Q> (&cases)[count]) {
  for (const auto& [text, meant] : cases) {
    CAPTURE(text, meant.value());
    // Two spellings of one quantity may differ by the rounding of one multiplication, not by more.
    CHECK(read_as<Q>(text).value() == Approx(meant.value()).epsilon(1e-15).margin(0.0));
  }
}

}  // namespace

TEST_CASE("lengths in feet and inches, as on a drawing") {
  const Written<Length> cases[] = {
      {"8 ft 4 in", 100.0 * inch},
      {"8'-4\"", 100.0 * inch},
      {"8' 4\"", 100.0 * inch},
      {"8'4\"", 100.0 * inch},
      {"8' - 4\"", 100.0 * inch},
      {"8 ft-4 in", 100.0 * inch},
      {"8 ft - 4 in", 100.0 * inch},
      {"8' 4 1/2\"", 100.5 * inch},
      {"8'-4 1/2\"", 100.5 * inch},
      {"8'-4-1/2\"", 100.5 * inch},
      {"8 ft 4.5 in", 100.5 * inch},
      {"8 ft 4-1/2 in", 100.5 * inch},
      {"0'-4\"", 4.0 * inch},
      {"8'-0\"", 96.0 * inch},
      {"8'-0 1/2\"", 96.5 * inch},
      {"8 ft 11 15/16 in", 107.9375 * inch},
      {"8'", 8.0 * ft},
      {"4\"", 4.0 * inch},
      {"8 feet 4 inches", 100.0 * inch},
      {"1 foot 1 inch", 13.0 * inch},
      {"4 in.", 4.0 * inch},
      {"4in", 4.0 * inch},
      {"5/8 in", 0.625 * inch},
      {"1 1/2 in", 1.5 * inch},
      {"1-1/2 in", 1.5 * inch},
      {"3/2 in", 1.5 * inch},
      {"1 1/2\"", 1.5 * inch},
      {"0.75 in", 0.75 * inch},
      {".75 in", 0.75 * inch},
      {"8.5 ft", 102.0 * inch},
      {"8 1/2 ft", 102.0 * inch},
      {"2 yd", 72.0 * inch},
  };
  reads_as_meant(cases);
}

TEST_CASE("lengths in metric units") {
  const Written<Length> cases[] = {
      {"2.1 m", 2.1 * m},      {"2100 mm", 2.1 * m}, {"210 cm", 2.1 * m},    {"1.5e3 mm", 1.5 * m},
      {"1.5E3 mm", 1.5 * m},   {"1e-3 m", 1.0 * mm}, {"2.1m", 2.1 * m},      {"  2.1  m  ", 2.1 * m},
      {"\t2.1\tm", 2.1 * m},   {"5. m", 5.0 * m},    {"1.5e+3 mm", 1.5 * m}, {"0.3 km", 300.0 * m},
      {"00012 mm", 12.0 * mm},
  };
  reads_as_meant(cases);
}

TEST_CASE("a sign belongs to the whole quantity") {
  const Written<Length> cases[] = {
      {"-4 in", -4.0 * inch}, {"-8 ft 4 in", -100.0 * inch}, {"-1 1/2 in", -1.5 * inch},
      {"+4 in", 4.0 * inch},  {"-8'-4\"", -100.0 * inch},    {"-2.1 m", -2.1 * m},
  };
  reads_as_meant(cases);
}

TEST_CASE("zero is read, and minus zero is zero") {
  CHECK(read_as<Length>("0 in") == Length{});
  CHECK_FALSE(std::signbit(read_as<Length>("-0 in").value()));
  CHECK_FALSE(std::signbit(read_as<Ratio>("-0").value()));
}

TEST_CASE("areas and volumes") {
  const Written<Area> areas[] = {
      {"0.91 in2", 0.91 * in2}, {"0.91 in^2", 0.91 * in2}, {"450 mm2", 450.0 * mm2},
      {"12 ft2", 12.0 * ft2},   {"1.2 m^2", 1.2 * m2},     {"3 cm2", 300.0 * mm2},
      {"2 ft in", 24.0 * in2},  {"0.91 in.2", 0.91 * in2},
  };
  reads_as_meant(areas);
  const Written<Volume> volumes[] = {
      {"3.2 m3", 3.2 * m3},   {"4 yd3", 108.0 * ft3}, {"4 yd^3", 108.0 * ft3},
      {"90 ft3", 90.0 * ft3}, {"250 L", 0.25 * m3},
  };
  reads_as_meant(volumes);
}

TEST_CASE("masses and densities") {
  const Written<Mass> masses[] = {
      {"1200 kg", 1200.0 * kg},          {"1.2 t", 1200.0 * kg},
      {"350 lb", 350.0 * lb_mass},       {"350 lbs", 350.0 * lb_mass},
      {"2 short ton", 4000.0 * lb_mass}, {"2 short tons", 4000.0 * lb_mass},
      {"1 long ton", 2240.0 * lb_mass},  {"500 g", 0.5 * kg},
      {"1.2 tonne", 1200.0 * kg},
  };
  reads_as_meant(masses);
  const Written<Density> densities[] = {
      {"150 lb/ft3", 150.0 * lb_per_ft3},   {"150 lb/ft^3", 150.0 * lb_per_ft3},
      {"150 lb / ft3", 150.0 * lb_per_ft3}, {"150 pcf", 150.0 * lb_per_ft3},
      {"2400 kg/m3", 2400.0 * kg_per_m3},   {"2.4 t/m3", 2400.0 * kg_per_m3},
      {"150 lb ft^-3", 150.0 * lb_per_ft3},
  };
  reads_as_meant(densities);
}

TEST_CASE("a weight density is divided by standard gravity") {
  const Written<Density> cases[] = {
      {"9.80665 kN/m3", 1000.0 * kg_per_m3},
      {"24 kN/m3", Density::from_value(24e3 / 9.80665)},
      {"150 lbf/ft3", 150.0 * lb_per_ft3},
      {"0.15 kip/ft3", 150.0 * lb_per_ft3},
  };
  reads_as_meant(cases);
}

TEST_CASE("forces, a mass stands for its weight under standard gravity") {
  const Written<Force> cases[] = {
      {"19.2 kip", 19.2 * kip},     {"19.2 kips", 19.2 * kip},  {"85 kN", 85.0 * kN},
      {"850 daN", 8.5 * kN},        {"0.085 MN", 85.0 * kN},    {"350 lbf", 350.0 * lbf},
      {"350 lb", 350.0 * lbf},      {"12 N", 12.0 * newton},    {"100 kgf", 980.665 * newton},
      {"100 kg", 980.665 * newton}, {"1 t", 9806.65 * newton},  {"1 tf", 9806.65 * newton},
      {"4 short ton", 8.0 * kip},   {"4 long ton", 8.96 * kip}, {"4 short tons", 8.0 * kip},
  };
  reads_as_meant(cases);
}

TEST_CASE("stresses and pressures") {
  const Written<Stress> cases[] = {
      {"2500 psi", 2500.0 * psi},    {"2.5 ksi", 2500.0 * psi},     {"17.5 MPa", 17.5 * MPa},
      {"17.5 N/mm2", 17.5 * MPa},    {"17.5 N/mm^2", 17.5 * MPa},   {"1 kN/m2", 1.0 * kPa},
      {"20 psf", 20.0 * psf},        {"20 lb/ft2", 20.0 * psf},     {"20 lbf/ft2", 20.0 * psf},
      {"1 ksf", 1000.0 * psf},       {"2500 lb/in2", 2500.0 * psi}, {"30 GPa", 30e3 * MPa},
      {"10 kgf/cm2", 980.665 * kPa}, {"10 kg/cm2", 980.665 * kPa},
  };
  reads_as_meant(cases);
}

TEST_CASE("moments and stiffnesses") {
  const Moment lbf_ft = lbf * ft;
  const Written<Moment> moments[] = {
      {"12 kN m", Moment::from_value(12e3)},
      {"9 kip ft", 9e3 * lbf_ft},
      {"9 kip-ft", 9e3 * lbf_ft},
      {"9 kip*ft", 9e3 * lbf_ft},
      {"9 kip * ft", 9e3 * lbf_ft},
      {"9 ft-lb", 9.0 * lbf_ft},
      {"9 lb ft", 9.0 * lbf_ft},
      {"108 kip in", 9e3 * lbf_ft},
      {"50 N m", Moment::from_value(50.0)},
  };
  reads_as_meant(moments);
  const Written<Stiffness> stiffnesses[] = {
      {"2.1 kN/mm", Stiffness::from_value(2.1e6)},
      {"12 kip/in", 12e3 * (lbf / inch)},
      {"12 lb/in", 12.0 * (lbf / inch)},
      {"2100 N/mm", Stiffness::from_value(2.1e6)},
  };
  reads_as_meant(stiffnesses);
}

TEST_CASE("angles, durations, speeds, accelerations") {
  const Written<Angle> angles[] = {
      {"30 deg", 30.0 * deg}, {"0.5 rad", 0.5 * radian}, {"180 deg", M_PI * radian}};
  reads_as_meant(angles);
  const Written<Duration> durations[] = {
      {"14 h", 14.0 * hour},         {"14 h 30 min", 14.5 * hour}, {"90 min", 1.5 * hour},
      {"28 d", 28.0 * day},          {"1 d 4 h", 28.0 * hour},     {"1 d 4 h 5 min 6 s", 101106.0 * second},
      {"1 min 30 s", 90.0 * second}, {"1 d 30 min", 24.5 * hour},  {"14 h 30.5 min", 52230.0 * second},
  };
  reads_as_meant(durations);
  const Written<Speed> speeds[] = {
      {"24 ft/min", 24.0 * ft_per_min}, {"24 fpm", 24.0 * ft_per_min}, {"0.2 m/s", 0.2 * m_per_s},
      {"12 m/min", 0.2 * m_per_s},      {"36 km/h", 10.0 * m_per_s},   {"90 mph", 40.2336 * m_per_s},
  };
  reads_as_meant(speeds);
  const Written<Acceleration> accelerations[] = {
      {"9.80665 m/s2", standard_gravity},
      {"9.80665 m/(s s)", standard_gravity},
      {"1 ft/s2", Acceleration::from_value(0.3048)},
  };
  reads_as_meant(accelerations);
}

TEST_CASE("temperatures are points on a scale") {
  CHECK(read_as<Temperature>("20 degC").value() == Approx(293.15).epsilon(1e-14));
  CHECK(read_as<Temperature>("68 degF").value() == Approx(293.15).epsilon(1e-14));
  CHECK(read_as<Temperature>("293.15 K").value() == 293.15);
  CHECK(read_as<Temperature>("-40 degF").value() ==
        Approx(read_as<Temperature>("-40 degC").value()).epsilon(1e-14));
  CHECK(read_as<Temperature>("-40 degC").value() == Approx(233.15).epsilon(1e-14));
  CHECK(read_as<Temperature>("0 K").value() == 0.0);
}

TEST_CASE("ratios: percent, a bare number, a fraction, like over like") {
  const Written<Ratio> cases[] = {
      {"3 %", 0.03},    {"3%", 0.03},    {"0.03", 0.03},     {"3 1/2 %", 0.035},         {"3/4", 0.75},
      {" 0.03 ", 0.03}, {"-3 %", -0.03}, {"0.2 mm/m", 2e-4}, {"1/4 in/ft", 0.25 / 12.0},
  };
  reads_as_meant(cases);
}

TEST_CASE("a plan value at the limit of a table is at the limit") {
  // The same double from text, from a table entry and from C++: a limit does not move with how it is written.
  CHECK(read_as<Length>("6 in") == 6.0 * inch);
  CHECK(read_as<Length>("6 in") == 6.0 * *unit_named<Length>("in"));
  CHECK(read_as<Length>("8 ft 4 in") == read_as<Length>("100 in"));
  CHECK(read_as<Stress>("17.5 MPa") == 17.5 * MPa);
  CHECK(read_as<Stress>("17.5 N/mm2") == 17.5 * MPa);
  CHECK(read_as<Stress>("2500 psi") == 2500.0 * psi);
  CHECK(read_as<Stress>("20 lb/ft2") == read_as<Stress>("20 psf"));
  CHECK(read_as<Density>("150 lb/ft3") == read_as<Density>("150 pcf"));
  CHECK(read_as<Density>("150 lb/ft3") == 150.0 * lb_per_ft3);
  CHECK(read_as<Force>("350 lb") == 350.0 * lbf);
  CHECK(read_as<Duration>("14 h 30 min") == read_as<Duration>("870 min"));
}

TEST_CASE("the locale does not change what a point means") {
  CHECK(read_as<Length>("2.5 m").value() == 2.5);
  const std::string before = std::setlocale(LC_ALL, nullptr);
  for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8", "C"}) {
    std::setlocale(LC_ALL, name);  // does nothing where that locale is not installed
    CHECK(read_as<Length>("2.5 m").value() == 2.5);
  }
  std::setlocale(LC_ALL, before.c_str());
}
