#include "checks/stage_facts.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "checks/cracked_inserts.hpp"
#include "checks/hung_rigging.hpp"
#include "checks/insert_modes.hpp"
#include "checks/lift_situations.hpp"
#include "checks/named.hpp"
#include "checks/piece_bending.hpp"
#include "checks/standing.hpp"
#include "checks/turn_situations.hpp"
#include "demands/length_errors.hpp"
#include "plan/form_state.hpp"
#include "strength/strength_at_lift.hpp"

namespace firstpick::checks {

namespace {

// Out of the form by another stage than strip, the drawing's strengths for both must be there: the larger counts.
Outcome<Stress> required_strength(const plan::Plan& plan, const plan::Stage& stage, const tables::RuleSet& rules,
                                  const std::optional<Mass>& mass, Trace& trace) {
  plan::StageKind kind = stage.kind;
  if (kind != plan::StageKind::strip && plan::comes_out_of_form(plan, stage)) {
    Trace silent;
    const auto strip = strength::required_strength(plan::StageKind::strip, plan.concrete, rules, silent, mass);
    const auto own = strength::required_strength(kind, plan.concrete, rules, silent, mass);
    if (!is_assessed(strip) || (is_assessed(own) && std::get<Stress>(strip) > std::get<Stress>(own)))
      kind = plan::StageKind::strip;
  }
  return strength::required_strength(kind, plan.concrete, rules, trace, mass);
}

// Legs that are not as long as drawn: every combination of long and short within the plan's tolerance.
std::optional<NotAssessed> add_lengths(const plan::Rigging& rigging, const std::string& set,
                                       const demands::HungPiece& hung, Shared& result) {
  if (!rigging.length_tolerance) return {};
  auto lengths = demands::length_errors(hung, *rigging.length_tolerance);
  if (const auto* gap = std::get_if<NotAssessed>(&lengths)) return *gap;
  for (demands::Sharing& sharing : std::get<std::vector<demands::Sharing>>(lengths))
    result.situations.push_back({fmt::format("{}, {}", set, sharing.name), std::move(sharing.legs), true});
  return {};
}

// Legs whose stiffness is the table's may be stiffer than that: the same with nearly rigid ones.
std::optional<NotAssessed> add_nearly_rigid(const plan::Plan& plan, const plan::Rigging& rigging,
                                            const loads::LoadSet& set, const tables::RuleSet& rules,
                                            Shared& result) {
  const auto piece = on_nearly_rigid_legs(result.hung, plan, rigging, set, rules);
  auto hanging = demands::hang(piece);
  if (const auto* gap = std::get_if<NotAssessed>(&hanging)) return *gap;
  const std::string name = set.name + ", legs nearly rigid";
  result.situations.push_back({name, std::move(std::get<demands::Hanging>(hanging).legs), false});
  return add_lengths(rigging, name, piece, result);
}

}  // namespace

Outcome<Shared> shared(const plan::Plan& plan, const plan::Rigging* rigging, const loads::LoadSet& set,
                       const tables::RuleSet& rules, const tables::Tables& tables, const Direction& upright) {
  auto hung = hung_piece(plan, rigging, set, rules, tables);
  if (const auto* missing = std::get_if<NotAssessed>(&hung)) return *missing;
  auto& piece = std::get<demands::HungPiece>(hung);
  piece.upright = upright;
  const auto hanging = demands::hang(piece);
  if (const auto* missing = std::get_if<NotAssessed>(&hanging)) return *missing;

  Shared result{piece, std::get<demands::Hanging>(hanging), {}};
  result.situations.push_back({set.name, result.hanging.legs, false});
  if (auto gap = add_lengths(*rigging, set.name, result.hung, result)) return *std::move(gap);
  if (has_stiffness_by_size(plan, *rigging, tables))
    if (auto gap = add_nearly_rigid(plan, *rigging, set, rules, result)) return *std::move(gap);
  if (rules.sharing.value == tables::Sharing::elastic) return result;

  auto distributions = demands::basic_distributions(piece, result.hanging);
  if (const auto* missing = std::get_if<NotAssessed>(&distributions)) return *missing;
  auto& basic = std::get<std::vector<demands::Sharing>>(distributions);
  if (basic.empty()) return NotAssessed{"no set of legs that only pull can carry the load", {}};
  if (basic.size() > 1)
    for (demands::Sharing& sharing : basic)
      result.situations.push_back({fmt::format("{}, {}", set.name, sharing.name), std::move(sharing.legs), true});
  return result;
}

namespace {

Outcome<std::vector<Situation>> all_of(const std::vector<loads::LoadSet>& sets, const std::vector<loads::LoadSet>& known,
                                       const std::vector<Outcome<Shared>>& known_shared, const plan::Plan& plan,
                                       const plan::Rigging* rigging, const tables::RuleSet& rules,
                                       const tables::Tables& tables, const Direction& upright) {
  std::vector<Situation> all;
  for (const loads::LoadSet& set : sets) {
    const auto same = std::ranges::find_if(
        known, [&](const loads::LoadSet& other) { return other.name == set.name && other.total == set.total; });
    const bool is_known = same != known.end();
    const Outcome<Shared> fresh =
        is_known ? Outcome<Shared>{NotAssessed{}} : shared(plan, rigging, set, rules, tables, upright);
    const Outcome<Shared>& one =
        is_known ? known_shared[static_cast<std::size_t>(same - known.begin())] : fresh;
    if (const auto* missing = std::get_if<NotAssessed>(&one)) return *missing;
    const auto& situations = std::get<Shared>(one).situations;
    all.insert(all.end(), situations.begin(), situations.end());
  }
  if (all.empty()) return NotAssessed{"no load set acts in this stage", {}};
  return all;
}

}  // namespace

Outcome<std::vector<InsertSituation>> on_inserts(const Outcome<std::vector<Situation>>& situations,
                                                 const plan::Plan& plan, const plan::Rigging* rigging,
                                                 const piece::Body& body) {
  if (const auto* missing = std::get_if<NotAssessed>(&situations)) return *missing;
  std::vector<InsertSituation> all;
  for (const Situation& situation : std::get<std::vector<Situation>>(situations)) {
    InsertSituation felt{situation.name, std::vector<demands::InsertForce>(plan.inserts.size()),
                         situation.some_legs_only, situation.turning};
    for (std::size_t leg = 0; leg < rigging->legs.size(); ++leg) {
      const auto insert = std::ranges::find(plan.inserts, rigging->legs[leg].to, &plan::Insert::id);
      if (insert == plan.inserts.end()) continue;  // the leg to a beam or a sheave
      const auto index = static_cast<std::size_t>(insert - plan.inserts.begin());
      const demands::InsertForce force = demands::insert_force(situation.legs.at(leg), body.sites.at(index));
      if (force.presses_in)
        return NotAssessed{fmt::format("the leg to {} would run into the concrete: the face of its insert looks away "
                                       "from the hook", plan.inserts[index].id),
                           "an insert in a face that looks towards the hook, or legs held apart above the piece"};
      felt.forces.at(index) = force;
    }
    all.push_back(std::move(felt));
  }
  return all;
}

Anchorage anchorage(const plan::Plan& plan, const piece::Body& body, const tables::RuleSet& rules,
                    const tables::Tables& tables, Trace& trace) {
  Anchorage result;
  for (std::size_t i = 0; i < plan.inserts.size(); ++i) {
    const plan::Insert& insert = plan.inserts[i];
    trace.about([&] { return fmt::format("insert {}", insert.id); });
    if (insert.kind == "headed")
      result.headed.push_back(
          resistances::headed_insert(insert, body.sites.at(i), plan.concrete, rules, tables, trace));
    else
      result.headed.push_back(NotAssessed{fmt::format("insert {} is not a headed insert", insert.id), {}});
  }
  result.groups = resistances::breakout_groups(result.headed, rules.headed);
  result.blowout_rows = resistances::blowout_rows(result.headed, rules.headed);
  result.shear_rows = resistances::shear_rows(result.headed, rules.headed);
  return result;
}

namespace {

// The wind of the stage, and what it makes of every set in which the piece hangs free of the form.
void add_wind(StageFacts& facts, Trace& trace) {
  if (!facts.stage.wind_speed) return;
  if (facts.stage.kind == plan::StageKind::turn) {
    facts.wind = NotAssessed{"wind on a piece that turns is not computed", "turn it in still air: leave out wind_speed"};
    return;
  }
  if (facts.rigging && facts.rigging->hooks.size() > 1) {
    facts.wind = NotAssessed{"wind on a piece on more than one hook is not computed",
                             "lift it on one hook, or in still air: leave out wind_speed"};
    return;
  }
  if (const auto* missing = std::get_if<NotAssessed>(&facts.up_before)) {
    facts.wind = *missing;
    return;
  }
  const Direction& up = std::get<Direction>(facts.up_before);
  facts.wind = loads::wind_load(facts.plan, facts.stage, facts.body, up, facts.tables, trace);
  const auto* wind = std::get_if<loads::WindLoad>(&*facts.wind);
  if (!wind) return;
  auto& load = std::get<loads::StageLoad>(facts.load);
  for (std::vector<loads::LoadSet>* sets : {&load.gear_loads, &load.insert_loads}) {
    std::vector<loads::LoadSet> blown;
    for (const loads::LoadSet& set : *sets)
      if (set.name != loads::breaking_free) blown.push_back(loads::in_wind(set, *wind, up));
    sets->insert(sets->end(), blown.begin(), blown.end());
  }
}

}  // namespace

void add_lift(StageFacts& facts) {
  const auto& load = std::get<loads::StageLoad>(facts.load);
  const plan::Plan& plan = facts.plan;
  const tables::RuleSet& rules = facts.rules;
  if (const auto* missing = std::get_if<NotAssessed>(&facts.up_before)) {
    facts.hanging = *missing;
    facts.gear_situations = *missing;
    facts.insert_situations = *missing;
    return;
  }
  const Direction& upright = std::get<Direction>(facts.up_before);
  std::vector<Outcome<Shared>> gear;
  gear.reserve(load.gear_loads.size());
  for (const loads::LoadSet& set : load.gear_loads)
    gear.push_back(shared(plan, facts.rigging, set, rules, facts.tables, upright));

  if (gear.empty())
    facts.hanging = NotAssessed{"no load set acts in this stage", {}};
  else if (const auto* missing = std::get_if<NotAssessed>(&gear.front()))
    facts.hanging = *missing;
  else {
    facts.hanging = std::get<Shared>(gear.front()).hanging;
    facts.hung = std::get<Shared>(gear.front()).hung;
  }
  for (std::size_t i = 0; i < gear.size(); ++i)
    if (load.gear_loads[i].name.ends_with(loads::without_form_parts))
      if (const auto* without = std::get_if<Shared>(&gear[i])) facts.without_parts.push_back(without->hanging);
  facts.gear_situations = all_of(load.gear_loads, load.gear_loads, gear, plan, facts.rigging, rules, facts.tables, upright);
  facts.insert_situations = on_inserts(
      all_of(load.insert_loads, load.gear_loads, gear, plan, facts.rigging, rules, facts.tables, upright), plan,
      facts.rigging, facts.body);
}

StageFacts stage_facts(const plan::Plan& plan, const plan::Stage& stage, const piece::Body& body,
                       const Anchorage& anchorage, const tables::RuleSet& rules, const tables::Tables& tables,
                       Trace& trace, std::shared_ptr<BendingMemo> bending) {
  const NotAssessed not_yet{"not computed", {}};
  StageFacts facts{.plan = plan,
                   .stage = stage,
                   .rigging = named(plan.riggings, stage.rigging),
                   .crane = named(plan.cranes, stage.crane),
                   .body = body,
                   .tables = tables,
                   .rules = rules,
                   .anchorage = anchorage,
                   .load = loads::stage_load(plan, stage, body, rules, tables, trace),
                   .hung = not_yet,
                   .hanging = not_yet,
                   .insert_situations = not_yet,
                   .gear_situations = not_yet,
                   .usable_strength = strength::usable_strength(plan.concrete, rules, tables, trace),
                   .required_strength = not_yet,
                   .formula_strength = not_yet,
                   .up_before = up_before(plan, stage, body),
                   .up_after = up_after(plan, stage, body),
                   .bending = bending ? std::move(bending) : std::make_shared<BendingMemo>(),
                   .modes = {}};

  std::optional<Mass> mass;
  if (const auto* load = std::get_if<loads::StageLoad>(&facts.load)) mass = load->weight / standard_gravity;
  facts.required_strength = required_strength(plan, stage, rules, mass, trace);
  if (const auto* usable = std::get_if<Stress>(&facts.usable_strength))
    facts.formula_strength = strength::formula_strength(*usable, rules, trace);
  else
    facts.formula_strength = std::get<NotAssessed>(facts.usable_strength);

  if (const auto* missing = std::get_if<NotAssessed>(&facts.load)) {
    facts.hanging = *missing;
    facts.insert_situations = *missing;
    facts.gear_situations = *missing;
    if (stage.kind == plan::StageKind::turn) facts.turning = *missing;
    return facts;
  }
  record_stiffness(plan, facts.rigging, tables, trace);
  add_wind(facts, trace);
  count_cracks(facts, false);
  if (stage.kind == plan::StageKind::turn)
    add_turn(facts);
  else {
    add_lift(facts);
    count_cracks(facts, true);
  }
  facts.modes = mode_table(facts);
  return facts;
}

}  // namespace firstpick::checks
