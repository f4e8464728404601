// Strands in a line: stresses by hand, against a dense search, and what is refused.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <string>

#include "demands/prestressed_line.hpp"
#include "support/beam_lines.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::demands;

namespace {

PrestressRange as_stated() {
  const Ratio one = Ratio::from_value(1.0);
  return {one, one, one, one, one, one};
}

StrandRow row(double force_kN, double from_m, double to_m, double height_m, double transfer_m) {
  return {force_kN * kN, {{from_m * m, height_m * m}, {to_m * m, height_m * m}}, transfer_m * m};
}

// 12 m x 0.4 x 0.6 m, 5.766 kN/m, upright legs 2.4852 m from its ends.
BeamLine beam() {
  return on_supports(BeamLine{{rectangle_step(0.0, 12.0, 0.4, 0.6, 5.766)}, {}}, {2.4852, 12.0 - 2.4852});
}

double sigma(const FibreStress& stress) { return in(MPa, stress.stress); }

// Every place a tenth of a millimetre apart, every corner of the ranges.
struct Extremes {
  double tension = -1e9, compression = 1e9;
};
Extremes searched(const BeamLine& beam, const std::vector<StrandRow>& rows, const PrestressRange& range, double every_m) {
  Extremes found;
  for (const BeamStep& step : beam.steps)
    for (double x = in(m, step.from); x <= in(m, step.to); x += every_m) {
      double N = 0.0, M = 0.0;  // kN, kN m of the loads
      for (const BeamForce& force : beam.forces)
        if (in(m, force.at) <= x) {
          N -= in(kN, force.along);
          M += in(kN, force.up) * (x - in(m, force.at)) + in(kN, force.along) * in(m, Length{force.height - step.centroid});
        }
      for (const BeamStep& left : beam.steps) {
        const double a = in(m, left.from), b = std::min(x, in(m, left.to));
        if (b > a) M -= in(kN / m, left.load) * (b - a) * (x - 0.5 * (a + b));
      }
      const double A = step.area.value(), I = step.second_moment.value();
      for (const Length& fibre : {step.bottom, step.top}) {
        const double z = in(m, Length{step.centroid - fibre});
        for (const bool want_tension : {true, false})
          for (const Ratio& load : {range.load_least, range.load_most}) {
            double stress = load.value() * (N / A + M * z / I);
            for (const StrandRow& one : rows) {
              double height = 0.0;
              for (std::size_t p = 1; p < one.points.size(); ++p) {
                const double a = in(m, one.points[p - 1].at), b = in(m, one.points[p].at);
                if (x >= a && x <= b)
                  height = in(m, one.points[p - 1].height) +
                           (x - a) / (b - a) * in(m, Length{one.points[p].height - one.points[p - 1].height});
              }
              const double e = in(m, step.centroid) - height;
              const auto by = [&](const Ratio& share, const Ratio& transfer) {
                const double l = transfer.value() * in(m, one.transfer);
                const double in_there = std::clamp(std::min((x - in(m, one.points.front().at)) / l,
                                                            (in(m, one.points.back().at) - x) / l), 0.0, 1.0);
                return share.value() * in(kN, one.force) * in_there * (-1.0 / A - e * z / I);
              };
              const double least = by(range.least, range.transfer_most), most = by(range.most, range.transfer_least);
              stress += want_tension ? std::max(least, most) : std::min(least, most);
            }
            if (want_tension) found.tension = std::max(found.tension, stress / 1000.0);
            else found.compression = std::min(found.compression, stress / 1000.0);
          }
      }
    }
  return found;
}

}  // namespace

