#include "card/table_columns.hpp"

#include <algorithm>

#include "card/typeset.hpp"

namespace firstpick::card {

ColumnWidths widths_of(const std::vector<std::vector<std::string>>& rows) {
  constexpr double measured = 10.0;
  ColumnWidths widths;
  if (rows.empty()) return widths;
  widths.whole.resize(rows.front().size()), widths.word.resize(rows.front().size());
  const auto width = [&](const std::string& text, bool bold) {
    return extent_of({.text = text, .size = measured, .bold = bold}, 10000.0).width / measured;
  };
  for (std::size_t row = 0; row < rows.size(); ++row)
    for (std::size_t i = 0; i < rows[row].size() && i < widths.whole.size(); ++i) {
      const std::string& cell = rows[row][i];
      widths.whole[i] = std::max(widths.whole[i], width(cell, row == 0));
      for (std::size_t at = 0; at < cell.size();) {
        const std::size_t end = std::min(cell.find(' ', at), cell.size());
        widths.word[i] = std::max(widths.word[i], width(cell.substr(at, end - at), row == 0));
        at = end + 1;
      }
    }
  return widths;
}

std::vector<double> columns_for(const ColumnWidths& table, double size, double inner) {
  constexpr double apart = 3.0, loose = 1.08;
  const double longest_word = 0.12 * inner;
  std::vector<double> widths(table.whole.size());
  double sum = 0.0;
  for (double lines = 1.0; lines <= 6.0; lines += 0.25) {
    sum = 0.0;
    for (std::size_t i = 0; i < widths.size(); ++i) {
      const double word = std::min(size * table.word[i], longest_word) + 1.0;
      widths[i] = apart + std::max(word, loose * size * table.whole[i] / lines);
      sum += widths[i];
    }
    if (sum <= inner) break;
  }
  for (double& width : widths) width *= inner / sum;
  return widths;
}

}  // namespace firstpick::card
