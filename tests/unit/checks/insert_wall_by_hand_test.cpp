// The tension of walls measured by hand, under pulls written by hand: which way a wall carries, which other
// pulls count, which walls are one ring. Hand-made rules: k_w 2.5, k_e 0.5, k_c 1.5, 15 thicknesses.

#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "checks/insert_wall.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_slab.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

constexpr double t = 0.2;  // m, of flat walls

struct Pull {  // kN
  double x = 0.0, y = 0.0, z = 0.0;
};

struct Way {
  double reach_m = 5.0;
  bool held = false;
};

// A slab across z, the insert in its face; ways towards +x, -x, +y, -y.
piece::InsertWall flat_wall(const std::array<Way, 4>& ways) {
  piece::InsertWall wall;
  wall.across = {0.0, 0.0, 1.0};
  wall.in_face = true;
  wall.thickness = t * m;
  const std::array<Direction, 4> towards{
      {{1.0, 0.0, 0.0}, {-1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}, {0.0, -1.0, 0.0}}};
  for (std::size_t i = 0; i < 4; ++i) wall.ways[i] = {towards[i], ways[i].reach_m * m, ways[i].held};
  return wall;
}

// A turn takes its pulls as they are. Legs to A1 (1, 0.5), A2 (3, 0.5), A3 (3, 1.5), A4 (1, 1.5); A2 is
// asked.
struct Pulled {
  SlabLift lift;
  std::optional<StageFacts> made;
  Trace trace = Trace::recording();

  explicit Pulled(const piece::InsertWall& wall) {
    turn_about_edge(lift, 45.0 * deg);
    lift.stage().rigging = "four legs";
    made.emplace(lift.facts());
    made->anchorage.walls.assign(4, wall);
    pull({{}, {}, {}, {}});
  }
  StageFacts& facts() { return *made; }
  static Situation situation(const std::string& name, const std::vector<Pull>& kN_each) {
    Situation one;
    one.name = name;
    for (const Pull& f : kN_each) {
      demands::LegForce leg;
      leg.on_insert = {f.x * kN, f.y * kN, f.z * kN};
      one.legs.push_back(leg);
    }
    return one;
  }
  void pull(const std::vector<Pull>& kN_each) {
    made->gear_situations = std::vector<Situation>{situation("pulled by hand", kN_each)};
  }
  Outcome<std::optional<WallTension>> asked() {
    trace = Trace::recording();
    return insert_wall_tension(*made, 1, trace);
  }
  WallTension found() {
    const auto wall = assessed(asked());
    if (!wall) FAIL("no wall holds the insert");
    return *wall;
  }
  double tension_kPa() { return in(kPa, found().tension); }
  double step(const std::string& symbol) { return step_named(trace, symbol).result.number; }
};

// kN and m: in kPa.
double strip_kPa(double M, double H, double w) { return 6.0 * M / (w * t * t) + H / (w * t); }

double kPa_of(const std::array<Way, 4>& ways, const Pull& pull) {
  Pulled piece(flat_wall(ways));
  piece.pull({{}, pull, {}, {}});
  return piece.tension_kPa();
}

}  // namespace

TEST_CASE("a slab between two walls bends most at the pull where that stands near its middle") {
  Pulled piece(flat_wall({{{0.9, true}, {1.1, true}, {}, {}}}));
  piece.pull({{}, {2.0, 0.0, 10.0}, {}, {}});
  // a = 0.9 + t/2, l = 0.9 + 1.1 + t; H by half of the thickness. At the nearer wall it would be 500 kPa.
  const double a = 1.0, l = 2.2, w = t + 2.5 * a * (1.0 - a / l), M = 10.0 * a * (l - a) / l + 2.0 * 0.1;
  const WallTension wall = piece.found();
  CHECK(in(kPa, wall.tension) == Approx(strip_kPa(M, 2.0, w)));
  CHECK(in(kPa, wall.tension) == Approx(548.8).margin(0.1));
  CHECK(wall.what == "wall or slab it sits in, between what holds it");
  CHECK(wall.situation == "pulled by hand");
  CHECK(in(m, wall.thickness) == Approx(t));
  CHECK((wall.in_face && !wall.round));
  CHECK(piece.step("w") == Approx(w));
  CHECK(piece.step("M_w") == Approx(M));
  CHECK(step_named(piece.trace, "w").formula == "min(t_w + k_w * a_w * (1 - a_w / l_w), n_strip * t_w)");
  CHECK(step_named(piece.trace, "M_w").formula == "F_w * a_w * (l_w - a_w) / l_w + H_w * e_w + M_o");
  CHECK_THAT(step_named(piece.trace, "M_w").words,
             Catch::Contains("at the pull, between what holds it; pulled by hand"));
  CHECK(step_named(piece.trace, "sigma").given.front().symbol == "r_turn");
}

