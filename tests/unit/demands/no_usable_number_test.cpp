// What a demand says of numbers that are none and of places that do not fit: refused, each with its words.

#include <cmath>
#include <limits>

#include <catch2/catch.hpp>

#include "demands/base_plane.hpp"
#include "demands/beam_line.hpp"
#include "demands/beam_pieces.hpp"
#include "demands/cracked_section.hpp"
#include "demands/hanging_refusal.hpp"
#include "demands/hook_over_legs.hpp"
#include "demands/length_errors.hpp"
#include "demands/prestressed_line.hpp"
#include "demands/ring_girder.hpp"
#include "demands/round_wall.hpp"
#include "demands/set_down.hpp"
#include "demands/wall_strip.hpp"
#include "support/assessed.hpp"
#include "support/beam_lines.hpp"
#include "support/hung_pieces.hpp"
#include "unit/demands/turning_pieces.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

constexpr double without_end = std::numeric_limits<double>::infinity();
constexpr Direction plumb{0.0, 0.0, 1.0};

// 2 x 2 x 1 m, its lower face alone, flat.
piece::Body on_its_face() {
  piece::Body body;
  body.lowest = at_m(0.0, 0.0, 0.0);
  body.highest = at_m(2.0, 2.0, 1.0);
  piece::Face below;
  below.planar = true;
  below.normal = {0.0, 0.0, -1.0};
  below.rings = {{at_m(0, 0, 0), at_m(0, 2, 0), at_m(2, 2, 0), at_m(2, 0, 0)}};
  body.faces = {below};
  return body;
}

demands::CrackedSection cracked() {
  return {.width = 300.0 * mm,
          .bottom = 0.0 * mm,
          .top = 600.0 * mm,
          .layers = {{1500.0 * mm2, 60.0 * mm}},
          .modular_ratio = Ratio::from_value(8.0)};
}

}  // namespace

TEST_CASE("a base plane: no faces, faces without a ring, and a curved face that may reach lower") {
  const std::string no_face = "no flat face of the piece looks straight down: it does not stand by itself";
  piece::Body body = on_its_face();
  CHECK(assessed(demands::base_plane(body, plumb)).rings.size() == 1);
  CHECK(in(m, assessed(demands::base_plane(body, plumb)).level) == Approx(0.0).margin(1e-12));
  piece::Face bare = body.faces.front();
  bare.rings.clear();
  body.faces.push_back(bare);
  bare.rings = {{}};
  body.faces.push_back(bare);
  CHECK(assessed(demands::base_plane(body, plumb)).rings.size() == 1);
  body.faces.erase(body.faces.begin());
  CHECK(why_not(demands::base_plane(body, plumb)) == no_face);
  body.faces.clear();
  CHECK(why_not(demands::base_plane(body, plumb)) == no_face);
  body = on_its_face();
  piece::Face round;
  body.faces.push_back(round);
  CHECK(is_assessed(demands::base_plane(body, plumb)));  // the box around it ends at the flat face
  body.lowest.z = -1.0 * mm;
  CHECK(why_not(demands::base_plane(body, plumb)) ==
        "a curved face of the piece may reach below the face it stands on: how it stands is not known");
}

TEST_CASE("a face of two corners is no base to stand on: no margin, a centre at no place is not assessed") {
  piece::Body body = on_its_face();
  CHECK(in(m, assessed(demands::set_down(body, {}, at_m(1.0, 1.0, 0.5), plumb)).margin) == Approx(1.0));
  CHECK(why_not(demands::set_down(body, {}, at_m(std::nan(""), 1.0, 0.5), plumb)) ==
        "the centre of gravity does not lie above what the piece stands on");
  body.faces.front().rings = {{at_m(0, 0, 0), at_m(2, 0, 0)}};
  CHECK(in(m, assessed(demands::set_down(body, {}, at_m(1.0, 0.0, 0.5), plumb)).margin) == 0.0);
}

TEST_CASE("a cracked section without end in any of its numbers is refused") {
  const std::string number = "a number of the cracked section is not usable";
  const std::string layer = "a layer of bars has no usable area or lies outside the depth of the piece";
  const Moment moment = Moment::from_value(50e3);
  const auto why = [&](const demands::CrackedSection& section) {
    return why_not(demands::cracked_stress(section, Force{}, moment));
  };
  CHECK(is_assessed(demands::cracked_stress(cracked(), Force{}, moment)));
  auto section = cracked();
  section.width = without_end * m;
  CHECK(why(section) == number);
  section = cracked();
  section.top = without_end * m;
  CHECK(why(section) == number);
  section = cracked();
  section.modular_ratio = Ratio::from_value(without_end);
  CHECK(why(section) == number);
  section = cracked();
  section.layers[0].area = Area::from_value(without_end);
  CHECK(why(section) == layer);
  section.layers[0].area = Area::from_value(std::nan(""));
  CHECK(why(section) == layer);
}

