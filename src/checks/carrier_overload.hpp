// What the rules of beams and sheaves share: the most that is asked of one, held against its plate.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "checks/finding.hpp"
#include "checks/stage_facts.hpp"

namespace firstpick::checks {

struct CarrierRule {
  std::string_view id;
  std::string_view kind;                  // "beam", "sheave", "link"
  std::string_view fails;                 // "hangs below", "pulls"
  Force (*asked_of)(const StageFacts& facts, const Situation& situation, std::size_t carrier);
  std::string_view rating_key = {};       // what to write for the rating; empty: `rated` of its own section
};

// `carrier`: as plan::carrier_end counts. Missing: no rating on the plate, situations not assessed, a force that
// is not a number.
Finding carrier_finding(const CarrierRule& rule, const StageFacts& facts, std::size_t carrier, const std::string& name,
                        const std::optional<Force>& rated, Trace& trace);

}  // namespace firstpick::checks
