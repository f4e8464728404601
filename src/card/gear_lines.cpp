// Everything the load hangs on, each once: rating, what it gets here, when it was last examined.

#include <algorithm>
#include <optional>

#include <fmt/format.h>

#include "card/content.hpp"
#include "card/picks.hpp"
#include "plan/rigging_tree.hpp"
#include "plan/words.hpp"
#include "units/print.hpp"

namespace firstpick::card {

namespace {

std::string rated(const std::optional<Force>& rating, UnitSystem units) {
  return rating ? "rated " + print(*rating, units, Rounding::down) : std::string("no rating stated");
}

std::string examined(const std::optional<plan::Day>& day) {
  return day ? "examined " + day->text : std::string("no examination stated");
}

// The most that any leg with this gear pulls, and how many there are.
struct Use {
  int legs = 0;
  std::optional<Force> most{Force{}};  // absent: of a leg it is not known
};

template <class Member>
Use use_of(const plan::Rigging& rigging, const checks::StageReport& stage, Member member,
           const std::string& id) {
  Use use;
  for (std::size_t leg = 0; leg < rigging.legs.size(); ++leg) {
    if (rigging.legs[leg].*member != id) continue;
    ++use.legs;
    const checks::LegReport* told = leg_report(stage, rigging, leg);
    if (!told) use.most.reset();
    if (use.most) use.most = std::max(*use.most, told->tension);
  }
  return use;
}

void add_cranes(const plan::Plan& plan, const checks::Report& report, std::size_t at,
                std::vector<std::string>& lines) {
  const checks::StageReport& stage = report.stages[at];
  for (const checks::CraneReport& lifting : stage.cranes) {
    const auto crane = std::ranges::find(plan.cranes, lifting.id, &plan::Crane::id);
    if (crane == plan.cranes.end()) {
      lines.push_back(fmt::format("crane {}: not described in the plan", inert_at_both_ends(lifting.id, 24)));
      continue;
    }
    std::string line =
        fmt::format("crane {}: {}", inert_at_both_ends(crane->id, 24), rated(crane->rated, report.units));
    if (lifting.hook && crane->rated && *crane->rated > Force{})
      line += fmt::format(", {} % of it used",
                          print_number(100.0 * (*lifting.hook / *crane->rated), 2, Rounding::up));
    if (crane->block) line += ", block " + print(*crane->block, report.units, Rounding::up);
    line += crane->hoist_speed ? ", hoist at most " + print(*crane->hoist_speed, report.units, Rounding::down)
                               : std::string(", hoist speed not stated");
    lines.push_back(line + ", " + examined(crane->inspected));
  }
}

}  // namespace

std::vector<std::string> gear_lines(const plan::Plan& plan, const checks::Report& report, std::size_t at) {
  std::vector<std::string> lines;
  const checks::StageReport& stage = report.stages[at];
  const auto rigging = rigging_of(plan, plan.stages[at]);
  if (!rigging) return lines;
  const auto most = [&](const Use& use) {
    return use.most ? print(*use.most, report.units, Rounding::up) + " on it at most"
                    : std::string("pull not known");
  };
  for (const plan::Sling& sling : plan.slings) {
    const Use use = use_of(*rigging, stage, &plan::Leg::gear, sling.id);
    if (use.legs > 0)
      lines.push_back(fmt::format("{} x sling {} ({}): each leg {}, {}, {}", use.legs,
                                  inert_at_both_ends(sling.id, 24), inert(sling.kind, 20),
                                  rated(sling.rated, report.units), most(use), examined(sling.inspected)));
  }
  for (const plan::Hardware& hardware : plan.hardware) {
    const Use use = use_of(*rigging, stage, &plan::Leg::hardware, hardware.id);
    if (use.legs > 0)
      lines.push_back(fmt::format(
          "{} x {}{}{}: {}, {}, {}", use.legs,
          hardware.id.starts_with(word_for(hardware.kind)) ? std::string()
                                                           : fmt::format("{} ", word_for(hardware.kind)),
          inert_at_both_ends(hardware.id, 24),
          hardware.size ? ", size " + inert(hardware.size->text, 12) : std::string(),
          rated(hardware.rated, report.units), most(use), examined(hardware.inspected)));
  }
  const auto weighs = [&](const std::optional<Force>& weight) {
    return weight ? "weighs " + print(*weight, report.units, Rounding::up) : std::string("weight not stated");
  };
  for (const plan::Beam& beam : rigging->beams)
    lines.push_back(fmt::format("beam {}: {}, {}, {}", inert_at_both_ends(beam.id, 24),
                                rated(beam.rated, report.units), weighs(beam.weight),
                                examined(beam.inspected)));
  for (const plan::Sheave& sheave : rigging->sheaves)
    lines.push_back(fmt::format("{} {}: {}, {}, {}", plan::kind_of(sheave), inert_at_both_ends(sheave.id, 24),
                                rated(sheave.rated, report.units), weighs(sheave.weight),
                                examined(sheave.inspected)));
  add_cranes(plan, report, at, lines);
  // By number, as in the drawings: names of picks may be long and alike.
  const std::vector<Pick> picks = picks_of(plan, *rigging);
  const auto told = [&](const std::string& to) {
    for (const Pick& pick : picks)
      if (rigging->legs[pick.leg].to == to) return fmt::format("pick {}", pick.number);
    return inert_at_both_ends(to, 20);
  };
  for (const auto& group : rigging->equalised) {
    std::string line = "one rope over a sheave at the hook:";
    for (const auto& leg : group) line += (line.ends_with(':') ? " " : ", ") + told(leg.value);
    lines.push_back(line);
  }
  return lines;
}

}  // namespace firstpick::card
