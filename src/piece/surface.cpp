// Area, centroid and outward normal of a face, and its projection on the pull.

#include "piece/shape.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Curve2d.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <BRepGProp.hxx>
#include <BRepGProp_Face.hxx>
#include <BRepTools.hxx>
#include <BRep_Tool.hxx>
#include <GProp_GProps.hxx>
#include <GeomLib_IsPlanarSurface.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <gp_Cylinder.hxx>
#include <gp_Pln.hxx>

namespace firstpick::piece {
namespace {

constexpr double planar_within_m = 1e-7;

struct GaussPoint {
  double at, weight;
};
constexpr std::array<GaussPoint, 5> gauss = {{{-0.906179845938664, 0.236926885056189},
                                              {-0.538469310105683, 0.478628670499366},
                                              {0.0, 0.568888888888889},
                                              {0.538469310105683, 0.478628670499366},
                                              {0.906179845938664, 0.236926885056189}}};

template <class Function>
double integral(double from, double to, int pieces, Function&& f) {
  double sum = 0.0;
  const double half = 0.5 * (to - from) / pieces;
  for (int i = 0; i < pieces; ++i)
    for (const GaussPoint& point : gauss) sum += point.weight * f(from + half * (2 * i + 1 + point.at));
  return sum * half;
}

// The surface of a face as seen from outside, by its parameters.
class Downward {
 public:
  explicit Downward(const TopoDS_Face& face)
      : surface_(face, false), reversed_(face.Orientation() == TopAbs_REVERSED) {
    double v_from, v_to;
    BRepTools::UVBounds(face, from_, to_, v_from, v_to);
  }

  // Integral of max(0, -n.z) from the left bound of the face to u, at constant v. The integrand is smooth
  // between the places where the face turns from down to up, so these bound the pieces of the integration.
  double up_to(double u, double v) const {
    constexpr int steps = 8;
    const auto down = [&](double s) { return down_at(s, v); };
    double sum = 0.0, left = from_, at_left = down(left);
    for (int i = 1; i <= steps; ++i) {
      const double right = from_ + (u - from_) * i / steps, at_right = down(right);
      const auto clipped = [&](double s) { return std::max(0.0, down(s)); };
      if ((at_left > 0.0) == (at_right > 0.0)) {
        sum += integral(left, right, 1, clipped);
      } else {
        const double turn = root(left, right, at_left, down);
        sum += integral(left, turn, 1, clipped) + integral(turn, right, 1, clipped);
      }
      left = right;
      at_left = at_right;
    }
    return sum;
  }

 private:
  double down_at(double u, double v) const {  // -n.z times the area of du dv
    gp_Pnt point;
    gp_Vec along_u, along_v;
    surface_.D1(u, v, point, along_u, along_v);
    const double up = along_u.X() * along_v.Y() - along_u.Y() * along_v.X();
    return reversed_ ? up : -up;
  }

  template <class Function>
  static double root(double low, double high, double at_low, Function&& f) {
    for (int i = 0; i < 50; ++i) {
      const double middle = 0.5 * (low + high);
      ((f(middle) > 0.0) == (at_low > 0.0) ? low : high) = middle;
    }
    return 0.5 * (low + high);
  }

