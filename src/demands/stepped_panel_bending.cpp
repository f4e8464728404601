#include "demands/stepped_panel_bending.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "demands/panel_flat.hpp"
#include "demands/stepped_plate.hpp"

namespace firstpick::demands {

namespace {

constexpr double same_place_m = 1e-6;
constexpr double zones_cover_within = 1e-6;  // of the area of the panel
constexpr double held_within = 2e-3;         // of the load: what a slight tilt leaves out of balance
constexpr int stepped_divisions = 12, stepped_refinements = 4;
constexpr double stepped_finer = 0.7;  // each mesh from the one before

struct ZonedShape {
  std::vector<PlateShape> zones;
  std::vector<PlateLayer> layers;

  std::size_t zone_of(const PlatePoint& p) const {
    for (std::size_t z = 0; z < zones.size(); ++z)
      if (is_inside(zones[z], p)) return z;
    return zones.size();
  }
};

PlateRing ring_of(const std::vector<plan::PlanarPoint>& points) {
  PlateRing ring;
  for (const plan::PlanarPoint& p : points) ring.push_back({in(m, p.x), in(m, p.y)});
  return ring;
}

ZonedShape zoned(const SteppedPanel& panel) {
  ZonedShape made;
  for (const PanelZone& zone : panel.zones) {
    PlateShape shape{ring_of(zone.outer), {}};
    for (const auto& hole : zone.holes) shape.holes.push_back(ring_of(hole));
    made.zones.push_back(std::move(shape));
    made.layers.push_back({-in(m, zone.top), -in(m, zone.bottom)});
  }
  return made;
}

// The sides of zones that are no boundary of the panel, cut where corners lie on them, each once.
std::vector<std::array<PlatePoint, 2>> seams_of(const ZonedShape& zones, const PlateShape& shape) {
  std::vector<const PlateRing*> rings;
  std::vector<PlatePoint> corners;
  for (const PlateShape& zone : zones.zones) {
    rings.push_back(&zone.outer);
    for (const PlateRing& hole : zone.holes) rings.push_back(&hole);
  }
  for (const PlateRing* ring : rings)
    for (const PlatePoint& p : *ring)
      if (std::ranges::none_of(corners, [&](const PlatePoint& q) { return distance_m(p, q) < same_place_m; }))
        corners.push_back(p);
  std::vector<std::array<PlatePoint, 2>> seams;
  for (const PlateRing* ring : rings)
    for (std::size_t i = 0; i < ring->size(); ++i) {
      const PlatePoint &a = (*ring)[i], &b = (*ring)[(i + 1) % ring->size()];
      std::vector<PlatePoint> stops;
      for (const PlatePoint& p : corners)
        if (distance_m(p, a, b) < same_place_m) stops.push_back(p);
      std::ranges::sort(stops, {}, [&](const PlatePoint& p) { return distance_m(a, p); });
      for (std::size_t s = 1; s < stops.size(); ++s) {
        const PlatePoint &from = stops[s - 1], &to = stops[s];
        const PlatePoint middle{0.5 * (from.x_m + to.x_m), 0.5 * (from.y_m + to.y_m)};
        if (boundary_distance_m(shape, middle) < same_place_m) continue;
        const auto same = [&](const std::array<PlatePoint, 2>& seam) {
          return (distance_m(seam[0], from) < same_place_m && distance_m(seam[1], to) < same_place_m) ||
                 (distance_m(seam[1], from) < same_place_m && distance_m(seam[0], to) < same_place_m);
        };
        if (std::ranges::none_of(seams, same)) seams.push_back({from, to});
      }
    }
  return seams;
}

std::optional<NotAssessed> stepped_refusal(const SteppedPanel& panel, const ZonedShape& zones,
                                           const FlatPanel& flat) {
  if (panel.loads.empty() || flat.focus.empty() || panel.zones.empty())
    return NotAssessed{"the panel has no outline, no zone, no load or no pick", {}};
  if (!(panel.poisson.value() >= 0.0 && panel.poisson.value() < 0.5) || !(panel.patch > Length{}) ||
      !(panel.strip > Length{}) || !is_finite(panel.patch) || !is_finite(panel.strip))
    return NotAssessed{"a number of the panel is not usable", {}};
  double covered = 0.0;
  for (std::size_t z = 0; z < zones.zones.size(); ++z) {
    if (!(zones.layers[z].bottom_m > zones.layers[z].top_m) || !std::isfinite(zones.layers[z].bottom_m) ||
        !std::isfinite(zones.layers[z].top_m))
      return NotAssessed{"a zone of the panel has no thickness", {}};
    covered += area_m2(zones.zones[z]);
  }
  if (!(std::abs(covered - area_m2(flat.shape)) <= zones_cover_within * area_m2(flat.shape)))
    return NotAssessed{"the zones of the panel do not cover it once", {}};
  for (const SteppedLoad& load : panel.loads) {
    if (load.pressure.size() != panel.zones.size()) return NotAssessed{"a zone of the panel has no load", {}};
    for (const Stress& pressure : load.pressure)
      if (!is_finite(pressure)) return NotAssessed{"a load of the panel is not a usable number", {}};
    for (const PanelForce& force : load.forces)
      if (!is_finite(force.up) || !is_finite(force.along_x) || !is_finite(force.along_y) ||
          !is_finite(force.above_middle))
        return NotAssessed{"a force on the panel is not a usable number", {}};
  }
  for (const PlatePoint& p : flat.focus)
    if (!is_inside(flat.shape, p) && !(boundary_distance_m(flat.shape, p) <= same_place_m))
      return NotAssessed{"a force acts beside the panel or in an opening", {}};
  return {};
}

struct MostTension {
  double value_Pa = 0.0;
  PlatePoint at;
  void look(double stress_Pa, const PlatePoint& p) {
    if (stress_Pa > value_Pa || std::isnan(stress_Pa)) value_Pa = stress_Pa, at = p;
  }
};

struct FacesFound {
  MostTension bottom, top;
};

double principal(const FaceStress& s) { return 0.5 * (s[0] + s[1]) + std::hypot(0.5 * (s[0] - s[1]), s[2]); }

double load_size(const SteppedLoad& load, const ZonedShape& zones) {
  double size = 0.0;
  for (std::size_t z = 0; z < zones.zones.size(); ++z)
    size += std::abs(load.pressure[z].value()) * area_m2(zones.zones[z]);
  for (const PanelForce& force : load.forces)
    size += std::abs(force.up.value()) + std::abs(force.along_x.value()) + std::abs(force.along_y.value());
  return size;
}

FacesFound read_faces(const SteppedPanel& panel, const SteppedLoad& load, const FlatPanel& flat,
                      const ZonedShape& zones, const SteppedSolution& solution) {
  const double radius_m = 0.5 * in(m, panel.patch);
  const double across_x_m = std::min(in(m, panel.strip), 0.5 * (flat.high_x_m - flat.low_x_m));
  const double across_y_m = std::min(in(m, panel.strip), 0.5 * (flat.high_y_m - flat.low_y_m));
  FacesFound found;
  std::vector<PlatePoint> picks;
  for (const PanelForce& force : load.forces)
    if (force.is_pick) picks.push_back({in(m, force.at.x), in(m, force.at.y)});
  for (const PlatePoint& p : flat.reading) {
    const bool at_pick = std::ranges::any_of(
        picks, [&](const PlatePoint& pick) { return distance_m(pick, p) < 2.0 * radius_m; });
    if (at_pick) continue;
    const bool near_pick = std::ranges::any_of(picks, [&](const PlatePoint& pick) {
      return std::abs(p.x_m - pick.x_m) <= 0.5 * across_x_m && std::abs(p.y_m - pick.y_m) <= 0.5 * across_y_m;
    });
    for (std::size_t z = 0; z < zones.zones.size(); ++z) {
      if (!is_inside(zones.zones[z], p) && boundary_distance_m(zones.zones[z], p) > radius_m) continue;
      if (const auto s = solution.patch_stress(p, radius_m, z, PlateFace::bottom))
        found.bottom.look(principal(*s), p);
      if (near_pick) continue;
      if (const auto s = solution.patch_stress(p, radius_m, z, PlateFace::top))
        found.top.look(principal(*s), p);
    }
  }
  for (const PlatePoint& pick : picks)
    for (const double beside : {-1.0, -0.25, 0.25, 1.0}) {  // the moment of the thrust jumps at the pick
      const double off = beside * radius_m;
      for (std::size_t z = 0; z < zones.zones.size(); ++z)
        for (const PlateFace face : {PlateFace::bottom, PlateFace::top}) {
          MostTension& most = face == PlateFace::top ? found.top : found.bottom;
          if (const auto x = solution.strip_stress({pick.x_m + off, pick.y_m}, false, across_y_m, z, face))
            most.look((*x)[0], pick);
          if (const auto y = solution.strip_stress({pick.x_m, pick.y_m + off}, true, across_x_m, z, face))
            most.look((*y)[1], pick);
        }
    }
  return found;
}

std::optional<std::vector<FacesFound>> on_mesh(const SteppedPanel& panel, const FlatPanel& flat,
                                               const ZonedShape& zones, const PlateMesh& mesh) {
  std::vector<std::size_t> zone;
  for (const auto& corners : mesh.triangles) {
    PlatePoint middle;
    for (const int n : corners) {
      middle.x_m += mesh.nodes[static_cast<std::size_t>(n)].x_m / 3.0;
      middle.y_m += mesh.nodes[static_cast<std::size_t>(n)].y_m / 3.0;
    }
    zone.push_back(zones.zone_of(middle));
    if (zone.back() == zones.zones.size()) return {};
  }
  const SteppedSolver solver(mesh, panel.poisson.value(), std::move(zone), zones.layers);
  std::vector<FacesFound> all;
  for (const SteppedLoad& load : panel.loads) {
    std::vector<double> pressure;
    for (const Stress& one : load.pressure) pressure.push_back(one.value());
    std::vector<PlateNodeLoad> loads;
    std::vector<MembraneNodeForce> forces;
    for (const PanelForce& force : load.forces) {
      const int node = mesh.focus_nodes[flat.focus_of({in(m, force.at.x), in(m, force.at.y)})],
                first = 3 * node;
      const double arm_m = in(m, force.above_middle);
      loads.push_back({first, -in(newton, force.up)});
      loads.push_back({first + 1, arm_m * in(newton, force.along_y)});
      loads.push_back({first + 2, -arm_m * in(newton, force.along_x)});
      forces.push_back({node, in(newton, force.along_x), in(newton, force.along_y)});
    }
    const auto solution = solver.solve(pressure, loads, forces);
    if (!solution || !(solution->held() <= held_within * load_size(load, zones))) return {};
    all.push_back(read_faces(panel, load, flat, zones, *solution));
  }
  return all;
}

double larger_of(const FacesFound& found) { return std::max(found.bottom.value_Pa, found.top.value_Pa); }

double changed_by(const FacesFound& a, const FacesFound& b) {
  return std::max(std::abs(a.bottom.value_Pa - b.bottom.value_Pa),
                  std::abs(a.top.value_Pa - b.top.value_Pa)) /
         larger_of(b);
}

}  // namespace

Outcome<std::vector<SteppedBending>> stepped_panel_bending(const SteppedPanel& panel) {
  std::vector<plan::PlanarPoint> places;
  for (const SteppedLoad& load : panel.loads)
    for (const PanelForce& force : load.forces) places.push_back(force.at);
  FlatPanel flat = flat_panel(panel.outer, panel.holes, places, 0.5 * in(m, panel.patch));
  const ZonedShape zones = zoned(panel);
  if (auto refused = stepped_refusal(panel, zones, flat)) return *std::move(refused);
  flat.shape.seams = seams_of(zones, flat.shape);

  double size_m = std::max(flat.size_m() / stepped_divisions, flat.length_m() / (4 * stepped_divisions));
  std::vector<FacesFound> before;
  bool calm_before = false;
  for (int i = 0; i <= stepped_refinements; ++i, size_m *= stepped_finer) {
    const auto mesh = plate_mesh(flat.shape, flat.focus, size_m);
    if (!mesh) continue;
    const auto found = on_mesh(panel, flat, zones, *mesh);
    if (!found) continue;
    std::vector<double> changed(found->size(), 1.0);
    if (!before.empty())
      for (std::size_t k = 0; k < found->size(); ++k) changed[k] = changed_by(before[k], (*found)[k]);
    const auto all_within = [&](double share) {  // what is not a number is not
      return std::ranges::all_of(changed, [&](double each) { return each <= share; });
    };
    if (calm_before && all_within(panel_accuracy)) {
      std::vector<SteppedBending> bent;
      for (std::size_t k = 0; k < found->size(); ++k) {
        const FacesFound& one = (*found)[k];
        const double left = left_after(changed[k], stepped_finer);
        const auto with_error = [&](const MostTension& most) {
          return FaceTension{Stress::from_value(most.value_Pa + left * larger_of(one)),
                             {most.at.x_m * m, most.at.y_m * m}};
        };
        bent.push_back(
            {with_error(one.bottom), with_error(one.top), left, static_cast<int>(mesh->nodes.size())});
      }
      return bent;
    }
    before = *found;
    calm_before = all_within(2.0 * panel_accuracy);
  }
  return NotAssessed{"the bending of the stepped panel could not be computed to 2 %",
                     "[piece] bending_check: name the engineer's own check of its bending"};
}

}  // namespace firstpick::demands
