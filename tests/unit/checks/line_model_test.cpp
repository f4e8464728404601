// A piece as a line, from sections and loads written by hand: what is refused, at each limit, and that what is left is in
// balance. Beside it the strips of the line method.

#include <cmath>
#include <limits>

#include <catch2/catch.hpp>

#include "checks/line_method.hpp"
#include "checks/line_model.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_slab.hpp"
#include "support/step_named.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

piece::Section section_at(double at_m, double centroid_m = 0.15, double area_m2 = 0.12) {
  piece::Section section;
  section.at = at_m * m;
  section.area = area_m2 * m2;
  section.centroid = {at_m * m, 0.2 * m, centroid_m * m};
  section.about_across = SecondMoment::from_value(1e-3);
  section.lowest = (centroid_m - 0.15) * m, section.highest = (centroid_m + 0.15) * m;
  section.nearest = 0.0 * m, section.farthest = 0.4 * m;
  section.parts = 1;
  section.shear_area = 0.08 * m2;
  return section;
}

piece::Stretch stretch(double from_m, double to_m, double start_z_m = 0.15, double end_z_m = 0.15) {
  return {section_at(from_m, start_z_m),
          section_at(0.5 * (from_m + to_m), 0.5 * (start_z_m + end_z_m)),
          section_at(to_m, end_z_m),
          from_m * m,
          to_m * m,
          start_z_m == end_z_m};
}

Outcome<LineModel> line_from(std::vector<piece::Stretch> stretches) {
  SlabLift lift;
  auto facts = lift.facts();
  facts.bending = std::make_shared<BendingMemo>();
  ModelChoice model;
  model.model = plan::PieceModel::line;
  facts.anchorage.cut_across.insert_or_assign(model.axis, std::move(stretches));
  return line_model(facts, model);
}

// Four steps of one metre, alike.
LineModel four_steps() {
  LineModel line;
  for (int i = 0; i < 4; ++i) {
    demands::BeamStep step;
    step.from = i * 1.0 * m, step.to = (i + 1) * 1.0 * m;
    step.area = 0.12 * m2;
    step.second_moment = SecondMoment::from_value(9e-4);
    step.bottom = 0.0 * m, step.centroid = 0.15 * m, step.top = 0.3 * m;
    step.shear_area = 0.08 * m2;
    line.steps.push_back(step);
    line.volumes.push_back(0.12 * m3);
    line.stretches.push_back(stretch(i, i + 1.0));
  }
  return line;
}

// Legs to A1 (x = 1), A2 (3), A3 (3), A4 (1), by what each does to its insert.
BendingLoads with_legs(const std::array<double, 4>& up_kN, double along_kN = 0.0) {
  BendingLoads loads;
  loads.set.name = loads.situation.name = "hanging";
  loads.set.loads = {{{2.0 * m, 0.5 * m, 0.15 * m}, 40.0 * kN}};
  for (const double up : up_kN) {
    demands::LegForce leg;
    leg.on_insert = {along_kN * kN, 0.0 * kN, up * kN};
    leg.tension = norm(leg.on_insert);
    loads.situation.legs.push_back(leg);
  }
  return loads;
}

Outcome<demands::BeamLine> loaded(const BendingLoads& loads, Legs legs = Legs::as_they_hang) {
  SlabLift lift;
  return loaded_line(lift.facts(), loads, four_steps(), legs);
}

double total_load_kN(const demands::BeamLine& beam) {
  Force sum{};
  for (const demands::BeamStep& step : beam.steps) sum += step.load * (step.to - step.from);
  return in(kN, sum);
}

// What is left of forces and moments, about x = 0 and height zero.
void check_balance(const demands::BeamLine& beam) {
  Force up{}, along{};
  Moment turning{};
  for (const demands::BeamForce& force : beam.forces) {
    up += force.up, along += force.along;
    turning += force.up * force.at - force.along * force.height;
  }
  for (const demands::BeamStep& step : beam.steps) {
    up -= step.load * (step.to - step.from);
    turning -= step.load * (step.to - step.from) * (0.5 * (step.from + step.to));
  }
  CHECK(in(kN, up) == Approx(0.0).margin(1e-9));
  CHECK(in(kN, along) == Approx(0.0).margin(1e-9));
  CHECK(turning.value() / 1000.0 == Approx(0.0).margin(1e-9));
  CHECK(is_assessed(demands::beam_state(beam)));
}

}  // namespace

