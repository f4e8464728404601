// The face that each insert sits in, the edges around it and the concrete behind it.
//
// A plan is written to 1/16 in, so the point may miss the face by that rounding: `off_the_face` below.
// Everything is measured from the foot of the point on the face. Two faces within that distance: it is not
// clear which one is meant.

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include <fmt/format.h>
#include <BRepBndLib.hxx>
#include <BRepBuilderAPI_MakeVertex.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <BRep_Tool.hxx>
#include <Bnd_Box.hxx>
#include <GeomAPI_ProjectPointOnSurf.hxx>
#include <IntCurvesFace_ShapeIntersector.hxx>
#include <TopoDS_Vertex.hxx>
#include <gp_Ax2.hxx>
#include <gp_Lin.hxx>

#include "piece/below_face.hpp"
#include "piece/contained_faces.hpp"
#include "piece/shape.hpp"
#include "units/print.hpp"

namespace firstpick::piece {
namespace {

constexpr Length off_the_face = 1.0 * mm;  // more than half of 1/16 in
constexpr Length rounding = 1e-6 * mm;

struct Foot {  // nearest point of one face
  std::size_t face = 0;
  double distance_m = std::numeric_limits<double>::infinity();
  gp_Pnt point;
};

// The outward normal at a point of a face; on a curved face by projection, for the point may lie on its seam.
gp_Dir normal_at(const TopoDS_Face& face, const gp_Pnt& point) {
  if (is_planar(face)) return middle_normal(face);
  const GeomAPI_ProjectPointOnSurf projected(point, BRep_Tool::Surface(face));
  double u, v;
  projected.LowerDistanceParameters(u, v);
  return outward_normal(face, u, v);
}

Foot foot_on(const TopoDS_Face& face, std::size_t index, const TopoDS_Vertex& at) {
  const BRepExtrema_DistShapeShape nearest(at, face);
  if (!nearest.IsDone() || nearest.NbSolution() == 0) return {};
  return {index, nearest.Value(), nearest.PointOnShape2(1)};
}

class Seats {
 public:
  explicit Seats(const Assembly& assembly) : assembly_(assembly) {
    if (assembly.flat) return;
    for (const JoinedFace& face : assembly.faces) {
      Bnd_Box box;
      BRepBndLib::Add(face.face, box, false);
      boxes_.push_back(box);
    }
  }

  // Faces within `off_the_face` of the point.
  std::vector<Foot> at(const gp_Pnt& point) const {
    std::vector<Foot> found;
    const TopoDS_Vertex vertex = BRepBuilderAPI_MakeVertex(point).Vertex();
    const double within_m = in(m, off_the_face + rounding);
    Bnd_Box around(point, point);
    around.Enlarge(within_m);
    for (std::size_t i = 0; i < assembly_.faces.size(); ++i) {
      if (assembly_.flat ? !assembly_.flat->may_be_within(i, point, within_m) : boxes_[i].IsOut(around)) continue;
      const Foot foot = foot_below(point, i, vertex);
      if (foot.distance_m <= within_m) found.push_back(foot);
    }
    return found;
  }

  Foot nearest(const gp_Pnt& point) const {
    const TopoDS_Vertex vertex = BRepBuilderAPI_MakeVertex(point).Vertex();
    Foot best;
    for (std::size_t i = 0; i < assembly_.faces.size(); ++i) {
      const Foot foot = foot_on(assembly_.faces[i].face, i, vertex);
      if (foot.distance_m < best.distance_m) best = foot;
    }
    return best;
  }

  // Concrete behind the point, against the normal; nothing if no face was met. Rays beside the point find the
  // end of the concrete where the ray itself runs along a face; they count only where they differ by more
  // than a slope can.
  std::optional<Length> thickness(const gp_Pnt& point, const gp_Dir& normal) {
    constexpr double beside_m = 1e-5, of_a_step_m = 1e-3;
    const gp_Ax2 axes(point, normal);
    const gp_Vec x = gp_Vec(axes.XDirection()) * beside_m, y = gp_Vec(axes.YDirection()) * beside_m;
    std::optional<double> shortest = depth_m(point, normal);
    for (const gp_Vec& aside : {x, y, x.Reversed(), y.Reversed()}) {
      const auto depth = depth_m(point.Translated(aside), normal);
      if (depth && (!shortest || *depth < *shortest - of_a_step_m)) shortest = depth;
    }
    if (!shortest) return {};
    return *shortest * m;
  }

