// Bars about a headed insert, by hand. us: h_ef 15 in, 4 bars of 1/2 in, 60 ksi, 4 in away, hooked at 1.5 in, straight to 40 in,
// f_c 4,000 psi: l_in = 15 - 4/1.5 - 1.5 = 10.833 in, l_out = 25 in; l_dh = 2 x 0.86667 x 60,000 x 0.35355/(55 x 63.246) =
// 10.571 in; l_d = 60,000 x 0.5/(16.66 x 63.246) = 28.472 in; f_s = 60,000 x 25/28.472 = 52,684 psi; N = 4 x 0.19635 x 52,684
// = 41,378 lb. eu: h_ef 300 mm, 4 bars of 12 mm, 500 MPa, 100 mm away, hooked at 40 mm, to 700 mm, f_ck 20 MPa: l_in =
// 300 - 66.667 - 40 = 193.33 mm, f_bk = 0.33 x 20^(2/3) = 2.4315 MPa, N = 4 x pi x 12 x 193.33 x 2.4315 = 70,887 N.

#include "resistances/anchor_bars.hpp"

#include <cmath>
#include <limits>

#include "support/headed_face.hpp"
#include "support/step_named.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

plan::AnchorBars bars_of_us() {
  plan::AnchorBars bars;
  bars.count = 4;
  bars.diameter = 0.5 * inch;
  bars.yield_strength = 60.0 * ksi;
  bars.ribbed = true;
  bars.distance = 4.0 * inch;
  bars.top = 1.5 * inch;
  bars.bottom = 40.0 * inch;
  bars.top_end = plan::BarEnd::hook;
  bars.bottom_end = plan::BarEnd::straight;
  return bars;
}

plan::AnchorBars bars_of_eu() {
  plan::AnchorBars bars = bars_of_us();
  bars.diameter = 12.0 * mm;
  bars.yield_strength = 500.0 * MPa;
  bars.distance = 100.0 * mm;
  bars.top = 40.0 * mm;
  bars.bottom = 700.0 * mm;
  return bars;
}

struct Made {
  HeadedFace face = wide_face();
  resistances::HeadedInsert* insert;
  Trace trace = Trace::recording();

  Made(Length h_ef, const plan::AnchorBars& bars) : insert(&face.add("A1", 0.0 * mm, 0.0 * mm, h_ef)) { insert->bars = bars; }
  Outcome<Resistance<Force>> by(const tables::RuleSet& rules, Stress f_c) {
    return resistances::anchor_bars(*insert, f_c, rules, trace);
  }
};

double us_lb(const plan::AnchorBars& bars, Stress f_c = 4000.0 * psi) {
  return in(lbf, assessed(Made(15.0 * inch, bars).by(us_rules(), f_c)).value);
}
std::string us_why(const plan::AnchorBars& bars, Stress f_c = 4000.0 * psi) {
  return why_not(Made(15.0 * inch, bars).by(us_rules(), f_c));
}
double eu_N(const plan::AnchorBars& bars, Stress f_ck = 20.0 * MPa) {
  return in(newton, assessed(Made(300.0 * mm, bars).by(eu_rules(), f_ck)).value);
}
std::string eu_why(const plan::AnchorBars& bars, Stress f_ck = 20.0 * MPa) {
  return why_not(Made(300.0 * mm, bars).by(eu_rules(), f_ck));
}

}  // namespace

TEST_CASE("bars by ACI 318: hook above, straight end below, each step as by hand") {
  Made made(15.0 * inch, bars_of_us());
  CHECK(in(lbf, assessed(made.by(us_rules(), 4000.0 * psi)).value) == Approx(41378.0).margin(0.5).epsilon(0.0));
  CHECK(step_named(made.trace, "l_in").result.number == Approx(10.833).margin(0.0005).epsilon(0.0));
  CHECK(step_named(made.trace, "l_out").result.number == Approx(25.0));
  CHECK(step_named(made.trace, "l_dh").result.number == Approx(10.571).margin(0.0005).epsilon(0.0));
  CHECK(step_named(made.trace, "l_d").result.number == Approx(28.472).margin(0.0005).epsilon(0.0));
  CHECK(step_named(made.trace, "f_s").result.number == Approx(52684.0).margin(0.5).epsilon(0.0));
}

