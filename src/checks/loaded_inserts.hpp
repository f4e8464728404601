// The inserts of a group or a row that carry something in a situation.
#pragma once

#include <cstddef>
#include <vector>

#include "checks/stage_facts.hpp"
#include "resistances/breakout.hpp"

namespace firstpick::checks {

// Of an insert that is assessed: throws otherwise.
const resistances::HeadedInsert& headed(const StageFacts& facts, std::size_t insert);

struct LoadedInserts {
  std::vector<std::size_t> indices;                       // in the plan
  std::vector<const resistances::HeadedInsert*> inserts;  // the same, as the resistances want them
  std::vector<Force> forces;                              // of each
  Force sum{};

  void reserve(std::size_t count);
  // Takes no insert whose force is not above zero.
  void add(const StageFacts& facts, std::size_t insert, Force force);
  bool act_together() const { return indices.size() > 1; }
  bool hold(std::size_t insert) const;
};

// Every one has bars of its own that hold its body of concrete.
bool held_by_bars(const LoadedInserts& loaded);

// Distance of the resultant of the forces from the centroid of the inserts, in the axes of the group.
Outcome<resistances::Eccentricity> eccentricity(const LoadedInserts& loaded, const StageFacts& facts);

}  // namespace firstpick::checks