TEST_CASE("a line: sections in parts, lopsided, rising or steep are refused at and past each limit") {
  SECTION("in two parts") {
    auto two = stretch(0.0, 4.0);
    two.middle.parts = 2;
    CHECK(why_not(line_from({two})) == "at 2.000 m the piece is in 2 parts: it does not bend as one line");
  }
  SECTION("lopsided by 5 %") {
    auto lopsided = stretch(0.0, 4.0);
    lopsided.end.about_across = SecondMoment::from_value(1.0);
    lopsided.end.product = SecondMoment::from_value(-0.05);
    CHECK(is_assessed(line_from({lopsided})));
    lopsided.end.product = SecondMoment::from_value(-0.0501);
    CHECK(why_not(line_from({lopsided})) ==
          "at 4.000 m the section of the piece is lopsided: it would also bend sideways");
    lopsided.end.product = SecondMoment::from_value(std::nan(""));
    CHECK_FALSE(is_assessed(line_from({lopsided})));
  }
  SECTION("rising by 10 degrees") {
    CHECK(is_assessed(line_from({stretch(0.0, 1.0, 0.0, 0.176)})));
    CHECK(why_not(line_from({stretch(0.0, 1.0, 0.0, 0.1761)})) ==
          "the piece rises along its length by more than 10 degrees");
    CHECK_FALSE(is_assessed(line_from({stretch(0.0, 1.0, 0.1761, 0.0)})));
    CHECK_FALSE(is_assessed(line_from({stretch(10.0, 11.0, 0.0, 0.1761)})));  // wherever it lies
  }
  SECTION("steep within a stretch") {
    CHECK(is_assessed(line_from({stretch(0.0, 1.0, 0.0, 1.0), stretch(1.0, 2.0, 1.0, 0.0)})));
    CHECK(why_not(line_from({stretch(0.0, 1.0, 0.0, 1.0), stretch(1.0, 2.0, 1.01, 0.0)})) ==
          "at 1.000 m the middle of the piece rises steeply");
  }
}

TEST_CASE(
    "a line: the least section of each stretch, shortened where it slopes, its volume by Simpson's rule") {
  auto tapered = stretch(0.0, 2.0, 0.0, 0.2);
  tapered.start.area = 0.30 * m2, tapered.middle.area = 0.24 * m2, tapered.end.area = 0.12 * m2;
  tapered.middle.about_across = SecondMoment::from_value(5e-4);
  tapered.end.shear_area = 0.05 * m2;
  const LineModel line = assessed(line_from({tapered}));
  const double cos2 = 1.0 / (1.0 + 0.01);  // rises by 0.1
  REQUIRE(line.steps.size() == 24);
  CHECK(in(m2, line.steps[7].area) == Approx(0.12 * cos2));
  CHECK(line.steps[7].second_moment.value() == Approx(5e-4 * cos2));
  CHECK(in(m2, line.steps[7].shear_area) == Approx(0.05 * cos2));
  CHECK(in(m, line.steps[7].bottom) == Approx(-0.15));
  CHECK(in(m, line.steps[7].top) == Approx(0.35));
  CHECK(in(m, line.steps[7].centroid) == Approx(0.1));
  Volume all{};
  for (const Volume& volume : line.volumes) all += volume;
  CHECK(in(m3, all) == Approx(2.0 * (0.30 + 4.0 * 0.24 + 0.12) / 6.0));
  // No step is longer than a 24th of the piece: 1 m of 5 m are five steps, 4 m twenty.
  const LineModel uneven = assessed(line_from({stretch(0.0, 1.0), stretch(1.0, 5.0)}));
  CHECK(uneven.steps.size() == 25);
  CHECK(in(m, uneven.steps[5].from) == Approx(1.0));
}

