// What people do, in order, and what stops them. Common practice of the trade, but for what the stage's own
// numbers say; nothing here is ticked by the program, whatever the plan states.

#include <algorithm>

#include <fmt/format.h>

#include "card/content.hpp"
#include "checks/standing_texts.hpp"
#include "units/print.hpp"

namespace firstpick::card {

namespace {

bool is_turn(const plan::Plan& plan, std::size_t at, plan::TurnMethod method) {
  const plan::Stage& stage = plan.stages[at];
  return stage.kind == plan::StageKind::turn && stage.turn && stage.turn->method == method;
}

// Any wind, where the lift was judged in still air.
std::string wind_that_stops(const plan::Stage& stage, UnitSystem units) {
  if (!stage.wind_speed || !(*stage.wind_speed > Speed{})) return "wind";
  return fmt::format("gusts above {}", print(*stage.wind_speed, units, Rounding::down));
}

std::string place(const Position& at, UnitSystem units) {
  return fmt::format("x {}, y {}, z {}", print(at.x, units), print(at.y, units), print(at.z, units));
}

}  // namespace

std::vector<std::string> turn_lines(const plan::Plan& plan, const checks::Report& report, std::size_t at) {
  const auto& told = report.stages[at].turn;
  const auto& turn = plan.stages[at].turn;
  if (!told || !turn) return {};
  const auto angle = [&](Angle a) { return print(a, report.units); };
  std::vector<std::string> lines{fmt::format("Turned {}, from {} to {}, by the written procedure {}.", told->how,
                                             angle(told->from), angle(told->to), inert(turn->procedure, 40))};
  if (turn->about && turn->method != plan::TurnMethod::two_hooks)
    lines.push_back(fmt::format("The edge that stays where it is: from {} to {}.",
                                place((*turn->about)[0], report.units), place((*turn->about)[1], report.units)));
  if (turn->table_angle)
    lines.push_back(fmt::format("On the table up to {}; the legs carry it from there.", angle(*turn->table_angle)));
  lines.push_back(fmt::format("The hook pulls most at {}.", angle(told->pull_at)));
  if (told->tail_pull)
    lines.back().insert(lines.back().size() - 1,
                        fmt::format(", the second hook at {}", angle(told->tail_at)));
  if (told->balance)
    lines.push_back(fmt::format("Past {} the legs are slack and the piece goes on by itself: go slowly before it.",
                                angle(*told->balance)));
  const auto& landing = plan.stages[at].landing;
  if (landing && landing->restrained && *landing->restrained != plan::Restraint::none)
    lines.push_back(fmt::format("A {} holds it before the legs come off.",
                                *landing->restrained == plan::Restraint::rack ? "rack" : "brace"));
  return lines;
}

std::vector<std::string> steps_of(const plan::Plan& plan, const checks::Report& report, std::size_t at,
                                  const checks::PullsOnScale& pulls) {
  const checks::StageReport& stage = report.stages[at];
  const bool strip = stage.kind == plan::StageKind::strip;
  std::vector<std::string> steps = {
      "Compare mark, gear and picks with this card. Tick every box below.",
      stage.cranes.size() > 1
          ? "Hook on. Legs not twisted, clutches closed, each hook where the drawing has it. Both cranes "
            "move together, on "
            "one signaller's word."
      : stage.kind == plan::StageKind::turn
          ? "Hook on. Legs not twisted, clutches closed, hook plumb above the picks."
          : "Hook on. Legs not twisted, clutches closed, hook above the centre of gravity.",
      "Take up the slack slowly until every leg is tight. Stop. Look at each leg and each pick.",
  };
  if (strip) {
    if (plan.form && !plan.form->attached.empty())
      steps.push_back("Only now free the form: what leaves with the piece hangs on the hook already.");
    steps.push_back(
        "Break the suction at one end or corner first." +
        (is_pull_known(report, at, pulls) ? fmt::format(" The scale does not go beyond {}.", pull_limit(report, at, pulls)) : ""));
  }
  std::string clear = "Lift a hand's width clear. Pause: level";
  if (stage.tilt)
    clear += fmt::format(" (computed: {} out of level)", print(*stage.tilt, report.units, Rounding::up));
  clear += plan.piece.may_crack ? ", nothing slips, cracks only where the engineer accepted them."
                                : ", no new cracks, nothing slips.";
  if (stage.kind == plan::StageKind::turn) {
    const std::string turn =
        "Turn slowly, by the written procedure, each hook plumb above its picks all the way. Nobody where the edge "
        "or the piece can swing.";
    if (is_turn(plan, at, plan::TurnMethod::edge)) {
      steps.push_back(turn);
      steps.emplace_back("The edge stays where it is and does not leave the ground. Legs off only when the piece "
                         "stands by itself or is held as told above.");
      return steps;
    }
    const bool clear_first = is_turn(plan, at, plan::TurnMethod::two_hooks);  // a table lets go at the end
    steps.push_back(clear_first ? clear : turn);
    steps.push_back(clear_first ? turn : clear);
  } else {
    steps.push_back(clear);
  }
  steps.emplace_back(
      "Lift and travel slowly along the closed path. Set down level; legs off only when it stands by "
      "itself.");
  return steps;
}

std::vector<std::string> stops_of(const plan::Plan& plan, const checks::Report& report, std::size_t at,
                                  const checks::PullsOnScale& pulls) {
  std::vector<std::string> stops = {
      is_pull_known(report, at, pulls)
          ? fmt::format("the scale shows more than {}", pull_limit(report, at, pulls))
          : "the load on the hook is not known on this card: do not lift, ask the engineer",
      is_turn(plan, at, plan::TurnMethod::edge)
          ? "the edge slides or lifts, or a leg hangs slack where this card does not say so"
      : is_turn(plan, at, plan::TurnMethod::two_hooks)
          ? "a leg hangs slack, or the piece leans out of the plane of the hooks"
          : "a leg hangs slack, or it hangs further out of level than computed",
      plan.piece.may_crack
          ? "the concrete spalls, or cracks at an insert; a crack is wide or grows; a clutch moves"
          : "the concrete cracks or spalls at an insert, or a clutch moves",
      "anybody is under the piece or in the zone, or calls stop",
      fmt::format("{}, a view lost, or a signal not understood",
                  wind_that_stops(plan.stages[at], report.units)),
  };
  if (report.stages[at].kind == plan::StageKind::strip) stops.emplace_back(checks::when_it_sticks);
  return stops;
}

std::vector<std::string> landing_lines(const plan::Plan& plan, std::size_t at) {
  const auto& landing = plan.stages[at].landing;
  if (!landing) return {};
  const UnitSystem units = plan.piece.units;
  std::vector<std::string> lines;
  if (landing->on && *landing->on == plan::LandingOn::flat) lines.emplace_back("flat on the ground or a bed");
  if (!landing->bearers.empty()) {
    std::string text = fmt::format("{} bearer{}, in the axes of the piece as cast:", landing->bearers.size(),
                                   landing->bearers.size() == 1 ? "" : "s");
    for (const plan::Bearer& bearer : landing->bearers) {
      text += text.ends_with(':') ? " " : "; ";
      if (!bearer.along)
        text += "place not stated";
      else if (const auto& [a, b] = *bearer.along; abs(a.x - b.x) < mm)
        text += "across at x " + print(a.x, units);
      else if (abs(a.y - b.y) < mm)
        text += "across at y " + print(a.y, units);
      else
        text += fmt::format("from {} to {}", place(a, units), place(b, units));
      text += ", " + print(bearer.width, units) + " wide";
    }
    lines.push_back(text);
  }
  if (landing->restrained)
    lines.emplace_back(
        *landing->restrained == plan::Restraint::rack    ? "held by a rack before the legs come off"
        : *landing->restrained == plan::Restraint::brace ? "held by a brace before the legs come off"
                                                         : "stands by itself: not held");
  return lines;
}

std::vector<std::string> ticks_of(plan::StageKind kind) {
  std::vector<std::string> ticks = {
      "mark, revision, cast date as above",
      "the strength test is of this pour",
      "inserts as drawn; size and maker's mark read",
      "clutches closed, of the insert's size",
      "legs, beams, crane as listed; tags read",
      "zone closed, path and landing clear",
      "tag lines on, not around hands",
      "signaller named, signals agreed",
      "talk before the lift held",
      "operator and riggers qualified",
      "wind, weather within the limit below",
      "bearers level, in place; rack, brace ready",
      "nothing changed since this card",
  };
  if (kind == plan::StageKind::strip)
    ticks.insert(ticks.begin() + 5, "form opened; nothing else holds it");
  return ticks;
}

std::vector<std::string> write_in_of(bool may_lift) {
  if (!may_lift) return {"Told to (operator)", "Told by", "What is done now", "Engineer", "Date, time"};
  return {"Project, place in it",
          "Crane radius, rating there",
          "Wind limit, travel speed",
          "Turning, if any: gear, how",
          "Landing: place, bearers, bracing",
          "At the talk: names",
          "Signaller, channel",
          "Person in charge",
          "Engineer of record",
          "Date, time",
          "Operator"};
}

std::vector<Signal> signals_of(const checks::Report& report, std::size_t at, const checks::PullsOnScale& pulls) {
  std::vector<Signal> signals = {
      {"DANGER", "A falling piece kills. Nobody under it, or between it and anything it can swing into."}};
  if (report.stages[at].verdict != checks::Verdict::go) {
    signals.push_back(
        {"WARNING",
         "Lifting against this card can drop the piece. Keep the hook off, or the legs slack, until a "
         "new card says GO."});
    return signals;
  }
  if (report.stages[at].kind == plan::StageKind::strip)
    signals.push_back(
        {"WARNING",
         "A piece that sticks can jump free, or an insert can tear out." +
             (is_pull_known(report, at, pulls) ? fmt::format(" Stop at {}.", pull_limit(report, at, pulls)) : "") +
             " Do not jerk."});
  signals.push_back(
      {"WARNING",
       "Other gear, other picks or a leg of another length can drop the piece: the card is void."});
  signals.push_back({"CAUTION", "Sharp edges and fresh cement hurt skin and eyes: gloves and glasses on."});
  return signals;
}

}  // namespace firstpick::card
