#include "output/csv_cell.hpp"

#include <array>

#include "record/diagnostic.hpp"

namespace firstpick::output {

namespace {

constexpr std::array<std::string_view, 8> formula_starts = {
    "=", "+", "-", "@", "\xEF\xBC\x9D", "\xEF\xBC\x8B", "\xEF\xBC\x8D", "\xEF\xBC\xA0"};

bool looks_like_formula(std::string_view text) {
  while (!text.empty()) {
    if (text.starts_with(' '))
      text.remove_prefix(1);
    else if (text.starts_with("\xC2\xA0"))
      text.remove_prefix(2);
    else
      break;
  }
  for (const std::string_view start : formula_starts)
    if (text.starts_with(start)) return true;
  return false;
}

}  // namespace

std::string csv_cell(std::string_view text) {
  std::string shown = printable(text);
  if (looks_like_formula(shown)) shown.insert(0, "'");
  if (shown.find_first_of("\",;' ") == std::string::npos) return shown;
  std::string quoted = "\"";
  for (const char c : shown) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
  return quoted + "\"";
}

std::string csv_row(const std::vector<std::string>& cells) {
  std::string row;
  for (std::size_t i = 0; i < cells.size(); ++i) row += (i == 0 ? "" : ",") + csv_cell(cells[i]);
  return row + "\r\n";
}

}  // namespace firstpick::output
