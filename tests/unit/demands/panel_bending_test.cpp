#include "demands/panel_bending.hpp"
#include "demands/panel_estimate.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <future>
#include <limits>
#include <string>
#include <vector>

#include "support/assessed.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using demands::Panel;
using demands::PanelForce;

namespace {

// 6 x 3 m under 5 kPa, four picks at 0.2071 of each side, carried alike.
Panel on_four_picks() {
  Panel panel;
  panel.outer = {{0.0 * m, 0.0 * m}, {6.0 * m, 0.0 * m}, {6.0 * m, 3.0 * m}, {0.0 * m, 3.0 * m}};
  panel.poisson = Ratio::from_value(0.2);
  panel.loads.resize(1);
  panel.loads[0].pressure = 5.0 * kPa;
  panel.patch = 0.36 * m;
  panel.strip = 1.5 * m;
  for (const double x : {0.2071 * 6.0, 6.0 - 0.2071 * 6.0})
    for (const double y : {0.2071 * 3.0, 3.0 - 0.2071 * 3.0})
      panel.loads[0].forces.push_back({{x * m, y * m}, 22.5 * kN, {}, {}, {}, true});
  return panel;
}

demands::PanelBending bending_of(const Panel& panel) {
  const auto all = assessed(demands::panel_bending(panel));
  REQUIRE(all.size() == 1);
  return all.front();
}

double per_metre_kNm(const demands::PanelMoment& moment) { return moment.moment.value() / 1000.0; }

}  // namespace

TEST_CASE("a panel on four picks: sagging at mid-length of the long edge, hogging at the picks") {
  const auto bending = bending_of(on_four_picks());
  CAPTURE(bending.error, bending.nodes);
  // q a^2 = 5 x 9 = 45 kN: M_y .0903 q a^2 at the middle of the long edge, a mean over a disc a little less.
  CHECK(per_metre_kNm(bending.bottom_tension) == Approx(0.0903 * 45.0).epsilon(0.06));
  CHECK(in(m, bending.bottom_tension.at.x) == Approx(3.0).margin(0.3));
  // Strip of half the side across: about .025 q b^2 (b = 6 m) and the same for the short span.
  CHECK(per_metre_kNm(bending.top_tension) == Approx(0.0227 * 180.0).epsilon(0.1));
  CHECK(bending.error <= 0.05);
}

TEST_CASE("beside an opening the moment is at least the mean of statics over what is left") {
  Panel panel = on_four_picks();
  // A window in the middle, the load on the rest kept in balance by the picks.
  panel.holes = {{{2.4 * m, 0.9 * m}, {3.6 * m, 0.9 * m}, {3.6 * m, 2.1 * m}, {2.4 * m, 2.1 * m}}};
  for (PanelForce& force : panel.loads[0].forces) force.up = 5.0 * kPa * (18.0 - 1.44) * m2 / 4.0;
  const auto with_window = bending_of(panel);
  // Half the panel: 41.4 kN from the picks at 1.2426 m, 5 x (9 x 1.5 - 0.72 x 0.3) from the load, over 1.8 m.
  const double mean = (41.4 * (3.0 - 1.2426) - 5.0 * (9.0 * 1.5 - 0.72 * 0.3)) / 1.8;
  CHECK(mean == Approx(3.52).margin(0.005));
  CHECK(per_metre_kNm(with_window.bottom_tension) > mean);
  CHECK(per_metre_kNm(with_window.bottom_tension) < 1.5 * mean);
}

TEST_CASE("thrust above mid-depth adds sagging between the picks: H e over the width") {
  Panel panel = on_four_picks();
  panel.strip = 3.0 * m;
  const double before = per_metre_kNm(bending_of(panel).bottom_tension);
  for (PanelForce& force : panel.loads[0].forces) {
    force.along_x = (force.at.x < 3.0 * m ? 1.0 : -1.0) * 10.0 * kN;
    force.above_middle = 0.3 * m;
  }
  // Two picks a line: 2 x 10 x 0.3 kN m over 3 m is 2 kN m a metre on average, less at the edge.
  const double after = per_metre_kNm(bending_of(panel).bottom_tension);
  CHECK(after - before > 1.0);
  CHECK(after - before < 4.0);
}

