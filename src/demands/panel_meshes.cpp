#include "demands/panel_meshes.hpp"

#include <algorithm>
#include <list>
#include <utility>

#include "demands/panel_sums.hpp"

namespace firstpick::demands {

namespace {

constexpr int first_divisions = 14;
constexpr std::size_t panels_kept = 8;  // a few MB each

std::vector<plan::PlanarPoint> places_of(const Panel& panel) {
  const PlateShape shape = plate_shape(panel.outer, panel.holes);
  std::vector<plan::PlanarPoint> places;
  for (const plan::PlanarPoint& place : panel.meshed_at)
    if (is_on_panel(shape, plate_point(place))) places.push_back(place);
  for (const PanelLoad& load : panel.loads)
    for (const PanelForce& force : load.forces) places.push_back(force.at);
  return places;
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

PlateProblem plate_of(const Panel& panel, const PlateMesh& mesh) {
  PlateProblem posed;
  posed.poisson = panel.poisson.value();
  posed.held = holding_nodes(mesh);
  return posed;
}

std::vector<plan::PlanarPoint> different(const std::vector<plan::PlanarPoint>& places) {
  std::vector<plan::PlanarPoint> kept;
  for (const plan::PlanarPoint& p : places)
    if (std::ranges::none_of(kept, [&](const plan::PlanarPoint& q) { return q.x == p.x && q.y == p.y; }))
      kept.push_back(p);
  return kept;
}

// All that the meshes and their equations are made of, in one order.
std::vector<double> numbers_of(const Panel& panel) {
  std::vector<double> numbers;
  const auto add_places = [&](const std::vector<plan::PlanarPoint>& places) {
    numbers.push_back(static_cast<double>(places.size()));
    for (const plan::PlanarPoint& p : places) numbers.insert(numbers.end(), {in(m, p.x), in(m, p.y)});
  };
  add_places(panel.outer);
  numbers.push_back(static_cast<double>(panel.holes.size()));
  for (const auto& hole : panel.holes) add_places(hole);
  add_places(different(places_of(panel)));
  numbers.insert(numbers.end(), {panel.poisson.value(), in(m, panel.patch), in(m, panel.strip)});
  return numbers;
}

}  // namespace

PanelMembrane::PanelMembrane(const Panel& panel, const FlatPanel& of_panel, PlateMesh coarse)
    : flat(of_panel),
      mesh(std::move(coarse)),
      solver(mesh, panel.poisson.value()),
      readings(force_readings(panel, flat, solver.grid())) {}

MeshedPanel::MeshedPanel(const Panel& panel, const FlatPanel& flat, PlateMesh mesh)
    : flat_(flat),
      mesh_(std::move(mesh)),
      plate_(mesh_, plate_of(panel, mesh_)),
      of_plate_(moment_readings(panel, flat, plate_.grid())) {}

bool MeshedPanel::rests_on_edge(const Panel& panel, const PanelLoad& load, const PanelMembrane* along) const {
  return shares(panel, load, mesh_) && (!along || shares(panel, load, along->mesh));
}

std::optional<PanelFound> MeshedPanel::found(const Panel& panel, const PanelLoad& load,
                                             const PanelMembrane* along) const {
  const auto bent =
      plate_.solve(load.pressure.value(), node_loads(load, flat_, mesh_, *shares(panel, load, mesh_)));
  if (!bent) return {};
  PanelFound most = read_moments(panel, load, flat_, of_plate_, *bent);
  if (!along) return most;
  const auto pulled =
      along->solver.solve(load.pull_along_x.value(), load.pull_along_y.value(),
                          membrane_forces(load, along->flat, along->mesh, *shares(panel, load, along->mesh)));
  if (!pulled || !(pulled->held() <= panel_turning_within * panel_sums(load, flat_, true).size)) return {};
  // The moment that brings the same tension to a face: 6 M/t^2 = n/t.
  const double axial =
      read_membrane(panel, load, along->flat, along->readings, *pulled).value * in(m, panel.thickness) / 6.0;
  most.bottom.value += axial, most.top.value += axial;
  return most;
}

std::optional<std::vector<EdgeShare>> MeshedPanel::shares(const Panel& panel, const PanelLoad& load,
                                                          const PlateMesh& mesh) const {
  if (!load.edge) return std::vector<EdgeShare>{};
  if (!panel.edge) return {};
  return edge_shares(mesh, flat_.shape, {plate_point((*panel.edge)[0]), plate_point((*panel.edge)[1])},
                     plate_point(load.edge->at));
}

PanelMeshes::PanelMeshes(const Panel& panel)
    : panel_(panel), flat_(flat_panel(panel.outer, panel.holes, places_of(panel), 0.5 * in(m, panel.patch))) {
  panel_.loads.clear();
}

std::shared_ptr<const PanelMeshes> PanelMeshes::of(const Panel& panel) {
  struct Kept {
    std::vector<double> numbers;
    std::shared_ptr<const PanelMeshes> meshes;
  };
  static std::mutex one_at_a_time;
  static std::list<Kept> kept;  // the one asked for last comes first

  std::vector<double> numbers = numbers_of(panel);
  const std::lock_guard<std::mutex> turn(one_at_a_time);
  const auto known = std::ranges::find(kept, numbers, &Kept::numbers);
  if (known != kept.end()) {
    kept.splice(kept.begin(), kept, known);
  } else {
    kept.push_front({std::move(numbers), std::make_shared<const PanelMeshes>(panel)});
    if (kept.size() > panels_kept) kept.pop_back();
  }
  return kept.front().meshes;
}

double PanelMeshes::size_m(std::size_t i) const {
  double size_m = std::max(flat_.size_m() / first_divisions, flat_.length_m() / (4 * first_divisions));
  for (std::size_t step = 0; step < i; ++step) size_m *= finer;
  return size_m;
}

std::unique_ptr<const MeshedPanel> PanelMeshes::meshed(std::size_t i) const {
  auto mesh = plate_mesh(flat_.shape, flat_.focus, size_m(i));
  if (!mesh) return nullptr;
  return std::make_unique<const MeshedPanel>(panel_, flat_, *std::move(mesh));
}

std::unique_ptr<const PanelMembrane> PanelMeshes::stretched(std::size_t i) const {
  auto coarse = plate_mesh(flat_.shape, flat_.focus, 2.0 * size_m(i));
  if (!coarse) {  // as fine as that of the moments
    const MeshedPanel* const fine = mesh(i);
    if (!fine) return nullptr;
    coarse = fine->mesh();
  }
  return std::make_unique<const PanelMembrane>(panel_, flat_, *std::move(coarse));
}

}  // namespace firstpick::demands
