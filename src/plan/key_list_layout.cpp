// The keys of what `firstpick layout` may change. No other command looks at them.
#include "plan/keys.hpp"

namespace firstpick::plan {

std::vector<Section> layout_sections() {
  const Section layout{
      .path = "layout",
      .doc = "What `firstpick layout` may change. Every other command reads it for faults and does nothing with it.",
      .absent = "`firstpick layout` says what to write",
      .keys = {
          {.name = "step", .kind = Kind::length, .limit = Limit::more_than_zero, .required = true,
           .doc = "the first insert of each move comes to lie on a whole number of these from the origin of the plan",
           .example = "\"50 mm\""},
          {.name = "legs", .kind = Kind::word, .words = Words::leg_lengths, .required = true,
           .doc = "keep-length: the legs stay as long as they are. keep-angle: a leg straight from a hook to an insert that "
                  "moves gets longer or shorter as the insert moves out or in, rounded up to `step`",
           .example = "\"keep-length\""},
          {.name = "edge_distance", .kind = Kind::length, .limit = Limit::not_negative,
           .doc = "least distance of an insert that moves from every edge of its face, openings too",
           .absent = "the rules alone decide", .example = "\"300 mm\""},
      }};

  const Section move{
      .path = "layout.move", .repeated = true, .required = true,
      .doc = "Inserts that move together along one axis. An insert may be in one of these for each axis.",
      .keys = {
          {.name = "inserts", .kind = Kind::name, .count = Count::one_or_list, .required = true,
           .refers_to = Names::insert, .doc = "which; the first one leads, the others follow it",
           .example = R"(["P1", "P2", "P3", "P4"])"},
          {.name = "along", .kind = Kind::word, .words = Words::axes, .required = true, .doc = "axis of the piece",
           .example = "\"x\""},
          {.name = "mirror", .kind = Kind::yes_no,
           .doc = "all lie at one distance from a plane across the axis, each on the side where it is now",
           .absent = "false: all shift by the same amount", .example = "true"},
          {.name = "about", .kind = Kind::length, .doc = "where on the axis the plane of `mirror` is",
           .absent = "through the centre of gravity of the concrete", .example = "\"2 m\""},
          {.name = "from", .kind = Kind::length, .doc = "least place of the first insert on the axis",
           .absent = "as far as the piece goes", .example = "\"0.3 m\""},
          {.name = "to", .kind = Kind::length, .doc = "greatest place of the first insert on the axis",
           .absent = "as far as the piece goes", .example = "\"1.9 m\""},
      }};

  const Section keep_out{
      .path = "layout.keep_out", .repeated = true,
      .doc = "A box in which no insert that moves may lie, nor on its border.",
      .absent = "none",
      .keys = {
          {.name = "corners", .kind = Kind::length, .count = Count::two_points, .required = true,
           .doc = "two opposite corners, in piece axes",
           .example = R"([["1.4 m", "0.7 m", "0 m"], ["2.8 m", "2.0 m", "0.15 m"]])"},
      }};

  return {layout, move, keep_out};
}

}  // namespace firstpick::plan
