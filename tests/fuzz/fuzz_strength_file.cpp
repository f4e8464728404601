// Can any text crash the reader of strength files, or make it break a promise: what a part needs is there, or there
// is at least one fault, in the order of the file?
//
// Open-ended: built by -DFIRSTPICK_FUZZ=ON, run by hand from the top of the source tree, where the tables are.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "plan/strength_file.hpp"

namespace {

using namespace firstpick;

std::string broken_promise(const std::vector<Diagnostic>& faults) {
  if (faults.empty()) return "neither a strength file nor a fault";
  const auto place = [](const Diagnostic& fault) { return std::pair{fault.place.line, fault.place.column}; };
  if (!std::ranges::is_sorted(faults, {}, place)) return "faults out of order";
  for (const Diagnostic& fault : faults)
    if (fault.what.empty()) return "a fault that says nothing";
  return {};
}

std::string broken_promise(const plan::StrengthFile& file) {
  const auto leaves = [](const std::string& path) { return path.empty() || path[0] == '/' || path.starts_with(".."); };
  if (file.required && !(file.required->strength > Stress{} && is_finite(file.required->strength)))
    return "a required strength that is none";
  if (file.temperature_log && leaves(file.temperature_log->file)) return "a log outside the folder";
  if (file.calibration && leaves(file.calibration->file)) return "a calibration outside the folder";
  if (file.season && leaves(file.season->file)) return "a season outside the folder";
  if (file.calibration && (!file.calibration->function || !file.calibration->curve || !file.calibration->cured_at))
    return "a calibration that lacks what it needs";
  if (file.growth && !file.growth->strength_at_28_days) return "growth without its strength";
  return {};
}

std::string broken_promise_of_reading(std::string_view text) {
  static const auto tables = tables::read_tables("tables");
  if (!std::holds_alternative<tables::Tables>(tables))
    return "no tables: not run from the top of the source tree";
  static_cast<void>(plan::is_plan(text));
  const auto read = plan::read_strength_file("pour.toml", text, std::get<tables::Tables>(tables));
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&read)) return broken_promise(*faults);
  return broken_promise(std::get<plan::StrengthFile>(read));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string broken = broken_promise_of_reading({reinterpret_cast<const char*>(data), size});
  if (broken.empty()) return 0;
  std::fprintf(stderr, "%s\n", broken.c_str());
  std::abort();
}
