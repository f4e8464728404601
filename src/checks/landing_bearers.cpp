// More than two bearers under a stiff piece leave open what each carries: a caution.
//
//   R_1 = W (1 - r), R_2 = W r        two parallel bearers, r: centre of gravity between them, from the first
//
// Source   statics; that a piece goes on two bearers, not three: common practice, from memory.
// Passes on flat ground and on one or two; whether the piece stands on them is landing-stability.

#include <fmt/format.h>

#include "checks/load_centre_of.hpp"
#include "checks/rule.hpp"
#include "demands/set_down.hpp"

namespace firstpick::checks {

namespace {

void record_shares(const StageFacts& facts, Trace& trace) {
  const auto centre = load_centre_of(facts);
  if (!is_assessed(centre) || !is_assessed(facts.up_after)) return;
  const auto standing = demands::set_down(facts.body, facts.stage.landing->bearers, std::get<Position>(centre),
                                          std::get<Direction>(facts.up_after));
  const auto* found = std::get_if<demands::Standing>(&standing);
  if (!found || !found->shares) return;
  for (std::size_t i = 0; i < 2; ++i)
    trace.add([&] {
      return Step{.words = fmt::format("share of the weight on bearer {}", i + 1),
                  .result = {fmt::format("r_bearer_{}", i + 1), (*found->shares)[i], "1"},
                  .clause = "statics"};
    });
}

}  // namespace

std::vector<Finding> landing_bearers(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "landing-bearers";
  const std::string& mark = facts.plan.piece.mark;
  if (!facts.stage.landing) return {passed(id, mark)};
  const std::size_t count = facts.stage.landing->bearers.size();
  if (count == 2) record_shares(facts, trace);
  if (count <= 2) return {passed(id, mark)};
  return {noted(id, mark, fmt::format("{} bearers: what each carries is not determined, a high or a soft one changes it; "
                                      "two are", count))};
}

}  // namespace firstpick::checks