TEST_CASE("strands 0.2 m below the middle pull at the top over the picks, and press the bottom there") {
  // P/A = 400/0.24 kPa, P e/Z = 400 x 0.2/0.024 kPa; over a pick M = -5.766 x 2.4852^2/2 kN m
  const double P_A = 400.0 / 0.24 / 1000.0, Pe_Z = 400.0 * 0.2 / 0.024 / 1000.0;
  const double M_Z = 5.766 * 2.4852 * 2.4852 / 2.0 / 0.024 / 1000.0;
  const auto state = assessed(prestressed_state(beam(), {row(400.0, 0.0, 12.0, 0.1, 0.6)}, as_stated()));
  CHECK(sigma(state.tension) == Approx(Pe_Z - P_A + M_Z));
  CHECK(state.tension.top);
  CHECK(in(m, state.tension.at) == Approx(2.4852));
  CHECK(sigma(state.compression) == Approx(-Pe_Z - P_A - M_Z));
  CHECK_FALSE(state.compression.top);

  PrestressRange range = as_stated();
  range.least = Ratio::from_value(0.95), range.most = Ratio::from_value(1.05);
  range.load_least = Ratio::from_value(0.5), range.load_most = Ratio::from_value(1.2);
  const auto worst = assessed(prestressed_state(beam(), {row(400.0, 0.0, 12.0, 0.1, 0.6)}, range));
  CHECK(sigma(worst.tension) == Approx(1.05 * (Pe_Z - P_A) + 1.2 * M_Z));
  CHECK(worst.tension.at_most.front());
  CHECK(sigma(worst.compression) == Approx(-1.05 * (Pe_Z + P_A) - 1.2 * M_Z));
}

TEST_CASE("strands that help count at their least") {
  // Picked at its ends: M = w L^2/8 pulls below, strands in the kern press there.
  const BeamLine at_ends = on_supports(BeamLine{{rectangle_step(0.0, 12.0, 0.4, 0.6, 5.766)}, {}}, {0.0, 12.0});
  PrestressRange range = as_stated();
  range.least = Ratio::from_value(0.9), range.most = Ratio::from_value(1.1);
  const auto state = assessed(prestressed_state(at_ends, {row(300.0, 0.0, 12.0, 0.25, 0.6)}, range));
  const double M_Z = 5.766 * 144.0 / 8.0 / 0.024 / 1000.0;
  CHECK(sigma(state.tension) == Approx(M_Z - 0.9 * (300.0 / 0.24 + 300.0 * 0.05 / 0.024) / 1000.0));
  CHECK_FALSE(state.tension.at_most.front());
  CHECK(in(m, state.tension.at) == Approx(6.0));
}

TEST_CASE("force comes in over the transfer length: a short piece never holds it all") {
  // 1 m long, transfer 2 m: half a metre from each end a quarter of the force is in.
  const BeamLine small = on_supports(BeamLine{{rectangle_step(0.0, 1.0, 0.1, 0.1, 1e-6)}, {}}, {0.2, 0.8});
  const auto state = assessed(prestressed_state(small, {row(10.0, 0.0, 1.0, 0.02, 2.0)}, as_stated()));
  CHECK(in(m, state.compression.at) == Approx(0.5).margin(1e-3));
  CHECK(in(kN, state.compression.rows.front()) == Approx(2.5).epsilon(1e-3));
}

TEST_CASE("against a dense search, over stepped lines, draped and short rows, and all ranges") {
  BeamDice dice(29);
  for (int i = 0; i < 12; ++i) {
    BeamLine line;
    const double second_m = dice.between(1.0, 3.0), length_m = second_m + dice.between(1.0, 3.0);
    line.steps.push_back(rectangle_step(0.0, second_m, 0.3, dice.between(0.4, 0.6), dice.between(2.0, 9.0)));
    line.steps.push_back(rectangle_step(second_m, length_m, 0.3, dice.between(0.4, 0.6), dice.between(2.0, 9.0)));
    line = on_supports(line, {0.2 * length_m, dice.between(0.5, 0.9) * length_m});
    line.forces.front().along = 20.0 * kN;
    line.forces.back().along = -20.0 * kN;
    for (BeamForce& force : line.forces) force.height = 0.2 * m;  // no turning of the thrust: one height
    std::vector<StrandRow> rows{row(dice.between(50.0, 300.0), 0.0, length_m, 0.05, 0.5)};
    rows.push_back({dice.between(20.0, 200.0) * kN,
                    {{0.1 * length_m * m, 0.35 * m}, {0.5 * length_m * m, 0.04 * m}, {0.95 * length_m * m, 0.3 * m}},
                    dice.between(0.2, 2.0) * m});
    PrestressRange range = as_stated();
    range.least = Ratio::from_value(0.9), range.most = Ratio::from_value(1.1);
    range.transfer_least = Ratio::from_value(0.8), range.transfer_most = Ratio::from_value(1.2);
    range.load_least = Ratio::from_value(0.4), range.load_most = Ratio::from_value(1.6);
    const auto state = assessed(prestressed_state(line, rows, range));
    const Extremes dense = searched(line, rows, range, 5e-4);
    CAPTURE(i, length_m, second_m);
    CHECK(sigma(state.tension) >= dense.tension - 1e-9);
    CHECK(sigma(state.tension) == Approx(dense.tension).margin(2e-3));
    CHECK(sigma(state.compression) <= dense.compression + 1e-9);
    CHECK(sigma(state.compression) == Approx(dense.compression).margin(2e-3));
    // The parts make the whole.
    Stress sum = state.tension.load * state.tension.of_load;
    for (const Stress& one : state.tension.of_rows) sum += one;
    CHECK(in(MPa, sum) == Approx(sigma(state.tension)));
  }
}

