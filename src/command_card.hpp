// firstpick card: the lift card of one stage, on one page.
#pragma once

#include <string>

#include "tables/tables.hpp"

namespace firstpick {

struct CardCommand {
  std::string file, rules, stage, paper, output;  // stage: empty if the plan has only one
};

// Exit status 0 GO, 1 NO-GO, 3 HOLD of the stage; 2 the input or the call is wrong, or the card could not be
// written.
int card_command(const CardCommand& command, const tables::Tables& tables, const std::string& text);

}  // namespace firstpick
