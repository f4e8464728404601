#include "demands/panel_bending.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "demands/plate_solve.hpp"

namespace firstpick::demands {

namespace {

constexpr double balanced_within = 1e-4, turning_within = 2e-3;  // of the load, of load x size
constexpr int first_divisions = 14, most_refinements = 5;
constexpr double finer = 0.7;             // each mesh from the one before

PlatePoint point(const plan::PlanarPoint& p) { return {in(m, p.x), in(m, p.y)}; }

struct Flat {  // the panel in newton and metre
  PlateShape shape;
  std::vector<PlatePoint> focus;
  double low_x_m = 1e300, low_y_m = 1e300, high_x_m = -1e300, high_y_m = -1e300;
  std::vector<PlatePoint> reading;  // where moments are read away from picks: the same points on every mesh

  std::size_t focus_of(const PlatePoint& p) const {  // each place of a force is a focus point
    std::size_t nearest = 0;
    for (std::size_t i = 1; i < focus.size(); ++i)
      if (distance_m(p, focus[i]) < distance_m(p, focus[nearest])) nearest = i;
    return nearest;
  }
  double size_m() const { return std::min(high_x_m - low_x_m, high_y_m - low_y_m); }
  double length_m() const { return std::max(high_x_m - low_x_m, high_y_m - low_y_m); }
};

// A grid over the panel as fine as the patches, and its boundary as finely.
void add_reading_points(Flat& flat, double patch_radius_m) {
  const double pitch = std::max(patch_radius_m, flat.size_m() / 60.0);
  if (!(pitch > 0.0) || !std::isfinite(pitch)) return;
  const int columns = std::max(2, static_cast<int>(std::ceil((flat.high_x_m - flat.low_x_m) / pitch)));
  const int rows = std::max(2, static_cast<int>(std::ceil((flat.high_y_m - flat.low_y_m) / pitch)));
  for (int row = 0; row <= rows; ++row)
    for (int column = 0; column <= columns; ++column) {
      const PlatePoint p{flat.low_x_m + (flat.high_x_m - flat.low_x_m) * column / columns,
                         flat.low_y_m + (flat.high_y_m - flat.low_y_m) * row / rows};
      if (is_inside(flat.shape, p)) flat.reading.push_back(p);
    }
  const auto along = [&](const PlateRing& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const PlatePoint &a = ring[i], &b = ring[(i + 1) % ring.size()];
      const int parts = 2 * std::max(1, static_cast<int>(std::ceil(0.5 * distance_m(a, b) / pitch)));
      for (int part = 0; part < parts; ++part)
        flat.reading.push_back({a.x_m + (b.x_m - a.x_m) * part / parts, a.y_m + (b.y_m - a.y_m) * part / parts});
    }
  };
  along(flat.shape.outer);
  for (const PlateRing& hole : flat.shape.holes) along(hole);
}

Flat flat(const Panel& panel) {
  Flat made;
  for (const auto& p : panel.outer) made.shape.outer.push_back(point(p));
  for (const auto& hole : panel.holes) {
    PlateRing ring;
    for (const auto& p : hole) ring.push_back(point(p));
    made.shape.holes.push_back(std::move(ring));
  }
  for (const PanelLoad& load : panel.loads)
    for (const PanelForce& force : load.forces) {
      const PlatePoint p = point(force.at);
      if (made.focus.empty() || !(distance_m(p, made.focus[made.focus_of(p)]) < 1e-6)) made.focus.push_back(p);
    }
  for (const PlatePoint& p : made.shape.outer) {
    made.low_x_m = std::min(made.low_x_m, p.x_m), made.high_x_m = std::max(made.high_x_m, p.x_m);
    made.low_y_m = std::min(made.low_y_m, p.y_m), made.high_y_m = std::max(made.high_y_m, p.y_m);
  }
  add_reading_points(made, 0.5 * in(m, panel.patch));
  return made;
}

// Force down on w; a level force at height e turns the panel: work e F_x dw/dx + e F_y dw/dy.
std::vector<PlateNodeLoad> node_loads(const PanelLoad& load, const Flat& flat, const PlateMesh& mesh) {
  std::vector<PlateNodeLoad> made;
  for (std::size_t i = 0; i < load.forces.size(); ++i) {
    const PanelForce& force = load.forces[i];
    const int first = 3 * mesh.focus_nodes[flat.focus_of(point(force.at))];
    const double arm_m = in(m, force.above_middle);
    made.push_back({first, -in(newton, force.up)});
    made.push_back({first + 1, arm_m * in(newton, force.along_y)});
    made.push_back({first + 2, -arm_m * in(newton, force.along_x)});
  }
  return made;
}

// Three nodes that hold the panel where the forces already balance: they carry nothing. The two that lie farthest apart of
// a few directions, and the one farthest from their line.
std::vector<int> holding_nodes(const PlateMesh& mesh) {
  const auto most = [&](auto value) {
    int best = 0;
    for (std::size_t n = 1; n < mesh.nodes.size(); ++n)
      if (value(mesh.nodes[n]) > value(mesh.nodes[static_cast<std::size_t>(best)])) best = static_cast<int>(n);
    return best;
  };
  const int a = most([](const PlatePoint& p) { return -p.x_m - p.y_m; });
  const PlatePoint at_a = mesh.nodes[static_cast<std::size_t>(a)];
  const int b = most([&](const PlatePoint& p) { return distance_m(p, at_a); });
  const PlatePoint at_b = mesh.nodes[static_cast<std::size_t>(b)];
  const int c = most([&](const PlatePoint& p) {
    return std::abs((at_b.x_m - at_a.x_m) * (p.y_m - at_a.y_m) - (at_b.y_m - at_a.y_m) * (p.x_m - at_a.x_m));
  });
  return {3 * a, 3 * b, 3 * c};
}

struct Most {
  double value = 0.0;  // N m per m
  PlatePoint at;
  void look(double moment, const PlatePoint& p) {
    if (moment > value || std::isnan(moment)) value = moment, at = p;
  }
};

struct Found {
  Most bottom, top;
};

// Largest principal moments of both signs.
void look(Found& found, const PlateMoments& moments, const PlatePoint& p, bool top_counts) {
  const double middle = 0.5 * (moments[0] + moments[1]);
  const double reach = std::hypot(0.5 * (moments[0] - moments[1]), moments[2]);
  found.bottom.look(middle + reach, p);
  if (top_counts) found.top.look(reach - middle, p);
}

Found read_moments(const Panel& panel, const PanelLoad& load, const Flat& flat, const PlateSolution& solution) {
  const double radius_m = 0.5 * in(m, panel.patch);
  const double across_x_m = std::min(in(m, panel.strip), 0.5 * (flat.high_x_m - flat.low_x_m));
  const double across_y_m = std::min(in(m, panel.strip), 0.5 * (flat.high_y_m - flat.low_y_m));
  Found found;
  std::vector<PlatePoint> picks;
  for (const PanelForce& force : load.forces)
    if (force.is_pick) picks.push_back(point(force.at));
  for (const PlatePoint& node : flat.reading) {
    const bool near_pick = std::ranges::any_of(picks, [&](const PlatePoint& pick) {
      return std::abs(node.x_m - pick.x_m) <= 0.5 * across_x_m && std::abs(node.y_m - pick.y_m) <= 0.5 * across_y_m;
    });
    const bool at_pick = std::ranges::any_of(
        picks, [&](const PlatePoint& pick) { return distance_m(pick, node) < 2.0 * radius_m; });
    if (at_pick) continue;
    if (const auto moments = solution.patch_moments(node, radius_m)) look(found, *moments, node, !near_pick);
  }
  for (const PlatePoint& pick : picks) {
    // On both sides of the pick: the moment of the thrust jumps at it.
    for (const double beside : {-1.0, -0.25, 0.25, 1.0}) {
      const double off = beside * radius_m;
      if (const auto x = solution.strip_moments({pick.x_m + off, pick.y_m}, false, across_y_m)) {
        found.top.look(-(*x)[0], pick);
        found.bottom.look((*x)[0], pick);
      }
      if (const auto y = solution.strip_moments({pick.x_m, pick.y_m + off}, true, across_x_m)) {
        found.top.look(-(*y)[1], pick);
        found.bottom.look((*y)[1], pick);
      }
    }
  }
  return found;
}

// The load and its first moments about zero; the area's by its rings.
struct Sums {
  double down = 0.0, about_x = 0.0, about_y = 0.0, size = 0.0, level = 0.0;
};
Sums sums(const PanelLoad& load, const Flat& flat) {
  const double pressure_Pa = load.pressure.value();
  Sums sum;
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
  for (const PanelForce& force : load.forces) {
    const double up = in(newton, force.up), x = in(newton, force.along_x), y = in(newton, force.along_y);
    const double arm_m = in(m, force.above_middle);
    sum.down -= up, sum.level += std::abs(x) + std::abs(y), sum.size += std::abs(up);
    sum.about_x += -up * in(m, force.at.x) + arm_m * x;
    sum.about_y += -up * in(m, force.at.y) + arm_m * y;
  }
  return sum;
}

std::optional<NotAssessed> refusal(const Panel& panel, const Flat& flat) {
  if (panel.outer.size() < 3 || flat.focus.empty()) return NotAssessed{"the panel has no outline or no pick", {}};
  if (!(panel.poisson.value() >= 0.0 && panel.poisson.value() < 0.5) || !(panel.patch > Length{}) ||
      !(panel.strip > Length{}) || !is_finite(panel.patch) || !is_finite(panel.strip))
    return NotAssessed{"a number of the panel is not usable", {}};
  for (const PanelLoad& load : panel.loads) {
    const Sums sum = sums(load, flat);
    if (!std::isfinite(sum.level)) return NotAssessed{"a force on the panel is not a usable number", {}};
    // About the first pick: the pick's own force has no part in it, and no far origin blurs it.
    const double most_turning = turning_within * sum.size * flat.length_m();
    const double off_x = sum.about_x - sum.down * flat.focus.front().x_m;
    const double off_y = sum.about_y - sum.down * flat.focus.front().y_m;
    if (!(std::abs(sum.down) <= balanced_within * sum.size && std::abs(off_x) <= most_turning &&
          std::abs(off_y) <= most_turning))
      return NotAssessed{"the forces on the panel do not balance", {}};
  }
  for (const PlatePoint& p : flat.focus)
    if (!is_inside(flat.shape, p) && !(boundary_distance_m(flat.shape, p) <= 1e-6))
      return NotAssessed{"a force acts beside the panel or in an opening", {}};
  return {};
}

// Of the moments from one mesh to the next, relative to the larger one.
double change(const Found& a, const Found& b) {
  const double scale = std::max(b.bottom.value, b.top.value);
  return std::max(std::abs(a.bottom.value - b.bottom.value), std::abs(a.top.value - b.top.value)) / scale;
}

// With what is left to come if each further mesh changed the moments by `finer` of the change before.
PanelBending bending_of(const Found& found, double changed, const PlateMesh& mesh) {
  const double left = changed * finer / (1.0 - finer);
  const auto with_error = [&](const Most& most) {
    return PanelMoment{PlateMoment::from_value(most.value + left * std::max(found.bottom.value, found.top.value)),
                       {most.at.x_m * m, most.at.y_m * m}};
  };
  return {with_error(found.bottom), with_error(found.top), left, static_cast<int>(mesh.nodes.size())};
}

}  // namespace

