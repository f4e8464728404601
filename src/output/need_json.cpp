#include <nlohmann/json.hpp>

#include "output/need.hpp"
#include "version.hpp"

namespace firstpick::output {

namespace {

using Json = nlohmann::ordered_json;

Json strength(const std::optional<Stress>& value) { return value ? Json(in(MPa, *value)) : Json(nullptr); }

Json stage(const checks::StageNeedReport& stage) {
  const checks::StageNeed& need = stage.need;
  Json rules = Json::array(), not_mended = Json::array(), changes = Json::array();
  for (const checks::RuleNeed& rule : need.rules)
    rules.push_back({{"rule", rule.rule}, {"needed_MPa", in(MPa, rule.strength)}, {"subject", rule.subject}});
  for (const checks::Finding& finding : need.not_mended)
    not_mended.push_back({{"rule", finding.rule}, {"subject", finding.subject},
                          {"outcome", checks::word_for(finding.result)}, {"text", finding.text},
                          {"remedy", finding.remedy}});
  for (const checks::NeedIfChanged& change : stage.changes)
    changes.push_back({{"change", change.change}, {"print_MPa", strength(change.strength)},
                       {"why_not", change.why_not.empty() ? Json(nullptr) : Json(change.why_not)}});
  return {{"kind", checks::word_for(need.kind)},
          {"rigging", need.rigging},
          {"needed_MPa", need.rules.empty() ? Json(nullptr) : Json(in(MPa, need.rules.front().strength))},
          {"governed_by", need.rules.empty() ? Json(nullptr) : Json(need.rules.front().rule)},
          {"print_MPa", strength(need.to_print)},
          {"verdict_there", checks::word_for(need.verdict)},
          {"requirement_stated", stage.requirement_stated},
          {"rules", rules},
          {"not_mended", not_mended},
          {"changes", changes}};
}

}  // namespace

std::string need_json(const checks::NeedReport& report) {
  Json stages = Json::array();
  for (const checks::StageNeedReport& each : report.stages) stages.push_back(stage(each));
  const Json json = {{"format", 1},
                     {"program", {{"name", "firstpick"}, {"version", program_version}}},
                     {"plan",
                      {{"file", report.file}, {"mark", report.mark}, {"revision", report.revision},
                       {"fingerprint", report.fingerprint}}},
                     {"rules", report.rules},
                     {"stages", stages},
                     {"cautions", need_cautions(UnitSystem::si)}};
  return json.dump(2, ' ', true, Json::error_handler_t::replace) + "\n";
}

}  // namespace firstpick::output
