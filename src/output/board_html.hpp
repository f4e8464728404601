// The board as one page for a screen at the crane, and for paper. Nothing is loaded from anywhere; all text
// of files is escaped; style and script are allowed by their hashes alone, so that a script in a plan would
// not run even unescaped.
#pragma once

#include <string>
#include <vector>

#include "board/board.hpp"
#include "record/diagnostic.hpp"

namespace firstpick::output {

// The page reloads itself. It shows the time it was made; when that is longer ago than the shift file allows,
// or its age cannot be told, no verdict is shown but OLD.
std::string board_html(const board::Board& board);

// A page without any verdict: the shift file cannot be read. `made` in words.
std::string board_faults_html(const std::string& file, long long made_utc_s, const std::string& made,
                              const std::vector<Diagnostic>& faults);

// Text of strangers inside an element or a quoted attribute.
std::string html_text(std::string_view text);

// As a content security policy names an inline style or script.
std::string policy_hash(std::string_view text);

}  // namespace firstpick::output