TEST_CASE("law: a wider range never lowers tension or compression, and the mirrored line is asked the same") {
  BeamDice dice(31);
  const BeamLine line = beam();
  for (int i = 0; i < 60; ++i) {
    const double low_m = dice.between(0.05, 0.3), end_m = dice.between(7.0, 12.0);
    const std::vector<StrandRow> rows{row(dice.between(50.0, 600.0), 0.0, end_m, low_m, dice.between(0.2, 1.5)),
                                      row(dice.between(50.0, 200.0), 0.0, 12.0, 0.55, 0.6)};
    const auto plain = assessed(prestressed_state(line, rows, as_stated()));
    PrestressRange wide = as_stated();
    const auto less = [&] { return Ratio::from_value(dice.between(0.5, 1.0)); };
    const auto more = [&] { return Ratio::from_value(dice.between(1.0, 1.5)); };
    wide.least = less(), wide.most = more(), wide.transfer_least = less(), wide.transfer_most = more();
    wide.load_least = less(), wide.load_most = more();
    const auto worse = assessed(prestressed_state(line, rows, wide));
    CHECK(worse.tension.stress >= plain.tension.stress);
    CHECK(worse.compression.stress <= plain.compression.stress);

    std::vector<StrandRow> turned = rows;
    for (StrandRow& one : turned) {
      for (StrandPoint& point : one.points) point.at = 12.0 * m - point.at;
      std::ranges::reverse(one.points);
    }
    CHECK(sigma(assessed(prestressed_state(line, turned, wide)).tension) == Approx(sigma(worse.tension)));
  }
}

TEST_CASE("hardly any force: the stresses of the line alone") {
  const auto alone = state_of(beam());
  const auto state = assessed(prestressed_state(beam(), {row(1e-9, 0.0, 12.0, 0.1, 0.6)}, as_stated()));
  CHECK(sigma(state.tension) ==
        Approx(in(MPa, std::max(alone.most_top_tension().top_stress, alone.most_bottom_tension().bottom_stress))));
}

TEST_CASE("what is no row, no range or no line is refused") {
  BeamLine line = beam();
  std::vector<StrandRow> rows{row(400.0, 0.0, 12.0, 0.1, 0.6)};
  PrestressRange range = as_stated();
  const double nan = std::nan("");
  SECTION("no row") { rows.clear(); }
  SECTION("no force") { rows[0].force = Force{}; }
  SECTION("force") { rows[0].force = Force::from_value(nan); }
  SECTION("no transfer length") { rows[0].transfer = Length{}; }
  SECTION("transfer length") { rows[0].transfer = Length::from_value(nan); }
  SECTION("one point") { rows[0].points.resize(1); }
  SECTION("back again") { rows[0].points.push_back({6.0 * m, 0.1 * m}); }
  SECTION("beyond the left end") { rows[0].points[0].at = -0.01 * m; }
  SECTION("beyond the right end") { rows[0].points[1].at = 12.01 * m; }
  SECTION("nowhere") { rows[0].points[1].at = Length::from_value(nan); }
  SECTION("in the lowest fibre") { rows[0].points[0].height = 0.0 * m; }
  SECTION("above the piece") { rows[0].points[1].height = 0.61 * m; }
  SECTION("height") { rows[0].points[1].height = Length::from_value(nan); }
  SECTION("most below least") { range.most = Ratio::from_value(0.9); }
  SECTION("least not above zero") { range.least = Ratio{}; }
  SECTION("most") { range.most = Ratio::from_value(nan); }
  SECTION("load less than nothing") { range.load_least = Ratio::from_value(-0.1); }
  SECTION("load") { range.load_most = Ratio::from_value(nan); }
  SECTION("transfer") { range.transfer_most = Ratio::from_value(nan); }
  SECTION("transfer upside down") { range.transfer_least = Ratio::from_value(1.3); }
  SECTION("a line out of balance") { line.forces.front().up *= 1.1; }
  CHECK_FALSE(why_not(prestressed_state(line, rows, range)).empty());
}

