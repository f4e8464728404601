// A calibration file: ages and strengths of one mix, each row one specimen or the mean of several.

#include <fmt/format.h>

#include "strength/csv.hpp"
#include "strength/strength_curve.hpp"
#include "units/parse.hpp"

namespace firstpick::strength {

namespace {

constexpr const char* aged_header = "write the header: age [h],strength [psi]";

template <class Q>
std::optional<std::size_t> column_named(const CsvTable& table, std::string_view name) {
  for (std::size_t i = 0; i < table.header.size(); ++i)
    if (table.header[i].name == name && unit_named<Q>(table.header[i].unit)) return i;
  return {};
}

template <class Q>
std::optional<Q> quantity_at(const CsvTable& table, const std::vector<Cell>& row, std::size_t column) {
  const auto number = number_in(row[column]);
  if (!number || !(*number > 0.0)) return {};
  return quantity_in<Q>(*number, table.header[column].unit);
}

}  // namespace

std::variant<std::vector<AgedStrength>, std::vector<Diagnostic>> read_aged_strengths(const std::string& file,
                                                                                     std::string_view text) {
  auto read = read_csv(file, text);
  if (auto* faults = std::get_if<std::vector<Diagnostic>>(&read)) return std::move(*faults);
  const CsvTable& table = std::get<CsvTable>(read);
  const auto age = column_named<Duration>(table, "age");
  const auto strength = column_named<Stress>(table, "strength");
  if (!age || !strength)
    return std::vector{Diagnostic{file, table.header.front().place,
                                  fmt::format("the header has no column '{}' with its unit", age ? "strength" : "age"),
                                  aged_header}};
  std::vector<AgedStrength> data;
  std::vector<Diagnostic> faults;
  for (const auto& row : table.rows) {
    const auto t = quantity_at<Duration>(table, row, *age);
    const auto S = quantity_at<Stress>(table, row, *strength);
    if (!t) faults.push_back({file, row[*age].place, fmt::format("'{}' is no age above zero", row[*age].text), {}});
    if (!S)
      faults.push_back(
          {file, row[*strength].place, fmt::format("'{}' is no strength above zero", row[*strength].text), {}});
    if (t && S) data.push_back({*t, *S});
    if (faults.size() >= most_faults) break;
  }
  if (!faults.empty()) return faults;
  return data;
}

}  // namespace firstpick::strength
