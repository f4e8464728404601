#include "checks/insert_modes.hpp"

#include <algorithm>
#include <span>

#include "resistances/breakout.hpp"
#include "resistances/edge_breakout.hpp"
#include "resistances/pryout.hpp"
#include "resistances/pullout.hpp"
#include "resistances/side_blowout.hpp"
#include "resistances/steel_shear.hpp"
#include "resistances/steel_tension.hpp"

namespace firstpick::checks {

namespace {

using resistances::HeadedInsert;
using MaybeForce = Outcome<Resistance<Force>>;
using MaybeApplies = Outcome<std::optional<Resistance<Force>>>;

const HeadedInsert& headed(const StageFacts& facts, std::size_t insert) {
  return std::get<HeadedInsert>(facts.anchorage.headed.at(insert));
}

ModeCheck judged(Force demand, const MaybeForce& nominal, const StageFacts& facts,
                 std::vector<std::size_t> together = {}) {
  ModeCheck check;
  check.comparison =
      compare<Force>(Demand<Force>{demand}, behind_factor(nominal, facts.rules.insert_factor.value.value()));
  check.demand = demand;
  if (const auto* n = std::get_if<Resistance<Force>>(&nominal)) check.nominal = n->value;
  check.together = std::move(together);
  return check;
}

ModeCheck judged(Force demand, const MaybeApplies& nominal, const StageFacts& facts,
                 std::vector<std::size_t> together = {}) {
  if (const auto* gap = std::get_if<NotAssessed>(&nominal)) return judged(demand, MaybeForce{*gap}, facts);
  if (const auto& limit = std::get<std::optional<Resistance<Force>>>(nominal))
    return judged(demand, MaybeForce{*limit}, facts, std::move(together));
  ModeCheck check;
  check.comparison.result = Result::pass;
  check.demand = demand;
  check.applies = false;
  return check;
}

void keep_worse(ModeCheck& worst, ModeCheck candidate) {
  if (less_severe(worst, candidate)) worst = std::move(candidate);
}

// The members of `group` that carry something, as the resistances want them, with the resultant of what they carry.
struct Loaded {
  std::vector<std::size_t> indices;
  std::vector<const HeadedInsert*> inserts;
  Force sum{};
};
template <class ForceOf>
Loaded loaded(const StageFacts& facts, std::span<const std::size_t> group, const ForceOf& force_of) {
  Loaded result;
  for (const std::size_t index : group) {
    const Force force = force_of(index);
    if (!(force > Force{})) continue;
    result.indices.push_back(index);
    result.inserts.push_back(&headed(facts, index));
    result.sum += force;
  }
  return result;
}

bool contains(std::span<const std::size_t> group, std::size_t insert) {
  return std::ranges::find(group, insert) != group.end();
}

// Distance of the resultant from the centroid of the loaded inserts, in the axes of the group.
template <class ForceOf>
Outcome<resistances::Eccentricity> eccentricity(const StageFacts& facts, const Loaded& group, const ForceOf& force_of) {
  const auto& layout = facts.anchorage.areas.layout(group.inserts);
  if (const auto* gap = std::get_if<NotAssessed>(&layout)) return *gap;
  const auto& from_centroid = std::get<resistances::GroupLayout>(layout).from_centroid;
  Moment about_u{}, about_v{};
  for (std::size_t i = 0; i < group.indices.size(); ++i) {
    about_u += force_of(group.indices[i]) * from_centroid.at(i).x;
    about_v += force_of(group.indices[i]) * from_centroid.at(i).y;
  }
  return resistances::Eccentricity(about_u / group.sum, about_v / group.sum);
}

template <class ForceOf>
MaybeForce group_breakout(const StageFacts& facts, const Loaded& group, const ForceOf& force_of, Stress f_c,
                          Trace& trace) {
  const auto offset = eccentricity(facts, group, force_of);
  if (const auto* gap = std::get_if<NotAssessed>(&offset)) return *gap;
  return resistances::breakout(group.inserts, facts.anchorage.areas, std::get<resistances::Eccentricity>(offset), f_c,
                               facts.rules.headed, trace);
}

Direction shear_direction(const demands::InsertForce& force, const piece::InsertSite& site) {
  if (!(force.shear > Force{})) return site.u;
  return (force.shear_u / force.shear).value() * site.u + (force.shear_v / force.shear).value() * site.v;
}

MaybeForce alone_breakout(const StageFacts& facts, const HeadedInsert& insert, Stress f_c, Trace& trace) {
  const std::array one{&insert};
  return resistances::breakout(one, facts.anchorage.areas, resistances::Eccentricity::none(), f_c, facts.rules.headed,
                               trace);
}

ModeCheck check_breakout(const StageFacts& facts, const InsertSituation& situation, std::size_t insert, Stress f_c,
                         Trace& trace) {
  const auto tension = [&](std::size_t i) { return situation.forces.at(i).tension; };
  ModeCheck worst = judged(tension(insert), alone_breakout(facts, headed(facts, insert), f_c, trace), facts);
  for (const auto& group : facts.anchorage.groups) {
    if (group.size() < 2 || !contains(group, insert)) continue;
    const Loaded together = loaded(facts, group, tension);
    if (together.indices.size() < 2 || !contains(together.indices, insert)) continue;
    keep_worse(worst, judged(together.sum, group_breakout(facts, together, tension, f_c, trace), facts,
                             together.indices));
  }
  return worst;
}

ModeCheck check_pryout(const StageFacts& facts, const InsertSituation& situation, std::size_t insert, Stress f_c,
                       Trace& trace) {
  const auto shear = [&](std::size_t i) { return situation.forces.at(i).shear; };
  const std::array one{&headed(facts, insert)};
  const auto alone = alone_breakout(facts, *one.front(), f_c, trace);
  ModeCheck worst = judged(shear(insert), resistances::pryout(one, alone, facts.rules.headed, trace), facts);
  for (const auto& group : facts.anchorage.groups) {
    if (group.size() < 2 || !contains(group, insert)) continue;
    const Loaded together = loaded(facts, group, shear);
    if (together.indices.size() < 2 || !contains(together.indices, insert)) continue;
    const auto breakout = group_breakout(facts, together, shear, f_c, trace);
    keep_worse(worst, judged(together.sum, resistances::pryout(together.inserts, breakout, facts.rules.headed, trace),
                             facts, together.indices));
  }
  return worst;
}

ModeCheck check_side_blowout(const StageFacts& facts, const InsertSituation& situation, std::size_t insert, Stress f_c,
                             Trace& trace) {
  const auto tension = [&](std::size_t i) { return situation.forces.at(i).tension; };
  ModeCheck worst = judged(
      tension(insert), resistances::side_blowout(headed(facts, insert), f_c, facts.rules.headed, trace), facts);
  for (const auto& row : facts.anchorage.blowout_rows) {
    if (!contains(row.inserts, insert)) continue;
    const Loaded together = loaded(facts, row.inserts, tension);
    if (together.indices.size() < 2 || !contains(together.indices, insert)) continue;
    keep_worse(worst, judged(together.sum,
                             resistances::side_blowout(together.inserts, row.towards, f_c, facts.rules.headed, trace),
                             facts, together.indices));
  }
  return worst;
}

// A shear along the edge is not away from it, however the last bit of its direction falls.
constexpr double along_the_edge = 1e-9;

// The row's inserts whose shear does not point away from the edge, and the resultant of their shears.
ModeCheck check_shear_row(const StageFacts& facts, const InsertSituation& situation, const resistances::EdgeRow& row,
                          std::size_t insert, Stress f_c, Trace& trace) {
  ForceVector resultant{};
  const auto towards_edge = [&](std::size_t i) {
    const auto& force = situation.forces.at(i);
    const Direction along = shear_direction(force, facts.body.sites.at(i));
    return force.shear > Force{} && dot(along, row.towards) >= -along_the_edge ? force.shear : Force{};
  };
  const Loaded together = loaded(facts, row.inserts, towards_edge);
  if (together.indices.size() < 2 || !contains(together.indices, insert))
    return {.comparison = {.result = Result::pass}, .applies = false};
  for (const std::size_t i : together.indices)
    resultant = resultant + shear_direction(situation.forces.at(i), facts.body.sites.at(i)) * situation.forces.at(i).shear;

  const auto offset = eccentricity(facts, together, towards_edge);
  if (const auto* gap = std::get_if<NotAssessed>(&offset)) return judged(together.sum, MaybeForce{*gap}, facts);
  const auto& e = std::get<resistances::Eccentricity>(offset);
  const auto& layout = std::get<resistances::GroupLayout>(facts.anchorage.areas.layout(together.inserts));
  // Along the edge: what is left of the offset when its part towards the edge is taken away.
  const Position whole = layout.u * e.u + layout.v * e.v;
  const Position along_edge = whole - row.towards * dot(row.towards, whole);
  const Force demand = norm(resultant);
  const Direction direction = demand > Force{} ? Direction{(resultant.x / demand).value(), (resultant.y / demand).value(),
                                                           (resultant.z / demand).value()}
                                               : row.towards;
  return judged(demand,
                resistances::edge_breakout(together.inserts, row.towards, direction, norm(along_edge), f_c,
                                           facts.rules.headed, trace),
                facts, together.indices);
}

ModeCheck check_edge_breakout(const StageFacts& facts, const InsertSituation& situation, std::size_t insert, Stress f_c,
                              Trace& trace) {
  const HeadedInsert& one = headed(facts, insert);
  const auto& force = situation.forces.at(insert);
  ModeCheck worst = judged(
      force.shear,
      resistances::edge_breakout(one, shear_direction(force, *one.site), f_c, facts.rules.headed, trace), facts);
  for (const auto& row : facts.anchorage.shear_rows)
    if (contains(row.inserts, insert)) keep_worse(worst, check_shear_row(facts, situation, row, insert, f_c, trace));
  return worst;
}

ModeCheck missing_mode(const NotAssessed& gap) {
  return {.comparison = {Result::missing, {}, gap.why, gap.remedy}};
}

}  // namespace

bool in_tension(Mode mode) {
  return mode == Mode::steel_tension || mode == Mode::breakout || mode == Mode::pullout || mode == Mode::side_blowout;
}

bool less_severe(const ModeCheck& a, const ModeCheck& b) {
  const auto rank = [](const ModeCheck& c) { return c.comparison.result == Result::missing ? 1 : 0; };
  if (rank(a) != rank(b)) return rank(a) < rank(b);
  return a.comparison.utilization.value_or(-1.0) < b.comparison.utilization.value_or(-1.0);
}

ModeCheck check_mode(Mode mode, const StageFacts& facts, const InsertSituation& situation, std::size_t insert,
                     Trace& trace) {
  const auto& outcome = facts.anchorage.headed.at(insert);
  if (const auto* gap = std::get_if<NotAssessed>(&outcome)) return missing_mode(*gap);
  const auto& one = std::get<HeadedInsert>(outcome);
  const auto& force = situation.forces.at(insert);
  const auto& model = facts.rules.headed;
  if (mode == Mode::steel_tension) return judged(force.tension, resistances::steel_tension(one, trace), facts);
  if (mode == Mode::steel_shear) return judged(force.shear, resistances::steel_shear(one, model, trace), facts);

  if (const auto* gap = std::get_if<NotAssessed>(&facts.formula_strength)) return missing_mode(*gap);
  const Stress f_c = std::get<Stress>(facts.formula_strength);
  switch (mode) {
    case Mode::breakout: return check_breakout(facts, situation, insert, f_c, trace);
    case Mode::pullout: return judged(force.tension, resistances::pullout(one, f_c, model, trace), facts);
    case Mode::side_blowout: return check_side_blowout(facts, situation, insert, f_c, trace);
    case Mode::edge_breakout: return check_edge_breakout(facts, situation, insert, f_c, trace);
    case Mode::pryout: return check_pryout(facts, situation, insert, f_c, trace);
    case Mode::steel_tension:
    case Mode::steel_shear: break;
  }
  return missing_mode({"this way to fail is not evaluated", {}});
}

const ModeCheck& ModeTable::at(std::size_t situation, std::size_t insert, Mode mode) const {
  return checks.at((situation * inserts + insert) * all_modes.size() + static_cast<std::size_t>(mode));
}

ModeTable mode_table(const StageFacts& facts) {
  ModeTable table{.inserts = facts.plan.inserts.size(), .checks = {}};
  const auto* situations = std::get_if<std::vector<InsertSituation>>(&facts.insert_situations);
  if (!situations) return table;
  Trace silent;
  table.checks.reserve(situations->size() * table.inserts * all_modes.size());
  for (const InsertSituation& situation : *situations)
    for (std::size_t insert = 0; insert < table.inserts; ++insert)
      for (const Mode mode : all_modes) table.checks.push_back(check_mode(mode, facts, situation, insert, silent));
  return table;
}

}  // namespace firstpick::checks