TEST_CASE("held all round it carries the shorter way, of equal ones the first") {
  const Pull pull{2.0, 1.0, 10.0};
  const Way one{0.9, true}, other{1.1, true};
  const double along_x = kPa_of({{one, other, {}, {}}}, pull);
  const Way near{0.4, true}, less{0.6, true};
  CHECK(kPa_of({{one, other, near, less}}, pull) == Approx(kPa_of({{{}, {}, near, less}}, pull)));
  const Way far{0.95, true};
  CHECK(kPa_of({{one, other, far, other}}, pull) == Approx(along_x));
  CHECK(kPa_of({{one, other, one, other}}, pull) == Approx(along_x));
  CHECK(kPa_of({{one, other, {0.85, true}, other}}, pull) ==
        Approx(kPa_of({{{}, {}, {0.85, true}, other}}, pull)));
}

TEST_CASE("held on two sides that meet it juts out from the nearer, of equal ones from the first") {
  // w = t + 1.5 a, M = F a + H t/2, H along the way that it juts out.
  const double w = t + 1.5 * 0.5, by_y = strip_kPa(10.0 * 0.5 + 1.0 * 0.1, 1.0, w);
  const Pull pull{2.0, 1.0, 10.0};
  CHECK(kPa_of({{{1.0, true}, {}, {0.5, true}, {}}}, pull) == Approx(by_y));
  const double by_x = strip_kPa(10.0 * 1.0 + 2.0 * 0.1, 2.0, t + 1.5);
  CHECK(kPa_of({{{1.0, true}, {}, {1.5, true}, {}}}, pull) == Approx(by_x));
  CHECK(kPa_of({{{1.0, true}, {}, {1.0, true}, {}}}, pull) == Approx(by_x));
  CHECK(kPa_of({{{}, {1.0, true}, {}, {0.5, true}}}, pull) == Approx(by_y));
}

TEST_CASE("a wall held on one side juts out from there, as wide as its edges beside the pull leave it") {
  // a = 1.0, w = t + 1.5 a = 1.7: of the half of it, 0.85 m, there are 0.3 and 0.4 m.
  const double kPa = strip_kPa(10.0 * 1.0 + 2.0 * 0.1, 2.0, 0.3 + 0.4);
  CHECK(kPa_of({{{1.0, true}, {5.0}, {0.3}, {0.4}}}, {2.0, 0.0, 10.0}) == Approx(kPa));
  CHECK(kPa_of({{{5.0}, {1.0, true}, {0.3}, {0.4}}}, {2.0, 0.0, 10.0}) == Approx(kPa));
  CHECK(kPa_of({{{0.3}, {0.4}, {1.0, true}, {5.0}}}, {0.0, 2.0, 10.0}) == Approx(kPa));
  CHECK(kPa_of({{{0.3}, {0.4}, {5.0}, {1.0, true}}}, {0.0, 2.0, 10.0}) == Approx(kPa));
}

