#include <fmt/format.h>

#include "plan/read_sections.hpp"

namespace firstpick::plan {
namespace {

RatedRange read_range(const toml::table& table, bool has_plane, Reading& reading) {
  Fields in(table, section("insert.rating.ranges"), reading);
  RatedRange range;
  range.place = in.place();
  range.from = in.quantity<Angle>("from");
  range.to = in.quantity<Angle>("to").value_or(Angle{});
  range.load = in.quantity<Force>("load").value_or(Force{});
  range.across = in.yes_no("across").value_or(false);
  if (range.from && in.has("to") && !(*range.from < range.to))
    reading.faults.at(in.where("from"), "'from' is not below 'to'", "write the smaller angle of the range in 'from'");
  if (range.across && !has_plane)
    reading.faults.at(in.where("across"), "'across' without a plane: the rating does not say across what",
                      "write plane = \"x\", \"y\" or \"z\" in the rating");
  return range;
}

Rating read_rating(const toml::table& table, Reading& reading) {
  Fields in(table, section("insert.rating"), reading);
  Rating rating;
  rating.place = in.place();
  rating.load = in.quantity<Force>("load").value_or(Force{});
  rating.at_strength = in.quantity<Stress>("at_strength");
  rating.includes_factor = in.number("includes_factor");
  rating.maximum_angle = in.quantity<Angle>("maximum_angle");
  rating.minimum_edge = in.quantity<Length>("minimum_edge");
  rating.minimum_corner = in.quantity<Length>("minimum_corner");
  rating.minimum_spacing = in.quantity<Length>("minimum_spacing");
  rating.plane = in.choice<Axis>("plane", axis_words);
  rating.in_plane_within = in.quantity<Angle>("in_plane_within");
  if (in.has("in_plane_within") && !in.has("plane"))
    reading.faults.at(in.where("in_plane_within"), "'in_plane_within' without 'plane' does nothing",
                      "write plane = \"x\", \"y\" or \"z\"");
  for (const toml::table* range : in.each("insert.rating.ranges"))
    rating.ranges.push_back(read_range(*range, in.has("plane"), reading));
  return rating;
}

Loop read_loop(const toml::table& table, Reading& reading) {
  Fields in(table, section("insert.loop"), reading);
  Loop loop;
  loop.place = in.place();
  loop.diameter = in.quantity<Length>("diameter");
  loop.strands = in.whole("strands");
  loop.offset = in.quantity<Length>("offset");
  loop.leg_length = in.quantity<Length>("leg_length");
  loop.breaking_load = in.quantity<Force>("breaking_load");
  loop.bend_radius = in.quantity<Length>("bend_radius");
  loop.opening = in.quantity<Angle>("opening");
  loop.pin = in.quantity<Length>("pin");
  loop.minimum_edge = in.quantity<Length>("minimum_edge");
  loop.bond = in.quantity<Stress>("bond");
  return loop;
}

AnchorBars read_anchor_bars(const toml::table& table, Reading& reading) {
  Fields in(table, section("insert.bars"), reading);
  AnchorBars bars;
  bars.place = in.place();
  bars.count = in.whole("count");
  bars.diameter = in.quantity<Length>("diameter");
  bars.yield_strength = in.quantity<Stress>("yield_strength");
  bars.ribbed = in.yes_no("ribbed");
  bars.distance = in.quantity<Length>("distance");
  bars.top = in.quantity<Length>("top");
  bars.bottom = in.quantity<Length>("bottom");
  bars.top_end = in.choice<BarEnd>("top_end", bar_end_words);
  bars.bottom_end = in.choice<BarEnd>("bottom_end", bar_end_words);
  if (bars.top && bars.bottom && !(*bars.top < *bars.bottom))
    reading.faults.at(in.where("bottom"), "'bottom' is not below 'top'", "both are depths below the face");
  return bars;
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
  insert.threaded = in.yes_no("threaded");
  insert.thread_pitch = in.quantity<Length>("thread_pitch");
  if (insert.threaded == false && in.has("thread_pitch"))
    reading.faults.at(in.where("threaded"),
                      fmt::format("'threaded' is false, but 'thread_pitch' in line {} is that of a thread",
                                  reading.faults.place_of(in.where("thread_pitch")).line),
                      "take out the one that is wrong");
  insert.welded_stud = in.word("type") == "stud";
  insert.head_bearing_area = in.quantity<Area>("head_bearing_area");
  insert.steel = in.word("steel");
  insert.hanger_bar = in.yes_no("hanger_bar");
  if (const toml::table* rating = in.inside("insert.rating")) insert.rating = read_rating(*rating, reading);
  insert.certificate = in.line("certificate");
  insert.position_confirmed = in.yes_no("position_confirmed");
  insert.size = in.marked_size("size");
  insert.made_for = in.choice<MadeFor>("made_for", purpose_words);
  insert.engineers_document = in.line("engineers_document");
  if (const toml::table* loop = in.inside("insert.loop")) insert.loop = read_loop(*loop, reading);
  if (const toml::table* bars = in.inside("insert.bars")) insert.bars = read_anchor_bars(*bars, reading);
  insert.washer = in.quantity<Length>("washer");
  insert.thread = in.quantity<Length>("thread");
  insert.thread_engagement = in.quantity<Length>("thread_engagement");
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
  sling.size = in.quantity<Length>("size");
  sling.inspected = in.date("inspected");
  return sling;
}

Hardware read_hardware(const toml::table& table, Reading& reading) {
  Fields in(table, section("hardware"), reading);
  Hardware hardware;
  hardware.place = in.place();
  hardware.id = in.line("id");
  hardware.kind = in.choice<HardwareKind>("kind", hardware_kind_words).value_or(hardware.kind);
  hardware.size = in.marked_size("size");
  hardware.rated = in.quantity<Force>("rated");
  hardware.design_factor = in.number("design_factor");
  hardware.inspected = in.date("inspected");
  return hardware;
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
  crane.inspected = in.date("inspected");
  return crane;
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
  stage.hook_latch = in.yes_no("hook_latch");
  stage.exclusion_zone = in.yes_no("exclusion_zone");
  stage.tag_line = in.yes_no("tag_line");
  stage.signaller = in.yes_no("signaller");
  stage.load_in_view = in.yes_no("load_in_view");
  stage.clear_of_power_lines = in.yes_no("clear_of_power_lines");
  stage.operator_agrees = in.yes_no("operator_agrees");
  stage.critical_lift_plan = in.line("critical_lift_plan");
  stage.wind_speed = in.quantity<Speed>("wind_speed");
  if (const auto coefficient = in.number("wind_coefficient")) stage.wind_coefficient = Ratio{*coefficient};
  if (in.has("wind_coefficient") && !in.has("wind_speed"))
    reading.faults.at(in.where("wind_coefficient"), "'wind_coefficient' without 'wind_speed' does nothing",
                      "write wind_speed, in the form \"9 m/s\"");
  if (const toml::table* scale = in.inside("stage.scale_reading"))
    stage.scale_reading = read_scale_reading(*scale, reading);
  if (const toml::table* turn = in.inside("stage.turn")) stage.turn = read_turn(*turn, stage, reading);
  if (const toml::table* landing = in.inside("stage.landing")) stage.landing = read_landing(*landing, reading);
  return stage;
}

}  // namespace firstpick::plan
