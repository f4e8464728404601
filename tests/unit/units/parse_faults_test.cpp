// What must not be read is not read, and the fault says where, what and what to write instead.

#include <catch2/catch.hpp>

#include <string>
#include <string_view>

#include "unit/units/reading.hpp"
#include "units/parse.hpp"

using namespace firstpick;
using firstpick::tests::fault_in;

namespace {

struct Faulty {
  std::string_view text;
  std::size_t at;
  std::string_view what;  // a part of it
  std::string_view help;  // a part of it
};

template <class Q, std::size_t count>
void faults_are_told(const Faulty (&cases)[count]) {
  for (const auto& [text, at, what, help] : cases) {
    CAPTURE(text);
    const QuantityFault fault = fault_in<Q>(text);
    CHECK(fault.at == at);
    CHECK_THAT(fault.what, Catch::Contains(std::string{what}));
    CHECK_THAT(fault.help, Catch::Contains(std::string{help}));
  }
}

}  // namespace

TEST_CASE("nothing, or no number") {
  const Faulty cases[] = {
      {"", 0, "nothing is written here", "6.0 m"},
      {"   ", 0, "nothing is written here", "8 ft 4 in"},
      {"\t", 0, "nothing is written here", "6.0 m"},
      {"ft", 0, "a number expected, not 'ft'", "before its unit"},
      {"-", 1, "a number expected", ""},
      {"--4 in", 1, "a number expected after the sign", ""},
      {"- 4 in", 1, "a number expected", ""},
      {".", 0, "a number expected", ""},
      {". 5 m", 0, "a number expected", ""},
      {"-(4 in)", 1, "a number expected, not '('", "brackets"},
      {"(3 mm)", 0, "a number expected, not '('", "brackets"},
      {"~3 mm", 0, "a number expected", "without ~"},
      {"$3", 0, "a number expected, not '$'", ""},
      {"#4 m", 0, "a number expected", "lb"},
  };
  faults_are_told<Length>(cases);
}

TEST_CASE("numbers that are none") {
  const Faulty cases[] = {
      {"nan m", 0, "'nan' is not a number that can be used", ""},
      {"NaN m", 0, "'NaN' is not a number that can be used", ""},
      {"inf m", 0, "'inf' is not a number that can be used", ""},
      {"-inf m", 1, "'inf' is not a number that can be used", ""},
      {"Infinity m", 0, "'Infinity' is not a number", ""},
      {"1e999 mm", 0, "'1e999' is too large or too small", ""},
      {"1e-999 mm", 0, "'1e-999' is too large or too small", ""},
      {"0x10 mm", 1, "hexadecimal", "decimal digits"},
      {"0X1p3 mm", 1, "hexadecimal", "decimal digits"},
      {"1.2.3 m", 3, "a unit expected, not '.'", "decimal point"},
      {"5..5 m", 2, "a unit expected, not '.'", "decimal point"},
      {"1_000 mm", 1, "a unit expected, not '_'", ""},
  };
  faults_are_told<Length>(cases);
}

TEST_CASE("a comma is not read: it means two things") {
  const Faulty cases[] = {
      {"2,100 mm", 1, "not ','", "2100 or 2.1"},
      {"2,1 m", 1, "not ','", "a point for decimals"},
      {"1,000,000 mm", 1, "not ','", "nothing between thousands"},
      {"8 ft, 4 in", 4, "not ','", ""},
      {",5 m", 0, "not ','", "point"},
  };
  faults_are_told<Length>(cases);
  CHECK(fault_in<Force>("3,250 lb").at == 1);
}

TEST_CASE("fractions") {
  const Faulty cases[] = {
      {"1/0 in", 2, "denominator of zero", ""},
      {"1 1/0 in", 4, "denominator of zero", ""},
      {"1 3/2 in", 2, "'3/2' after a whole number", "4 1/2 in"},
      {"1 2/2 in", 2, "'2/2' after a whole number", "4 1/2 in"},
      {"1/2/3 in", 3, "a unit expected, not '/'", "5/8 in"},
      {"1 / 2 in", 2, "not '/'", "without spaces"},
      {"1/ 2 in", 1, "not '/'", "without spaces"},
      {"1/2.5 in", 3, "not '.'", ""},
      {"1.5 1/2 in", 4, "two numbers without a unit", "8 ft 4 in"},
      {"1 - 1/2 in", 2, "not '-'", "hyphen"},
  };
  faults_are_told<Length>(cases);
}

