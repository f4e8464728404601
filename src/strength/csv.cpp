#include "strength/csv.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

#include <fmt/format.h>

#include "record/utf8.hpp"

namespace firstpick::strength {

namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

// The cells of one line.
class LineReader {
 public:
  LineReader(std::string_view line, std::size_t number, std::size_t first_column, char separator)
      : line_(line), number_(number), first_column_(first_column), separator_(separator) {}

  // The cells, or the column of a quote that does not end as it must.
  std::variant<std::vector<Cell>, std::size_t> cells() {
    std::vector<Cell> all;
    for (std::size_t at = 0;;) {
      while (at < line_.size() && line_[at] == ' ') ++at;
      const std::size_t begin = at;
      std::optional<std::string> text = at < line_.size() && line_[at] == '"' ? quoted(at) : bare(at);
      if (!text) return first_column_ + begin;
      all.push_back({std::move(*text), {number_, first_column_ + begin}});
      if (at >= line_.size()) return all;
      ++at;  // the separator
    }
  }

 private:
  std::optional<std::string> quoted(std::size_t& at) {
    std::string text;
    for (++at; at < line_.size(); ++at) {
      if (line_[at] != '"') {
        text += line_[at];
      } else if (at + 1 < line_.size() && line_[at + 1] == '"') {
        text += line_[++at];
      } else {
        ++at;
        while (at < line_.size() && line_[at] == ' ') ++at;
        if (at < line_.size() && line_[at] != separator_) return {};
        return text;
      }
    }
    return {};
  }

  std::optional<std::string> bare(std::size_t& at) {
    const std::size_t end = std::min(line_.find(separator_, at), line_.size());
    std::string_view text = line_.substr(at, end - at);
    while (text.ends_with(' ')) text.remove_suffix(1);
    at = end;
    return std::string(text);
  }

  std::string_view line_;
  std::size_t number_, first_column_;
  char separator_;
};

std::optional<std::size_t> unreadable_byte(std::string_view line) {
  for (std::size_t at = 0; at < line.size();) {
    const Utf8 character = utf8_at(line, at);
    if (!character.valid || is_unprintable(character.code)) return at;
    at += character.length;
  }
  return {};
}

Column column_of(const Cell& cell) {
  Column column{cell.text, {}, cell.place};
  const std::size_t open = cell.text.find('[');
  if (open == std::string::npos || !cell.text.ends_with(']')) return column;
  column.unit = cell.text.substr(open + 1, cell.text.size() - open - 2);
  column.name = cell.text.substr(0, open);
  while (column.name.ends_with(' ')) column.name.pop_back();
  return column;
}

struct Reader {
  const std::string& file;
  CsvTable table{};
  std::vector<Diagnostic> faults{};
  char separator = ',';
  bool has_header = false;

  void fault(Place place, std::string what, std::string help = {}) {
    if (faults.size() < most_faults) faults.push_back({file, place, std::move(what), std::move(help)});
  }

  void line(std::string_view text, std::size_t number) {
    std::size_t first_column = 1;
    if (number == 1 && text.starts_with(byte_order_mark)) {
      text.remove_prefix(byte_order_mark.size());
      first_column += byte_order_mark.size();
    }
    if (text.ends_with('\r')) text.remove_suffix(1);
    if (const auto at = unreadable_byte(text))
      return text[*at] == '\t' ? fault({number, first_column + *at}, "a tab parts no cells here", "part them by commas or semicolons")
                              : fault({number, first_column + *at}, "this byte is no visible text", "write the file as plain UTF-8");
    if (text.find_first_not_of(' ') == std::string_view::npos || text.starts_with('#')) return;
    if (!has_header && text.find(';') != std::string_view::npos) separator = ';';

    auto read = LineReader(text, number, first_column, separator).cells();
    if (const auto* column = std::get_if<std::size_t>(&read))
      return fault({number, *column}, "the quote of this cell does not end at the end of the cell");
    auto& cells = std::get<std::vector<Cell>>(read);
    if (!has_header) {
      has_header = true;
      for (const Cell& cell : cells) table.header.push_back(column_of(cell));
    } else if (cells.size() != table.header.size()) {
      fault({number, first_column}, fmt::format("this row has {} cells, the header has {}", cells.size(),
                                                table.header.size()));
    } else {
      table.rows.push_back(std::move(cells));
    }
  }
};

}  // namespace

std::variant<CsvTable, std::vector<Diagnostic>> read_csv(const std::string& file, std::string_view text) {
  Reader reader{.file = file};
  if (text.size() > largest_csv_file) {
    reader.fault({}, fmt::format("the file has more than {} bytes", largest_csv_file));
    return reader.faults;
  }
  for (std::size_t number = 1; !text.empty(); ++number) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    if (reader.table.rows.size() >= most_csv_rows) {
      reader.fault({number, 1}, fmt::format("the file has more than {} rows", most_csv_rows));
      break;
    }
    reader.line(text.substr(0, end), number);
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  if (!reader.has_header && reader.faults.empty()) reader.fault({}, "the file is empty: a header was expected");
  if (reader.has_header && reader.table.rows.empty() && reader.faults.empty())
    reader.fault({}, "the file has a header and no row");
  if (!reader.faults.empty()) return reader.faults;
  reader.table.separator = reader.separator;
  return std::move(reader.table);
}

std::optional<double> number_in(const Cell& cell) {
  const std::string_view text = cell.text;
  double number = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(number)) return {};
  return number;
}

}  // namespace firstpick::strength
