#include <cmath>

#include <nlohmann/json.hpp>

#include "output/audit.hpp"
#include "version.hpp"

namespace firstpick::output {

namespace {

using Json = nlohmann::ordered_json;

Json text_or_null(const std::string& text) { return text.empty() ? Json(nullptr) : Json(text); }
Json number(const std::optional<double>& value) {
  return value && std::isfinite(*value) ? Json(*value) : Json(nullptr);
}

Json entry(const audit::Entry& e) {
  Json errors = Json::array();
  for (const Diagnostic& fault : e.faults)
    errors.push_back({{"file", fault.file}, {"line", fault.place.line}, {"column", fault.place.column},
                      {"what", fault.what}, {"help", text_or_null(fault.help)}});
  return {{"file", e.file},
          {"verdict", word_for(e.standing)},
          {"mark", text_or_null(e.mark)},
          {"revision", text_or_null(e.revision)},
          {"title", text_or_null(e.title)},
          {"engineer", text_or_null(e.engineer)},
          {"rules", text_or_null(e.rules)},
          {"rule", text_or_null(e.rule)},
          {"subject", text_or_null(e.subject)},
          {"utilization", number(e.utilization)},
          {"reason", text_or_null(reason_of(e))},
          {"remedy", text_or_null(e.remedy)},
          {"bending", e.bending},
          {"missing", e.missing},
          {"unconfirmed", e.unconfirmed},
          {"replaced", e.overridden},
          {"tested", text_or_null(e.tested)},
          {"evidence_age_days", number(e.evidence_age_days)},
          {"evidence_until", text_or_null(e.evidence_until)},
          {"evidence_run_out", e.evidence_run_out},
          {"sign_off", {{"state", e.standing == audit::Standing::broken ? "unknown" : checks::word_for(e.sign_off.kind)},
                        {"engineer", text_or_null(e.sign_off.engineer)},
                        {"signed", text_or_null(e.sign_off.signed_at)},
                        {"verdict", text_or_null(e.sign_off.verdict_then)},
                        {"changed", e.sign_off.changed},
                        {"fault", text_or_null(e.sign_off.fault)}}},
          {"same_piece", e.same_piece},
          {"fingerprint", text_or_null(e.fingerprint)},
          {"plan_sha256", text_or_null(e.text_hash)},
          {"errors", std::move(errors)}};
}

}  // namespace

std::string audit_json(const audit::Audit& audit) {
  Json plans = Json::array(), changes = Json::array();
  for (const audit::Entry& e : audit.entries) plans.push_back(entry(e));
  for (const audit::Change& c : audit.changes)
    changes.push_back({{"kind", word_for(c.kind)}, {"file", c.file}, {"before", text_or_null(c.before)},
                       {"now", text_or_null(c.now)}, {"what", c.what}});
  using audit::Standing;
  const Json json{{"format", 1},
                  {"program", {{"name", "firstpick"}, {"version", program_version}}},
                  {"folder", audit.folder},
                  {"made", audit.made},
                  {"summary", {{"plans", audit.entries.size()},
                               {"no_go", count_of(audit, Standing::no_go)},
                               {"broken", count_of(audit, Standing::broken)},
                               {"hold", count_of(audit, Standing::hold)},
                               {"go", count_of(audit, Standing::go)},
                               {"look_at", warnings_of(audit)}}},
                  {"shift_files", audit.shift_files},
                  {"strength_files", audit.strength_files},
                  {"sign_offs", audit.sign_offs},
                  {"since", text_or_null(audit.since)},
                  {"changes", std::move(changes)},
                  {"plans", std::move(plans)},
                  {"not_checked", audit.not_checked},
                  {"cautions", audit.cautions}};
  return json.dump(2, ' ', true, Json::error_handler_t::replace) + "\n";
}

}  // namespace firstpick::output
