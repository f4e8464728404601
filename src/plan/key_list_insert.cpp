// The keys of two parts of an insert: loads declared by the direction of the pull, and bars that hold the body of concrete.
#include "plan/keys.hpp"

namespace firstpick::plan {

Section rated_range_section() {
  return {
      .path = "insert.rating.ranges", .repeated = true,
      .doc = "Directions of the pull, each with the load declared for it, written as a list of tables in one line or more. "
             "No direction stands above `load`.",
      .absent = "`load` is declared for every pull up to `maximum_angle`",
      .keys = {
          {.name = "from", .kind = Kind::angle, .limit = Limit::up_to_90_deg,
           .doc = "smallest angle of the pull from the axis of the insert", .absent = "0 deg", .example = "\"30 deg\""},
          {.name = "to", .kind = Kind::angle, .limit = Limit::up_to_90_deg, .required = true,
           .doc = "largest angle of the pull from the axis of the insert", .example = "\"60 deg\""},
          {.name = "load", .kind = Kind::force, .limit = Limit::more_than_zero, .required = true,
           .doc = "declared load of these directions, with the strength and factor of the rating",
           .example = "\"3.2 short ton\""},
          {.name = "across", .kind = Kind::yes_no,
           .doc = "the load is that of a pull across `plane`; needs `plane`",
           .absent = "false: of a pull in the plane", .example = "true"},
      }};
}

Section anchor_bars_section() {
  return {
      .path = "insert.bars",
      .doc = "Bars that hold the body of concrete which would break out with a headed insert: all alike, along its axis, "
             "on both sides of it.",
      .absent = "the concrete alone is counted",
      .keys = {
          {.name = "count", .kind = Kind::whole, .doc = "number of legs that cross the body", .absent = "HOLD",
           .example = "4"},
          {.name = "diameter", .kind = Kind::length, .limit = Limit::more_than_zero, .doc = "of one bar",
           .absent = "HOLD", .example = "\"0.5 in\""},
          {.name = "yield_strength", .kind = Kind::stress, .limit = Limit::more_than_zero, .doc = "of the bars",
           .absent = "HOLD", .example = "\"60 ksi\""},
          {.name = "ribbed", .kind = Kind::yes_no, .doc = "deformed bars; plain ones are not counted",
           .absent = "HOLD", .example = "true"},
          {.name = "distance", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "from the axis of the insert to the farthest bar", .absent = "HOLD", .example = "\"3 in\""},
          {.name = "top", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "depth below the face at which the bars begin, or of the outside of their bend", .absent = "HOLD",
           .example = "\"1.5 in\""},
          {.name = "bottom", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "depth below the face at which the bars end, or of the outside of their bend", .absent = "HOLD",
           .example = "\"40 in\""},
          {.name = "top_end", .kind = Kind::word, .words = Words::bar_ends,
           .doc = "a hook is one of the standard, or the bend of a stirrup around a bar", .absent = "HOLD",
           .example = "\"hook\""},
          {.name = "bottom_end", .kind = Kind::word, .words = Words::bar_ends, .doc = "the same, of the deep end",
           .absent = "HOLD", .example = "\"straight\""},
      }};
}

}  // namespace firstpick::plan
