#include <algorithm>
#include <set>

#include <fmt/format.h>

#include "output/need.hpp"
#include "output/text_layout.hpp"
#include "record/diagnostic.hpp"
#include "units/print.hpp"

namespace firstpick::output {

namespace {

using checks::Finding;
using checks::NeedIfChanged;
using checks::RuleNeed;
using checks::StageNeedReport;

constexpr std::size_t rules_column = 24;

std::string strength(Stress value, UnitSystem units) { return print(value, units, Rounding::up); }

std::string answer_of(const StageNeedReport& stage, UnitSystem units, std::size_t width) {
  const checks::StageNeed& need = stage.need;
  if (!need.to_print) return paragraph("  ", "  ", "No strength of the concrete decides this stage.", width);
  const std::string shown = strength(*need.to_print, units);
  std::string out = paragraph("  ", "  ",
                              need.verdict == checks::Verdict::go
                                  ? fmt::format("strength to state on the drawing: {}", shown)
                                  : fmt::format("concrete of {} passes all that concrete decides; the stage is still {}: "
                                                "see below", shown, checks::word_for(need.verdict)),
                              width);
  if (!stage.requirement_stated)
    out += paragraph("  ", "  ", "The plan states no required strength for this stage: the rule set's least stands in.",
                     width);
  return out;
}

std::string rules_of(const StageNeedReport& stage, UnitSystem units) {
  std::string out;
  for (const RuleNeed& rule : stage.need.rules)
    out += fmt::format("  {} {} {}\n", padded(rule.rule, rules_column),
                       padded_left(strength(rule.strength, units), 10), printable(rule.subject));
  return out;
}

// Each rule once, with its first subject and reason.
std::string not_mended_of(const StageNeedReport& stage, std::size_t width) {
  std::string out;
  std::set<std::string_view> told;
  for (const Finding& finding : stage.need.not_mended) {
    if (!told.insert(finding.rule).second) continue;
    if (told.size() == 1) out += "  no strength mends:\n";
    const std::string_view mark = finding.result == checks::Result::fail ? "x" : "?";
    out += paragraph(fmt::format("  {} ", mark), "    ",
                     fmt::format("{}, {}{}{}", finding.rule, printable(finding.subject),
                                 finding.text.empty() ? "" : ": ", printable(finding.text)), width);
    if (!finding.remedy.empty()) out += paragraph("    > ", "      ", printable(finding.remedy), width);
  }
  return out;
}

std::string changes_of(const StageNeedReport& stage, UnitSystem units, std::size_t width) {
  std::string out = "  with one thing changed, all checked again:\n";
  for (const NeedIfChanged& change : stage.changes)
    out += paragraph(fmt::format("    {} ", padded(change.change, 36)), std::string(6, ' '),
                     change.strength ? strength(*change.strength, units) : "not so: " + printable(change.why_not), width);
  return out;
}

}  // namespace

// Of other specimens a test must show more than these numbers: tables/specimens.toml.
std::vector<std::string> need_cautions(UnitSystem units) {
  return {fmt::format("Strengths are those of the standard cylinder, {}: results of other specimens are converted before they "
                      "are held against them.", units == UnitSystem::us ? "6 x 12 in" : "150 x 300 mm"),
          "Information, not permission: the engineer of record states the strength, and local codes govern; a test of this "
          "piece's concrete must show it before each lift."};
}

std::string need_text(const checks::NeedReport& report, std::size_t width) {
  std::string out = paragraph("", "    ",
                              fmt::format("{}{}: strength that each stage needs; rules {}; fingerprint {}",
                                          printable(report.mark), report.revision.empty() ? "" : " rev " + printable(report.revision),
                                          report.rules, report.fingerprint.substr(0, 16)), width);
  for (const StageNeedReport& stage : report.stages) {
    out += fmt::format("\n{}, rigging {}\n", checks::word_for(stage.need.kind), printable(stage.need.rigging));
    out += answer_of(stage, report.units, width);
    out += rules_of(stage, report.units);
    out += not_mended_of(stage, width);
    if (!stage.changes.empty()) out += changes_of(stage, report.units, width);
  }
  out += "\n";
  for (const std::string& caution : need_cautions(report.units)) out += paragraph("", "", caution, width);
  return out;
}

}  // namespace firstpick::output