TEST_CASE("a line is cut at places within it, not at its own ends") {
  LineModel line = four_steps();
  cut_at(line, {1.25 * m, 2.0 * m, 0.0 * m, 4.0 * m, 7.0 * m});
  REQUIRE(line.steps.size() == 5);
  CHECK(in(m, line.steps[1].to) == Approx(1.25));
  CHECK(in(m, line.steps[2].from) == Approx(1.25));
  CHECK(in(m, line.steps[2].to) == Approx(2.0));
  CHECK(in(m3, line.volumes[1]) == Approx(0.03));
  CHECK(in(m3, line.volumes[2]) == Approx(0.09));
  CHECK(line.stretches.size() == 5);
}

TEST_CASE("a line under load: weight as the volume is, legs where they are") {
  const auto beam = assessed(loaded(with_legs({10.0, 10.0, 10.0, 10.0})));
  for (const demands::BeamStep& step : beam.steps) CHECK(in(kN / m, step.load) == Approx(10.0));
  CHECK(in(m, beam.forces.at(1).at) == Approx(3.0));
  CHECK(in(m, beam.forces.at(1).height) == Approx(0.3));
  CHECK(in(kN, beam.forces.at(1).up) == Approx(10.0));
  check_balance(beam);
}

TEST_CASE("a line under load: up to 2 % is corrected, so that all is in balance, and no more") {
  const auto heavier =
      assessed(loaded(with_legs({10.0, 10.1, 10.1, 10.0})));  // half a per cent, and to one side
  CHECK(total_load_kN(heavier) == Approx(40.2));
  CHECK(heavier.steps[3].load > heavier.steps[0].load);
  check_balance(heavier);
  check_balance(assessed(loaded(with_legs({10.1, 10.0, 10.0, 10.1}))));
  check_balance(assessed(loaded(with_legs({10.199, 10.199, 10.199, 10.199}))));
  const std::string no_balance = "the loads along the piece do not balance what its legs carry";
  CHECK(why_not(loaded(with_legs({10.201, 10.201, 10.201, 10.201}))) == no_balance);
  CHECK(why_not(loaded(with_legs({9.799, 9.799, 9.799, 9.799}))) == no_balance);
  check_balance(assessed(loaded(with_legs({9.801, 9.801, 9.801, 9.801}))));
  // Only to one side, by q of each: b = 4 q / 4 m / (40 kN x 5/64), and half of it counts.
  CHECK(is_assessed(loaded(with_legs({9.8751, 10.1249, 10.1249, 9.8751}))));
  CHECK(why_not(loaded(with_legs({9.8749, 10.1251, 10.1251, 9.8749}))) == no_balance);
  CHECK_FALSE(is_assessed(loaded(with_legs({10.0, 10.0, 10.0, std::nan("")}))));
}

TEST_CASE(
    "a line under load: grip of the form is linear over the length, up to a sixth of it beside the middle") {
  const auto gripped = [](double at_m) {
    BendingLoads loads = with_legs({});
    const double right = 20.0 + 10.0 * (at_m - 1.0) / 2.0,
                 left = 50.0 - right;  // of 40 kN in the middle and 10 kN there
    loads.situation.legs = with_legs({0.5 * left, 0.5 * right, 0.5 * right, 0.5 * left}).situation.legs;
    loads.set.loads.push_back({{at_m * m, 0.5 * m, 0.0 * m}, 10.0 * kN});
    return loaded(loads);
  };
  const auto even = assessed(gripped(2.0));
  for (const demands::BeamStep& step : even.steps) CHECK(in(kN / m, step.load) == Approx(12.5));
  for (const double at_m : {1.34, 2.66}) {
    const auto beam = assessed(gripped(at_m));
    check_balance(beam);
    const double towards = at_m > 2.0 ? 1.0 : -1.0;
    CHECK(in(kN / m, beam.steps[3].load) ==
          Approx(10.0 + 2.5 * (1.0 + towards * 12.0 * 0.165 * 0.375)).epsilon(0.02));
    CHECK(in(kN / m, beam.steps[0].load) ==
          Approx(10.0 + 2.5 * (1.0 - towards * 12.0 * 0.165 * 0.375)).epsilon(0.02));
  }
  for (const double at_m : {1.33, 2.67})
    CHECK(why_not(gripped(at_m)) ==
          "the form grips the piece at one end only: its bending by that is not computed");
}

