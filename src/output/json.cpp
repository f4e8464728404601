#include "output/json.hpp"

#include <cmath>

#include "output/report_json.hpp"
#include "version.hpp"

namespace firstpick::output {

namespace {

using Json = OrderedJson;

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }
Json text_or_null(const std::string& text) { return text.empty() ? Json(nullptr) : Json(text); }

template <class Q>
Json number(Q unit, const std::optional<Q>& q) {
  return q ? number(in(unit, *q)) : Json(nullptr);
}
Json number(const std::optional<double>& value) { return value ? number(*value) : Json(nullptr); }
Json number(const std::optional<checks::Figure>& figure) {
  return figure ? number(checks::si_number(*figure)) : Json(nullptr);
}

Json point(const Position& p) { return {number(in(m, p.x)), number(in(m, p.y)), number(in(m, p.z))}; }

Json finding(const checks::Finding& f) {
  const auto& unit_from = f.demand ? f.demand : f.capacity;
  return {{"rule", f.rule},
          {"subject", f.subject},
          {"outcome", checks::word_for(f.result)},
          {"demand", number(f.demand)},
          {"nominal", number(f.nominal)},
          {"factor", number(f.factor)},
          {"capacity", number(f.capacity)},
          {"utilization", number(f.utilization)},
          {"unit", unit_from ? Json(checks::si_unit(*unit_from)) : Json(nullptr)},
          {"limit", number(f.limit)},
          {"clause", text_or_null(f.clause)},
          {"text", text_or_null(f.text)},
          {"remedy", text_or_null(f.remedy)},
          {"situation", text_or_null(f.situation)}};
}

Json load(const checks::StageReport& stage) {
  if (!stage.load) return nullptr;
  return {{"weight_kN", number(in(kN, stage.load->weight))},
          {"attached_kN", number(in(kN, stage.load->attached))},
          {"adhesion_kN", number(in(kN, stage.load->adhesion))},
          {"dynamic_factor", number(stage.load->dynamic_factor.value())},
          {"total_kN", number(in(kN, stage.load->total))},
          {"hook_kN", number(kN, stage.hook)}};
}

Json turn(const checks::StageReport& s) {
  const checks::TurnReport& t = *s.turn;
  Json worst = Json::array();
  for (const auto& f : s.findings)
    if (f.utilization && !f.situation.empty())
      worst.push_back({{"rule", f.rule}, {"subject", f.subject}, {"situation", f.situation}});
  return {{"how", t.how},
          {"from_deg", number(in(deg, t.from))},
          {"to_deg", number(in(deg, t.to))},
          {"pull_kN", number(in(kN, t.pull))},
          {"pull_at_deg", number(in(deg, t.pull_at))},
          {"tail_pull_kN", number(kN, t.tail_pull)},
          {"tail_at_deg", t.tail_pull ? number(in(deg, t.tail_at)) : Json(nullptr)},
          {"balance_deg", number(deg, t.balance)},
          {"worst", std::move(worst)}};
}

Json leg(const checks::LegReport& l) {
  return {{"to", l.to},
          {"tension_kN", number(in(kN, l.tension))},
          {"from_horizontal_deg", number(in(deg, l.angle_from_horizontal))},
          {"situation", text_or_null(l.situation)}};
}

Json vector_of(const Direction& d) { return {number(d.x), number(d.y), number(d.z)}; }

// The piece hanging free on elastic legs, in its own axes.
Json hanging(const checks::StageReport& s) {
  if (!s.hanging) return nullptr;
  const demands::Hanging& h = *s.hanging;
  Json legs = Json::array(), carriers = Json::array();
  for (std::size_t i = 0; i < h.legs.size(); ++i) {
    const ForceVector& f = h.legs[i].on_insert;
    legs.push_back({{"to", i < s.legs.size() ? Json(s.legs[i].to) : Json(nullptr)},
                    {"tension_kN", number(in(kN, h.legs[i].tension))},
                    {"from_horizontal_deg", number(in(deg, h.legs[i].angle_from_horizontal))},
                    {"on_lower_end_kN", {number(in(kN, f.x)), number(in(kN, f.y)), number(in(kN, f.z))}}});
  }
  for (std::size_t i = 0; i < h.carriers.size(); ++i)
    carriers.push_back({{"id", i < s.carriers.size() ? Json(s.carriers[i]) : Json(nullptr)},
                        {"origin_m", point(h.carriers[i].origin)},
                        {"x", vector_of(h.carriers[i].axes[0])},
                        {"y", vector_of(h.carriers[i].axes[1])},
                        {"z", vector_of(h.carriers[i].axes[2])},
                        {"tilt_deg", number(in(deg, h.carriers[i].tilt))}});
  return {{"hook_m", point(h.hook)},
          {"up", vector_of(h.up)},
          {"tilt_deg", number(in(deg, h.tilt))},
          {"force_residual", number(h.force_residual)},
          {"moment_residual", number(h.moment_residual)},
          {"stable", h.stable},
          {"legs", std::move(legs)},
          {"carriers", std::move(carriers)}};
}

Json stage(const checks::StageReport& s) {
  Json legs = Json::array(), inserts = Json::array(), findings = Json::array();
  for (const auto& each : s.legs) legs.push_back(leg(each));
  for (const auto& insert : s.inserts)
    inserts.push_back({{"id", insert.id},
                       {"tension_kN", number(in(kN, insert.tension))},
                       {"shear_kN", number(in(kN, insert.shear))}});
  for (const auto& f : s.findings) findings.push_back(finding(f));
  Json losses = Json::array();
  for (const auto& loss : s.losses) {
    Json left = Json::array();
    for (const auto& each : loss.legs) left.push_back(leg(each));
    losses.push_back({{"lost", loss.lost}, {"survivor", loss.survivor}, {"rule", loss.rule},
                      {"use_of_ultimate", number(loss.use)}, {"why", text_or_null(loss.why)},
                      {"when", text_or_null(loss.when)},
                      {"swing_deg", number(deg, loss.swing)}, {"legs", std::move(left)}});
  }
  Json cranes = Json::array();
  for (const auto& crane : s.cranes) cranes.push_back({{"id", crane.id}, {"hook_kN", number(kN, crane.hook)}});
  Json told{{"kind", checks::word_for(s.kind)}, {"verdict", checks::word_for(s.verdict)},
            {"load", load(s)},                  {"tilt_deg", number(deg, s.tilt)},
            {"hanging", hanging(s)},
            {"legs", std::move(legs)},          {"inserts", std::move(inserts)},
            {"cranes", std::move(cranes)},      {"pull_not_to_exceed_kN", number(kN, s.pull_not_to_exceed)},
            {"losses", std::move(losses)},
            {"findings", std::move(findings)}};
  if (s.turn) told["turn"] = turn(s);  // of a turn stage only
  return told;
}

Json heading(Json plan) {
  return {{"format", 1},
          {"program", {{"name", "firstpick"}, {"version", program_version}}},
          {"plan", std::move(plan)}};
}

Json sign_off(const checks::SignOffState& s) {
  return {{"state", checks::word_for(s.kind)},     {"file", text_or_null(s.file)},
          {"engineer", text_or_null(s.engineer)},  {"signed", text_or_null(s.signed_at)},
          {"verdict", text_or_null(s.verdict_then)}, {"changed", s.changed},
          {"fault", text_or_null(s.fault)}};
}

Json report(const checks::Report& r) {
  Json json =
      heading({{"file", r.file}, {"mark", r.mark}, {"revision", r.revision}, {"fingerprint", r.fingerprint}});
  json["rules"] = r.rules;
  json["verdict"] = checks::word_for(r.verdict);
  json["sign_off"] = sign_off(r.sign_off);
  json["piece"] = {{"volume_m3", number(in(m3, r.volume))},
                   {"mass_kg", number(in(kg, r.mass))},
                   {"centre_of_gravity_m", point(r.centre_of_gravity)}};
  json["strength"] = {{"usable_MPa", number(MPa, r.usable_strength)},
                      {"required_MPa", number(MPa, r.required_strength)},
                      {"basis", r.strength_basis}};
  json["stages"] = Json::array();
  for (const auto& s : r.stages) json["stages"].push_back(stage(s));
  json["unconfirmed"] = Json::array();
  for (const Source& source : r.unconfirmed)
    json["unconfirmed"].push_back({{"table", source.table},
                                   {"key", source.id},
                                   {"value", source.value_text},
                                   {"source", citation(source)}});
  json["not_checked"] = r.not_checked;
  json["cautions"] = r.cautions;
  return json;
}

}  // namespace

