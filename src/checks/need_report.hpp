// What strength a plan needs, before anyone lays it out.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "checks/needed_strength.hpp"
#include "checks/report.hpp"

namespace firstpick::checks {

struct NeedIfChanged {
  std::string change;              // "legs 25 % longer"
  std::optional<Stress> strength;  // to print; absent: no strength suffices, or the piece has no place for the inserts
  std::string why_not;             // where absent
};

struct StageNeedReport {
  StageNeed need;
  bool requirement_stated = true;  // by the drawing; else the rule set's least stands in
  std::vector<NeedIfChanged> changes;
};

struct NeedReport {
  std::string file, mark, title, revision, fingerprint, rules;
  UnitSystem units = UnitSystem::si;
  std::vector<StageNeedReport> stages;
};

}  // namespace firstpick::checks