TEST_CASE("a carrier at no place or of no weight, a leg that ends where it starts, and no upright") {
  demands::HungPiece piece = rectangle(3.0, 2.0, 3.0, 1000.0 * kN, at_m(0.0, 0.0, -0.5), 100.0 * kN);
  CHECK_FALSE(demands::hanging_refusal(piece));
  piece.upright = {0.0, 0.0, without_end};
  CHECK(demands::hanging_refusal(piece)->why == "the upright direction of the piece is not known");
  piece.upright = plumb;
  demands::Carrier beam;
  beam.id = "spreader";
  beam.weight = 1.0 * kN;
  piece.carriers = {beam};
  const std::string unknown = "weight and centre of gravity of spreader are not known";
  CHECK(demands::hanging_refusal(piece)->why == "spreader hangs on nothing");
  for (const double bad : {-1.0, std::nan(""), without_end}) {
    piece.carriers[0].weight = bad * kN;
    CHECK(demands::hanging_refusal(piece)->why == unknown);
  }
  piece.carriers[0].weight = 1.0 * kN;
  piece.carriers[0].centre.z = without_end * m;
  CHECK(demands::hanging_refusal(piece)->why == unknown);
  piece.carriers[0].centre.z = 0.0 * m;
  piece.legs[0].to_carrier = piece.legs[1].from_carrier = 0;
  piece.legs[2].from_carrier = piece.legs[2].to_carrier = 0;
  const std::string no_ends = "the leg to A3 does not end on two bodies of this rigging";
  CHECK(demands::hanging_refusal(piece)->why == no_ends);
  piece.legs[2].from_carrier.reset();
  piece.legs[2].to_carrier = std::numeric_limits<std::size_t>::max();
  CHECK(demands::hanging_refusal(piece)->why == no_ends);
}

TEST_CASE("errors of length that leave no place to meet are refused with the leg that is short") {
  // Two legs of 1.001 m to inserts 2 m apart: 1 % short, one reaches no longer.
  demands::HungPiece piece;
  piece.legs = {{"A1", at_m(1.0, 0.0, 0.0), 1.001 * m, does_not_stretch},
                {"A2", at_m(-1.0, 0.0, 0.0), 1.001 * m, does_not_stretch},
                {"A3", at_m(0.0, 1.0, 0.0), 1.2 * m, does_not_stretch}};
  piece.loads = {{at_m(0.0, 0.2, -0.5), 10.0 * kN}};
  CHECK_THAT(why_not(demands::length_errors(piece, Ratio{0.01})), Catch::StartsWith("with the leg to A"));
  CHECK(why_not(demands::length_errors(piece, Ratio{1.0})) ==
        "the tolerance of the leg lengths is not a share");
}

TEST_CASE("legs over a turned piece: without end, at one place, too short to meet") {
  using Legs = std::vector<demands::HungLeg>;
  const auto why = [](const Legs& legs, const std::vector<std::vector<std::size_t>>& groups = {}) {
    return why_not(demands::hook_over_legs(legs, groups, plumb));
  };
  const std::string nowhere = "no place was found at which the legs meet over the piece as it is turned";
  CHECK(why({turned_leg("A", 0, 0, 0, without_end)}) == "the leg to A has no usable length or place");
  // At one place: the shorter one says how high the hook stands.
  const auto beside = assessed(
      demands::hook_over_legs(Legs{turned_leg("A", 0, 0, 0, 1), turned_leg("B", 0, 0, 0, 2)}, {}, plumb));
  CHECK(in(m, beside.at.z) == Approx(1.0));
  CHECK(why({turned_leg("A", 0, 0, 0, 1), turned_leg("B", 3, 0, 0, 1)}) == nowhere);  // 1 + 1 < 3
  CHECK(why({turned_leg("A", 0, 0, 0, 1), turned_leg("B", 0, 0, 3, 1)}) == nowhere);  // one over the other
  CHECK(why({turned_leg("A", 0, 0, 0, 2), turned_leg("B", 0, 0, 0, 2)}, {{0, 1}}) ==
        "the two equalised legs are too short to meet");
  CHECK(why(Legs(17, turned_leg("A", 0, 0, 0, 1))) == "a rigging has no legs, or more than 16");
  CHECK(why({turned_leg("A", 0, 0, 0, 2), turned_leg("B", 1, 0, 0, 2)}, {{0, 1}, {1, 0}}) ==
        "legs that run over a sheave are computed in a turn only where they are the only two");
  CHECK(why({turned_leg("A", 0, 0, 0, 2), turned_leg("B", 1, 0, 0, 2)}, {{0}}) ==
        "legs that run over a sheave are computed in a turn only where they are the only two");
}

