// Questions of strength with a log, without one, or at another time; the strength a lift needs where none
// helps; and what stands on a strength: ratings, bars about an insert, uncracked concrete.

#include <cmath>

#include <catch2/catch.hpp>

#include "checks/changed_plans.hpp"
#include "checks/cracked_inserts.hpp"
#include "checks/evaluate_strength.hpp"
#include "checks/loop_pull.hpp"
#include "checks/needed_strength.hpp"
#include "support/assessed.hpp"
#include "support/hand_made_slab.hpp"
#include "support/step_named.hpp"
#include "support/us_rules.hpp"

using namespace firstpick;
using namespace firstpick::checks;
using namespace firstpick::tests;

namespace {

const double not_a_number = std::nan("");

plan::Timestamp zoned(long long seconds) { return {seconds, true, "then", 0}; }

strength::Reading reading(long long seconds, double degC) {
  return {zoned(seconds), Temperature::from_value(273.15 + degC), {}};
}

// A strip of the hand-made evidence, an hour after its test.
StrengthQuestion question() {
  StrengthQuestion asked;
  asked.file = "pour.toml", asked.mark = "SL-1";
  asked.concrete = concrete_with_evidence();
  plan::Stage strip;
  strip.kind = plan::StageKind::strip;
  asked.lifts = {{"strip", strip}};
  asked.asked_at.local = plan::Timestamp{tested_second + 3600, false, "2026-03-03 08:10"};
  return asked;
}

// The same by moments with their offset, beside a log of its temperature.
StrengthQuestion with_log(std::vector<strength::Reading> readings) {
  StrengthQuestion asked = question();
  asked.concrete.evidence->cast = zoned(cast_second);
  asked.concrete.evidence->tested = zoned(tested_second);
  asked.asked_at = {{}, zoned(tested_second + 3600)};
  asked.log = strength::TemperatureLog{
      .file = "log.csv", .sensor = "core", .readings = std::move(readings), .doubts = {}};
  return asked;
}

StrengthReport answer(const StrengthQuestion& asked, const tables::Tables& tables) {
  return evaluate_strength(asked, hand_made_rules(), tables, "");
}

tables::Tables with_maturity() {
  tables::Tables tables = hand_made_tables();
  tables.maturity = us_tables().maturity;
  return tables;
}

}  // namespace

TEST_CASE("a lift at a time with its zone, asked by a clock without one, is not asked for now but refused") {
  StrengthQuestion asked = question();
  const auto plain = answer(asked, hand_made_tables());
  CHECK(plain.verdict == Verdict::go);  // 2550 psi against 2500 psi
  CHECK(in(psi, plain.needed.front().credited.value()) == Approx(2550.0));
  asked.lifts[0].stage.at = zoned(tested_second - 3600);
  const auto other = answer(asked, hand_made_tables());
  CHECK(other.verdict == Verdict::hold);
  CHECK_THAT(other.needed.front().why, Catch::Contains("one has a zone offset and the other has none"));
  for (const std::string& note : other.notes) CHECK_THAT(note, !Catch::Contains("which has passed"));
  asked.lifts[0].stage.at = plan::Timestamp{tested_second - 3600, false, "before its test"};
  const auto moved = answer(asked, hand_made_tables());
  CHECK(moved.verdict == Verdict::go);
  CHECK(moved.notes.front() == "strip was to be at before its test, which has passed: it is asked for now");
}

TEST_CASE("a question with its own clock on the wall is asked by that one, whatever its moment with a zone") {
  StrengthQuestion asked = question();
  asked.asked_at.zoned = zoned(tested_second + 30LL * 86400);
  CHECK(answer(asked, hand_made_tables()).verdict == Verdict::go);
  asked.asked_at.local.reset();  // then the other one tells the hour
  CHECK(answer(asked, hand_made_tables()).verdict == Verdict::hold);
  asked.asked_at.zoned = zoned(tested_second - 3600);
  const auto too_soon = answer(asked, hand_made_tables());
  CHECK(too_soon.verdict == Verdict::hold);
  CHECK_THAT(too_soon.needed.front().why, Catch::EndsWith(" is after the time of the question, 2026-03-03 06:10"));
}