TEST_CASE("bars with hooks on both ends hold their yield strength: 4 x 0.19635 x 60,000 = 47,124 lb") {
  plan::AnchorBars bars = bars_of_us();
  bars.bottom_end = plan::BarEnd::hook;
  CHECK(us_lb(bars) == Approx(47124.0).margin(0.5).epsilon(0.0));
}

TEST_CASE("in weaker concrete the hook is not developed: no number, and not the concrete in its place") {
  CHECK(us_why(bars_of_us(), 3000.0 * psi) ==
        "the bars about insert A1 have 275 mm in the body of concrete, and 287 mm is the least for their hook at this strength");
}

TEST_CASE("more yield strength than 60 ksi is not credited, less is") {
  plan::AnchorBars bars = bars_of_us();
  bars.yield_strength = 80.0 * ksi;
  CHECK(us_lb(bars) == us_lb(bars_of_us()));
  bars.yield_strength = 40.0 * ksi;
  bars.bottom_end = plan::BarEnd::hook;
  CHECK(us_lb(bars) == Approx(31416.0).margin(0.5).epsilon(0.0));
}

TEST_CASE("bars level as cast take 1.3 of the length: f_s = 60,000 x 25/37.013 = 40,526 psi") {
  Made made(15.0 * inch, bars_of_us());
  made.face.sites.front().normal = {0.0, 1.0, 0.0};
  CHECK(in(lbf, assessed(made.by(us_rules(), 4000.0 * psi)).value) == Approx(41377.6 / 1.3).margin(0.5).epsilon(0.0));
}

TEST_CASE("the range of the bars: at its limit, and one step beyond") {
  plan::AnchorBars bars = bars_of_us();
  bars.distance = 7.5 * inch;  // 0.5 h_ef; 15 - 5 - 1.5 = 8.5 in is too short for the hook
  CHECK(us_why(bars).find("is the least for their hook") != std::string::npos);
  bars.distance = 7.6 * inch;
  CHECK(us_why(bars).find("within 0.5 h_ef") != std::string::npos);
  bars = bars_of_us();
  bars.bottom = 27.0 * inch;  // 12 in beyond the body, the least of a straight end
  CHECK(us_lb(bars) == Approx(4 * 0.1963495 * 60000 * 12 / 28.471888).epsilon(1e-6));
  bars.bottom = 26.9 * inch;
  CHECK(us_why(bars).find("is the least for a straight end") != std::string::npos);
  bars.bottom = 14.0 * inch;
  CHECK(us_why(bars).find("do not cross the surface") != std::string::npos);
  bars.bottom = 1e3 * inch;  // the concrete behind the insert is as thick
  CHECK(us_why(bars) == "the bars about insert A1 end outside the concrete");
}

TEST_CASE("bars that are not stated whole are not counted") {
  plan::AnchorBars bars = bars_of_us();
  bars.top_end.reset();
  bars.ribbed.reset();
  CHECK(us_why(bars) == "the bars about insert A1 have no ribbed, no top_end");
  bars = bars_of_us();
  bars.ribbed = false;
  CHECK(us_why(bars) == "the bars about insert A1 are not ribbed: no rule develops them");
  bars = bars_of_us();
  bars.count = 1;
  CHECK(us_why(bars) == "one bar about insert A1 does not stand on both sides of it");
  bars = bars_of_us();
  bars.diameter = std::numeric_limits<double>::quiet_NaN() * inch;
  CHECK(us_why(bars) == "the bars about insert A1 are not described by numbers above zero");
  CHECK(us_why(bars_of_us(), Stress{}) == "the concrete strength is not a number above zero");
  tables::RuleSet without = us_rules();
  without.anchor_bars.reset();
  CHECK(why_not(Made(15.0 * inch, bars_of_us()).by(without, 4000.0 * psi)) ==
        "the rule set us has no values for bars about an insert");
}