TEST_CASE("a line under load: a form part hangs where it is, in the direction of the pull") {
  BendingLoads loads = with_legs({11.0, 11.0, 11.0, 11.0}, 0.4);
  loads.attached = 1;
  loads.set.loads.push_back({{2.0 * m, 0.0 * m, 0.4 * m}, 4.0 * kN});
  const auto beam = loaded(loads);
  // Everything leans by 0.4 over 11: the weight and the part with it.
  const double lean = std::hypot(0.4, 11.0);
  const auto& forces = assessed(beam).forces;
  CHECK(in(kN, forces.at(4).up) == Approx(-4.0 * 11.0 / lean));
  CHECK(in(kN, forces.at(4).along) == Approx(-4.0 * 0.4 / lean));
  CHECK(in(m, forces.at(4).at) == Approx(2.0));
  CHECK(in(m, forces.at(4).height) == Approx(0.4));
  // The mass takes what the legs pull along it, in the middle of each step.
  REQUIRE(forces.size() == 9);
  CHECK(in(kN, forces.at(5).along) == Approx(-(1.6 - 4.0 * 0.4 / lean) / 4.0));
  CHECK(in(m, forces.at(5).height) == Approx(0.15));
}

TEST_CASE("a line under upright legs has no thrust") {
  BendingLoads loads = with_legs({10.0, 10.0, 10.0, 10.0});
  loads.situation.legs[0].on_insert.x = loads.situation.legs[3].on_insert.x = 5.0 * kN;
  loads.situation.legs[1].on_insert.x = loads.situation.legs[2].on_insert.x = -5.0 * kN;
  const auto thrust = assessed(loaded(loads)), upright = assessed(loaded(loads, Legs::upright));
  CHECK(in(kN, thrust.forces.at(0).along) == Approx(5.0));
  for (const demands::BeamForce& force : upright.forces) CHECK(force.along == Force{});
  CHECK(in(kN, upright.forces.at(0).up) == Approx(10.0));
  check_balance(thrust);
  check_balance(upright);
}

TEST_CASE("no situation, or one whose load set is not known, bends nothing: not assessed") {
  SlabLift lift;
  lift.plan.piece.solids[0].size = {4.0 * m, 0.4 * m, 0.3 * m};
  for (plan::Insert& insert : lift.plan.inserts) insert.at.y = insert.at.y < 1.0 * m ? 0.1 * m : 0.3 * m;
  lift.plan.piece.stated_weight.reset();
  auto facts = lift.facts();
  const ModelChoice model = piece_model(facts.plan, facts.body, facts.rules.cracking);
  REQUIRE(model.model == plan::PieceModel::line);
  facts.bending = std::make_shared<BendingMemo>();
  auto unknown = std::get<std::vector<Situation>>(facts.gear_situations);
  unknown.front().name = "swinging";
  facts.gear_situations = unknown;
  CHECK(why_not(line_tension(facts, model)) == "the loads of a situation are not known");
  CHECK(why_not(line_shear(facts, model)) == "the loads of a situation are not known");
  CHECK(why_not(lines_under_load(facts, model, {})) == "the loads of a situation are not known");
  facts.bending = std::make_shared<BendingMemo>();
  facts.gear_situations = std::vector<Situation>{};
  CHECK(why_not(line_tension(facts, model)) == "no situation loads the piece");
  CHECK(why_not(line_shear(facts, model)) == "no situation loads the piece");
  CHECK(why_not(lines_under_load(facts, model, {})) == "no situation loads the piece");
}

namespace {

ModelChoice model_of(const StageFacts& facts) {
  return piece_model(facts.plan, facts.body, facts.rules.cracking);
}

std::optional<LineMethod> strips_of(SlabLift& lift) {
  const auto facts = lift.facts();
  return line_method(facts, model_of(facts));
}

// The heaviest set of the slab, over its area: 1.3 of its weight and the grip of 1 kPa.
double load_MPa() { return (1.3 * 0.3 * 2400.0 * 1.03 * standard_gravity_m_per_s2 + 1000.0) / 1e6; }

}  // namespace

