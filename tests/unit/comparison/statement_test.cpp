// What several verdicts mean together: plain words whenever they part, and never an invitation to pick one.

#include <catch2/catch.hpp>

#include <string>
#include <vector>

#include "comparison/comparison.hpp"
#include "support/hand_made_report.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using checks::Verdict;

namespace {

comparison::Comparison said_by(const std::vector<std::pair<std::string, Verdict>>& verdicts) {
  comparison::Comparison all{.reports = {}, .named_by_plan = "", .worst = Verdict::go, .contrasts = {}};
  for (const auto& [rules, verdict] : verdicts) {
    all.reports.push_back(hand_made_report());
    all.reports.back().rules = rules;
    all.reports.back().verdict = verdict;
    all.worst = std::max(all.worst, verdict);
  }
  return all;
}

std::string whole(const comparison::Comparison& all) {
  std::string text;
  for (const std::string& sentence : statement(all)) text += sentence + "\n";
  return text;
}

}  // namespace

TEST_CASE("GO by one and NO-GO by another: no permission, the engineer of record chooses, the worst counts") {
  const auto all = said_by({{"us", Verdict::go}, {"eu", Verdict::no_go}});
  CHECK_FALSE(is_agreed(all));
  CHECK(whole(all) ==
        "The rule sets do not agree: GO by us, NO-GO by eu.\n"
        "The GO by us is no permission to lift.\n"
        "The engineer of record chooses the code for the whole lift, before the lift; this program does not choose the kinder "
        "one. Until then the worst counts: NO-GO.\n"
        "Load, resistance, factors and limits of one code belong together: nothing may be taken from each where it is kinder.\n");
}

TEST_CASE("the order in which the rule sets are asked for changes nothing") {
  CHECK(whole(said_by({{"eu", Verdict::no_go}, {"us", Verdict::go}})) ==
        whole(said_by({{"us", Verdict::go}, {"eu", Verdict::no_go}})));
}

TEST_CASE("HOLD and NO-GO: neither may lift, and no GO is spoken of") {
  const std::string text = whole(said_by({{"us", Verdict::hold}, {"eu", Verdict::no_go}}));
  CHECK(text.find("HOLD by us, NO-GO by eu") != std::string::npos);
  CHECK(text.find("The GO by") == std::string::npos);
  CHECK(text.find("the worst counts: NO-GO") != std::string::npos);
}

TEST_CASE("sets that agree are told so, each by its name") {
  const auto all = said_by({{"us", Verdict::go}, {"eu", Verdict::go}, {"north", Verdict::go}});
  CHECK(is_agreed(all));
  CHECK(statement(all).front() == "GO by us, eu, north: the rule sets agree.");
}
