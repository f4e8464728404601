#include "output/strength_json.hpp"

#include <cmath>

#include <nlohmann/json.hpp>

#include "version.hpp"

namespace firstpick::output {

namespace {

using Json = nlohmann::ordered_json;

Json number(double value) { return std::isfinite(value) ? Json(value) : Json(nullptr); }
Json number(const std::optional<double>& value) { return value ? number(*value) : Json(nullptr); }
Json text_or_null(const std::string& text) { return text.empty() ? Json(nullptr) : Json(text); }

template <class Q>
Json number(Q unit, const std::optional<Q>& q) {
  return q ? number(in(unit, *q)) : Json(nullptr);
}

Json heading() { return {{"format", 1}, {"program", {{"name", "firstpick"}, {"version", program_version}}}}; }

Json needed(const checks::StrengthNeeded& line) {
  return {{"for", line.what},
          {"answer", checks::strength_word_for(line.result == checks::Result::pass   ? checks::Verdict::go
                                               : line.result == checks::Result::fail ? checks::Verdict::no_go
                                                                                     : checks::Verdict::hold)},
          {"required_MPa", number(MPa, line.required)},
          {"credited_MPa", number(MPa, line.credited)},
          {"utilization", number(line.utilization)},
          {"rests_on", text_or_null(line.rests_on)},
          {"text", text_or_null(line.why)},
          {"remedy", text_or_null(line.remedy)}};
}

Json specimens(const checks::StrengthReport& r) {
  if (!r.broken) return nullptr;
  Json results = Json::array();
  for (const Stress& result : r.broken->results) results.push_back(number(in(MPa, result)));
  return {{"results_MPa", std::move(results)},
          {"mean_MPa", number(in(MPa, r.broken->of.mean))},
          {"lowest_MPa", number(in(MPa, r.broken->of.lowest))},
          {"deviation_MPa", number(MPa, r.broken->of.deviation)},
          {"range_over_mean", number(r.broken->of.relative_range.value())},
          {"wide_range", text_or_null(r.broken->wide)}};
}

Json calibration(const checks::StrengthReport& r) {
  if (r.mix.empty()) return nullptr;
  if (!r.calibration) return {{"mix", r.mix}, {"why_not", r.why_no_calibration}};
  const strength::CurveFit& fit = r.calibration->fit;
  Json parameters = Json::array(), residuals = Json::array(), covariance = Json::array();
  const auto names = strength::parameter_names(fit.curve);
  const auto units = strength::parameter_units(fit.curve);
  for (std::size_t i = 0; i < names.size(); ++i) {
    parameters.push_back({{"name", names[i]},
                          {"value", number(fit.parameters[i])},
                          {"unit", units[i]},
                          {"standard_error", number(std::sqrt(fit.covariance[i][i]))}});
    Json row = Json::array();
    for (const double c : fit.covariance[i]) row.push_back(number(c));
    covariance.push_back(std::move(row));
  }
  for (const Stress& residual : fit.residuals) residuals.push_back(number(in(MPa, residual)));
  return {{"mix", r.mix},
          {"equation", strength::equation_of(fit.curve)},
          {"parameters", std::move(parameters)},
          {"covariance", std::move(covariance)},
          {"residuals_MPa", std::move(residuals)},
          {"deviation_MPa", number(in(MPa, fit.deviation))},
          {"youngest_d", number(in(day, fit.youngest))},
          {"oldest_d", number(in(day, fit.oldest))}};
}

Json maturity(const checks::StrengthReport& r) {
  if (!r.maturity) return nullptr;
  const checks::MaturityPart& part = *r.maturity;
  Json companions = Json::array();
  for (const auto& companion : part.companions) {
    if (const auto* gap = std::get_if<NotAssessed>(&companion)) {
      companions.push_back({{"why_not", gap->why}});
      continue;
    }
    const auto& check = std::get<strength::CompanionCheck>(companion);
    companions.push_back({{"tested", check.tested},
                          {"measured_MPa", number(in(MPa, check.measured))},
                          {"estimated_MPa", number(in(MPa, check.estimated))},
                          {"difference", number(check.difference.value())},
                          {"within", check.within}});
  }
  return {{"sensor", part.sensor},
          {"function", part.law},
          {"last_reading", part.last_reading},
          {"equivalent_age_h", number(hour, part.equivalent_age)},
          {"temperature_time_degC_h", number(part.temperature_time_degC_h)},
          {"estimate_MPa", number(MPa, part.estimate)},
          {"credited_MPa", number(MPa, part.credited)},
          {"why_no_estimate", text_or_null(part.why_no_estimate)},
          {"why_not_credited", text_or_null(part.why_not_credited)},
          {"companions", std::move(companions)}};
}

Json prediction(const checks::StrengthReport& r) {
  if (!r.prediction) return nullptr;
  const checks::Prediction& p = *r.prediction;
  Json json = {{"prediction_only", true}, {"curve", p.curve}, {"for", text_or_null(p.needed_for)}};
  json["age_at_20_degC_h"] = p.age ? number(in(hour, p.age->by_curve)) : Json(nullptr);
  json["age_if_slow_h"] = p.age ? number(hour, p.age->slow) : Json(nullptr);
  json["age_if_middle_h"] = p.age ? number(hour, p.age->middle) : Json(nullptr);
  json["age_if_fast_h"] = p.age ? number(hour, p.age->fast) : Json(nullptr);
  json["band_of_age_h"] = p.age ? number(in(hour, p.age->band_age)) : Json(nullptr);
  json["adjusted_age_h"] = number(hour, p.adjusted_now);
  json["earliest"] = text_or_null(p.earliest);
  json["earliest_if_slow"] = text_or_null(p.slow);
  json["earliest_if_fast"] = text_or_null(p.fast);
  json["why_not"] = text_or_null(p.why_not);
  return json;
}

Json season(const checks::StrengthReport& r) {
  if (!r.season) return text_or_null(r.why_no_acceptance);
  Json tests = Json::array();
  for (const strength::JudgedTest& test : r.season->tests)
    tests.push_back({{"test", test.name},
                     {"mean_MPa", number(in(MPa, test.mean))},
                     {"mean_of_run_MPa", number(MPa, test.mean_of_run)},
                     {"range_over_mean", number(test.relative_range.value())},
                     {"run_fails", test.run_fails},
                     {"single_fails", test.single_fails}});
  return {{"specified_MPa", number(in(MPa, r.season->specified))},
          {"least_single_MPa", number(in(MPa, r.season->least_single))},
          {"mean_MPa", number(in(MPa, r.season->mean))},
          {"deviation_MPa", number(MPa, r.season->deviation)},
          {"within_test_MPa", number(MPa, r.season->within_test)},
          {"accepted", r.season->accepted},
          {"tests", std::move(tests)}};
}

Json faults(const std::vector<Diagnostic>& all) {
  Json json = Json::array();
  for (const Diagnostic& fault : all)
    json.push_back({{"file", fault.file},
                    {"line", fault.place.line},
                    {"column", fault.place.column},
                    {"what", fault.what},
                    {"help", text_or_null(fault.help)}});
  return json;
}

std::string written(const Json& json) { return json.dump(2, ' ', true, Json::error_handler_t::replace) + "\n"; }

}  // namespace

std::string strength_json(const checks::StrengthReport& r) {
  Json json = heading();
  json["file"] = r.file;
  json["mark"] = text_or_null(r.mark);
  json["fingerprint"] = r.fingerprint;
  json["rules"] = r.rules;
  json["asked_at"] = r.asked_at;
  json["answer"] = checks::strength_word_for(r.verdict);
  json["usable_MPa"] = number(MPa, r.usable);
  json["basis"] = r.basis;
  json["needed"] = Json::array();
  for (const checks::StrengthNeeded& line : r.needed) json["needed"].push_back(needed(line));
  json["specimens"] = specimens(r);
  json["calibration"] = calibration(r);
  json["maturity"] = maturity(r);
  json["prediction"] = prediction(r);
  json["season"] = season(r);
  json["log_doubts"] = faults(r.doubts);
  json["notes"] = r.notes;
  json["choices"] = r.choices;
  json["unconfirmed"] = Json::array();
  for (const Source& source : r.unconfirmed)
    json["unconfirmed"].push_back({{"table", source.table},
                                   {"key", source.id},
                                   {"value", source.value_text},
                                   {"source", citation(source)}});
  json["cautions"] = r.cautions;
  return written(json);
}

std::string strength_faults_json(const std::string& file, const std::vector<Diagnostic>& all) {
  Json json = heading();
  json["file"] = file;
  json["errors"] = faults(all);
  return written(json);
}

}  // namespace firstpick::output
