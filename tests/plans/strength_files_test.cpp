// The whole of `firstpick strength`: what it must answer, and the faults it must find in strength files and in the
// CSV files they name.

#include <algorithm>

#include "output/strength_json.hpp"
#include "output/strength_text.hpp"
#include "support/plan_files.hpp"
#include "support/strength_answers.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using checks::Verdict;

namespace {

const std::string breaks = R"(format = 1
units = "us"

[evidence]
specimen = "cylinder 6x12 in"
cure = "field"
cast = 2026-03-02T16:30:00-05:00
tested = 2026-03-03T07:10:00-05:00
results = ["2510 psi", "2600 psi"]
valid_for = "12 h"

[required]
strength = "2500 psi"
)";

const std::string pour = R"(format = 1
[required]
strength = "15 MPa"
[temperature_log]
file = "log.csv"
cast = 2026-03-02T16:00:00Z
[calibration]
mix = "M"
file = "ages.csv"
function = "nurse-saul"
datum = "0 degC"
curve = "logarithmic"
cured_at = "20 degC"
specimen = "cylinder 150x300 mm"
[[calibration.companion]]
tested = 2026-03-03T00:00:00Z
results = ["16.4 MPa", "16.6 MPa"]
specimen = "cylinder 150x300 mm"
cure = "field"
)";

// 20 + 20 log10(t): 8 h at 40 degC are 16 h at 20 degC, 16.5 MPa.
NamedFiles files(double last_hour = 16.0) {
  std::string log = "time,a [degC]\n";
  for (int i = 0; i <= static_cast<int>(2.0 * last_hour); ++i) {
    const int minutes = 16 * 60 + 30 * i;
    char row[64];
    std::snprintf(row, sizeof row, "2026-03-%02dT%02d:%02d:00Z,%.3f\n", 2 + minutes / 1440, minutes / 60 % 24,
                  minutes % 60, 40.0 + 0.001 * i);
    log += row;
  }
  return {{"log.csv", log},
          {"ages.csv", "age [h],strength [MPa]\n6,7.9588\n12,13.9794\n24,20\n48,26.0206\n96,32.0412\n"}};
}

std::string with(std::string text, const std::string& from, const std::string& to) {
  REQUIRE(text.find(from) != std::string::npos);
  return text.replace(text.find(from), from.size(), to);
}

tables::Tables that_take_maturity() {
  tables::Tables tables = us_tables();
  tables.rule_sets.at("us").maturity.value = tables::MaturityUse::validated_with_margin;
  return tables;
}

Verdict verdict_on(const std::string& text, const NamedFiles& named = {}, const tables::Tables& tables = us_tables(),
                   const std::string& now = "2026-03-03T08:00:00Z") {
  return report_of(answer_to(text, named, tables, now)).verdict;
}

}  // namespace

TEST_CASE("strength: at and above what is needed it is reached, below it is below") {
  const std::string now = "2026-03-03T07:20:00-05:00";
  CHECK(verdict_on(breaks, {}, us_tables(), now) == Verdict::go);
  CHECK(verdict_on(with(breaks, "2510 psi", "2500 psi"), {}, us_tables(), now) == Verdict::go);
  CHECK(verdict_on(with(breaks, "2510 psi", "2499 psi"), {}, us_tables(), now) == Verdict::no_go);
  CHECK(verdict_on(with(breaks, "strength = \"2500 psi\"", "strength = \"2511 psi\""), {}, us_tables(), now) ==
        Verdict::no_go);
}

TEST_CASE("strength: the rule set's minimum counts where the file asks for less") {
  const std::string weak = with(with(breaks, "2510 psi", "1990 psi"), "strength = \"2500 psi\"", "strength = \"1500 psi\"");
  CHECK(verdict_on(weak, {}, us_tables(), "2026-03-03T07:20:00-05:00") == Verdict::no_go);
}

TEST_CASE("strength: what does not count is HOLD") {
  const std::string now = "2026-03-03T07:20:00-05:00";
  CHECK(verdict_on(with(breaks, "\"field\"", "\"standard\""), {}, us_tables(), now) == Verdict::hold);
  CHECK(verdict_on(with(breaks, ", \"2600 psi\"", ""), {}, us_tables(), now) == Verdict::hold);
  CHECK(verdict_on(with(breaks, "[required]\nstrength = \"2500 psi\"\n", ""), {}, us_tables(), now) == Verdict::hold);
  CHECK(verdict_on("format = 1\n[required]\nstrength = \"2500 psi\"\n") == Verdict::hold);
  CHECK(verdict_on(breaks, {}, us_tables(), "2026-03-03T19:10:01-05:00") == Verdict::hold);
  CHECK(verdict_on(breaks, {}, us_tables(), "2026-03-03T19:10:00-05:00") == Verdict::go);
  CHECK(verdict_on(breaks, {}, us_tables(), "2026-03-03T07:00:00-05:00") == Verdict::hold);
  // The question has no zone, the test has one.
  CHECK(verdict_on(breaks, {}, us_tables(), "2026-03-03T07:20:00") == Verdict::hold);
}

