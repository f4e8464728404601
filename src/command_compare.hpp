// firstpick check with several rule sets: the same piece under each, and what parts them.
#pragma once

#include <string>
#include <vector>

#include "output/terminal.hpp"
#include "tables/tables.hpp"

namespace firstpick {

struct CompareCommand {
  std::vector<std::string> plans;
  std::string rules;  // as written: "us,eu"
  bool json = false;
  output::TerminalStyle style;
};

// Exit status as of check: the worst verdict of all rule sets on all plans; 2 the input or the call is wrong.
int compare_command(const CompareCommand& command, const tables::Tables& tables);

}  // namespace firstpick
