#include "demands/panel_sums.hpp"

#include <cmath>

namespace firstpick::demands {

PanelSums panel_sums(const PanelLoad& load, const FlatPanel& flat, bool along_counts) {
  const double pressure_Pa = load.pressure.value();
  PanelSums sum;
  const auto add_ring = [&](const PlateRing& ring, double sign) {
    double doubled = 0.0, x = 0.0, y = 0.0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const PlatePoint &a = ring[i], &b = ring[(i + 1) % ring.size()];
      const double cross = a.x_m * b.y_m - b.x_m * a.y_m;
      doubled += cross, x += (a.x_m + b.x_m) * cross / 3.0, y += (a.y_m + b.y_m) * cross / 3.0;
    }
    const double turn = sign * (doubled > 0.0 ? 0.5 : -0.5) * pressure_Pa;
    sum.down += turn * doubled, sum.about_x += turn * x, sum.about_y += turn * y;
  };
  add_ring(flat.shape.outer, 1.0);
  for (const PlateRing& hole : flat.shape.holes) add_ring(hole, -1.0);
  sum.size = std::abs(sum.down);
  const auto add_force = [&](const PanelForce& force) {
    const double up = in(newton, force.up), x = in(newton, force.along_x), y = in(newton, force.along_y);
    const double arm_m = in(m, force.above_middle);
    sum.along_x += x, sum.along_y += y;
    sum.down -= up, sum.level += std::abs(x) + std::abs(y), sum.size += std::abs(up);
    sum.about_x += -up * in(m, force.at.x) + arm_m * x;
    sum.about_y += -up * in(m, force.at.y) + arm_m * y;
  };
  for (const PanelForce& force : load.forces) add_force(force);
  if (load.edge) add_force(*load.edge);
  const double area = area_m2(flat.shape);
  sum.along_x += load.pull_along_x.value() * area, sum.along_y += load.pull_along_y.value() * area;
  if (along_counts) sum.size += sum.level;
  return sum;
}

}  // namespace firstpick::demands
