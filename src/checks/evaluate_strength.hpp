// One strength question to its report: every part evaluated, the needed strengths compared, the answer taken.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "checks/strength_report.hpp"
#include "plan/plan.hpp"
#include "plan/strength_file.hpp"
#include "strength/acceptance.hpp"
#include "strength/strength_curve.hpp"
#include "strength/temperature_log.hpp"
#include "tables/tables.hpp"

namespace firstpick::checks {

// The time of the question, as the clock of the wall and with its zone; one of them may be missing.
struct AskedAt {
  std::optional<plan::Timestamp> local, zoned;
};

struct StrengthQuestion {
  std::string file, mark;
  bool is_plan = false;
  UnitSystem units = UnitSystem::si;
  plan::Concrete concrete;          // its evidence and its required strengths
  struct Lift {
    std::string what;
    plan::Stage stage;
  };
  std::vector<Lift> lifts;          // each with the strength that its kind of stage needs
  std::optional<plan::TemperatureLogFile> log_file;
  std::optional<plan::Calibration> calibration;
  std::optional<plan::Growth> growth;
  std::optional<plan::Season> season;
  std::optional<strength::TemperatureLog> log;
  std::vector<strength::AgedStrength> aged;
  std::vector<strength::SeasonTest> season_tests;
  AskedAt asked_at;
};

// Specimens govern where they count. Where none were broken, maturity may, if the rule set takes it; specimens that were
// broken and do not count are HOLD. So are a test after the time of the question, specimens and log of different times
// of casting, and, if the rule set says so, a log in doubt. A lift whose time has passed is asked for now.
// reached: every lift has its strength. below: some lift has not, by evidence that counts. HOLD: all else.
StrengthReport evaluate_strength(const StrengthQuestion& question, const tables::RuleSet& rules,
                                 const tables::Tables& tables, std::string fingerprint);

}  // namespace firstpick::checks
