#include "plan/read_sections.hpp"

namespace firstpick::plan {
namespace {

Rating read_rating(const toml::table& table, Reading& reading) {
  Fields in(table, section("insert.rating"), reading);
  Rating rating;
  rating.place = in.place();
  rating.load = in.quantity<Force>("load").value_or(Force{});
  rating.at_strength = in.quantity<Stress>("at_strength");
  rating.includes_factor = in.number("includes_factor");
  return rating;
}

Leg read_leg(const toml::table& table, Reading& reading) {
  Fields in(table, section("rigging.legs"), reading);
  Leg leg;
  leg.place = in.place();
  leg.to = in.line("to");
  leg.length = in.quantity<Length>("length");
  leg.gear = in.line("gear");
  return leg;
}

}  // namespace

Insert read_insert(const toml::table& table, Reading& reading) {
  Fields in(table, section("insert"), reading);
  Insert insert;
  insert.place = in.place();
  insert.id = in.line("id");
  insert.kind = in.word("kind");
  const std::optional<Position> at = in.xyz("at");
  insert.at = at.value_or(Position{});
  if (!at) reading.unplaced.insert(insert.id);
  insert.embedment = in.quantity<Length>("embedment");
  insert.shank = in.quantity<Length>("shank");
  insert.thread_pitch = in.quantity<Length>("thread_pitch");
  insert.welded_stud = in.word("type") == "stud";
  insert.head_bearing_area = in.quantity<Area>("head_bearing_area");
  insert.steel = in.word("steel");
  insert.hanger_bar = in.yes_no("hanger_bar");
  if (const toml::table* rating = in.inside("insert.rating")) insert.rating = read_rating(*rating, reading);
  insert.certificate = in.line("certificate");
  insert.position_confirmed = in.yes_no("position_confirmed");
  return insert;
}

Sling read_sling(const toml::table& table, Reading& reading) {
  Fields in(table, section("sling"), reading);
  Sling sling;
  sling.place = in.place();
  sling.id = in.line("id");
  sling.kind = in.word("kind");
  sling.rated = in.quantity<Force>("rated");
  sling.design_factor = in.number("design_factor");
  sling.minimum_angle = in.quantity<Angle>("minimum_angle");
  sling.axial_stiffness = in.quantity<Force>("axial_stiffness");
  return sling;
}

Crane read_crane(const toml::table& table, Reading& reading) {
  Fields in(table, section("crane"), reading);
  Crane crane;
  crane.place = in.place();
  crane.id = in.line("id");
  crane.rated = in.quantity<Force>("rated");
  crane.block = in.quantity<Force>("block");
  crane.hoist_speed = in.quantity<Speed>("hoist_speed");
  crane.hoist_class = in.word("hoist_class");
  return crane;
}

Rigging read_rigging(const toml::table& table, Reading& reading) {
  Fields in(table, section("rigging"), reading);
  Rigging rigging;
  rigging.place = in.place();
  rigging.id = in.line("id");
  for (const toml::table* leg : in.each("rigging.legs")) rigging.legs.push_back(read_leg(*leg, reading));
  rigging.equalised = in.groups("equalised");
  rigging.length_tolerance = in.quantity<Ratio>("length_tolerance");
  rigging.weight = in.quantity<Force>("weight");
  return rigging;
}

Stage read_stage(const toml::table& table, Reading& reading) {
  Fields in(table, section("stage"), reading);
  Stage stage;
  stage.place = in.place();
  stage.kind = in.choice<StageKind>("kind", stage_words).value_or(stage.kind);
  stage.rigging = in.line("rigging");
  stage.crane = in.line("crane");
  stage.at = in.moment("at");
  if (const auto factor = in.number("dynamic_factor")) stage.dynamic_factor = Ratio{*factor};
  if (const toml::table* turn = in.inside("stage.turn")) stage.turn = read_turn(*turn, stage, reading);
  if (const toml::table* landing = in.inside("stage.landing")) stage.landing = read_landing(*landing, reading);
  return stage;
}

}  // namespace firstpick::plan