TEST_CASE("other pulls count on the strip, to its own end and edge, in its own plane, and no farther") {
  Pulled piece(flat_wall({{{1.9, true}, {2.5, true}, {0.95}, {0.95}}}));
  const auto of_others = [&](const std::vector<Pull>& pulls) {
    piece.pull(pulls);
    piece.found();
    for (const Term& term : step_named(piece.trace, "M_w").given)
      if (term.symbol == "M_o") return term.number;
    FAIL("M_o is not among the given");
    return 0.0;
  };
  auto& walls = piece.facts().anchorage.walls;
  const Pull F{0.0, 0.0, 10.0}, none{}, back{0.0, 0.0, -6.0}, more{0.0, 0.0, 6.0};
  REQUIRE(of_others({none, F, none, none}) == 0.0);
  // A1 stands 2 m farther from the nearer wall: 1.9 + 2.0 + 0.1 of l = 4.6, a = 2.0.
  CHECK(of_others({more, F, none, none}) == Approx(6.0 * 2.0 * (4.6 - 4.0) / 4.6));
  CHECK(of_others({back, F, none, none}) == 0.0);
  // The other wall: within a millimetre it counts.
  walls[1] = flat_wall({{{1.9, true}, {1.9995, true}, {0.95}, {0.95}}});
  CHECK(of_others({more, F, none, none}) == Approx(6.0 * 2.0 * (4.0995 - 4.0) / 4.0995));
  walls[1] = flat_wall({{{1.9, true}, {1.9985, true}, {0.95}, {0.95}}});
  CHECK(of_others({more, F, none, none}) == 0.0);
  // The nearer wall on its side: it stands 0.1 mm before it, and past it.
  walls[1] = flat_wall({{{2.5, true}, {2.0001, true}, {0.95}, {0.95}}});
  CHECK(of_others({more, F, none, none}) == Approx(6.0 * 0.1001 * 2.6 / 4.7001));
  walls[1] = flat_wall({{{2.5, true}, {1.9999, true}, {0.95}, {0.95}}});
  CHECK(of_others({more, F, none, none}) == 0.0);

  // A3 stands 1 m beside it. Farther than a thickness, it ends the strip half way to it, or counts: what
  // bends less.
  const auto width = [&](const Pull& pull_of_A3) {
    of_others({none, F, pull_of_A3, none});
    return piece.step("w_s");
  };
  walls[1] = flat_wall({{{1.9, true}, {2.5, true}, {0.998}, {0.95}}});
  CHECK(width(none) == Approx(0.998 + 0.95));
  CHECK(width(more) == Approx(0.998 + 0.95));
  walls[1] = flat_wall({{{1.9, true}, {2.5, true}, {0.9995}, {0.95}}});
  CHECK(width(more) == Approx(0.5 + 0.95));

  // Off the plane of the slab by more than half of its thickness it sits in another.
  piece.lift.plan.inserts[0].at.z = (0.3 + 0.1005) * m;
  CHECK(of_others({more, F, none, none}) == Approx(6.0 * 2.0 * (4.6 - 4.0) / 4.6));
  piece.lift.plan.inserts[0].at.z = (0.3 - 0.1015) * m;
  CHECK(of_others({more, F, none, none}) == 0.0);
}

TEST_CASE("of all situations the worst is named, of equals the first") {
  Pulled piece(flat_wall({{{0.9, true}, {1.1, true}, {}, {}}}));
  const Pull none{};
  const auto lifted = [&](const std::string& name, double F) {
    return Pulled::situation(name, {none, {0.0, 0.0, F}, none, none});
  };
  piece.facts().gear_situations =
      std::vector<Situation>{lifted("one", 9.0), lifted("two", 10.0), lifted("three", 10.0)};
  CHECK(piece.found().situation == "two");
  const double most = in(kPa, piece.found().tension);
  piece.facts().gear_situations = std::vector<Situation>{lifted("one", 10.0), lifted("two", 9.0)};
  CHECK(piece.found().situation == "one");
  CHECK(in(kPa, piece.found().tension) == Approx(most));
}

TEST_CASE("the leg to a beam pulls no insert") {
  Pulled piece(flat_wall({{{0.9, true}, {1.1, true}, {}, {}}}));
  piece.pull({{}, {0.0, 0.0, 10.0}, {}, {}});
  const double alone = piece.tension_kPa();
  plan::Rigging rigging = piece.lift.plan.riggings.front();
  rigging.legs[0].to = "end of the beam";
  piece.facts().rigging = &rigging;
  piece.pull({{50.0, 0.0, 50.0}, {0.0, 0.0, 10.0}, {}, {}});
  CHECK(piece.tension_kPa() == Approx(alone));
}

