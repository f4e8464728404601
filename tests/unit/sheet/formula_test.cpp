// Formulas of steps as trees: what is written means what was read.

#include "sheet/clause.hpp"
#include "sheet/formula.hpp"

#include <catch2/catch.hpp>

using namespace firstpick;
using namespace firstpick::sheet;

namespace {

std::string again(const char* text) {
  const auto formula = formula_of(text);
  return formula ? as_text(*formula) : "no formula";
}

std::string put_in(const char* text, const std::vector<Term>& given) {
  return as_text(with_numbers(formula_of(text).value(), given));
}

}  // namespace

TEST_CASE("a formula is written as it was read, with the parentheses it needs") {
  CHECK(again("k_c * sqrt(f_c) * h_ef^1.5") == "k_c * sqrt(f_c) * h_ef^1.5");
  CHECK(again("(min(c_1, r) + c_2) * -2") == "(min(c_1, r) + c_2) * -2");
  CHECK(again("a - (b - c)") == "a - (b - c)");
  CHECK(again("a - b - c") == "a - b - c");
  CHECK(again("a / (b * c)") == "a / (b * c)");
  CHECK(again("a / b / c") == "a / b / c");
  CHECK(again("2^(3 / 2)") == "2^(3 / 2)");
  CHECK(again("(2^3)^2") == "(2^3)^2");
  CHECK(again("(-2)^2") == "(-2)^2");
  CHECK(again("1.5e-3 * x") == "1.5e-3 * x");
}

TEST_CASE("what is no formula is refused") {
  for (const char* text : {"", "a +", "(a", "a b", "min(a,", "a ** b", "3 $", ")"}) {
    CAPTURE(text);
    CHECK_FALSE(formula_of(text).has_value());
  }
  CHECK_FALSE(formula_of(std::string(10000, '(')).has_value());
  CHECK_FALSE(formula_of(std::string(10000, '-') + "1").has_value());
}

TEST_CASE("numbers go to the place of their symbols") {
  const std::vector<Term> given{{"a", 2.5, "m"}, {"b", -3.0, "m"}, {"c", 1.0e7, "1"}};
  CHECK(put_in("a * b", given) == "2.5 * -3");
  CHECK(put_in("a - b", given) == "2.5 - -3");
  CHECK(put_in("b^2", given) == "(-3)^2");
  CHECK(put_in("a / (b + c)", given) == "2.5 / (-3 + 1e+07)");
  CHECK(put_in("a + unknown", given) == "2.5 + unknown");
}

TEST_CASE("MathML of a fraction, a root, a power, a lower index and a large number") {
  CHECK(as_mathml(*formula_of("a / b")) == "<mfrac><mi>a</mi><mi>b</mi></mfrac>");
  CHECK(as_mathml(*formula_of("sqrt(x)")) == "<msqrt><mi>x</mi></msqrt>");
  CHECK(as_mathml(*formula_of("h_ef^2")) ==
        "<msup><mrow><msub><mi>h</mi><mi>ef</mi></msub></mrow><mn>2</mn></msup>");
  CHECK(symbol_as_mathml("psi_c_left") == "<msub><mi>&#968;</mi><mi>c,left</mi></msub>");
  CHECK(as_mathml({Formula::Kind::number, "1.5e+06", {}}) ==
        "<mrow><mn>1.5</mn><mo>&#215;</mo><msup><mn>10</mn><mrow><mn>6</mn></mrow></msup></mrow>");
}

TEST_CASE("a formula that is one number is not printed beside its result") {
  CHECK_FALSE(sheet::formula_of(Step{.words = {}, .result = {"psi_ed", 1.0, "1"}, .formula = "1"}));
  CHECK_FALSE(sheet::formula_of(Step{.words = {}, .result = {"psi_ed", 1.0, "1"}}));
  CHECK(sheet::formula_of(Step{.words = {}, .result = {"x", 2.0, "1"}, .formula = "1 + 1"}));
}

TEST_CASE("the clause of a step stands with its source where it is no more than a place in it") {
  Step step{.words = {}, .result = {"T_max", 1.0, "kN"}, .clause = "(d)"};
  CHECK(sheet::clause_in_words(step) == "(d)");
  step.sources.push_back({.title = "Rules of slings", .locator = "table 1"});
  step.sources.push_back({.title = "Rules of precast lifts", .locator = "(d)"});
  CHECK(sheet::clause_in_words(step) == "Rules of precast lifts, (d)");
  step.clause = "statics";
  CHECK(sheet::clause_in_words(step) == "statics");
  step.clause.clear();
  CHECK(sheet::clause_in_words(step).empty());
}