TEST_CASE("strength: maturity is HOLD by the rule set as shipped, whatever it says") {
  const auto report = report_of(answer_to(pour, files(), us_tables(), "2026-03-03T08:00:00Z"));
  CHECK(report.verdict == Verdict::hold);
  REQUIRE(report.maturity);
  CHECK(in(MPa, report.maturity->estimate.value()) == Approx(20.0 + 20.0 * std::log10(32.0 / 24.0)).epsilon(1e-3));
  CHECK(report.maturity->why_not_credited == "the rule set takes no strength from maturity alone");
  CHECK(report.needed.at(0).why ==
        "no broken specimens are in the file; the rule set takes no strength from maturity alone");
}

TEST_CASE("strength: a rule set that takes maturity credits it less the margin, if companions validate it") {
  const auto tables = that_take_maturity();
  CHECK(verdict_on(pour, files(), tables) == Verdict::go);  // 22.5 less 3.45 MPa against 15 MPa
  CHECK(verdict_on(with(pour, "15 MPa", "19 MPa"), files(), tables) == Verdict::go);
  CHECK(verdict_on(with(pour, "15 MPa", "19.2 MPa"), files(), tables) == Verdict::no_go);
  CHECK(verdict_on(with(pour, "\"16.4 MPa\", \"16.6 MPa\"", "\"10 MPa\", \"10 MPa\""), files(), tables) ==
        Verdict::hold);
  auto gap = files();
  gap["log.csv"] = with(gap["log.csv"], "2026-03-02T20:00:00Z", "2026-03-02T19:00:00Z");
  CHECK(verdict_on(pour, gap, tables) == Verdict::hold);
}

TEST_CASE("strength: of two sensors in a pour, companions validate the one that felt what they felt") {
  // By 16 h at 20 degC they have 16.5 MPa: 8 h at 40 degC, as the corner had. At the core it was 50 degC: 20 h, 18.4 MPa.
  auto named = files();
  std::string both = "time,corner [degC],core [degC]\n";
  for (std::size_t at = named["log.csv"].find('\n') + 1; at < named["log.csv"].size();) {
    const std::size_t end = named["log.csv"].find('\n', at), comma = named["log.csv"].find(',', at);
    const double corner_degC = std::stod(named["log.csv"].substr(comma + 1, end - comma - 1));
    char core[16];
    std::snprintf(core, sizeof core, ",%.3f\n", corner_degC + 10.0);
    both += named["log.csv"].substr(at, end - at) + core;
    at = end + 1;
  }
  named["log.csv"] = both;
  const auto report_by = [&](const std::string& sensor, const std::string& companions = "") {
    const std::string text = with(pour, "file = \"log.csv\"\n", "file = \"log.csv\"\nsensor = \"" + sensor + "\"\n");
    return report_of(answer_to(text + companions, named, that_take_maturity(), "2026-03-03T08:00:00Z"));
  };
  const auto corner = report_by("corner"), core = report_by("core");
  CHECK(corner.verdict == Verdict::go);
  CHECK(corner.maturity->sensor == "corner");
  CHECK(core.verdict == Verdict::hold);  // 11.7 % over what the companions showed, 10 % is allowed
  CHECK_THAT(core.maturity->why_not_credited, Catch::Contains("differ from the estimate by"));
  CHECK(core.maturity->equivalent_age.value() > corner.maturity->equivalent_age.value());

  // A second set of companions: all must agree, not one of them.
  const std::string second = R"([[calibration.companion]]
tested = 2026-03-03T04:00:00Z
results = ["RESULT", "RESULT"]
specimen = "cylinder 150x300 mm"
cure = "field"
)";
  const auto with_second = [&](const std::string& result) {
    return report_by("corner", with(with(second, "RESULT", result), "RESULT", result));
  };
  CHECK(with_second("20 MPa").verdict == Verdict::go);
  CHECK(with_second("15 MPa").verdict == Verdict::hold);
  CHECK(with_second("15 MPa").maturity->companions.size() == 2);
}

TEST_CASE("strength: where specimens count, more by maturity changes nothing") {
  const std::string both = pour + R"([evidence]
specimen = "cylinder 150x300 mm"
cure = "field"
cast = 2026-03-02T16:00:00Z
tested = 2026-03-03T07:30:00Z
results = ["14 MPa", "14.1 MPa"]
)";
  const auto report = report_of(answer_to(both, files(), that_take_maturity(), "2026-03-03T08:00:00Z"));
  CHECK(report.verdict == Verdict::no_go);
  CHECK(report.needed.at(0).rests_on == "specimens");
}

TEST_CASE("strength: readings after the time of the question do not count, nor does time after the last reading") {
  const auto at = [&](const std::string& now) {
    return report_of(answer_to(pour, files(), us_tables(), now)).maturity->equivalent_age.value();
  };
  CHECK(in(hour, at("2026-03-03T00:00:00Z")) == Approx(16.0).epsilon(1e-3));
  CHECK(at("2026-03-03T08:00:00Z") == at("2026-03-04T08:00:00Z"));
}

