// The keys up to the form. `absent` says what the program does without the key.
#include "plan/keys.hpp"

namespace firstpick::plan {

std::vector<Section> piece_sections() {
  const Section top{
      .path = "", .required = true, .doc = "Before the first heading.",
      .keys = {
          {.name = "format", .kind = Kind::format, .required = true,
           .doc = "version of the plan format", .example = "1"},
          {.name = "rules", .kind = Kind::word, .words = Words::rule_sets,
           .doc = "rule set that judges the plan", .absent = "the rule set of the command line, else us",
           .example = "\"us\""},
      }};

  const Section piece{
      .path = "piece", .required = true, .doc = "The piece and who answers for its plan.",
      .keys = {
          {.name = "mark", .kind = Kind::name, .required = true,
           .doc = "piece mark, as painted on the piece", .example = "\"BC-0806-14\""},
          {.name = "title", .doc = "what it is, in one line", .absent = "outputs carry the mark alone",
           .example = "\"Box culvert section 8 x 6 ft, 6 ft long\""},
          {.name = "revision", .doc = "revision of the drawing", .absent = "outputs carry no revision",
           .example = "\"C\""},
          {.name = "units", .kind = Kind::word, .words = Words::unit_systems,
           .doc = "how results are printed; a plan may mix units as it likes",
           .absent = "results in SI units",
           .example = "\"us\""},
          {.name = "stated_weight", .kind = Kind::force, .limit = Limit::more_than_zero,
           .doc = "weight on the drawing, compared with geometry times density",
           .absent = "HOLD", .example = "\"19.2 kip\""},
          {.name = "model", .kind = Kind::word, .words = Words::piece_models,
           .doc = "how bending is computed: as a line (beam), a panel (flat plate), or not at all (block: small and stocky)",
           .absent = "derived from the shape, and printed", .example = "\"line\""},
          {.name = "bending_check",
           .doc = "the engineer's own check of its bending, named; counts only where the program computes none",
           .absent = "HOLD for a piece whose bending the program cannot compute",
           .example = "\"calculation 24-117, sheet 6\""},
          {.name = "may_crack", .kind = Kind::yes_no,
           .doc = "the engineer accepts cracks while it hangs: the bars of [[piece.bar]] carry it; prints a caution",
           .absent = "false: bars are not counted, the piece must not crack", .example = "true"},
          {.name = "prepared_by", .doc = "who made this plan", .absent = "outputs name nobody",
           .example = "\"...\""},
          {.name = "engineer", .doc = "engineer of record", .absent = "HOLD", .example = "\"...\""},
      }};

  const Section solid{
      .path = "piece.solid", .repeated = true, .required = true,
      .doc = "Solids are added or cut away in the order of the file. Each shape takes its own keys.",
      .keys = {
          {.name = "name", .kind = Kind::name, .required = true, .defines = Names::solid,
           .doc = "for messages, and to choose its faces", .example = "\"outer\""},
          {.name = "shape", .kind = Kind::word, .words = Words::shapes, .required = true,
           .doc = "shape of the solid", .example = "\"box\""},
          {.name = "cut", .kind = Kind::yes_no, .doc = "taken away from the solids before it",
           .absent = "false: the solid is added", .example = "true"},
          {.name = "at", .kind = Kind::length, .count = Count::three, .required = true,
           .doc = "box, wedge: lowest corner; round shapes: centre of the base; prism, mesh: origin",
           .example = R"(["0 in", "0 in", "0 in"])"},
          {.name = "size", .kind = Kind::length, .count = Count::three, .limit = Limit::more_than_zero,
           .required = true, .shapes = {"box", "wedge"}, .doc = "extent along x, y, z",
           .example = R"(["9 ft 4 in", "6 ft", "7 ft 4 in"])"},
          {.name = "axis", .kind = Kind::word, .words = Words::axes,
           .shapes = {"cylinder", "cone", "pipe", "prism"}, .doc = "direction of the length",
           .absent = "z", .example = "\"z\""},
          {.name = "diameter", .kind = Kind::length, .limit = Limit::more_than_zero, .required = true,
           .shapes = {"cylinder", "pipe"}, .doc = "of a pipe: outside", .example = "\"48 in\""},
          {.name = "inside_diameter", .kind = Kind::length, .limit = Limit::more_than_zero, .required = true,
           .shapes = {"pipe"}, .doc = "less than the diameter", .example = "\"36 in\""},
          {.name = "bottom_diameter", .kind = Kind::length, .limit = Limit::not_negative, .required = true,
           .shapes = {"cone"}, .doc = "at the base; zero for a point", .example = "\"60 in\""},
          {.name = "top_diameter", .kind = Kind::length, .limit = Limit::not_negative, .required = true,
           .shapes = {"cone"}, .doc = "at the far end; zero for a point", .example = "\"36 in\""},
          {.name = "length", .kind = Kind::length, .limit = Limit::more_than_zero, .required = true,
           .shapes = {"cylinder", "cone", "pipe", "prism"}, .doc = "along the axis", .example = "\"6.0 m\""},
          {.name = "top_size", .kind = Kind::length, .count = Count::two, .limit = Limit::not_negative,
           .required = true, .shapes = {"wedge"}, .doc = "extent of the top face along x, y",
           .example = R"(["4 ft", "6 ft"])"},
          {.name = "top_at", .kind = Kind::length, .count = Count::two, .required = true, .shapes = {"wedge"},
           .doc = "corner of the top face, from the corner of the bottom face",
           .example = R"(["1 ft", "0 in"])"},
          {.name = "outline", .kind = Kind::length, .count = Count::points, .required = true,
           .shapes = {"prism"},
           .doc = "corners across the axis, in order; the last joins the first",
           .example = R"([["0 m", "0 m"], ["2 m", "0 m"], ["0 m", "1 m"]])"},
          {.name = "holes", .kind = Kind::length, .count = Count::point_lists, .shapes = {"prism"},
           .doc = "outlines inside the outline, left out of the prism", .absent = "no holes",
           .example = R"([[["0.2 m", "0.2 m"], ["0.4 m", "0.2 m"], ["0.2 m", "0.4 m"]]])"},
          {.name = "file", .kind = Kind::path, .required = true, .shapes = {"mesh"},
           .doc = "STEP or STL file in the plan's folder or below it", .example = "\"stair.step\""},
          {.name = "file_unit", .kind = Kind::length, .limit = Limit::more_than_zero, .shapes = {"mesh"},
           .doc = "length of one unit of the file; only for STL, which does not say it",
           .absent = "an error for STL; a STEP file says it itself", .example = "\"1 mm\""},
      }};

  const Section turned{
      .path = "piece.solid.turned", .doc = "Turns the solid about an axis through `at`.",
      .absent = "the solid is not turned",
      .keys = {
          {.name = "about", .kind = Kind::word, .words = Words::axes, .required = true,
           .doc = "direction of the axis", .example = "\"z\""},
          {.name = "by", .kind = Kind::angle, .required = true,
           .doc = "anticlockwise, looking against the axis", .example = "\"30 deg\""},
      }};

  const Section strand{
      .path = "piece.strand", .repeated = true,
      .doc = "Strands stretched before the piece was cast, row by row, as the engineer states them for the time of the "
             "lift. They are counted where the piece is computed as a line.",
      .absent = "the piece is not prestressed",
      .keys = {
          {.name = "name", .kind = Kind::name, .required = true, .doc = "of the row, for messages",
           .example = "\"bottom row\""},
          {.name = "force", .kind = Kind::force, .limit = Limit::more_than_zero,
           .doc = "that the row holds, after the losses up to this lift", .absent = "HOLD", .example = "\"110 kip\""},
          {.name = "line", .kind = Kind::length, .count = Count::path,
           .doc = "places along the row from where its bond begins to where it ends, straight between them",
           .absent = "HOLD", .example = R"([["0 ft", "8 in", "3 in"], ["40 ft", "8 in", "3 in"]])"},
          {.name = "transfer_length", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "over which its force comes into the concrete, from each end of the line", .absent = "HOLD",
           .example = "\"25 in\""},
      }};

  const Section bar{
      .path = "piece.bar", .repeated = true,
      .doc = "Bars that carry a piece that may crack, layer by layer. They are counted with `may_crack = true` only, where "
             "the piece is computed as a line.",
      .absent = "HOLD with `may_crack = true` and without a `bending_check`",
      .keys = {
          {.name = "name", .kind = Kind::name, .required = true, .doc = "of the layer, for messages",
           .example = "\"bottom bars\""},
          {.name = "area", .kind = Kind::area, .limit = Limit::more_than_zero, .doc = "of all bars of the layer",
           .absent = "HOLD", .example = "\"1.24 in2\""},
          {.name = "yield_strength", .kind = Kind::stress, .limit = Limit::more_than_zero, .doc = "of the bars",
           .absent = "HOLD", .example = "\"60 ksi\""},
          {.name = "line", .kind = Kind::length, .count = Count::path,
           .doc = "places along the middle of the bars, between which they are anchored for their full stress",
           .absent = "HOLD", .example = R"([["1 ft", "8 in", "2 in"], ["39 ft", "8 in", "2 in"]])"},
          {.name = "spacing", .kind = Kind::length, .limit = Limit::more_than_zero,
           .doc = "from bar to bar, middle to middle; the width of cracks grows with it", .absent = "HOLD",
           .example = "\"4 in\""},
      }};

  const Section concrete{
      .path = "concrete", .required = true, .doc = "The concrete as specified.",
      .keys = {
          {.name = "kind", .kind = Kind::word, .words = Words::concretes, .required = true,
           .doc = "kind of concrete", .example = "\"normalweight\""},
          {.name = "density", .kind = Kind::density, .limit = Limit::more_than_zero, .required = true,
           .doc = "with its reinforcement, as lifted", .example = "\"150 lb/ft3\""},
          {.name = "density_tolerance", .kind = Kind::share, .limit = Limit::below_100_percent,
           .doc = "how much heavier it may be", .absent = "HOLD", .example = "\"3 %\""},
          {.name = "design_strength", .kind = Kind::stress, .limit = Limit::more_than_zero,
           .doc = "grade of the concrete; recorded, never used for a lift", .absent = "no effect",
           .example = "\"5000 psi\""},
          {.name = "cracked", .kind = Kind::yes_no, .doc = "the concrete around the inserts may be cracked",
           .absent = "HOLD if an insert is headed", .example = "true"},
          {.name = "form_stripping_strength", .kind = Kind::stress, .limit = Limit::more_than_zero,
           .doc = "strength that the drawing asks for before stripping",
           .absent = "HOLD in the stage that brings the piece out of its form",
           .example = "\"2500 psi\""},
          {.name = "lifting_strength", .kind = Kind::stress, .limit = Limit::more_than_zero,
           .doc = "strength that the drawing asks for before lifting",
           .absent = "HOLD in the stages turn, yard, store and set",
           .example = "\"3500 psi\""},
          {.name = "transportation_strength", .kind = Kind::stress, .limit = Limit::more_than_zero,
           .doc = "strength that the drawing asks for before hauling",
           .absent = "HOLD in the stage haul",
           .example = "\"4000 psi\""},
          {.name = "release_strength", .kind = Kind::stress, .limit = Limit::more_than_zero,
           .doc = "strength that the drawing asks for before strands are released; no lift below it; without "
                  "[[piece.strand]], HOLD",
           .absent = "HOLD where the piece has strands", .example = "\"3500 psi\""},
      }};

  const Section evidence{
      .path = "concrete.evidence", .doc = "The strength shown for this lift.", .absent = "HOLD",
      .keys = {
          {.name = "specimen", .kind = Kind::specimen, .doc = "shape and size, one of tables/specimens.toml",
           .absent = "HOLD", .example = "\"cylinder 4x8 in\""},
          {.name = "cure", .kind = Kind::word, .words = Words::cures, .doc = "how the specimens were cured",
           .absent = "HOLD", .example = "\"field\""},
          {.name = "cast", .kind = Kind::moment, .doc = "when the piece was cast",
           .absent = "HOLD", .example = "2026-03-02T16:30:00"},
          {.name = "tested", .kind = Kind::moment, .doc = "when the specimens were broken",
           .absent = "HOLD", .example = "2026-03-03T07:10:00"},
          {.name = "results", .kind = Kind::stress, .count = Count::list, .limit = Limit::more_than_zero,
           .doc = "one for each specimen, as measured", .absent = "HOLD",
           .example = R"(["2610 psi", "2550 psi", "2700 psi"])"},
          {.name = "valid_for", .kind = Kind::duration, .limit = Limit::more_than_zero,
           .doc = "how long after the test it may carry a lift",
           .absent = "a note; on the board of a shift, HOLD",
           .example = "\"24 h\""},
          {.name = "report", .doc = "number of the test report; recorded", .absent = "no effect",
           .example = "\"T-118\""},
      }};

  const Section form{
      .path = "form", .doc = "What grips the piece when it is stripped.",
      .absent = "HOLD in the stage that brings the piece out of its form",
      .keys = {
          {.name = "product", .kind = Kind::name,
           .doc = "product and face of the form, as the rule set's bending multipliers name them",
           .absent = "the largest bending multiplier of the stage", .example = "\"flat.smooth-mould\""},
          {.name = "released", .kind = Kind::yes_no,
           .doc = "the piece came out of its form before the first stage of this plan",
           .absent = "the first stage brings it out of the form, against its grip", .example = "true"},
      }};

  const Section contact{
      .path = "form.contact", .repeated = true,
      .doc = "Faces of the piece that touch the form: `faces` or `all_but`, one of them. Where nothing "
             "grips, write `contact = []` in [form].",
      .absent = "HOLD in the stage that brings the piece out of its form",
      .keys = {
          {.name = "faces", .kind = Kind::name, .count = Count::one_or_list,
           .refers_to = Names::solid_or_direction,
           .doc = "made by this solid, or facing this way (\"+x\" to \"-z\")", .absent = "`all_but` chooses",
           .example = "\"barrel\""},
          {.name = "all_but", .kind = Kind::name, .count = Count::one_or_list,
           .refers_to = Names::solid_or_direction, .doc = "every face but these", .absent = "`faces` chooses",
           .example = R"(["+z"])"},
          {.name = "finish", .kind = Kind::word, .words = Words::finishes, .doc = "face of the form",
           .absent = "HOLD unless `adhesion` is given", .example = "\"steel-oiled\""},
          {.name = "draft", .kind = Kind::angle, .limit = Limit::up_to_90_deg,
           .doc = "between the face and the pull; recorded, does not lower the grip", .absent = "no effect",
           .example = "\"1 deg\""},
          {.name = "adhesion", .kind = Kind::stress, .limit = Limit::not_negative,
           .doc = "grip per area stated by the engineer, instead of the table's",
           .absent = "that of the finish",
           .example = "\"20 psf\""},
      }};

  const Section attached{
      .path = "form.attached", .repeated = true,
      .doc = "What leaves the form with the piece. Where nothing does, write `attached = []` in [form].",
      .absent = "HOLD in the stage that brings the piece out of its form",
      .keys = {
          {.name = "what", .kind = Kind::name, .required = true, .doc = "in words", .example = "\"pallet\""},
          {.name = "weight", .kind = Kind::force, .limit = Limit::more_than_zero, .required = true,
           .doc = "its weight", .example = "\"350 lb\""},
          {.name = "at", .kind = Kind::length, .count = Count::three, .doc = "its centre of gravity",
           .absent = "HOLD", .example = R"(["4 ft", "3 ft", "0 in"])"},
          {.name = "until", .kind = Kind::word, .words = Words::stage_kinds,
           .doc = "the stage after which it is taken off",
           .absent = "after the first stage the lift is judged with it and without it", .example = "\"strip\""},
      }};

  return {top, piece, solid, turned, strand, bar, concrete, evidence, form, contact, attached};
}

}  // namespace firstpick::plan
