// The board of a shift for a terminal and for spreadsheets and programs. One line of the shift file is one
// paragraph; each piece is a row of the CSV. A prediction is always called one.
#pragma once

#include <string>
#include <vector>

#include "board/board.hpp"
#include "output/terminal.hpp"
#include "record/diagnostic.hpp"

namespace firstpick::output {

std::string board_text(const board::Board& board, const TerminalStyle& style);
std::string board_csv(const board::Board& board);
// Who signed the plan, or that it has changed since; empty where nobody has, or where the reason says it.
std::string signature_of(const board::Judged& judged);
std::string board_json(const board::Board& board);
std::string board_faults_json(const std::string& file, const std::vector<Diagnostic>& faults);

}  // namespace firstpick::output
