// Can any text crash the reader of plans, or make it break a promise: a plan that later stages can take for
// granted, or at least one fault, in the order of the file, with a message that no terminal obeys?
//
// Open-ended: built by -DFIRSTPICK_FUZZ=ON, run by hand from the top of the source tree, where the tables are:
//   fuzz_plan -dict=tests/fuzz/plan.dict <a folder of your own> tests/fuzz/corpus/plan

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

#include "plan/read_plan.hpp"
#include "plan/rigging_tree.hpp"

namespace {

using namespace firstpick;

// Which promise the faults of a plan break; empty if none.
std::string broken_promise(const std::vector<Diagnostic>& faults, std::string_view text) {
  if (faults.empty()) return "neither a plan nor a fault";
  const auto place = [](const Diagnostic& fault) { return std::pair{fault.place.line, fault.place.column}; };
  if (!std::ranges::is_sorted(faults, {}, place)) return "faults out of order";
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

// Which promise a plan breaks: what later stages take for granted.
std::string broken_promise(const plan::Plan& plan) {
  if (plan.piece.mark.empty()) return "a piece without a mark";
  if (plan.piece.solids.empty() || plan.piece.solids.front().cut) return "nothing to lift";
  if (!(plan.concrete.density > Density{}) || !is_finite(plan.concrete.density)) return "no density";
  if (plan.inserts.empty() || plan.riggings.empty() || plan.stages.empty()) return "no lift";
  const auto is_insert = [&](const std::string& id) {
    return std::ranges::count(plan.inserts, id, &plan::Insert::id) == 1;
  };
  for (const plan::Insert& insert : plan.inserts)
    if (insert.kind.empty() || !is_insert(insert.id)) return "an insert without a kind or a name of its own";
  for (const plan::Rigging& rigging : plan.riggings)
    for (const plan::Leg& leg : rigging.legs) {
      if (!is_insert(leg.to) && !plan::carrier_end(rigging, leg.to)) return "a leg to nothing";
      if (!leg.from.empty() && !plan::carrier_end(rigging, leg.from) && !plan::hook_named(rigging, leg.from))
        return "a leg that hangs on nothing";
      if (leg.length && !(*leg.length > Length{} && is_finite(*leg.length))) return "a leg without length";
    }
  for (const plan::Stage& stage : plan.stages) {
    if (std::ranges::count(plan.riggings, stage.rigging, &plan::Rigging::id) != 1)
      return "a stage without rigging";
    if (stage.dynamic_factor && !(*stage.dynamic_factor >= Ratio{1.0})) return "a dynamic factor below 1";
  }
  return {};
}

std::string broken_promise_of_reading(std::string_view text) {
  static const auto tables = tables::read_tables("tables");
  if (!std::holds_alternative<tables::Tables>(tables))
    return "no tables: not run from the top of the source tree";
  const auto read = plan::read_plan("plan.toml", text, std::get<tables::Tables>(tables));
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&read)) return broken_promise(*faults, text);
  return broken_promise(std::get<plan::Plan>(read));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string broken = broken_promise_of_reading({reinterpret_cast<const char*>(data), size});
  if (broken.empty()) return 0;
  std::fprintf(stderr, "%s\n", broken.c_str());
  std::abort();
}
