#include <fmt/format.h>

#include "plan/read_sections.hpp"

namespace firstpick::plan {
namespace {

bool coincide(const std::array<Position, 2>& points) { return !(norm(points[1] - points[0]) > 1.0 * mm); }

Bearer read_bearer(const toml::table& table, Reading& reading) {
  Fields in(table, section("stage.landing.bearers"), reading);
  Bearer bearer;
  bearer.place = in.place();
  bearer.along = in.two_points("along");
  bearer.width = in.quantity<Length>("width").value_or(Length{});
  if (bearer.along && coincide(*bearer.along))
    reading.faults.at(in.where("along"), "the two ends of the bearer are the same point");
  return bearer;
}

}  // namespace

Turn read_turn(const toml::table& table, const Stage& stage, Reading& reading) {
  Fields in(table, section("stage.turn"), reading);
  Turn turn;
  turn.place = in.place();
  turn.method = in.choice<TurnMethod>("method", turn_method_words);
  turn.about = in.two_points("about");
  const auto from = in.quantity<Angle>("from"), to = in.quantity<Angle>("to");
  turn.from = from.value_or(Angle{});
  turn.to = to.value_or(Angle{});
  turn.table_angle = in.quantity<Angle>("table_angle");
  turn.tail_rigging = in.line("tail_rigging");
  turn.tail_crane = in.line("tail_crane");
  turn.ground = in.word("ground");
  if (const auto friction = in.number("friction")) turn.friction = Ratio{*friction};
  turn.procedure = in.line("procedure");

  if (stage.kind != StageKind::turn)
    reading.faults.at(in.where(), fmt::format("only a turn stage has [stage.turn], not '{}'", word_for(stage.kind)));
  if (turn.about && coincide(*turn.about))
    reading.faults.at(in.where("about"), "the two points of the edge are the same point");
  if (from && to && *from == *to) reading.faults.at(in.where("to"), "'from' and 'to' are the same angle");
  if (!turn.tail_rigging.empty() && turn.tail_rigging == stage.rigging)
    reading.faults.at(in.where("tail_rigging"), "the second hook needs a rigging of its own, not that of the stage");
  return turn;
}

Landing read_landing(const toml::table& table, Reading& reading) {
  Fields in(table, section("stage.landing"), reading);
  Landing landing;
  landing.place = in.place();
  landing.on = in.choice<LandingOn>("on", landing_words);
  for (const toml::table* bearer : in.each("stage.landing.bearers"))
    landing.bearers.push_back(read_bearer(*bearer, reading));
  landing.level = in.yes_no("level");
  landing.restrained = in.choice<Restraint>("restrained", restraint_words);
  landing.legs_off = in.yes_no("legs_off");

  if (landing.on == LandingOn::flat && in.has("bearers"))
    reading.faults.at(in.where("bearers"), "a landing on flat ground has no bearers", "write on = \"bearers\"");
  return landing;
}

ScaleReading read_scale_reading(const toml::table& table, Reading& reading) {
  Fields in(table, section("stage.scale_reading"), reading);
  ScaleReading scale;
  scale.place = in.place();
  scale.shows = in.quantity<Force>("shows");
  scale.state = in.choice<ScaleState>("state", scale_state_words);
  scale.attached = in.yes_no("attached");
  scale.rigging = in.yes_no("rigging");
  scale.block = in.yes_no("block");
  return scale;
}

}  // namespace firstpick::plan
