// The keys of a shift file, in the order in which it is written. docs/shift-file.md has them in words.

#include "plan/keys.hpp"

namespace firstpick::plan {

const SectionList& shift_file_sections() {
  static const SectionList all = {
      {.path = "",
       .required = true,
       .doc = "One shift of one crane.",
       .keys =
           {
               {.name = "format",
                .kind = Kind::format,
                .required = true,
                .doc = "of this file",
                .example = "1"},
               {.name = "plant",
                .kind = Kind::name,
                .required = true,
                .doc = "plant and crane, as the board shows them",
                .example = "\"North yard, crane 2\""},
               {.name = "zone",
                .kind = Kind::name,
                .required = true,
                .doc = "of every local time in this file, its plans and its pours: a name of the IANA "
                       "database, or an "
                       "offset from UTC",
                .example = "\"America/Chicago\""},
               {.name = "starts",
                .kind = Kind::moment,
                .required = true,
                .doc = "start of the shift; before it every piece is at best a HOLD",
                .example = "2026-03-03T06:00:00"},
               {.name = "ends",
                .kind = Kind::moment,
                .required = true,
                .doc = "end of the shift; after it every piece is at best a HOLD",
                .example = "2026-03-03T14:30:00"},
               {.name = "stale_after",
                .kind = Kind::duration,
                .limit = Limit::more_than_zero,
                .doc = "age at which the page says that it is old, at most an hour",
                .absent = "5 minutes",
                .example = "\"10 min\""},
           },
       .called = "the shift file"},
      {.path = "piece",
       .repeated = true,
       .required = true,
       .doc = "Pieces of one plan and one pour.",
       .keys = {
           {.name = "plan",
            .kind = Kind::path,
            .required = true,
            .doc = "plan in this folder or below it",
            .example = "\"manhole-base.toml\""},
           {.name = "pour",
            .kind = Kind::path,
            .doc = "strength file of their pour, in this folder or below it",
            .absent = "the strength evidence of the plan alone",
            .example = "\"strength/pour-0302-2.toml\""},
           {.name = "serials",
            .kind = Kind::name,
            .count = Count::one_or_list,
            .defines = Names::serial,
            .doc = "one for each piece",
            .absent = "`count` is required",
            .example = R"(["MB-0211", "MB-0212"])"},
           {.name = "count",
            .kind = Kind::whole,
            .doc = "how many pieces, where they have no serials",
            .absent = "`serials` is required",
            .example = "4"},
           {.name = "form",
            .kind = Kind::name,
            .doc = "form or bed in which they lie",
            .absent = "no form is shown",
            .example = "\"bed 2\""},
           {.name = "priority",
            .kind = Kind::whole,
            .doc = "1 is taken first among pieces that are as ready",
            .absent = "after all that have one",
            .example = "1"},
       }}};
  return all;
}

}  // namespace firstpick::plan