TEST_CASE("strips of a panel on four picks: 4 x 2 m, 0.3 m thick, picks 1 m and 0.5 m from its sides") {
  SlabLift lift;
  // Along: (w b/2)(c^2/2) over b/2, c = 1 m; across: (w a/2)(c^2/2) over a/2, c = 0.5 m.
  const auto found = strips_of(lift);
  REQUIRE(found);
  CHECK(in(MPa, found->along) == Approx(6.0 * load_MPa() * 0.5 / 0.09));
  CHECK(in(MPa, found->across) == Approx(6.0 * load_MPa() * 0.125 / 0.09));

  lift.rules.cracking.pick_strip.value = Ratio{2.0};  // strips of 0.6 m instead of 1 m and 2 m
  CHECK(in(MPa, strips_of(lift).value().along) == Approx(6.0 * load_MPa() * 0.5 / 0.09 / 0.6));
  CHECK(in(MPa, strips_of(lift).value().across) == Approx(6.0 * load_MPa() * 0.125 / 0.09 * 2.0 / 0.6));
}

TEST_CASE("strips of a panel that is longer along y are the same, and sag between picks near the ends") {
  SlabLift lift;
  lift.plan.piece.solids[0].size = {2.0 * m, 4.0 * m, 0.3 * m};
  lift.plan.inserts[0].at = {0.5 * m, 0.4 * m, 0.3 * m},
  lift.plan.inserts[1].at = {1.5 * m, 0.4 * m, 0.3 * m};
  lift.plan.inserts[2].at = {1.5 * m, 3.6 * m, 0.3 * m},
  lift.plan.inserts[3].at = {0.5 * m, 3.6 * m, 0.3 * m};
  for (plan::Leg& leg : lift.plan.riggings[0].legs) leg.length = 3.0 * m;
  const auto found = strips_of(lift);
  REQUIRE(found);
  CHECK(in(MPa, found->along) == Approx(6.0 * load_MPa() * (2.0 - 0.8) / 0.09));  // a^2/8 - a c/2
  CHECK(in(MPa, found->across) == Approx(6.0 * load_MPa() * 0.125 / 0.09));
}

TEST_CASE("strips are for four picks in pairs, even to 1 % of the side, of a rectangle without openings") {
  const auto with = [](auto spoil) {
    SlabLift lift;
    spoil(lift);
    return strips_of(lift);
  };
  const auto pick = [](std::size_t i, double x_m, double y_m) {
    return
        [=](SlabLift& lift) { lift.plan.inserts[i].at.x += x_m * m, lift.plan.inserts[i].at.y += y_m * m; };
  };
  for (const std::size_t i : {std::size_t{0}, std::size_t{1}, std::size_t{2}, std::size_t{3}}) {
    CAPTURE(i);
    CHECK(with(pick(i, 0.039, 0.0)));  // of 4 m
    CHECK_FALSE(with(pick(i, 0.041, 0.0)));
    CHECK(with(pick(i, 0.0, 0.019)));  // of 2 m
    CHECK_FALSE(with(pick(i, 0.0, 0.021)));
  }
  const auto ends = [](double by_m) {
    return
        [=](SlabLift& lift) { lift.plan.inserts[0].at.x += by_m * m, lift.plan.inserts[3].at.x += by_m * m; };
  };
  CHECK_FALSE(with(ends(0.041)));
  CHECK_FALSE(with(ends(-0.041)));
  const auto longer = with(ends(0.039));  // the longer end counts, 1.039 m
  REQUIRE(longer);
  CHECK(in(MPa, longer->along) == Approx(6.0 * load_MPa() * 0.5 * 1.039 * 1.039 / 0.09));
  CHECK_FALSE(with([](SlabLift& lift) {  // all four nearly in one line
    lift.plan.inserts[0].at.y = lift.plan.inserts[1].at.y = 0.991 * m;
    lift.plan.inserts[2].at.y = lift.plan.inserts[3].at.y = 1.009 * m;
  }));
  CHECK_FALSE(
      with([](SlabLift& lift) { lift.plan.inserts.push_back(headed_insert_at("A5", 2.0 * m, 1.0 * m)); }));
  CHECK_FALSE(with([](SlabLift& lift) {
    plan::Solid window = lift.plan.piece.solids[0];
    window.name = "window", window.cut = true;
    window.at = {1.8 * m, 0.8 * m, 0.0 * m}, window.size = {0.4 * m, 0.4 * m, 0.3 * m};
    lift.plan.piece.solids.push_back(window);
    lift.plan.piece.stated_weight.reset();
  }));
  CHECK_FALSE(with([](SlabLift& lift) {  // no panel
    lift.plan.piece.solids[0].size = {4.0 * m, 1.9 * m, 0.5 * m};
    for (plan::Insert& insert : lift.plan.inserts) insert.at.z = 0.5 * m;
  }));
  CHECK_FALSE(with([](SlabLift& lift) { lift.leg(0).length.reset(); }));
  CHECK_FALSE(with([](SlabLift& lift) {
    lift.rules.bending_multiplier.emplace("strip.wall.smooth", made_ratio("m", 1.5));
    lift.plan.form->product = "stair";
  }));
}

