// Sets of indices that are linked, directly or over others.
#pragma once

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

namespace firstpick::resistances {

// Each set and the sets themselves in ascending order; a member without links is a set of one.
template <class Linked>
std::vector<std::vector<std::size_t>> linked_sets(const std::vector<std::size_t>& members, Linked linked) {
  std::vector<std::vector<std::size_t>> sets;
  std::vector<bool> taken(members.size(), false);
  for (std::size_t first = 0; first < members.size(); ++first) {
    if (taken[first]) continue;
    std::vector<std::size_t> open{first}, set;
    taken[first] = true;
    while (!open.empty()) {
      const std::size_t i = open.back();
      open.pop_back();
      set.push_back(members[i]);
      for (std::size_t j = 0; j < members.size(); ++j) {
        if (taken[j] || !linked(members[i], members[j])) continue;
        taken[j] = true;
        open.push_back(j);
      }
    }
    std::sort(set.begin(), set.end());
    sets.push_back(std::move(set));
  }
  return sets;
}

}  // namespace firstpick::resistances
