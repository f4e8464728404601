// What `firstpick need` prints, of a report made by hand.

#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include "output/need.hpp"

using namespace firstpick;
using namespace firstpick::checks;

namespace {

NeedReport made() {
  NeedReport report{.file = "p.toml", .mark = "SL-1", .title = {}, .revision = {}, .fingerprint = std::string(64, 'a'),
                    .rules = "us", .units = UnitSystem::us, .stages = {}};
  StageNeedReport stage;
  stage.need.rigging = "legs";
  stage.need.rules = {{"insert-breakout", 2410.5 * psi, "A2"}, {"piece-cracking", 900.0 * psi, "SL-1"}};
  stage.need.to_print = 2500.0 * psi;
  stage.need.verdict = Verdict::go;
  stage.changes = {{"legs 25 % longer", 2200.0 * psi, {}}, {"inserts 50 % deeper", {}, "insert-embedment stays, A1"}};
  report.stages.push_back(stage);
  return report;
}

}  // namespace

TEST_CASE("need: the strength to state, each rule's rounded up, and what changes would do") {
  const std::string text = output::need_text(made(), 200);
  CHECK(text.find("strength to state on the drawing: 2500 psi") != std::string::npos);
  CHECK(text.find("Strengths are those of the standard cylinder, 6 x 12 in: results of other specimens") != std::string::npos);
  CHECK(text.find("engineer of record states the strength, and local codes govern") != std::string::npos);
  CHECK(text.find("2411 psi A2") != std::string::npos);
  CHECK(text.find("not so: insert-embedment stays, A1") != std::string::npos);
  CHECK(text.find("no strength mends") == std::string::npos);
  CHECK(text.find("states no required strength") == std::string::npos);
}

TEST_CASE("need: what no strength mends is told once a rule, and the strength is not offered for the drawing") {
  NeedReport report = made();
  StageNeedReport& stage = report.stages.front();
  stage.requirement_stated = false;
  stage.need.verdict = Verdict::no_go;
  Finding fail{.rule = "sling-overload", .subject = "A1", .result = Result::fail, .text = "too much", .remedy = "a chain"};
  stage.need.not_mended = {fail, fail};
  const std::string text = output::need_text(report, 200);
  CHECK(text.find("to state on the drawing") == std::string::npos);
  CHECK(text.find("still NO-GO") != std::string::npos);
  CHECK(text.find("the rule set's least stands in") != std::string::npos);
  const auto first = text.find("sling-overload");
  REQUIRE(first != std::string::npos);
  CHECK(text.find("sling-overload", first + 1) == std::string::npos);
}

TEST_CASE("need: JSON in SI, null where there is no number") {
  const auto json = nlohmann::json::parse(output::need_json(made()));
  const auto& stage = json["stages"][0];
  CHECK(stage["needed_MPa"].get<double>() == Approx(16.62).epsilon(1e-3));
  CHECK(stage["governed_by"] == "insert-breakout");
  CHECK(stage["changes"][1]["print_MPa"].is_null());
  CHECK(json["cautions"] == output::need_cautions(UnitSystem::si));
  CHECK(json["cautions"][0].get<std::string>().find("150 x 300 mm") != std::string::npos);
  NeedReport empty = made();
  empty.stages.front().need.rules.clear();
  empty.stages.front().need.to_print.reset();
  CHECK(nlohmann::json::parse(output::need_json(empty))["stages"][0]["print_MPa"].is_null());
  CHECK(output::need_text(empty, 200).find("No strength of the concrete decides") != std::string::npos);
}
