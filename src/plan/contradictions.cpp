#include "plan/contradictions.hpp"

#include <algorithm>
#include <map>
#include <set>

#include <fmt/format.h>

#include "plan/rigging_tree.hpp"

namespace firstpick::plan {
namespace {

// A name given twice stands for its first; a second one is a fault already reported.
std::map<std::string, const Insert*> inserts_by_id(const Plan& plan) {
  std::map<std::string, const Insert*> by_id;
  for (const Insert& insert : plan.inserts)
    if (!insert.id.empty()) by_id.try_emplace(insert.id, &insert);
  return by_id;
}

void check_one_leg_each(const Rigging& rigging, const NameBook& names, Faults& faults) {
  std::map<std::string, const Leg*> first;
  for (const Leg& leg : rigging.legs) {
    if (leg.to.empty() || names.is_given(Names::rigging_part, leg.to)) continue;
    const auto [known, is_new] = first.try_emplace(leg.to, &leg);
    if (!is_new)
      faults.add(leg.place, fmt::format("a second leg to insert {}; the first is in line {}",
                                        in_quotes(leg.to), known->second->place.line));
  }
}

void check_groups(const Rigging& rigging, const NameBook& names, Faults& faults) {
  std::map<std::string, Place> grouped;
  for (const auto& group : rigging.equalised)
    for (const Placed<std::string>& member : group) {
      const auto [known, is_new] = grouped.try_emplace(member.value, member.place);
      if (!is_new)
        faults.add(member.place,
                   fmt::format("insert {} is in two groups; first in line {} column {}",
                               in_quotes(member.value), known->second.line, known->second.column));
      const auto leg = std::ranges::find(rigging.legs, member.value, &Leg::to);
      if (is_new && leg == rigging.legs.end() && names.is_given(Names::insert, member.value))
        faults.add(member.place,
                   fmt::format("no leg of this rigging reaches insert {}", in_quotes(member.value)));
      const auto first = std::ranges::find(rigging.legs, group.front().value, &Leg::to);
      if (leg != rigging.legs.end() && first != rigging.legs.end() && leg->from != first->from)
        faults.add(member.place,
                   fmt::format("the legs to {} and {} do not hang from one hook", in_quotes(first->to),
                               in_quotes(leg->to)),
                   "equalised legs are one rope over one sheave");
      if (leg != rigging.legs.end() && carrier_end(rigging, leg->from))
        faults.add(member.place,
                   fmt::format("the leg to {} hangs from {}, not from a hook", in_quotes(member.value),
                               in_quotes(leg->from)),
                   "the legs from a sheave are one rope already; for a beam, give it a sheave");
    }
}

// Two legs of one hook form a triangle with the line between their inserts. One message for each leg.
void check_legs_meet(const Rigging& rigging, const Plan& plan, Reading& reading) {
  struct PlacedLeg {
    const Leg& leg;
    Length length;
    Position at;
  };
  const auto inserts = inserts_by_id(plan);
  const auto shown = [&](Length length, Rounding rounding) {
    return print(length, plan.piece.units, rounding);
  };
  std::vector<PlacedLeg> before;
  for (const Leg& leg : rigging.legs) {
    const auto insert = inserts.find(leg.to);
    if (!leg.length || !leg.from.empty() || insert == inserts.end() || reading.unplaced.contains(leg.to)) continue;
    const PlacedLeg second{leg, *leg.length, insert->second->at};
    const auto first = std::ranges::find_if(before, [&](const PlacedLeg& other) {
      return other.leg.to != leg.to && !(other.length + second.length > norm(other.at - second.at));
    });
    if (first != before.end())
      reading.faults.add(
          leg.place,
          fmt::format("the legs to {} and {} are too short to meet: {} and {} for inserts {} apart",
                      in_quotes(first->leg.to), in_quotes(leg.to), shown(first->length, Rounding::down),
                      shown(second.length, Rounding::down),
                      shown(norm(first->at - second.at), Rounding::up)));
    before.push_back(second);
  }
}

// A leg to a name that does not exist is likely meant for the insert that is left: one message is enough.
void check_every_insert_reached(const Plan& plan, const NameBook& names, Faults& faults) {
  if (plan.riggings.empty() || names.has_unknown(Names::insert)) return;
  std::set<std::string> reached;
  for (const Rigging& rigging : plan.riggings) {
    if (rigging.legs.empty()) return;  // faulty, and reported
    for (const Leg& leg : rigging.legs) {
      if (leg.to.empty()) return;  // faulty, and reported
      reached.insert(leg.to);
    }
  }
  const std::string legs = plan.riggings.size() == 1
                               ? "no leg of rigging " + in_quotes(plan.riggings.front().id)
                               : "no leg of any rigging";
  for (const Insert& insert : plan.inserts)
    if (!insert.id.empty() && !reached.contains(insert.id))
      faults.add(insert.place, fmt::format("{} reaches insert {}", legs, in_quotes(insert.id)));
}

}  // namespace

void check_riggings(const Plan& plan, Reading& reading) {
  for (const Rigging& rigging : plan.riggings) {
    check_one_leg_each(rigging, reading.names, reading.faults);
    check_tree(rigging, reading);
    check_groups(rigging, reading.names, reading.faults);
    check_legs_meet(rigging, plan, reading);
  }
  check_every_insert_reached(plan, reading.names, reading.faults);
}

void check_form(const Plan& plan, Reading& reading) {
  if (!plan.form) return;
  const auto has = [&](StageKind kind) { return std::ranges::find(plan.stages, kind, &Stage::kind) != plan.stages.end(); };
  if (plan.form->released && has(StageKind::strip))
    reading.faults.add(plan.form->place, "a piece that is released from its form has no stage strip",
                       "leave out released = true, or the stage");
  for (const Attached& part : plan.form->attached)
    if (part.until && !plan.stages.empty() && !has(*part.until))
      reading.faults.add(part.place, fmt::format("{} is taken off after a stage {}, but the plan has none",
                                                 in_quotes(part.what), word_for(*part.until)),
                         "until = the kind of one of the stages");
}

// A piece leaves its form first, and is lifted no more once it is set.
void check_order_of_stages(const Plan& plan, Faults& faults) {
  for (std::size_t i = 1; i < plan.stages.size(); ++i) {
    const Stage& stage = plan.stages[i];
    const Stage& before = plan.stages[i - 1];
    if (stage.kind == StageKind::strip)
      faults.add(stage.place,
                 fmt::format("a stage strip behind the stage {} in line {}: the piece is out of its form by then",
                             word_for(before.kind), before.place.line),
                 "stages stand in the order of the work, strip first");
    else if (before.kind == StageKind::set)
      faults.add(stage.place,
                 fmt::format("a stage {} behind the stage set in line {}: the piece stands where it stays by then",
                             word_for(stage.kind), before.place.line),
                 "stages stand in the order of the work, set last");
  }
}

void check_moments(Reading& reading) {
  const auto& moments = reading.moments;
  if (moments.empty()) return;
  const auto line = [&](const Moment& moment) { return reading.faults.place_of(moment.where).line; };

  const Moment& first = moments.front();
  const auto other = std::ranges::find_if(
      moments, [&](const Moment& each) { return each.value.has_offset != first.value.has_offset; });
  if (other != moments.end()) {
    reading.faults.at(other->where,
                      fmt::format("'{}' has {} offset from UTC, '{}' in line {} has {}", other->key,
                                  other->value.has_offset ? "an" : "no", first.key, line(first),
                                  first.value.has_offset ? "one" : "none"),
                      "write all dates and times of a plan with an offset (+01:00), or all without");
    return;
  }
  const auto cast = std::ranges::find(moments, "cast", &Moment::key);
  if (cast == moments.end()) return;
  for (const Moment& moment : moments)
    if (moment.value.seconds < cast->value.seconds)
      reading.faults.at(moment.where,
                        fmt::format("'{}' is before 'cast' in line {}", moment.key, line(*cast)));
}

}  // namespace firstpick::plan
