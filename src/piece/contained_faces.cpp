// A body of concrete inside the real one holds no more than the real one. Under a curved face such bodies are right prisms:
//
//   top     the plane s below the insert, at right angles to it; its outline: what is concrete in that plane and in the
//           plane of the bottom, within 5 embedments of the insert, nearer to this insert than to any other
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
constexpr double reach_in_embedments = 5.0;
// A search ends at a top whose edges are this far away, in embedments left: no breakout in tension reaches so far. A top that
// is this near to its edges, or whose edges are this share as far away as those of a deeper one, is not worth holding against
// the solid.
constexpr double far_enough = 1.6, too_near = 0.1, much_nearer = 0.5;
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
      : seat_(seat), axes_(seat.foot, seat.normal) {
    const double r_m = 1.1 * reach_in_embedments * seat.embedment_m, above_m = 0.1 * seat.embedment_m;
    const TopoDS_Face lid = flat({{-r_m, -r_m}, {r_m, -r_m}, {r_m, r_m}, {-r_m, r_m}}, -above_m);
    const gp_Vec down = gp_Vec(axes_.Direction()) * -(seat.thickness_m + 2.0 * above_m);
    nearby_ = BRepAlgoAPI_Common(solid, BRepPrimAPI_MakePrism(lid, down).Shape()).Shape();
  }

  // What is concrete in a plane, about the axis of the insert and nearer to it than to any other. Nothing: the axis is in none.
  // `bottom_m`: of the body.
  std::optional<TopoDS_Face> concrete_in(double depth_m, double bottom_m) const {
    const std::vector<gp_XY> room = nearest_to_this(bottom_m);
    if (room.size() < 3) return {};
    return about_axis(BRepAlgoAPI_Common(flat(room, depth_m), nearby_).Shape(), depth_m);
  }

  // What of a face at `top_m` is also in one at `bottom_m`.
  std::optional<TopoDS_Face> above(const TopoDS_Face& top, double top_m, const TopoDS_Face& bottom,
                                   double bottom_m) const {
    gp_Trsf raised;
    raised.SetTranslation(gp_Vec(axes_.Direction()) * (bottom_m - top_m));
    const TopoDS_Face below = TopoDS::Face(BRepBuilderAPI_Transform(bottom, raised, true).Shape());
    return about_axis(BRepAlgoAPI_Common(top, below).Shape(), top_m);
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
    const double concrete_m3 = std::abs(volume_m3(BRepAlgoAPI_Common(prism, nearby_).Shape()));
    return whole_m3 > 0.0 && concrete_m3 >= (1.0 - wholly_concrete) * whole_m3 &&
           concrete_m3 <= (1.0 + wholly_concrete) * whole_m3;
  }

 private:
  // What of the square about the insert is nearer to it than to any other, in every plane from its point to the bottom.
  std::vector<gp_XY> nearest_to_this(double bottom_m) const {
    const double r = reach_in_embedments * seat_.embedment_m;
    std::vector<gp_XY> room{{-r, -r}, {r, -r}, {r, r}, {-r, r}};
    for (const gp_Pnt& other : seat_.others) {
      const double apart_m = seat_.foot.Distance(other);
      if (!(apart_m > one_place_m)) return {};
      const gp_Dir d(gp_Vec(seat_.foot, other));
      room = cut_off(room, {d * axes_.XDirection(), d * axes_.YDirection()},
                     0.5 * apart_m + bottom_m * std::min(0.0, d * axes_.Direction()));
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

  std::optional<TopoDS_Face> about_axis(const TopoDS_Shape& faces, double depth_m) const {
    for (TopExp_Explorer each(faces, TopAbs_FACE); each.More(); each.Next()) {
      const TopoDS_Face face = TopoDS::Face(each.Current());
      if (BRepClass_FaceClassifier(face, below(depth_m), one_place_m).State() == TopAbs_IN) return face;
    }
    return {};
  }

  const RoundSeat& seat_;
  gp_Ax2 axes_;
  TopoDS_Shape nearby_;
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

double nearest_edge_m(const InsertSite& site) { return in(m, site.edges.front().distance); }

bool is_far_enough(const InsertSite& site, double embedment_m) {
  return nearest_edge_m(site) >= far_enough * (embedment_m - in(m, site.sunk));
}

class Search {
 public:
  Search(const TopoDS_Shape& solid, const RoundSeat& seat) : seat_(seat), under_(solid, seat) {}

  // Tops above this bottom, the highest first. `narrows`: a bottom nearer to the head may leave more.
  std::vector<InsertSite> above(double bottom_m, bool& narrows) {
    const double h_m = seat_.embedment_m;
    narrows = true;
    std::vector<InsertSite> drawn;
    const auto bottom = under_.concrete_in(bottom_m, bottom_m);
    if (!bottom) return drawn;
    bool any_narrows = false;
    double largest_m2 = 0.0;
    for (const double share : sunk_shares) {
      const double top_m = share * h_m;
      const auto top = under_.concrete_in(top_m, bottom_m);
      if (!top) continue;
      const auto face = under_.above(*top, top_m, *bottom, bottom_m);
      const double area = face ? area_m2(*face) : 0.0;
      any_narrows = any_narrows || area < (1.0 - wholly_concrete) * area_m2(*top);
      if (!(area > (1.0 + same) * largest_m2)) continue;  // a deeper top that is no wider
      largest_m2 = area;
      drawn.push_back(site_of(*face, under_.below(top_m), axes(*face, top_m), top_m, bottom_m));
      if (is_far_enough(drawn.back(), h_m)) break;
    }
    narrows = any_narrows || drawn.empty();
    return wholly_concrete_of(std::move(drawn));
  }

 private:
  // u to the nearest edge of the first face found.
  const gp_Ax2& axes(const TopoDS_Face& face, double top_m) {
    if (!axes_) {
      const Direction towards = edge_distances(face, under_.below(top_m)).front().towards;
      axes_ = gp_Ax2(seat_.foot, seat_.normal, gp_Dir(towards.x, towards.y, towards.z));
    }
    return *axes_;
  }

  std::vector<InsertSite> wholly_concrete_of(std::vector<InsertSite> drawn) const {
    std::vector<InsertSite> held;
    double deeper_m = 0.0;
    for (auto site = drawn.rbegin(); site != drawn.rend(); ++site) {
      const double nearest_m = nearest_edge_m(*site);
      if (nearest_m < too_near * seat_.embedment_m || nearest_m < much_nearer * deeper_m) continue;
      if (!under_.is_wholly_concrete(*site)) continue;
      deeper_m = std::max(deeper_m, nearest_m);
      held.push_back(std::move(*site));
    }
    std::ranges::reverse(held);
    return held;
  }

  const RoundSeat& seat_;
  UnderTheFace under_;
  std::optional<gp_Ax2> axes_;
};

}  // namespace

std::vector<InsertSite> contained_faces(const TopoDS_Shape& solid, const RoundSeat& seat) {
  std::vector<InsertSite> found;
  const double h_m = seat.embedment_m, end_m = (1.0 - short_of_the_end) * seat.thickness_m;
  if (!std::isfinite(h_m) || !std::isfinite(end_m) || !(h_m > 0.0) || !(h_m < end_m)) return found;
  Search search(solid, seat);
  for (const double way_down : bottom_shares) {
    bool narrows = false;
    for (InsertSite& site : search.above(h_m + way_down * (end_m - h_m), narrows))
      found.push_back(std::move(site));
    const auto reaches = [&](const InsertSite& site) { return is_far_enough(site, h_m); };
    if (!narrows || std::ranges::any_of(found, reaches))
      break;  // a bottom nearer to the head gives nothing more
  }
  return found;
}

}  // namespace firstpick::piece
