// A prism along an axis; and a box or a prism together with the openings that pass right through it.

#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepBuilderAPI_MakeWire.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <Standard_Failure.hxx>
#include <TopTools_ListOfShape.hxx>
#include <TopoDS_Wire.hxx>
#include <gp_Ax2.hxx>
#include <gp_Circ.hxx>
#include <gp_Pln.hxx>

#include "piece/opened_body.hpp"
#include "piece/shape.hpp"

namespace firstpick::piece {

Frame frame(plan::Axis axis) {
  switch (axis) {
    case plan::Axis::x: return {gp::DX(), gp::DY(), gp::DZ()};
    case plan::Axis::y: return {gp::DY(), gp::DZ(), gp::DX()};
    case plan::Axis::z: break;
  }
  return {gp::DZ(), gp::DX(), gp::DY()};
}

namespace {

using Points = std::vector<plan::PlanarPoint>;

double doubled_area_m2(const Points& points) {
  double sum = 0.0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const plan::PlanarPoint &a = points[i], &b = points[(i + 1) % points.size()];
    sum += in(m2, a.x * b.y - b.x * a.y);
  }
  return sum;
}

gp_Pnt placed(const gp_Pnt& origin_m, const Frame& f, const plan::PlanarPoint& p) {
  return origin_m.XYZ() + f.first.XYZ() * in(m, p.x) + f.second.XYZ() * in(m, p.y);
}

// Either sense may be written: an outline is laid counter-clockwise, an opening clockwise.
TopoDS_Wire polygon(const gp_Pnt& origin_m, const Frame& f, Points points, bool counter_clockwise) {
  if ((doubled_area_m2(points) > 0.0) != counter_clockwise) points = {points.rbegin(), points.rend()};
  BRepBuilderAPI_MakePolygon made;
  for (const plan::PlanarPoint& p : points) made.Add(placed(origin_m, f, p));
  made.Close();
  return made.Wire();
}

TopoDS_Wire opening_wire(const gp_Pnt& origin_m, const Frame& f, const SweptOutline& opening) {
  if (!opening.radius) return polygon(origin_m, f, opening.outline, false);
  // Clockwise; the seam where those of round solids lie.
  const gp_Ax2 axes(placed(origin_m, f, opening.middle), f.along.Reversed(), gp_Dir(f.first.XYZ() + f.second.XYZ()));
  return BRepBuilderAPI_MakeWire(BRepBuilderAPI_MakeEdge(gp_Circ(axes, in(m, *opening.radius)))).Wire();
}

OpenedPrism made_of(const OpenedBody& opened) {
  const Frame f = frame(opened.axis);
  const SweptOutline& body = opened.body;
  const gp_Pnt origin_m(f.along.XYZ() * in(m, body.low));
  BRepBuilderAPI_MakeFace base(gp_Pln(origin_m, f.along), polygon(origin_m, f, body.outline, true));
  for (const Points& hole : body.holes) base.Add(polygon(origin_m, f, hole, false));
  std::vector<TopoDS_Wire> wires;
  for (const SweptOutline& opening : opened.openings) base.Add(wires.emplace_back(opening_wire(origin_m, f, opening)));
  BRepPrimAPI_MakePrism prism(base.Face(), gp_Vec(f.along) * in(m, body.high - body.low));

  OpenedPrism made{prism.Shape(), {}, 1 + wires.size()};
  for (std::size_t i = 0; i < wires.size(); ++i) {
    for (const TopoDS_Shape& edge : parts(wires[i], TopAbs_EDGE))
      for (const TopoDS_Shape& face : prism.Generated(edge)) made.maker.Bind(face, static_cast<int>(i) + 1);
  }
  for (const TopoDS_Shape& face : parts(made.shape, TopAbs_FACE))
    if (!made.maker.IsBound(face)) made.maker.Bind(face, 0);
  return made;
}

}  // namespace

TopoDS_Shape prism_shape(const plan::Solid& s) {
  const Frame f = frame(s.axis);
  const gp_Pnt at_m = point_m(s.at);
  BRepBuilderAPI_MakeFace base(gp_Pln(at_m, f.along), polygon(at_m, f, s.outline, true));
  for (const Points& hole : s.holes) base.Add(polygon(at_m, f, hole, false));
  return BRepPrimAPI_MakePrism(base.Face(), gp_Vec(f.along) * in(m, s.length)).Shape();
}

std::optional<OpenedPrism> opened_prism(const std::vector<plan::Solid>& solids) {
  const auto opened = opened_body(solids);
  if (!opened) return {};
  try {
    return made_of(*opened);
  } catch (const Standard_Failure&) {
    return {};  // step by step it is told at the solid that is at fault
  }
}

}  // namespace firstpick::piece
