#include "output/comparison.hpp"
#include "output/report_json.hpp"

namespace firstpick::output {

namespace {

using comparison::Comparison;
using comparison::Contrast;
using comparison::StageContrast;

OrderedJson side_json(const std::optional<checks::Finding>& side) {
  if (!side) return nullptr;
  OrderedJson json = finding_json(*side);
  json.erase("rule");
  json.erase("subject");
  json["situation"] = text_json(side->situation);
  json["together"] = text_json(side->together);
  return json;
}

OrderedJson ratios_json(const std::optional<comparison::Ratios>& ratios) {
  if (!ratios) return nullptr;
  return {{"use", finite_json(ratios->use)},
          {"demand", finite_json(ratios->demand)},
          {"nominal", finite_json(ratios->nominal)},
          {"factor", finite_json(ratios->factor)},
          {"largest", ratios->largest ? OrderedJson(comparison::word_for(*ratios->largest)) : OrderedJson(nullptr)}};
}

OrderedJson pair_json(const comparison::Pair& pair) {
  return {{"rule", pair.rule},
          {"subject", pair.subject},
          {"first", side_json(pair.first)},
          {"other", side_json(pair.other)},
          {"ratios", ratios_json(pair.ratios)}};
}

OrderedJson explained_json(const comparison::Explained& one) {
  OrderedJson json{{"rule", one.pair.rule}, {"subject", one.pair.subject}, {"assumptions", OrderedJson::array()}};
  for (const comparison::Effect& effect : one.effects)
    json["assumptions"].push_back({{"assumption", effect.assumption},
                                   {"first", effect.first},
                                   {"other", effect.other},
                                   {"utilization", finite_json(effect.use)},
                                   {"ratio", finite_json(effect.ratio)}});
  return json;
}

OrderedJson result_json(const std::optional<checks::Result>& result) {
  return result ? OrderedJson(checks::word_for(*result)) : OrderedJson(nullptr);
}

OrderedJson stage_json(const StageContrast& stage) {
  OrderedJson json{{"kind", checks::word_for(stage.kind)},
                   {"first", checks::word_for(stage.first)},
                   {"other", checks::word_for(stage.other)},
                   {"pairs", OrderedJson::array()},
                   {"deciding", OrderedJson::array()},
                   {"other_verdicts", OrderedJson::array()},
                   {"told_otherwise", OrderedJson::array()}};
  for (const comparison::Pair& pair : stage.pairs) json["pairs"].push_back(pair_json(pair));
  for (const comparison::Explained& one : stage.explained) json["deciding"].push_back(explained_json(one));
  for (const comparison::Turned& turned : stage.turned)
    json["other_verdicts"].push_back({{"assumption", turned.assumption},
                                      {"first", turned.first},
                                      {"other", turned.other},
                                      {"verdict", checks::word_for(turned.verdict)}});
  for (const comparison::Difference& d : stage.differences)
    json["told_otherwise"].push_back({{"rule", d.rule},
                                      {"subjects", d.subjects},
                                      {"first", result_json(d.first)},
                                      {"other", result_json(d.other)},
                                      {"first_text", text_json(d.first_text)},
                                      {"other_text", text_json(d.other_text)},
                                      {"made_by", d.turned_by}});
  return json;
}

OrderedJson contrast_json(const Comparison& all, const Contrast& contrast) {
  OrderedJson json{{"first", all.reports.front().rules},
                   {"other", all.reports.at(contrast.other).rules},
                   {"stages", OrderedJson::array()}};
  for (const StageContrast& stage : contrast.stages) json["stages"].push_back(stage_json(stage));
  return json;
}

// Every caution of every report once.
OrderedJson cautions_json(const Comparison& all) {
  std::vector<std::string> cautions;
  for (const checks::Report& report : all.reports)
    for (const std::string& caution : report.cautions)
      if (std::ranges::find(cautions, caution) == cautions.end()) cautions.push_back(caution);
  return cautions;
}

OrderedJson compared_json(const Comparison& all) {
  const checks::Report& first = all.reports.front();
  OrderedJson json = heading_json({{"file", first.file}, {"mark", first.mark}, {"revision", first.revision}});
  json["compared"] = OrderedJson::array();
  for (const checks::Report& report : all.reports) json["compared"].push_back(report.rules);
  json["named_by_plan"] = text_json(all.named_by_plan);
  json["verdict"] = checks::word_for(all.worst);
  json["agreed"] = is_agreed(all);
  json["statement"] = statement(all);
  json["reports"] = OrderedJson::array();
  for (const checks::Report& report : all.reports) json["reports"].push_back(report_json(report));
  json["contrasts"] = OrderedJson::array();
  for (const Contrast& contrast : all.contrasts) json["contrasts"].push_back(contrast_json(all, contrast));
  json["cautions"] = cautions_json(all);
  return json;
}

}  // namespace

std::string comparison_json(const std::vector<ComparedAnswer>& answers) {
  OrderedJson all = OrderedJson::array();
  for (const ComparedAnswer& answer : answers)
    all.push_back(answer.comparison ? compared_json(*answer.comparison) : broken_json(answer.file, *answer.faults));
  return whole_json(all);
}

}  // namespace firstpick::output
