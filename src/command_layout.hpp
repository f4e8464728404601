// firstpick layout: where to pick, of all places that the plan allows.
#pragma once

#include <string>

#include "tables/tables.hpp"

namespace firstpick {

struct LayoutCommand {
  std::string file, rules, output;
  bool json = false;
  bool replace = false;          // the output may be the plan itself, or a file that is there
  bool tells_progress = false;   // stderr is a terminal
  std::size_t width = 80;
};

// Exit status of `firstpick check` on the plan told: 0 GO, 1 NO-GO, 3 HOLD; 2 the input or the call is wrong, or the plan could
// not be written.
int layout_command(const LayoutCommand& command, const tables::Tables& tables, const std::string& text);

}  // namespace firstpick
