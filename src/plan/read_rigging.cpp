#include "plan/read_sections.hpp"

#include <fmt/format.h>

namespace firstpick::plan {
namespace {

Leg read_leg(const toml::table& table, Reading& reading) {
  Fields in(table, section("rigging.legs"), reading);
  Leg leg;
  leg.place = in.place();
  leg.to = in.line("to");
  leg.from = in.line("from");
  leg.length = in.quantity<Length>("length");
  if (const auto& limits = reading.tables.legs; limits && leg.length && *leg.length > limits->longest_leg.value)
    reading.faults.at(in.where("length"),
                      fmt::format("a leg of {}: {} is the longest that a plan may have", print(*leg.length, UnitSystem::si),
                                  print(limits->longest_leg.value, UnitSystem::si)),
                      "the length from where it bears above to where it bears below");
  leg.gear = in.line("gear");
  leg.hardware = in.line("hardware");
  return leg;
}
Hook read_hook(const toml::table& table, Reading& reading) {
  Fields in(table, section("rigging.hook"), reading);
  Hook hook;
  hook.place = in.place();
  hook.id = in.line("id");
  if (const auto at = in.xyz("at")) hook.at = *at;
  hook.crane = in.line("crane");
  return hook;
}
BeamPoint read_point(const toml::table& table, Reading& reading) {
  Fields in(table, section("rigging.beam.points"), reading);
  BeamPoint point;
  point.place = in.place();
  point.id = in.line("id");
  if (const auto at = in.xyz("at")) point.at = *at;
  return point;
}
Beam read_beam(const toml::table& table, Reading& reading) {
  Fields in(table, section("rigging.beam"), reading);
  Beam beam;
  beam.place = in.place();
  beam.id = in.line("id");
  beam.weight = in.quantity<Force>("weight");
  if (const auto centre = in.xyz("centre")) beam.centre = *centre;
  beam.rated = in.quantity<Force>("rated");
  beam.inspected = in.date("inspected");
  for (const toml::table* point : in.each("rigging.beam.points")) beam.points.push_back(read_point(*point, reading));
  return beam;
}
Sheave read_sheave(const toml::table& table, bool rolls, Reading& reading) {
  Fields in(table, section(rolls ? "rigging.sheave" : "rigging.link"), reading);
  Sheave sheave;
  sheave.rolls = rolls;
  sheave.place = in.place();
  sheave.id = in.line("id");
  sheave.weight = in.quantity<Force>("weight");
  sheave.rated = in.quantity<Force>("rated");
  sheave.inspected = in.date("inspected");
  return sheave;
}
}  // namespace

Rigging read_rigging(const toml::table& table, Reading& reading) {
  Fields in(table, section("rigging"), reading);
  Rigging rigging;
  rigging.place = in.place();
  rigging.id = in.line("id");
  for (const toml::table* hook : in.each("rigging.hook")) rigging.hooks.push_back(read_hook(*hook, reading));
  for (const toml::table* beam : in.each("rigging.beam")) rigging.beams.push_back(read_beam(*beam, reading));
  for (const toml::table* each : in.each("rigging.sheave")) rigging.sheaves.push_back(read_sheave(*each, true, reading));
  for (const toml::table* each : in.each("rigging.link")) rigging.sheaves.push_back(read_sheave(*each, false, reading));
  for (const toml::table* leg : in.each("rigging.legs")) rigging.legs.push_back(read_leg(*leg, reading));
  rigging.equalised = in.groups("equalised");
  rigging.length_tolerance = in.quantity<Ratio>("length_tolerance");
  rigging.weight = in.quantity<Force>("weight");
  rigging.equaliser_rated = in.quantity<Force>("equaliser_rated");
  rigging.equaliser_inspected = in.date("equaliser_inspected");
  return rigging;
}

}  // namespace firstpick::plan
