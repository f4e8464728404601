#include "checks/changed_plans.hpp"

#include <algorithm>
#include <functional>
#include <utility>

#include <fmt/format.h>

#include "checks/insert_families.hpp"

namespace firstpick::checks {

namespace {

constexpr double steps_up[] = {1.25, 1.5};
// Of the level distance from the centre of gravity.
constexpr std::pair<double, const char*> moves[] = {{0.8, "nearer to"}, {1.2, "farther from"}};

std::string percent(double factor) { return fmt::format("{:.0f} %", 100.0 * std::abs(factor - 1.0)); }

ChangedPlan longer_legs(plan::Plan plan, double factor) {
  for (plan::Rigging& rigging : plan.riggings)
    for (plan::Leg& leg : rigging.legs) {
      const bool to_insert = std::ranges::any_of(plan.inserts, [&](const auto& insert) { return insert.id == leg.to; });
      if (to_insert && leg.length) *leg.length *= factor;
    }
  return {fmt::format("legs {} longer", percent(factor)), std::move(plan)};
}

bool may_be_deeper(const plan::Insert& insert) {
  return insert.embedment && (insert.kind == "headed" || is_lifting_loop(insert.kind));
}

ChangedPlan deeper_inserts(plan::Plan plan, double factor) {
  for (plan::Insert& insert : plan.inserts)
    if (may_be_deeper(insert)) {
      *insert.embedment *= factor;
      if (insert.loop && insert.loop->leg_length) *insert.loop->leg_length *= factor;
    }
  return {fmt::format("inserts {} deeper", percent(factor)), std::move(plan), true};
}

ChangedPlan moved_picks(plan::Plan plan, const Position& middle, double factor, const char* where) {
  for (plan::Insert& insert : plan.inserts) {
    insert.at.x = middle.x + factor * (insert.at.x - middle.x);
    insert.at.y = middle.y + factor * (insert.at.y - middle.y);
  }
  return {fmt::format("picks {} {} the middle", percent(factor), where), std::move(plan), true};
}

}  // namespace

std::vector<ChangedPlan> changed_plans(const plan::Plan& plan, const piece::Body& body) {
  std::vector<ChangedPlan> changed;
  for (const double factor : steps_up) changed.push_back(longer_legs(plan, factor));
  if (std::ranges::any_of(plan.inserts, may_be_deeper))
    for (const double factor : steps_up) changed.push_back(deeper_inserts(plan, factor));
  for (const auto& [factor, where] : moves) changed.push_back(moved_picks(plan, body.centroid, factor, where));
  return changed;
}

}  // namespace firstpick::checks