TEST_CASE("between two hooks and off a table: legs of either hook that are refused stop the turn") {
  const std::string none = "a rigging has no legs, or more than 16";
  demands::TurnedPiece piece = panel_on_two_hooks();
  CHECK(is_assessed(demands::turn_pose(piece, 30.0 * deg)));
  piece.tail_legs.clear();
  CHECK(why_not(demands::turn_pose(piece, 30.0 * deg)) == none);
  piece = panel_on_two_hooks();
  piece.legs.clear();
  CHECK(why_not(demands::turn_pose(piece, 30.0 * deg)) == none);
  piece.method = plan::TurnMethod::table;
  CHECK(why_not(demands::turn_pose(piece, 30.0 * deg)) == none);
  piece = panel_on_edge();
  piece.loads = {{at_m(1.5, 1.2, 0.075), 1e308 * newton}, {at_m(1.5, 1.2, 0.075), 1e308 * newton}};
  CHECK(why_not(demands::turn_pose(piece, 30.0 * deg)) == "the piece has no weight");  // no finite one
}

TEST_CASE("a line without a section stands on nothing") {
  const demands::BeamLine none;
  CHECK(why_not(demands::beam_state(none)) == "the piece has no section along its length");
  CHECK(why_not(demands::support_reactions(none, {0.0 * m, 1.0 * m})) ==
        "the piece has no section along its length");
  CHECK(demands::beam_measure(none).length == Length{});
  CHECK(demands::beam_measure(none).load == Force{});
}

TEST_CASE("a line whose forces sum to nothing but turn it is out of balance: 1e-6 of load and length") {
  BeamLine beam{{rectangle_step(0.0, 2.0, 0.3, 0.6, 0.0)},
                {upward(0.5 * m, 10.0 * kN), upward(1.0 * m, -20.0 * kN), upward(1.5 * m, 10.0 * kN)}};
  CHECK(is_assessed(demands::beam_state(beam)));
  beam.forces[2].at = 1.5 * m + 7.9e-6 * m;  // 10 kN x 7.9e-6 m of 40 kN x 2 m
  CHECK(is_assessed(demands::beam_state(beam)));
  beam.forces[2].at = 1.5 * m + 8.1e-6 * m;
  CHECK(why_not(demands::beam_state(beam)) == "the forces on the piece do not balance along its length");
}

TEST_CASE("a line: moments and stresses beyond the largest number there is are refused, of either face") {
  const std::string none = "a moment or stress of the piece is not a usable number";
  const auto with = [](Force force, Length height, Length bottom, Length top, Area area) {
    BeamLine beam = on_supports(BeamLine{{rectangle_step(0.0, 2.0, 0.3, 0.6, 1.0)}, {}}, {0.4, 1.6});
    demands::BeamStep& step = beam.steps.front();
    step.prestress = demands::Prestress{force, height};
    step.bottom = bottom, step.top = top, step.area = area;
    return demands::beam_state(beam);
  };
  const Length bottom = 0.0 * m, top = 0.6 * m, middle = 0.3 * m;
  const Area area = 0.18 * m2;
  CHECK(is_assessed(with(1e6 * newton, middle, bottom, top, area)));
  CHECK(is_assessed(with(1e300 * newton, middle, bottom, top, area)));
  CHECK(why_not(with(1e200 * newton, -1e200 * m, bottom, top, area)) == none);  // the moment
  CHECK(why_not(with(1e300 * newton, middle, bottom, top, Area::from_value(1e-10))) == none);
  CHECK(why_not(with(1e200 * newton, 0.29 * m, -1e150 * m, top, area)) == none);  // the lower face alone
}

TEST_CASE("supports before either end of a line, and loads beyond the largest number there is, are refused") {
  BeamLine beam{{rectangle_step(0.0, 2.0, 0.3, 0.6, 1.0)}, {}};
  const std::string beyond = "a support lies beyond the ends of the piece";
  CHECK(why_not(demands::support_reactions(beam, {-0.001 * m, 1.0 * m})) == beyond);
  CHECK(why_not(demands::support_reactions(beam, {1.0 * m, 2.001 * m})) == beyond);
  CHECK(in(kN, assessed(demands::support_reactions(beam, {0.0 * m, 2.0 * m}))[0]) == Approx(1.0));
  beam.steps.front().load = LineLoad::from_value(1.7e308);
  CHECK(why_not(demands::support_reactions(beam, {0.0 * m, 2.0 * m})) ==
        "the supports of the piece could not be solved");
}

