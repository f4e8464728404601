// How the parts of one rigging hang together: hooks, beams, sheaves and legs.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

#include "plan/fields.hpp"
#include "plan/plan.hpp"

namespace firstpick::plan {

// A beam or a sheave: beams first, as the plan lists them, then sheaves. Where the name is no such part: none.
struct CarrierEnd {
  std::size_t carrier = 0;
  Position at;  // in the axes of the carrier
};
std::optional<CarrierEnd> carrier_end(const Rigging& rigging, std::string_view name);
const Hook* hook_named(const Rigging& rigging, std::string_view name);

// The sheave at the hook of an equalised group: "over A1 and A2".
inline std::string sheave_at_hook(const std::vector<Placed<std::string>>& group) {
  return "over " + group.front().value + " and " + group.back().value;
}

// "sheave", "link"
inline std::string_view kind_of(const Sheave& sheave) { return sheave.rolls ? "sheave" : "link"; }

bool has_parts(const Rigging& rigging);  // hooks with names, beams or sheaves

// Parts that belong to another rigging, hang on nothing or in a circle, or carry nothing.
void check_tree(const Rigging& rigging, Reading& reading);

}  // namespace firstpick::plan