TEST_CASE("moments scale with the load, and with the square of the size") {
  const Panel panel = on_four_picks();
  Panel heavy = panel, large = panel;
  heavy.loads[0].pressure *= 3.0;
  for (PanelForce& force : heavy.loads[0].forces) force.up *= 3.0;
  const auto twice = [](Length& length) { length *= 2.0; };
  for (auto& p : large.outer) twice(p.x), twice(p.y);
  for (PanelForce& force : large.loads[0].forces) twice(force.at.x), twice(force.at.y), force.up *= 4.0;
  twice(large.patch), twice(large.strip);
  const auto one = bending_of(panel);
  CHECK(per_metre_kNm(bending_of(heavy).top_tension) ==
        Approx(3.0 * per_metre_kNm(one.top_tension)).epsilon(1e-6));
  CHECK(per_metre_kNm(bending_of(large).bottom_tension) ==
        Approx(4.0 * per_metre_kNm(one.bottom_tension)).epsilon(5e-3));
}

TEST_CASE("a panel is the same wherever its origin is") {
  const Panel panel = on_four_picks();
  Panel moved = panel;
  const auto move = [](plan::PlanarPoint& p) { p.x += 40.0 * m, p.y -= 25.0 * m; };
  for (auto& p : moved.outer) move(p);
  for (PanelForce& force : moved.loads[0].forces) move(force.at);
  const auto one = bending_of(panel), other = bending_of(moved);
  CHECK(other.nodes == one.nodes);
  CHECK(per_metre_kNm(other.bottom_tension) == Approx(per_metre_kNm(one.bottom_tension)).epsilon(1e-6));
  CHECK(per_metre_kNm(other.top_tension) == Approx(per_metre_kNm(one.top_tension)).epsilon(1e-6));
}

TEST_CASE("loads on one mesh are computed as each alone") {
  Panel two = on_four_picks();
  two.loads.push_back(two.loads[0]);
  two.loads[1].pressure *= 2.0;
  for (PanelForce& force : two.loads[1].forces) force.up *= 2.0;
  const auto both = assessed(demands::panel_bending(two));
  REQUIRE(both.size() == 2);
  CHECK(per_metre_kNm(both[0].top_tension) == Approx(per_metre_kNm(bending_of(on_four_picks()).top_tension)));
  CHECK(per_metre_kNm(both[1].top_tension) == Approx(2.0 * per_metre_kNm(both[0].top_tension)));
}

TEST_CASE("a panel that cannot be computed is not assessed") {
  Panel panel = on_four_picks();
  const double no_number = std::numeric_limits<double>::quiet_NaN();
  SECTION("no pick") { panel.loads[0].forces.clear(); }
  SECTION("no load") { panel.loads.clear(); }
  SECTION("no outline") { panel.outer.clear(); }
  SECTION("pressure not a number") { panel.loads[0].pressure = no_number * kPa; }
  SECTION("a force that is not a number") { panel.loads[0].forces[0].up = no_number * kN; }
  SECTION("forces that do not balance") { panel.loads[0].forces[0].up *= 1.01; }
  SECTION("no width to average over") { panel.strip = Length{}; }
  SECTION("a pick outside the panel") {
    panel.loads[0].forces.push_back({{7.0 * m, 1.0 * m}, Force{}, {}, {}, {}, true});
  }
  CHECK_FALSE(why_not(demands::panel_bending(panel)).empty());
}

