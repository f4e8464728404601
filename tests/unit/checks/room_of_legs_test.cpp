// What of a rigging has no room, for legs, beams and hooks put by hand beside the slab 4 x 2 x 0.3 m of the
// tests: the worst of each thing, once. Hand-made rules: 20 mm beside a leg, 200 mm beside a hook, 200 mm
// its end.

#include <cmath>

#include <catch2/catch.hpp>

#include "checks/room_of_legs.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_slab.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

using Kind = TooNear::Kind;

Position at(double x_m, double y_m, double z_m) { return {x_m * m, y_m * m, z_m * m}; }

struct Span {
  Position lower, upper;
};

// Legs named "p1", "p2", ... that start at no insert, put where the test wants them; the hook far above.
struct ByHand {
  SlabLift lift;
  std::optional<StageFacts> made;
  ByHand() { made.emplace(lift.facts()); }
  explicit ByHand(Length x_of_A1) {
    lift.plan.inserts[0].at.x = x_of_A1;
    made.emplace(lift.facts());
  }
  StageFacts& facts() { return *made; }
  plan::Rigging& rigging() { return lift.plan.riggings.front(); }

  demands::Hanging hanging(const std::vector<Span>& spans, const Position& hook = at(2.0, 1.0, 10.0)) {
    demands::Hanging one;
    one.hook = hook;
    one.up = {0.0, 0.0, 1.0};
    for (const Span& span : spans) one.spans.push_back({span.upper, span.lower});
    return one;
  }
  void hang(const std::vector<Span>& spans, const std::vector<std::string>& to,
            const Position& hook = at(2.0, 1.0, 10.0)) {
    rigging().legs.clear();
    rigging().equalised.clear();
    for (const std::string& name : to) rigging().legs.push_back(leg_to(name));
    made->hanging = hanging(spans, hook);
  }
  std::vector<TooNear> found() { return assessed(room_of_legs(*made)); }
  TooNear one() {
    const auto all = found();
    if (all.size() != 1) FAIL(all.size() << " things have no room");
    return all.front();
  }
};

const Span away{at(1.0, 1.0, 5.0), at(3.0, 1.0, 6.0)};
Span above_by(double mm_each) {
  return {at(1.0, 1.0, 0.3 + mm_each / 1000.0), at(3.0, 1.0, 0.3 + mm_each / 1000.0)};
}
Span inside_by(double m_each) { return {at(-1.0, 1.0, 0.15), at(m_each, 1.0, 0.15)}; }

}  // namespace

TEST_CASE("a leg beside and in the concrete, to the least distance and to a millimetre inside") {
  ByHand slab;
  const auto with = [&](const Span& span) {
    slab.hang({span}, {"p"});
    return slab.found();
  };
  CHECK(with(away).empty());
  CHECK(with(above_by(20.1)).empty());
  const auto near = with(above_by(19.9));
  REQUIRE(near.size() == 1);
  CHECK(near[0].kind == Kind::near_concrete);
  CHECK(near[0].what == "the leg to p");
  CHECK(in(mm, near[0].length) == Approx(19.9).margin(1e-3));
  CHECK(in(mm, near[0].least) == Approx(20.0));
  CHECK(near[0].situation.empty());
  const auto touches = with(above_by(1e-7));  // less than the rounding of places
  REQUIRE(touches.size() == 1);
  CHECK(touches[0].length == Length{});
  const auto through = with(inside_by(0.5));
  REQUIRE(through.size() == 1);
  CHECK(through[0].kind == Kind::through);
  CHECK(in(m, through[0].length) == Approx(0.5));
  CHECK(through[0].least == Length{});
  CHECK(with(inside_by(0.0012)).at(0).kind == Kind::through);
  const auto grazes = with(inside_by(0.0008));
  REQUIRE(grazes.size() == 1);
  CHECK(grazes[0].kind == Kind::near_concrete);
  CHECK(grazes[0].length == Length{});
  CHECK(in(mm, grazes[0].least) == Approx(20.0));
}

TEST_CASE(
    "of one leg the worst is kept: through before near, the longer inside, the nearer beside, and where it "
    "was") {
  struct Case {
    Span first, second;
    bool second_is_worse;
    Kind kind;
    double length_m;
  };
  const std::vector<Case> cases{{above_by(10.0), above_by(5.0), true, Kind::near_concrete, 0.005},
                                {above_by(5.0), above_by(10.0), false, Kind::near_concrete, 0.005},
                                {above_by(5.0), inside_by(0.5), true, Kind::through, 0.5},
                                {inside_by(0.5), above_by(5.0), false, Kind::through, 0.5},
                                {inside_by(0.5), inside_by(0.7), true, Kind::through, 0.7},
                                {inside_by(0.7), inside_by(0.5), false, Kind::through, 0.7},
                                {away, above_by(5.0), true, Kind::near_concrete, 0.005},
                                {above_by(5.0), above_by(0.0), true, Kind::near_concrete, 0.0}};
  for (const Case& each : cases) {
    ByHand slab;
    slab.hang({each.first}, {"p"});
    slab.facts().without_parts = {slab.hanging({each.second})};
    const TooNear worst = slab.one();
    CHECK(worst.kind == each.kind);
    CHECK(in(m, worst.length) == Approx(each.length_m).margin(1e-6));
    CHECK(worst.situation == (each.second_is_worse ? "without form parts" : ""));
  }
}

