// Faces that go straight down from the edges of the insert's face cannot enter the body under it, nor do those whose box does
// not meet the box of the body, nor a plane that has all of it on its inner side. Only where another face is left is the body
// held against the solid.

#include "piece/below_face.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include <BRepAdaptor_Surface.hxx>
#include <BRepAlgoAPI_Common.hxx>
#include <BRepBndLib.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepGProp.hxx>
#include <BRepPrimAPI_MakeCone.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <Bnd_Box.hxx>
#include <GProp_GProps.hxx>
#include <Standard_Failure.hxx>
#include <TopExp.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <gp_Cylinder.hxx>
#include <gp_Pln.hxx>

#include "piece/shape.hpp"

namespace firstpick::piece {
namespace {

constexpr double same_direction = 1e-6, touching_m = 1e-6;

double solid_volume_m3(const TopoDS_Shape& solid) {
  GProp_GProps measured;
  BRepGProp::VolumeProperties(solid, measured);
  return std::abs(measured.Mass());
}

TopoDS_Shape round_body(const gp_Ax2& axes, const RoundBody& body) {
  const gp_Ax2 down(axes.Location(), axes.Direction().Reversed());
  if (std::abs(body.at_face_m - body.at_end_m) <= touching_m)
    return BRepPrimAPI_MakeCylinder(down, body.at_face_m, body.deep_m).Shape();
  return BRepPrimAPI_MakeCone(down, body.at_face_m, body.at_end_m, body.deep_m).Shape();
}

TopoDS_Shape prism_under(const InsertSite& site, const gp_Ax2& axes, double deep_m) {
  const gp_Vec u(axes.XDirection()), v(axes.YDirection());
  const auto wire = [&](const std::vector<plan::PlanarPoint>& ring) {
    BRepBuilderAPI_MakePolygon polygon;
    for (const auto& p : ring) polygon.Add(axes.Location().Translated(u * in(m, p.x) + v * in(m, p.y)));
    polygon.Close();
    return polygon.Wire();
  };
  BRepBuilderAPI_MakeFace face(gp_Pln(axes.Location(), axes.Direction()), wire(site.outline.outer), true);
  for (const auto& hole : site.outline.holes) face.Add(wire(hole));
  return BRepPrimAPI_MakePrism(face.Face(), gp_Vec(axes.Direction()) * -deep_m).Shape();
}

bool goes_straight_down(const BRepAdaptor_Surface& surface, const gp_Dir& normal) {
  if (surface.GetType() == GeomAbs_Plane)
    return std::abs(surface.Plane().Axis().Direction() * normal) <= same_direction;
  return surface.GetType() == GeomAbs_Cylinder &&
         std::abs(surface.Cylinder().Axis().Direction() * normal) >= 1.0 - same_direction;
}

// Of the body along a direction: the farthest of its two circles.
double farthest_m(const gp_Ax2& axes, const RoundBody& body, const gp_Dir& towards) {
  const double across = std::sqrt(std::max(0.0, 1.0 - std::pow(towards * axes.Direction(), 2)));
  const double at_face = body.at_face_m * across;
  const double at_end = body.at_end_m * across - body.deep_m * (towards * axes.Direction());
  return std::max(at_face, at_end);
}

bool may_enter(const TopoDS_Face& face, const TopTools_IndexedMapOfShape& own_edges, const Bnd_Box& box,
               const gp_Ax2& axes, const RoundBody& body) {
  Bnd_Box of_face;
  BRepBndLib::Add(face, of_face);
  if (of_face.IsOut(box)) return false;
  const BRepAdaptor_Surface surface(face);
  TopTools_IndexedMapOfShape edges;
  TopExp::MapShapes(face, TopAbs_EDGE, edges);
  const bool beside =
      std::any_of(edges.cbegin(), edges.cend(), [&](const auto& edge) { return own_edges.Contains(edge); });
  if (beside && goes_straight_down(surface, axes.Direction())) return false;
  if (surface.GetType() != GeomAbs_Plane) return true;
  gp_Dir out = surface.Plane().Axis().Direction();
  if (!surface.Plane().Direct()) out.Reverse();
  if (face.Orientation() == TopAbs_REVERSED) out.Reverse();
  const double before = gp_Vec(axes.Location(), surface.Plane().Location()) * gp_Vec(out);
  return farthest_m(axes, body, out) > before + touching_m;
}

}  // namespace

double share_not_concrete(const Assembly& assembly, const InsertSite& site, const gp_Ax2& axes,
                          const RoundBody& body) {
  if (!(body.at_face_m > touching_m && body.deep_m > touching_m &&
        std::isfinite(body.at_face_m + body.deep_m)))
    return 1.0;
  try {
    const TopoDS_Shape round = round_body(axes, body);
    Bnd_Box box;
    BRepBndLib::Add(round, box);
    const TopoDS_Face& own = assembly.faces.at(site.face).face;
    TopTools_IndexedMapOfShape own_edges;
    TopExp::MapShapes(own, TopAbs_EDGE, own_edges);
    const bool whole =
        std::none_of(assembly.faces.begin(), assembly.faces.end(), [&](const JoinedFace& each) {
          return !each.face.IsSame(own) && may_enter(each.face, own_edges, box, axes, body);
        });
    if (whole) return 0.0;
    const TopoDS_Shape under = BRepAlgoAPI_Common(round, prism_under(site, axes, body.deep_m)).Shape();
    const double asked_m3 = solid_volume_m3(under);
    const double concrete_m3 = solid_volume_m3(BRepAlgoAPI_Common(under, assembly.solid).Shape());
    const double share = 1.0 - concrete_m3 / asked_m3;
    return std::isfinite(share) && asked_m3 > 0.0 ? std::clamp(share, 0.0, 1.0) : 1.0;
  } catch (const Standard_Failure&) {
    return 1.0;
  }
}

}  // namespace firstpick::piece
