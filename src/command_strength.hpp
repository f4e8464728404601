// firstpick strength: has the concrete its strength, and what says so.
#pragma once

#include <cstddef>
#include <string>

#include "tables/tables.hpp"

namespace firstpick {

struct StrengthCommand {
  std::string file, rules, now, picture;  // now, picture: empty if not given
  bool json = false, steps = false, colour = false, interactive = false;
  std::size_t width = 80;
};

// Exit status 0 reached, 1 below, 3 HOLD, 2 the input or the call is wrong. `clock_seconds`: UTC, of the machine, with
// its zone; used where --now is not given.
int strength_command(const StrengthCommand& command, const tables::Tables& tables, const std::string& text,
                     long long clock_seconds, int clock_offset_minutes);

}  // namespace firstpick
