// What `firstpick strength` tells beside its answer: how old the log is, the datum, each reading, when the growth curve has
// the strength, the season. Numbers by hand beside each.

#include <algorithm>
#include <cmath>

#include "checks/evaluate_strength.hpp"
#include "support/step_named.hpp"
#include "support/strength_answers.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using checks::Verdict;

namespace {

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

// 40 degC and a thousandth more at each reading, one each half hour from 16:00 on. 20 + 20 log10(t / 24 h) MPa.
NamedFiles files(int readings = 33) {
  std::string log = "time,a [degC]\n";
  for (int i = 0; i < readings; ++i) {
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

checks::StrengthReport report(const std::string& text, const std::string& now = "2026-03-03T08:00:00Z",
                              const NamedFiles& named = files()) {
  return report_of(answer_to(text, named, us_tables(), now));
}

using Notes = std::vector<std::string>;

std::vector<std::string> sources_of_step(const checks::StrengthReport& report, const std::string& symbol) {
  return source_ids(step_named(report.trace, symbol));
}

bool has(const std::vector<std::string>& all, const std::string& one) {
  return std::ranges::find(all, one) != all.end();
}

}  // namespace

TEST_CASE("strength: how old the last reading is, and readings that do not count yet, are told") {
  CHECK(report(pour, "2026-03-03T08:00:00Z").notes == Notes{});
  CHECK(report(pour, "2026-03-03T09:00:00Z").notes == Notes{});
  CHECK(report(pour, "2026-03-03T09:00:01Z").notes ==
        Notes{"the last reading is 1 h 1 min old: nothing after it counts"});
  CHECK(report(pour, "2026-03-03T07:59:59Z").notes ==
        Notes{"the log has readings after the time of the question, 2026-03-03 07:59:59 +00:00: they do not "
              "count"});
  CHECK(report(pour, "2026-03-03T08:00:00").notes ==
        Notes{"the time of the question has no zone: how old the last reading is cannot be told"});
}

TEST_CASE(
    "strength: a datum temperature outside the range of practice is told: at both ends, and past them") {
  const auto with_datum = [](const std::string& datum) {
    return report(with(pour, "datum = \"0 degC\"", "datum = \"" + datum + "\"")).notes;
  };
  CHECK(with_datum("0 degC") == Notes{});
  CHECK(with_datum("-10 degC") == Notes{});
  CHECK(with_datum("0.5 degC") ==
        Notes{"the datum temperature 0.5 degC lies outside -10 degC to 0 degC, the range of practice"});
  CHECK(with_datum("-10.5 degC") ==
        Notes{"the datum temperature -10.5 degC lies outside -10 degC to 0 degC, the range of practice"});
}

TEST_CASE(
    "strength: each reading after the pour has its equivalent age, and a strength between the ages of the "
    "calibration") {
  const auto points = report(pour).maturity.value().points;
  REQUIRE(points.size() == 33);
  CHECK(points[0].since_cast == Duration{});
  CHECK(points[0].equivalent_age == Duration{});
  CHECK_FALSE(points[0].strength);
  // 2.5 h at 40 degC: 5 h at 20 degC, younger than the first specimens. 3.5 h: 7 h.
  CHECK(in(hour, points[5].equivalent_age) == Approx(5.0).epsilon(1e-4));
  CHECK_FALSE(points[5].strength);
  CHECK(in(hour, points[7].since_cast) == Approx(3.5));
  CHECK(in(hour, points[7].equivalent_age) == Approx(7.0).epsilon(1e-4));
  REQUIRE(points[7].strength);
  CHECK(in(MPa, *points[7].strength) == Approx(20.0 + 20.0 * std::log10(7.0 / 24.0)).epsilon(1e-3));

  // Poured at 17:10: the reading of 17:30 has seen 20 minutes of it, those before nothing.
  const auto late =
      report(with(pour, "cast = 2026-03-02T16:00", "cast = 2026-03-02T17:10")).maturity.value().points;
  REQUIRE(late.size() == 30);
  CHECK(in(hour, late[0].since_cast) == Approx(1.0 / 3.0));
  CHECK(in(hour, late[0].equivalent_age) == Approx(2.0 / 3.0).epsilon(1e-4));
  CHECK(in(hour, late[2].equivalent_age) == Approx(8.0 / 3.0).epsilon(1e-4));

  // Only what had been read by the time of the question.
  CHECK(report(pour, "2026-03-02T17:00:00Z").maturity.value().points.size() == 3);
  CHECK(report(pour, "2026-03-02T17:29:59Z").maturity.value().points.size() == 3);
}

TEST_CASE(
    "strength: concrete older than every specimen of the calibration has the strength of the oldest, and it "
    "is told") {
  NamedFiles young = files();
  young["ages.csv"] = "age [h],strength [MPa]\n3,1.9382\n6,7.9588\n12,13.9794\n24,20\n";
  const auto found = report(pour, "2026-03-03T08:00:00Z", young);
  REQUIRE(found.maturity.value().estimate);
  CHECK(in(MPa, *found.maturity->estimate) == Approx(20.0).epsilon(1e-3));
  CHECK(found.notes ==
        Notes{"the concrete is older than every specimen of the calibration: the strength of the oldest is "
              "taken"});
  CHECK(found.maturity->points[23].strength);
  CHECK_FALSE(found.maturity->points[24].strength);  // 12 h at 40 degC and a hair more: past 24 h at 20 degC
  CHECK_FALSE(found.maturity->points.back().strength);
  // 11.5 h: 23 h at 20 degC.
  const auto younger = report(pour, "2026-03-03T03:30:00Z", young);
  CHECK(in(MPa, younger.maturity.value().estimate.value()) ==
        Approx(20.0 + 20.0 * std::log10(23.0 / 24.0)).epsilon(1e-3));
  CHECK_FALSE(has(younger.notes, found.notes[0]));
}

TEST_CASE("strength: a log without a calibration has ages by EN 1992-1-1, and no strength") {
  const std::size_t at = pour.find("[calibration]");
  const auto found = report(pour.substr(0, at));
  CHECK(found.verdict == Verdict::hold);
  CHECK(found.maturity.value().why_no_estimate == "there is no calibration of this mix");
  CHECK(found.maturity->why_not_credited == "there is no calibration of this mix");
  CHECK_FALSE(found.maturity->estimate);
  CHECK_FALSE(found.maturity->credited);
  CHECK(found.needed.at(0).remedy == "calibrate the mix, or break field-cured specimens");
  // exp(13.65 - 4000 / (273 + 40)) = 2.388 times as fast as the clock, 16 h.
  REQUIRE(found.maturity->equivalent_age);
  CHECK(in(hour, *found.maturity->equivalent_age) ==
        Approx(16.0 * std::exp(13.65 - 4000.0 / 313.0)).epsilon(1e-3));
  CHECK(found.maturity->points.size() == 33);
  CHECK(std::ranges::none_of(found.maturity->points,
                             [](const auto& point) { return point.strength.has_value(); }));

  NamedFiles one = files();
  one["ages.csv"] = "age [h],strength [MPa]\n6,7.9588\n";
  const auto unfitted = report(pour, "2026-03-03T08:00:00Z", one);
  CHECK_FALSE(unfitted.calibration);
  CHECK_FALSE(unfitted.why_no_calibration.empty());
  CHECK(unfitted.maturity.value().why_no_estimate == unfitted.why_no_calibration);
}

namespace {

const std::string growing = R"(format = 1
[required]
strength = "15 MPa"
[growth]
curve = "en-1992-1-1, class N"
strength_at_28_days = "30 MPa"
temperature = "20 degC"
[evidence]
specimen = "cylinder 150x300 mm"
cure = "field"
cast = 2026-03-02T16:00:00-05:00
tested = 2026-03-03T07:00:00-05:00
results = ["10 MPa", "10.2 MPa"]
)";

checks::Prediction predicted(const std::string& text, const std::string& now = "2026-03-03T08:00:00-05:00") {
  return report(text, now).prediction.value();
}

// Minutes behind the pour, the next whole one, of an age at 20 degC, at this temperature: EN 1992-1-1 (B.10) and 3.1.2(6).
long long minutes_behind(double share, double degC) {
  const double age_d = 28.0 / std::pow(1.0 - std::log(share) / 0.25, 2),
               rate = std::exp(13.65 - 4000.0 / (273.0 + degC));
  return static_cast<long long>(std::ceil(age_d / rate * 1440.0));
}

constexpr long long poured_s = 1772485200;  // 2026-03-02 21:00 UTC

}  // namespace

TEST_CASE("strength: when the growth curve has the strength, in the zone of the pour, on a whole minute") {
  const auto found = predicted(growing);
  CHECK(found.why_not.empty());
  CHECK(found.needed_for == "the lift");
  REQUIRE(found.earliest_utc_s);
  CHECK(*found.earliest_utc_s == poured_s + 60 * minutes_behind(0.5, 20.0));
  CHECK(found.earliest == "2026-03-04 15:19 -05:00");
  CHECK(found.slow == "never, at this growth");
  CHECK_FALSE(found.slow_utc_s);
  CHECK_FALSE(found.fast.empty());
  CHECK_FALSE(found.adjusted_now);
  const auto cold = predicted(with(growing, "temperature = \"20 degC\"", "temperature = \"5 degC\""));
  CHECK(cold.earliest_utc_s.value() == poured_s + 60 * minutes_behind(0.5, 5.0));
  const auto east =
      predicted(with(with(growing, "16:00:00-05:00", "16:00:00+05:30"), "07:00:00-05:00", "07:00:00+05:30"));
  CHECK_THAT(east.earliest, Catch::EndsWith(" +05:30"));
  CHECK(east.earliest_utc_s.value() == poured_s - 37800 + 60 * minutes_behind(0.5, 20.0));

  const auto no_temperature = predicted(with(growing, "temperature = \"20 degC\"\n", ""));
  CHECK(no_temperature.age);
  CHECK(no_temperature.earliest.empty());
  CHECK_FALSE(no_temperature.earliest_utc_s);
  const auto no_zone =
      predicted(with(with(growing, "16:00:00-05:00", "16:00:00"), "07:00:00-05:00", "07:00:00"));
  CHECK(no_zone.age);
  CHECK(no_zone.earliest.empty());
}

TEST_CASE("strength: a growth that takes ten years and more is no time on the clock") {
  // Shares 1.2550 and 1.2563 of 28 days: 3348 and 3681 days at 20 degC by the curve.
  const auto soon = predicted(with(growing, "\"15 MPa\"", "\"37.65 MPa\""));
  CHECK(soon.earliest_utc_s.value() == poured_s + 60 * minutes_behind(37.65 / 30.0, 20.0));
  const auto late = predicted(with(growing, "\"15 MPa\"", "\"37.69 MPa\""));
  CHECK(late.earliest == "not within ten years");
  CHECK_FALSE(late.earliest_utc_s);
  const auto never = predicted(with(growing, "\"15 MPa\"", "\"39 MPa\""));
  CHECK(never.why_not == "the growth curve never reaches this strength");
  CHECK_FALSE(never.age);
}

TEST_CASE(
    "strength: without a strength that is needed, a curve or its strength at 28 days nothing is predicted") {
  const std::string why = "no needed strength, growth curve or strength at 28 days is known";
  CHECK(predicted(with(growing, "[required]\nstrength = \"15 MPa\"\n", "")).why_not == why);
  checks::StrengthQuestion question;
  question.concrete.form_stripping_strength = 15.0 * MPa;
  question.lifts = {{"strip", {}}};
  question.growth = plan::Growth{
      .curve = "en-1992-1-1, class N", .strength_at_28_days = {}, .temperature = {}, .place = {}};
  CHECK(checks::evaluate_strength(question, us_rules(), us_tables(), "").prediction.value().why_not == why);
  question.growth->strength_at_28_days = 30.0 * MPa;
  CHECK(checks::evaluate_strength(question, us_rules(), us_tables(), "").prediction.value().why_not.empty());
  question.growth->curve = "a curve that the tables do not have";
  CHECK(checks::evaluate_strength(question, us_rules(), us_tables(), "").prediction.value().why_not == why);
}

TEST_CASE("strength: what a log has shown counts towards the growth, from its last reading on") {
  const std::string logged = pour.substr(0, pour.find("[calibration]")) +
                             "[growth]\ncurve = \"en-1992-1-1, class N\"\nstrength_at_28_days = \"30 MPa\"\n"
                             "temperature = \"10 degC\"\n";
  const auto found = predicted(logged, "2026-03-03T08:00:00Z");
  const double rate_40 = std::exp(13.65 - 4000.0 / 313.0), rate_10 = std::exp(13.65 - 4000.0 / 283.0);
  REQUIRE(found.adjusted_now);
  CHECK(in(hour, *found.adjusted_now) == Approx(16.0 * rate_40).epsilon(1e-3));
  const double left_h = 24.0 * 28.0 / std::pow(1.0 - std::log(0.5) / 0.25, 2) - in(hour, *found.adjusted_now);
  constexpr long long last_reading_s = 1772524800;  // 2026-03-03 08:00 UTC
  CHECK(found.earliest_utc_s.value() ==
        last_reading_s + 60 * static_cast<long long>(std::ceil(60.0 * left_h / rate_10)));
  // 15 of 40 MPa: 1.16 days at 20 degC; the log has shown 1.59.
  const auto there = predicted(with(logged, "\"30 MPa\"", "\"40 MPa\""), "2026-03-03T08:00:00Z");
  CHECK(there.earliest == "by now");
  CHECK(there.earliest_utc_s.value() == last_reading_s);
  // Poured after all readings: nothing of the log counts.
  const auto before =
      predicted(with(logged, "cast = 2026-03-02T16", "cast = 2026-03-03T09"), "2026-03-03T10:00:00Z");
  CHECK(before.adjusted_now.value() == Duration{});
  CHECK(before.earliest_utc_s.value() == last_reading_s + 3600 + 60 * minutes_behind(0.5, 10.0));
}

TEST_CASE(
    "strength: the largest of the needed strengths is predicted, wherever it stands, and one that is not "
    "known is none") {
  const auto for_lifts = [](const std::vector<plan::StageKind>& kinds, bool with_lifting = true) {
    checks::StrengthQuestion question;
    question.concrete.form_stripping_strength = 15.0 * MPa;
    question.concrete.transportation_strength = 20.0 * MPa;
    if (with_lifting) question.concrete.lifting_strength = 25.0 * MPa;
    for (const plan::StageKind kind : kinds) {
      plan::Stage stage;
      stage.kind = kind;
      question.lifts.push_back({std::string(plan::word_for(kind)), stage});
    }
    question.growth = plan::Growth{
        .curve = "en-1992-1-1, class N", .strength_at_28_days = 30.0 * MPa, .temperature = {}, .place = {}};
    return checks::evaluate_strength(question, us_rules(), us_tables(), "").prediction.value().needed_for;
  };
  using enum plan::StageKind;
  CHECK(for_lifts({strip, yard, haul}) == "yard");
  CHECK(for_lifts({haul, strip}) == "haul");
  CHECK(for_lifts({strip, haul}) == "haul");
  CHECK(for_lifts({yard, strip}, false) == "strip");
  CHECK(for_lifts({strip, yard}, false) == "strip");
}

TEST_CASE("strength: no lift is no answer") {
  const auto none = checks::evaluate_strength({}, us_rules(), us_tables(), "");
  CHECK(none.verdict == Verdict::hold);
  CHECK(none.needed.empty());
}

TEST_CASE(
    "strength: a season up to 5000 psi may drop by 500 psi, a stronger one by a tenth, told with the entry "
    "it rests on") {
  const auto season = [](const std::string& specified, const std::string& rows) {
    return report(
        "format = 1\nunits = \"us\"\n[season]\nfile = \"s.csv\"\nspecified = \"" + specified + "\"\n",
        "2026-03-03T08:00:00Z", {{"s.csv", rows}});
  };
  const std::string two = "test,a [psi],b [psi]\n1,5000,5200\n2,5100,5100\n3,5300,5200\n";
  const auto at = season("5000 psi", two);
  REQUIRE(at.season);
  CHECK(in(psi, at.season->least_single) == Approx(4500.0));
  CHECK(has(sources_of_step(at, "f_single"), "aci-318-14.single_drop"));
  CHECK_FALSE(has(sources_of_step(at, "f_single"), "aci-318-14.share_above"));
  CHECK(has(sources_of_step(at, "s_1"), "aci-214r-11.d2_of_two"));
  CHECK(step_named(at.trace, "s_1").result.number == Approx(in(MPa, 100.0 * psi) / 1.128));
  const auto above = season("5001 psi", two);
  CHECK(in(psi, above.season.value().least_single) == Approx(4500.9));
  CHECK(has(sources_of_step(above, "f_single"), "aci-318-14.share_above"));
  CHECK_FALSE(has(sources_of_step(above, "f_single"), "aci-318-14.single_drop"));

  const auto three = season(
      "5000 psi", "test,a [psi],b [psi],c [psi]\n1,5000,5200,5100\n2,5100,5100,5100\n3,5300,5200,5250\n");
  CHECK(sources_of_step(three, "s_1") == std::vector<std::string>{"aci-214r-11.d2_of_three"});
  const auto mixed =
      season("5000 psi", "test,a [psi],b [psi],c [psi]\n1,5000,5200,\n2,5100,5100,5100\n3,5300,5200,5250\n");
  CHECK_FALSE(has_step(mixed.trace, "s_1"));
  CHECK(mixed.season.value().accepted);
  const auto short_one = season("5000 psi", "test,a [psi],b [psi]\n1,5000,5200\n2,5100,5100\n");
  CHECK_FALSE(short_one.season);
  CHECK(short_one.why_no_acceptance == "the season has 2 tests: its runs are of 3");
  CHECK(at.verdict == Verdict::hold);  // a season is no evidence of a lift
}

TEST_CASE("strength: broken specimens are told with their age, their range and as cylinders") {
  const auto found = report(growing, "2026-03-03T08:00:00-05:00");
  REQUIRE(found.broken);
  CHECK(in(hour, found.broken->since_cast.value()) == Approx(15.0));
  CHECK(found.broken->wide.empty());
  CHECK(in(MPa, found.broken->as_cylinders.at(1)) == Approx(10.2));
  CHECK(step_named(found.trace, "r").result.number == Approx(0.2 / 10.1));
  CHECK(found.needed.at(0).result == checks::Result::fail);
  CHECK(found.needed.at(0).why == "the strength shown is below the strength needed");
  CHECK(found.needed.at(0).utilization.value() == Approx(1.5));

  const auto unnamed =
      report(with(growing, "specimen = \"cylinder 150x300 mm\"\n", ""), "2026-03-03T08:00:00-05:00");
  REQUIRE(unnamed.broken);
  CHECK(unnamed.broken->as_cylinders.empty());
  CHECK_FALSE(has_step(unnamed.trace, "r"));
  const auto wide = report(with(growing, "10.2 MPa", "12 MPa"), "2026-03-03T08:00:00-05:00");
  CHECK_FALSE(wide.broken.value().wide.empty());
  CHECK(has(wide.notes, wide.broken->wide));
  // Where the results do not count, their range is told with them and not once more.
  const auto standard = report(with(with(growing, "10.2 MPa", "12 MPa"), "\"field\"", "\"standard\""),
                               "2026-03-03T08:00:00-05:00");
  CHECK_FALSE(has(standard.notes, standard.broken.value().wide));
  const auto never_cast =
      report(with(growing, "cast = 2026-03-02T16:00:00-05:00\n", ""), "2026-03-03T08:00:00-05:00");
  CHECK_FALSE(never_cast.broken.value().since_cast);
}

TEST_CASE("strength: a question without a time says so, a lift without a time is asked for now") {
  const auto none =
      report_of(answer_strength("pour.toml", growing, "", {}, us_tables(),
                                [](const std::string&) { return std::optional<std::string>{}; }));
  CHECK(none.asked_at == "no time stated");
  CHECK(none.verdict == Verdict::hold);
  CHECK(checks::strength_word_for(Verdict::go) == "reached");
  CHECK(checks::strength_word_for(Verdict::hold) == "HOLD");
  CHECK(checks::strength_word_for(Verdict::no_go) == "below");
}

TEST_CASE("strength: a test that was never dated is HOLD, and what is held names specimens and maturity") {
  const auto undated =
      report(with(growing, "tested = 2026-03-03T07:00:00-05:00\n", ""), "2026-03-03T08:00:00-05:00");
  CHECK(undated.verdict == Verdict::hold);
  CHECK_FALSE(undated.needed.at(0).why.empty());
  CHECK_FALSE(undated.needed.at(0).remedy.empty());
  CHECK(undated.needed.at(0).rests_on.empty());
}