TEST_CASE(
    "the end of a leg at its insert may stand in a recess: up to the clearance of it inside the concrete") {
  // Down by 1 in 10 from the insert over the edge at x = 0: all that is inside lies in the first 200 mm.
  const auto at_edge = [](double x_mm) {
    ByHand slab(x_mm * mm);
    slab.hang({{at(x_mm / 1000.0, 0.5, 0.3), at(x_mm / 1000.0 - 2.0, 0.5, 0.1)}}, {"A1"});
    return slab.found();
  };
  const double slope = std::sqrt(1.01);
  CHECK(at_edge(19.5 / slope).empty());
  const auto inside = at_edge(20.5 / slope);
  REQUIRE(inside.size() == 1);
  CHECK(inside[0].kind == Kind::through);
  CHECK(inside[0].what == "the leg to A1");
  CHECK(in(mm, inside[0].length) == Approx(20.5).margin(1e-3));
  // 0.9 m of it lie past the end.
  ByHand slab(1.1 / slope * m);
  slab.hang({{at(1.1 / slope, 0.5, 0.3), at(1.1 / slope - 2.0, 0.5, 0.1)}}, {"A1"});
  CHECK(in(m, slab.one().length) == Approx(1.1).margin(1e-6));
}

TEST_CASE("a hook beside the concrete, in it, and away from it") {
  const auto with_hook = [](const Position& hook) {
    ByHand slab;
    slab.hang({away}, {"p"}, hook);
    return slab.found();
  };
  CHECK(with_hook(at(-0.201, 1.0, -0.5)).empty());
  const auto near = with_hook(at(-0.199, 1.0, -0.5));
  REQUIRE(near.size() == 1);
  CHECK(near[0].kind == Kind::near_concrete);
  CHECK(near[0].what == "the hook");
  CHECK(in(mm, near[0].length) == Approx(199.0).margin(1e-3));
  CHECK(in(mm, near[0].least) == Approx(200.0));
  const auto through = with_hook(at(1.0, 1.0, -0.5));
  REQUIRE(through.size() == 1);
  CHECK(through[0].kind == Kind::through);
  CHECK(in(m, through[0].length) == Approx(0.3));
  const auto grazes = with_hook(at(1.0, 1.0, 0.2992));
  REQUIRE(grazes.size() == 1);
  CHECK(grazes[0].kind == Kind::near_concrete);
  CHECK(grazes[0].length == Length{});
}

TEST_CASE("two hooks, and one that no leg hangs from") {
  ByHand slab;
  slab.hang({{at(0.0, 1.0, 5.0), at(1.0, 1.0, 9.0)}, {at(4.0, 1.0, 5.0), at(1.199, 1.0, 9.0)}}, {"p1", "p2"});
  slab.rigging().hooks = {{"west", {}, "bay", {}}, {"east", {}, "yard", {}}, {"spare", {}, "yard", {}}};
  slab.rigging().legs[0].from = "west", slab.rigging().legs[1].from = "east";
  const TooNear near = slab.one();
  CHECK(near.kind == Kind::hooks);
  CHECK(near.what == "hook west and hook east");
  CHECK(in(mm, near.length) == Approx(199.0));
  std::get<demands::Hanging>(slab.facts().hanging).spans[1][0].x = 1.201 * m;
  CHECK(slab.found().empty());
}

TEST_CASE("legs that pass each other, and legs that end in one place") {
  const auto apart = [](double gap_mm, const Position& other_end = at(1.0, 2.0, 5.0)) {
    ByHand slab;
    const Position low{at(1.0, 1.0, 5.0).x, at(1.0, 1.0, 5.0).y, (5.0 + gap_mm / 1000.0) * m};
    slab.hang({{at(0.0, 1.0, 5.0), at(2.0, 1.0, 5.0)},
               {{1.0 * m, 0.0 * m, low.z}, {other_end.x, other_end.y, low.z}}},
              {"p1", "p2"});
    return slab.found();
  };
  CHECK(apart(20.1).empty());
  const auto near = apart(19.9);
  REQUIRE(near.size() == 1);
  CHECK(near[0].kind == Kind::near_each_other);
  CHECK(near[0].what == "the leg to p1 and the leg to p2");
  CHECK(in(mm, near[0].length) == Approx(19.9).margin(1e-3));
  // Their upper ends are one place to a millimetre.
  CHECK(apart(0.9, at(2.0, 1.0, 5.0)).empty());
  CHECK(apart(1.1, at(2.0, 1.0, 5.0)).size() == 1);
  const auto above = [](double gap_m) {  // beside the slab, where heights are exact
    ByHand slab;
    slab.hang({{at(-3.0, 1.0, 0.0), at(-1.0, 1.0, 0.0)}, {at(-2.0, 0.0, gap_m), at(-1.0, 1.0, gap_m)}},
              {"p1", "p2"});
    return slab.found().size();
  };
  CHECK(above(0.001) == 0);
  CHECK(above(std::nextafter(0.001, 1.0)) == 1);
}

