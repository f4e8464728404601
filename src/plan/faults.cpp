#include "plan/faults.hpp"

#include <algorithm>
#include <utility>

#include "record/utf8.hpp"

namespace firstpick::plan {
namespace {

constexpr std::size_t longest_shown = 60;  // characters of a name out of the plan

}  // namespace

Faults::Faults(std::string file, std::string_view text) : file_(std::move(file)) {
  while (true) {
    const std::size_t end = text.find('\n');
    const std::string_view line = text.substr(0, end);
    lines_.push_back({line, std::ranges::all_of(line, [](char c) { return (c & 0x80) == 0; })});
    if (end == std::string_view::npos) return;
    text.remove_prefix(end + 1);
  }
}

Place Faults::place_of(const toml::source_region& region) const {
  const std::size_t line = region.begin.line, column = region.begin.column;
  if (line == 0 || line > lines_.size()) return {};
  const Line& written = lines_[line - 1];
  if (written.ascii) return {line, column};

  // toml++ counts characters and does not count the mark in front of UTF-8 text; a Place counts bytes.
  std::size_t at = line == 1 && written.text.starts_with("\xEF\xBB\xBF") ? 3 : 0;
  for (std::size_t i = 1; i < column && at < written.text.size(); ++i) at += utf8_at(written.text, at).length;
  return {line, at + 1};
}

void Faults::add(Place place, std::string what, std::string help, std::size_t length) {
  all_.push_back({file_, place, std::move(what), std::move(help), length});
}

void Faults::at(const toml::source_region& region, std::string what, std::string help) {
  const Place from = place_of(region);
  const Place to = place_of({region.end, region.end, nullptr});
  const bool one_line = from.line == to.line && to.column > from.column;
  add(from, std::move(what), std::move(help), one_line ? to.column - from.column : 1);
}

void Faults::inside(const toml::value<std::string>& string, std::size_t offset, std::string what,
                    std::string help) {
  const Place place = place_of(string.source());
  const bool known = place.line > 0 && place.column <= lines_[place.line - 1].text.size();
  const bool as_written =
      known && lines_[place.line - 1].text.substr(place.column).starts_with(string.get());  // after the quote
  if (!as_written) return at(string.source(), std::move(what), std::move(help));
  add({place.line, place.column + 1 + offset}, std::move(what), std::move(help));
}

std::vector<Diagnostic> Faults::in_order_of_place() const {
  std::vector<Diagnostic> ordered = all_;
  std::ranges::stable_sort(ordered, {}, [](const Diagnostic& fault) {
    return std::pair{fault.place.line, fault.place.column};
  });
  return ordered;
}

std::string in_quotes(std::string_view text) {
  std::size_t end = 0;
  for (std::size_t i = 0; i < longest_shown && end < text.size(); ++i) end += utf8_at(text, end).length;
  return "'" + printable(text.substr(0, end)) + (end < text.size() ? "..." : "") + "'";
}

std::string_view given(const toml::node& node) {
  switch (node.type()) {
    case toml::node_type::table: return "a table";
    case toml::node_type::array: return node.is_array_of_tables() ? "a list of tables" : "a list";
    case toml::node_type::string: return "a string";
    case toml::node_type::integer:
    case toml::node_type::floating_point: return "a bare number";
    case toml::node_type::boolean: return "true or false";
    case toml::node_type::date: return "a date without a time";
    case toml::node_type::time: return "a time without a date";
    case toml::node_type::date_time: return "a date and time";
    default: return "nothing";
  }
}

}  // namespace firstpick::plan
