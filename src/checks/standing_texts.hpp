// What every output says whatever the plan: cautions, choices of the rule set in words, and what is not checked.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "plan/plan.hpp"
#include "tables/tables.hpp"

namespace firstpick::checks {

// Stands in every output; in a table that is cut apart, in every row.
inline constexpr std::string_view not_permission =
    "This is information, not permission: the engineer of record and local codes govern.";

// What to do when the form does not let go. Common practice: a magazine's answer on stuck panels and teaching slides that
// name no source, both second-hand; no regulation was read (docs/verdict.md).
inline constexpr std::string_view when_it_sticks =
    "If it sticks, stop: wedges, vibrate the form, one corner first, never jerk (common practice).";

std::vector<std::string> cautions_of(const tables::RuleSet& rules);
// What the plan leaves out and nothing holds it for: stages without wind_speed are judged in still air.
std::vector<std::string> cautions_of(const plan::Plan& plan);
// Where the plan states its own value instead of the table's: both numbers, so that nobody reads it as the table's.
std::vector<std::string> stated_instead(const plan::Plan& plan, const tables::RuleSet& rules, const tables::Tables& tables);
std::vector<std::string> choices_of(const tables::RuleSet& rules);
std::vector<std::string> strength_choices_of(const tables::RuleSet& rules);  // those of a strength report

// How far the bending of the piece is computed. none: a block, or by the engineer alone. as_cast: any model, hung as it was
// cast. with_bars: the same of a line that may crack. turned: a panel of one thickness, while it is turned and after, too.
enum class BendingChecked { none, as_cast, with_bars, turned };
std::vector<std::string> not_checked(BendingChecked bending);

}  // namespace firstpick::checks
