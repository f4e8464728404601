#include "editor/new_plan.hpp"

#include <algorithm>
#include <cassert>

#include <fmt/format.h>

#include "editor/new_pieces.hpp"
#include "editor/plan_writer.hpp"

namespace firstpick::editor {
namespace {

std::string_view value_in(const Written& written, UnitSystem units) {
  return units == UnitSystem::us && !written.us.empty() ? written.us : written.si;
}

std::string insert_id(std::size_t index) { return fmt::format("A{}", index + 1); }

void write_head(PlanWriter& plan, const NewPiece& piece, UnitSystem units) {
  const bool us = units == UnitSystem::us;
  plan.note(fmt::format("Plan of a {}, written by: firstpick new {} --units {}", piece.name, piece.name,
                        us ? "us" : "si"));
  plan.note("");
  plan.note("Every number marked EXAMPLE is invented: put in that of your drawing. A line such as");
  plan.note("    # stated_weight = ...");
  plan.note("is a fact that only you have: take away its first # when you know it, and write what you know.");
  plan.note("Until all of them are written the plan is HOLD. What each key means: docs/plan-file.md.");
  plan.line("");
  plan.line("format = 1");
  plan.line("rules = \"us\"");
  plan.open("piece");
  plan.given("mark", fmt::format("\"{}\"", piece.mark));
  plan.given("title", fmt::format("\"EXAMPLE: {}\"", piece.what));
  plan.given("revision", "\"0\"");
  plan.given("units", us ? "\"us\"" : "\"si\"");
  plan.to_write("stated_weight");
  plan.to_write("bending_check");
  plan.to_write("prepared_by");
  plan.to_write("engineer");
  plan.rest_to_write();
}

void write_solids(PlanWriter& plan, const NewPiece& piece, UnitSystem units) {
  plan.line("");
  plan.note(piece.cast);
  for (const std::vector<Written>& solid : piece.solids) {
    plan.open("piece.solid");
    for (const Written& each : solid) plan.given(each.key, value_in(each, units));
  }
}

void write_concrete(PlanWriter& plan, UnitSystem units) {
  plan.open("concrete");
  plan.given("kind", "\"normalweight\"");
  plan.given("density", units == UnitSystem::us ? "\"150 lb/ft3\"" : "\"2400 kg/m3\"");
  plan.given("cracked", "true");
  plan.to_write("form_stripping_strength");
  plan.rest_to_write();
  plan.open_to_write("concrete.evidence");
  plan.rest_to_write();
  plan.to_write("valid_for");
  plan.to_write("report");
}

void write_form(PlanWriter& plan, const NewPiece& piece, UnitSystem units) {
  plan.open("form");
  plan.note("What leaves the form with the piece, and its weight; [] where nothing does. HOLD without it.");
  plan.note("attached = []");
  plan.open("form.contact");
  plan.given(piece.contact.key, value_in(piece.contact, units));
  plan.to_write("finish");
}

void write_inserts(PlanWriter& plan, const NewPiece& piece, UnitSystem units) {
  const bool us = units == UnitSystem::us;
  for (std::size_t i = 0; i < piece.picks.size(); ++i) {
    plan.open("insert");
    plan.given("id", fmt::format("\"{}\"", insert_id(i)));
    plan.given("kind", piece.headed ? "\"headed\"" : "\"rated\"");
    plan.given("at", value_in(piece.picks[i], units));
    if (piece.headed) {
      plan.given("type", "\"bolt\"");
      plan.given("embedment", us ? "\"4 1/4 in\"" : "\"110 mm\"");
      plan.given("shank", us ? "\"0.75 in\"" : "\"20 mm\"");
      plan.given("thread_pitch", us ? "\"0.1 in\"" : "\"2.5 mm\"");
      plan.to_write("head_bearing_area", us ? "\"1.4 in2\"" : "\"900 mm2\"");
      plan.to_write("steel", "\"F1554-55\"");
    }
    plan.to_write("size");
    plan.to_write("hanger_bar");
    plan.rest_to_write();
    if (!piece.headed) plan.to_write_inside("insert.rating");
  }
}

void write_gear(PlanWriter& plan) {
  plan.open("sling");
  plan.given("id", "\"chain-1\"");
  plan.given("kind", "\"chain\"");
  plan.rest_to_write();
  plan.open("hardware");
  plan.given("id", "\"clutch-1\"");
  plan.given("kind", "\"clutch\"");
  plan.to_write("size");
  plan.rest_to_write();
  plan.open("crane");
  plan.given("id", "\"bay-1\"");
  plan.rest_to_write();
}

void write_rigging(PlanWriter& plan, const NewPiece& piece, UnitSystem units) {
  plan.open("rigging");
  plan.given("id", "\"legs\"");
  plan.rest_to_write();
  plan.note("One leg to each insert, from the hook; the lengths are an EXAMPLE.");
  plan.line("legs = [");
  for (std::size_t i = 0; i < piece.picks.size(); ++i)
    plan.line(fmt::format(R"(  {{ to = "{}", length = {}, gear = "chain-1", hardware = "clutch-1" }},)",
                          insert_id(i), value_in(piece.leg, units)));
  plan.line("]");
}

void write_stage(PlanWriter& plan) {
  plan.open("stage");
  plan.given("kind", "\"strip\"");
  plan.given("rigging", "\"legs\"");
  plan.given("crane", "\"bay-1\"");
  plan.to_write("at");
  plan.note("Where it is set down, and that every leg is off before the hook moves. HOLD without it.");
  plan.note(R"(landing = { on = "flat", level = true, legs_off = true })");
  plan.note("Seen at the form by the person in charge, just before the lift:");
  plan.rest_to_write();
}

}  // namespace

std::span<const NewKind> new_kinds() {
  static const std::vector<NewKind> all = [] {
    std::vector<NewKind> list;
    for (const NewPiece& piece : new_pieces()) list.push_back({piece.name, piece.what});
    return list;
  }();
  return all;
}

std::string new_plan(std::string_view kind, UnitSystem units) {
  const auto piece = std::ranges::find(new_pieces(), kind, &NewPiece::name);
  assert(piece != new_pieces().end());
  PlanWriter plan(units);
  write_head(plan, *piece, units);
  write_solids(plan, *piece, units);
  write_concrete(plan, units);
  write_form(plan, *piece, units);
  write_inserts(plan, *piece, units);
  write_gear(plan);
  write_rigging(plan, *piece, units);
  write_stage(plan);
  return plan.text();
}

}  // namespace firstpick::editor