TEST_CASE("moments read for a drawing are those of the statics, and nothing beside the panel or in an opening") {
  const Panel panel = on_four_picks();
  const auto estimate = demands::PanelEstimate::of(panel);
  REQUIRE(estimate);
  const std::vector<plan::PlanarPoint> places = {{3.0 * m, 0.05 * m}, {3.0 * m, 1.5 * m}, {7.0 * m, 1.0 * m}};
  const auto read = assessed(estimate->moments(panel.loads.front(), places));
  REQUIRE(read.size() == 3);
  REQUIRE(read[0]);
  REQUIRE(read[1]);
  CHECK_FALSE(read[2]);
  const auto bending = bending_of(panel);
  CHECK(read[0]->most.value() == Approx(bending.bottom_tension.moment.value()).epsilon(0.08));  // where it is largest
  CHECK(read[1]->most < read[0]->most);
  for (const auto& each : {read[0], read[1]}) CHECK(each->least <= each->most);
  // Half the panel on a cut across its middle: 2 x 22.5 (3 - 1.2426) - 5 x 9 x 1.5 kN m over 3 m, mean of M_x.
  std::vector<plan::PlanarPoint> cut;
  for (int i = 0; i < 60; ++i) cut.push_back({3.0 * m, (i + 0.5) / 20.0 * m});
  double mean_kNm = 0.0;
  for (const auto& each : assessed(estimate->moments(panel.loads.front(), cut)))
    mean_kNm += std::max(std::abs(each->most.value()), std::abs(each->least.value())) / 60.0 / 1000.0;
  CHECK(mean_kNm == Approx((45.0 * (3.0 - 1.2426) - 67.5) / 3.0).epsilon(0.15));

  Panel opened = panel;
  opened.holes = {{{2.4 * m, 0.9 * m}, {3.6 * m, 0.9 * m}, {3.6 * m, 2.1 * m}, {2.4 * m, 2.1 * m}}};
  const auto around = demands::PanelEstimate::of(opened);
  REQUIRE(around);
  CHECK_FALSE(assessed(around->moments(panel.loads.front(), {{3.0 * m, 1.5 * m}}))[0]);
  demands::PanelLoad beside = panel.loads.front();
  beside.forces.front().at = {9.0 * m, 0.0 * m};
  CHECK_FALSE(is_assessed(estimate->moments(beside, places)));
}

TEST_CASE("the estimate of a panel is near its bending, at the same places, and says what it cannot do") {
  Panel panel = on_four_picks();
  panel.outer = {{1.0 * m, -1.0 * m},
                 {7.0 * m, -1.0 * m},
                 {7.0 * m, 2.0 * m},
                 {1.0 * m, 2.0 * m}};  // away from the origin
  for (PanelForce& force : panel.loads[0].forces) force.at.x += 1.0 * m, force.at.y -= 1.0 * m;
  const auto estimate = demands::PanelEstimate::of(panel);
  REQUIRE(estimate);
  const auto bent = assessed(estimate->bending(panel.loads));
  REQUIRE(bent.size() == 1);
  const auto exact = bending_of(panel);
  CHECK(per_metre_kNm(bent[0].bottom_tension) == Approx(per_metre_kNm(exact.bottom_tension)).epsilon(0.1));
  CHECK(per_metre_kNm(bent[0].top_tension) ==
        Approx(per_metre_kNm(exact.top_tension)).epsilon(0.25));  // peaks: rougher
  CHECK(in(m, bent[0].bottom_tension.at.x) == Approx(4.0).margin(0.3));

  // Bending along y alone, as of a strip: the principal moments are 0 and m, whichever way.
  demands::PanelLoad beside = panel.loads[0];
  beside.forces[0].at.x = 0.9 * m;
  CHECK(why_not(estimate->bending({beside})) == "a force acts beside the panel or in an opening");
  CHECK(why_not(estimate->moments(beside, {})) == "a force acts beside the panel or in an opening");
  demands::PanelLoad no_number = panel.loads[0];
  no_number.pressure = std::numeric_limits<double>::quiet_NaN() * kPa;
  CHECK(why_not(estimate->bending({no_number})) == "the bending of the panel gave no numbers");
  CHECK(why_not(estimate->moments(no_number, {})) == "the bending of the panel gave no numbers");
  panel.outer.resize(2);
  CHECK(demands::PanelEstimate::of(panel) == nullptr);
}

