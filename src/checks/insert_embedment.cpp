// The head of the insert lies inside the concrete: the piece is thicker behind the insert than it is deep.
//
//   h_ef <= thickness of the concrete behind the insert
//
// Source   geometry (resistances/embedment.cpp). Nothing is said about cover: the drawing and its standard say that.
// Absent   no embedment in the plan: HOLD.

#include <fmt/format.h>

#include "checks/rule.hpp"
#include "resistances/embedment.hpp"

namespace firstpick::checks {

std::vector<Finding> insert_embedment(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "insert-embedment";
  std::vector<Finding> findings;
  findings.reserve(facts.plan.inserts.size());
  const UnitSystem units = facts.plan.piece.units;
  for (std::size_t i = 0; i < facts.plan.inserts.size(); ++i) {
    const plan::Insert& insert = facts.plan.inserts[i];
    if (insert.kind != "headed") continue;
    const auto room = resistances::embedment_room(insert, facts.body.sites.at(i), facts.rules.headed, trace);
    Finding finding = compared<Length>(id, insert.id, resistances::embedment(insert), room, 1.0, "geometry");
    if (finding.result == Result::fail) {
      finding.text = fmt::format("insert {} is {} deep, the concrete behind it is {} thick", insert.id,
                                 firstpick::print(*insert.embedment, units, Rounding::up),
                                 firstpick::print(std::get<Resistance<Length>>(room).value, units, Rounding::down));
      finding.remedy = "a shorter insert, or another place for it";
    }
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace firstpick::checks
