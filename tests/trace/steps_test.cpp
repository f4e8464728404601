// Every number in the calculation of every plan, computed again from what is printed beside it.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "record/trace.hpp"
#include "support/formula.hpp"
#include "support/plan_files.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

// What is wrong with a step, each in one sentence; nothing where a reader with a calculator gets the printed result.
std::vector<std::string> faults_of(const Step& step) {
  std::vector<std::string> faults;
  Symbols numbers;
  for (const Term& term : step.given) {
    if (!std::isfinite(term.number)) faults.push_back(term.symbol + " is not finite");
    if (term.unit.empty()) faults.push_back(term.symbol + " has no unit");
    if (!numbers.emplace(term.symbol, term.number).second) faults.push_back(term.symbol + " is given twice");
  }
  if (!std::isfinite(step.result.number)) faults.push_back("the result is not finite");
  if (step.result.unit.empty()) faults.push_back("the result has no unit");
  if (step.words.empty()) faults.push_back("the step says nothing in words");
  if (step.clause.empty() && step.sources.empty()) faults.push_back("neither a clause nor a source");
  if (step.formula.empty()) return faults;
  try {
    const double again = value_of(step.formula, numbers);
    const double off = std::abs(again - step.result.number);
    if (!(off <= 1e-9 * std::abs(step.result.number)))
      faults.push_back("computed again: " + std::to_string(again) + ", printed: " + std::to_string(step.result.number));
  } catch (const std::invalid_argument& fault) {
    faults.push_back(fault.what());
  }
  return faults;
}

std::string shown(const Trace::Entry& entry) {
  std::string text = entry.subject + " | " + entry.step.words + " | " + entry.step.result.symbol + " = " +
                     entry.step.formula + " = " + std::to_string(entry.step.result.number) + " " + entry.step.result.unit;
  for (const Term& term : entry.step.given)
    text += " | " + term.symbol + " = " + std::to_string(term.number) + " " + term.unit;
  return text;
}

Step breakout_step() {
  return {.words = "basic breakout strength",
          .result = {"N_b", 24.0 * std::sqrt(3000.0) * std::pow(6.0, 1.5), "lb"},
          .formula = "k_c * sqrt(f_c) * h_ef^1.5",
          .given = {{"k_c", 24.0, "lbf/(psi^0.5 in^1.5)"}, {"f_c", 3000.0, "psi"}, {"h_ef", 6.0, "in"}},
          .clause = "ACI 318-19 17.6.2.2.1"};
}

}  // namespace

namespace {

// A number under a name that was computed before, in the same unit, is one of the numbers computed under that name: the
// sheet does not change a value on the way from one line to another.
void check_handed_on(const checks::Report& report) {
  std::map<std::pair<std::string, std::string>, std::vector<double>> results;
  for (const Trace::Entry& entry : report.trace.steps()) {
    for (const Term& term : entry.step.given) {
      const auto known = results.find({term.symbol, term.unit});
      if (known == results.end()) continue;
      CAPTURE(shown(entry), term.symbol, term.number);
      CHECK(std::ranges::any_of(known->second, [&](double number) {
        return std::abs(number - term.number) <= 1e-9 * std::abs(number);
      }));
    }
    results[{entry.step.result.symbol, entry.step.result.unit}].push_back(entry.step.result.number);
  }
}

}  // namespace

TEST_CASE("every step of every plan can be computed again, says where it comes from, and hands its number on as it came out") {
  const auto plans = all_plans();
  REQUIRE(plans.size() >= 3);
  std::set<std::string> computed;
  for (const std::string& file : plans) {
    const checks::Report report = report_on(file);
    CAPTURE(file);
    CHECK_FALSE(report.trace.steps().empty());
    for (const Trace::Entry& entry : report.trace.steps()) {
      CAPTURE(shown(entry));
      CHECK(faults_of(entry.step) == std::vector<std::string>{});
      if (!entry.step.formula.empty()) computed.insert(entry.step.result.symbol);
    }
    check_handed_on(report);
  }
  // The plans together have formulas of loads, strength, gear and inserts for this test to bite on.
  for (const char* symbol : {"m_max", "W", "F", "F_adh", "f_c", "f", "f_req", "W_hook", "T_max", "N_b", "N_cb", "N_pn"}) {
    CAPTURE(symbol);
    CHECK(computed.contains(symbol));
  }
  CHECK(computed.size() >= 25);
}

TEST_CASE("a right step has no fault") { CHECK(faults_of(breakout_step()).empty()); }

TEST_CASE("a wrong formula, number, symbol or missing provenance is caught") {
  Step step = breakout_step();
  SECTION("root left out") { step.formula = "k_c * f_c * h_ef^1.5"; }
  SECTION("another power") { step.formula = "k_c * sqrt(f_c) * h_ef^2"; }
  SECTION("a result off in the tenth digit") { step.result.number *= 1.0 + 2e-9; }
  SECTION("a number put in that is not the one computed with") { step.given[1].number = 3001.0; }
  SECTION("a symbol without a number") { step.given.pop_back(); }
  SECTION("a symbol twice") { step.given.push_back({"f_c", 3000.0, "psi"}); }
  SECTION("no formula but words") { step.formula = "see above"; }
  SECTION("a result that is not a number") { step.result.number = std::nan(""); }
  SECTION("a number put in without a unit") { step.given[0].unit = ""; }
  SECTION("nothing says where it comes from") { step.clause = ""; }
  CHECK_FALSE(faults_of(step).empty());
}
