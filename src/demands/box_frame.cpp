#include "demands/box_frame.hpp"

#include <cmath>

namespace firstpick::demands {

Outcome<BoxMoments> box_moments(const BoxFrame& box) {
  // Numbers in newton and metre: the equations mix powers of lengths.
  const double B = in(m, box.width), H = in(m, box.height), c = in(m, box.pick), S = box.thrust.value();
  const double wt = box.top_load.value(), wb = box.bottom_load.value(), ws = box.side_load.value();
  const auto second_moment = [](Length t) { return std::pow(in(m, t), 3) / 12.0; };
  const double It = second_moment(box.top), Ib = second_moment(box.bottom), Is = second_moment(box.side);
  if (!(B > 0.0) || !(H > 0.0) || !(It > 0.0) || !(Ib > 0.0) || !(Is > 0.0) || !(c >= 0.0) || !(c <= 0.5 * B) ||
      !std::isfinite(B + H + It + Ib + Is + S + wt + wb + ws))
    return NotAssessed{"a number of the box is not usable", {}};
  const double P = 0.5 * (wt + wb) * B + ws * H;

  const double a11 = B / It + 2.0 * H / (3.0 * Is), a12 = H / (3.0 * Is), a22 = B / Ib + 2.0 * H / (3.0 * Is);
  const double b1 = -(P * c * (B - c) - wt * B * B * B / 12.0 - S * (B - 2.0 * c)) / It;
  const double b2 = -(wb * B * B * B / 12.0) / Ib;
  const double determinant = a11 * a22 - a12 * a12;
  const double m1 = (b1 * a22 - a12 * b2) / determinant, m2 = (a11 * b2 - a12 * b1) / determinant;

  BoxMoments found;
  found.top_corner = PlateMoment::from_value(m1);
  found.bottom_corner = PlateMoment::from_value(m2);
  found.top_middle = PlateMoment::from_value(m1 + P * c - wt * B * B / 8.0 - S);
  found.top_pick = PlateMoment::from_value(m1 + P * c - wt * c * (B - c) / 2.0);
  found.bottom_middle = PlateMoment::from_value(m2 + wb * B * B / 8.0);
  found.line_of_picks = LineLoad::from_value(P);
  found.wall_top = LineLoad::from_value(0.5 * wb * B + ws * H);
  found.wall_bottom = LineLoad::from_value(0.5 * wb * B);
  return found;
}

}  // namespace firstpick::demands
