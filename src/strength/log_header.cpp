#include "strength/log_header.hpp"

#include <algorithm>
#include <optional>
#include <span>
#include <string_view>
#include <utility>

#include <fmt/format.h>

namespace firstpick::strength {

namespace {

using Pair = std::pair<std::string_view, std::string_view>;

constexpr const char* header_form = "write a header such as: time,corner [degC]";
constexpr std::string_view time_names[] = {"time", "datetime", "dateandtime", "timestamp"};
constexpr Pair scales[] = {{"degC", "degC"},   {"degF", "degF"},       {"K", "K"},           {"\u00B0C", "degC"},
                           {"\u00B0F", "degF"}, {"\u00B0 C", "degC"},  {"\u00B0 F", "degF"}, {"\u2103", "degC"},
                           {"\u2109", "degF"}};
// What people write for a scale and what may be another unit, or a note: asked, and not taken.
constexpr Pair meant[] = {{"c", "degC"},          {"degc", "degC"},       {"celsius", "degC"}, {"degcelsius", "degC"},
                          {"centigrade", "degC"}, {"f", "degF"},          {"degf", "degF"},    {"fahrenheit", "degF"},
                          {"degfahrenheit", "degF"}, {"k", "K"},          {"degk", "K"},       {"kelvin", "K"}};

std::string small_letters(std::string_view text) {
  std::string letters;
  for (const char c : text) {
    if (c >= 'A' && c <= 'Z') letters += static_cast<char>(c - 'A' + 'a');
    if (c >= 'a' && c <= 'z') letters += c;
  }
  return letters;
}

std::optional<std::string_view> second_of(std::span<const Pair> pairs, std::string_view first) {
  const auto found = std::ranges::find(pairs, first, &Pair::first);
  return found == pairs.end() ? std::nullopt : std::optional(found->second);
}

// A heading taken apart: what stands in brackets or parentheses at its end.
struct Heading {
  std::string name, inside;
};

Heading heading_of(const Column& column) {
  if (!column.unit.empty()) return {column.name, column.unit};
  const std::size_t open = column.name.rfind('(');
  if (open == std::string::npos || open == 0 || !column.name.ends_with(')')) return {column.name, {}};
  Heading heading{column.name.substr(0, open), column.name.substr(open + 1, column.name.size() - open - 2)};
  while (heading.name.ends_with(' ')) heading.name.pop_back();
  return heading;
}

// The scale that a heading without one seems to mean: for the question, never for a number.
std::optional<std::string_view> seems_to_mean(const Heading& heading) {
  if (!heading.inside.empty()) return second_of(meant, small_letters(heading.inside));
  const std::size_t last = heading.name.find_last_of(" _-.,/");
  return last == std::string::npos ? std::nullopt : second_of(meant, small_letters(heading.name.substr(last + 1)));
}

bool is_time(const Column& column) {
  return column.unit.empty() && std::ranges::find(time_names, small_letters(column.name)) != std::end(time_names);
}

std::variant<std::size_t, Diagnostic> time_column(const std::string& file, const CsvTable& table) {
  std::optional<std::size_t> found;
  for (std::size_t i = 0; i < table.header.size(); ++i) {
    const Column& column = table.header[i];
    if (small_letters(column.name) == "date")
      return Diagnostic{file, column.place, "the date stands in a column of its own",
                        "write date and time in one column 'time': 2026-03-02T16:40:00-05:00"};
    if (!is_time(column)) continue;
    if (found)
      return Diagnostic{file, column.place, fmt::format("'{}' and '{}' are both columns of times",
                                                        table.header[*found].name, column.name),
                        "leave the one with the zone, called 'time'"};
    found = i;
  }
  if (found) return *found;
  for (const Column& column : table.header) {
    const std::string letters = small_letters(column.name);
    for (const std::string_view part : {"time", "date", "stamp", "moment", "when", "clock"})
      if (letters.find(part) != std::string::npos)
        return Diagnostic{file, column.place,
                          fmt::format("the header has no column 'time', it has '{}'", column.name),
                          fmt::format("did you mean 'time'? {}", header_form)};
  }
  return Diagnostic{file, table.header.front().place, "the header has no column 'time'", header_form};
}

Diagnostic no_scale(const std::string& file, const Column& column, const Heading& heading) {
  Diagnostic fault{file, column.place,
                   fmt::format("the column '{}' does not say its scale: degC, degF or K",
                               column.unit.empty() ? column.name : fmt::format("{} [{}]", column.name, column.unit)),
                   header_form};
  if (const auto scale = seems_to_mean(heading)) {
    std::string name = heading.name;
    if (heading.inside.empty()) name = name.substr(0, name.find_last_of(" _-.,/"));
    fault.help = fmt::format("did you mean '{} [{}]'?", name, *scale);
  }
  return fault;
}

}  // namespace

std::variant<LogColumns, Diagnostic> log_columns(const std::string& file, const CsvTable& table,
                                                 const std::string& sensor) {
  const auto time = time_column(file, table);
  if (const auto* fault = std::get_if<Diagnostic>(&time)) return *fault;
  LogColumns columns{.time = std::get<std::size_t>(time), .sensor = {}, .beside = {}};
  bool found = false;
  std::vector<std::string> names;
  for (std::size_t i = 0; i < table.header.size(); ++i) {
    const Column& column = table.header[i];
    if (i == columns.time) continue;
    const Heading heading = heading_of(column);
    const auto scale = second_of(scales, heading.inside);
    const bool is_chosen = sensor.empty() || heading.name == sensor || column.name == sensor;
    if (!scale) {
      if (!is_chosen && !seems_to_mean(heading)) continue;  // humidity [%]
      return no_scale(file, column, heading);
    }
    names.push_back(heading.name);
    if (!is_chosen) {
      columns.beside.push_back({i, heading.name, std::string(*scale)});
      continue;
    }
    if (found)
      return Diagnostic{file, column.place,
                        sensor.empty() ? std::string("the log has several sensors, and none is chosen")
                                       : fmt::format("the log has '{}' twice", sensor),
                        "write sensor in [temperature_log]: that of the coldest place that matters"};
    found = true;
    columns.sensor = {i, heading.name, std::string(*scale)};
  }
  if (found) return columns;
  return Diagnostic{file, table.header.front().place,
                    sensor.empty() ? std::string("the header has no sensor")
                                   : fmt::format("the header has no sensor '{}'", sensor),
                    names.empty() ? header_form : suggestion(sensor, {names.begin(), names.end()})};
}

}  // namespace firstpick::strength
