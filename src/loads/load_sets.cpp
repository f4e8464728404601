// The ways in which the loads of a stage may come to the rigging.
//
//   at rest          W at the centre of gravity, W_att_i at its own points
//   hanging          phi W and phi W_att_i at the same points
//   breaking free    the same as hanging, and F_adh_i at the centroid of each contact
//   without form parts   hanging, or at rest, without those of which nobody said when they are taken off
//   least load       floor W and floor W_att_i, where the rule set knows a floor: the other branch of a maximum of two
//
// With load factors, what inserts are asked for: gamma_G on W and W_att_i, gamma_adh on F_adh_i.
//
// Source   statics. What the insert factor multiplies is the rule set's choice: 29 CFR 1926.704 says "maximum
//          intended load" and leaves open whether that has dynamic factor and adhesion in it. Legs carry
//          both.

#include "loads/load_sets.hpp"

namespace firstpick::loads {

namespace {

LoadSet set_of(std::string name, const LoadParts& parts, Ratio factor, bool with_adhesion) {
  LoadSet set{std::move(name), {}, {}};
  set.loads.push_back({parts.weight.at, factor * parts.weight.force});
  for (const AppliedLoad& part : parts.attached) set.loads.push_back({part.at, factor * part.force});
  if (with_adhesion) set.loads.insert(set.loads.end(), parts.adhesion.begin(), parts.adhesion.end());
  set.total = sum_of(set.loads);
  return set;
}

// Those that may be off weigh nothing: each set keeps one load for each part.
void add_without_parts(const LoadParts& parts, Ratio factor, std::string name, std::vector<LoadSet>& sets) {
  if (parts.may_be_off.empty()) return;
  LoadParts without = parts;
  for (const std::size_t i : parts.may_be_off) without.attached.at(i).force = Force{};
  sets.push_back(set_of(std::move(name), without, factor, false));
}

}  // namespace

std::vector<LoadSet> moving_sets(const LoadParts& parts, std::optional<Ratio> floor) {
  std::vector<LoadSet> sets{set_of("hanging", parts, parts.dynamic_factor, false)};
  if (!parts.adhesion.empty()) sets.push_back(set_of(std::string(breaking_free), parts, parts.dynamic_factor, true));
  if (floor) sets.push_back(set_of("least load", parts, *floor, false));
  add_without_parts(parts, parts.dynamic_factor, "hanging" + std::string(without_form_parts), sets);
  return sets;
}

std::vector<LoadSet> insert_sets(const LoadParts& parts, tables::InsertLoad choice, std::optional<Ratio> floor,
                                 const std::optional<tables::LoadFactors>& factors) {
  LoadParts factored = parts;
  if (factors) {
    factored.weight.force = factors->weight.value * parts.weight.force;
    for (AppliedLoad& part : factored.attached) part.force = factors->weight.value * part.force;
    for (AppliedLoad& part : factored.adhesion) part.force = factors->grip.value * part.force;
  }
  std::vector<LoadSet> sets;
  if (choice == tables::InsertLoad::weight_only) {
    sets.push_back(set_of("at rest", factored, Ratio::from_value(1.0), false));
    add_without_parts(factored, Ratio::from_value(1.0), "at rest" + std::string(without_form_parts), sets);
  } else {
    sets = moving_sets(factored, floor);
  }
  if (factors)
    for (LoadSet& set : sets) set.name += " with load factors";
  return sets;
}

}  // namespace firstpick::loads