 private:
  Foot foot_below(const gp_Pnt& point, std::size_t face, const TopoDS_Vertex& vertex) const {
    if (assembly_.flat)
      if (const auto foot = assembly_.flat->foot(face, point)) return {face, foot->Distance(point), *foot};
    return foot_on(assembly_.faces[face].face, face, vertex);
  }

  std::optional<double> depth_m(const gp_Pnt& point, const gp_Dir& normal) {
    constexpr double behind_the_face_m = 1e-6, beyond_any_piece_m = 1e3;
    std::optional<double> nearest;
    const auto look = [&](double at_m) {
      if (at_m > behind_the_face_m && (!nearest || at_m < *nearest)) nearest = at_m;
    };
    if (const auto flat = assembly_.flat ? assembly_.flat->crossings(point, normal.Reversed()) : std::nullopt) {
      for (const double at_m : *flat) look(at_m);
      return nearest;
    }
    if (!ray_) ray_.emplace().Load(assembly_.solid, 1e-7);
    ray_->Perform(gp_Lin(point, normal.Reversed()), behind_the_face_m, beyond_any_piece_m);
    if (!ray_->IsDone()) return nearest;
    for (int i = 1; i <= ray_->NbPnt(); ++i) look(ray_->WParameter(i));
    return nearest;
  }