OrderedJson report_json(const checks::Report& one) { return report(one); }
OrderedJson finding_json(const checks::Finding& one) { return finding(one); }
OrderedJson heading_json(OrderedJson plan) { return heading(std::move(plan)); }
OrderedJson finite_json(double value) { return number(value); }
OrderedJson finite_json(const std::optional<double>& value) { return number(value); }
OrderedJson text_json(const std::string& text) { return text_or_null(text); }

OrderedJson broken_json(const std::string& file, const std::vector<Diagnostic>& faults) {
  Json json = heading({{"file", file}});
  json["errors"] = Json::array();
  for (const Diagnostic& fault : faults)
    json["errors"].push_back({{"file", fault.file},
                              {"line", fault.place.line},
                              {"column", fault.place.column},
                              {"what", fault.what},
                              {"help", text_or_null(fault.help)}});
  return json;
}

std::string whole_json(const OrderedJson& elements) {
  const Json& whole = elements.size() == 1 ? elements.front() : elements;
  return whole.dump(2, ' ', true, Json::error_handler_t::replace) + "\n";
}

std::string json(const std::vector<Answer>& answers) {
  Json all = Json::array();
  for (const Answer& answer : answers)
    all.push_back(answer.report ? report(*answer.report) : broken_json(answer.file, *answer.faults));
  return whole_json(all);
}

}  // namespace firstpick::output