TEST_CASE("two lifts that rest on one test are told once that nothing limits it") {
  StrengthQuestion asked = question();
  const std::size_t one = answer(asked, hand_made_tables()).notes.size();
  REQUIRE(one > 0);
  asked.lifts.push_back(asked.lifts.front());
  const auto two = answer(asked, hand_made_tables());
  CHECK(two.notes.size() == one);
  CHECK(two.needed.size() == 2);
}

TEST_CASE(
    "frost before the pour says nothing of it, frost after it stops it: by the time of casting that is "
    "stated") {
  const auto asked = with_log({reading(cast_second - 3600, -5.0), reading(cast_second + 3600, 20.0)});
  CHECK(answer(asked, with_maturity()).verdict == Verdict::go);
  const auto frozen =
      answer(with_log({reading(cast_second, 20.0), reading(cast_second + 3600, -0.1)}), with_maturity());
  CHECK(frozen.verdict == Verdict::hold);
  CHECK_THAT(frozen.needed.front().why, Catch::StartsWith("the concrete was at or below 0 degC, log.csv:"));
  // A log file that names no casting leaves it to the specimens; one that names another is no log of this
  // pour.
  auto with_file = asked;
  with_file.log_file.emplace();
  CHECK(answer(with_file, with_maturity()).verdict == Verdict::go);
  with_file.log_file->cast = zoned(cast_second);
  CHECK(answer(with_file, with_maturity()).verdict == Verdict::go);
  with_file.log_file->cast = zoned(cast_second - 7200);
  CHECK(answer(with_file, with_maturity()).verdict == Verdict::hold);
  // Without the table of maturity nothing of a log is judged; the specimens stand by themselves.
  CHECK(answer(with_log({reading(cast_second + 3600, -5.0)}), hand_made_tables()).verdict == Verdict::go);
}

TEST_CASE("no specimens, and a log of which nothing comes: both are told, with the remedy that there is") {
  auto asked = with_log({reading(cast_second, 20.0)});
  asked.concrete.evidence.reset();
  const auto report = answer(asked, hand_made_tables());
  CHECK(report.verdict == Verdict::hold);
  CHECK(report.needed.front().why == "no broken specimens are in the file; there is no temperature log");
  CHECK_THAT(report.needed.front().remedy, Catch::StartsWith("break field-cured specimens"));
  CHECK(answer(asked, with_maturity()).needed.front().remedy ==
        "calibrate the mix, or break field-cured specimens");
}

TEST_CASE(
    "needed strength: a step of the drawing that is just too little is not printed, a note is no need") {
  SlabLift lift;
  lift.plan.concrete.form_stripping_strength = 3000.3 * psi;
  lift.plan.form->nothing_attached = false;
  lift.plan.form->attached = {{.what = "former",
                               .weight = 1.0 * kN,
                               .at = Position{2.0 * m, 1.0 * m, 0.0 * m},
                               .until = {},
                               .place = {}}};
  const auto need = needed_strength(lift.facts());
  REQUIRE(need.to_print);
  CHECK(in(psi, *need.to_print) == Approx(3100.0).epsilon(1e-9));
  CHECK(need.verdict == Verdict::go);
  CHECK(need.not_mended.empty());  // that a former comes along is a note

  lift.rules.mandatory.push_back({"no-such-rule", "piece", {}});
  CHECK(needed_strength(lift.facts()).verdict == Verdict::hold);
}

TEST_CASE("needed strength: where no rule changes with it there is none, and what is missing stays so") {
  SlabLift lift;
  lift.plan.piece.solids[0].size = {1.4 * m, 1.4 * m, 1.0 * m};
  lift.plan.piece.stated_weight.reset();
  lift.plan.concrete.form_stripping_strength.reset();
  const double at_m[4][2] = {{0.4, 0.4}, {1.0, 0.4}, {1.0, 1.0}, {0.4, 1.0}};
  for (std::size_t i = 0; i < 4; ++i) {
    lift.plan.inserts[i] = rated_insert_at(lift.plan.inserts[i].id, at_m[i][0] * m, at_m[i][1] * m);
    lift.plan.inserts[i].at.z = 1.0 * m;
    lift.plan.inserts[i].rating->at_strength.reset();
  }
  const auto need = needed_strength(lift.facts());
  CHECK(need.rules.empty());
  CHECK_FALSE(need.to_print);
  CHECK_FALSE(need.not_mended.empty());
}

