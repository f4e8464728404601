// The board of a shift on one page: shift file -> plans and pours it names, each read once -> verdicts ->
// Board.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "board/board.hpp"
#include "plan/plan.hpp"
#include "record/diagnostic.hpp"
#include "tables/tables.hpp"

namespace firstpick {

// The whole text of a file; nothing if it cannot be read.
using ReadFile = std::function<std::optional<std::string>(const std::string& path)>;

struct BoardQuestion {
  std::string file, text;  // of the shift file
  std::string rules;       // rule set, instead of those that the plans name; may be empty
  plan::Timestamp now;     // without an offset: local time of the zone of the shift
};

struct BoardAnswer {
  std::variant<board::Board, std::vector<Diagnostic>> board;
  std::vector<std::string>
      inputs;  // every file that was asked for, the shift file first: what a watch looks at
};

// A faulty shift file has no board. A faulty plan or pour is a line that is HOLD, and the board goes on.
// Same texts, rules, tables and time: same board.
BoardAnswer make_board(const BoardQuestion& question, const tables::Tables& tables,
                       const ReadFile& read_file);

}  // namespace firstpick
