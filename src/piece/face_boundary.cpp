// The boundary of a flat face: the distance to each of its edges, and its outline as chords.
//
// Chords of 7.5 degrees at most, and within 0.2 mm of the curve; always on the side of the concrete: where
// the edge bulges out of the concrete the corners lie on the curve, where it bulges in (an opening) they lie
// on its tangents.

#include <algorithm>
#include <cmath>

#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <BRepBuilderAPI_MakeVertex.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <BRepTools.hxx>
#include <BRepTools_WireExplorer.hxx>
#include <GCPnts_TangentialDeflection.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Wire.hxx>
#include <gp_Ax3.hxx>
#include <gp_Circ.hxx>
#include <gp_Lin.hxx>
#include <gp_Vec2d.hxx>

#include "piece/shape.hpp"

namespace firstpick::piece {
namespace {

constexpr double chord_turn_rad = 7.5 * M_PI / 180.0;
constexpr double chord_sagitta_m = 0.2e-3;
constexpr double same_place_m = 1e-7, same_direction_rad = 1e-9;

std::vector<TopoDS_Edge> edges_in_order(const TopoDS_Wire& wire, const TopoDS_Face& face) {
  std::vector<TopoDS_Edge> edges;
  for (BRepTools_WireExplorer explorer(wire, face); explorer.More(); explorer.Next())
    edges.push_back(explorer.Current());
  return edges;
}

std::vector<TopoDS_Wire> wires(const TopoDS_Face& face) {
  std::vector<TopoDS_Wire> found;
  for (TopExp_Explorer explorer(face, TopAbs_WIRE); explorer.More(); explorer.Next())
    found.push_back(TopoDS::Wire(explorer.Current()));
  return found;
}

// Two edges that continue each other on one straight line or circle are one edge of the face.
bool continues(const TopoDS_Edge& edge, const TopoDS_Edge& next) {
  const BRepAdaptor_Curve a(edge), b(next);
  if (a.GetType() != b.GetType()) return false;
  if (a.GetType() == GeomAbs_Line)
    return a.Line().Direction().IsParallel(b.Line().Direction(), same_direction_rad) &&
           a.Line().Distance(b.Line().Location()) < same_place_m;
  if (a.GetType() == GeomAbs_Circle)
    return a.Circle().Location().Distance(b.Circle().Location()) < same_place_m &&
           std::abs(a.Circle().Radius() - b.Circle().Radius()) < same_place_m;
  return false;
}

// A point on an edge with the direction of travel; the concrete lies left of the way.
struct Sample {
  gp_Vec2d at, tangent;
};
using EdgeSamples = std::vector<Sample>;  // from the start of an edge to its end

class FlatAxes {
 public:
  FlatAxes(const gp_Pnt& origin, const gp_Dir& u, const gp_Dir& v) : origin_(origin), u_(u), v_(v) {}
  gp_Vec2d flat(const gp_Vec& vector) const { return {vector.Dot(gp_Vec(u_)), vector.Dot(gp_Vec(v_))}; }
  gp_Vec2d flat(const gp_Pnt& point) const { return flat(gp_Vec(origin_, point)); }

