// JSON, format 1: the keys as promised, numbers or null, the same bytes every time, whatever the texts hold.

#include <catch2/catch.hpp>

#include <limits>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "output/json.hpp"
#include "support/hand_made_report.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

using Json = nlohmann::ordered_json;
using Keys = std::vector<std::string>;

Json of(const checks::Report& report) { return Json::parse(output::json({{report.file, &report, nullptr}})); }

Keys keys(const Json& object) {
  REQUIRE(object.is_object());
  Keys all;
  for (const auto& [key, value] : object.items()) all.push_back(key);
  return all;
}

}  // namespace

TEST_CASE("the keys and their nesting are those of format 1, in this order") {
  const Json json = of(hand_made_report());
  CHECK(keys(json) == Keys{"format", "program", "plan", "rules", "verdict", "sign_off", "piece", "strength", "stages", "unconfirmed",
                           "not_checked", "cautions"});
  CHECK(keys(json["program"]) == Keys{"name", "version"});
  CHECK(keys(json["plan"]) == Keys{"file", "mark", "revision", "fingerprint"});
  CHECK(keys(json["piece"]) == Keys{"volume_m3", "mass_kg", "centre_of_gravity_m"});
  CHECK(keys(json["strength"]) == Keys{"usable_MPa", "required_MPa", "basis"});
  REQUIRE(json["stages"].size() == 1);
  const Json& stage = json["stages"][0];
  CHECK(keys(stage) == Keys{"kind", "verdict", "load", "tilt_deg", "hanging", "legs", "inserts", "cranes", "pull_not_to_exceed_kN", "losses",
                             "findings"});
  CHECK(keys(stage["load"]) ==
        Keys{"weight_kN", "attached_kN", "adhesion_kN", "dynamic_factor", "total_kN", "hook_kN"});
  CHECK(keys(stage["legs"][0]) == Keys{"to", "tension_kN", "from_horizontal_deg", "situation"});
  CHECK(keys(stage["inserts"][0]) == Keys{"id", "tension_kN", "shear_kN"});
  for (const Json& finding : stage["findings"])
    CHECK(keys(finding) == Keys{"rule", "subject", "outcome", "demand", "nominal", "factor", "capacity", "utilization",
                                "unit", "limit", "clause", "text", "remedy", "situation"});
  CHECK(keys(json["unconfirmed"][0]) == Keys{"table", "key", "value", "source"});
}

TEST_CASE("the values are those of the report, in SI") {
  const Json json = of(hand_made_report());
  CHECK(json["format"] == 1);
  CHECK(json["program"]["name"] == "firstpick");
  CHECK_FALSE(json["program"]["version"].get<std::string>().empty());
  CHECK(json["plan"]["file"] == "plans/slab.toml");
  CHECK(json["plan"]["mark"] == "SL-1");
  CHECK(json["plan"]["revision"] == "C");
  CHECK(json["plan"]["fingerprint"] == std::string(64, 'a'));
  CHECK(json["rules"] == "hand-made");
  CHECK(json["verdict"] == "NO-GO");
  CHECK(json["piece"]["volume_m3"].get<double>() == Approx(2.4));
  CHECK(json["piece"]["mass_kg"].get<double>() == Approx(5760.0));
  REQUIRE(json["piece"]["centre_of_gravity_m"].size() == 3);
  CHECK(json["piece"]["centre_of_gravity_m"][2].get<double>() == Approx(0.15));
  CHECK(json["strength"]["usable_MPa"].get<double>() == Approx(24.0));
  CHECK(json["strength"]["required_MPa"].get<double>() == Approx(20.0));
  CHECK(json["strength"]["basis"] == "lowest of 2 field-cured cylinders");

  const Json& stage = json["stages"][0];
  CHECK(stage["kind"] == "strip");
  CHECK(stage["verdict"] == "NO-GO");
  CHECK(stage["load"]["weight_kN"].get<double>() == Approx(58.0));
  CHECK(stage["load"]["attached_kN"].get<double>() == Approx(2.0));
  CHECK(stage["load"]["adhesion_kN"].get<double>() == Approx(8.0));
  CHECK(stage["load"]["dynamic_factor"].get<double>() == Approx(1.3));
  CHECK(stage["load"]["total_kN"].get<double>() == Approx(86.0));
  CHECK(stage["load"]["hook_kN"].get<double>() == Approx(70.0));
  CHECK(stage["tilt_deg"].get<double>() == Approx(1.5));
  CHECK(stage["legs"][0]["from_horizontal_deg"].get<double>() == Approx(60.0));
  CHECK(stage["inserts"][0]["shear_kN"].get<double>() == Approx(12.0));

  const Json& failed = stage["findings"][1];
  CHECK(failed["rule"] == "insert-breakout");
  CHECK(failed["subject"] == "A1");
  CHECK(failed["outcome"] == "fail");
  CHECK(failed["demand"].get<double>() == Approx(12.0));
  CHECK(failed["nominal"].get<double>() == Approx(60.0));
  CHECK(failed["factor"].get<double>() == Approx(4.0));
  CHECK(failed["capacity"].get<double>() == Approx(15.0));
  CHECK(failed["utilization"].get<double>() == Approx(1.6));
  CHECK(failed["unit"] == "kN");
  CHECK(failed["limit"].get<double>() == 1.0);
  CHECK(failed["clause"] == "clause 1");
  CHECK(failed["text"] == "a cone of concrete breaks out at A1");
  CHECK(failed["remedy"] == "a deeper insert");

  CHECK(json["unconfirmed"][0]["table"] == "rules/hand-made.toml");
  CHECK(json["unconfirmed"][0]["key"] == "somewhere-2018.k");
  CHECK(json["unconfirmed"][0]["value"] == "24");
  CHECK(json["unconfirmed"][0]["source"] == "Somewhere, cl. 1");
  CHECK(json["not_checked"] == Json::array({"cracking and bending of the piece"}));
  CHECK(json["cautions"] == Json::array({"This is information, not permission."}));
}

