// The ways in which the loads of a stage may come to the rigging.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "loads/applied_load.hpp"
#include "tables/rule_set.hpp"

namespace firstpick::loads {

// One way the stage may load the rigging: at rest, hanging free, or (strip) breaking free of the form.
struct LoadSet {
  std::string name;                 // "at rest", "hanging", "breaking free"
  std::vector<AppliedLoad> loads;   // dynamic factor included where the name says so
  Force total{};                    // their sum
};

inline constexpr std::string_view without_form_parts = " without form parts";  // in the name of a set
inline constexpr std::string_view breaking_free = "breaking free";  // the set in which the form still holds

struct LoadParts {
  AppliedLoad weight;                 // of the concrete, at its centre of gravity
  std::vector<AppliedLoad> attached;
  std::vector<AppliedLoad> adhesion;  // empty where nothing grips
  Ratio dynamic_factor{};
  std::vector<std::size_t> may_be_off{};  // indices of attached parts
};

// What legs carry: "hanging", and "breaking free" where something grips; with a floor also "least load", so many times the
// weights.
std::vector<LoadSet> moving_sets(const LoadParts& parts, std::optional<Ratio> floor = {});

// What the insert factor multiplies: "at rest" alone, or the moving sets; behind load factors where there are some, and
// then the names say so.
std::vector<LoadSet> insert_sets(const LoadParts& parts, tables::InsertLoad choice, std::optional<Ratio> floor = {},
                                 const std::optional<tables::LoadFactors>& factors = {});

}  // namespace firstpick::loads