  BRepAdaptor_Surface surface_;
  bool reversed_;
  double from_ = 0.0, to_ = 0.0;
};

bool is_upright(const TopoDS_Face& face) {
  const BRepAdaptor_Surface surface(face, false);
  return surface.GetType() == GeomAbs_Cylinder &&
         surface.Cylinder().Axis().Direction().IsParallel(gp::DZ(), 1e-12);
}

}  // namespace

bool is_planar(const TopoDS_Face& face) {
  const BRepAdaptor_Surface surface(face, false);
  switch (surface.GetType()) {
    case GeomAbs_Plane: return true;
    case GeomAbs_Cylinder:
    case GeomAbs_Cone:
    case GeomAbs_Sphere:
    case GeomAbs_Torus: return false;
    default: return GeomLib_IsPlanarSurface(BRep_Tool::Surface(face), planar_within_m).IsPlanar();
  }
}

gp_Dir outward_normal(const TopoDS_Face& face, double u, double v) {
  gp_Pnt point;
  gp_Vec normal;
  BRepGProp_Face(face).Normal(u, v, point, normal);
  return gp_Dir(normal);
}

gp_Dir middle_normal(const TopoDS_Face& face) {
  if (const BRepAdaptor_Surface surface(face, false); surface.GetType() == GeomAbs_Plane) {
    const gp_Dir normal = surface.Plane().XAxis().Direction() ^ surface.Plane().YAxis().Direction();
    return face.Orientation() == TopAbs_REVERSED ? normal.Reversed() : normal;
  }
  double u_from, u_to, v_from, v_to;
  BRepTools::UVBounds(face, u_from, u_to, v_from, v_to);
  return outward_normal(face, 0.5 * (u_from + u_to), 0.5 * (v_from + v_to));
}

std::vector<gp_Dir> normals_all_over(const TopoDS_Face& face) {
  constexpr int steps = 36;
  double u_from, u_to, v_from, v_to;
  BRepTools::UVBounds(face, u_from, u_to, v_from, v_to);
  const BRepAdaptor_Surface surface(face, false);
  std::vector<gp_Dir> normals;
  for (int i = 0; i < steps; ++i)
    for (int j = 0; j < steps; ++j) {  // at the middles of cells, so that the point of a cone is not met
      gp_Pnt point;
      gp_Vec along_u, along_v;
      surface.D1(u_from + (u_to - u_from) * (i + 0.5) / steps, v_from + (v_to - v_from) * (j + 0.5) / steps,
                 point, along_u, along_v);
      const gp_Dir normal(along_u.Crossed(along_v));
      normals.push_back(face.Orientation() == TopAbs_REVERSED ? normal.Reversed() : normal);
    }
  return normals;
}

bool is_plain(const TopoDS_Face& face) {
  const GeomAbs_SurfaceType surface = BRepAdaptor_Surface(face, false).GetType();
  if (surface != GeomAbs_Plane && surface != GeomAbs_Cylinder && surface != GeomAbs_Cone) return false;
  for (TopExp_Explorer edges(face, TopAbs_EDGE); edges.More(); edges.Next()) {
    if (BRep_Tool::Degenerated(TopoDS::Edge(edges.Current()))) continue;  // the point of a cone
    const GeomAbs_CurveType curve = BRepAdaptor_Curve(TopoDS::Edge(edges.Current())).GetType();
    if (curve != GeomAbs_Line && curve != GeomAbs_Circle) return false;
  }
  return true;
}

SurfaceMeasure surface_measure(const TopoDS_Face& face) {
  GProp_GProps measured;
  if (is_plain(face))
    BRepGProp::SurfaceProperties(face, measured);
  else
    BRepGProp::SurfaceProperties(face, measured, relative_accuracy);
  return {measured.Mass() * m2, position(measured.CentreOfMass())};
}

// Green's theorem over the boundary in the parameters of the surface: the integral of f du dv over the face
// is the integral of F dv along its edges, F being the integral of f over u.
Area downward_projection(const TopoDS_Face& face, Area area) {
  if (is_planar(face)) return std::max(0.0, -middle_normal(face).Z()) * area;
  if (is_upright(face)) return {};
  const Downward downward(face);
  double sum_m2 = 0.0;
  const TopoDS_Shape forward = face.Oriented(TopAbs_FORWARD);
  for (TopExp_Explorer edges(forward, TopAbs_EDGE); edges.More(); edges.Next()) {
    const TopoDS_Edge& edge = TopoDS::Edge(edges.Current());
    const BRepAdaptor_Curve2d curve(edge, TopoDS::Face(forward));
    const int pieces = 4 * std::max(8, curve.NbIntervals(GeomAbs_C2));
    const double along = integral(curve.FirstParameter(), curve.LastParameter(), pieces, [&](double t) {
      gp_Pnt2d at;
      gp_Vec2d step;
      curve.D1(t, at, step);
      return step.Y() == 0.0 ? 0.0 : downward.up_to(at.X(), at.Y()) * step.Y();
    });
    sum_m2 += edge.Orientation() == TopAbs_REVERSED ? -along : along;
  }
  return std::max(0.0, sum_m2) * m2;
}

}  // namespace firstpick::piece
