// Can any text crash the readers of CSV files, or make them break a promise: readings in rising order of time with
// temperatures that concrete has, ages and strengths above zero, or at least one fault that no terminal obeys?
//
// Open-ended: built by -DFIRSTPICK_FUZZ=ON, run by hand from the top of the source tree, where the tables are:
//   fuzz_temperature_log <a folder of your own> tests/fuzz/corpus/temperature_log

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "strength/acceptance.hpp"
#include "strength/maturity.hpp"
#include "strength/strength_curve.hpp"
#include "strength/temperature_log.hpp"

namespace {

using namespace firstpick;

std::string broken_promise(const std::vector<Diagnostic>& faults, std::string_view text) {
  const auto lines = static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')) + 1;
  for (const Diagnostic& fault : faults) {
    if (fault.what.empty()) return "a fault that says nothing";
    if (fault.place.line > lines) return "a fault behind the end of the file";
    const std::string shown = show(fault, text);
    if (std::ranges::any_of(shown, [](char c) { return (c >= 0 && c < ' ' && c != '\n') || c == '\x7f'; }))
      return "a message that a terminal would obey";
  }
  return {};
}

std::string broken_promise(const strength::TemperatureLog& log, const tables::MaturityConstants& limits) {
  if (log.readings.empty()) return "a log without readings";
  for (std::size_t i = 0; i < log.readings.size(); ++i) {
    const strength::Reading& reading = log.readings[i];
    if (!reading.at.has_offset) return "a reading without its zone";
    if (!(reading.temperature >= limits.coldest.value && reading.temperature <= limits.hottest.value))
      return "a temperature that no concrete has";
    if (i > 0 && !(reading.at.seconds > log.readings[i - 1].at.seconds)) return "readings out of order";
  }
  const strength::MaturityLaw law = strength::en_1992_1_1_law(limits);
  const Duration age = strength::equivalent_age(
      law, strength::curing_intervals(log, log.readings.front().at, log.readings.back().at.seconds));
  return is_finite(age) && age >= Duration{} ? "" : "an equivalent age that is no age";
}

std::string broken_promise_of_reading(std::string_view text) {
  static const auto read_tables = tables::read_tables("tables");
  const auto* tables = std::get_if<tables::Tables>(&read_tables);
  if (!tables || !tables->maturity) return "no tables: not run from the top of the source tree";

  const auto log = strength::read_temperature_log("log.csv", text, "", *tables->maturity);
  std::string broken;
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&log))
    broken = faults->empty() ? "neither a log nor a fault" : broken_promise(*faults, text);
  else
    broken = broken_promise(std::get<strength::TemperatureLog>(log), *tables->maturity);
  if (!broken.empty()) return broken;
  if (const auto* found = std::get_if<strength::TemperatureLog>(&log))
    if (broken = broken_promise(found->doubts, text); !broken.empty()) return broken;

  const auto aged = strength::read_aged_strengths("ages.csv", text);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&aged)) {
    if (faults->empty()) return "neither ages nor a fault";
    if (broken = broken_promise(*faults, text); !broken.empty()) return broken;
  } else {
    for (const auto& each : std::get<std::vector<strength::AgedStrength>>(aged))
      if (!(each.age > Duration{}) || !(each.strength > Stress{})) return "an age or strength that is none";
  }
  const auto season = strength::read_season("season.csv", text);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&season))
    return faults->empty() ? "neither tests nor a fault" : broken_promise(*faults, text);
  for (const auto& test : std::get<std::vector<strength::SeasonTest>>(season))
    if (test.results.empty()) return "a test without results";
  return {};
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string broken = broken_promise_of_reading({reinterpret_cast<const char*>(data), size});
  if (broken.empty()) return 0;
  std::fprintf(stderr, "%s\n", broken.c_str());
  std::abort();
}
