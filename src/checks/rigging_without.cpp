#include "checks/rigging_without.hpp"

#include <algorithm>
#include <set>
#include <string>

#include "plan/rigging_tree.hpp"

namespace firstpick::checks {

namespace {

std::string rope_name(const plan::Rigging& rigging, const plan::Leg& leg) {
  const auto from_a_sheave = std::ranges::find(rigging.sheaves, leg.from, &plan::Sheave::id);
  if (from_a_sheave != rigging.sheaves.end() && from_a_sheave->rolls) return "over " + leg.from;
  for (const auto& group : rigging.equalised)
    if (std::ranges::any_of(group, [&](const auto& member) { return member.value == leg.to; }))
      return "to " + group.front().value;
  return "to " + leg.to;
}

bool ends_on(const plan::Rigging& rigging, std::string_view end, std::size_t carrier) {
  const auto found = plan::carrier_end(rigging, end);
  return found && found->carrier == carrier;
}

class Falling {
 public:
  explicit Falling(const plan::Rigging& rigging)
      : rigging_(rigging), leg_gone_(rigging.legs.size()),
        carrier_gone_(rigging.beams.size() + rigging.sheaves.size()) {}

  void let_go(const std::vector<std::size_t>& legs) {
    for (const std::size_t leg : legs) leg_gone_.at(leg) = true;
    while (ropes_run_out() || carriers_fall()) {}
  }

  plan::Rigging what_is_left() const {
    plan::Rigging left = rigging_;
    left.legs.clear();
    std::set<std::string> reached;
    for (std::size_t leg = 0; leg < leg_gone_.size(); ++leg)
      if (!leg_gone_[leg]) {
        left.legs.push_back(rigging_.legs[leg]);
        reached.insert(rigging_.legs[leg].to);
      }
    std::erase_if(left.equalised, [&](const auto& group) { return !reached.contains(group.front().value); });
    std::size_t carrier = 0;
    std::erase_if(left.beams, [&](const plan::Beam&) { return carrier_gone_[carrier++]; });
    std::erase_if(left.sheaves, [&](const plan::Sheave&) { return carrier_gone_[carrier++]; });
    return left;
  }

 private:
  bool ropes_run_out() {
    bool changed = false;
    for (const auto& rope : ropes_of(rigging_)) {
      const bool torn = std::ranges::any_of(rope, [&](std::size_t leg) { return leg_gone_[leg]; });
      for (const std::size_t leg : rope)
        if (torn && !leg_gone_[leg]) leg_gone_[leg] = changed = true;
    }
    return changed;
  }

  bool carriers_fall() {
    bool changed = false;
    for (std::size_t carrier = 0; carrier < carrier_gone_.size(); ++carrier) {
      if (carrier_gone_[carrier]) continue;
      bool hangs = false, carries = false;
      for (std::size_t leg = 0; leg < leg_gone_.size(); ++leg) {
        if (leg_gone_[leg]) continue;
        hangs = hangs || ends_on(rigging_, rigging_.legs[leg].to, carrier);
        carries = carries || ends_on(rigging_, rigging_.legs[leg].from, carrier);
      }
      if (hangs && carries) continue;
      carrier_gone_[carrier] = changed = true;
      for (std::size_t leg = 0; leg < leg_gone_.size(); ++leg)
        if (ends_on(rigging_, rigging_.legs[leg].to, carrier) || ends_on(rigging_, rigging_.legs[leg].from, carrier))
          leg_gone_[leg] = true;
    }
    return changed;
  }

  const plan::Rigging& rigging_;
  std::vector<bool> leg_gone_, carrier_gone_;
};

}  // namespace

std::vector<std::vector<std::size_t>> ropes_of(const plan::Rigging& rigging) {
  std::vector<std::string> names;
  std::vector<std::vector<std::size_t>> ropes;
  for (std::size_t leg = 0; leg < rigging.legs.size(); ++leg) {
    const std::string name = rope_name(rigging, rigging.legs[leg]);
    const auto known = std::ranges::find(names, name);
    if (known == names.end()) {
      names.push_back(name);
      ropes.push_back({leg});
    } else {
      ropes[static_cast<std::size_t>(known - names.begin())].push_back(leg);
    }
  }
  return ropes;
}

plan::Rigging rigging_without(const plan::Rigging& rigging, const std::vector<std::size_t>& legs) {
  Falling falling(rigging);
  falling.let_go(legs);
  return falling.what_is_left();
}

}  // namespace firstpick::checks