TEST_CASE("what a finding does not have is null, never zero") {
  const Json gap = of(hand_made_report())["stages"][0]["findings"][2];
  CHECK(gap["outcome"] == "missing");
  for (const char* key : {"demand", "nominal", "factor", "capacity", "utilization", "unit", "limit", "clause"})
    CHECK(gap[key].is_null());
}

TEST_CASE("a stage that could not be computed has null for its numbers and keeps its keys") {
  checks::Report report = hand_made_report();
  checks::StageReport& stage = report.stages.front();
  stage.load.reset();
  stage.hook.reset();
  stage.tilt.reset();
  stage.legs.clear();
  stage.inserts.clear();
  report.usable_strength.reset();
  report.required_strength.reset();
  const Json json = of(report);
  CHECK(json["stages"][0]["load"].is_null());
  CHECK(json["stages"][0]["tilt_deg"].is_null());
  CHECK(json["stages"][0]["legs"] == Json::array());
  CHECK(json["stages"][0]["inserts"] == Json::array());
  CHECK(json["strength"]["usable_MPa"].is_null());
  CHECK(json["strength"]["required_MPa"].is_null());
}

TEST_CASE("a hook load that is not known is null beside a load that is") {
  checks::Report report = hand_made_report();
  report.stages.front().hook.reset();
  const Json load = of(report)["stages"][0]["load"];
  CHECK(load["hook_kN"].is_null());
  CHECK(load["total_kN"].is_number());
}

TEST_CASE("numbers that are not finite are null") {
  for (const double bad : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(),
                           -std::numeric_limits<double>::infinity()}) {
    checks::Report report = hand_made_report();
    report.mass = bad * kg;
    report.centre_of_gravity.y = bad * m;
    report.usable_strength = bad * MPa;
    checks::StageReport& stage = report.stages.front();
    stage.load->total = bad * kN;
    stage.tilt = bad * deg;
    stage.legs.front().tension = bad * kN;
    stage.inserts.front().shear = bad * kN;
    stage.findings.front().utilization = bad;
    stage.findings.front().capacity = Force{bad * kN};
    stage.findings.front().factor = bad;
    const Json json = of(report);
    for (const char* path : {"/piece/mass_kg", "/piece/centre_of_gravity_m/1", "/strength/usable_MPa",
                             "/stages/0/load/total_kN", "/stages/0/tilt_deg", "/stages/0/legs/0/tension_kN",
                             "/stages/0/inserts/0/shear_kN", "/stages/0/findings/0/utilization",
                             "/stages/0/findings/0/capacity", "/stages/0/findings/0/factor"}) {
      CAPTURE(path);
      CHECK(json.at(Json::json_pointer(path)).is_null());
    }
  }
}

TEST_CASE("numbers keep every digit") {
  checks::Report report = hand_made_report();
  report.stages.front().findings.front().utilization = 0.1 + 0.2;
  CHECK(of(report)["stages"][0]["findings"][0]["utilization"].get<double>() == 0.1 + 0.2);
}

TEST_CASE("hostile texts leave the JSON valid and cannot add a key") {
  const checks::Report report = hostile_report();
  const Json json = of(report);  // throws where it is not JSON
  CHECK(keys(json) == keys(of(hand_made_report())));
  CHECK(json["verdict"] == "NO-GO");
  const std::string text = output::json({{report.file, &report, nullptr}});
  for (const char byte : text) CHECK_FALSE((static_cast<unsigned char>(byte) < 0x20 && byte != '\n'));
  CHECK(text.find('\x1b') == std::string::npos);
}

TEST_CASE("the same report gives the same bytes") {
  const checks::Report report = hand_made_report();
  const checks::Report again = hand_made_report();
  CHECK(output::json({{report.file, &report, nullptr}}) == output::json({{again.file, &again, nullptr}}));
}

TEST_CASE("several answers are an array in the order asked, a plan that could not be read among them") {
  const checks::Report report = hand_made_report();
  const std::vector<Diagnostic> faults{
      {.file = "bad.toml", .place = {3, 7}, .what = "no such key", .help = "did you mean 'mark'?"},
      {.file = "bad.toml", .place = {}, .what = "something else", .help = ""}};
  const Json json = Json::parse(output::json({{"bad.toml", nullptr, &faults}, {report.file, &report, nullptr}}));
  REQUIRE(json.is_array());
  REQUIRE(json.size() == 2);
  CHECK(keys(json[0]) == Keys{"format", "program", "plan", "errors"});
  CHECK(keys(json[0]["plan"]) == Keys{"file"});
  CHECK(json[0]["plan"]["file"] == "bad.toml");
  REQUIRE(json[0]["errors"].size() == 2);
  CHECK(keys(json[0]["errors"][0]) == Keys{"file", "line", "column", "what", "help"});
  CHECK(json[0]["errors"][0]["line"] == 3);
  CHECK(json[0]["errors"][0]["column"] == 7);
  CHECK(json[0]["errors"][1]["help"].is_null());
  CHECK_FALSE(json[0].contains("verdict"));
  CHECK(json[1]["verdict"] == "NO-GO");
}

TEST_CASE("a plan that could not be read has errors and no verdict when asked alone") {
  const std::vector<Diagnostic> faults{{.file = "bad.toml", .place = {1, 1}, .what = "no such key", .help = ""}};
  const Json json = Json::parse(output::json({{"bad.toml", nullptr, &faults}}));
  REQUIRE(json.is_object());
  CHECK_FALSE(json.contains("verdict"));
  CHECK(json["errors"].size() == 1);
}
