// A strip of a wall or slab that bends under the pull of an insert.
//
//   between two supports     M = F a b / l + H e              w = t + k_w a b / l            at the pull
//                            M = F a (b / l)^2 + H e          w = t + k_e a (2 - a / l)      at the nearer support, held fast
//   jutting out from one     M = F a + H e                    w = t + k_c a
//
//   H e     the pull along the strip by its arm over the middle of the wall
//   sigma = 6 M / (w t^2) + H / (w t)                         the larger of pull and support
//
// At the pull a and b reach half a thickness into the supports, l = a + b. Half of w lies to either side, no farther than a free
// edge and no farther than n_strip t / 2. Other pulls on the same wall add what statics makes of them, as if in this strip; one
// that stands farther to the side than t may end the strip half way to it instead: what bends less counts.
//
// Source   statics; widths: Deutscher Ausschuss fuer Stahlbeton, Heft 240, from memory. F a b / l is the moment of a simply
//          supported strip: however far its ends are held, the strip at the pull carries no more.
// Range    one way: a wall that is held on other sides, too, bends less.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "record/outcome.hpp"
#include "units/beam_quantities.hpp"
#include "units/quantity.hpp"

namespace firstpick::demands {

struct WallPull {
  Force across{};
  Length along{}, aside{};  // from the insert: along the strip towards `to_support`, and beside it
};

struct WallStrip {
  Length thickness{};
  Length to_support{};                 // the nearer one, clear of it
  std::optional<Length> to_other{};    // the opposite one; none: the strip juts out
  std::array<std::optional<Length>, 2> free_edge{};  // to the side where `aside` is positive, negative; none: held
  Force across{}, along{};             // of the insert, along without sign
  Length arm{};                        // of `along`
  std::vector<WallPull> others{};      // that bend the wall to the same side
  double spread = 0.0;                 // k_w or k_c
  double spread_end = 0.0;             // k_e, between two supports
  double widest = 0.0;                 // n_strip
};

struct WallStripState {
  bool at_support = false;             // between two supports: at the nearer one
  Length to_support{}, span{};         // a, l as counted
  Length spread{};                     // w before edges and other pulls end it
  std::array<Length, 2> sides{};       // of the insert, as in free_edge
  Length width{};                      // their sum
  Moment moment{}, of_others{};        // moment: with theirs
  Stress tension{};
};

// Not assessed: a number that is not usable.
Outcome<WallStripState> wall_strip_state(const WallStrip& strip);

}  // namespace firstpick::demands