TEST_CASE("no unit: the help shows the form") {
  const Faulty cases[] = {
      {"6.0", 3, "no unit", "write a length as \"6.0 m\" or \"8 ft 4 in\""},
      {" 6.0 ", 4, "no unit", "6.0 m"},
      {"-6", 2, "no unit", "6.0 m"},
      {"8 ft 4", 6, "no unit", "8 ft 4 in"},
      {"8'-4", 4, "no unit", "8 ft 4 in"},
      {"8 4 in", 2, "two numbers without a unit between them", "8 ft 4 in"},
      {"2 100 mm", 2, "two numbers without a unit between them", "8 ft 4 in"},
  };
  faults_are_told<Length>(cases);
  CHECK_THAT(fault_in<Force>("19.2").help, Catch::Contains("\"85 kN\" or \"19.2 kip\""));
  CHECK_THAT(fault_in<Stress>("2500").help, Catch::Contains("\"2500 psi\""));
  CHECK_THAT(fault_in<Density>("150").help, Catch::Contains("\"150 lb/ft3\""));
  CHECK_THAT(fault_in<Angle>("30").help, Catch::Contains("\"30 deg\""));
  CHECK_THAT(fault_in<Temperature>("20").help, Catch::Contains("\"20 degC\""));
}

TEST_CASE("a wrong dimension names both") {
  const Faulty lengths[] = {
      {"19 kN", 3, "given: a force, needed: a length", "6.0 m"},
      {"3 m2", 2, "given: an area, needed: a length", "6.0 m"},
      {"3 kg m", 2, "given: a quantity in 'kg m', needed: a length", ""},
      {"3 %", 2, "given: a ratio, needed: a length", ""},
      {"8 ft 4 kN", 7, "given: a force, needed: a length", ""},
      {"30 deg", 3, "given: an angle, needed: a length", ""},
      {"20 degC", 3, "given: a temperature, needed: a length", ""},
  };
  faults_are_told<Length>(lengths);
  const Faulty forces[] = {
      {"8 ft", 2, "given: a length, needed: a force", "19.2 kip"},
      {"2500 psi", 5, "given: a stress, needed: a force", "19.2 kip"},
      {"3", 1, "no unit", ""},
  };
  faults_are_told<Force>(forces);
  CHECK(fault_in<Mass>("3 kN").what == "given: a force, needed: a mass");
  CHECK(fault_in<Acceleration>("1.5 g").what == "given: a mass, needed: an acceleration");
  CHECK(fault_in<Length>("3 kg").what == "given: a mass, needed: a length");
  CHECK(fault_in<Ratio>("3 mm").what == "given: a length, needed: a ratio");
}

TEST_CASE("an unknown unit: the likely one, else those there are") {
  const Faulty cases[] = {
      {"3 fot", 2, "no unit is called 'fot'", "did you mean 'ft'?"},
      {"3 Mm", 2, "no unit is called 'Mm'", "did you mean 'mm'?"},
      {"3 MM", 2, "no unit is called 'MM'", "did you mean 'mm'?"},
      {"3 FT", 2, "no unit is called 'FT'", "did you mean 'ft'?"},
      {"3 metres", 2, "no unit is called 'metres'", "write \"m\""},
      {"3 xyzzy", 2, "no unit is called 'xyzzy'", "units of a length: mm, cm, m, in, ft, yd"},
      {"3 x", 2, "no unit is called 'x'", "units of a length"},
      {"1e mm", 1, "no unit is called 'e'", "units of a length"},
      {"8 ft 4 inc", 7, "no unit is called 'inc'", "did you mean 'in'?"},
      {"3 pneumonoultramicroscopic", 2, "no unit is called 'pneumonoultramicroscopic'", "units of a length"},
      {"3 abcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyz", 2,
       "no unit is called 'abcdefghijklmnopqrstuvwxyzabcdefghijklmn...'", "units of a length"},
  };
  faults_are_told<Length>(cases);
  CHECK_THAT(fault_in<Stress>("17.5 mPa").help, Catch::Contains("'MPa'"));
  CHECK_THAT(fault_in<Stress>("17.5 Mpa").help, Catch::Contains("'MPa'"));
  CHECK_THAT(fault_in<Stress>("3 ks").help, Catch::Contains("'ksi'"));  // both are one edit away
  CHECK_THAT(fault_in<Duration>("3 ks").help, Catch::Contains("'s'"));
  CHECK_THAT(fault_in<Force>("85 KN").help, Catch::Contains("'kN'"));
  CHECK_THAT(fault_in<Force>("85 kpi").help, Catch::Contains("'kip'"));
  CHECK_THAT(fault_in<Force>("85 k").help, Catch::Contains("\"kip\""));
  CHECK_THAT(fault_in<Temperature>("20 C").help, Catch::Contains("degC"));
}

