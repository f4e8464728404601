// Collects what the formulas need of one headed insert, and refuses what is not there.
//
//   f_uta = min(futa, 1.9 fya, 125 ksi)                   ACI 318-19 17.6.1.2, 17.7.1.2
//   A_se: shank_area.cpp
//
// Absent   cracked concrete is the lower resistance, and still nobody's silent choice: [concrete] cracked
//          must be said.

#include "resistances/headed_insert.hpp"

#include <algorithm>
#include <utility>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "resistances/edge_distance.hpp"
#include "resistances/embedment.hpp"
#include "resistances/lb_in_terms.hpp"
#include "resistances/mm_n_terms.hpp"
#include "resistances/round_face.hpp"
#include "resistances/shank_area.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

namespace {

struct Key {
  bool present;
  const char* name;
  const char* line;
};

NotAssessed absent_keys(const plan::Insert& insert, const std::vector<Key>& keys) {
  std::vector<std::string_view> names, lines;
  for (const Key& key : keys)
    if (!key.present) names.push_back(key.name), lines.push_back(key.line);
  return {fmt::format("insert {} has no {}", insert.id, fmt::join(names, ", no ")),
          fmt::format("[[insert]] {}", fmt::join(lines, ", "))};
}

NotAssessed unusable(const plan::Insert& insert, const char* what) {
  return {fmt::format("{} of insert {} is not a number above zero", what, insert.id), {}};
}

Stress credited_steel_strength(const tables::Steel& steel, const tables::HeadedInsertModel& model,
                               Trace& trace) {
  const Stress f_uta =
      std::min({steel.futa.value, Stress{model.futa_of_yield.value * steel.fya.value}, model.futa_cap.value});
  trace.add([&] {
    return Step{
        .words = "tensile strength of the steel that the formulas credit",
        .result = lb_in("f_uta", f_uta),
        .formula = "min(futa, k_y * fya, cap)",
        .given = {lb_in("futa", steel.futa.value), lb_in("k_y", model.futa_of_yield.value),
                  lb_in("fya", steel.fya.value), lb_in("cap", model.futa_cap.value)},
        .clause = "ACI 318-19 17.6.1.2",
        .sources = {steel.futa.source, steel.fya.source, model.futa_of_yield.source, model.futa_cap.source}};
  });
  return f_uta;
}

Stress characteristic_steel_strength(const tables::Steel& steel, Trace& trace) {
  trace.add([&] {
    return Step{.words = "characteristic tensile strength of the steel",
                .result = mm_n("f_uk", steel.futa.value),
                .clause = "EN 1992-4 7.2.1.3",
                .sources = {steel.futa.source, steel.fya.source}};
  });
  return steel.futa.value;
}

}  // namespace

Outcome<HeadedInsert> headed_insert(const plan::Insert& insert, const piece::InsertSite& site,
                                    const plan::Concrete& concrete, const tables::RuleSet& rules,
                                    const tables::Tables& tables, Trace& trace) {
  if (insert.kind != "headed")
    return NotAssessed{fmt::format("insert {} is of kind '{}'; these formulas are for headed inserts",
                                   insert.id, insert.kind),
                       {}};
  if (!insert.embedment || !insert.shank || !insert.head_bearing_area || insert.steel.empty())
    return absent_keys(insert, {{insert.embedment.has_value(), "embedment", "embedment = \"... in\""},
                                {insert.shank.has_value(), "shank", "shank = \"... in\""},
                                {insert.head_bearing_area.has_value(), "head_bearing_area",
                                 "head_bearing_area = \"... in2\""},
                                {!insert.steel.empty(), "steel", "steel = \"...\""}});
  if (!concrete.cracked)
    return NotAssessed{
        fmt::format("the plan does not say whether the concrete at insert {} is cracked", insert.id),
        "[concrete] cracked = true; false only where analysis shows no cracking at the insert"};

  if (!is_usable(*insert.embedment)) return unusable(insert, "the embedment");
  if (!is_usable(*insert.shank)) return unusable(insert, "the shank");
  if (!is_usable(*insert.head_bearing_area)) return unusable(insert, "the head_bearing_area");
  if (!is_usable(site.thickness)) return unusable(insert, "the thickness of the concrete");

  const auto steel = tables.steels.find(insert.steel);
  if (steel == tables.steels.end())
    return NotAssessed{
        fmt::format("the steel '{}' of insert {} is not in tables/steels.toml", insert.steel, insert.id),
        "[[insert]] steel = a key of tables/steels.toml"};
  const auto kind = tables.concretes.find(concrete.kind);
  if (kind == tables.concretes.end())
    return NotAssessed{fmt::format("the concrete '{}' is not in tables/concretes.toml", concrete.kind),
                       "[concrete] kind = a key of tables/concretes.toml"};
  if (!(*insert.embedment < site.thickness))
    return NotAssessed{
        fmt::format("the head of insert {} is not inside the concrete: see insert-embedment", insert.id),
        "a shorter insert, or another place"};

  const auto A_se = shank_area(insert, rules.headed, trace);
  if (const auto* why = std::get_if<NotAssessed>(&A_se)) return *why;
  if (!is_usable(steel->second.futa.value) || !is_usable(steel->second.fya.value))
    return unusable(insert, "the steel strength");
  const bool by_en = rules.headed.en.has_value();
  if (by_en && steel->second.fya.value > steel->second.futa.value) return unusable(insert, "the steel strength");
  const Stress f_uta =
      by_en ? characteristic_steel_strength(steel->second, trace) : credited_steel_strength(steel->second, rules.headed, trace);
  const Ratio lambda_a = kind->second.lambda_a.value;
  if (!is_usable(f_uta)) return unusable(insert, "the steel strength");
  if (!is_usable(lambda_a)) return unusable(insert, "lambda_a of the concrete");
  if (by_en && lambda_a != 1.0)
    return NotAssessed{fmt::format("EN 1992-4 is for normal concrete, and that at insert {} is {}", insert.id, concrete.kind),
                       "a rule set whose formulas cover this concrete, or inserts with a rating declared for it"};
  if (!by_en) trace.add([&] {
    return Step{.words = fmt::format("factor for {} concrete", concrete.kind),
                .result = lb_in("lambda_a", lambda_a),
                .formula = {},
                .given = {},
                .clause = "ACI 318-19 17.2.4",
                .sources = {kind->second.lambda_a.source}};
  });

  HeadedInsert headed{.id = insert.id,
                      .h_ef = *insert.embedment,
                      .d_a = *insert.shank,
                      .A_brg = *insert.head_bearing_area,
                      .A_se = std::get<Area>(A_se),
                      .f_uta = f_uta,
                      .stud = insert.welded_stud,
                      .cracked = *concrete.cracked,
                      .lambda_a = lambda_a,
                      .site = &site,
                      .at = insert.at,
                      .edges = {},
                      .f_ya = steel->second.fya.value,
                      .bars = insert.bars};
  if (!site.planar) return in_round_face(std::move(headed), rules, trace);
  if (auto gap = not_whole_below(site)) return *std::move(gap);
  const auto edges = edge_distances(site, site.u, site.v);
  if (const auto* why = std::get_if<NotAssessed>(&edges)) return *why;
  headed.edges = std::get<EdgeDistances>(edges);
  return headed;
}

}  // namespace firstpick::resistances