// A long strip on two lines near its ends bends in one direction: M = w x (l - x)/2, nothing across
// (Poisson's ratio 0).
TEST_CASE("moments read for a drawing: the larger of a strip is its moment, the lesser nothing") {
  Panel panel = on_four_picks();
  panel.outer = {{0.0 * m, 0.0 * m}, {6.0 * m, 0.0 * m}, {6.0 * m, 0.6 * m}, {0.0 * m, 0.6 * m}};
  panel.poisson = Ratio{};
  panel.patch = 0.2 * m;
  panel.loads[0].forces.clear();
  for (const double x : {0.5, 5.5})
    for (const double y : {0.15, 0.45})
      panel.loads[0].forces.push_back({{x * m, y * m}, 4.5 * kN, {}, {}, {}, true});
  const auto estimate = demands::PanelEstimate::of(panel);
  REQUIRE(estimate);
  const auto read = assessed(estimate->moments(panel.loads[0], {{3.0 * m, 0.3 * m}, {2.0 * m, 0.3 * m}}));
  // 5 kPa: 15 x (3.0 - 0.5) - 5 x 9/2 = 15.0 kN m over 1 m width at mid-length; 15 x 1.5 - 5 x 4/2 at 2 m.
  REQUIRE(read[0]);
  REQUIRE(read[1]);
  CHECK(read[0]->most.value() / 1000.0 == Approx(9.0 / 0.6 * 2.5 - 22.5).epsilon(0.01));
  CHECK(read[1]->most.value() / 1000.0 == Approx(9.0 / 0.6 * 1.5 - 10.0).epsilon(0.01));
  for (const auto& each : read) CHECK(each->least.value() / 1000.0 == Approx(0.0).margin(0.15));
  // Turned upside down by the load: the most is nothing and the least the moment.
  demands::PanelLoad lifted = panel.loads[0];
  lifted.pressure *= -1.0;
  for (PanelForce& force : lifted.forces) force.up *= -1.0;
  const auto other = assessed(estimate->moments(lifted, {{3.0 * m, 0.3 * m}}));
  CHECK(other[0]->least.value() / 1000.0 == Approx(-15.0).epsilon(0.01));
  CHECK(other[0]->most.value() / 1000.0 == Approx(0.0).margin(0.15));
}

TEST_CASE("a panel: each number that is none, each limit of the balance, with its reason") {
  const double nan = std::numeric_limits<double>::quiet_NaN(),
               infinite = std::numeric_limits<double>::infinity();
  const auto why = [](auto change) {
    Panel panel = on_four_picks();
    change(panel);
    return why_not(demands::panel_bending(panel));
  };
  const std::string number = "a number of the panel is not usable",
                    nothing = "the panel has no outline or no pick",
                    balance = "the forces on the panel do not balance",
                    along = "the forces along the panel do not balance",
                    force = "a force on the panel is not a usable number",
                    beside = "a force acts beside the panel or in an opening",
                    thickness = "the thickness of the panel is not a usable number";
  for (const double bad : {-0.01, 0.5, nan}) CHECK(why([&](Panel& p) { p.poisson = Ratio{bad}; }) == number);
  for (const double bad : {0.0, -0.1, nan, infinite}) {
    CHECK(why([&](Panel& p) { p.patch = bad * m; }) == number);
    CHECK(why([&](Panel& p) { p.strip = bad * m; }) == number);
    CHECK(why([&](Panel& p) { p.in_plane = true, p.thickness = bad * m; }) == thickness);
  }
  CHECK(why([](Panel& p) { p.outer.resize(2); }) == nothing);
  CHECK(why([](Panel& p) { p.loads[0].forces.clear(); }) == nothing);
  CHECK(why([&](Panel& p) { p.loads[0].forces[1].along_x = nan * kN; }) == force);
  CHECK(why([&](Panel& p) { p.loads[0].forces[1].along_y = infinite * kN; }) == force);
  CHECK(why([&](Panel& p) { p.loads[0].forces[1].up = nan * kN; }) == balance);
  CHECK(why([&](Panel& p) { p.loads[0].pressure = infinite * kPa; }) == balance);
  // 90 kN of load and as much of picks: 1e-4 of 180 kN is 18 N.
  CHECK(is_assessed([] {
    Panel p = on_four_picks();
    p.loads[0].forces[0].up += 17.0 * newton;
    return demands::panel_bending(p);
  }()));
  CHECK(why([](Panel& p) { p.loads[0].forces[0].up += 19.0 * newton; }) == balance);
  // Turned about x and y, with the sum kept: beyond 2e-3 of 180 kN times the length of the panel.
  CHECK(why([](Panel& p) {
          for (std::size_t i : {0U, 1U})
            p.loads[0].forces[i].up += 700.0 * newton, p.loads[0].forces[i + 2].up -= 700.0 * newton;
        }) == balance);
  CHECK(why([](Panel& p) {
          for (std::size_t i : {0U, 2U})
            p.loads[0].forces[i].up += 1500.0 * newton, p.loads[0].forces[i + 1].up -= 1500.0 * newton;
        }) == balance);
  CHECK(why([](Panel& p) {
          p.in_plane = true, p.thickness = 0.15 * m, p.loads[0].forces[0].along_x = 400.0 * newton;
        }) == along);
  CHECK(why([](Panel& p) {
          p.in_plane = true, p.thickness = 0.15 * m, p.loads[0].pull_along_y = 25.0 * Pa;
        }) == along);
  CHECK(why([](Panel& p) {
          p.holes = {{{1.0 * m, 0.5 * m}, {1.5 * m, 0.5 * m}, {1.5 * m, 1.0 * m}, {1.0 * m, 1.0 * m}}};
          p.loads[0].pressure = 90.0 * kN / ((18.0 - 0.25) * m2);
        }) != "");
  CHECK(why([](Panel& p) {
          p.loads[0].forces.push_back({{6.1 * m, 1.0 * m}, Force{}, {}, {}, {}, true});
        }) == beside);
}