TEST_CASE("a bare ton could be three things") {
  for (const std::string_view unit : {"ton", "tons", "T", "Ton", "TONS", "tn"}) {
    const std::string text = "4 " + std::string{unit};
    CAPTURE(text);
    for (const QuantityFault& fault : {fault_in<Force>(text), fault_in<Mass>(text)}) {
      CHECK(fault.at == 2);
      CHECK_THAT(fault.what, Catch::Contains("no unit is called"));
      CHECK_THAT(fault.help,
                 Catch::Contains("short ton") && Catch::Contains("long ton") && Catch::Contains("\"t\""));
    }
  }
  CHECK_THAT(fault_in<Force>("4 metric tons").help, Catch::Contains("\"t\""));
  CHECK_THAT(fault_in<Force>("4 short").help, Catch::Contains("short ton"));
}

TEST_CASE("only falling steps of one system are added up") {
  const Faulty lengths[] = {
      {"4 in 8 ft", 5, "ft after in: the larger unit comes first", ""},
      {"8 ft 3 ft", 5, "ft after ft: the larger unit comes first", ""},
      {"8 ft 4 in 3 in", 10, "in after in: the larger unit comes first", ""},
      {"8 ft 12 in", 5, "12 in or more after ft", "write one number"},
      {"8 ft 14 in", 5, "12 in or more after ft", "write one number"},
      {"8 ft 12.0001 in", 5, "12 in or more after ft", "write one number"},
      {"8.5 ft 4 in", 0, "only the last number may have a fraction", "8.5 ft"},
      {"8 1/2 ft 4 in", 0, "only the last number may have a fraction", "8.5 ft"},
      {"1e1 ft 4 in", 0, "only the last number may have a fraction", "8.5 ft"},
      {"2 m 5 cm", 4, "cannot be written together", "feet with inches"},
      {"8 ft 0.1 m", 5, "cannot be written together", "feet with inches"},
      {"1 yd 1 ft", 5, "cannot be written together", "feet with inches"},
      {"8 ft -4 in", 5, "not '-'", "8 ft - 4 in"},
      {"8 ft- 4 in", 4, "not '-'", "8 ft - 4 in"},
      {"8' -4\"", 3, "not '-'", "8'-4\""},
      {"4-6 in", 1, "not '-'", "a range is not one quantity"},
      {"8 ft + 4 in", 5, "not '+'", "a sum is not"},
  };
  faults_are_told<Length>(lengths);
  const Faulty durations[] = {
      {"30 min 14 h", 7, "h after min: the larger unit comes first", ""},
      {"14 h 60 min", 5, "60 min or more after h", ""},
      {"1 d 24 h", 4, "24 h or more after d", ""},
      {"14:30", 2, "not ':'", "14 h 30 min"},
      {"14h30min", 3, "'h30' is neither a power nor a new number", "'h 30'"},
  };
  faults_are_told<Duration>(durations);
}

TEST_CASE("what is typeset is named with what to type") {
  const Faulty lengths[] = {
      {"8′", 1, "'′' cannot be read", "ft"},
      {"8' 4″", 4, "'″' cannot be read", "in"},
      {"8’", 1, "'’' cannot be read", "ft"},
      {"−4 in", 0, "'−' cannot be read", "minus sign of the keyboard"},
      {"4½ in", 1, "'½' cannot be read", "1/2"},
      {"4\u00a0in", 1, "cannot be read", "ordinary space"},
      {"4\u202fin", 1, "cannot be read", "ordinary space"},
      {"5 µm", 2, "'µ' cannot be read", "mm"},
      {"5 мм", 2, "byte 0xd0 cannot be read", "ASCII"},
      {"5\nmm", 1, "byte 0x0a cannot be read", "one line"},
      {std::string_view{"5\0mm", 4}, 1, "byte 0x00 cannot be read", ""},
      {std::string_view{"5 mm\0", 5}, 4, "byte 0x00 cannot be read", ""},
      {"8' 4''", 4, "'' cannot be read", "in"},
  };
  faults_are_told<Length>(lengths);
  const Faulty areas[] = {
      {"3 m²", 3, "'²' cannot be read", "write 2 for ²: \"m2\""},
      {"3 in²", 4, "'²' cannot be read", "m2"},
  };
  faults_are_told<Area>(areas);
  CHECK(fault_in<Density>("2400 kg/m³").at == 9);
  CHECK_THAT(fault_in<Density>("2400 kg/m³").help, Catch::Contains("write 3 for ³"));
  CHECK_THAT(fault_in<Angle>("30°").help, Catch::Contains("\"deg\""));
  CHECK_THAT(fault_in<Temperature>("20 °C").help, Catch::Contains("\"degC\""));
  CHECK(fault_in<Temperature>("20 °C").at == 3);
  CHECK_THAT(fault_in<Moment>("3 kN·m").help, Catch::Contains("\"kN m\""));
  CHECK(fault_in<Moment>("3 kN·m").at == 4);
}