TEST_CASE("a leg is named by where it hangs from, where there is more than one hook alone") {
  ByHand slab;
  slab.hang({above_by(5.0)}, {"p"});
  slab.rigging().legs[0].from = "top";
  CHECK(slab.one().what == "the leg to p");
  plan::Sheave sheave;
  sheave.id = "s";
  slab.rigging().sheaves = {sheave};
  std::get<demands::Hanging>(slab.facts().hanging).carriers.emplace_back();
  CHECK(slab.one().what == "the leg from top to p");
  slab.rigging().legs[0].from.clear();
  CHECK(slab.one().what == "the leg to p");
}

namespace {

demands::CarrierPose pose_at_point(const Position& origin) {
  demands::CarrierPose pose;
  pose.origin = origin;
  pose.axes = {{{1.0, 0.0, 0.0}, {0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}}};
  return pose;
}

plan::Beam beam_with(const std::vector<std::pair<std::string, Position>>& points) {
  plan::Beam beam;
  beam.id = "bm";
  for (const auto& [id, place] : points) beam.points.push_back({id, place, {}});
  return beam;
}

}  // namespace

TEST_CASE(
    "a beam beside the concrete, its points that are one place are no line, one without points is none") {
  const auto with = [](double up_mm, plan::Beam beam) {
    ByHand slab;
    slab.hang({away}, {"p"});
    slab.rigging().beams = {std::move(beam)};
    auto hanging = std::get<demands::Hanging>(slab.facts().hanging);
    hanging.carriers = {pose_at_point(at(2.0, 1.0, 0.3 + up_mm / 1000.0))};
    slab.facts().hanging = hanging;
    return slab.found();
  };
  const plan::Beam beam =
      beam_with({{"l", at(-1.0, 0.0, 0.0)}, {"r", at(1.0, 0.0, 0.0)}, {"r too", at(1.0, 0.0, 0.0)}});
  CHECK(with(20.1, beam).empty());
  const auto near = with(19.9, beam);
  REQUIRE(near.size() == 1);
  CHECK(near[0].what == "beam bm");
  CHECK(near[0].kind == Kind::near_concrete);
  CHECK(in(mm, near[0].length) == Approx(19.9).margin(1e-3));
  CHECK(with(5.0, beam_with({})).empty());
}

TEST_CASE(
    "a leg beside and through a beam: to a millimetre, to the clearance, but for its end where it is fixed") {
  // A beam along x at z = 5; a leg across it, `gap` above.
  const auto across = [](double gap_mm) {
    ByHand slab;
    slab.hang({{at(2.0, 0.0, 5.0 + gap_mm / 1000.0), at(2.0, 2.0, 5.0 + gap_mm / 1000.0)}}, {"p"});
    slab.rigging().beams = {beam_with({{"l", at(-1.0, 0.0, 0.0)}, {"r", at(1.0, 0.0, 0.0)}})};
    auto hanging = std::get<demands::Hanging>(slab.facts().hanging);
    hanging.carriers = {pose_at_point(at(2.0, 1.0, 5.0))};
    slab.facts().hanging = hanging;
    return slab.found();
  };
  CHECK(across(20.1).empty());
  CHECK(across(19.9).at(0).kind == Kind::near_each_other);
  CHECK(across(19.9).at(0).what == "the leg to p and beam bm");
  CHECK(across(1.1).at(0).kind == Kind::near_each_other);
  CHECK(across(0.9).at(0).kind == Kind::through_beam);

  // A leg that is fixed to the left end and runs back over the beam, a little above it: what is past its
  // first 200 mm counts.
  const auto over = [](double rise_mm_per_m, double length_m, bool from_below) {
    ByHand slab;
    const Position end = at(1.0, 1.0, 5.0),
                   other = at(1.0 + length_m, 1.0, 5.0 + rise_mm_per_m * length_m / 1000.0);
    slab.hang({from_below ? Span{other, end} : Span{end, other}}, {from_below ? "p" : "l"});
    if (from_below) slab.rigging().legs[0].from = "l";
    slab.rigging().beams = {beam_with({{"l", at(-1.0, 0.0, 0.0)}, {"r", at(1.0, 0.0, 0.0)}})};
    auto hanging = std::get<demands::Hanging>(slab.facts().hanging);
    hanging.carriers = {pose_at_point(at(2.0, 1.0, 5.0))};
    slab.facts().hanging = hanging;
    std::vector<TooNear> as_it_hangs;
    for (const TooNear& each : slab.found())
      if (each.situation.empty()) as_it_hangs.push_back(each);
    return as_it_hangs;
  };
  for (const bool from_below : {false, true}) {
    CHECK(over(101.0, 1.0, from_below).empty());  // 20.2 mm at 200 mm
    REQUIRE(over(99.0, 1.0, from_below).size() == 1);
    CHECK(over(99.0, 1.0, from_below)[0].kind == Kind::near_each_other);
    CHECK(over(4.0, 1.0, from_below)[0].kind == Kind::through_beam);
    CHECK(over(4.0, 0.199, from_below).empty());  // all of it is its end
    CHECK(over(4.0, 0.201, from_below).size() == 1);
  }
}

