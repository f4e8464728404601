// Can any text crash the reader of shift files, or make it break a promise: what a part needs is there, or
// there is at least one fault, in the order of the file?
//
// Open-ended: built by -DFIRSTPICK_FUZZ=ON, run by hand from the top of the source tree, where the tables
// are.

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

#include "plan/shift_file.hpp"

namespace {

using namespace firstpick;

std::string broken_promise(const std::vector<Diagnostic>& faults) {
  if (faults.empty()) return "neither a shift file nor a fault";
  const auto place = [](const Diagnostic& fault) { return std::pair{fault.place.line, fault.place.column}; };
  if (!std::ranges::is_sorted(faults, {}, place)) return "faults out of order";
  for (const Diagnostic& fault : faults)
    if (fault.what.empty()) return "a fault that says nothing";
  return {};
}

std::string broken_promise(const plan::Shift& shift) {
  const auto leaves = [](const std::string& path) {
    return path.empty() || path[0] == '/' || path.starts_with("..");
  };
  if (shift.zone.name.empty() || shift.plant.empty()) return "a shift without its zone or plant";
  if (!(shift.ends.seconds > shift.starts.seconds)) return "a shift that ends before it starts";
  if (!(shift.stale_after > Duration{} && shift.stale_after <= 1.0 * hour)) return "a page that is never old";
  for (const plan::ShiftPiece& piece : shift.pieces) {
    if (leaves(piece.plan) || (!piece.pour.empty() && leaves(piece.pour))) return "a file outside the folder";
    if (piece.count < 1 || piece.count > 1000) return "no pieces, or too many";
    if (!piece.serials.empty() && piece.serials.size() != static_cast<std::size_t>(piece.count))
      return "serials lost";
  }
  return {};
}

std::string broken_promise_of_reading(std::string_view text) {
  static const auto tables = tables::read_tables("tables");
  if (!std::holds_alternative<tables::Tables>(tables))
    return "no tables: not run from the top of the source tree";
  const auto read = plan::read_shift_file("shift.toml", text, std::get<tables::Tables>(tables));
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&read)) return broken_promise(*faults);
  return broken_promise(std::get<plan::Shift>(read));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string broken = broken_promise_of_reading({reinterpret_cast<const char*>(data), size});
  if (broken.empty()) return 0;
  std::fprintf(stderr, "%s\n", broken.c_str());
  std::abort();
}
