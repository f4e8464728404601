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
           .doc = "bent-bar and toggle are never evaluated: HOLD", .example = "\"headed\""},
          {.name = "at", .kind = Kind::length, .count = Count::three, .required = true,
           .doc = "point on the surface of the concrete", .example = R"(["1 ft", "1 ft", "7 ft 4 in"])"},
          {.name = "embedment", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "effective depth, from the surface to the bearing side of the head, or to the end of a loop",
           .absent = "HOLD if headed or a loop", .example = "\"6 in\""},
          {.name = "shank", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "diameter of the shank, or of the bolt through a plate",
           .absent = "HOLD if headed or plate", .example = "\"0.75 in\""},
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
          {.name = "steel", .kind = Kind::word, .words = Words::steels, .doc = "steel of the shank, the bolt or the bar of a loop",
           .absent = "HOLD if headed, plate or loop-bar", .example = "\"...\""},
          {.name = "hanger_bar", .kind = Kind::yes_no,
           .doc = "a bar is bent around the insert; no resistance is taken from it",
           .absent = "HOLD in a narrow face under shear", .example = "true"},
          {.name = "certificate", .doc = "number of the supplier's certificate, or the lot", .absent = "HOLD",
           .example = "\"lot 4471\""},
          {.name = "position_confirmed", .kind = Kind::yes_no,
           .doc = "somebody compared the position in the piece with the drawing", .absent = "HOLD",
           .example = "true"},
          {.name = "size", .kind = Kind::force, .limit = Limit::more_than_zero,
           .doc = "load class marked on the insert", .absent = "HOLD under a clutch or a screw-in part",
           .example = "\"1.3 t\""},
          {.name = "made_for", .kind = Kind::word, .words = Words::purposes,
           .doc = "what it was cast in for; a connection is never lifted by",
           .absent = "HOLD if a loop", .example = "\"lifting\""},
          {.name = "engineers_document",
           .doc = "the engineer's document that allows a bar bent to an eye, a toggle, a loop of strand in a shallow "
                  "piece, or a bond of his own",
           .absent = "NO-GO if bent-bar, loop-bar or toggle", .example = "\"...\""},
          {.name = "washer", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "side of the square plate on the far face, under the head of a bolt through the concrete",
           .absent = "HOLD if plate", .example = "\"5 in\""},
          {.name = "thread", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "diameter of the thread that a screw-in part goes into", .absent = "HOLD if threaded",
           .example = "\"24 mm\""},
          {.name = "thread_engagement", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "length of thread that is engaged with the part screwed home", .absent = "HOLD if threaded",
           .example = "\"36 mm\""},
      }};

  const Section loop{
      .path = "insert.loop", .doc = "A loop of bar, strand or wire rope.", .absent = "HOLD if a loop",
      .keys = {
          {.name = "diameter", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "of the bar, of one strand, of the rope", .absent = "HOLD", .example = "\"0.6 in\""},
          {.name = "strands", .kind = Kind::whole, .doc = "strands side by side in the loop",
           .absent = "HOLD if loop-strand", .example = "2"},
          {.name = "offset", .kind = Kind::length, .limit = Limit::not_negative,
           .doc = "by how much one strand stands higher than another; zero where they lie level",
           .absent = "HOLD with more than one strand", .example = "\"0 in\""},
          {.name = "leg_length", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "embedded length of one of the two legs, along its line, bends included", .absent = "HOLD",
           .example = "\"32 in\""},
          {.name = "breaking_load", .kind = Kind::force, .limit = Limit::more_than_zero,
           .doc = "of one strand, from its certificate", .absent = "HOLD if loop-strand",
           .example = "\"58.6 kip\""},
          {.name = "bend_radius", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "smallest inside radius of the bends of a bar", .absent = "HOLD if loop-bar",
           .example = "\"60 mm\""},
          {.name = "opening", .kind = Kind::angle, .limit = Limit::up_to_90_deg,
           .doc = "angle between the two legs where they meet above the concrete",
           .absent = "one leg is taken to carry the whole pull", .example = "\"60 deg\""},
          {.name = "pin", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "diameter of what goes through the loop, where it is no hook",
           .absent = "HOLD if loop-strand on no hook", .example = "\"2.4 in\""},
          {.name = "minimum_edge", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "distance from every edge that the engineer's design or test of the loop asks for",
           .absent = "HOLD", .example = "\"8 in\""},
          {.name = "bond", .kind = Kind::stress, .limit = Limit::more_than_zero,
           .doc = "safe uniform bond of the strand that the engineer states; needs `engineers_document`",
           .absent = "the lowest of tables/loops.toml", .example = "\"150 psi\""},
      }};

  const Section rating{
      .path = "insert.rating", .doc = "The supplier's declared capacity.", .absent = "HOLD if rated",
      .keys = {
          {.name = "load", .kind = Kind::force, .limit = Limit::more_than_zero, .required = true,
           .doc = "declared load", .example = "\"4 short ton\""},
          {.name = "at_strength", .kind = Kind::stress, .limit = Limit::more_than_zero,
           .doc = "concrete strength it is declared for", .absent = "HOLD", .example = "\"15 MPa\""},
          {.name = "includes_factor", .kind = Kind::number, .limit = Limit::factor_of_safety,
           .doc = "factor on failure that the declared load includes", .absent = "HOLD", .example = "4"},
          {.name = "maximum_angle", .kind = Kind::angle, .limit = Limit::up_to_90_deg,
           .doc = "largest angle of the pull from the axis of the insert that the supplier allows",
           .absent = "HOLD", .example = "\"45 deg\""},
          {.name = "plane", .kind = Kind::word, .words = Words::axes,
           .doc = "of an insert made to be pulled in one plane: the axis of the piece along which that plane meets the face",
           .absent = "it is declared for a pull to every side alike", .example = "\"x\""},
          {.name = "in_plane_within", .kind = Kind::angle, .limit = Limit::up_to_90_deg,
           .doc = "a pull that leaves `plane` by more is across it", .absent = "HOLD with `plane`",
           .example = "\"5 deg\""},
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
          {.name = "design_factor", .kind = Kind::number, .limit = Limit::factor_of_safety,
           .doc = "breaking load over rated load, from the tag or the certificate",
           .absent = "that of the kind, from tables/slings.toml", .example = "5"},
          {.name = "minimum_angle", .kind = Kind::angle, .limit = Limit::up_to_90_deg,
           .doc = "least angle from horizontal that the tag allows", .absent = "that of the rule set",
           .example = "\"45 deg\""},
          {.name = "axial_stiffness", .kind = Kind::force, .limit = Limit::more_than_zero,
           .doc = "E A of one leg",
           .absent = "from `size` and tables/slings.toml, and nearly rigid beside it; without `size` nearly rigid",
           .example = "\"8000 kip\""},
          {.name = "size", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "diameter of the rope, or of the bar of the chain, for its stiffness",
           .absent = "nearly rigid, by the rule set", .example = "\"20 mm\""},
          {.name = "inspected", .kind = Kind::date, .doc = "day of its last examination", .absent = "HOLD",
           .example = "2026-01-15"},
      }};

  const Section hardware{
      .path = "hardware", .repeated = true, .doc = "What takes hold of an insert, at the end of a leg.",
      .absent = "HOLD",
      .keys = {
          {.name = "id", .kind = Kind::name, .required = true, .defines = Names::hardware,
           .doc = "the name that legs use", .example = "\"clutch-1.3\""},
          {.name = "kind", .kind = Kind::word, .words = Words::hardware_kinds, .required = true,
           .doc = "clutches and screw-in parts must be of the size of the insert; shackles and hooks take a "
                  "loop, an eye or a plate",
           .example = "\"clutch\""},
          {.name = "size", .kind = Kind::force, .limit = Limit::more_than_zero,
           .doc = "load class marked on it", .absent = "HOLD if a clutch or a screw-in part",
           .example = "\"1.3 t\""},
          {.name = "rated", .kind = Kind::force, .limit = Limit::more_than_zero,
           .doc = "rated load marked on it", .absent = "HOLD", .example = "\"1.3 t\""},
          {.name = "design_factor", .kind = Kind::number, .limit = Limit::factor_of_safety,
           .doc = "breaking load over rated load, from the mark or the certificate", .absent = "HOLD",
           .example = "5"},
          {.name = "inspected", .kind = Kind::date, .doc = "day of its last examination", .absent = "HOLD",
           .example = "2026-01-15"},
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
          {.name = "inspected", .kind = Kind::date, .doc = "day of its last examination", .absent = "HOLD",
           .example = "2026-01-15"},
      }};

  const Section rigging{
      .path = "rigging", .repeated = true, .required = true, .doc = "Legs from a hook to the inserts, through beams and sheaves where there are any.",
      .keys = {
          {.name = "id", .kind = Kind::name, .required = true, .defines = Names::rigging,
           .doc = "the name that stages use", .example = "\"four-leg\""},
          {.name = "equalised", .kind = Kind::name, .count = Count::groups, .refers_to = Names::insert,
           .doc = "groups of inserts whose legs are one rope over a sheave at the hook",
           .absent = "each leg is a rope of its own", .example = R"([["A1", "A2"]])"},
          {.name = "equaliser_rated", .kind = Kind::force, .limit = Limit::more_than_zero,
           .doc = "the most that each of these sheaves may carry, from its plate", .absent = "HOLD with `equalised`",
           .example = "\"8 short ton\""},
          {.name = "equaliser_inspected", .kind = Kind::date, .doc = "day of the last examination of these sheaves",
           .absent = "HOLD with `equalised`", .example = "2026-01-15"},
          {.name = "length_tolerance", .kind = Kind::share, .limit = Limit::below_100_percent,
           .doc = "how much longer or shorter each leg may be than its length: every combination is computed",
           .absent = "the rule set's sharing alone",
           .example = "\"0.5 %\""},
          {.name = "weight", .kind = Kind::force, .limit = Limit::more_than_zero,
           .doc = "slings, shackles and rings below the hook", .absent = "HOLD", .example = "\"180 lb\""},
      }};

  const Section hook{
      .path = "rigging.hook", .repeated = true, .doc = "Hooks, where there is more than one.",
      .absent = "one hook",
      .keys = {
          {.name = "id", .kind = Kind::name, .required = true, .defines = Names::rigging_part,
           .doc = "the name that legs use", .example = "\"north\""},
          {.name = "at", .kind = Kind::length, .count = Count::three, .required = true,
           .doc = "its place as the piece hangs: x and y along those of the piece, z up; only distances count",
           .example = "[\"6 m\", \"0 m\", \"0 m\"]"},
          {.name = "crane", .kind = Kind::name, .refers_to = Names::crane,
           .doc = "the crane or hoist it belongs to", .absent = "that of the stage",
           .example = "\"bay-2\""},
      }};

  const Section beam{
      .path = "rigging.beam", .repeated = true,
      .doc = "Lifting beams, spreaders and frames: rigid, drawn along the axes of the piece.",
      .absent = "no beam",
      .keys = {
          {.name = "id", .kind = Kind::name, .required = true, .defines = Names::beam,
           .doc = "its name in messages; legs name its points", .example = "\"spreader\""},
          {.name = "weight", .kind = Kind::force, .limit = Limit::more_than_zero, .doc = "its own weight",
           .absent = "HOLD", .example = "\"220 lb\""},
          {.name = "centre", .kind = Kind::length, .count = Count::three, .required = true,
           .doc = "its centre of gravity, in its own axes",
           .example = "[\"0 in\", \"0 in\", \"1 in\"]"},
          {.name = "rated", .kind = Kind::force, .limit = Limit::more_than_zero,
           .doc = "the most that may hang below it, from its plate", .absent = "HOLD",
           .example = "\"10 short ton\""},
          {.name = "inspected", .kind = Kind::date, .doc = "day of its last examination", .absent = "HOLD",
           .example = "2026-01-15"},
      }};

  const Section beam_point{
      .path = "rigging.beam.points", .repeated = true, .required = true,
      .doc = "Where legs end on it, written as a list of tables in one line or more.",
      .keys = {
          {.name = "id", .kind = Kind::name, .required = true, .defines = Names::rigging_part,
           .doc = "the name that legs use", .example = "\"left\""},
          {.name = "at", .kind = Kind::length, .count = Count::three, .required = true,
           .doc = "its place in the axes of the beam",
           .example = "[\"-4 ft\", \"0 in\", \"-3 in\"]"},
      }};

  const Section sheave{
      .path = "rigging.sheave", .repeated = true,
      .doc = "Sheaves that roll: the legs from one are one rope, whose length is the sum of theirs.",
      .absent = "no sheave",
      .keys = {
          {.name = "id", .kind = Kind::name, .required = true, .defines = Names::rigging_part,
           .doc = "the name that legs use", .example = "\"block-1\""},
          {.name = "weight", .kind = Kind::force, .limit = Limit::more_than_zero, .doc = "its own weight",
           .absent = "HOLD", .example = "\"35 lb\""},
          {.name = "rated", .kind = Kind::force, .limit = Limit::more_than_zero,
           .doc = "the most that it may pull where it hangs, from its plate", .absent = "HOLD",
           .example = "\"8 short ton\""},
          {.name = "inspected", .kind = Kind::date, .doc = "day of its last examination", .absent = "HOLD",
           .example = "2026-01-15"},
      }};

  const Section link{
      .path = "rigging.link", .repeated = true,
      .doc = "Links and rings that join legs: each leg from one is a rope of its own.",
      .absent = "no link",
      .keys = {
          {.name = "id", .kind = Kind::name, .required = true, .defines = Names::rigging_part,
           .doc = "the name that legs use", .example = "\"ring-1\""},
          {.name = "weight", .kind = Kind::force, .limit = Limit::more_than_zero, .doc = "its own weight",
           .absent = "HOLD", .example = "\"4 lb\""},
          {.name = "rated", .kind = Kind::force, .limit = Limit::more_than_zero,
           .doc = "the most that it may pull where it hangs, from its plate", .absent = "HOLD",
           .example = "\"8 short ton\""},
          {.name = "inspected", .kind = Kind::date, .doc = "day of its last examination", .absent = "HOLD",
           .example = "2026-01-15"},
      }};

  const Section leg{
      .path = "rigging.legs", .repeated = true, .required = true,
      .doc = "One for each insert, beam point, sheave and link that hangs on something, written as a list of tables "
             "in one line or more.",
      .keys = {
          {.name = "to", .kind = Kind::name, .required = true, .refers_to = Names::insert_or_rigging_part,
           .doc = "what hangs on it: an insert, a point of a beam, a sheave, a link", .example = "\"A1\""},
          {.name = "from", .kind = Kind::name, .refers_to = Names::rigging_part,
           .doc = "where it hangs: a hook, a point of a beam, a sheave, a link", .absent = "the hook",
           .example = "\"left\""},
          {.name = "length", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "from where it bears above to where it bears below", .absent = "HOLD",
           .example = "\"8 ft\""},
          {.name = "gear", .kind = Kind::name, .refers_to = Names::sling, .doc = "the sling",
           .absent = "HOLD",
           .example = "\"chain-1/2\""},
          {.name = "hardware", .kind = Kind::name, .refers_to = Names::hardware,
           .doc = "what takes hold of the insert", .absent = "HOLD", .example = "\"clutch-1.3\""},
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
           .absent = "HOLD: examination of the gear, and `valid_for` of the evidence", .example = "2026-03-03T08:00:00"},
          {.name = "dynamic_factor", .kind = Kind::number, .limit = Limit::at_least_one,
           .doc = "stated by the engineer instead of the rule set's", .absent = "that of the rule set",
           .example = "1.2"},
          {.name = "hook_latch", .kind = Kind::yes_no, .doc = "every hook has a latch that closes",
           .absent = "HOLD", .example = "true"},
          {.name = "exclusion_zone", .kind = Kind::yes_no,
           .doc = "nobody can get under the piece or where it may swing", .absent = "HOLD",
           .example = "true"},
          {.name = "tag_line", .kind = Kind::yes_no, .doc = "the piece is held from turning by tag lines",
           .absent = "HOLD", .example = "true"},
          {.name = "signaller", .kind = Kind::yes_no,
           .doc = "one person gives the signals, and the operator knows who", .absent = "HOLD",
           .example = "true"},
          {.name = "critical_lift_plan", .doc = "number of the written plan of a critical lift",
           .absent = "HOLD where the lift is critical", .example = "\"...\""},
          {.name = "wind_speed", .kind = Kind::speed, .limit = Limit::not_negative,
           .doc = "the gust, not the mean, that the lift is made in, where the piece hangs",
           .absent = "judged in still air, and a caution says so", .example = "\"9 m/s\""},
          {.name = "wind_coefficient", .kind = Kind::number, .limit = Limit::more_than_zero,
           .doc = "pressure on the side area over that of the free wind, stated by the engineer instead of the table's",
           .absent = "that of tables/wind.toml", .example = "1.8"},
      }};

  return {insert, loop, rating, rated_range_section(), anchor_bars_section(), sling, hardware, crane, rigging, hook, beam,
          beam_point, sheave, link, leg, stage};
}

}  // namespace firstpick::plan
