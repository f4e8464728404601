// Facets of an STL file to a solid. Each side of a facet is the side of exactly one other facet, run the
// other way. Facets become one face only where they lie on one plane to the kernel's 1e-7 m; elsewhere the
// lines between them count as edges of the face an insert sits in, which errs on the safe side. STEP has no
// such lines.

#include <algorithm>
#include <array>
#include <cstdint>
#include <map>
#include <numeric>
#include <utility>
#include <vector>

#include <fmt/format.h>
#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepClass3d_SolidClassifier.hxx>
#include <BRep_Builder.hxx>
#include <Poly_Triangulation.hxx>
#include <RWStl.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Shell.hxx>
#include <TopoDS_Solid.hxx>
#include <TopoDS_Wire.hxx>
#include <gp_Pln.hxx>

#include "piece/mesh_file.hpp"

namespace firstpick::piece {
namespace {

constexpr int most_facets = 5000;  // about a millisecond each

using Facet = std::array<std::size_t, 3>;  // indices of its corners
struct Facets {
  std::vector<gp_Pnt> corners_m;
  std::vector<Facet> facets;
};
using Side = std::pair<std::size_t, std::size_t>;

Facets scaled(const Poly_Triangulation& read, double m_per_unit) {
  Facets facets;
  for (int i = 1; i <= read.NbNodes(); ++i) facets.corners_m.push_back(read.Node(i).Scaled({}, m_per_unit));
  for (int i = 1; i <= read.NbTriangles(); ++i) {
    int a, b, c;
    read.Triangle(i).Get(a, b, c);
    facets.facets.push_back(
        {static_cast<std::size_t>(a) - 1, static_cast<std::size_t>(b) - 1, static_cast<std::size_t>(c) - 1});
  }
  return facets;
}

gp_Vec doubled_area(const Facets& all, const Facet& f) {
  return gp_Vec(all.corners_m[f[0]], all.corners_m[f[1]]).Crossed({all.corners_m[f[0]], all.corners_m[f[2]]});
}

double height_m(const Facets& all, const Facet& f) {  // above its longest side
  double longest = 0.0;
  for (std::size_t k = 0; k < 3; ++k)
    longest = std::max(longest, all.corners_m[f[k]].Distance(all.corners_m[f[(k + 1) % 3]]));
  return longest > 0.0 ? doubled_area(all, f).Magnitude() / longest : 0.0;
}

// Which facet has this side, in this sense; empty when a side is used twice.
std::map<Side, std::size_t> sides(const Facets& all) {
  std::map<Side, std::size_t> found;
  for (std::size_t i = 0; i < all.facets.size(); ++i)
    for (std::size_t k = 0; k < 3; ++k)
      if (!found.emplace(Side{all.facets[i][k], all.facets[i][(k + 1) % 3]}, i).second) return {};
  return found;
}

std::string closure_fault(const Facets& all, const std::map<Side, std::size_t>& side_of) {
  for (std::size_t i = 0; i < all.facets.size(); ++i)
    if (!(height_m(all, all.facets[i]) > 1e-6)) return fmt::format("has no area in facet {}", i + 1);
  if (side_of.empty())
    return "is not a closed surface: more than two facets meet along one side, or facets face both ways";
  for (const auto& [side, facet] : side_of)
    if (!side_of.contains({side.second, side.first}))
      return fmt::format("is not a closed surface: facet {} has no neighbour along one side", facet + 1);
  return {};
}

// Facets that hang together have the same number.
std::vector<std::size_t> shell_numbers(const Facets& all, const std::map<Side, std::size_t>& side_of) {
  std::vector<std::size_t> number(all.facets.size(), all.facets.size());
  std::size_t shells = 0;
  for (std::size_t start = 0; start < number.size(); ++start) {
    if (number[start] != all.facets.size()) continue;
    std::vector<std::size_t> open = {start};
    number[start] = shells;
    while (!open.empty()) {
      const Facet facet = all.facets[open.back()];
      open.pop_back();
      for (std::size_t k = 0; k < 3; ++k) {
        const std::size_t next = side_of.at({facet[(k + 1) % 3], facet[k]});
        if (number[next] != all.facets.size()) continue;
        number[next] = shells;
        open.push_back(next);
      }
    }
    ++shells;
  }
  return number;
}

class ShellBuilder {
 public:
  explicit ShellBuilder(const Facets& all) : all_(all) {
    for (const gp_Pnt& corner : all.corners_m) {
      TopoDS_Vertex vertex;
      builder_.MakeVertex(vertex, corner, Precision::Confusion());
      vertices_.push_back(vertex);
    }
  }

