// Has the wording of the board changed? The demo shift in every form, byte for byte, at 07:45 of its morning.
// Hashes change with every byte of their files and are kept out: 0 stands for each digit.

#include <cctype>

#include "output/board_html.hpp"
#include "output/board_text.hpp"
#include "support/shift_boards.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

std::string without_hashes(std::string text) {
  const auto is_digit = [](char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f'); };
  for (std::size_t from = 0; from < text.size();) {
    std::size_t to = from;
    while (to < text.size() && is_digit(text[to])) ++to;
    if (to - from == 64) text.replace(from, 64, 64, '0');
    from = to + 1;
  }
  return text;
}

}  // namespace

TEST_CASE("the board of the demo shift is as it was, for terminal, programs, spreadsheets and the screen") {
  const board::Board board = demo_board();
  CHECK(output::board_text(board, {}) == contents_of("tests/golden/shift.board.txt"));
  CHECK(without_hashes(output::board_json(board)) ==
        without_hashes(contents_of("tests/golden/shift.board.json")));
  CHECK(without_hashes(output::board_csv(board)) ==
        without_hashes(contents_of("tests/golden/shift.board.csv")));
  CHECK(output::board_html(board) == contents_of("tests/golden/shift.board.html"));
}
