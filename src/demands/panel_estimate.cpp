#include "demands/panel_estimate.hpp"

#include <algorithm>
#include <cmath>

#include "demands/panel_supports.hpp"
#include "demands/plate_solve.hpp"

namespace firstpick::demands {

namespace {

constexpr double divisions = 12.0, longest_divisions = 40.0;  // of the lesser side; of the greater, at most
constexpr int strip_points = 16;

PanelMoment moment(double value, const PlatePoint& p) {
  return {PlateMoment::from_value(value), {p.x_m * m, p.y_m * m}};
}

}  // namespace

struct PanelEstimate::Parts {
  std::unique_ptr<const PlateSolver> solver;
  struct Ground {
    PlateMesh mesh;
    PlateShape shape;
    std::array<PlatePoint, 2> edge;
  };
  std::optional<Ground> ground;  // that the panel stands on
  std::vector<PlatePoint> reading;
  double radius_m = 0.0, across_x_m = 0.0, across_y_m = 0.0;

  std::optional<std::vector<PlateNodeLoad>> node_loads(const PanelLoad& load) const {
    std::vector<PlateNodeLoad> made;
    const auto add = [&](int node, double share, const PanelForce& force) {
      const double arm_m = in(m, force.above_middle);
      made.push_back({3 * node, -share * in(newton, force.up)});
      made.push_back({3 * node + 1, share * arm_m * in(newton, force.along_y)});
      made.push_back({3 * node + 2, -share * arm_m * in(newton, force.along_x)});
    };
    for (const PanelForce& force : load.forces) {
      const auto shares = solver->shares(plate_point(force.at));
      if (!shares) return {};
      for (const PlateShare& corner : *shares) add(corner.node, corner.share, force);
    }
    if (!load.edge) return made;
    const auto on_edge =
        ground ? edge_shares(ground->mesh, ground->shape, ground->edge, plate_point(load.edge->at)) : std::nullopt;
    if (!on_edge) return {};
    for (const EdgeShare& each : *on_edge) add(each.node, each.share, *load.edge);
    return made;
  }

  // Mean over a line through p, of what of it lies in the panel.
  std::optional<double> strip(const PlateSolution& solution, const PlatePoint& p, bool along_x) const {
    const double length_m = along_x ? across_x_m : across_y_m;
    double sum = 0.0;
    int count = 0;
    for (int i = 0; i < strip_points; ++i) {
      const double off = length_m * ((i + 0.5) / strip_points - 0.5);
      if (const auto here = solution.moments(along_x ? PlatePoint{p.x_m + off, p.y_m} : PlatePoint{p.x_m, p.y_m + off}))
        sum += (*here)[along_x ? 1 : 0], ++count;
    }
    if (count == 0) return {};
    return sum / count;
  }