TEST_CASE("bars by EN 1992-4: bond over the shorter length, each step as by hand") {
  Made made(300.0 * mm, bars_of_eu());
  CHECK(in(newton, assessed(made.by(eu_rules(), 20.0 * MPa)).value) == Approx(70887.0).margin(0.5).epsilon(0.0));
  CHECK(step_named(made.trace, "l_in").result.number == Approx(193.33).margin(0.005).epsilon(0.0));
  CHECK(step_named(made.trace, "f_bk").result.number == Approx(2.4315).margin(0.00005).epsilon(0.0));
}

TEST_CASE("bars by EN 1992-4: never more than their yield strength, 4 x 113.10 x 300 = 135,717 N") {
  plan::AnchorBars bars = bars_of_eu();
  bars.yield_strength = 300.0 * MPa;
  CHECK(eu_N(bars, 60.0 * MPa) == Approx(135717.0).margin(0.5).epsilon(0.0));
}

TEST_CASE("bars by EN 1992-4: distance, thickness and lengths have their limits") {
  plan::AnchorBars bars = bars_of_eu();
  bars.distance = 225.0 * mm;  // 0.75 h_ef: 300 - 150 - 40 = 110 mm
  CHECK(eu_N(bars) == Approx(70886.8 * 110.0 / 193.3333).epsilon(1e-5));
  bars.distance = 226.0 * mm;
  CHECK(eu_why(bars).find("within 0.75 h_ef") != std::string::npos);
  bars = bars_of_eu();
  bars.diameter = 18.0 * mm;
  CHECK(eu_why(bars).find("thicker than") != std::string::npos);
  bars = bars_of_eu();
  bars.top = 186.0 * mm;  // 47.3 mm, less than 4 diameters
  CHECK(eu_why(bars).find("less than 4 diameters") != std::string::npos);
  bars.top = 185.0 * mm;  // 48.3 mm
  CHECK(eu_N(bars) > 0.0);
  bars.top_end = plan::BarEnd::straight;
  CHECK(eu_why(bars).find("less than 10 diameters") != std::string::npos);
  bars = bars_of_eu();
  bars.bottom = 419.0 * mm;  // 119 mm, less than 10 diameters
  CHECK(eu_why(bars).find("beyond the body of concrete") != std::string::npos);
}

TEST_CASE("pry-out beside such bars: 0.75 of it by EN 1992-4, all of it by ACI 318") {
  Trace trace;
  const Outcome<Resistance<Force>> whole = Resistance<Force>{100.0 * kN};
  Made made(300.0 * mm, bars_of_eu());
  CHECK(in(kN, assessed(resistances::pryout_beside_bars(made.face.group(), whole, eu_rules(), trace)).value) == Approx(75.0));
  CHECK(in(kN, assessed(resistances::pryout_beside_bars(made.face.group(), whole, us_rules(), trace)).value) == Approx(100.0));
  made.insert->bars.reset();
  CHECK(in(kN, assessed(resistances::pryout_beside_bars(made.face.group(), whole, eu_rules(), trace)).value) == Approx(100.0));
}

// Law: once the bars hold something, more strength, more bars and longer bars never lower it, and no more than their yield is held.
TEST_CASE("more strength, count or length never lowers what bars hold") {
  const auto held = [](const tables::RuleSet& rules, Length h_ef, const plan::AnchorBars& bars, Stress f_c) {
    const auto outcome = Made(h_ef, bars).by(rules, f_c);
    const auto* known = std::get_if<Resistance<Force>>(&outcome);
    return known ? in(newton, known->value) : 0.0;
  };
  const auto check = [&](const tables::RuleSet& rules, Length h_ef, const plan::AnchorBars& bars) {
    const double yield = 4.0 * 3.14159265 / 4.0 * std::pow(in(mm, *bars.diameter), 2) * in(MPa, *bars.yield_strength);
    double before = 0.0;
    for (double f_c = 2.0; f_c <= 69.0; f_c += 0.5) {
      CAPTURE(rules.id, f_c);
      const double now = held(rules, h_ef, bars, f_c * MPa);
      CHECK(now >= before);
      CHECK(now <= yield * (1.0 + 1e-6));
      plan::AnchorBars longer = bars, more = bars;
      longer.bottom = *bars.bottom + 100.0 * mm;
      more.count = 6;
      CHECK(held(rules, h_ef, longer, f_c * MPa) >= now);
      CHECK(held(rules, h_ef, more, f_c * MPa) >= now);
      before = now;
    }
    CHECK(before > 0.0);
  };
  check(us_rules(), 15.0 * inch, bars_of_us());
  check(eu_rules(), 300.0 * mm, bars_of_eu());
}

