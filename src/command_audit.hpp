// firstpick audit: every plan of a folder, for a safety officer.
#pragma once

#include <cstddef>
#include <string>

#include "tables/tables.hpp"

namespace CLI {
class App;
}

namespace firstpick {

struct AuditCommand {
  std::string folder, rules, now, since, output;  // `output` by its ending: .txt, .csv, .json, .html; empty: standard output
  bool json = false, csv = false, html = false, colour = false, progress = false;
  std::size_t threads = 0, width = 80;            // no threads: as many as the machine has cores
  long long clock_seconds = 0, offset_seconds = 0;
};

// Its place on the command line; what is written there goes to `command`.
CLI::App* add_audit_command(CLI::App& app, AuditCommand& command);

// Exit status 0 every plan GO, 1 some NO-GO, 3 some HOLD, 2 something could not be read, which outranks all.
int audit_command(const AuditCommand& command, const tables::Tables& tables);

}  // namespace firstpick
