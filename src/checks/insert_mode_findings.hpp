// The findings of one way to fail, for every headed insert: the worst situation governs.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "checks/finding.hpp"
#include "checks/insert_modes.hpp"

namespace firstpick::checks {

struct ModeRule {
  std::string_view id;
  Mode mode;
  std::string_view clause;
  std::string_view fails;   // "the cone of concrete at {} breaks out": {} is the insert
  std::string_view remedy;
};

// `remedy`, with equalising gear before it where some legs of the situation carry everything.
std::string remedy_in(const InsertSituation& situation, std::string_view remedy);

// The governing situation of each insert is computed once more with `trace`, so that its steps are recorded.
std::vector<Finding> findings_of(const ModeRule& rule, const StageFacts& facts, Trace& trace);

}  // namespace firstpick::checks
