// A body of concrete inside the real one holds no more than the real one. Under a curved face such bodies are right prisms:
//
//   top     the plane s below the insert, at right angles to it; its outline: what is concrete in that plane and in the
//           plane of the bottom, within 10 embedments of the insert, nearer to this insert than to any other
//   bottom  short of where the concrete behind the insert ends
//
//   s       shares of the embedment, in steps from 1/1536 to 1/2
//   bottom  1/10000 of the thickness before the end of the concrete; where the concrete narrows downwards, also half and
//           a quarter of the way there from the head
//
// Each prism is held against the solid: one that is not wholly concrete (a duct between the two planes) is left out. The
// prisms of two inserts lie on the two sides of the plane half way between them, so that none counts concrete of another.
// None of these numbers makes a body stronger than it is: another choice is another body inside the concrete.

#include "piece/contained_faces.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include <BRepAlgoAPI_Common.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepBuilderAPI_Transform.hxx>
#include <BRepClass_FaceClassifier.hxx>
#include <BRepGProp.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <GProp_GProps.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <gp_Ax2.hxx>
#include <gp_Pln.hxx>
#include <gp_Trsf.hxx>
#include <gp_XY.hxx>

#include "piece/shape.hpp"

namespace firstpick::piece {
namespace {

constexpr std::array sunk_shares{1.0 / 1536, 1.0 / 256, 1.0 / 64, 1.0 / 32, 1.0 / 16, 3.0 / 32,
                                 1.0 / 8,    3.0 / 16,  1.0 / 4,  3.0 / 8,  1.0 / 2};
constexpr std::array bottom_shares{1.0, 0.5, 0.25};  // of the way from the head to the end of the concrete
constexpr double short_of_the_end = 1e-4;            // of the thickness
constexpr double reach_in_embedments = 10.0;
// A search ends at a top whose edges are this far away, in embedments left: no breakout in tension reaches so far. A top that
// is this near to its edges is not worth holding against the solid.
constexpr double far_enough = 1.6, too_near = 0.1;
constexpr double same = 1e-9, wholly_concrete = 1e-6;  // of areas; of volumes
constexpr double one_place_m = 1e-7;

double area_m2(const TopoDS_Shape& face) {
  GProp_GProps measured;
  BRepGProp::SurfaceProperties(face, measured);
  return measured.Mass();
}

double volume_m3(const TopoDS_Shape& solid) {
  GProp_GProps measured;
  BRepGProp::VolumeProperties(solid, measured);
  return measured.Mass();
}

// The part of a convex polygon where n . p <= most.
std::vector<gp_XY> cut_off(const std::vector<gp_XY>& polygon, const gp_XY& n, double most) {
  std::vector<gp_XY> kept;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const gp_XY &p = polygon[i], &q = polygon[(i + 1) % polygon.size()];
    const double at_p = n * p - most, at_q = n * q - most;
    if (at_p <= 0.0) kept.push_back(p);
    if ((at_p < 0.0 && at_q > 0.0) || (at_p > 0.0 && at_q < 0.0))
      kept.push_back(p + (q - p) * (at_p / (at_p - at_q)));
  }
  return kept;
}

class UnderTheFace {
 public:
  UnderTheFace(const TopoDS_Shape& solid, const RoundSeat& seat)
      : solid_(solid), seat_(seat), axes_(seat.foot, seat.normal) {}

  // Concrete in both planes, as one face in the upper of them, about the axis of the insert. Nothing: no concrete there.
  // `narrows`: a bottom nearer to the head may leave more.
  std::optional<TopoDS_Face> common(double top_m, double bottom_m, bool& narrows) const {
    narrows = true;
    const std::vector<gp_XY> room = nearest_to_this(top_m, bottom_m);
    if (room.size() < 3) return {};
    const auto top = concrete_in(flat(room, top_m), top_m),
               bottom = concrete_in(flat(room, bottom_m), bottom_m);
    if (!top || !bottom) return {};
    gp_Trsf raised;
    raised.SetTranslation(gp_Vec(axes_.Direction()) * (bottom_m - top_m));
    const TopoDS_Face below = TopoDS::Face(BRepBuilderAPI_Transform(*bottom, raised, true).Shape());
    const auto both = about_axis(BRepAlgoAPI_Common(*top, below).Shape(), top_m);
    narrows = !both || area_m2(*both) < (1.0 - wholly_concrete) * area_m2(*top);
    return both;
  }

  gp_Pnt below(double depth_m) const { return seat_.foot.Translated(gp_Vec(axes_.Direction()) * -depth_m); }

  bool is_wholly_concrete(const InsertSite& top) const {
    const double deep_m = in(m, top.thickness), top_m = in(m, top.sunk);
    const gp_Dir u(top.u.x, top.u.y, top.u.z), v(top.v.x, top.v.y, top.v.z);
    const auto wire = [&](const std::vector<plan::PlanarPoint>& ring) {
      BRepBuilderAPI_MakePolygon polygon;
      for (const auto& p : ring)
        polygon.Add(below(top_m).Translated(gp_Vec(u) * in(m, p.x) + gp_Vec(v) * in(m, p.y)));
      polygon.Close();
      return polygon.Wire();
    };
    BRepBuilderAPI_MakeFace face(gp_Pln(below(top_m), axes_.Direction()), wire(top.outline.outer), true);
    for (const auto& hole : top.outline.holes) face.Add(wire(hole));
    const TopoDS_Shape prism =
        BRepPrimAPI_MakePrism(face.Face(), gp_Vec(axes_.Direction()) * -deep_m).Shape();
    const double whole_m3 = std::abs(volume_m3(prism));
    const double concrete_m3 = std::abs(volume_m3(BRepAlgoAPI_Common(prism, solid_).Shape()));
    return whole_m3 > 0.0 && concrete_m3 >= (1.0 - wholly_concrete) * whole_m3 &&
           concrete_m3 <= (1.0 + wholly_concrete) * whole_m3;
  }

