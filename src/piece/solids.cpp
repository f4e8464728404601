// One solid of the plan as a shape of the geometry kernel: box, cylinder, cone, pipe, prism, wedge.
//
// A shape of revolution and a prism stand on `at` and grow along the positive `axis`. The outline of a prism
// lies in the plane across the axis, in right-handed order: axis z: x, y; axis x: y, z; axis y: z, x.
// `turned` comes last.

#include <array>
#include <cmath>

#include <fmt/format.h>
#include <BRepAlgoAPI_Cut.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <BRepPrimAPI_MakeCone.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakeWedge.hxx>
#include <TopLoc_Location.hxx>
#include <gp_Ax2.hxx>
#include <gp_Trsf.hxx>

#include "piece/shape.hpp"
#include "units/print.hpp"

namespace firstpick::piece {
namespace {

// The kernel tells two points apart at 1e-7 m: far below any length within these limits, and above rounding.
constexpr Length smallest = 0.1 * mm, largest = 100.0 * m;

struct NamedLength {
  const char* key;
  Length length;
  bool may_be_zero = false;
};

std::optional<ShapeFault> length_fault(const std::vector<NamedLength>& lengths, const Position& at) {
  for (const auto& [key, length, may_be_zero] : lengths) {
    if (may_be_zero && length == Length{}) continue;
    if (!(length >= smallest && length <= largest))
      return ShapeFault{fmt::format("{} is {}", key, print(length, UnitSystem::si)),
                        "lengths of a solid lie between 0.1 mm and 100 m"};
  }
  for (const Length& coordinate : {at.x, at.y, at.z})
    if (!(abs(coordinate) <= largest))
      return ShapeFault{fmt::format("a coordinate of at is {}", print(coordinate, UnitSystem::si)),
                        "the piece lies within 100 m of the origin"};
  return {};
}

std::vector<NamedLength> lengths_of(const plan::Solid& s) {
  switch (s.shape) {
    case plan::Shape::box: return {{"size", s.size.x}, {"size", s.size.y}, {"size", s.size.z}};
    case plan::Shape::cylinder: return {{"diameter", s.diameter}, {"length", s.length}};
    case plan::Shape::cone:
      return {{"bottom_diameter", s.bottom_diameter, true},
              {"top_diameter", s.top_diameter, true},
              {"length", s.length}};
    case plan::Shape::pipe:
      return {{"diameter", s.diameter}, {"inside_diameter", s.inside_diameter}, {"length", s.length}};
    case plan::Shape::prism: return {{"length", s.length}};
    case plan::Shape::wedge:
      return {{"size", s.size.x},
              {"size", s.size.y},
              {"size", s.size.z},
              {"top_size", s.top_size[0], true},
              {"top_size", s.top_size[1], true}};
    case plan::Shape::mesh: break;
  }
  return {};
}

std::optional<ShapeFault> proportion_fault(const plan::Solid& s) {
  const auto shown = [](Length length) { return print(length, UnitSystem::si); };
  if (s.shape == plan::Shape::pipe && !(s.diameter - s.inside_diameter >= smallest))
    return ShapeFault{fmt::format("inside_diameter {} leaves no wall in diameter {}",
                                  shown(s.inside_diameter), shown(s.diameter)),
                      ""};
  if (s.shape == plan::Shape::cone && !(s.bottom_diameter + s.top_diameter > Length{}))
    return ShapeFault{"both diameters are zero", ""};
  if (s.shape == plan::Shape::wedge)
    for (const Length& shift : s.top_at)
      if (!(abs(shift) <= largest))
        return ShapeFault{fmt::format("top_at is {}", shown(shift)),
                          "the piece lies within 100 m of the origin"};
  return {};
}

TopoDS_Shape round_solid(const gp_Ax2& base, Length bottom_radius, Length top_radius, Length length) {
  const double bottom_m = in(m, bottom_radius), top_m = in(m, top_radius), length_m = in(m, length);
  if (std::abs(bottom_m - top_m) < 1e-6)  // the kernel knows no cone without a slope
    return BRepPrimAPI_MakeCylinder(base, bottom_m, length_m).Solid();
  return BRepPrimAPI_MakeCone(base, bottom_m, top_m, length_m).Solid();
}

TopoDS_Shape wedge(const plan::Solid& s) {
  // The kernel's wedge grows along its second axis: piece axes y, z, x are its x, y, z.
  const double from_y = in(m, s.top_at[1]), from_x = in(m, s.top_at[0]);
  return BRepPrimAPI_MakeWedge(gp_Ax2(point_m(s.at), gp::DX(), gp::DY()), in(m, s.size.y), in(m, s.size.z),
                               in(m, s.size.x), from_y, from_x, from_y + in(m, s.top_size[1]),
                               from_x + in(m, s.top_size[0]))
      .Solid();
}

TopoDS_Shape standing(const plan::Solid& s) {
  const Frame f = frame(s.axis);
  // A round surface has a seam; between the axes it seldom meets an opening, which makes the booleans faster.
  const gp_Ax2 base(point_m(s.at), f.along, gp_Dir(f.first.XYZ() + f.second.XYZ()));
  switch (s.shape) {
    case plan::Shape::box:
      return BRepPrimAPI_MakeBox(point_m(s.at), in(m, s.size.x), in(m, s.size.y), in(m, s.size.z)).Solid();
    case plan::Shape::cylinder: return round_solid(base, 0.5 * s.diameter, 0.5 * s.diameter, s.length);
    case plan::Shape::cone: return round_solid(base, 0.5 * s.bottom_diameter, 0.5 * s.top_diameter, s.length);
    case plan::Shape::pipe:
      return BRepAlgoAPI_Cut(round_solid(base, 0.5 * s.diameter, 0.5 * s.diameter, s.length),
                             round_solid(base, 0.5 * s.inside_diameter, 0.5 * s.inside_diameter, s.length))
          .Shape();
    case plan::Shape::prism: return prism_shape(s);
    case plan::Shape::wedge: return wedge(s);
    case plan::Shape::mesh: break;
  }
  return {};
}

TopoDS_Shape turned(const plan::Solid& s, const TopoDS_Shape& shape) {
  if (!s.turned_about) return shape;
  gp_Trsf turn;
  turn.SetRotation(gp_Ax1(point_m(s.at), frame(*s.turned_about).along), in(radian, s.turned_by));
  return shape.Moved(TopLoc_Location(turn));
}

}  // namespace

std::variant<TopoDS_Shape, ShapeFault> solid_shape(const plan::Solid& s, const std::string& plan_file) {
  if (auto fault = length_fault(lengths_of(s), s.at)) return *std::move(fault);
  if (auto fault = proportion_fault(s)) return *std::move(fault);
  if (s.shape == plan::Shape::prism)
    if (auto fault = outline_fault(s)) return *std::move(fault);
  if (s.turned_about && !is_finite(s.turned_by))
    return ShapeFault{"the angle of 'turned' is not a number", ""};
  if (s.shape != plan::Shape::mesh) return turned(s, standing(s));

  auto read = mesh_shape(s, plan_file);
  if (auto* fault = std::get_if<ShapeFault>(&read)) return std::move(*fault);
  gp_Trsf shift;
  shift.SetTranslation(gp_Vec(point_m(s.at).XYZ()));
  return turned(s, std::get<TopoDS_Shape>(read).Moved(TopLoc_Location(shift)));
}

}  // namespace firstpick::piece
