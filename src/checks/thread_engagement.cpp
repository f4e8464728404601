// A screw-in part sits deep enough in its thread.
//
//   thread_engagement >= r_t thread      thread: its diameter
//
// Source   DGUV Regel 101-001 4.5.4: 1.5 diameters (docs/rules/thread-engagement.md).
// Absent   thread or thread_engagement of a threaded insert: HOLD. Other inserts pass; where they state both they are held to it.

#include <fmt/format.h>

#include "checks/rule.hpp"

namespace firstpick::checks {

namespace {

Finding judge_thread(std::string_view id, const plan::Insert& insert, const StageFacts& facts, Trace& trace) {
  if (!insert.thread || !insert.thread_engagement)
    return missing(id, insert.id, "diameter of the thread, or how much of it is engaged, is not in the plan",
                   "[[insert]] thread = \"...\", thread_engagement = \"...\"");
  if (!facts.tables.plates) return missing(id, insert.id, "the table of threads is not there", "tables/plates.toml");
  const auto& r_t = facts.tables.plates->thread_engagement;
  const Length least = r_t.value * *insert.thread;
  trace.about([&] { return fmt::format("{}: {}, insert {}", plan::word_for(facts.stage.kind), id, insert.id); });
  trace.add([&] {
    return Step{.words = fmt::format("least thread engaged of insert {}", insert.id),
                .result = {"l_t", in(mm, least), "mm"},
                .formula = "r_t * d",
                .given = {{"r_t", r_t.value.value(), "1"}, {"d", in(mm, *insert.thread), "mm"}},
                .clause = r_t.source.locator,
                .sources = {r_t.source}};
  });
  Finding finding = compared<Length>(id, insert.id, Demand<Length>{least}, Resistance<Length>{*insert.thread_engagement}, 1.0,
                                     citation(r_t.source));
  if (finding.result == Result::fail) {
    const UnitSystem units = facts.plan.piece.units;
    finding.text = fmt::format("the thread of insert {} is engaged over {}, {} is asked for", insert.id,
                               firstpick::print(*insert.thread_engagement, units, Rounding::down),
                               firstpick::print(least, units, Rounding::up));
    finding.remedy = "a longer screw-in part, screwed home";
  }
  return finding;
}

}  // namespace

std::vector<Finding> thread_engagement(const StageFacts& facts, Trace& trace) {
  constexpr std::string_view id = "thread-engagement";
  std::vector<Finding> findings;
  for (const plan::Insert& insert : facts.plan.inserts) {
    const bool stated = insert.thread && insert.thread_engagement;
    if (insert.kind == "threaded" || stated) findings.push_back(judge_thread(id, insert, facts, trace));
    else findings.push_back(passed(id, insert.id));
  }
  return findings;
}

}  // namespace firstpick::checks
