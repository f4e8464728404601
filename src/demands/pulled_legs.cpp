#include "demands/pulled_legs.hpp"

#include "demands/leg_force.hpp"

namespace firstpick::demands {

namespace {

std::string name_of(const std::vector<HungLeg>& legs, const std::vector<double>& shares) {
  std::vector<std::string> names;
  for (std::size_t i = 0; i < legs.size(); ++i)
    if (shares[i] > 0.0) names.push_back(legs[i].to);
  std::string text = names.size() == 1 ? "leg " : "legs ";
  for (std::size_t i = 0; i < names.size(); ++i)
    text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
  return text + " only";
}

}  // namespace

std::vector<Sharing> pulled_legs(const std::vector<HungLeg>& legs, const HookOverLegs& hook, Force pull,
                                 const Direction& up) {
  std::vector<Sharing> all;
  for (const std::vector<double>& shares : hook.shares) {
    Sharing sharing;
    if (hook.shares.size() > 1) sharing.name = name_of(legs, shares);
    for (std::size_t i = 0; i < legs.size(); ++i)
      sharing.legs.push_back(leg_force(legs[i].at, shares[i] * pull, hook.at, up));
    all.push_back(std::move(sharing));
  }
  return all;
}

}  // namespace firstpick::demands
