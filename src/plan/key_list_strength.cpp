// The keys of a strength file, in the order in which it is written. docs/strength-file.md has them in words.

#include "plan/keys.hpp"

namespace firstpick::plan {
namespace {

SectionList evidence_sections() {
  const Section top{
      .path = "", .required = true, .doc = "What shows the strength of one pour.",
      .keys = {
          {.name = "format", .kind = Kind::format, .required = true, .doc = "of this file", .example = "1"},
          {.name = "rules", .kind = Kind::word, .words = Words::rule_sets, .doc = "rule set",
           .absent = "that of the command line, else `us`", .example = "\"us\""},
          {.name = "mark", .kind = Kind::name, .doc = "the piece or the pour", .absent = "no mark is printed",
           .example = "\"POUR-0303-2\""},
          {.name = "units", .kind = Kind::word, .words = Words::unit_systems, .doc = "how results are printed",
           .absent = "SI", .example = "\"us\""},
      },
      .called = "the strength file"};

  // The same keys as in a plan.
  Section evidence = section("concrete.evidence");
  evidence.path = "evidence";
  evidence.doc = "Specimens of this pour that were broken.";
  evidence.absent = "HOLD, unless the rule set takes maturity";

  const Section required{
      .path = "required", .doc = "The strength that the lift needs, from the drawing.", .absent = "HOLD",
      .keys = {
          {.name = "strength", .kind = Kind::stress, .limit = Limit::more_than_zero, .required = true,
           .doc = "cylinder strength; the rule set's minimum counts where it is more", .example = "\"2500 psi\""},
          {.name = "at", .kind = Kind::moment, .doc = "when the lift is to be made", .absent = "now",
           .example = "2026-03-03T08:00:00-05:00"},
      }};
  return {top, std::move(evidence), required};
}

SectionList maturity_sections() {
  const Section log{
      .path = "temperature_log", .doc = "What a sensor in the concrete has measured.", .absent = "no maturity",
      .keys = {
          {.name = "file", .kind = Kind::path, .required = true, .doc = "CSV file in this folder or below it",
           .example = "\"bay-2.csv\""},
          {.name = "sensor", .kind = Kind::name, .doc = "column that is read: that of the coldest place",
           .absent = "an error if there are several", .example = "\"corner\""},
          {.name = "cast", .kind = Kind::moment, .doc = "when the concrete was placed",
           .absent = "that of [evidence]; without either no maturity", .example = "2026-03-02T16:30:00-05:00"},
      }};

  const Section calibration{
      .path = "calibration", .doc = "Strength against maturity of this mix.", .absent = "no strength from maturity",
      .keys = {
          {.name = "mix", .kind = Kind::name, .required = true, .doc = "the mix", .example = "\"P5-07\""},
          {.name = "file", .kind = Kind::path, .required = true,
           .doc = "CSV file of ages and strengths in this folder or below it", .example = "\"p5-07.csv\""},
          {.name = "function", .kind = Kind::word, .words = Words::maturity_functions, .required = true,
           .doc = "temperature and time to maturity", .example = "\"nurse-saul\""},
          {.name = "curve", .kind = Kind::word, .words = Words::strength_curves, .required = true,
           .doc = "maturity to strength", .example = "\"exponential\""},
          {.name = "datum", .kind = Kind::temperature, .doc = "datum temperature, for nurse-saul",
           .absent = "no maturity by nurse-saul", .example = "\"0 degC\""},
          {.name = "activation_temperature", .kind = Kind::temperature, .limit = Limit::more_than_zero,
           .doc = "activation energy over the gas constant, for arrhenius",
           .absent = "no maturity by arrhenius", .example = "\"5000 K\""},
          {.name = "cured_at", .kind = Kind::temperature, .required = true,
           .doc = "temperature of the calibration specimens", .example = "\"23 degC\""},
          {.name = "specimen", .kind = Kind::specimen, .required = true,
           .doc = "what was broken, one of tables/specimens.toml", .example = "\"cylinder 4x8 in\""},
      }};

  const Section companion{
      .path = "calibration.companion", .repeated = true,
      .doc = "Specimens of this pour, broken to see whether the calibration is that of this concrete.",
      .absent = "the calibration is not validated",
      .keys = {
          {.name = "tested", .kind = Kind::moment, .required = true, .doc = "when they were broken",
           .example = "2026-03-03T02:30:00-05:00"},
          {.name = "results", .kind = Kind::stress, .count = Count::list, .limit = Limit::more_than_zero,
           .required = true, .doc = "one for each specimen", .example = R"(["1510 psi", "1560 psi"])"},
          {.name = "specimen", .kind = Kind::specimen, .required = true, .doc = "one of tables/specimens.toml",
           .example = "\"cylinder 4x8 in\""},
          {.name = "cure", .kind = Kind::word, .words = Words::cures, .required = true,
           .doc = "how they were cured; standard-cured ones do not validate", .example = "\"field\""},
      }};
  return {log, calibration, companion};
}

SectionList planning_sections() {
  const Section growth{
      .path = "growth", .doc = "A code's growth curve, to plan by. Never a GO.", .absent = "no prediction",
      .keys = {
          {.name = "curve", .kind = Kind::word, .words = Words::growth_curves, .required = true,
           .doc = "growth curve", .example = "\"en-1992-1-1, class R\""},
          {.name = "strength_at_28_days", .kind = Kind::stress, .limit = Limit::more_than_zero, .required = true,
           .doc = "mean cylinder strength of the mix at 28 days", .example = "\"6000 psi\""},
          {.name = "temperature", .kind = Kind::temperature,
           .doc = "of the concrete after the last reading, for a time on the clock",
           .absent = "the age at 20 degC is told, and no time", .example = "\"15 degC\""},
      }};

  const Section season{
      .path = "season", .doc = "Standard-cured strength tests of a season, judged for acceptance. Never a GO.",
      .absent = "no acceptance is judged",
      .keys = {
          {.name = "file", .kind = Kind::path, .required = true, .doc = "CSV file in this folder or below it",
           .example = "\"season.csv\""},
          {.name = "specified", .kind = Kind::stress, .limit = Limit::more_than_zero, .required = true,
           .doc = "specified strength", .example = "\"5000 psi\""},
      }};
  return {growth, season};
}

}  // namespace

const SectionList& strength_file_sections() {
  static const SectionList all = [] {
    SectionList list = evidence_sections();
    for (Section& each : maturity_sections()) list.push_back(std::move(each));
    for (Section& each : planning_sections()) list.push_back(std::move(each));
    return list;
  }();
  return all;
}

}  // namespace firstpick::plan