  TopoDS_Face face(const Facet& facet) {
    TopoDS_Wire wire;
    builder_.MakeWire(wire);
    for (std::size_t k = 0; k < 3; ++k) builder_.Add(wire, edge(facet[k], facet[(k + 1) % 3]));
    wire.Closed(true);
    return BRepBuilderAPI_MakeFace(gp_Pln(all_.corners_m[facet[0]], gp_Dir(doubled_area(all_, facet))), wire)
        .Face();
  }

 private:
  TopoDS_Shape edge(std::size_t from, std::size_t to) {
    if (const auto made = edges_.find({to, from}); made != edges_.end()) return made->second.Reversed();
    const TopoDS_Edge made = BRepBuilderAPI_MakeEdge(vertices_[from], vertices_[to]).Edge();
    edges_[{from, to}] = made;
    return made;
  }

  const Facets& all_;
  BRep_Builder builder_;
  std::vector<TopoDS_Vertex> vertices_;
  std::map<Side, TopoDS_Edge> edges_;
};

struct ClosedShell {
  TopoDS_Shell shell;
  gp_Pnt corner;
  double volume_m3 = 0.0;
};

std::vector<ClosedShell> closed_shells(const Facets& all, const std::vector<std::size_t>& number) {
  BRep_Builder builder;
  ShellBuilder faces(all);
  std::vector<ClosedShell> shells;
  for (std::size_t i = 0; i < all.facets.size(); ++i) {
    const Facet& facet = all.facets[i];
    if (number[i] == shells.size()) {
      shells.push_back({{}, all.corners_m[facet[0]], 0.0});
      builder.MakeShell(shells.back().shell);
    }
    ClosedShell& shell = shells[number[i]];
    builder.Add(shell.shell, faces.face(facet));
    shell.volume_m3 += gp_Vec(all.corners_m[facet[0]].XYZ()).Dot(doubled_area(all, facet)) / 6.0;
  }
  for (ClosedShell& shell : shells) shell.shell.Closed(true);
  return shells;
}

// The shell that faces outward, and the shells of voids inside it.
void make_solid(const std::vector<ClosedShell>& shells, MeshRead& read) {
  BRep_Builder builder;
  TopoDS_Solid outer, solid;
  builder.MakeSolid(outer);
  builder.MakeSolid(solid);
  int bodies = 0;
  for (const ClosedShell& shell : shells)
    if (shell.volume_m3 > 0.0) {
      builder.Add(outer, shell.shell);
      ++bodies;
    }
  if (bodies != 1) {
    read.fault = bodies == 0 ? "holds a surface that faces inward" : fmt::format("holds {} solids", bodies);
    read.help = "one closed solid is read from a file, its facets facing outward";
    return;
  }
  for (const ClosedShell& shell : shells) {
    builder.Add(solid, shell.shell);
    const bool is_void = !(shell.volume_m3 > 0.0);
    if (is_void &&
        BRepClass3d_SolidClassifier(outer, shell.corner, Precision::Confusion()).State() != TopAbs_IN)
      read.fault = "holds a void outside its solid";
  }
  read.solid = solid;
}

}  // namespace

void read_stl(const MeshFile& file, MeshRead& read) {
  const Handle(Poly_Triangulation) triangles = RWStl::ReadFile(file.path.c_str(), M_PI / 2.0);
  if (triangles.IsNull() || triangles->NbTriangles() < 4) {
    read.fault = "is not an STL file that can be read";
    return;
  }
  if (triangles->NbTriangles() > most_facets) {
    read.fault = fmt::format("has {} facets", triangles->NbTriangles());
    read.help =
        fmt::format("up to {} facets are read; a STEP file holds a round surface as one face", most_facets);
    return;
  }
  const Facets all = scaled(*triangles, file.m_per_unit);
  const auto side_of = sides(all);
  read.fault = closure_fault(all, side_of);
  if (read.fault.empty()) make_solid(closed_shells(all, shell_numbers(all, side_of)), read);
}

}  // namespace firstpick::piece
