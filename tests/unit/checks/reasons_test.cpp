// Reasons: each told once, whatever the number of rules and subjects it stops.

#include "checks/reasons.hpp"

#include <catch2/catch.hpp>

using namespace firstpick;
using namespace firstpick::checks;

namespace {

Finding fails(std::string_view rule, const std::string& subject, double utilization) {
  Finding finding{.rule = rule, .subject = subject, .result = Result::fail};
  finding.utilization = utilization;
  finding.text = subject + " is too weak";
  return finding;
}

std::vector<Reason> of(std::vector<Finding> findings, Result result) {
  StageReport stage;
  stage.findings = std::move(findings);
  return reasons({&stage, 1}, result);
}

}  // namespace

TEST_CASE("what fails is told once for each rule, at its worst subject") {
  const auto found = of({fails("sling-overload", "A1", 1.1), fails("sling-overload", "A2", 1.3),
                         fails("insert-rating", "A1", 1.2)},
                        Result::fail);
  REQUIRE(found.size() == 2);
  CHECK(found[0].text == "A2 is too weak");
  CHECK(found[0].subjects == std::vector<std::string>{"A1", "A2"});
  CHECK(found[1].rule == "insert-rating");
}

TEST_CASE("of equals the first is told") {
  const auto found = of(
      {fails("sling-overload", "A1", 1.3), fails("sling-overload", "A2", 1.3 * (1.0 + 1e-12))}, Result::fail);
  REQUIRE(found.size() == 1);
  CHECK(found[0].text == "A1 is too weak");
}

TEST_CASE("what is missing is one reason for all rules that say the same, and not one with another remedy") {
  const auto found = of({missing("strength-evidence", "SL-1", "no test", "break cylinders"),
                         missing("insert-breakout", "A1", "no test", "break cylinders"),
                         missing("insert-rating", "A1", "no test", "ask the supplier")},
                        Result::missing);
  REQUIRE(found.size() == 2);
  CHECK(found[0].rules == std::vector<std::string>{"strength-evidence", "insert-breakout"});
  CHECK(found[0].stages == std::vector<std::string>{"strip"});
  CHECK(of({missing("strength-evidence", "SL-1", "no test", "break cylinders")}, Result::fail).empty());
}

TEST_CASE("what fails without a utilization is one reason with what says the same, and with nothing else") {
  const auto tick = [](std::string_view rule, const std::string& text) {
    Finding finding{.rule = rule, .subject = "SL-1", .result = Result::fail};
    finding.text = text;
    finding.remedy = "put it right";
    return finding;
  };
  const auto found = of({tick("hook-latch", "the hook has no latch"), tick("signaller", "the hook has no latch"),
                         tick("tag-line", "nobody holds a line"), fails("sling-overload", "A1", 1.1)},
                        Result::fail);
  REQUIRE(found.size() == 3);
  CHECK(found[0].rules == std::vector<std::string>{"hook-latch", "signaller"});
  CHECK(found[1].text == "nobody holds a line");
  CHECK(found[2].rule == "sling-overload");
}
