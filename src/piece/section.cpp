#include "piece/section.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include <fmt/format.h>
#include <BRepAlgoAPI_Common.hxx>
#include <BRepBndLib.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepGProp.hxx>
#include <BRep_Tool.hxx>
#include <Bnd_Box.hxx>
#include <GProp_GProps.hxx>
#include <IntCurvesFace_ShapeIntersector.hxx>
#include <Standard_Failure.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Vertex.hxx>
#include <gp_Ax3.hxx>
#include <gp_Lin.hxx>
#include <gp_Mat.hxx>
#include <gp_Pln.hxx>

#include "piece/shape.hpp"

namespace firstpick::piece {

struct SolidToCut::Kernel {
  TopoDS_Shape solid;
  gp_Pnt lowest, highest;  // of the bounding box
};

namespace {

constexpr double one_place_m = 1e-6;
constexpr double margin_m = 1.0;  // by which the cutting plane reaches beyond the piece

struct CutAxes {
  int along, across, up;  // 1 x, 2 y, 3 z, as the kernel counts coordinates
};
CutAxes cut_axes(plan::Axis axis) {
  switch (axis) {
    case plan::Axis::x: return {1, 2, 3};
    case plan::Axis::y: return {2, 1, 3};
    case plan::Axis::z: break;
  }
  return {3, 1, 2};
}

void add_extent(const TopoDS_Shape& shape, int coordinate, std::vector<double>& places_m) {
  Bnd_Box box;
  BRepBndLib::AddOptimal(shape, box, false, false);
  box.SetGap(0.0);
  places_m.push_back(box.CornerMin().Coord(coordinate));
  places_m.push_back(box.CornerMax().Coord(coordinate));
}

TopoDS_Face cutting_plane(const SolidToCut::Kernel& kernel, const CutAxes& axes, double at_m) {
  gp_XYZ through(0.0, 0.0, 0.0);
  through.SetCoord(axes.along, at_m);
  gp_XYZ normal(0.0, 0.0, 0.0), across(0.0, 0.0, 0.0);
  normal.SetCoord(axes.along, 1.0);
  across.SetCoord(axes.across, 1.0);
  const gp_Ax3 frame{gp_Pnt(through), gp_Dir(normal), gp_Dir(across)};
  const gp_Pnt &low = kernel.lowest, &high = kernel.highest;
  const double u0 = low.Coord(axes.across) - margin_m, u1 = high.Coord(axes.across) + margin_m;
  double v0 = low.Coord(axes.up) - margin_m, v1 = high.Coord(axes.up) + margin_m;
  if (frame.YDirection().XYZ().Coord(axes.up) < 0.0) {  // the plane's second axis looks down
    std::swap(v0, v1);
    v0 = -v0, v1 = -v1;
  }
  return BRepBuilderAPI_MakeFace(gp_Pln(frame), u0, u1, v0, v1).Face();
}

void add_principal(Section& section) {
  const double a = section.about_across.value(), u = section.about_up.value(), au = section.product.value();
  const double middle = 0.5 * (a + u), reach = std::hypot(0.5 * (a - u), au);
  section.largest = SecondMoment::from_value(middle + reach);
  section.smallest = SecondMoment::from_value(middle - reach);
  section.principal_turn = 0.5 * std::atan2(-2.0 * au, a - u) * radian;
}

Outcome<Section> measured(const TopoDS_Shape& cut, const CutAxes& axes, double at_m) {
  GProp_GProps properties;
  BRepGProp::SurfaceProperties(cut, properties);
  Section section;
  section.at = at_m * m;
  section.area = properties.Mass() * m2;
  section.centroid = position(properties.CentreOfMass());
  // The kernel gives moments of inertia: about the axis `across` the integral of up^2 (nothing lies along the normal).
  const gp_Mat inertia_m4 = properties.MatrixOfInertia();
  section.about_across = SecondMoment::from_value(inertia_m4.Value(axes.across, axes.across));
  section.about_up = SecondMoment::from_value(inertia_m4.Value(axes.up, axes.up));
  section.product = SecondMoment::from_value(-inertia_m4.Value(axes.across, axes.up));
  add_principal(section);
  Bnd_Box box;
  BRepBndLib::AddOptimal(cut, box, false, false);
  box.SetGap(0.0);
  section.lowest = box.CornerMin().Coord(axes.up) * m;
  section.highest = box.CornerMax().Coord(axes.up) * m;
  section.nearest = box.CornerMin().Coord(axes.across) * m;
  section.farthest = box.CornerMax().Coord(axes.across) * m;
  for (TopExp_Explorer face(cut, TopAbs_FACE); face.More(); face.Next()) ++section.parts;
  if (!is_finite(section.area) || !(section.area > Area{}) || !(section.smallest > SecondMoment{}) ||
      !is_finite(section.largest))
    return NotAssessed{fmt::format("the section of the piece at {:.3f} m has no usable area", at_m), {}};
  return section;
}

// All concrete along a line.
std::optional<double> width_m(IntCurvesFace_ShapeIntersector& lines, const CutAxes& axes, double at_m, double up_m) {
  gp_XYZ through(0.0, 0.0, 0.0), across(0.0, 0.0, 0.0);
  through.SetCoord(axes.along, at_m);
  through.SetCoord(axes.up, up_m);
  across.SetCoord(axes.across, 1.0);
  constexpr double no_end_m = 1e4;
  lines.Perform(gp_Lin(gp_Pnt(through), gp_Dir(across)), -no_end_m, no_end_m);
  if (!lines.IsDone()) return {};
  std::vector<double> places_m;
  for (int i = 1; i <= lines.NbPnt(); ++i) places_m.push_back(lines.WParameter(i));
  std::ranges::sort(places_m);
  const auto twice = std::ranges::unique(places_m, [](double a, double b) { return b - a < one_place_m; });
  places_m.erase(twice.begin(), twice.end());
  if (places_m.size() % 2 != 0) return {};
  double width = 0.0;
  for (std::size_t i = 0; i + 1 < places_m.size(); i += 2) width += places_m[i + 1] - places_m[i];
  return width;
}

// Zero where a width is not found.
Area shear_area(const SolidToCut::Kernel& kernel, const CutAxes& axes, const Section& section) {
  constexpr int levels = 80;
  const double low = in(m, section.lowest), slice = (in(m, section.highest) - low) / levels;
  const gp_Pnt centroid = point_m(section.centroid);
  IntCurvesFace_ShapeIntersector lines;
  lines.Load(kernel.solid, 1e-7);
  std::vector<double> widths;
  for (int i = 0; i < levels; ++i) {
    std::optional<double> width;
    for (const double share : {0.5, 0.497, 0.504})  // where a line meets an edge, its neighbour does not
      if (!width) width = width_m(lines, axes, in(m, section.at), low + (i + share) * slice);
    if (!width || !(*width > 0.0)) return {};
    widths.push_back(*width);
  }
  double Q = 0.0, most = 0.0;
  for (int i = 0; i + 1 < levels; ++i) {
    const auto here = static_cast<std::size_t>(i);
    Q += widths[here] * slice * (centroid.Coord(axes.up) - (low + (i + 0.5) * slice));
    most = std::max(most, Q / std::min(widths[here], widths[here + 1]));
  }
  return Area::from_value(section.about_across.value() / most);
}

bool nearly(double a, double b, double scale) { return std::abs(a - b) <= 1e-6 * scale; }

bool alike(const Section& a, const Section& b) {
  const double size_m = std::sqrt(a.area.value());
  const double fourth = a.largest.value();
  return nearly(a.area.value(), b.area.value(), a.area.value()) &&
         nearly(a.about_across.value(), b.about_across.value(), fourth) &&
         nearly(a.about_up.value(), b.about_up.value(), fourth) &&
         nearly(a.product.value(), b.product.value(), fourth) &&
         nearly(a.lowest.value(), b.lowest.value(), size_m) && nearly(a.highest.value(), b.highest.value(), size_m) &&
         nearly(a.nearest.value(), b.nearest.value(), size_m) &&
         nearly(a.farthest.value(), b.farthest.value(), size_m);
}

}  // namespace

Outcome<SolidToCut> SolidToCut::of(const plan::Plan& plan) {
  const auto made = assemble(plan);
  if (!std::holds_alternative<Assembly>(made)) return NotAssessed{"the solid of the piece cannot be cut", {}};
  Kernel kernel{std::get<Assembly>(made).solid, {}, {}};
  Bnd_Box box;
  BRepBndLib::AddOptimal(kernel.solid, box, false, false);
  box.SetGap(0.0);
  kernel.lowest = box.CornerMin();
  kernel.highest = box.CornerMax();
  SolidToCut to_cut;
  to_cut.kernel_ = std::make_shared<const Kernel>(std::move(kernel));
  return to_cut;
}

Outcome<std::vector<Length>> section_stations(const SolidToCut& to_cut, plan::Axis axis) {
  const int along = cut_axes(axis).along;
  const TopoDS_Shape& solid = to_cut.kernel().solid;
  std::vector<double> places_m;
  try {
    TopTools_IndexedMapOfShape vertices, edges, faces;
    TopExp::MapShapes(solid, TopAbs_VERTEX, vertices);
    TopExp::MapShapes(solid, TopAbs_EDGE, edges);
    TopExp::MapShapes(solid, TopAbs_FACE, faces);
    for (int i = 1; i <= vertices.Extent(); ++i)
      places_m.push_back(BRep_Tool::Pnt(TopoDS::Vertex(vertices(i))).Coord(along));
    for (int i = 1; i <= edges.Extent(); ++i)
      if (!BRep_Tool::Degenerated(TopoDS::Edge(edges(i)))) add_extent(edges(i), along, places_m);
    for (int i = 1; i <= faces.Extent(); ++i)
      if (!is_plain(TopoDS::Face(faces(i)))) add_extent(faces(i), along, places_m);
  } catch (const Standard_Failure&) {
    return NotAssessed{"the geometry kernel could not find where the section of the piece changes", {}};
  }
  std::ranges::sort(places_m);
  std::vector<Length> stations;
  for (const double place : places_m)
    if (stations.empty() || place - in(m, stations.back()) > one_place_m) stations.push_back(place * m);
  return stations;
}

Outcome<Section> section_at(const SolidToCut& to_cut, plan::Axis axis, Length at) {
  const CutAxes axes = cut_axes(axis);
  const double at_m = in(m, at);
  const NotAssessed failed{fmt::format("the piece could not be cut at {:.3f} m", at_m), {}};
  try {
    BRepAlgoAPI_Common common(cutting_plane(to_cut.kernel(), axes, at_m), to_cut.kernel().solid);
    if (!common.IsDone() || common.HasErrors() || common.Shape().IsNull()) return failed;
    auto section = measured(common.Shape(), axes, at_m);
    if (auto* found = std::get_if<Section>(&section)) found->shear_area = shear_area(to_cut.kernel(), axes, *found);
    return section;
  } catch (const Standard_Failure&) {
    return failed;
  }
}

Outcome<std::vector<Stretch>> stretches(const SolidToCut& to_cut, plan::Axis axis, int slices) {
  const auto found = section_stations(to_cut, axis);
  if (const auto* missing = std::get_if<NotAssessed>(&found)) return *missing;
  const auto& stations = std::get<std::vector<Length>>(found);
  const Length whole = stations.back() - stations.front();

  std::vector<Stretch> all;
  for (std::size_t i = 0; i + 1 < stations.size(); ++i) {
    const Length from = stations[i], length = stations[i + 1] - from;
    // A cut in the plane of a face would not know its side: the ends are cut a little inside.
    const auto cut = [&](double share) {
      const double inside = std::clamp(share, 1e-3, 1.0 - 1e-3);
      return section_at(to_cut, axis, from + inside * length);
    };
    const auto add = [&](double start, double end) -> std::optional<NotAssessed> {
      Stretch stretch;
      stretch.from = from + start * length;
      stretch.to = end < 1.0 ? from + end * length : stations[i + 1];
      for (const auto& [share, section] : {std::pair{start, &stretch.start}, std::pair{0.5 * (start + end), &stretch.middle},
                                           std::pair{end, &stretch.end}}) {
        const auto made = cut(share);
        if (const auto* missing = std::get_if<NotAssessed>(&made)) return *missing;
        *section = std::get<Section>(made);
      }
      stretch.prismatic = alike(stretch.start, stretch.middle) && alike(stretch.middle, stretch.end);
      all.push_back(std::move(stretch));
      return {};
    };
    if (auto missing = add(0.0, 1.0)) return *std::move(missing);
    if (all.back().prismatic) continue;
    all.pop_back();
    const int count = std::max(2, static_cast<int>(std::ceil(slices * (length / whole).value())));
    for (int slice = 0; slice < count; ++slice)
      if (auto missing = add(static_cast<double>(slice) / count, static_cast<double>(slice + 1) / count))
        return *std::move(missing);
  }
  return all;
}

}  // namespace firstpick::piece
