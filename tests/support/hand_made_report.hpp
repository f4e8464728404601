// A report made for tests of output: one stage, one finding of each result, every list with something in it.
#pragma once

#include <string>

#include "checks/report.hpp"

namespace firstpick::tests {

inline checks::Finding hand_made_finding(std::string_view rule, const std::string& subject, checks::Result result) {
  checks::Finding finding{.rule = rule, .subject = subject, .result = result};
  finding.demand = Force{12.0 * kN};
  finding.nominal = Force{60.0 * kN};
  finding.factor = 4.0;
  finding.capacity = Force{15.0 * kN};
  finding.utilization = 0.8;
  finding.limit = 1.0;
  finding.clause = "clause 1";
  return finding;
}

inline checks::Report hand_made_report() {
  checks::Report report;
  report.file = "plans/slab.toml";
  report.mark = "SL-1";
  report.title = "Slab made for the test";
  report.revision = "C";
  report.prepared_by = "the test";
  report.engineer = "engineer made for the test";
  report.fingerprint = std::string(64, 'a');
  report.rules = "hand-made";
  report.rules_title = "rules made for the test";
  report.verdict = checks::Verdict::no_go;
  report.volume = 2.4 * m3;
  report.mass = 5760.0 * kg;
  report.centre_of_gravity = {2.0 * m, 1.0 * m, 0.15 * m};
  report.usable_strength = 24.0 * MPa;
  report.required_strength = 20.0 * MPa;
  report.strength_basis = "lowest of 2 field-cured cylinders";

  checks::StageReport stage;
  stage.kind = plan::StageKind::strip;
  stage.rigging = "four legs";
  stage.crane = "bay";
  stage.verdict = checks::Verdict::no_go;
  loads::StageLoad load;
  load.weight = 58.0 * kN;
  load.attached = 2.0 * kN;
  load.adhesion = 8.0 * kN;
  load.dynamic_factor = Ratio{1.3};
  load.total = 86.0 * kN;
  stage.load = load;
  stage.hook = 70.0 * kN;
  stage.tilt = 1.5 * deg;
  stage.required_strength = 20.0 * MPa;
  stage.legs = {{"A1", 24.0 * kN, 60.0 * deg, "breaking free"}};
  stage.inserts = {{"A1", 20.0 * kN, 12.0 * kN}};

  checks::Finding failed = hand_made_finding("insert-breakout", "A1", checks::Result::fail);
  failed.utilization = 1.6;
  failed.text = "a cone of concrete breaks out at A1";
  failed.remedy = "a deeper insert";
  checks::Finding gap{.rule = "insert-certificate", .subject = "A1", .result = checks::Result::missing};
  gap.text = "insert A1 has no certificate";
  gap.remedy = "write its lot";
  checks::Finding note{.rule = "evidence-age", .subject = "SL-1", .result = checks::Result::note};
  note.text = "the plan states no limit on the age";
  stage.findings = {hand_made_finding("sling-overload", "A1", checks::Result::pass), failed, gap, note};
  report.stages = {stage};

  Source from_memory{.id = "somewhere-2018.k",
                     .symbol = "k",
                     .what = "a coefficient",
                     .title = "Somewhere",
                     .locator = "cl. 1",
                     .basis = Basis::from_memory,
                     .note = "",
                     .value_text = "24",
                     .table = "rules/hand-made.toml",
                     .confirmed_by = "",
                     .confirmed_edition = "",
                     .confirmed_on = ""};
  report.unconfirmed = {from_memory};
  report.overridden = {"somewhere-2018.own"};
  report.choices = {"the lowest specimen counts"};
  report.cautions = {"This is information, not permission."};
  report.not_checked = {"cracking and bending of the piece"};
  report.trace = Trace::recording();
  report.trace.about([] { return std::string("strip: loads"); });
  report.trace.add([&] {
    return Step{.words = "total load",
                .result = {"F", 86.0, "kN"},
                .formula = "phi * (W + W_att) + F_adh",
                .given = {{"phi", 1.3, "1"}, {"W", 58.0, "kN"}, {"W_att", 2.0, "kN"}, {"F_adh", 8.0, "kN"}},
                .clause = "statics",
                .sources = {from_memory}};
  });
  return report;
}

// Texts as a plan of strangers may hold them: terminal orders, bidirectional overrides, invalid UTF-8, no spaces.
inline const std::string hostile_text = [] {
  using namespace std::string_literals;
  const std::string orders = "\x1b[32m(+) GO\x1b[0m \xC2\x9B" "31m \r\n\t\a\0 "s;
  const std::string reordered = "\xE2\x80\xAE" "ON\xE2\x80\xAC ";
  const std::string invalid = "\xFF\xC0\x80 \xED\xA0\x80 ";
  return " " + orders + reordered + invalid + "\"quoted\\\" " + std::string(200, 'w');
}();

inline checks::Report hostile_report() {
  checks::Report report = hand_made_report();
  const auto spoil = [](std::string& text) { text += hostile_text; };
  for (std::string* text : {&report.file, &report.mark, &report.title, &report.revision, &report.prepared_by,
                            &report.engineer, &report.strength_basis, &report.rules})
    spoil(*text);
  for (auto* list : {&report.overridden, &report.choices, &report.cautions, &report.not_checked})
    for (std::string& text : *list) spoil(text);
  for (Source& source : report.unconfirmed)
    for (std::string* text : {&source.id, &source.what, &source.title, &source.locator, &source.value_text, &source.table})
      spoil(*text);
  for (checks::StageReport& stage : report.stages) {
    spoil(stage.rigging);
    spoil(stage.crane);
    for (checks::LegReport& leg : stage.legs) spoil(leg.to);
    for (checks::InsertReport& insert : stage.inserts) spoil(insert.id);
    for (checks::Finding& finding : stage.findings)
      for (std::string* text : {&finding.subject, &finding.clause, &finding.text, &finding.remedy, &finding.situation})
        spoil(*text);
  }
  Trace trace = Trace::recording();
  trace.about([] { return "about " + hostile_text; });
  trace.add([] {
    return Step{.words = "words " + hostile_text,
                .result = {"F", 1.0, "kN"},
                .formula = "W",
                .given = {{"W", 1.0, "kN"}},
                .clause = "clause " + hostile_text};
  });
  report.trace = trace;
  return report;
}

}  // namespace firstpick::tests
