#include "demands/segments_apart.hpp"

#include <algorithm>

namespace firstpick::demands {

Length segments_apart(const std::array<Position, 2>& one, const std::array<Position, 2>& other) {
  const auto metres_of = [](const Position& p) { return Direction{in(m, p.x), in(m, p.y), in(m, p.z)}; };
  const Direction p = metres_of(one[0]), u = metres_of(one[1] - one[0]);
  const Direction q = metres_of(other[0]), v = metres_of(other[1] - other[0]), w = p - q;
  const double uu = dot(u, u), vv = dot(v, v), uv = dot(u, v), uw = dot(u, w), vw = dot(v, w);
  const auto share = [](double part, double whole) { return whole > 0.0 ? std::clamp(part / whole, 0.0, 1.0) : 0.0; };
  const double s_first = share(uv * vw - vv * uw, uu * vv - uv * uv);  // parallel: any
  const double t = share(s_first * uv + vw, vv);
  const double s = share(t * uv - uw, uu);
  return norm(w + s * u - t * v) * m;
}

}  // namespace firstpick::demands
