// The ways a headed insert fails, and the checks of them for every situation of a stage.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include "checks/compare.hpp"
#include "units/quantity.hpp"

namespace firstpick::checks {

enum class Mode { steel_tension, breakout, pullout, side_blowout, steel_shear, edge_breakout, pryout };
inline constexpr std::array all_modes = {Mode::steel_tension, Mode::breakout,      Mode::pullout, Mode::side_blowout,
                                         Mode::steel_shear,   Mode::edge_breakout, Mode::pryout};
bool in_tension(Mode mode);  // else in shear

struct ModeCheck {
  Comparison comparison;                // of the worst of: alone, each group or row the insert belongs to
  std::optional<Force> demand, nominal;
  bool applies = true;                  // false: this failure cannot occur here (a pass that says so)
  std::vector<std::size_t> together;    // the group or row that governs; empty: the insert alone
};

// Every mode of every headed insert in every situation, computed once for a stage.
struct ModeTable {
  std::size_t inserts = 0;
  std::vector<ModeCheck> checks;        // by situation, insert, mode
  const ModeCheck& at(std::size_t situation, std::size_t insert, Mode mode) const;
};

}  // namespace firstpick::checks