TEST_CASE(
    "insert-rating in concrete that is too weak for it: fails where it would fail stronger, else missing") {
  SlabLift lift;
  lift.plan.inserts[0] = rated_insert_at("A1", 1.0 * m, 0.5 * m);
  lift.rules.rating_scaling.value = tables::RatingScaling::as_declared;
  auto facts = lift.facts();
  const auto at = [&](Outcome<Stress> strength, Force load) {
    lift.plan.inserts[0].rating->load = load;
    facts.usable_strength = strength;
    return finding_for("insert-rating", "A1", facts).result;
  };
  CHECK(at(20.0 * MPa, 30.0 * kN) == Result::pass);
  CHECK(at(19.9 * MPa, 30.0 * kN) == Result::missing);
  CHECK(at(19.9 * MPa, 1.0 * kN) == Result::fail);  // the slab hangs more than 1 kN on it
  CHECK(at(0.0 * MPa, 1.0 * kN) == Result::missing);
  CHECK(at(-1.0 * MPa, 1.0 * kN) == Result::missing);
  CHECK(at(not_a_number * MPa, 1.0 * kN) == Result::missing);
  CHECK(at(19.9 * MPa, not_a_number * kN) == Result::missing);
  lift.plan.inserts[0].rating->includes_factor.reset();
  CHECK(at(19.9 * MPa, 1.0 * kN) == Result::missing);
  lift.plan.inserts[0].rating->includes_factor = 4.0;
  facts.insert_situations = NotAssessed{"no statics", "none"};
  CHECK(at(19.9 * MPa, 1.0 * kN) == Result::missing);
}

TEST_CASE(
    "insert-interaction: what comes out as no number is missing, a mode without its demand is not "
    "calculated") {
  SlabLift lift;
  lift.rules.headed.interaction_small.value = Ratio{-1.0};  // neither is small: their sum over k
  CHECK(finding_for("insert-interaction", "A1", lift.facts()).result == Result::pass);
  lift.rules.headed.interaction_sum.value = Ratio{not_a_number};
  const Finding none = finding_for("insert-interaction", "A1", lift.facts());
  CHECK(none.result == Result::missing);
  CHECK(none.text == "the interaction is not a usable number");

  SlabLift plain;
  const auto share_told = [&](bool demand, bool nominal) {
    auto facts = plain.facts();
    for (ModeCheck& check : facts.modes.checks) {
      if (!demand) check.demand.reset();
      if (!nominal) check.nominal.reset();
    }
    Trace trace = Trace::recording();
    CHECK(rule_named("insert-breakout")->judge(facts, trace).front().result == Result::pass);
    return has_step(trace, "u");
  };
  CHECK(share_told(true, true));
  CHECK_FALSE(share_told(false, true));
  CHECK_FALSE(share_told(true, false));
}