TEST_CASE("strips are for a rectangle to a millionth of its side, wherever it lies") {
  const auto has_strips = [](double corner_off_um) {
    SlabLift lift;
    plan::Solid& slab = lift.plan.piece.solids[0];
    slab.shape = plan::Shape::prism;
    slab.outline = {{50.0 * m, 50.0 * m}, {54.0 * m, 50.0 * m}, {54.0 * m - corner_off_um * 1e-6 * m, 52.0 * m}, {50.0 * m, 52.0 * m}};
    slab.length = 0.3 * m;
    for (plan::Insert& insert : lift.plan.inserts) insert.at.x += 50.0 * m, insert.at.y += 50.0 * m;
    lift.plan.piece.stated_weight.reset();
    return strips_of(lift).has_value();
  };
  CHECK(has_strips(3.5));  // of 4 m
  CHECK_FALSE(has_strips(20.0));
}

TEST_CASE("strips of a panel whose legs do not reach all four picks are not told") {
  SlabLift lift;
  auto facts = lift.facts();
  const ModelChoice model = model_of(facts);
  REQUIRE(line_method(facts, model));
  plan::Rigging three = *facts.rigging;
  three.legs[3].to = "A1";
  facts.rigging = &three;
  CHECK_FALSE(line_method(facts, model));
  facts.rigging = nullptr;
  CHECK_FALSE(line_method(facts, model));
}

TEST_CASE("strips are told beside the plate, with their raise, and recorded with what they are made of") {
  SlabLift lift;
  Trace trace = Trace::recording();
  const auto facts = lift.facts(trace);
  const ModelChoice model = model_of(facts);
  CHECK(line_method_told(facts, model).empty());  // nothing is known of the plate yet
  facts.bending->tension = BendingTension{.tension = 0.5 * MPa, .where = "top", .situation = "hanging"};
  CHECK_THAT(line_method_told(facts, model),
             Catch::StartsWith("bending in stage strip: 0.500 MPa by the plate; by hand, strips that bend as "
                               "beams, 0.349 MPa along and 87.2 kPa across. The plate has"));
  facts.bending->tension = NotAssessed{"no", {}};
  CHECK(line_method_told(facts, model).empty());
  tell_line_method(facts, model, trace);
  const Step along = step_named(trace, "sigma_a");
  CHECK(along.result.number == Approx(6.0 * load_MPa() * 0.5 / 0.09));
  CHECK(step_named(trace, "sigma_b").result.number == Approx(6.0 * load_MPa() * 0.125 / 0.09));

  SlabLift raised;
  raised.rules.bending_multiplier.emplace("strip.wall.smooth", made_ratio("m", 3.0));
  raised.plan.form->product = "wall.smooth";
  const double weight_MPa = 0.3 * 2400.0 * 1.03 * standard_gravity_m_per_s2 / 1e6;
  CHECK(in(MPa, strips_of(raised).value().along) == Approx(6.0 * 3.0 * weight_MPa * 0.5 / 0.09));
}