TEST_CASE("up to the ends and up to the faces is inside") {
  CHECK(is_assessed(prestressed_state(beam(), {row(400.0, 0.0, 12.0, 1e-6, 0.6)}, as_stated())));
  CHECK(is_assessed(prestressed_state(beam(), {row(400.0, 0.0, 12.0, 0.6 - 1e-6, 0.6)}, as_stated())));
}

TEST_CASE("of rows and ranges each number that is none, or out of order, has its reason") {
  const auto why = [](auto change) {
    std::vector<StrandRow> rows{row(400.0, 0.0, 12.0, 0.1, 0.6)};
    PrestressRange range = as_stated();
    change(rows, range);
    return why_not(prestressed_state(beam(), rows, range));
  };
  using Rows = std::vector<StrandRow>;
  const std::string no_range = "the range of the prestress or of the load is not a usable one",
                    no_force = "force or transfer length of a row of strands is not a usable number",
                    no_place = "a place of a row of strands is not a usable number",
                    beyond = "a row of strands runs beyond the ends of the piece",
                    depth = "a row of strands leaves the depth of the piece",
                    back = "a row of strands does not run along the piece from place to place";
  for (Ratio PrestressRange::*const part :
       {&PrestressRange::least, &PrestressRange::most, &PrestressRange::transfer_least,
        &PrestressRange::transfer_most, &PrestressRange::load_least, &PrestressRange::load_most}) {
    CHECK(why([&](Rows&, PrestressRange& range) { range.*part = Ratio{std::nan("")}; }) == no_range);
    CHECK(why([&](Rows&, PrestressRange& range) { range.*part = Ratio{-0.1}; }) == no_range);
  }
  for (Ratio PrestressRange::*const most :
       {&PrestressRange::most, &PrestressRange::transfer_most, &PrestressRange::load_most}) {
    CHECK(why([&](Rows&, PrestressRange& range) { range.*most = Ratio{0.99}; }) == no_range);
    CHECK(why([&](Rows&, PrestressRange& range) { range.*most = Ratio{INFINITY}; }) == no_range);
  }
  CHECK(why([](Rows&, PrestressRange& range) { range.least = Ratio{}; }) == no_range);
  CHECK(why([](Rows&, PrestressRange& range) { range.transfer_least = Ratio{}; }) == no_range);
  PrestressRange no_load = as_stated();
  no_load.load_least = Ratio{};
  CHECK(is_assessed(prestressed_state(beam(), {row(400.0, 0.0, 12.0, 0.1, 0.6)}, no_load)));
  for (const double bad : {0.0, -1.0, std::nan(""), double{INFINITY}}) {
    CHECK(why([&](Rows& rows, PrestressRange&) { rows[0].force = bad * kN; }) == no_force);
    CHECK(why([&](Rows& rows, PrestressRange&) { rows[0].transfer = bad * m; }) == no_force);
  }
  CHECK(why([](Rows& rows, PrestressRange&) { rows[0].points.resize(1); }) == "a row of strands has no line");
  CHECK(why([](Rows& rows, PrestressRange&) { rows.clear(); }) == "the piece has no row of strands");
  for (const std::size_t i : {0U, 1U}) {
    CHECK(why([&](Rows& rows, PrestressRange&) { rows[0].points[i].at = std::nan("") * m; }) == no_place);
    CHECK(why([&](Rows& rows, PrestressRange&) { rows[0].points[i].height = std::nan("") * m; }) == no_place);
    CHECK(why([&](Rows& rows, PrestressRange&) { rows[0].points[i].height = 0.6 * m; }) == depth);
    CHECK(why([&](Rows& rows, PrestressRange&) { rows[0].points[i].height = 0.0 * m; }) == depth);
  }
  CHECK(why([](Rows& rows, PrestressRange&) { rows[0].points[0].at = -0.001 * m; }) == beyond);
  CHECK(why([](Rows& rows, PrestressRange&) { rows[0].points[1].at = 12.001 * m; }) == beyond);
  CHECK(why([](Rows& rows, PrestressRange&) { rows[0].points[1].at = rows[0].points[0].at; }) == back);
}
