// The table of legs: from where to where, how long, how steep, how much, and what each end holds.

#include <algorithm>

#include <fmt/format.h>

#include "card/content.hpp"
#include "card/picks.hpp"
#include "units/print.hpp"

namespace firstpick::card {

namespace {

template <class Named>
const Named* named(const std::vector<Named>& all, const std::string& id) {
  const auto found = std::ranges::find(all, id, &Named::id);
  return found == all.end() ? nullptr : &*found;
}

std::string insert_cell(const plan::Insert& insert, UnitSystem units) {
  std::string text = insert.kind;
  if (insert.size) text += " " + inert(insert.size->text, 12);
  if (insert.loop && insert.loop->strands.value_or(1) > 1) text += fmt::format(" of {}", *insert.loop->strands);
  if (insert.loop && insert.loop->diameter) text += ", each " + print(*insert.loop->diameter, units);
  if (insert.washer && insert.shank) text += ", bolt " + print(*insert.shank, units);
  if (insert.washer) text += ", washer " + print(*insert.washer, units);
  if (insert.thread) text += ", thread " + print(*insert.thread, units);
  if (insert.embedment) text += ", " + print(*insert.embedment, units) + " deep";
  if (insert.rating) text += ", rated " + print(insert.rating->load, units, Rounding::down);
  text += insert.certificate.empty() ? ", no certificate" : ", " + inert_at_both_ends(insert.certificate, 24);
  return inert(text, 110);
}

template <class Gear>
std::string gear_cell(const Gear* gear, const std::string& id, UnitSystem units) {
  if (id.empty()) return "-";
  return inert_at_both_ends(id, 24) +
         (gear && gear->rated ? ", " + print(*gear->rated, units, Rounding::down) : ", no rating");
}

Length along(const Position& at, const Direction& way) { return way.x * at.x + way.y * at.y + way.z * at.z; }

// Of the box around the piece.
Length highest_along(const piece::Body& body, const Direction& way) {
  const auto end = [](double part, Length low, Length high) { return part * (part > 0.0 ? high : low); };
  return end(way.x, body.lowest.x, body.highest.x) + end(way.y, body.lowest.y, body.highest.y) +
         end(way.z, body.lowest.z, body.highest.z);
}

// The solid is known to a fraction of a micrometre: an insert in its highest face is not told as below it.
std::string down(Length depth, UnitSystem units) {
  constexpr Length in_the_face = 0.1 * mm;
  return print(abs(depth) < in_the_face ? Length{} : depth, units);
}

}  // namespace

std::vector<std::vector<std::string>> leg_rows(const plan::Plan& plan, const piece::Body& body,
                                               const checks::Report& report, std::size_t at) {
  std::vector<std::vector<std::string>> rows{{"No.", "Leg", "Length", "From level", "Pull at most",
                                              "Sling, rated", "What holds, rated", "Insert", "From left",
                                              "From below", "Down"}};
  const checks::StageReport& stage = report.stages[at];
  const auto rigging = rigging_of(plan, plan.stages[at]);
  if (!rigging) return rows;
  const std::vector<Pick> picks = picks_of(plan, *rigging);
  const piece::View above = view_from_above(stage.hanging ? stage.hanging->up : Direction{0.0, 0.0, 1.0});
  const Span span = span_of(body, above);
  const Direction towards_the_eye = cross(above.right, above.up);
  for (std::size_t i = 0; i < rigging->legs.size(); ++i) {
    const plan::Leg& leg = rigging->legs[i];
    const checks::LegReport* told = leg_report(stage, *rigging, i);
    const auto pick = std::ranges::find(picks, i, &Pick::leg);
    std::vector<std::string> row{pick == picks.end() ? "" : std::to_string(pick->number),
                                 (leg.from.empty() ? std::string("hook") : inert_at_both_ends(leg.from, 20)) +
                                     " to " + inert_at_both_ends(leg.to, 24),
                                 leg.length ? print(*leg.length, report.units) : "not stated",
                                 told ? print(told->angle_from_horizontal, report.units) : "not known",
                                 told ? print(told->tension, report.units, Rounding::up) : "not known",
                                 gear_cell(named(plan.slings, leg.gear), leg.gear, report.units),
                                 gear_cell(named(plan.hardware, leg.hardware), leg.hardware, report.units)};
    if (pick != picks.end()) {
      const plan::Insert& insert = plan.inserts[pick->insert];
      const plan::PlanarPoint where = piece::seen(above, insert.at);
      row.insert(row.end(), {insert_cell(insert, report.units), print(where.x - span.lowest.x, report.units),
                             print(where.y - span.lowest.y, report.units),
                             down(highest_along(body, towards_the_eye) - along(insert.at, towards_the_eye),
                                  report.units)});
    } else {
      row.insert(row.end(), {"-", "-", "-", "-"});
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace firstpick::card
