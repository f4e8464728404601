// What one rule has to say about one subject.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "checks/compare.hpp"
#include "units/print.hpp"
#include "units/quantity.hpp"

namespace firstpick::checks {

// A quantity of any kind that findings compare.
using Figure = std::variant<Force, Stress, Angle, Length, Duration, Ratio>;

std::string print(const Figure& figure, UnitSystem units, Rounding rounding);
std::string_view si_unit(const Figure& figure);  // "kN", "MPa", "deg", "m", "h", "1"
double si_number(const Figure& figure);          // in that unit

struct Finding {
  std::string_view rule;
  std::string subject;                 // an insert, a leg's insert, a crane, a rigging, or the piece's mark
  Result result = Result::missing;
  std::optional<Figure> demand;        // what is asked
  std::optional<Figure> nominal;       // the resistance before its safety factor
  std::optional<double> factor;        // the safety factor
  std::optional<Figure> capacity;      // what may be asked
  std::optional<double> utilization;   // demand over capacity
  std::optional<double> limit;         // the utilization that still passes
  std::string clause;
  std::string text;                    // on anything but pass: why, in one sentence
  std::string remedy;                  // what would change it
  std::string situation;               // which load set and sharing governs
  std::string together;                // "A1 + A2" where demand and nominal are those of several inserts as one
};

std::string_view word_for(Result result);  // "pass", "note", "missing", "fail"

// A finding that compares a demand with a capacity; text and remedy are the caller's for a fail.
template <class Q>
Finding compared(std::string_view rule, std::string subject, const Outcome<Demand<Q>>& demand,
                 const Outcome<Resistance<Q>>& nominal, double factor, std::string clause) {
  const Outcome<Resistance<Q>> capacity = behind_factor(nominal, factor);
  const Comparison comparison = compare(demand, capacity);
  Finding finding{.rule = rule, .subject = std::move(subject), .result = comparison.result};
  if (const auto* d = std::get_if<Demand<Q>>(&demand)) finding.demand = d->value;
  if (const auto* n = std::get_if<Resistance<Q>>(&nominal)) finding.nominal = n->value;
  if (const auto* c = std::get_if<Resistance<Q>>(&capacity)) finding.capacity = c->value;
  finding.factor = factor;
  finding.utilization = comparison.utilization;
  finding.limit = 1.0;
  finding.clause = std::move(clause);
  finding.text = comparison.why;
  finding.remedy = comparison.remedy;
  return finding;
}

inline Finding missing(std::string_view rule, std::string subject, std::string text, std::string remedy) {
  return {.rule = rule, .subject = std::move(subject), .result = Result::missing, .text = std::move(text),
          .remedy = std::move(remedy)};
}
inline Finding passed(std::string_view rule, std::string subject) {
  return {.rule = rule, .subject = std::move(subject), .result = Result::pass};
}
inline Finding noted(std::string_view rule, std::string subject, std::string text) {
  return {.rule = rule, .subject = std::move(subject), .result = Result::note, .text = std::move(text)};
}

}  // namespace firstpick::checks
