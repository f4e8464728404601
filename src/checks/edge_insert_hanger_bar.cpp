// An insert in a narrow face that is pulled across it has a hanger bar (shear bar) around it.
//
//   narrow where c < k * h_ef towards both of two opposite edges       k: reach of the breakout body
//   pulled across where V > r_edge * N, V towards those edges
//
// Source   reach of the breakout body: ACI 318-19 17.6.2.1. That most edge inserts need the bar, and that the
//          mesh of a panel does not replace it: a conference paper of 2011, abstract read
//          (docs/rules/edge-insert-hanger-bar.md).
// h_ef     not in the plan: the depth of the concrete behind the insert, the widest body there can be.
// Curved   the flat face inside the concrete (resistances/round_face.cpp) counts. Narrow and pulled across: HOLD, for its edges
//          are none of the piece.
// Absent   hanger_bar: HOLD. false: fail. true: passes, and no resistance is taken from it.

#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "checks/rule.hpp"
#include "resistances/edge_distance.hpp"

namespace firstpick::checks {

namespace {

struct Narrow {
  bool along_u = false, along_v = false;  // both edges are near in this direction of the face
};

Outcome<Narrow> narrow_face(const piece::InsertSite& site, Length depth,
                            const tables::HeadedInsertModel& model) {
  if (!site.planar) return NotAssessed{"the insert sits in a curved face, whose edges are not measured", {}};
  const auto edges = resistances::edge_distances(site, site.u, site.v);
  if (const auto* gap = std::get_if<NotAssessed>(&edges)) return *gap;
  const auto& c = std::get<resistances::EdgeDistances>(edges).c;
  const Length reach = model.cone_extent.value * depth;
  if (!is_finite(reach)) return NotAssessed{"the embedment is not a usable number", {}};
  return Narrow{c[0] < reach && c[1] < reach, c[2] < reach && c[3] < reach};
}

// Whether some situation pulls the insert across a narrow direction.
Outcome<bool> pulled_across(const StageFacts& facts, std::size_t insert, const Narrow& narrow) {
  if (const auto* gap = std::get_if<NotAssessed>(&facts.insert_situations)) return *gap;
  const double share = facts.rules.edge_shear.value.value();
  for (const InsertSituation& situation : std::get<std::vector<InsertSituation>>(facts.insert_situations)) {
    const auto& f = situation.forces.at(insert);
    const double across_N =
        std::hypot(narrow.along_u ? f.shear_u.value() : 0.0, narrow.along_v ? f.shear_v.value() : 0.0);
    if (!std::isfinite(across_N) || !is_finite(f.tension) || !std::isfinite(share))
      return NotAssessed{"the force on the insert is not a usable number", {}};
    if (across_N > share * f.tension.value()) return true;
  }
  return false;
}

Finding judge_insert(std::string_view id, const StageFacts& facts, std::size_t i, Trace& trace) {
  const plan::Insert& insert = facts.plan.inserts[i];
  if (insert.hanger_bar == true) return passed(id, insert.id);
  const bool is_flat = facts.body.sites.at(i).planar;
  const auto* headed = std::get_if<resistances::HeadedInsert>(&facts.anchorage.headed.at(i));
  const piece::InsertSite& site = !is_flat && headed ? *headed->site : facts.body.sites.at(i);
  const Length depth = insert.embedment.value_or(site.thickness);
  const auto narrow = narrow_face(site, depth, facts.rules.headed);
  if (const auto* gap = std::get_if<NotAssessed>(&narrow))
    return missing(id, insert.id, gap->why, "[[insert]] hanger_bar = true, where a bar is bent around it");
  const auto& face = std::get<Narrow>(narrow);
  trace.add([&] {
    return Step{
        .words = fmt::format("reach of the breakout body of insert {}, against its edges", insert.id),
        .result = {"c_reach", in(m, Length{facts.rules.headed.cone_extent.value * depth}), "m"},
        .formula = "k * h_ef",
        .given = {{"k", facts.rules.headed.cone_extent.value.value(), "1"}, {"h_ef", in(m, depth), "m"}},
        .clause = facts.rules.headed.cone_extent.source.locator,
        .sources = {facts.rules.headed.cone_extent.source, facts.rules.edge_shear.source}};
  });
  if (!face.along_u && !face.along_v) return passed(id, insert.id);
  const auto across = pulled_across(facts, i, face);
  if (const auto* gap = std::get_if<NotAssessed>(&across))
    return missing(id, insert.id, gap->why, gap->remedy);
  if (!std::get<bool>(across)) return passed(id, insert.id);
  if (!is_flat)
    return missing(id, insert.id,
                   fmt::format("insert {} sits in a curved face and is pulled across it; the flat face inside the "
                               "concrete, in which it is calculated, is narrow",
                               insert.id),
                   "[[insert]] hanger_bar = true, where a bar is bent around it; or legs that pull straight out");
  if (insert.hanger_bar == false && insert.embedment) {
    Finding finding = missing(id, insert.id,
                              fmt::format("insert {} sits in a narrow face and is pulled across it, with "
                                          "no bar around it",
                                          insert.id),
                              "a hanger bar around it; or legs that pull straight out of the face");
    finding.result = Result::fail;
    return finding;
  }
  if (insert.hanger_bar == false)
    return missing(id, insert.id,
                   "without its embedment it is not known whether an insert is too near two edges",
                   "[[insert]] embedment = \"...\"");
  return missing(id, insert.id,
                 "inserts in a narrow face are pulled across it: whether a bar is around them is not in "
                 "the plan",
                 "[[insert]] hanger_bar = true, where a hanger or shear bar is bent around it");
}

}  // namespace

std::vector<Finding> edge_insert_hanger_bar(const StageFacts& facts, Trace& trace) {
  std::vector<Finding> findings;
  for (std::size_t i = 0; i < facts.plan.inserts.size(); ++i)
    findings.push_back(judge_insert("edge-insert-hanger-bar", facts, i, trace));
  return findings;
}

}  // namespace firstpick::checks
