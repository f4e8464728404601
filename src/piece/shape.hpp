// What the files of this folder share: the piece in the terms of the geometry kernel (Open CASCADE). Included
// by src/piece/*.cpp only.
//
// Lengths are in metres there: the kernel's fixed tolerance, 1e-7, is then a tenth of a micrometre, and the
// curves where a round opening meets a round wall are found several times faster than in millimetres.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include <TopTools_DataMapOfShapeInteger.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Shape.hxx>
#include <gp_Dir.hxx>
#include <gp_Pnt.hxx>

#include "piece/body.hpp"
#include "piece/flat_faces.hpp"

namespace firstpick::piece {

// Why a solid cannot be made, without its place.
struct ShapeFault {
  std::string what, help;
};

inline gp_Pnt point_m(const Position& p) { return {in(m, p.x), in(m, p.y), in(m, p.z)}; }
inline Position position(const gp_Pnt& p_m) { return {p_m.X() * m, p_m.Y() * m, p_m.Z() * m}; }
inline Direction direction(const gp_Dir& d) { return {d.X(), d.Y(), d.Z()}; }

// Each part of that kind once: edges, faces, solids.
std::vector<TopoDS_Shape> parts(const TopoDS_Shape& shape, TopAbs_ShapeEnum kind);

// Of a solid along an axis: `along` is the axis, `first` and `second` span the plane across it.
struct Frame {
  gp_Dir along, first, second;
};
Frame frame(plan::Axis axis);

// One solid of the plan, where it stands.
std::variant<TopoDS_Shape, ShapeFault> solid_shape(const plan::Solid& solid, const std::string& plan_file);

// What is wrong with the outline and the holes of a prism: points that coincide, sides that cross, a hole
// outside.
std::optional<ShapeFault> outline_fault(const plan::Solid& prism);

TopoDS_Shape prism_shape(const plan::Solid& prism);

// The solids of an OpenedBody.
struct OpenedPrism {
  TopoDS_Shape shape;
  TopTools_DataMapOfShapeInteger maker;  // of each face, by index of the solid
  std::size_t solids = 0;                // so many are in it
};
// Made as one prism with openings in its outline: boolean operations, which find the same, take ten times as long. Each solid
// is sound by itself (solid_shape). Nothing: the plan begins with no such body.
std::optional<OpenedPrism> opened_prism(const std::vector<plan::Solid>& solids);

// A closed solid from a STEP or STL file below the folder of the plan.
std::variant<TopoDS_Shape, ShapeFault> mesh_shape(const plan::Solid& mesh, const std::string& plan_file);

// A face of the solid as the boolean operations left it; `maker` is the solid of the plan that made it, by
// index. Where the surfaces of two solids fall together, the earlier one made it.
struct Patch {
  TopoDS_Face face;
  std::size_t maker = 0;
};

// A true face: one patch, or several that continue each other without an edge between.
struct JoinedFace {
  TopoDS_Face face;
  std::vector<std::size_t> patches;
};

struct Assembly {
  TopoDS_Shape solid;  // exactly one
  std::vector<Patch> patches;
  std::vector<JoinedFace> faces;
  std::optional<FlatFaces> flat{};  // of `faces`, where none is curved; put in by make_body
};

// All solids of the plan, added or cut in order. Every fault found comes back with the place of its solid.
std::variant<Assembly, std::vector<Diagnostic>> assemble(const plan::Plan& plan);

struct SurfaceMeasure {
  Area area{};
  Position centroid;
};

// Accuracy asked of the kernel's integrals where they are adaptive; on plain faces (plane, cylinder or cone
// within straight lines and circles) its fixed quadrature is exact.
constexpr double relative_accuracy = 1e-9;

bool is_planar(const TopoDS_Face& face);
bool is_plain(const TopoDS_Face& face);
gp_Dir outward_normal(const TopoDS_Face& face, double u, double v);  // at these parameters of its surface
gp_Dir middle_normal(const TopoDS_Face& face);
std::vector<gp_Dir> normals_all_over(
    const TopoDS_Face& face);  // outward, on a grid finer than any turn that matters
SurfaceMeasure surface_measure(const TopoDS_Face& face);
Area downward_projection(const TopoDS_Face& face, Area area);  // integral of max(0, -n.z) over the face

// One for each [[form.contact]]; faults are appended to `faults`. `measures` holds one entry for each patch.
std::vector<ContactArea> contact_areas(const plan::Plan& plan, const Assembly& assembly,
                                       const std::vector<SurfaceMeasure>& measures,
                                       std::vector<Diagnostic>& faults);

// One for each insert; faults are appended to `faults`.
std::vector<InsertSite> insert_sites(const plan::Plan& plan, const Assembly& assembly,
                                     std::vector<Diagnostic>& faults);

// Of a flat face: every edge, nearest first; and its boundary as chords in axes u, v with `origin` at zero.
std::vector<EdgeDistance> edge_distances(const TopoDS_Face& face, const gp_Pnt& origin);
Outline face_outline(const TopoDS_Face& face, const gp_Pnt& origin, const gp_Dir& u, const gp_Dir& v);
std::vector<std::vector<Position>> face_rings(const TopoDS_Face& face);  // the same boundary in piece axes

}  // namespace firstpick::piece