TEST_CASE("of the keys of bars each absent one is named alone, and each number that is none refused") {
  const auto absent = [](auto change) {
    plan::AnchorBars bars = bars_of_us();
    change(bars);
    return us_why(bars);
  };
  CHECK(absent([](auto& b) { b.count.reset(); }) == "the bars about insert A1 have no count");
  CHECK(absent([](auto& b) { b.diameter.reset(); }) == "the bars about insert A1 have no diameter");
  CHECK(absent([](auto& b) { b.yield_strength.reset(); }) ==
        "the bars about insert A1 have no yield_strength");
  CHECK(absent([](auto& b) { b.ribbed.reset(); }) == "the bars about insert A1 have no ribbed");
  CHECK(absent([](auto& b) { b.distance.reset(); }) == "the bars about insert A1 have no distance");
  CHECK(absent([](auto& b) { b.top.reset(); }) == "the bars about insert A1 have no top");
  CHECK(absent([](auto& b) { b.bottom.reset(); }) == "the bars about insert A1 have no bottom");
  CHECK(absent([](auto& b) { b.top_end.reset(); }) == "the bars about insert A1 have no top_end");
  CHECK(absent([](auto& b) { b.bottom_end.reset(); }) == "the bars about insert A1 have no bottom_end");
  const std::string no_numbers = "the bars about insert A1 are not described by numbers above zero";
  for (const double bad : {0.0, -1.0, std::numeric_limits<double>::quiet_NaN()}) {
    CAPTURE(bad);
    CHECK(absent([&](auto& b) { b.diameter = bad * inch; }) == no_numbers);
    CHECK(absent([&](auto& b) { b.distance = bad * inch; }) == no_numbers);
    CHECK(absent([&](auto& b) { b.top = bad * inch; }) == no_numbers);
    CHECK(absent([&](auto& b) { b.bottom = bad * inch; }) == no_numbers);
    CHECK(absent([&](auto& b) { b.yield_strength = bad * ksi; }) == no_numbers);
    Made made(15.0 * inch, bars_of_us());
    made.insert->lambda_a = bad;
    CHECK(why_not(made.by(us_rules(), 4000.0 * psi)) == no_numbers);
    Made deep(15.0 * inch, bars_of_us());
    deep.insert->h_ef = bad * inch;
    CHECK(why_not(deep.by(us_rules(), 4000.0 * psi)) == no_numbers);
  }
  Made none(15.0 * inch, bars_of_us());
  none.insert->bars.reset();
  CHECK(why_not(none.by(us_rules(), 4000.0 * psi)) == "insert A1 has no bars about it");
}

TEST_CASE("two bars are enough, and hold half of four") {
  plan::AnchorBars bars = bars_of_us();
  bars.count = 2;
  CHECK(us_lb(bars) == Approx(0.5 * 41378.0).margin(0.5).epsilon(0.0));
  CHECK(eu_N(bars_of_eu()) == Approx(70887.0).margin(0.5).epsilon(0.0));
  bars = bars_of_eu();
  bars.count = 2;
  CHECK(eu_N(bars) == Approx(0.5 * 70887.0).margin(0.5).epsilon(0.0));
}

TEST_CASE("straight ends on both sides: the shorter of them decides, and both stand in the formula") {
  plan::AnchorBars bars = bars_of_us();
  bars.top_end = plan::BarEnd::straight;
  bars.top = 0.2 * inch;  // l_in = 15 - 2.6667 - 0.2 = 12.1333 in of 28.472, l_out 25
  Made made(15.0 * inch, bars);
  const double share = (15.0 - 4.0 / 1.5 - 0.2) / 28.471888;
  CHECK(in(lbf, assessed(made.by(us_rules(), 4000.0 * psi)).value) ==
        Approx(4 * 0.1963495 * 60000 * share).epsilon(1e-6));
  CHECK(step_named(made.trace, "f_s").formula == "f_yb * min(1, l_in / l_d, l_out / l_d)");
  bars.top = 0.4 * inch;  // 11.93 in, less than the 12 of a straight end
  CHECK(us_why(bars).find("in the body of concrete") != std::string::npos);
  CHECK(us_why(bars).find("is the least for a straight end") != std::string::npos);
}

