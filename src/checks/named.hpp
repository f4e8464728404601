// What a plan gives a name to, found by that name.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

namespace firstpick::checks {

// Null: none has it.
template <class Named>
const Named* named(const std::vector<Named>& all, const std::string& id) {
  const auto found = std::ranges::find(all, id, &Named::id);
  return found == all.end() ? nullptr : &*found;
}

}  // namespace firstpick::checks
