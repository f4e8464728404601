// Widths of the columns of a table, by what stands in them.
#pragma once

#include <string>
#include <vector>

namespace firstpick::card {

// Of each column of the table, in letters of one point: its longest cell in one line, its longest word.
struct ColumnWidths {
  std::vector<double> whole, word;
};

// First row: heads, in bold.
ColumnWidths widths_of(const std::vector<std::vector<std::string>>& rows);

// The widths at which the longest cells take as few lines as the page allows, words whole but for very long ones.
std::vector<double> columns_for(const ColumnWidths& table, double size, double inner);

}  // namespace firstpick::card