TEST_CASE("no wall, no pull: nothing, what is not known: not assessed, with its words") {
  Pulled free(flat_wall({{{}, {}, {}, {}}}));
  free.pull({{}, {0.0, 0.0, 10.0}, {}, {}});
  CHECK_FALSE(assessed(free.asked()));
  CHECK(bends_with_the_piece(free.facts(), 1));
  Pulled held(flat_wall({{{0.9, true}, {1.1, true}, {}, {}}}));
  CHECK_FALSE(assessed(held.asked()));
  CHECK_FALSE(bends_with_the_piece(held.facts(), 1));
  held.pull({{}, {0.0, 0.0, std::nan("")}, {}, {}});
  CHECK(why_not(held.asked()) == "a number of the wall or slab that the insert bends is not usable");
  held.pull({{}, {0.0, 0.0, 10.0}, {}, {}});
  held.lift.rules.bending_multiplier.emplace("turn.flat.smooth", made_ratio("m", 2.0));
  held.lift.plan.form->product = "bell.smooth";
  CHECK(why_not(held.asked()) == "the rule set has no bending multiplier for product 'bell.smooth'");
  held.lift.plan.form->product = "flat.smooth";
  CHECK(is_assessed(held.asked()));
  held.facts().gear_situations = NotAssessed{"no statics", "none"};
  CHECK(why_not(held.asked()) == "no statics");
}

TEST_CASE("a wall under a situation that no load set has is not assessed as the piece hangs") {
  SlabLift lift;
  auto facts = lift.facts();
  facts.anchorage.walls.assign(4, flat_wall({{{0.9, true}, {1.1, true}, {}, {}}}));
  Trace silent;
  const auto all = std::get<std::vector<Situation>>(facts.gear_situations);
  CHECK(assessed(insert_wall_tension(facts, 1, silent)));
  auto unknown = all;
  facts.bending = std::make_shared<BendingMemo>();  // nothing is known of it
  unknown.front().name = "swinging";
  facts.gear_situations = unknown;
  CHECK(why_not(insert_wall_tension(facts, 1, silent)) == "the loads of a situation are not known");
}

namespace {

// Inserts on a ring of radius 0.65 about (2, 1), wall 0.1 m, A2 at the angle zero.
constexpr double R = 0.65;

piece::InsertWall ring_wall() {
  piece::InsertWall wall;
  wall.across = {1.0, 0.0, 0.0};
  wall.thickness = 0.1 * m;
  wall.round =
      piece::RoundWall{{2.0 * m, 1.0 * m, 0.3 * m}, {0.0, 0.0, 1.0}, 0.6 * m, 0.7 * m, 0.3 * m, 1.0 * m};
  return wall;
}

struct RingPulled : Pulled {
  std::array<double, 4> at{};
  explicit RingPulled(const std::array<double, 4>& angles) : Pulled(ring_wall()), at(angles) {
    for (std::size_t i = 0; i < 4; ++i)
      lift.plan.inserts[i].at = {(2.0 + R * std::cos(at[i])) * m, (1.0 + R * std::sin(at[i])) * m, 0.3 * m};
  }
  // Inwards, in kN.
  void pinch(const std::array<double, 4>& kN_each) {
    std::vector<Pull> pulls(4);
    for (std::size_t i = 0; i < 4; ++i)
      pulls[i] = {-kN_each[i] * std::cos(at[i]), -kN_each[i] * std::sin(at[i]), 0.0};
    pull(pulls);
  }
  double height() {
    for (const Term& term : step_named(trace, "sigma_0").given)
      if (term.symbol == "h_w") return term.number;
    return 0.0;
  }
  // k_curve as printed gives the tension printed.
  double by_the_formula() {
    double k = 0.0, h = 0.0, tw = 0.0, N = 0.0;
    for (const Term& term : step_named(trace, "sigma_0").given) {
      if (term.symbol == "k_curve") k = term.number;
      if (term.symbol == "h_w") h = term.number;
      if (term.symbol == "t_w") tw = term.number;
      if (term.symbol == "N_w") N = term.number;
    }
    return k * step("M_w") / (h * tw * tw) + std::max(N, 0.0) / (h * tw);
  }
};

constexpr double pi = std::numbers::pi;
constexpr std::array<double, 4> opposite{0.5 * pi, 0.0, pi, 1.5 * pi};

}  // namespace