 private:
  // What of the square about the insert is nearer to it than to any other, from the upper plane to the lower.
  std::vector<gp_XY> nearest_to_this(double top_m, double bottom_m) const {
    const double r = reach_in_embedments * seat_.embedment_m;
    std::vector<gp_XY> room{{-r, -r}, {r, -r}, {r, r}, {-r, r}};
    for (const gp_Pnt& other : seat_.others) {
      const double apart_m = seat_.foot.Distance(other);
      if (!(apart_m > one_place_m)) return {};
      const gp_Dir d(gp_Vec(seat_.foot, other));
      const double out = d * axes_.Direction();
      room = cut_off(room, {d * axes_.XDirection(), d * axes_.YDirection()},
                     0.5 * apart_m + (out < 0.0 ? bottom_m : top_m) * out);
    }
    return room;
  }

  TopoDS_Face flat(const std::vector<gp_XY>& polygon, double depth_m) const {
    BRepBuilderAPI_MakePolygon wire;
    for (const gp_XY& p : polygon)
      wire.Add(
          below(depth_m).Translated(gp_Vec(axes_.XDirection()) * p.X() + gp_Vec(axes_.YDirection()) * p.Y()));
    wire.Close();
    return BRepBuilderAPI_MakeFace(gp_Pln(below(depth_m), axes_.Direction()), wire.Wire(), true).Face();
  }

  std::optional<TopoDS_Face> concrete_in(const TopoDS_Face& plane, double depth_m) const {
    return about_axis(BRepAlgoAPI_Common(plane, solid_).Shape(), depth_m);
  }

  std::optional<TopoDS_Face> about_axis(const TopoDS_Shape& faces, double depth_m) const {
    for (TopExp_Explorer each(faces, TopAbs_FACE); each.More(); each.Next()) {
      const TopoDS_Face face = TopoDS::Face(each.Current());
      if (BRepClass_FaceClassifier(face, below(depth_m), one_place_m).State() == TopAbs_IN) return face;
    }
    return {};
  }

  const TopoDS_Shape& solid_;
  const RoundSeat& seat_;
  gp_Ax2 axes_;
};

InsertSite site_of(const TopoDS_Face& face, const gp_Pnt& at, const gp_Ax2& axes, double top_m,
                   double bottom_m) {
  InsertSite site;
  site.planar = true;
  site.edges = edge_distances(face, at);
  site.outline = face_outline(face, at, axes.XDirection(), axes.YDirection());
  site.normal = direction(axes.Direction());
  site.u = direction(axes.XDirection());
  site.v = direction(axes.YDirection());
  site.thickness = (bottom_m - top_m) * m;
  site.sunk = top_m * m;
  return site;
}

}  // namespace

std::vector<InsertSite> contained_faces(const TopoDS_Shape& solid, const RoundSeat& seat) {
  std::vector<InsertSite> found;
  const double h_m = seat.embedment_m, end_m = (1.0 - short_of_the_end) * seat.thickness_m;
  if (!std::isfinite(h_m) || !std::isfinite(end_m) || !(h_m > 0.0) || !(h_m < end_m)) return found;
  const UnderTheFace under(solid, seat);
  std::optional<gp_Ax2> axes;
  for (const double way_down : bottom_shares) {
    const double bottom_m = h_m + way_down * (end_m - h_m);
    bool any_narrows = false, is_far_enough = false;
    double largest_m2 = 0.0;
    for (const double share : sunk_shares) {
      const double top_m = share * h_m;
      bool narrows = false;
      const auto face = under.common(top_m, bottom_m, narrows);
      any_narrows = any_narrows || narrows;
      if (!face) continue;
      const double area = area_m2(*face);
      if (!(area > (1.0 + same) * largest_m2)) continue;  // a deeper top that is no wider
      if (!axes) {
        const Direction towards = edge_distances(*face, under.below(top_m)).front().towards;
        axes = gp_Ax2(seat.foot, seat.normal, gp_Dir(towards.x, towards.y, towards.z));
      }
      InsertSite site = site_of(*face, under.below(top_m), *axes, top_m, bottom_m);
      const double nearest_m = in(m, site.edges.front().distance);
      if (nearest_m < too_near * h_m || !under.is_wholly_concrete(site)) continue;
      largest_m2 = area;
      found.push_back(std::move(site));
      is_far_enough = nearest_m >= far_enough * (h_m - top_m);
      if (is_far_enough) break;
    }
    if (is_far_enough || !any_narrows) break;  // a bottom nearer to the head gives nothing more
  }
  return found;
}

}  // namespace firstpick::piece
