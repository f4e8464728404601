// The keys of how a stage turns the piece and what it is set down on. `absent` says what the program does without
// the key.
#include "plan/keys.hpp"

namespace firstpick::plan {

std::vector<Section> stage_sections() {
  const Section turn{
      .path = "stage.turn",
      .doc = "How a `turn` stage turns the piece. Angles are those of the face that looks down as cast, from "
             "horizontal: 0 lies as cast, 90 stands on edge.",
      .absent = "HOLD in a `turn` stage; no other stage has it",
      .keys = {
          {.name = "method", .kind = Kind::word, .words = Words::turn_methods, .required = true,
           .doc = "about an edge on the ground, from a tilting table, or between two hooks",
           .example = "\"edge\""},
          {.name = "about", .kind = Kind::length, .count = Count::two_points,
           .doc = "two points of the edge that stays on the ground (edge) or on the table (table); level as cast",
           .absent = "HOLD with edge and table; two-hooks has none",
           .example = R"([["0 m", "0 m", "0 m"], ["0 m", "3 m", "0 m"]])"},
          {.name = "from", .kind = Kind::angle, .limit = Limit::up_to_180_deg, .required = true,
           .doc = "angle at the start", .example = "\"0 deg\""},
          {.name = "to", .kind = Kind::angle, .limit = Limit::up_to_180_deg, .required = true,
           .doc = "angle at the end", .example = "\"90 deg\""},
          {.name = "table_angle", .kind = Kind::angle, .limit = Limit::up_to_180_deg,
           .doc = "the least angle at which the crane takes the piece off the table", .absent = "HOLD with table",
           .example = "\"80 deg\""},
          {.name = "tail_rigging", .kind = Kind::name, .refers_to = Names::rigging,
           .doc = "what hangs on the second hook; the stage's own rigging is the main one",
           .absent = "HOLD with two-hooks", .example = "\"tail\""},
          {.name = "tail_crane", .kind = Kind::name, .refers_to = Names::crane,
           .doc = "what lifts the second hook", .absent = "HOLD with two-hooks", .example = "\"bay-3\""},
          {.name = "ground", .kind = Kind::word, .words = Words::grounds,
           .doc = "what the edge stands on, for its friction", .absent = "HOLD with edge, unless `friction` is stated",
           .example = "\"concrete\""},
          {.name = "friction", .kind = Kind::number, .limit = Limit::friction,
           .doc = "coefficient of friction under the edge, stated by the engineer instead of the table's",
           .absent = "that of `ground`", .example = "0.3"},
          {.name = "procedure", .doc = "number of the written turning procedure", .absent = "HOLD",
           .example = "\"TP-07\""},
      }};

  const Section landing{
      .path = "stage.landing", .doc = "What the piece is set down on at the end of the stage.", .absent = "HOLD",
      .keys = {
          {.name = "on", .kind = Kind::word, .words = Words::landings, .required = true,
           .doc = "its whole face on flat ground, or on bearers", .example = "\"bearers\""},
          {.name = "level", .kind = Kind::yes_no, .doc = "ground or bearers are level, firm and clean",
           .absent = "HOLD", .example = "true"},
          {.name = "restrained", .kind = Kind::word, .words = Words::restraints,
           .doc = "what holds the piece before the legs come off", .absent = "it stands by itself",
           .example = "\"rack\""},
          {.name = "legs_off", .kind = Kind::yes_no,
           .doc = "somebody checks that every leg is off before the hook moves", .absent = "HOLD",
           .example = "true"},
      }};

  const Section bearer{
      .path = "stage.landing.bearers", .repeated = true,
      .doc = "Dunnage under the piece, written as a list of tables in one line or more.",
      .absent = "HOLD if the landing is on bearers",
      .keys = {
          {.name = "along", .kind = Kind::length, .count = Count::two_points, .required = true,
           .doc = "the ends of its centre line, in the axes of the piece; the height does not count",
           .example = R"([["0.8 m", "0 m", "0 m"], ["0.8 m", "2.4 m", "0 m"]])"},
          {.name = "width", .kind = Kind::length, .limit = Limit::more_than_zero, .required = true,
           .doc = "of its bearing face", .example = "\"100 mm\""},
      }};

  const Section scale{
      .path = "stage.scale_reading",
      .doc = "What the scale of the crane showed, and what was on it: held against the computed weight.",
      .absent = "nothing is compared",
      .keys = {
          {.name = "shows", .kind = Kind::force, .limit = Limit::more_than_zero, .required = true,
           .doc = "the largest reading", .example = "\"21.5 kip\""},
          {.name = "state", .kind = Kind::word, .words = Words::scale_states, .required = true,
           .doc = "the piece hung free, or the form still held it", .example = "\"hanging\""},
          {.name = "attached", .kind = Kind::yes_no,
           .doc = "form parts that come along were on the piece", .absent = "HOLD where the plan has such parts",
           .example = "false"},
          {.name = "rigging", .kind = Kind::yes_no,
           .doc = "the scale counted slings, beams and sheaves", .absent = "HOLD", .example = "true"},
          {.name = "block", .kind = Kind::yes_no, .doc = "the scale counted the hook block", .absent = "HOLD",
           .example = "true"},
      }};

  return {turn, landing, bearer, scale};
}

}  // namespace firstpick::plan