TEST_CASE("two legs pinch a ring by P R/pi, and inserts that nothing pulls are none of it") {
  RingPulled ring(opposite);
  ring.pinch({0.0, 3.0, 3.0, 0.0});
  const WallTension wall = ring.found();
  CHECK(wall.round);
  CHECK(wall.what == "round wall it sits in");
  CHECK(ring.step("M_w") == Approx(3.0 * R / pi).epsilon(1e-6));  // statics of thin rings
  CHECK_THAT(step_named(ring.trace, "M_w").words, Catch::Contains("a ring of 2 pulls"));
  CHECK(ring.height() == Approx(pi / 6.0 * R));
  CHECK(in(kPa, wall.tension) == Approx(ring.by_the_formula()));
  // A thick ring is asked for a little more than 6 M/(h t^2) at its inside.
  CHECK(in(kPa, wall.tension) > 6.0 * 3.0 * R / pi / (pi / 6.0 * R * 0.01));
  CHECK(in(kPa, wall.tension) < 1.1 * 6.0 * 3.0 * R / pi / (pi / 6.0 * R * 0.01));
}

TEST_CASE("the height of a ring that counts goes by the shortest arc, on whichever side of the insert that lies") {
  for (const double side : {1.0, -1.0}) {
    CAPTURE(side);
    RingPulled ring({0.6 * side, 0.0, 2.8 * side, pi});
    ring.pinch({3.0, 3.0, 3.0, 0.0});
    ring.found();
    CHECK(ring.height() == Approx(0.6 / 6.0 * R));
  }
}

TEST_CASE("near either end of a round wall the height that counts is the same, and never more than the wall has") {
  const auto height = [](double above_m, double below_m) {
    RingPulled ring(opposite);
    for (auto& wall : ring.facts().anchorage.walls) {
      auto& round = *std::get<piece::InsertWall>(*wall).round;
      round.above = above_m * m, round.below = below_m * m;
    }
    ring.pinch({0.0, 3.0, 3.0, 0.0});
    ring.found();
    return ring.height();
  };
  const double most = pi / 6.0 * R;  // 0.340
  for (const double end : {0.0, 0.06, 0.1, 0.25}) {
    CHECK(height(end, 1.0) == Approx(most));
    CHECK(height(1.0, end) == Approx(most));
  }
  CHECK(height(0.05, 0.1) == Approx(0.15));
  CHECK(height(0.1, 0.05) == Approx(0.15));
}

TEST_CASE("a pull on another wall is none of a ring: it is held by shear alone, 3 P R/(4 pi)") {
  RingPulled ring(opposite);
  ring.pinch({0.0, 3.0, 3.0, 0.0});
  auto& other = ring.facts().anchorage.walls[2];
  const auto moment = [&] {
    ring.found();
    return ring.step("M_w");
  };
  const auto with = [&](auto change) {
    piece::InsertWall changed = ring_wall();
    change(*changed.round);
    other = changed;
    return moment();
  };
  const double both = 3.0 * R / pi, alone = 0.75 * 3.0 * R / pi;
  SECTION("a flat one, and one that is not known") {
    other = flat_wall({{{0.9, true}, {1.1, true}, {}, {}}});
    CHECK(moment() == Approx(alone).epsilon(1e-6));
    // The height that counts: a sixth of the whole round, 0.3 m of it above.
    CHECK(ring.height() == Approx(2.0 * pi / 6.0 * R));
    other = NotAssessed{"a curved wall that is not round", {}};
    CHECK(moment() == Approx(alone).epsilon(1e-6));
  }
  SECTION("one about another axis") {
    CHECK(with([](piece::RoundWall& wall) { wall.axis_at.x += 0.9e-3 * m; }) == Approx(both).epsilon(1e-6));
    CHECK(with([](piece::RoundWall& wall) { wall.axis_at.x += 1.1e-3 * m; }) == Approx(alone).epsilon(1e-6));
    CHECK(with([](piece::RoundWall& wall) { wall.axis = {0.0, 0.0, -1.0}; }) == Approx(both).epsilon(1e-6));
    CHECK(with([](piece::RoundWall& wall) { wall.axis = {0.6, 0.0, 0.8}; }) == Approx(alone).epsilon(1e-6));
  }
  SECTION("one of another inside or outside") {
    for (const auto radius : {&piece::RoundWall::inside, &piece::RoundWall::outside})
      for (const double sign : {-1.0, 1.0}) {
        CHECK(with([&](piece::RoundWall& wall) { wall.*radius += sign * 0.9e-3 * m; }) ==
              Approx(both).epsilon(1e-6));
        CHECK(with([&](piece::RoundWall& wall) { wall.*radius += sign * 1.1e-3 * m; }) ==
              Approx(alone).epsilon(1e-6));
      }
  }
}