TEST_CASE("a beam lies where its points are, also those beside its middle") {
  ByHand slab;
  slab.hang({{at(2.0, 0.0, 5.0), at(2.0, 0.7, 5.0)}}, {"p"});
  slab.rigging().beams = {beam_with({{"l", at(-1.0, -0.5, 0.0)}, {"r", at(1.0, -0.5, 0.0)}})};
  auto hanging = std::get<demands::Hanging>(slab.facts().hanging);
  hanging.carriers = {pose_at_point(at(2.0, 1.0, 5.0))};  // the beam at y = 0.5, not 1.5
  slab.facts().hanging = hanging;
  CHECK(slab.one().kind == Kind::through_beam);
  CHECK(slab.one().what == "the leg to p and beam bm");
}

TEST_CASE("a leg between two points of one beam is asked without its two ends") {
  const auto between = [](double length_m) {
    ByHand slab;
    slab.hang({{at(1.0, 1.0, 5.0), at(1.0 + length_m, 1.0, 5.0)}}, {"l"});
    slab.rigging().legs[0].from = "r";
    slab.rigging().beams = {beam_with({{"l", at(-1.0, 0.0, 0.0)}, {"r", at(1.0, 0.0, 0.0)}})};
    auto hanging = std::get<demands::Hanging>(slab.facts().hanging);
    hanging.carriers = {pose_at_point(at(2.0, 1.0, 5.0))};
    slab.facts().hanging = hanging;
    return slab.found();
  };
  CHECK(between(0.399).empty());
  REQUIRE(between(0.401).size() == 1);
  CHECK(between(0.401)[0].kind == Kind::through_beam);
}

TEST_CASE("where legs or hooks are no numbers, or are those of another rigging, is not known") {
  const std::string unknown = "whether a leg meets the concrete is not known: the solid cannot be asked";
  const Span nowhere{at(1.0, 1.0, std::nan("")), at(1.0, 1.0, 5.0)};
  ByHand slab;
  slab.hang({nowhere}, {"p"});
  CHECK(why_not(room_of_legs(slab.facts())) == unknown);
  slab.hang({away}, {"p"}, at(2.0, std::nan(""), 5.0));
  CHECK(why_not(room_of_legs(slab.facts())) == unknown);
  slab.hang({away}, {"p"});
  CHECK(slab.found().empty());
  slab.facts().without_parts = {slab.hanging({nowhere})};
  CHECK(why_not(room_of_legs(slab.facts())) == unknown);

  const std::string others = "where the legs run as the piece hangs is not known";
  slab.facts().without_parts = {slab.hanging({})};
  CHECK(why_not(room_of_legs(slab.facts())) == others);
  slab.facts().without_parts.clear();
  slab.hang({away}, {"p1", "p2"});
  CHECK(why_not(room_of_legs(slab.facts())) == others);
  slab.hang({away}, {"p"});
  slab.rigging().beams = {beam_with({{"l", at(-1.0, 0.0, 0.0)}, {"r", at(1.0, 0.0, 0.0)}})};
  CHECK(why_not(room_of_legs(slab.facts())) == others);
  slab.rigging().beams.clear();
  slab.facts().rigging = nullptr;
  CHECK(why_not(room_of_legs(slab.facts())) == others);
  CHECK(finding_for("leg-clearance", "four legs", slab.facts()).result == Result::missing);
  slab.facts().rigging = &slab.rigging();
  slab.facts().hanging = NotAssessed{"it does not hang", "none"};
  CHECK(why_not(room_of_legs(slab.facts())) == "it does not hang");
  slab.facts().turning = Outcome<TurnSweep>{NotAssessed{"it is not turned", "none"}};
  CHECK(why_not(room_of_legs(slab.facts())) == "it is not turned");
}