// 60,000 x 0.5 / (16.66 x 0.75 x 63.246) = 37.963 in of straight end; both ends straight, the upper 12.133
// in.
TEST_CASE("in lightweight concrete bars develop over a longer length, by its factor") {
  plan::AnchorBars bars = bars_of_us();
  bars.top_end = plan::BarEnd::straight;
  bars.top = 0.2 * inch;
  Made made(15.0 * inch, bars);
  made.insert->lambda_a = 0.75;
  CHECK(in(lbf, assessed(made.by(us_rules(), 4000.0 * psi)).value) ==
        Approx(4 * 0.1963495 * 60000 * 12.133333 / 37.962517).epsilon(1e-6));
  CHECK(step_named(made.trace, "l_d").result.number == Approx(37.963).margin(0.0005).epsilon(0.0));
}

TEST_CASE("a straight end is never developed in less than 12 in, a hook in less than 8 diameters and 6 in") {
  plan::AnchorBars bars = bars_of_us();
  bars.diameter = 0.2 * inch;  // 60,000 x 0.2 / (16.66 x 63.246) = 11.39 in
  Made made(15.0 * inch, bars);
  CHECK(in(lbf, assessed(made.by(us_rules(), 4000.0 * psi)).value) ==
        Approx(4 * 0.0314159 * 60000).epsilon(1e-5));
  CHECK(step_named(made.trace, "l_d").result.number == Approx(12.0));
  CHECK(step_named(made.trace, "l_dh").result.number == Approx(6.0));
}

TEST_CASE("bars by EN 1992-4: exactly the least lengths are enough") {
  // In metres that are whole parts of two: 0.25 deep, bars to 0.375, 12.5 mm thick: 10 diameters beyond.
  plan::AnchorBars bars = bars_of_eu();
  bars.diameter = 0.0125 * m;
  bars.bottom = 0.375 * m;
  bars.distance = 0.09375 * m;
  Made made(0.25 * m, bars);
  CHECK(is_assessed(made.by(eu_rules(), 20.0 * MPa)));
  bars.bottom = std::nextafter(0.375, 0.0) * m;
  CHECK(why_not(Made(0.25 * m, bars).by(eu_rules(), 20.0 * MPa)).find("beyond the body of concrete") !=
        std::string::npos);
}

TEST_CASE("bars that begin below the body of concrete do not cross its surface") {
  plan::AnchorBars bars = bars_of_us();
  bars.top = 13.0 * inch;  // 15 - 4 / 1.5 = 12.33 in
  CHECK(us_why(bars) ==
        "the bars about insert A1 do not cross the surface along which the concrete breaks");
}

TEST_CASE("a hook below and a straight end above: the straight one decides") {
  plan::AnchorBars bars = bars_of_us();
  bars.top_end = plan::BarEnd::straight, bars.bottom_end = plan::BarEnd::hook;
  bars.top = 0.2 * inch;
  CHECK(us_lb(bars) == Approx(4 * 0.1963495 * 60000 * 12.133333 / 28.471888).epsilon(1e-6));
}

TEST_CASE("beside bars an unknown pry-out stays unknown, and without values for bars it stays what it is") {
  Trace trace;
  Made made(300.0 * mm, bars_of_eu());
  const Outcome<Resistance<Force>> unknown = NotAssessed{"no cone", {}}, whole = Resistance<Force>{100.0 * kN};
  CHECK(why_not(resistances::pryout_beside_bars(made.face.group(), unknown, eu_rules(), trace)) == "no cone");
  tables::RuleSet without = eu_rules();
  without.anchor_bars.reset();
  CHECK(in(kN, assessed(resistances::pryout_beside_bars(made.face.group(), whole, without, trace)).value) == 100.0);
}
