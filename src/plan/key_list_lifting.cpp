// The keys of what lifts the piece, and when. `absent` says what the program does without the key.
#include "plan/keys.hpp"

namespace firstpick::plan {

std::vector<Section> lifting_sections() {
  const Section insert{
      .path = "insert", .repeated = true, .required = true, .doc = "What is cast in to lift by.",
      .keys = {
          {.name = "id", .kind = Kind::name, .required = true, .defines = Names::insert,
           .doc = "the name that legs use", .example = "\"A1\""},
          {.name = "kind", .kind = Kind::word, .words = Words::insert_kinds, .required = true,
           .doc = "headed and rated are evaluated; the others are HOLD", .example = "\"headed\""},
          {.name = "at", .kind = Kind::length, .count = Count::three, .required = true,
           .doc = "point on the surface of the concrete", .example = R"(["1 ft", "1 ft", "7 ft 4 in"])"},
          {.name = "embedment", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "effective depth, from the surface to the bearing side of the head",
           .absent = "HOLD if headed", .example = "\"6 in\""},
          {.name = "shank", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "diameter of the shank",
           .absent = "HOLD if headed", .example = "\"0.75 in\""},
          {.name = "threaded", .kind = Kind::yes_no,
           .doc = "whether a thread lies in the stressed length of the shank; true needs `thread_pitch`",
           .absent = "yes where there is a `thread_pitch`; else a stud has none, and a bolt is HOLD",
           .example = "false"},
          {.name = "thread_pitch", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "of the thread on the shank: it is taken out of the steel area",
           .absent = "HOLD for a bolt that is not said to be `threaded = false`", .example = "\"0.1 in\""},
          {.name = "type", .kind = Kind::word, .words = Words::shank_types,
           .doc = "headed bolt, or headed stud welded to a plate",
           .absent = "bolt, the lower resistance", .example = "\"bolt\""},
          {.name = "head_bearing_area", .kind = Kind::area, .limit = Limit::more_than_zero,
           .doc = "area of the head that bears on the concrete, without the shank",
           .absent = "HOLD if headed", .example = "\"0.91 in2\""},
          {.name = "steel", .kind = Kind::word, .words = Words::steels, .doc = "steel of the shank",
           .absent = "HOLD if headed", .example = "\"...\""},
          {.name = "hanger_bar", .kind = Kind::yes_no,
           .doc = "a bar is bent around the insert; recorded, no resistance is taken from it",
           .absent = "no effect", .example = "false"},
          {.name = "certificate", .doc = "number of the supplier's certificate, or the lot", .absent = "HOLD",
           .example = "\"lot 4471\""},
          {.name = "position_confirmed", .kind = Kind::yes_no,
           .doc = "somebody compared the position in the piece with the drawing", .absent = "HOLD",
           .example = "true"},
      }};

  const Section rating{
      .path = "insert.rating", .doc = "The supplier's declared capacity.", .absent = "HOLD if rated",
      .keys = {
          {.name = "load", .kind = Kind::force, .limit = Limit::more_than_zero, .required = true,
           .doc = "declared load", .example = "\"4 short ton\""},
          {.name = "at_strength", .kind = Kind::stress, .limit = Limit::more_than_zero,
           .doc = "concrete strength it is declared for", .absent = "HOLD", .example = "\"15 MPa\""},
          {.name = "includes_factor", .kind = Kind::number, .limit = Limit::at_least_one,
           .doc = "factor on failure that the declared load includes", .absent = "HOLD", .example = "4"},
      }};

  const Section sling{
      .path = "sling", .repeated = true, .doc = "Chains and ropes that legs are made of.",
      .absent = "HOLD",
      .keys = {
          {.name = "id", .kind = Kind::name, .required = true, .defines = Names::sling,
           .doc = "the name that legs use", .example = "\"chain-1/2\""},
          {.name = "kind", .kind = Kind::word, .words = Words::sling_kinds, .required = true,
           .doc = "kind of sling", .example = "\"chain\""},
          {.name = "rated", .kind = Kind::force, .limit = Limit::more_than_zero,
           .doc = "rated load of one leg hanging straight, from the tag", .absent = "HOLD",
           .example = "\"11250 lb\""},
          {.name = "design_factor", .kind = Kind::number, .limit = Limit::at_least_one,
           .doc = "breaking load over rated load, from the tag or the certificate",
           .absent = "that of the kind, from tables/slings.toml", .example = "5"},
          {.name = "minimum_angle", .kind = Kind::angle, .limit = Limit::up_to_90_deg,
           .doc = "least angle from horizontal that the tag allows", .absent = "that of the rule set",
           .example = "\"45 deg\""},
          {.name = "axial_stiffness", .kind = Kind::force, .limit = Limit::more_than_zero,
           .doc = "E A of one leg", .absent = "nearly rigid, by the rule set", .example = "\"8000 kip\""},
      }};

  const Section crane{
      .path = "crane", .repeated = true, .doc = "What the rigging hangs from.",
      .absent = "HOLD",
      .keys = {
          {.name = "id", .kind = Kind::name, .required = true, .defines = Names::crane,
           .doc = "the name that stages use", .example = "\"bay-2\""},
          {.name = "rated", .kind = Kind::force, .limit = Limit::more_than_zero,
           .doc = "rated load where the lift is made", .absent = "HOLD", .example = "\"20 short ton\""},
          {.name = "block", .kind = Kind::force, .limit = Limit::not_negative,
           .doc = "hook block and fixed gear that count against the rating; zero where they do not",
           .absent = "HOLD", .example = "\"600 lb\""},
          {.name = "hoist_speed", .kind = Kind::speed, .limit = Limit::more_than_zero,
           .doc = "steady speed of the hook", .absent = "no dynamic factor from the hoist",
           .example = "\"24 ft/min\""},
          {.name = "hoist_class", .kind = Kind::word, .words = Words::hoist_classes,
           .doc = "how softly the hoist takes up the load", .absent = "no dynamic factor from the hoist",
           .example = "\"HC2\""},
      }};

  const Section rigging{
      .path = "rigging", .repeated = true, .required = true, .doc = "Legs from one hook to the inserts.",
      .keys = {
          {.name = "id", .kind = Kind::name, .required = true, .defines = Names::rigging,
           .doc = "the name that stages use", .example = "\"four-leg\""},
          {.name = "equalised", .kind = Kind::name, .count = Count::groups, .refers_to = Names::insert,
           .doc = "groups of inserts whose legs are one rope over a sheave at the hook",
           .absent = "each leg is a rope of its own", .example = R"([["A1", "A2"]])"},
          {.name = "length_tolerance", .kind = Kind::share, .limit = Limit::below_100_percent,
           .doc = "how much legs may differ from their length; recorded, the rule set's sharing covers it",
           .absent = "no effect",
           .example = "\"0.5 %\""},
          {.name = "weight", .kind = Kind::force, .limit = Limit::more_than_zero,
           .doc = "slings, shackles and rings below the hook", .absent = "HOLD", .example = "\"180 lb\""},
      }};

  const Section leg{
      .path = "rigging.legs", .repeated = true, .required = true,
      .doc = "One for each insert, written as a list of tables in one line or more.",
      .keys = {
          {.name = "to", .kind = Kind::name, .required = true, .refers_to = Names::insert,
           .doc = "the insert", .example = "\"A1\""},
          {.name = "length", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "from where it bears on the hook to where it bears on the insert", .absent = "HOLD",
           .example = "\"8 ft\""},
          {.name = "gear", .kind = Kind::name, .refers_to = Names::sling, .doc = "the sling",
           .absent = "HOLD",
           .example = "\"chain-1/2\""},
      }};

  const Section stage{
      .path = "stage", .repeated = true, .required = true,
      .doc = "The lifts of the piece until it is set, in order.",
      .keys = {
          {.name = "kind", .kind = Kind::word, .words = Words::stage_kinds, .required = true,
           .doc = "what happens", .example = "\"strip\""},
          {.name = "rigging", .kind = Kind::name, .required = true, .refers_to = Names::rigging,
           .doc = "what it hangs on", .example = "\"four-leg\""},
          {.name = "crane", .kind = Kind::name, .refers_to = Names::crane, .doc = "what lifts it",
           .absent = "HOLD",
           .example = "\"bay-2\""},
          {.name = "at", .kind = Kind::moment, .doc = "when the lift is to be made",
           .absent = "HOLD if the evidence has `valid_for`", .example = "2026-03-03T08:00:00"},
          {.name = "dynamic_factor", .kind = Kind::number, .limit = Limit::at_least_one,
           .doc = "stated by the engineer instead of the rule set's", .absent = "that of the rule set",
           .example = "1.2"},
      }};

  return {insert, rating, sling, crane, rigging, leg, stage};
}

}  // namespace firstpick::plan