Outcome<std::vector<PanelBending>> panel_bending(const Panel& panel) {
  const Flat flat = demands::flat(panel);
  if (auto refused = refusal(panel, flat)) return *std::move(refused);

  // Two changes in a row must be small, so that no chance agreement of coarse meshes is taken for accuracy.
  double size_m = std::max(flat.size_m() / first_divisions, flat.length_m() / (4 * first_divisions));
  std::vector<Found> before;
  bool calm_before = false;
  for (int i = 0; i <= most_refinements; ++i, size_m *= finer) {
    const auto mesh = plate_mesh(flat.shape, flat.focus, size_m);
    if (!mesh) continue;
    PlateProblem posed;
    posed.poisson = panel.poisson.value();
    posed.held = holding_nodes(*mesh);
    const PlateSolver solver(*mesh, posed);
    std::vector<Found> found;
    for (const PanelLoad& load : panel.loads)
      if (const auto solution = solver.solve(load.pressure.value(), node_loads(load, flat, *mesh)))
        found.push_back(read_moments(panel, load, flat, *solution));
    if (found.size() != panel.loads.size()) continue;

    std::vector<double> changed(found.size(), 1.0);
    if (!before.empty())
      for (std::size_t k = 0; k < found.size(); ++k) changed[k] = change(before[k], found[k]);
    const auto all_within = [&](double share) {  // what is not a number is not
      return std::ranges::all_of(changed, [&](double each) { return each <= share; });
    };
    if (calm_before && all_within(panel_accuracy)) {
      std::vector<PanelBending> bent;
      for (std::size_t k = 0; k < found.size(); ++k) bent.push_back(bending_of(found[k], changed[k], *mesh));
      return bent;
    }
    before = std::move(found);
    calm_before = all_within(2.0 * panel_accuracy);
  }
  return NotAssessed{"the bending of the panel could not be computed to 2 %",
                     "check the outline for corners or openings that nearly touch"};
}

}  // namespace firstpick::demands