TEST_CASE("pulls nearer than two thicknesses are one to the height of a ring that counts") {
  const double one = 2.0 * 0.1 / R;
  for (const double apart : {0.95 * one, 1.05 * one}) {
    RingPulled ring({apart, 0.0, pi, 0.0});
    ring.pinch({1.0, 1.0, 2.0, 0.0});
    ring.found();
    const double shortest = apart < one ? pi - apart : apart;
    CHECK(ring.height() == Approx(shortest / 6.0 * R));
  }
}

TEST_CASE("a ring under legs that hang upright is not bent, a pull that is no number is not assessed") {
  RingPulled ring(opposite);
  ring.pull({{}, {0.0, 0.0, 5.0}, {0.0, 0.0, 5.0}, {}});
  CHECK(in(kPa, ring.found().tension) == Approx(0.0).margin(1e-9));
  CHECK(ring.step("M_w") == 0.0);
  CHECK(step_named(ring.trace, "sigma_0").given.front().number == 6.0);
  ring.pull({{}, {0.0, std::nan(""), 5.0}, {0.0, 0.0, 5.0}, {}});
  CHECK(why_not(ring.asked()) == "a number of the round wall that the insert bends is not usable");
  ring.pull({{}, {0.0, 0.0, 5.0}, {0.0, std::nan(""), 5.0}, {}});
  CHECK(why_not(ring.asked()) == "a number of the round wall that the insert bends is not usable");
}

TEST_CASE("the bending of a ring has all pulls in it where it is computed, and only there") {
  SlabLift lift;
  plan::Solid& solid = lift.plan.piece.solids[0];
  solid.shape = plan::Shape::pipe;
  solid.diameter = 3.4 * m, solid.inside_diameter = 3.0 * m, solid.length = 0.6 * m;
  lift.plan.piece.stated_weight.reset();
  lift.plan.form->contacts.clear();
  lift.plan.form->nothing_grips = true;
  for (std::size_t i = 0; i < 4; ++i)
    lift.plan.inserts[i].at = {1.6 * std::cos(0.5 * pi * static_cast<double>(i)) * m,
                               1.6 * std::sin(0.5 * pi * static_cast<double>(i)) * m, 0.6 * m};
  lift.plan.riggings[0].equalised.clear();
  auto facts = lift.facts();
  CHECK(pulls_are_in_its_bending(facts));
  auto unknown = std::get<std::vector<Situation>>(facts.gear_situations);
  unknown.front().name = "swinging";
  const auto known = facts.gear_situations;
  facts.gear_situations = unknown;
  facts.bending = std::make_shared<BendingMemo>();
  CHECK_FALSE(pulls_are_in_its_bending(facts));
  facts.gear_situations = NotAssessed{"no statics", "none"};
  CHECK_FALSE(pulls_are_in_its_bending(facts));
  facts.gear_situations = known;
  facts.bending = std::make_shared<BendingMemo>();
  CHECK(pulls_are_in_its_bending(facts));
  facts.up_before = Direction{1.0, 0.0, 0.0};
  CHECK_FALSE(pulls_are_in_its_bending(facts));
}
