#include <nlohmann/json.hpp>

#include "output/layout.hpp"
#include "version.hpp"

namespace firstpick::output {

namespace {

using Json = nlohmann::ordered_json;
using layout::LayoutReport;
using layout::Use;

Json number(const std::optional<double>& value) { return value ? Json(*value) : Json(nullptr); }

Json use(const std::optional<Use>& of, const LayoutReport& report) {
  if (!of) return nullptr;
  return {{"stage", checks::word_for(report.stages.at(of->stage).kind)},
          {"rule", of->rule},
          {"subject", of->subject},
          {"utilization", number(of->value)},
          {"outcome", checks::word_for(of->result)}};
}

Json place(const Position& p) { return Json::array({in(m, p.x), in(m, p.y), in(m, p.z)}); }

Json stage(const layout::StageLine& line, const LayoutReport& report) {
  Json rules = Json::array(), not_mended = Json::array();
  for (const layout::RuleUse& rule : line.rules)
    rules.push_back({{"rule", rule.after.rule}, {"before", use(rule.before, report)}, {"after", use(rule.after, report)}});
  for (const layout::Judged& finding : line.not_mended)
    not_mended.push_back({{"rule", finding.rule}, {"subject", finding.subject},
                          {"outcome", checks::word_for(finding.result)}, {"text", finding.text}});
  return {{"kind", checks::word_for(line.kind)},
          {"rigging", line.rigging},
          {"strength_MPa", in(MPa, line.strength.value)},
          {"strength_is", line.strength.shown ? "shown" : line.strength.stated ? "required" : "least of the rule set"},
          {"rules", rules},
          {"not_mended", not_mended}};
}

}  // namespace

std::string layout_json(const LayoutReport& report, const std::string& written) {
  Json stages = Json::array(), inserts = Json::array(), legs = Json::array();
  for (const layout::StageLine& each : report.stages) stages.push_back(stage(each, report));
  for (const layout::MovedInsert& insert : report.inserts)
    inserts.push_back({{"id", insert.id}, {"before_m", place(insert.before)}, {"after_m", place(insert.after)},
                       {"by_m", in(m, insert.by)}});
  for (const layout::ChangedLeg& leg : report.legs)
    legs.push_back({{"rigging", leg.rigging}, {"to", leg.to}, {"before_m", in(m, leg.before)},
                    {"after_m", in(m, leg.after)}});
  const Json json = {{"format", 1},
                     {"program", {{"name", "firstpick"}, {"version", program_version}}},
                     {"plan",
                      {{"file", report.file}, {"mark", report.mark}, {"revision", report.revision},
                       {"fingerprint", report.fingerprint}}},
                     {"rules", report.rules},
                     {"moved", report.moved},
                     {"written", written.empty() ? Json(nullptr) : Json(written)},
                     {"before_is_allowed", report.drawn_is_allowed},
                     {"before", use(report.before, report)},
                     {"after", use(report.after, report)},
                     {"barred_before", report.barred_before},
                     {"barred_after", report.barred_after},
                     {"verdict_before", checks::word_for(report.verdict_before)},
                     {"verdict_after", checks::word_for(report.verdict_after)},
                     {"not_of_position", use(report.not_of_position, report)},
                     {"stages", stages},
                     {"inserts", inserts},
                     {"legs", legs},
                     {"layouts_judged", report.layouts_judged},
                     {"layouts_checked_in_full", report.layouts_checked_in_full},
                     {"cautions", {layout_caution}}};
  return json.dump(2, ' ', true, Json::error_handler_t::replace) + "\n";
}

}  // namespace firstpick::output
