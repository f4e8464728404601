#include "demands/handbook_panel.hpp"

#include <algorithm>
#include <cmath>

namespace firstpick::demands {

namespace {

// Of a beam on two picks at (sqrt(2) - 1)/2 from its ends, over w L^2: pick moment c^2/2 = moment at mid-length.
const double equal_moments = (3.0 - 2.0 * std::sqrt(2.0)) / 8.0;

}  // namespace

HandbookPanel four_picks_at(Stress load, Length length, Length width, Length end_along, Length end_across,
                            Length widest) {
  const auto most = [](Length span, Length end) {  // of a beam under one load per length
    return std::max(Area{0.5 * end * end}, Area{0.125 * span * span - 0.5 * span * end});
  };
  return {{0.5 * load * width * most(length, end_along), std::min(0.5 * width, widest)},
          {0.5 * load * length * most(width, end_across), std::min(0.5 * length, widest)}};
}

HandbookPanel four_picks(Stress load, Length length, Length width, Length widest) {
  const Moment along = 0.5 * equal_moments * load * length * length * width;
  const Moment across = 0.5 * equal_moments * load * length * width * width;
  return {{along, std::min(0.5 * width, widest)}, {across, std::min(0.5 * length, widest)}};
}

HandbookPanel eight_picks(Stress load, Length length, Length width, Length widest) {
  const HandbookPanel four = four_picks(load, length, width, widest);
  return {{0.25 * four.along.moment, four.along.width},
          {0.5 * four.across.moment, std::min(0.25 * length, widest)}};
}

StripMoment edge_lift(Stress load, Length length, Length width) {
  return {2.0 * equal_moments * load * length * length * width, width};
}

}  // namespace firstpick::demands