TEST_CASE("strands beyond the largest number there is are refused: tension, compression, both at once") {
  const std::string none = "a stress of the piece is not a usable number";
  const Ratio one = Ratio::from_value(1.0);
  const demands::PrestressRange as_stated{one, one, one, one, one, one};
  // 0.4 x 0.6 m, its kern 0.1 m about mid-depth.
  const BeamLine beam = on_supports(BeamLine{{rectangle_step(0.0, 12.0, 0.4, 0.6, 5.766)}, {}}, {2.5, 9.5});
  const auto state = [&](const std::vector<double>& heights_m, double force_N) {
    std::vector<demands::StrandRow> rows;
    for (const double height : heights_m)
      rows.push_back({force_N * newton, {{0.0 * m, height * m}, {12.0 * m, height * m}}, 0.5 * m});
    return demands::prestressed_state(beam, rows, as_stated);
  };
  CHECK(is_assessed(state({0.3}, 1e6)));
  CHECK(why_not(state({0.3}, 1.2e308)) == none);        // presses all, pulls nowhere
  CHECK(why_not(state({0.05}, 1.2e308)) == none);       // presses below, pulls above
  CHECK(why_not(state({0.05, 0.55}, 1.2e308)) == none);  // either face is pulled and pressed: no number
}

TEST_CASE("rings and round walls beyond the largest number there is are refused") {
  demands::Ring ring{.radius = 10.0 * m, .wall = 0.2 * m, .depth = 0.5 * m, .depth_counted = 0.5 * m,
                     .poisson = 0.2,
                     .forces = {}};
  const auto on_four = [&](double up_N) {
    ring.forces.clear();
    for (int i = 0; i < 4; ++i) ring.forces.push_back({.at = 0.5 * M_PI * i * radian, .up = up_N * newton});
    return demands::ring_state(ring);
  };
  const double one = assessed(on_four(1.0)).most_tension().tension.value();
  CHECK(assessed(on_four(1e300)).most_tension().tension.value() == Approx(1e300 * one));
  CHECK(why_not(on_four(4e307 / 4.0)) == "the ring could not be computed");

  const auto wall = [](double pull_N) {
    return demands::round_state(
        {.inside = 0.95 * m, .outside = 1.05 * m, .height = 0.5 * m, .pulls = {{{}, pull_N * newton, {}}}});
  };
  const double tension = assessed(wall(1.0)).tension.value();
  CHECK(assessed(wall(1e300)).tension.value() == Approx(1e300 * tension));
  CHECK(why_not(wall(1e307)) == "the round wall could not be computed");
}

TEST_CASE("a centre of gravity without end beside what the piece stands on is not assessed") {
  CHECK(why_not(demands::set_down(on_its_face(), {}, at_m(1.7e308, 1.0, 0.5), plumb)) ==
        "the centre of gravity does not lie above what the piece stands on");
  const auto beside = assessed(demands::set_down(on_its_face(), {}, at_m(2.5, 1.0, 0.5), plumb));
  CHECK(in(m, beside.margin) == Approx(-0.5));
}

TEST_CASE("pulls beside a strip of wall count where they stand on it, none beyond either of its ends") {
  // 0.2 m thick, clear 0.5 and 1.5 m: a = 0.6, l = 2.2 m, in plates of their full width.
  demands::WallStrip strip{.thickness = 0.2 * m,
                           .to_support = 0.5 * m,
                           .to_other = 1.5 * m,
                           .across = 10.0 * kN,
                           .spread = 2.5,
                           .spread_end = 0.5,
                           .widest = 15.0};
  const auto at = [&](double towards_support_m) {
    strip.others = {{10.0 * kN, towards_support_m * m, 0.1 * m}};  // within a thickness: it always counts
    return assessed(demands::wall_strip_state(strip)).moment.value();
  };
  strip.others.clear();
  const double alone = assessed(demands::wall_strip_state(strip)).moment.value();
  CHECK(at(0.0) == Approx(2.0 * alone));
  CHECK(at(0.9) == Approx(alone));   // behind the nearer support
  CHECK(at(-2.0) == Approx(alone));  // behind the other
}

TEST_CASE("a strip of wall: without room to either support it stands alone, without end it has no width") {
  demands::WallStrip strip{.thickness = 0.2 * m,
                           .to_support = 0.0 * m,
                           .to_other = 0.0 * m,
                           .across = 10.0 * kN,
                           .spread = 2.5,
                           .spread_end = 0.5,
                           .widest = 15.0};
  // a = b = 0.1: 10 x 0.1 x 0.1/0.2 over 0.2 + 2.5 x 0.1/2 m, and no strip at the support.
  const auto state = assessed(demands::wall_strip_state(strip));
  CHECK_FALSE(state.at_support);
  CHECK(state.moment.value() == Approx(500.0));
  CHECK(in(m, state.width) == Approx(0.325));
  strip.across = 1e308 * newton;
  CHECK(why_not(demands::wall_strip_state(strip)) ==
        "the wall or slab has no width beside the insert that could carry its pull");
}