TEST_CASE("bars about an insert by EN 1992-4: their clause, and tension and shear by the power beside bars") {
  SlabLift lift;
  lift.plan.piece.solids[0].size.z = 1.0 * m;
  lift.plan.piece.stated_weight.reset();
  for (plan::Insert& insert : lift.plan.inserts) insert.at.z = 1.0 * m, insert.embedment = 300.0 * mm;
  lift.rules.headed = eu_rules().headed;
  lift.rules.anchor_bars = eu_rules().anchor_bars;
  REQUIRE(lift.rules.anchor_bars->en);
  plan::AnchorBars bars;
  bars.count = 4;
  bars.diameter = 12.0 * mm;
  bars.yield_strength = 500.0 * MPa;
  bars.ribbed = true;
  bars.distance = 100.0 * mm;
  bars.top = 40.0 * mm;
  bars.bottom = 700.0 * mm;
  bars.top_end = plan::BarEnd::hook;
  bars.bottom_end = plan::BarEnd::straight;
  lift.plan.inserts[0].bars = bars;
  const auto facts = lift.facts();
  const Finding with = finding_for("insert-breakout", "A1", facts),
                without = finding_for("insert-breakout", "A2", facts);
  CAPTURE(with.text, without.text);
  REQUIRE(with.utilization);
  CHECK(with.clause == "EN 1992-4 7.2.1.9");
  CHECK(without.clause == "EN 1992-4 7.2.1.4");
  // (n^k + v^k)^(1/k) of the concrete's largest uses, n^2 + v^2 of the steel's, over all situations.
  const double k = lift.rules.anchor_bars->en->interaction_power.value.value();
  const auto use = [&](std::size_t s, std::size_t i, Mode mode) {
    return facts.modes.at(s, i, mode).comparison.utilization.value_or(0.0);
  };
  const auto largest = [&](std::size_t i) {
    double most = 0.0;
    for (std::size_t s = 0; s < facts.modes.situations; ++s) {
      const double n =
          std::max({use(s, i, Mode::breakout), use(s, i, Mode::pullout), use(s, i, Mode::side_blowout)});
      const double v = std::max(use(s, i, Mode::edge_breakout), use(s, i, Mode::pryout));
      const double n_s = use(s, i, Mode::steel_tension), v_s = use(s, i, Mode::steel_shear);
      most = std::max({most, std::pow(std::pow(n, k) + std::pow(v, k), 1.0 / k), n_s * n_s + v_s * v_s});
    }
    return most;
  };
  CHECK(finding_for("insert-interaction", "A1", facts).utilization.value() ==
        Approx(largest(0)).epsilon(1e-9));
  // Without the table of them the bars count for nothing.
  lift.rules.anchor_bars.reset();
  CHECK(finding_for("insert-interaction", "A1", lift.facts()).result == Result::missing);
  lift.rules.anchor_bars = us_rules().anchor_bars;
  CHECK(finding_for("insert-interaction", "A1", lift.facts()).result == Result::missing);
}

TEST_CASE(
    "inserts count as uncracked only where cracking was computed and passes, and no wall is bent too much") {
  SlabLift lift;
  lift.rules.headed = eu_rules().headed;
  lift.plan.concrete.cracked = false;
  for (plan::Insert& insert : lift.plan.inserts)
    insert.embedment = 60.0 * mm;  // far from edges and thin behind
  auto facts = lift.facts();
  const auto cracked = [](StageFacts& of, bool bending_is_known) {
    count_cracks(of, bending_is_known);
    REQUIRE(of.as_cracked.size() == 4);
    return std::get<resistances::HeadedInsert>(of.as_cracked[0]).cracked;
  };
  CHECK_FALSE(cracked(facts, true));
  lift.rules.cracking.factor.value = Ratio{1000.0};
  CHECK(cracked(facts, true));
  lift.rules.cracking.factor.value = Ratio{1.5};
  CHECK_FALSE(cracked(facts, true));
  CHECK(cracked(facts, false));
  // A block passes without a computation: its inserts are cracked.
  SlabLift block;
  block.rules.headed = eu_rules().headed;
  block.plan.concrete.cracked = false;
  block.plan.piece.solids[0].size = {1.6 * m, 1.6 * m, 1.0 * m};
  block.plan.piece.stated_weight.reset();
  const double at_m[4][2] = {{0.5, 0.5}, {1.1, 0.5}, {1.1, 1.1}, {0.5, 1.1}};
  for (std::size_t i = 0; i < 4; ++i) {
    block.plan.inserts[i].at = {at_m[i][0] * m, at_m[i][1] * m, 1.0 * m};
    block.plan.inserts[i].embedment = 60.0 * mm;
  }
  auto of_block = block.facts();
  REQUIRE(finding_for("piece-cracking", "SL-1", of_block).result == Result::note);
  CHECK(cracked(of_block, true));
}

TEST_CASE("a loop that is made deeper has longer legs only where they are told") {
  SlabLift lift;
  lift.facts();
  for (plan::Insert& insert : lift.plan.inserts) insert.kind = "rated";
  lift.plan.inserts[1].kind = "loop-bar";
  lift.plan.inserts[1].loop = plan::Loop{};
  const auto changed = changed_plans(lift.plan, lift.body);
  REQUIRE(changed.size() == 6);
  CHECK(in(mm, changed[3].plan.inserts[1].embedment.value()) == Approx(300.0));
  CHECK_FALSE(changed[3].plan.inserts[1].loop->leg_length);
}
