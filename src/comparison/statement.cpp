// What several verdicts on one lift mean together. Two codes are two answers, not a choice at the form: the words say so in
// every case in which they part.

#include <algorithm>

#include <fmt/format.h>

#include "comparison/comparison.hpp"

namespace firstpick::comparison {

namespace {

using checks::Report;
using checks::Verdict;

std::string rules_that_say(Verdict verdict, const Comparison& comparison) {
  std::string names;
  for (const Report& report : comparison.reports)
    if (report.verdict == verdict) names += (names.empty() ? "" : ", ") + report.rules;
  return names;
}

std::string all_said(const Comparison& comparison) {
  std::string said;
  for (const Verdict verdict : {Verdict::go, Verdict::hold, Verdict::no_go})
    if (const std::string names = rules_that_say(verdict, comparison); !names.empty())
      said += fmt::format("{}{} by {}", said.empty() ? "" : ", ", checks::word_for(verdict), names);
  return said;
}

}  // namespace

bool is_agreed(const Comparison& comparison) {
  return std::ranges::all_of(comparison.reports,
                             [&](const Report& report) { return report.verdict == comparison.reports.front().verdict; });
}

std::vector<std::string> statement(const Comparison& comparison) {
  std::vector<std::string> sentences;
  if (is_agreed(comparison)) {
    sentences.push_back(fmt::format("{}: the rule sets agree.", all_said(comparison)));
  } else {
    sentences.push_back(fmt::format("The rule sets do not agree: {}.", all_said(comparison)));
    if (!rules_that_say(Verdict::go, comparison).empty())
      sentences.push_back(fmt::format("The GO by {} is no permission to lift.", rules_that_say(Verdict::go, comparison)));
    sentences.push_back(fmt::format(
        "The engineer of record chooses the code for the whole lift, before the lift; this program does not choose the kinder "
        "one. Until then the worst counts: {}.", checks::word_for(comparison.worst)));
  }
  sentences.emplace_back(
      "Load, resistance, factors and limits of one code belong together: nothing may be taken from each where it is kinder.");
  return sentences;
}

}  // namespace firstpick::comparison