TEST_CASE("anything after the quantity is a fault") {
  const Faulty cases[] = {
      {"3 mm)", 4, "the end of the quantity expected, not ')'", "brackets"},
      {"3 mm;", 4, "the end of the quantity expected, not ';'", ""},
      {"3 mm approx", 5, "no unit is called 'approx'", ""},
      {"3 mm 4", 6, "no unit", ""},
      {"8' '", 3, "the end of the quantity expected", "feet"},
      {"3 mm \"", 5, "the end of the quantity expected", "inches"},
      {"3 mm = 4", 5, "the end of the quantity expected, not '='", ""},
  };
  faults_are_told<Length>(cases);
  const Faulty ratios[] = {
      {"3 % %", 4, "the end of the quantity expected, not '%'", "right after its number"},
      {"3 % m", 4, "not part of other units", ""},
      {"0.03 0.04", 5, "two numbers", ""},
      {"3 x", 2, "no unit is called 'x'", ""},
  };
  faults_are_told<Ratio>(ratios);
}

TEST_CASE("units that are put together wrongly") {
  const Faulty cases[] = {
      {"150 lb/", 7, "a unit expected, but the text ends here", ""},
      {"150 lb/ft3/m", 10, "not '/'", "one divisor"},
      {"150 lb/(ft3", 11, "')' expected", ""},
      {"150 lb/()", 8, "a unit expected, not ')'", ""},
      {"150 lb/ft^", 10, "a power expected", "ft3"},
      {"150 lb/ft^x", 10, "a power expected", "ft^3"},
      {"150 lb/ft^0", 10, "a half, a third or a whole number", ""},
      {"150 lb/ft^7", 10, "a half, a third or a whole number", ""},
      {"150 lb/ft^0.4", 10, "a half, a third or a whole number", ""},
      {"150 lb/ft^(5/4)", 10, "a power expected", ""},
      {"150 lb/ft^(5/3", 14, "')' expected", ""},
      {"150 lb/ft9", 9, "'ft9' is neither a power nor a new number", ""},
      {"150 lb/3", 7, "a unit expected, not '3'", ""},
  };
  faults_are_told<Density>(cases);
  const Faulty lengths[] = {
      {"8ft4in", 3, "'ft4' is neither a power nor a new number", "'ft 4'"},
      {"8 ft4 in", 4, "'ft4' is neither a power nor a new number", "'ft 4'"},
      {"8ft2in", 3, "'ft2' is neither a power nor a new number", "'ft 2'"},
      {"3 degC m", 7, "not part of other units", ""},
      {"3 m degC", 4, "not part of other units", "K"},
  };
  faults_are_told<Length>(lengths);
  CHECK_THAT(fault_in<Moment>("3 kNm").help, Catch::Contains("\"kN m\""));
  CHECK_THAT(fault_in<Moment>("3 kN.m").help, Catch::Contains("\"kN m\""));
  CHECK(fault_in<Moment>("3 kN.m").at == 4);
}

TEST_CASE("below absolute zero there is no temperature") {
  CHECK(fault_in<Temperature>("-300 degC").what == "a temperature below absolute zero");
  CHECK(fault_in<Temperature>("-460 degF").what == "a temperature below absolute zero");
  CHECK(fault_in<Temperature>("-1 K").at == 0);
  CHECK(fault_in<Temperature>("20 degC 4 degC").at == 8);
}