  const Assembly& assembly_;
  std::vector<Bnd_Box> boxes_;                            // of a solid with curved faces
  std::optional<IntCurvesFace_ShapeIntersector> ray_;  // loaded when it is first asked
};

std::string shown(const Position& p, UnitSystem units) {
  return fmt::format("({}, {}, {})", print(p.x, units), print(p.y, units), print(p.z, units));
}

Diagnostic off_the_concrete(const plan::Plan& plan, const plan::Insert& insert, const Foot& nearest) {
  const UnitSystem units = plan.piece.units;
  return {plan.file, insert.place,
          fmt::format("insert '{}' does not lie on the concrete: the nearest face is {} away", insert.id,
                      print(nearest.distance_m * m, units)),
          fmt::format("the nearest point of the concrete is {}", shown(position(nearest.point), units))};
}

Diagnostic on_an_edge(const plan::Plan& plan, const plan::Insert& insert, std::size_t faces) {
  return {
      plan.file, insert.place,
      fmt::format("insert '{}' lies on an edge where {} faces meet: it is not clear which face it sits in",
                  insert.id, faces),
      fmt::format("an insert sits in one face, more than {} from every edge",
                  print(off_the_face, plan.piece.units))};
}

std::optional<InsertSite> site_at(const plan::Insert& insert, const Foot& foot, const Assembly& assembly,
                                  Seats& seats) {
  const TopoDS_Face& face = assembly.faces[foot.face].face;
  const gp_Dir normal = normal_at(face, foot.point);
  const auto thickness = seats.thickness(foot.point, normal);
  if (!thickness) return {};

  InsertSite site;
  site.insert = insert.id;
  site.face = foot.face;
  site.planar = is_planar(face);
  site.thickness = *thickness;
  gp_Ax2 axes(foot.point, normal);
  if (site.planar) {
    site.edges = edge_distances(face, foot.point);
    const Direction& towards = site.edges.front().towards;
    axes = gp_Ax2(foot.point, normal, gp_Dir(towards.x, towards.y, towards.z));
    site.outline = face_outline(face, foot.point, axes.XDirection(), axes.YDirection());
  }
  site.normal = direction(normal);
  site.u = direction(axes.XDirection());
  site.v = direction(axes.YDirection());
  return site;
}

// Under a flat face: of a headed insert the cone that would break out, at 1.5 embedments (ACI 318-19 17.6.2.1, as EN 1992-4
// 7.2.1.4); of a rated one as deep and as far as its supplier's least edge distance.
void measure_below(InsertSite& site, const plan::Insert& insert, const gp_Pnt& foot, const Assembly& assembly) {
  if (!site.planar) return;
  const gp_Ax2 axes(foot, gp_Dir(site.normal.x, site.normal.y, site.normal.z), gp_Dir(site.u.x, site.u.y, site.u.z));
  const auto count = [&](const RoundBody& body) {
    const Ratio share = Ratio::from_value(share_not_concrete(assembly, site, axes, body));
    site.not_concrete = site.not_concrete ? std::max(*site.not_concrete, share) : share;
  };
  if (insert.embedment && *insert.embedment < site.thickness) {
    const double h_m = in(m, *insert.embedment);
    count({1.5 * h_m, 0.0, h_m});
  }
  if (!insert.rating || !insert.rating->minimum_edge) return;
  const double c_m = in(m, *insert.rating->minimum_edge);
  count({c_m, c_m, std::min(c_m, in(m, site.thickness))});
}

// A headed or looped insert in a flat face reaches for concrete beyond half way to its neighbours: in tension not so far as
// this many of its embedments.
constexpr double reach_of_flat = 5.0;

// Flat faces inside the concrete under a curved one, for the formulas of headed inserts. `sites`: of all inserts of the plan.
void add_faces_within(std::size_t i, const plan::Plan& plan, const Assembly& assembly, const gp_Pnt& foot,
                      std::vector<InsertSite>& sites) {
  const plan::Insert& insert = plan.inserts[i];
  InsertSite& site = sites[i];
  if (site.planar || insert.kind != "headed" || !insert.embedment) return;
  RoundSeat seat{foot, gp_Dir(site.normal.x, site.normal.y, site.normal.z), in(m, *insert.embedment),
                 in(m, site.thickness), {}};
  for (std::size_t j = 0; j < sites.size(); ++j) {
    const plan::Insert& other = plan.inserts[j];
    if (j == i) continue;
    if (sites[j].planar && other.embedment && norm(other.at - insert.at) < reach_of_flat * *other.embedment) return;
    seat.others.push_back(point_m(other.at));
  }
  site.within = contained_faces(assembly.solid, seat);
  for (InsertSite& flat : site.within) {
    flat.insert = site.insert;
    flat.face = assembly.faces.size() + i;
  }
  if (site.within.empty()) return;
  site.u = site.within.front().u;
  site.v = site.within.front().v;
}

}  // namespace

std::vector<InsertSite> insert_sites(const plan::Plan& plan, const Assembly& assembly,
                                     std::vector<Diagnostic>& faults) {
  std::vector<InsertSite> sites;
  std::vector<gp_Pnt> places;
  if (plan.inserts.empty()) return sites;
  Seats seats(assembly);
  for (const plan::Insert& insert : plan.inserts) {
    if (!is_finite(insert.at.x) || !is_finite(insert.at.y) || !is_finite(insert.at.z)) {
      faults.push_back(
          {plan.file, insert.place, fmt::format("the place of insert '{}' is not a number", insert.id), ""});
      continue;
    }
    const gp_Pnt point = point_m(insert.at);
    const std::vector<Foot> feet = seats.at(point);
    if (feet.empty()) {
      faults.push_back(off_the_concrete(plan, insert, seats.nearest(point)));
    } else if (feet.size() > 1) {
      faults.push_back(on_an_edge(plan, insert, feet.size()));
    } else if (auto site = site_at(insert, feet[0], assembly, seats)) {
      sites.push_back(*std::move(site));
      places.push_back(feet[0].point);
    } else {
      faults.push_back(
          {plan.file, insert.place,
           fmt::format("the concrete behind insert '{}' has no end that can be found", insert.id), ""});
    }
  }
  if (sites.size() == plan.inserts.size())  // else there is a fault, and no body
    for (std::size_t i = 0; i < sites.size(); ++i) {
      measure_below(sites[i], plan.inserts[i], places[i], assembly);
      add_faces_within(i, plan, assembly, places[i], sites);
    }
  return sites;
}

}  // namespace firstpick::piece
