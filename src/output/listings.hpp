// `firstpick tables` and `firstpick rules`: every number with its source, every rule with what it guards.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "record/source.hpp"

namespace firstpick::output {

// Entries whose id, meaning or source holds `filter` (empty: all); with `unconfirmed_only` those from memory that
// nobody has confirmed.
std::string tables_text(const std::vector<Source>& entries, std::string_view filter, bool unconfirmed_only,
                        std::size_t width);
std::string tables_json(const std::vector<Source>& entries, std::string_view filter, bool unconfirmed_only);

struct RuleSetLine {
  std::string id, title;
  std::vector<std::string> mandatory;  // rule ids
};
std::string rules_text(const std::vector<RuleSetLine>& sets, std::string_view filter, std::size_t width);
std::string rules_json(const std::vector<RuleSetLine>& sets, std::string_view filter);

}  // namespace firstpick::output
