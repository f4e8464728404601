#include "checks/mode_table.hpp"

#include <vector>

#include "checks/insert_modes.hpp"
#include "checks/mode_factor.hpp"
#include "checks/modes_alone.hpp"
#include "checks/modes_together.hpp"

namespace firstpick::checks {

namespace {

using Situations = std::vector<InsertSituation>;

// The next insert of the next mode, alone in each situation.
void add_alone(Mode mode, const StageFacts& facts, const Situations& situations, std::size_t insert,
               ModeTable& table) {
  if (const NotAssessed* gap = gap_in(mode, facts, insert)) {
    table.checks.insert(table.checks.end(), situations.size(), missing_mode(*gap));
    return;
  }
  const double factor = mode_factor(mode, facts, insert);
  const std::vector<NominalForce> strengths = strengths_alone(mode, facts, situations, insert);
  for (std::size_t s = 0; s < situations.size(); ++s)
    table.checks.push_back(judged(demand_alone(mode, situations[s], insert), strengths[s], factor));
}

// Each group and row once in each situation, for all its inserts that take part.
void check_sets(Mode mode, const StageFacts& facts, const Situations& situations, ModeTable& table) {
  if (!is_assessed(facts.formula_strength)) return;  // each insert alone says so already
  Trace silent;
  for (std::size_t set = 0; set < number_of_sets(mode, facts); ++set) {
    if (inserts_of_set(mode, facts, set).size() < 2) continue;
    for (std::size_t s = 0; s < situations.size(); ++s) {
      const LoadedInserts together = taking_part(mode, facts, situations[s], set);
      if (!together.act_together()) continue;
      const ModeCheck check = check_together(mode, facts, situations[s], set, together, silent);
      for (const std::size_t insert : together.indices) keep_worse(table.at(s, insert, mode), check);
    }
  }
}

}  // namespace

ModeTable mode_table(const StageFacts& facts) {
  const auto* situations = std::get_if<Situations>(&facts.insert_situations);
  if (!situations) return {};
  ModeTable table{facts.plan.inserts.size(), situations->size(), {}};
  table.checks.reserve(all_modes.size() * table.inserts * table.situations);
  for (const Mode mode : all_modes) {
    for (std::size_t insert = 0; insert < table.inserts; ++insert)
      add_alone(mode, facts, *situations, insert, table);
    check_sets(mode, facts, *situations, table);
  }
  return table;
}

}  // namespace firstpick::checks
