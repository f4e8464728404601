// The checks of every way to fail, for every situation of a stage.
#pragma once

#include <cstddef>
#include <stdexcept>
#include <vector>

#include "checks/mode_check.hpp"

namespace firstpick::checks {

// Every mode of every headed insert in every situation, computed once for a stage.
struct ModeTable {
  std::size_t inserts = 0, situations = 0;
  std::vector<ModeCheck> checks;  // by mode, insert, situation

  const ModeCheck& at(std::size_t situation, std::size_t insert, Mode mode) const {
    return checks.at(index(situation, insert, mode));
  }
  ModeCheck& at(std::size_t situation, std::size_t insert, Mode mode) {
    return checks.at(index(situation, insert, mode));
  }

 private:
  std::size_t index(std::size_t situation, std::size_t insert, Mode mode) const {
    if (situation >= situations || insert >= inserts) throw std::out_of_range("no such check in this stage");
    return (static_cast<std::size_t>(mode) * inserts + insert) * situations + situation;
  }
};

}  // namespace firstpick::checks
