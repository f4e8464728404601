#include "demands/panel_bending.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <future>
#include <memory>
#include <numeric>
#include <optional>

#include "demands/panel_flat.hpp"
#include "demands/panel_readings.hpp"
#include "demands/panel_supports.hpp"
#include "demands/plate_membrane.hpp"
#include "demands/plate_solve.hpp"

namespace firstpick::demands {

namespace {

constexpr double loads_within = 1e-4, turning_within = 2e-3;  // of the load, of load x size
constexpr int first_divisions = 14, most_refinements = 5;
constexpr double finer = 0.7;  // each mesh from the one before

FlatPanel flat_of(const Panel& panel) {
  std::vector<plan::PlanarPoint> places;
  for (const PanelLoad& load : panel.loads)
    for (const PanelForce& force : load.forces) places.push_back(force.at);
  return flat_panel(panel.outer, panel.holes, places, 0.5 * in(m, panel.patch));
}

// Force down on w; a level force at height e turns the panel: work e F_x dw/dx + e F_y dw/dy.
std::vector<PlateNodeLoad> node_loads(const PanelLoad& load, const FlatPanel& flat, const PlateMesh& mesh,
                                      const std::vector<EdgeShare>& shares) {
  std::vector<PlateNodeLoad> made;
  for (std::size_t i = 0; i < load.forces.size(); ++i) {
    const PanelForce& force = load.forces[i];
    const int first = 3 * mesh.focus_nodes[flat.focus_of(plate_point(force.at))];
    const double arm_m = in(m, force.above_middle);
    made.push_back({first, -in(newton, force.up)});
    made.push_back({first + 1, arm_m * in(newton, force.along_y)});
    made.push_back({first + 2, -arm_m * in(newton, force.along_x)});
  }
  if (!load.edge) return made;
  const double arm_m = in(m, load.edge->above_middle);
  for (const EdgeShare& each : shares) {
    made.push_back({3 * each.node, -each.share * in(newton, load.edge->up)});
    made.push_back({3 * each.node + 1, each.share * arm_m * in(newton, load.edge->along_y)});
    made.push_back({3 * each.node + 2, -each.share * arm_m * in(newton, load.edge->along_x)});
  }
  return made;
}

std::vector<MembraneNodeForce> membrane_forces(const PanelLoad& load, const FlatPanel& flat,
                                               const PlateMesh& mesh, const std::vector<EdgeShare>& shares) {
  std::vector<MembraneNodeForce> made;
  const auto add = [&](int node, double share, const PanelForce& force) {
    made.push_back({node, share * in(newton, force.along_x), share * in(newton, force.along_y)});
  };
  for (const PanelForce& force : load.forces)
    add(mesh.focus_nodes[flat.focus_of(plate_point(force.at))], 1.0, force);
  if (load.edge)
    for (const EdgeShare& each : shares) add(each.node, each.share, *load.edge);
  return made;
}

// The load and its first moments about zero; the area's by its rings.
struct Sums {
  double down = 0.0, about_x = 0.0, about_y = 0.0, size = 0.0, level = 0.0;
  double along_x = 0.0, along_y = 0.0;  // with the pull of the weight
};
Sums sums(const PanelLoad& load, const FlatPanel& flat, bool along_counts) {
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

std::optional<NotAssessed> refusal(const Panel& panel, const FlatPanel& flat) {
  if (panel.in_plane && (!(panel.thickness > Length{}) || !is_finite(panel.thickness)))
    return NotAssessed{"the thickness of the panel is not a usable number", {}};
  if (panel.outer.size() < 3 || flat.focus.empty())
    return NotAssessed{"the panel has no outline or no pick", {}};
  if (!(panel.poisson.value() >= 0.0 && panel.poisson.value() < 0.5) || !(panel.patch > Length{}) ||
      !(panel.strip > Length{}) || !is_finite(panel.patch) || !is_finite(panel.strip))
    return NotAssessed{"a number of the panel is not usable", {}};
  for (const PanelLoad& load : panel.loads) {
    const Sums sum = sums(load, flat, panel.in_plane);
    if (!std::isfinite(sum.level)) return NotAssessed{"a force on the panel is not a usable number", {}};
    // About the first pick: the pick's own force has no part in it, and no far origin blurs it.
    const double most_turning = turning_within * sum.size * flat.length_m();
    const double off_x = sum.about_x - sum.down * flat.focus.front().x_m;
    const double off_y = sum.about_y - sum.down * flat.focus.front().y_m;
    if (panel.in_plane && !(std::hypot(sum.along_x, sum.along_y) <= turning_within * sum.size))
      return NotAssessed{"the forces along the panel do not balance", {}};
    if (!(std::abs(sum.down) <= loads_within * sum.size && std::abs(off_x) <= most_turning &&
          std::abs(off_y) <= most_turning))
      return NotAssessed{"the forces on the panel do not balance", {}};
  }
  for (const PlatePoint& p : flat.focus)
    if (!is_inside(flat.shape, p) && !(boundary_distance_m(flat.shape, p) <= 1e-6))
      return NotAssessed{"a force acts beside the panel or in an opening", {}};
  return {};
}

// Of the moments from one mesh to the next, relative to the larger one.
double change(const PanelFound& a, const PanelFound& b) {
  const double scale = std::max(b.bottom.value, b.top.value);
  return std::max(std::abs(a.bottom.value - b.bottom.value), std::abs(a.top.value - b.top.value)) / scale;
}

// With what is left to come if each further mesh changed the moments by `finer` of the change before.
PanelBending bending_of(const PanelFound& found, double changed, const PlateMesh& mesh) {
  const double left = changed * finer / (1.0 - finer);
  const auto with_error = [&](const PanelMost& most) {
    return PanelMoment{
        PlateMoment::from_value(most.value + left * std::max(found.bottom.value, found.top.value)),
        {most.at.x_m * m, most.at.y_m * m}};
  };
  return {with_error(found.bottom), with_error(found.top), left, static_cast<int>(mesh.nodes.size())};
}

// On one mesh, and forces along the panel on one twice as coarse, whose triangles have twice the nodes to a side.
class MeshedPanel {
 public:
  MeshedPanel(const Panel& panel, const FlatPanel& flat, const PlateMesh& mesh, double size_m)
      : panel_(panel),
        flat_(flat),
        mesh_(mesh),
        plate_(mesh, plate_of(panel, mesh)),
        of_plate_(moment_readings(panel, flat, plate_.grid())) {
    if (!panel.in_plane) return;
    coarse_ = plate_mesh(flat.shape, flat.focus, 2.0 * size_m).value_or(mesh);
    membrane_.emplace(coarse_, panel.poisson.value());
    of_membrane_ = force_readings(panel, flat, membrane_->grid());
  }

  bool rests_on_edge(const PanelLoad& load) const { return shares(load, mesh_) && shares(load, coarse_); }

  // Nothing where it could not be solved.
  std::optional<PanelFound> found(const PanelLoad& load) const {
    const auto bent =
        plate_.solve(load.pressure.value(), node_loads(load, flat_, mesh_, *shares(load, mesh_)));
    if (!bent) return {};
    PanelFound most = read_moments(panel_, load, flat_, of_plate_, *bent);
    if (!membrane_) return most;
    const auto pulled = membrane_->solve(load.pull_along_x.value(), load.pull_along_y.value(),
                                         membrane_forces(load, flat_, coarse_, *shares(load, coarse_)));
    if (!pulled || !(pulled->held() <= turning_within * sums(load, flat_, true).size)) return {};
    // The moment that brings the same tension to a face: 6 M/t^2 = n/t.
    const double axial =
        read_membrane(panel_, load, flat_, of_membrane_, *pulled).value * in(m, panel_.thickness) / 6.0;
    most.bottom.value += axial, most.top.value += axial;
    return most;
  }

 private:
  // What each node of the edge on the ground carries; nothing where it cannot be carried so.
  std::optional<std::vector<EdgeShare>> shares(const PanelLoad& load, const PlateMesh& mesh) const {
    if (!load.edge) return std::vector<EdgeShare>{};
    if (!panel_.edge) return {};
    return edge_shares(mesh, flat_.shape, {plate_point((*panel_.edge)[0]), plate_point((*panel_.edge)[1])},
                       plate_point(load.edge->at));
  }
  static PlateProblem plate_of(const Panel& panel, const PlateMesh& mesh) {
    PlateProblem posed;
    posed.poisson = panel.poisson.value();
    posed.held = holding_nodes(mesh);
    return posed;
  }
  const Panel& panel_;
  const FlatPanel& flat_;
  const PlateMesh& mesh_;
  PlateMesh coarse_;
  PlateSolver plate_;
  PanelReadings of_plate_, of_membrane_;
  std::optional<MembraneSolver> membrane_;
};

// One mesh of the refinement with its equations, or without where the panel could not be divided so.
struct Level {
  Level(const Panel& panel, const FlatPanel& flat, double size_m)
      : mesh(plate_mesh(flat.shape, flat.focus, size_m)) {
    if (mesh) meshed.emplace(panel, flat, *mesh, size_m);
  }
  std::optional<PlateMesh> mesh;
  std::optional<MeshedPanel> meshed;
};

// The meshes one after the other. Three are always needed, and the third takes as long as the two before: it is made beside
// them on another core. What is found does not depend on that.
class Levels {
 public:
  Levels(const Panel& panel, const FlatPanel& flat) : panel_(panel), flat_(flat) {
    double size_m = std::max(flat.size_m() / first_divisions, flat.length_m() / (4 * first_divisions));
    for (double& each : sizes_m_) each = size_m, size_m *= finer;
    third_ = std::async(std::launch::async, [this] { return made(2); });
  }
  std::unique_ptr<const Level> level(int i) { return i == 2 ? third_.get() : made(i); }

 private:
  std::unique_ptr<const Level> made(int i) const {
    return std::make_unique<const Level>(panel_, flat_, sizes_m_.at(static_cast<std::size_t>(i)));
  }
  const Panel& panel_;
  const FlatPanel& flat_;
  std::array<double, most_refinements + 1> sizes_m_{};
  std::future<std::unique_ptr<const Level>> third_;  // last: it is waited for before the rest goes
};

// Each of these loads on its own; nothing where one could not be solved. Half of them on another core.
std::optional<std::vector<PanelFound>> found_of(const MeshedPanel& meshed, const Panel& panel,
                                                const std::vector<std::size_t>& which) {
  std::vector<std::optional<PanelFound>> each(which.size());
  const auto find = [&](std::size_t from, std::size_t to) {
    for (std::size_t k = from; k < to; ++k) each[k] = meshed.found(panel.loads[which[k]]);
  };
  const std::size_t half = which.size() / 2;
  std::future<void> beside;
  if (half > 0) beside = std::async(std::launch::async, [&] { find(0, half); });
  find(half, which.size());
  if (beside.valid()) beside.get();
  std::vector<PanelFound> all;
  for (const auto& one : each) {
    if (!one) return {};
    all.push_back(*one);
  }
  return all;
}

double larger(const PanelFound& found) { return std::max(found.bottom.value, found.top.value); }

// Which loads are worth a finer mesh: all, or of a turn the worst.
std::vector<std::size_t> worth_refining(const Panel& panel, const std::vector<PanelFound>& rough) {
  std::vector<std::size_t> order(rough.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  if (!panel.in_plane || rough.size() <= most_refined) return order;
  std::ranges::stable_sort(order,
                           [&](std::size_t a, std::size_t b) { return larger(rough[a]) > larger(rough[b]); });
  order.resize(most_refined);
  return order;
}

// Of every load: as refined, or as on the first mesh, raised as much as the worst of the refined ones was.
std::vector<PanelBending> of_all(const std::vector<PanelFound>& rough,
                                 const std::vector<std::size_t>& refined,
                                 const std::vector<PanelBending>& bent) {
  double raised = 1.0;
  for (std::size_t k = 0; k < refined.size(); ++k)
    raised = std::max(raised, std::max(bent[k].bottom_tension.moment, bent[k].top_tension.moment).value() /
                                  larger(rough[refined[k]]));
  std::vector<PanelBending> all;
  for (std::size_t i = 0; i < rough.size(); ++i) {
    const auto place = std::ranges::find(refined, i);
    if (place != refined.end()) {
      all.push_back(bent[static_cast<std::size_t>(place - refined.begin())]);
      continue;
    }
    const auto moment = [&](const PanelMost& most) {
      return PanelMoment{PlateMoment::from_value(raised * most.value), {most.at.x_m * m, most.at.y_m * m}};
    };
    all.push_back({moment(rough[i].bottom), moment(rough[i].top), bent.front().error, bent.front().nodes});
  }
  return all;
}

}  // namespace

Outcome<std::vector<PanelBending>> panel_bending(const Panel& panel) {
  const FlatPanel flat = flat_of(panel);
  if (auto refused = refusal(panel, flat)) return *std::move(refused);

  // Two changes in a row must be small, so that no chance agreement of coarse meshes is taken for accuracy.
  Levels levels(panel, flat);
  std::vector<PanelFound> rough, before;
  std::vector<std::size_t> refined(panel.loads.size());
  std::iota(refined.begin(), refined.end(), std::size_t{0});
  bool calm_before = false;
  for (int i = 0; i <= most_refinements; ++i) {
    const auto level = levels.level(i);
    if (!level->meshed) continue;
    const MeshedPanel& meshed = *level->meshed;
    if (!std::ranges::all_of(panel.loads, [&](const PanelLoad& load) { return meshed.rests_on_edge(load); }))
      return NotAssessed{"the panel would not rest on its edge all along",
                         "legs that bring the hook over the middle of the edge"};
    auto all_found = found_of(meshed, panel, refined);
    if (!all_found) continue;
    std::vector<PanelFound>& found = *all_found;
    if (rough.empty()) {
      rough = found;
      refined = worth_refining(panel, rough);
      found.clear();
      for (const std::size_t load : refined) found.push_back(rough[load]);
    }

    std::vector<double> changed(found.size(), 1.0);
    if (!before.empty())
      for (std::size_t k = 0; k < found.size(); ++k) changed[k] = change(before[k], found[k]);
    const auto all_within = [&](double share) {  // what is not a number is not
      return std::ranges::all_of(changed, [&](double each) { return each <= share; });
    };
    if (calm_before && all_within(panel_accuracy)) {
      std::vector<PanelBending> bent;
      for (std::size_t k = 0; k < found.size(); ++k)
        bent.push_back(bending_of(found[k], changed[k], *level->mesh));
      return of_all(rough, refined, bent);
    }
    before = std::move(found);
    calm_before = all_within(2.0 * panel_accuracy);
  }
  return NotAssessed{"the bending of the panel could not be computed to 2 %",
                     "check the outline for corners or openings that nearly touch"};
}

}  // namespace firstpick::demands