TEST_CASE("strength: a growth curve alone is HOLD, with the band beside it") {
  const auto report = report_of(answer_to(R"(format = 1
[required]
strength = "15 MPa"
[growth]
curve = "en-1992-1-1, class N"
strength_at_28_days = "30 MPa"
)", {}, us_tables()));
  CHECK(report.verdict == Verdict::hold);
  REQUIRE((report.prediction && report.prediction->age));
  const auto& age = *report.prediction->age;
  CHECK(in(day, age.by_curve) == Approx(28.0 / std::pow(1.0 - std::log(0.5) / 0.25, 2)));
  CHECK(age.below_band);
  CHECK(age.fast.value() < age.by_curve);
  CHECK(age.middle.value() > age.by_curve);
  CHECK_FALSE(age.slow);  // never gets there: 0.5 x 0.598 / 0.229 is above the end of the curve
}

TEST_CASE("strength: every answer has its cautions, its choices and what is from memory") {
  const auto report = report_of(answer_to(breaks, {}, us_tables()));
  const std::string text = output::strength_text(report, {}, false), json = output::strength_json(report);
  for (const std::string& caution : report.cautions) {
    CHECK(json.find(caution) != std::string::npos);
    CHECK(text.find(caution.substr(0, 20)) != std::string::npos);
  }
  CHECK(report.cautions.size() > 5);
  CHECK(text.find("the lowest specimen is the strength that counts") != std::string::npos);
  CHECK(text.find("pci-handbook-7.minimum_strength") != std::string::npos);
}

TEST_CASE("strength: the same question gives the same bytes, another time another fingerprint") {
  const auto once = report_of(answer_to(pour, files(), us_tables(), "2026-03-03T08:00:00Z"));
  const auto again = report_of(answer_to(pour, files(), us_tables(), "2026-03-03T08:00:00Z"));
  const auto later = report_of(answer_to(pour, files(), us_tables(), "2026-03-03T08:01:00Z"));
  CHECK(output::strength_json(once) == output::strength_json(again));
  CHECK(once.fingerprint != later.fingerprint);
}

TEST_CASE("strength: a plan is asked for each of its stages") {
  const std::string demo = "docs/demo/manhole-base.toml";
  const auto report = report_of(answer_to(contents_of(demo), {}, us_tables(), "2026-03-03T07:20:00", demo));
  CHECK(report.verdict == Verdict::go);
  REQUIRE_FALSE(report.needed.empty());
  CHECK(report.needed[0].what == "strip");
  const std::string panel = "docs/demo/wall-panel.toml";
  CHECK(report_of(answer_to(contents_of(panel), {}, us_tables(), "2026-03-03T07:20:00", panel)).verdict ==
        Verdict::hold);
}

TEST_CASE("strength: faults of the file and of what it names, each with its place") {
  CHECK(faults_of(answer_to(with(breaks, "strength = ", "strenght = "), {}, us_tables())) ==
        std::vector<std::string>{"pour.toml:12:1 [required] needs the key 'strength'",
                                 "pour.toml:13:1 [required] has no key 'strenght'"});
  CHECK(faults_of(answer_to(with(breaks, "2026-03-03T07:10:00-05:00", "2026-03-01T07:10:00-05:00"), {}, us_tables())) ==
        std::vector<std::string>{"pour.toml:8:10 'tested' is before 'cast' in line 7"});
  CHECK(faults_of(answer_to(pour, {}, us_tables())) ==
        std::vector<std::string>{"pour.toml:4:1 'log.csv' cannot be read", "pour.toml:7:1 'ages.csv' cannot be read"});
  CHECK(faults_of(answer_to(with(pour, "log.csv", "../log.csv"), files(), us_tables())) ==
        std::vector<std::string>{"pour.toml:5:8 'file' must not leave the plan's folder"});
  auto bad = files();
  bad["ages.csv"] = "age [h],strength [psi]\n6,-1\n0,900\nx,900\n";
  CHECK(faults_of(answer_to(pour, bad, us_tables())) ==
        std::vector<std::string>{"ages.csv:2:3 '-1' is no strength above zero", "ages.csv:3:1 '0' is no age above zero",
                                 "ages.csv:4:1 'x' is no age above zero"});
  bad["ages.csv"] = "age,strength\n6,1\n";
  CHECK(faults_of(answer_to(pour, bad, us_tables())) ==
        std::vector<std::string>{"ages.csv:1:1 the header has no column 'age' with its unit"});
  CHECK(faults_of(answer_to(with(pour, "nurse-saul", "nurse-soul"), files(), us_tables())) ==
        std::vector<std::string>{"pour.toml:10:12 'function' cannot be 'nurse-soul'"});
  CHECK(faults_of(answer_to("format = 1\n[season]\nfile = \"s.csv\"\nspecified = \"5000 psi\"\n",
                            {{"s.csv", "test,a [psi]\n1,\n2,5000\n"}}, us_tables())) ==
        std::vector<std::string>{"s.csv:2:1 test '1' has no result"});
}
