// The line method of the precast handbook for a rectangular panel of one thickness, stripped flat: a check by hand beside
// the plate of panel_bending.hpp. The panel is cut into strips that bend as beams.
//
//   four picks, at 0.2071 of each side     M = (3 - 2 sqrt(2))/16 w a^2 b, both signs, each half of the width (0.0107)
//   eight picks, two rows of four, equalised, at 0.1036 and 0.3964 of the length
//                                          along: a quarter of that; across: half as much for each row of two picks
//   lifted at one edge line, pick at 0.2929 of the length from its end, other edge on the ground
//                                          M = (3 - 2 sqrt(2))/4 w a^2 b over the whole width (0.0429)
//
// w load per area, a along, b across. A strip is half the panel wide, at most `widest` at the picks (15 thicknesses).
//
// Source   the coefficients are statics of a beam with equal sagging and hogging; the strips are those of the PCI handbook,
//          from memory. Right only for a uniform panel without openings.
#pragma once

#include "units/beam_quantities.hpp"

namespace firstpick::demands {

struct StripMoment {
  Moment moment{};
  Length width{};                                // that carries it
  PlateMoment per_width() const { return moment / width; }
};

struct HandbookPanel {
  StripMoment along, across;  // bending of the length, bending of the width
};

// The same statics for four picks `end_along` and `end_across` from the sides: of a beam that hangs over by c at both ends,
// the larger of c^2/2 over a pick and L^2/8 - L c/2 between.
HandbookPanel four_picks_at(Stress load, Length length, Length width, Length end_along, Length end_across, Length widest);
HandbookPanel four_picks(Stress load, Length length, Length width, Length widest);
HandbookPanel eight_picks(Stress load, Length length, Length width, Length widest);
StripMoment edge_lift(Stress load, Length length, Length width);

}  // namespace firstpick::demands
