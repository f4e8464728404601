// Every step of the resistances of inserts, in each of its branches, computed again from what it prints.

#include <algorithm>
#include <cmath>

#include "resistances/breakout.hpp"
#include "resistances/edge_breakout.hpp"
#include "resistances/interaction.hpp"
#include "resistances/pryout.hpp"
#include "resistances/pullout.hpp"
#include "resistances/rated.hpp"
#include "resistances/side_blowout.hpp"
#include "resistances/steel_shear.hpp"
#include "resistances/steel_tension.hpp"
#include "support/formula.hpp"
#include "support/hand_made_rules.hpp"
#include "support/headed_face.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using namespace firstpick::resistances;

namespace {

const tables::HeadedInsertModel model = hand_made_headed_model();
const Stress f_c = 3217.0 * psi;
const Direction right{1.0, 0.0, 0.0}, up{0.0, 1.0, 0.0}, aslant{0.6, 0.8, 0.0};

// Everything that can be asked of a face with its inserts.
Trace all_steps_of(const HeadedFace& face) {
  Trace trace = Trace::recording();
  ProjectedAreas areas;
  const auto group = face.group();
  for (const HeadedInsert* insert : group) {
    const std::vector<const HeadedInsert*> one{insert};
    assessed(steel_tension(*insert, trace));
    assessed(steel_shear(*insert, model, trace));
    assessed(pullout(*insert, f_c, model, trace));
    assessed(side_blowout(*insert, f_c, model, trace));
    for (const Direction& shear : {right, up, aslant})
      assessed(edge_breakout(*insert, shear, f_c, model, trace));
    assessed(pryout(one, breakout(one, areas, Eccentricity::none(), f_c, model, trace), model, trace));
  }
  const Eccentricity e(0.7 * inch, -1.3 * inch);
  assessed(pryout(group, breakout(group, areas, e, f_c, model, trace), model, trace));
  for (const Direction& towards : {right, up, -1.0 * right, -1.0 * up}) {
    assessed(edge_breakout(group, towards, aslant, 0.4 * inch, f_c, model, trace));
    assessed(side_blowout(group, towards, f_c, model, trace));
  }
  return trace;
}

void check_steps(const Trace& trace) {
  REQUIRE_FALSE(trace.steps().empty());
  for (const auto& [subject, step] : trace.steps()) {
    CAPTURE(step.words, step.result.symbol, step.formula);
    CHECK(std::isfinite(step.result.number));
    CHECK_FALSE(step.result.unit.empty());
    CHECK_FALSE(step.clause.empty());
    if (step.formula.empty()) {
      CHECK(step.given.empty());
      continue;
    }
    Symbols numbers;
    for (const Term& term : step.given) numbers[term.symbol] = term.number;
    CHECK(numbers.size() == step.given.size());
    CHECK(value_of(step.formula, numbers) == Approx(step.result.number).epsilon(1e-12));
  }
}

bool has_words(const Trace& trace, const std::string& words) {
  return std::any_of(trace.steps().begin(), trace.steps().end(),
                     [&](const auto& entry) { return entry.step.words.starts_with(words); });
}

}  // namespace

TEST_CASE("steps of two inserts far from edges") {
  HeadedFace face = wide_face();
  face.add("A", 0.0 * inch, 0.0 * inch);
  face.add("B", 7.0 * inch, 0.0 * inch);
  check_steps(all_steps_of(face));
}

TEST_CASE("steps of inserts near three edges in thin concrete, with a corner and a row, one of them a stud") {
  HeadedFace face(rectangle(-3.0 * inch, -4.0 * inch, 17.0 * inch, 10.0 * inch), 11.0 * inch);
  face.add("A", 0.0 * inch, 0.0 * inch, 10.0 * inch);
  face.add("B", 8.0 * inch, 0.0 * inch, 10.0 * inch);
  face.inserts[1].stud = true;
  face.inserts[1].cracked = false;
  const Trace trace = all_steps_of(face);
  check_steps(trace);
  CHECK(has_words(trace, "edges in 4 directions cut the breakout body"));
  CHECK(has_words(trace, "side-face blowout strength of insert A"));
  CHECK(has_words(trace, "side-face blowout strength of 2 inserts in a row"));
}

TEST_CASE("steps of a narrow and thin section") {
  HeadedFace face(rectangle(-90.0 * inch, -4.0 * inch, 110.0 * inch, 9.0 * inch), 7.0 * inch);
  face.add("A", 0.0 * inch, 0.0 * inch);
  face.add("B", -6.0 * inch, 0.0 * inch);
  const Trace trace = all_steps_of(face);
  check_steps(trace);
  CHECK(has_words(trace, "narrow and thin section"));
}

TEST_CASE("steps of a shallow and of a deep insert beside an opening") {
  for (const double h_ef_in : {2.0, 11.2, 20.0}) {
    HeadedFace face(rectangle(-500.0 * inch, -500.0 * inch, 1000.0 * inch, 1000.0 * inch), 30.0 * inch,
                    {opening(2.5 * inch, -3.0 * inch, 20.0 * inch, 6.0 * inch)});
    face.add("A", 0.0 * inch, 0.0 * inch, h_ef_in * inch);
    check_steps(all_steps_of(face));
  }
}

TEST_CASE("steps of ratings and of interaction") {
  plan::Insert insert;
  insert.id = "R1";
  insert.rating =
      plan::Rating{.load = 40.0 * kN, .at_strength = 15.0 * MPa, .includes_factor = 4.0, .place = {}};
  Trace trace = Trace::recording();
  for (const auto scaling : {tables::RatingScaling::proportional, tables::RatingScaling::square_root}) {
    tables::RuleSet rules = hand_made_rules();
    rules.rating_scaling.value = scaling;
    for (const double usable : {9.0, 15.0, 40.0}) assessed(rated(insert, usable * MPa, rules, trace));
  }
  for (const auto& [n, v] : {std::pair{0.7, 0.5}, {0.7, 0.1}, {0.1, 0.7}})
    interaction_utilization(n, v, model, trace);
  CHECK(trace.steps().size() == 9);
  check_steps(trace);
}