TEST_CASE("a panel asked again, after others, or by several threads at once, gives the same numbers to the last bit") {
  const auto numbers = [](const Panel& panel) {
    std::vector<double> all;
    for (const auto& bent : assessed(demands::panel_bending(panel)))
      for (const auto& most : {bent.bottom_tension, bent.top_tension})
        all.insert(all.end(), {most.moment.value(), in(m, most.at.x), in(m, most.at.y), bent.error});
    return all;
  };
  const Panel panel = on_four_picks();
  Panel heavier = panel;
  for (auto& load : heavier.loads) {
    load.pressure *= 1.5;
    for (auto& force : load.forces) force.up *= 1.5;
  }
  const std::vector<double> first = numbers(panel), of_heavier = numbers(heavier);
  CHECK(of_heavier.front() == Approx(1.5 * first.front()).epsilon(1e-12));
  // Each of these differs in one of the numbers that the meshes are made of; together they are more than are kept.
  std::vector<Panel> others(9, panel);
  for (std::size_t i = 0; i < 6; ++i) {  // longer, its picks where they were
    const Length longer = (1.0 + static_cast<double>(i)) * 0.01 * m;
    for (const std::size_t corner : {1u, 2u}) others[i].outer[corner].x += longer;
    for (const std::size_t corner : {0u, 3u}) others[i].outer[corner].x -= longer;
    for (auto& force : others[i].loads[0].forces) force.up *= ((6.0 * m + 2.0 * longer) / (6.0 * m)).value();
  }
  others[6].poisson = 0.0, others[7].patch *= 1.2, others[8].strip *= 0.8;
  for (std::size_t i = 0; i < others.size(); ++i) {
    CAPTURE(i);
    CHECK(numbers(others[i]) != first);
  }
  CHECK(numbers(panel) == first);
  std::vector<std::future<std::vector<double>>> threads;
  for (int i = 0; i < 4; ++i)
    threads.push_back(std::async(std::launch::async, [&, i] { return numbers(i % 2 == 0 ? panel : heavier); }));
  for (std::size_t i = 0; i < threads.size(); ++i) CHECK(threads[i].get() == (i % 2 == 0 ? first : of_heavier));
}
