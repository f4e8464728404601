// firstpick board: what the crane may take now, what waits and until when, what must not go.
#pragma once

#include <cstddef>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "tables/tables.hpp"

namespace firstpick {

struct BoardCommand {
  std::string file, rules, now, html, record, by;  // all but file: empty if not given
  bool json = false, csv = false, watch = false, colour = false;
  std::size_t width = 80;
};

// What the command takes from outside: the clock (UTC), the tables, and the folders they stand in, for the
// watch.
struct BoardSurroundings {
  std::function<long long()> clock_seconds;
  std::function<std::optional<tables::Tables>()> read_tables;  // faults of the tables are told by it
  std::vector<std::filesystem::path> table_folders;
};

// Exit status 0 every piece GO, 1 some NO-GO, 3 some HOLD, 2 the input or the call is wrong, or the record or
// the page could not be written. A watch ends with 0 when it is interrupted.
int board_command(const BoardCommand& command, const BoardSurroundings& surroundings);

}  // namespace firstpick
