// Lines of the terminal with two rule sets beside each other.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>

#include <fmt/format.h>

#include "checks/report.hpp"
#include "output/terminal.hpp"
#include "output/text_layout.hpp"

namespace firstpick::output {

// Two rule sets beside each other: a label, a value of each, and the second over the first.
class SideBySide {
 public:
  SideBySide(const checks::Report& first, const checks::Report& other, const TerminalStyle& style)
      : first_(first), other_(other), style_(style),
        value_columns_(std::clamp<std::size_t>(std::max(columns_of(first_name()), columns_of(other_name())), 12, 20)) {}

  const checks::Report& first() const { return first_; }
  const checks::Report& other() const { return other_; }
  std::string first_name() const { return printable(first_.rules); }
  std::string other_name() const { return printable(other_.rules); }
  std::size_t width() const { return style_.width; }
  bool tells_all() const { return style_.all_findings; }
  UnitSystem units() const { return first_.units; }

  // Values that do not fit in their columns go below, in words: a number cut short would be another one.
  std::string row(std::string_view label, const std::string& one, const std::string& two, const std::string& change) const {
    const std::size_t label_columns = width() - 2 - 2 * (value_columns_ + 1) - (change_columns + 1);
    if (columns_of(one) > value_columns_ || columns_of(two) > value_columns_ || columns_of(change) > change_columns)
      return paragraph("  ", "      ",
                       fmt::format("{}: {} by {}, {} by {}{}", label, one, first_name(), two, other_name(),
                                   change.empty() ? "" : ", " + change), width());
    const std::string values = fmt::format(" {} {} {}", padded_left(one, value_columns_), padded_left(two, value_columns_),
                                           padded_left(change, change_columns));
    if (columns_of(label) <= label_columns) return trimmed(fmt::format("  {}{}", padded(label, label_columns), values));
    return paragraph("  ", "    ", label, width()) + trimmed(fmt::format("  {}{}", padded("", label_columns), values));
  }
  std::string header(std::string_view label) const {
    const auto short_enough = [&](const std::string& name) { return columns_of(name) <= value_columns_; };
    const bool fits = short_enough(first_name()) && short_enough(other_name());
    return fits ? row(label, first_name(), other_name(), "change")
                : row(label, "the first", "the other", "change") +
                      paragraph("  ", "    ", fmt::format("the first is {}, the other {}", first_name(), other_name()), width());
  }

 private:
  static constexpr std::size_t change_columns = 8;

  static std::string trimmed(std::string line) {
    line.erase(line.find_last_not_of(' ') + 1);
    return line + "\n";
  }

  const checks::Report& first_;
  const checks::Report& other_;
  const TerminalStyle& style_;
  std::size_t value_columns_;
};

}  // namespace firstpick::output
