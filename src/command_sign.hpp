// firstpick sign: the engineer's signature under a plan as it is now, written beside it.
#pragma once

#include <string>

#include "tables/tables.hpp"

namespace CLI {
class App;
}

namespace firstpick {

struct SignCommand {
  std::string file, rules, engineer, now;
  long long clock_seconds = 0;  // used where `now` is empty
};

// Its place on the command line; what is written there goes to `command`.
CLI::App* add_sign_command(CLI::App& app, SignCommand& command);

// Signs whatever the verdict is, and says it: exit status 0 GO, 1 NO-GO, 3 HOLD of the plan; 2 nothing was signed.
int sign_command(const SignCommand& command, const tables::Tables& tables, const std::string& text);

}  // namespace firstpick