  PanelBending read(const PanelLoad& load, const PlateSolution& solution) const {
    PanelBending bent{.nodes = static_cast<int>(solution.mesh().nodes.size())};
    double bottom = 0.0, top = 0.0;
    const auto look = [&](double positive, double negative, const PlatePoint& p) {
      if (positive > bottom || std::isnan(positive)) bottom = positive, bent.bottom_tension = moment(positive, p);
      if (negative > top || std::isnan(negative)) top = negative, bent.top_tension = moment(negative, p);
    };
    std::vector<PlatePoint> picks;
    for (const PanelForce& force : load.forces)
      if (force.is_pick) picks.push_back(plate_point(force.at));
    for (const PlatePoint& p : reading) {
      bool at_pick = false, near_pick = false;
      for (const PlatePoint& pick : picks) {
        at_pick = at_pick || distance_m(pick, p) < 2.0 * radius_m;
        near_pick = near_pick || (std::abs(p.x_m - pick.x_m) <= 0.5 * across_x_m &&
                                  std::abs(p.y_m - pick.y_m) <= 0.5 * across_y_m);
      }
      if (at_pick) continue;
      const auto moments = solution.moments(p);
      if (!moments) continue;
      const double middle = 0.5 * ((*moments)[0] + (*moments)[1]);
      const double reach = std::hypot(0.5 * ((*moments)[0] - (*moments)[1]), (*moments)[2]);
      look(middle + reach, near_pick ? 0.0 : reach - middle, p);
    }
    for (const PlatePoint& pick : picks)
      for (const double beside : {-1.0, 1.0}) {
        const double off = beside * radius_m;
        if (const auto x = strip(solution, {pick.x_m + off, pick.y_m}, false)) look(*x, -*x, pick);
        if (const auto y = strip(solution, {pick.x_m, pick.y_m + off}, true)) look(*y, -*y, pick);
      }
    return bent;
  }
};

PanelEstimate::PanelEstimate(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
PanelEstimate::~PanelEstimate() = default;

std::shared_ptr<const PanelEstimate> PanelEstimate::of(const Panel& panel) {
  PlateShape shape;
  for (const auto& p : panel.outer) shape.outer.push_back(plate_point(p));
  for (const auto& hole : panel.holes) {
    shape.holes.emplace_back();
    for (const auto& p : hole) shape.holes.back().push_back(plate_point(p));
  }
  if (shape.outer.size() < 3) return nullptr;
  const auto [low_x, high_x] = std::ranges::minmax_element(shape.outer, {}, &PlatePoint::x_m);
  const auto [low_y, high_y] = std::ranges::minmax_element(shape.outer, {}, &PlatePoint::y_m);
  const double width_m = high_x->x_m - low_x->x_m, height_m = high_y->y_m - low_y->y_m;
  const double size_m =
      std::max(std::min(width_m, height_m) / divisions, std::max(width_m, height_m) / longest_divisions);
  const auto mesh = plate_mesh(shape, {}, size_m);
  if (!mesh) return nullptr;

  auto parts = std::make_unique<Parts>();
  PlateProblem posed;
  posed.poisson = panel.poisson.value();
  posed.held = holding_nodes(*mesh);
  parts->solver = std::make_unique<const PlateSolver>(*mesh, posed);
  if (panel.edge)
    parts->ground = {*mesh, shape, {plate_point((*panel.edge)[0]), plate_point((*panel.edge)[1])}};
  parts->radius_m = 0.5 * in(m, panel.patch);
  parts->across_x_m = std::min(in(m, panel.strip), 0.5 * width_m);
  parts->across_y_m = std::min(in(m, panel.strip), 0.5 * height_m);
  for (const auto& corners : mesh->triangles) {  // at the middle of each triangle, and of each side on the boundary
    PlatePoint middle;
    for (const int node : corners) {
      middle.x_m += mesh->nodes[static_cast<std::size_t>(node)].x_m / 3.0;
      middle.y_m += mesh->nodes[static_cast<std::size_t>(node)].y_m / 3.0;
    }
    parts->reading.push_back(middle);
  }
  const auto along = [&](const PlateRing& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const PlatePoint &a = ring[i], &b = ring[(i + 1) % ring.size()];
      const int pieces = 2 * std::max(1, static_cast<int>(std::ceil(0.5 * distance_m(a, b) / size_m)));
      for (int k = 0; k < pieces; ++k)
        parts->reading.push_back({a.x_m + (b.x_m - a.x_m) * k / pieces, a.y_m + (b.y_m - a.y_m) * k / pieces});
    }
  };
  along(shape.outer);
  for (const PlateRing& hole : shape.holes) along(hole);
  return std::shared_ptr<const PanelEstimate>(new PanelEstimate(std::move(parts)));
}

Outcome<std::vector<std::optional<PanelEstimate::Principal>>> PanelEstimate::moments(
    const PanelLoad& load, const std::vector<plan::PlanarPoint>& places) const {
  const auto forces = parts_->node_loads(load);
  if (!forces) return NotAssessed{"a force acts beside the panel or in an opening", {}};
  const auto solution = parts_->solver->solve(load.pressure.value(), *forces);
  if (!solution) return NotAssessed{"the bending of the panel gave no numbers", {}};
  std::vector<std::optional<Principal>> read;
  for (const plan::PlanarPoint& place : places) {
    const auto here = solution->patch_moments(plate_point(place), parts_->radius_m);
    if (!here) {
      read.emplace_back();
      continue;
    }
    const double middle = 0.5 * ((*here)[0] + (*here)[1]);
    const double reach = std::hypot(0.5 * ((*here)[0] - (*here)[1]), (*here)[2]);
    if (!std::isfinite(middle + reach)) return NotAssessed{"the bending of the panel gave no numbers", {}};
    read.push_back(Principal{PlateMoment::from_value(middle + reach), PlateMoment::from_value(middle - reach)});
  }
  return read;
}

Outcome<std::vector<PanelBending>> PanelEstimate::bending(const std::vector<PanelLoad>& loads) const {
  std::vector<PanelBending> bent;
  for (const PanelLoad& load : loads) {
    const auto forces = parts_->node_loads(load);
    if (!forces) return NotAssessed{"a force acts beside the panel or in an opening", {}};
    const auto solution = parts_->solver->solve(load.pressure.value(), *forces);
    if (!solution) return NotAssessed{"the bending of the panel gave no numbers", {}};
    bent.push_back(parts_->read(load, *solution));
  }
  return bent;
}

}  // namespace firstpick::demands