 private:
  gp_Pnt origin_;
  gp_Dir u_, v_;
};

std::vector<double> parameters(const BRepAdaptor_Curve& curve) {
  const double first = curve.FirstParameter(), last = curve.LastParameter();
  if (curve.GetType() == GeomAbs_Line) return {first, last};
  std::vector<double> found;
  if (curve.GetType() == GeomAbs_Circle) {
    const double radius_m = curve.Circle().Radius();
    const double by_sagitta =
        radius_m > chord_sagitta_m ? 2.0 * std::acos(1.0 - chord_sagitta_m / radius_m) : 1.0;
    const int count = static_cast<int>(std::ceil((last - first) / std::min(chord_turn_rad, by_sagitta)));
    for (int i = 0; i <= count; ++i) found.push_back(first + (last - first) * i / count);
    return found;
  }
  const GCPnts_TangentialDeflection points(curve, chord_turn_rad, 0.5 * chord_sagitta_m);
  for (int i = 1; i <= points.NbPoints(); ++i) found.push_back(points.Parameter(i));
  return found;
}

EdgeSamples samples_of(const TopoDS_Edge& edge, const FlatAxes& axes) {
  const BRepAdaptor_Curve curve(edge);
  const bool reversed = edge.Orientation() == TopAbs_REVERSED;
  std::vector<double> at = parameters(curve);
  if (reversed) std::reverse(at.begin(), at.end());
  EdgeSamples samples;
  for (const double t : at) {
    gp_Pnt point;
    gp_Vec tangent;
    curve.D1(t, point, tangent);
    samples.push_back({axes.flat(point), axes.flat(reversed ? tangent.Reversed() : tangent)});
  }
  return samples;
}

bool is_counter_clockwise(const std::vector<EdgeSamples>& way) {
  double doubled_area = 0.0;
  for (const EdgeSamples& samples : way)
    for (std::size_t i = 0; i + 1 < samples.size(); ++i)
      doubled_area += samples[i].at.Crossed(samples[i + 1].at);
  return doubled_area > 0.0;
}

void turn_round(std::vector<EdgeSamples>& way) {
  std::reverse(way.begin(), way.end());
  for (EdgeSamples& samples : way) {
    std::reverse(samples.begin(), samples.end());
    for (Sample& sample : samples) sample.tangent.Reverse();
  }
}

// An arc that leaves its chord to the left bulges into the concrete.
bool bulges_in(const Sample& from, const Sample& to) {
  const gp_Vec2d chord = to.at - from.at;
  return chord.Crossed(from.tangent) > 1e-9 * chord.Magnitude() * from.tangent.Magnitude();
}

gp_Vec2d where_tangents_meet(const Sample& from, const Sample& to) {
  const double along = (to.at - from.at).Crossed(to.tangent) / from.tangent.Crossed(to.tangent);
  return from.at + from.tangent * along;
}

std::vector<plan::PlanarPoint> chords(const std::vector<EdgeSamples>& way) {
  std::vector<plan::PlanarPoint> points;
  const auto add = [&](const gp_Vec2d& at) { points.push_back({at.X() * m, at.Y() * m}); };
  for (const EdgeSamples& samples : way)
    for (std::size_t i = 0; i + 1 < samples.size(); ++i) {
      const bool in_now = bulges_in(samples[i], samples[i + 1]);
      const bool in_before = i > 0 && bulges_in(samples[i - 1], samples[i]);
      if (!(in_now && in_before)) add(samples[i].at);  // else it lies on the line between two corners
      if (in_now) add(where_tangents_meet(samples[i], samples[i + 1]));
    }
  return points;
}

EdgeDistance distance_to(const TopoDS_Edge& edge, const gp_Pnt& origin, bool opening) {
  const BRepExtrema_DistShapeShape nearest(BRepBuilderAPI_MakeVertex(origin).Vertex(), edge);
  if (!nearest.IsDone() || nearest.NbSolution() == 0)
    throw Standard_Failure("no distance from an insert to an edge of its face");
  const gp_Dir towards(gp_Vec(origin, nearest.PointOnShape2(1)));
  return {nearest.Value() * m, direction(towards), opening};
}

}  // namespace

std::vector<EdgeDistance> edge_distances(const TopoDS_Face& face, const gp_Pnt& origin) {
  std::vector<EdgeDistance> distances;
  const TopoDS_Wire outer = BRepTools::OuterWire(face);
  for (const TopoDS_Wire& wire : wires(face)) {
    const std::vector<TopoDS_Edge> edges = edges_in_order(wire, face);
    std::vector<EdgeDistance> of_wire;
    for (std::size_t i = 0; i < edges.size(); ++i) {
      const EdgeDistance next = distance_to(edges[i], origin, !wire.IsSame(outer));
      if (i == 0 || !continues(edges[i - 1], edges[i]))
        of_wire.push_back(next);
      else if (next.distance < of_wire.back().distance)
        of_wire.back() = next;
    }
    if (of_wire.size() > 1 && continues(edges.back(), edges.front())) {
      if (of_wire.back().distance < of_wire.front().distance) of_wire.front() = of_wire.back();
      of_wire.pop_back();
    }
    distances.insert(distances.end(), of_wire.begin(), of_wire.end());
  }
  std::stable_sort(distances.begin(), distances.end(),
                   [](const EdgeDistance& a, const EdgeDistance& b) { return a.distance < b.distance; });
  return distances;
}

Outline face_outline(const TopoDS_Face& face, const gp_Pnt& origin, const gp_Dir& u, const gp_Dir& v) {
  Outline outline;
  const FlatAxes axes(origin, u, v);
  const TopoDS_Wire outer = BRepTools::OuterWire(face);
  for (const TopoDS_Wire& wire : wires(face)) {
    const bool is_outer = wire.IsSame(outer);
    std::vector<EdgeSamples> way;
    for (const TopoDS_Edge& edge : edges_in_order(wire, face)) way.push_back(samples_of(edge, axes));
    if (is_counter_clockwise(way) != is_outer) turn_round(way);
    if (is_outer)
      outline.outer = chords(way);
    else
      outline.holes.push_back(chords(way));
  }
  return outline;
}

std::vector<std::vector<Position>> face_rings(const TopoDS_Face& face) {
  const gp_Ax3 axes = BRepAdaptor_Surface(face).Plane().Position();
  const gp_Pnt origin = axes.Location();
  const gp_Dir u = axes.XDirection(), v = axes.YDirection();
  const Outline outline = face_outline(face, origin, u, v);
  std::vector<std::vector<Position>> rings;
  const auto add = [&](const std::vector<plan::PlanarPoint>& ring) {
    std::vector<Position> placed;
    for (const plan::PlanarPoint& p : ring)
      placed.push_back(position(origin) + direction(u) * p.x + direction(v) * p.y);
    rings.push_back(std::move(placed));
  };
  add(outline.outer);
  for (const auto& hole : outline.holes) add(hole);
  return rings;
}

}  // namespace firstpick::piece
