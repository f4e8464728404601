// Comma-separated text of strangers (RFC 4180): a header, then rows, each cell with its place.
//
// No packaged reader keeps the column of a cell, and every fault here is told as file:line:column.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "record/diagnostic.hpp"
#include "units/quantity.hpp"

namespace firstpick::strength {

struct Cell {
  std::string text;  // without the spaces around it, and without its quotes
  Place place;
};

struct Column {
  std::string name, unit;  // "corner [degC]"
  Place place;
};

struct CsvTable {
  std::vector<Column> header;
  std::vector<std::vector<Cell>> rows;  // each as long as the header
  char separator = ',';
};

constexpr std::size_t largest_csv_file = 8U << 20;  // bytes
constexpr std::size_t most_csv_rows = 200000;

// Separated by commas, or by semicolons where the header has them. Empty lines and lines that begin with '#'
// count for nothing. Faults: no header, no row, a row of another length, a quote that does not end, a byte that
// is no text, a file or row count above the limits. At most `most_faults` are told.
constexpr std::size_t most_faults = 50;
std::variant<CsvTable, std::vector<Diagnostic>> read_csv(const std::string& file, std::string_view text);

// A finite number, point as decimal mark, nothing else in the cell.
std::optional<double> number_in(const Cell& cell);

}  // namespace firstpick::strength
