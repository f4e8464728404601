#include "checks/round_and_box.hpp"

#include <algorithm>
#include <cmath>

namespace firstpick::checks {

namespace {

constexpr double alike = 0.005;

bool agree(double a, double b) { return std::abs(a - b) <= alike * std::max(std::abs(a), std::abs(b)); }

struct Solid {  // metres; second moments over the volume, about the centroid
  double V, x, y, z, X2, Y2, Z2;
  double low_x, low_y, low_z, high_x, high_y, high_z;
};

Solid numbers(const piece::Body& body) {
  const auto& I = body.inertia_per_density_m5;
  return {body.volume.value(), in(m, body.centroid.x), in(m, body.centroid.y), in(m, body.centroid.z),
          0.5 * (I[1][1] + I[2][2] - I[0][0]), 0.5 * (I[0][0] + I[2][2] - I[1][1]), 0.5 * (I[0][0] + I[1][1] - I[2][2]),
          in(m, body.lowest.x), in(m, body.lowest.y), in(m, body.lowest.z),
          in(m, body.highest.x), in(m, body.highest.y), in(m, body.highest.z)};
}

Position middle_of(const piece::Body& body) { return 0.5 * (body.lowest + body.highest); }

std::optional<BoxShape> along(const Solid& s, plan::Axis barrel, const Position& middle) {
  const bool y = barrel == plan::Axis::y;
  const double L = y ? s.high_y - s.low_y : s.high_x - s.low_x, W = y ? s.high_x - s.low_x : s.high_y - s.low_y;
  const double D = s.high_z - s.low_z, across2 = y ? s.X2 : s.Y2, along2 = y ? s.Y2 : s.X2;
  const double off = y ? s.x - in(m, middle.x) : s.y - in(m, middle.y);
  const double off_along = y ? s.y - in(m, middle.y) : s.x - in(m, middle.x);
  const double hole = W * D - s.V / L;  // b h
  if (!(hole > 0.0) || !agree(along2, s.V * L * L / 12.0) || !(std::abs(off) <= alike * W) ||
      !(std::abs(off_along) <= alike * L))
    return {};
  const double b = std::sqrt((W * W * W * D - 12.0 * across2 / L) / hole), h = hole / b;
  const double middle_z = in(m, middle.z), z_hole = (W * D * middle_z - (W * D - hole) * s.z) / hole;
  const double upright2 = L * (W * D * D * D / 12.0 + W * D * std::pow(middle_z - s.z, 2) -
                               (hole * h * h / 12.0 + hole * std::pow(z_hole - s.z, 2)));
  const double top = s.high_z - (z_hole + 0.5 * h), bottom = z_hole - 0.5 * h - s.low_z, side = 0.5 * (W - b);
  if (!agree(upright2, s.Z2) || !(top > 0.0) || !(bottom > 0.0) || !(side > 0.0)) return {};
  return BoxShape{barrel, L * m, W * m, D * m, top * m, bottom * m, side * m, middle};
}

}  // namespace

// A saw cut changes neither volume nor moments much, but the faces: two round and two level ones, or of a box six outside
// (two with the hole of the barrel) and four of the barrel. A body made by hand has no faces to tell.
static bool has_faces(const piece::Body& body, std::size_t planar, std::size_t round) {
  if (body.faces.empty()) return true;
  const auto flat = static_cast<std::size_t>(std::ranges::count_if(body.faces, &piece::Face::planar));
  return flat == planar && body.faces.size() - flat == round;
}

std::optional<RingShape> ring_shape(const piece::Body& body) {
  if (!has_faces(body, 2, 2)) return {};
  const Solid s = numbers(body);
  const Position middle = middle_of(body);
  const double H = s.high_z - s.low_z, round = s.V / (M_PI * H);
  if (!(s.V > 0.0) || !(H > 0.0)) return {};
  const double sum = 2.0 * (s.X2 + s.Y2) / s.V;  // Ro^2 + Ri^2
  const double outside = std::sqrt(0.5 * (sum + round)), inside = std::sqrt(std::max(0.0, 0.5 * (sum - round)));
  const bool is_round = agree(2.0 * outside, s.high_x - s.low_x) && agree(2.0 * outside, s.high_y - s.low_y) &&
                        agree(s.X2, s.Y2) && agree(s.Z2, s.V * H * H / 12.0);
  const double off = std::max({std::abs(s.x - in(m, middle.x)), std::abs(s.y - in(m, middle.y))});
  if (!is_round || !(off <= alike * outside) || !(std::abs(s.z - in(m, middle.z)) <= alike * H) ||
      !(inside > alike * outside))
    return {};
  return RingShape{middle, outside * m, inside * m, H * m};
}

std::optional<BoxShape> box_shape(const piece::Body& body) {
  if (!has_faces(body, 10, 0)) return {};
  const Solid s = numbers(body);
  if (!(s.V > 0.0)) return {};
  const Position middle = middle_of(body);
  if (const auto found = along(s, plan::Axis::y, middle)) return found;
  return along(s, plan::Axis::x, middle);
}

bool is_slender(const RingShape& ring, const tables::CrackingModel& limits) {
  return 0.5 * (ring.outside + ring.inside) >= limits.line_slenderness.value.value() * (ring.outside - ring.inside);
}

bool is_slender(const BoxShape& box, const tables::CrackingModel& limits) {
  const double n = limits.line_slenderness.value.value();
  return box.width - box.side >= n * std::max(box.top, box.bottom) &&
         box.depth - 0.5 * (box.top + box.bottom) >= n * box.side;
}

}  // namespace firstpick::checks
