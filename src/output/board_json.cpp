// The board for another program: JSON, format 1, SI, the unit in the key. Everything outside ASCII is
// escaped, so that no character of a plan reorders or hides what a log shows.

#include <cmath>

#include <nlohmann/json.hpp>

#include "output/board_text.hpp"
#include "version.hpp"

namespace firstpick::output {

namespace {

using Json = nlohmann::ordered_json;

Json text_or_null(const std::string& text) { return text.empty() ? Json(nullptr) : Json(text); }
Json number(const std::optional<Stress>& stress) {
  return stress && std::isfinite(stress->value()) ? Json(in(MPa, *stress)) : Json(nullptr);
}

Json heading() { return {{"format", 1}, {"program", {{"name", "firstpick"}, {"version", program_version}}}}; }

Json expected(const board::Expected& e, const board::Board& board) {
  if (e.kind == board::Expected::Kind::none) return nullptr;
  return {{"prediction_only", true},
          {"specimens_due", e.kind == board::Expected::Kind::due},
          {"at", clock::iso_text(board.zone, e.utc_s)},
          {"slow_mixes_known", e.has_band},
          {"at_if_slow", e.slow_utc_s ? Json(clock::iso_text(board.zone, *e.slow_utc_s)) : Json(nullptr)},
          {"curve", e.curve}};
}

Json line(const board::Line& l, std::size_t order, const board::Board& board) {
  const board::Judged& judged = l.judged;
  Json json = {{"order", order},
               {"line_of_shift_file", l.position},
               {"verdict", checks::word_for(judged.verdict)},
               {"checked", judged.checked},
               {"mark", text_or_null(l.mark)},
               {"title", text_or_null(l.title)},
               {"revision", text_or_null(l.revision)},
               {"serials", l.serials},
               {"count", l.count},
               {"form", text_or_null(l.form)},
               {"priority", l.priority ? Json(*l.priority) : Json(nullptr)},
               {"rule", text_or_null(judged.rule)},
               {"subject", text_or_null(judged.subject)},
               {"reason", text_or_null(judged.reason)},
               {"remedy", text_or_null(judged.remedy)},
               {"other_rules", judged.more},
               {"expected", expected(judged.expected, board)}};
  json["strength"] = {{"usable_MPa", number(judged.usable)},
                      {"required_MPa", number(judged.required)},
                      {"basis", judged.evidence},
                      {"report", text_or_null(judged.pour_report)}};
  json["notes"] = judged.notes;
  json["plan"] = {{"file", l.plan_file}, {"sha256", text_or_null(l.rests_on.plan)}};
  json["pour"] = l.pour_file.empty() ? Json(nullptr)
                                     : Json{{"file", l.pour_file}, {"sha256", text_or_null(l.rests_on.pour)}};
  const checks::SignOffState& signature = judged.sign_off;
  json["sign_off"] = {{"state", judged.checked ? checks::word_for(signature.kind) : "unknown"},
                      {"engineer", text_or_null(signature.engineer)},
                      {"signed", text_or_null(signature.signed_at)},
                      {"verdict", text_or_null(signature.verdict_then)},
                      {"changed", signature.changed},
                      {"fault", text_or_null(signature.fault)}};
  json["rules"] = text_or_null(l.rests_on.rules);
  json["fingerprint"] = text_or_null(l.rests_on.answer);
  return json;
}

std::string written(const Json& json) {
  return json.dump(2, ' ', true, Json::error_handler_t::replace) + "\n";
}

}  // namespace

std::string board_json(const board::Board& board) {
  Json json = heading();
  json["shift"] = {{"file", board.file},
                   {"plant", board.plant},
                   {"zone", board.zone.name},
                   {"starts", clock::iso_text(board.zone, board.starts_utc_s)},
                   {"ends", clock::iso_text(board.zone, board.ends_utc_s)},
                   {"sha256", board.shift_fingerprint}};
  json["made"] = clock::iso_text(board.zone, board.made_utc_s);
  json["stale_after_s"] = board.stale_after_s;
  json["tables_sha256"] = board.tables_fingerprint;
  json["pieces"] = {{"GO", pieces_with(board, checks::Verdict::go)},
                    {"HOLD", pieces_with(board, checks::Verdict::hold)},
                    {"NO-GO", pieces_with(board, checks::Verdict::no_go)}};
  json["lines"] = Json::array();
  for (const board::Line& each : board.lines)
    json["lines"].push_back(line(each, json["lines"].size() + 1, board));
  json["choices"] = board.choices;
  json["unconfirmed"] = Json::array();
  for (const Source& source : board.unconfirmed)
    json["unconfirmed"].push_back({{"table", source.table},
                                   {"key", source.id},
                                   {"value", source.value_text},
                                   {"source", citation(source)}});
  json["not_checked"] = board.not_checked;
  json["cautions"] = board.cautions;
  return written(json);
}

std::string board_faults_json(const std::string& file, const std::vector<Diagnostic>& faults) {
  Json json = heading();
  json["shift"] = {{"file", file}};
  json["errors"] = Json::array();
  for (const Diagnostic& fault : faults)
    json["errors"].push_back({{"file", fault.file},
                              {"line", fault.place.line},
                              {"column", fault.place.column},
                              {"what", fault.what},
                              {"help", text_or_null(fault.help)}});
  return written(json);
}

}  // namespace firstpick::output
