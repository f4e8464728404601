// The ways a headed insert fails, and one of them held against one demand.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include "checks/compare.hpp"
#include "units/quantity.hpp"

namespace firstpick::checks {

enum class Mode { steel_tension, breakout, pullout, side_blowout, steel_shear, edge_breakout, pryout };
inline constexpr std::array all_modes = {Mode::steel_tension, Mode::breakout,    Mode::pullout,
                                         Mode::side_blowout,  Mode::steel_shear, Mode::edge_breakout,
                                         Mode::pryout};
inline bool in_tension(Mode mode) {  // else in shear
  return mode == Mode::steel_tension || mode == Mode::breakout || mode == Mode::pullout ||
         mode == Mode::side_blowout;
}

struct ModeCheck {
  Comparison comparison;  // of the worst of: alone, each group or row the insert belongs to
  std::optional<Force> demand, nominal;
  bool applies = true;                // false: this failure cannot occur here (a pass that says so)
  std::vector<std::size_t> together;  // the group or row that governs; empty: the insert alone
};

// What inserts hold before the safety factor. Empty: this failure does not occur.
using NominalForce = Outcome<std::optional<Resistance<Force>>>;
NominalForce where_it_occurs(const Outcome<Resistance<Force>>& nominal);

// `demand` of the inserts `together`, or of one alone, against what they hold behind `factor`.
ModeCheck judged(Force demand, const NominalForce& nominal, double factor,
                 std::vector<std::size_t> together = {});

// The mode cannot be evaluated at all, whatever the demand.
ModeCheck missing_mode(const NotAssessed& gap);

// Worse to the right: missing before anything that passed or failed, then by utilization.
bool less_severe(const ModeCheck& a, const ModeCheck& b);
void keep_worse(ModeCheck& worst, const ModeCheck& candidate);

}  // namespace firstpick::checks
