// firstpick sheet: the calculation, line by line, for an engineer with a calculator.
#pragma once

#include <string>

#include "tables/tables.hpp"

namespace firstpick {

struct SheetCommand {
  std::string file, rules, output;
  bool all = false;
};

// Exit status 0 GO, 1 NO-GO, 3 HOLD of the plan; 2 the input or the call is wrong, or the sheet could not be written.
int sheet_command(const SheetCommand& command, const tables::Tables& tables, const std::string& text);

}  // namespace firstpick
