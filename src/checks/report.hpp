// Everything a checked plan has to tell, before anyone lays it out. Output reads this and decides nothing.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "checks/finding.hpp"
#include "checks/sign_off_state.hpp"
#include "demands/hanging.hpp"
#include "loads/stage_load.hpp"
#include "plan/plan.hpp"
#include "record/source.hpp"
#include "record/trace.hpp"
#include "units/vector.hpp"

namespace firstpick::checks {

enum class Verdict { go, hold, no_go };  // worse to the right

std::string_view word_for(Verdict verdict);           // "GO", "HOLD", "NO-GO"
using plan::word_for;                                 // of a stage: "strip", "turn", ...

struct LegReport {
  std::string to;
  Force tension{};             // largest over all load sets and sharings
  Angle angle_from_horizontal{};
  std::string situation;
};

struct InsertReport {
  std::string id;
  Force tension{}, shear{};    // largest of each over all situations of what the insert factor multiplies
};

struct CraneReport {
  std::string id;
  std::optional<Force> hook;   // everything that hangs on it, in its worst situation; absent where not assessed
};

// One point of the rigging that lets go, and the survivor that is asked for most of what breaks it.
struct PointLoss {
  std::string lost;            // "A1", "A1 and A2" on one rope
  std::string survivor;
  std::string_view rule;       // that knows what breaks it
  std::optional<double> use;   // of what breaks it; absent: not found
  std::string why;             // then
  std::vector<LegReport> legs{};        // those that are left, as they pull at the worst moment
  std::optional<Angle> swing{};         // of the piece until it hangs on what is left; absent: it finds no rest
  std::string when{};                   // in a turn: "turned to 37.0 deg", where most is asked
};

// A turn, with the angles at which most is asked.
struct TurnReport {
  std::string how;                 // "about its edge", "off a tilting table", "between two hooks"
  Angle from{}, to{};
  Force pull{};                    // largest of the main hook on the piece, dynamic factor included
  Angle pull_at{};
  std::optional<Force> tail_pull;  // of the second hook
  Angle tail_at{};
  std::optional<Angle> balance;    // past it the hook is slack and the piece turns by itself
};

struct StageReport {
  plan::StageKind kind = plan::StageKind::strip;
  std::string rigging, crane;
  Verdict verdict = Verdict::hold;
  std::optional<loads::StageLoad> load;
  std::vector<CraneReport> cranes;
  std::optional<Force> hook;   // everything that hangs on the crane; absent where two cranes lift together
  std::optional<Force> pull_not_to_exceed;  // on the crane's scale while the form still holds; strip only
  std::optional<Angle> tilt;
  std::optional<TurnReport> turn;
  std::optional<demands::Hanging> hanging;  // the piece hanging free, legs in the order of the rigging
  std::vector<std::string> carriers;        // beams, then sheaves, in the order of `hanging`
  std::optional<Stress> required_strength;
  std::vector<LegReport> legs;
  std::vector<InsertReport> inserts;
  std::vector<PointLoss> losses;   // worst first
  std::vector<Finding> findings;   // in the order of the rule list
};

struct Report {
  std::string file, mark, title, revision, prepared_by, engineer;
  UnitSystem units = UnitSystem::si;
  std::string fingerprint;
  std::string rules, rules_title;
  Verdict verdict = Verdict::hold;

  Volume volume{};
  Mass mass{};                 // nominal density
  Position centre_of_gravity;

  std::optional<Stress> usable_strength, required_strength;  // required: the most that any stage asks
  std::string strength_basis;
  std::optional<plan::Timestamp> evidence_until;             // the plan's own limit on the test's age

  std::vector<StageReport> stages;
  std::vector<Source> unconfirmed;         // values from memory that took part, nobody has confirmed them
  std::vector<std::string> overridden;     // table entries replaced by the plant's own
  std::vector<std::string> choices;        // what the rule set chose, in words: the load that the factor multiplies, ...
  std::vector<std::string> cautions;
  std::vector<std::string> not_checked;    // what this version cannot check: a GO never implies it
  Trace trace;                             // steps, where asked for
  SignOffState sign_off;                   // of the file beside the plan
};

}  // namespace firstpick::checks
