// A loop ends inside the concrete, and a loop of strand only in a member deep enough for what was tested.
//
//   embedment <= thickness of the concrete behind the loop
//   strand: thickness >= h_least
//
// Source   geometry; h_least: no national guidance on loops of strand in shallower members (tables/loops.toml).
// Absent   embedment: HOLD. A shallower member: HOLD; with engineers_document, the engineer's own design: a note.

#include "checks/loop_pull.hpp"
#include "checks/rule.hpp"
#include "checks/stated_text.hpp"
#include "resistances/embedment.hpp"

namespace firstpick::checks {

namespace {

Finding shallow_member(std::string_view id, const plan::Insert& insert, Length thickness, Length least, UnitSystem units) {
  const std::string text =
      fmt::format("the concrete behind loop {} is {} thick; no guidance exists for loops of strand in less than {}",
                  insert.id, firstpick::print(thickness, units, Rounding::down), firstpick::print(least, units, Rounding::up));
  if (is_stated(insert.engineers_document))
    return noted(id, insert.id, text + ": the engineer's document " + insert.engineers_document + " stands for it");
  return missing(id, insert.id, text, "the engineer's own design or test: [[insert]] engineers_document = \"...\"");
}

}  // namespace

std::vector<Finding> loop_depth(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "loop-depth";
  const UnitSystem units = facts.plan.piece.units;
  return for_each_loop(facts, id, trace, [&](std::size_t i) {
    const plan::Insert& insert = facts.plan.inserts[i];
    const piece::InsertSite& site = facts.body.sites.at(i);
    const auto room = resistances::embedment_room(insert, site, facts.rules.headed, trace);
    Finding finding = compared<Length>(id, insert.id, resistances::embedment(insert), room, 1.0, "geometry");
    if (finding.result == Result::fail) {
      finding.text = fmt::format("loop {} is {} deep, the concrete behind it is {} thick", insert.id,
                                 firstpick::print(*insert.embedment, units, Rounding::up),
                                 firstpick::print(site.thickness, units, Rounding::down));
      finding.remedy = "a shorter loop, or another place for it";
    }
    if (finding.result != Result::pass || insert.kind != "loop-strand") return finding;
    if (!facts.tables.loops) return missing(id, insert.id, "the table of loops is not there", "tables/loops.toml");
    const auto& least = facts.tables.loops->member_depth;
    trace.add([&] {
      return Step{.words = "depth of a member below which no guidance on loops of strand exists",
                  .result = {"h_least", in(mm, least.value), "mm"},
                  .clause = least.source.locator,
                  .sources = {least.source}};
    });
    if (!(site.thickness >= least.value)) return shallow_member(id, insert, site.thickness, least.value, units);
    return finding;
  });
}

}  // namespace firstpick::checks
