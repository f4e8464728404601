// In the module of pictures: what of the edges of a piece shows, by the geometry kernel.

#include <BRepAdaptor_Curve.hxx>
#include <BRepLib.hxx>
#include <GCPnts_TangentialDeflection.hxx>
#include <HLRAlgo_Projector.hxx>
#include <HLRBRep_Algo.hxx>
#include <HLRBRep_HLRToShape.hxx>
#include <ShapeUpgrade_UnifySameDomain.hxx>
#include <Standard_Failure.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <gp_Ax2.hxx>

#include "piece/hidden_lines.hpp"
#include "piece/shape.hpp"

namespace firstpick::piece {

namespace {

constexpr double chord_turn_radian = 0.1, chord_gap_m = 0.002;  // how far chords may leave a curve on paper

// Faces seen exactly edge-on, where walls of openings fall into one line, cost the kernel fifty times the
// time: it looks from this little beside, which moves what is 2 m deep by 2 mm in a drawing of the whole
// piece.
constexpr double beside_radian = 1e-3;

View a_little_beside(const View& view) {
  const Direction eye = cross(view.right, view.up);
  const Direction right = view.right - beside_radian * eye;
  const Direction up = view.up - beside_radian * eye;  // the kernel makes the axes square and of length 1
  return {right, up};
}

void add_lines(const TopoDS_Shape& edges, bool hidden, std::vector<DrawnLine>& lines) {
  if (edges.IsNull()) return;
  BRepLib::BuildCurves3d(edges);
  for (TopExp_Explorer each(edges, TopAbs_EDGE); each.More(); each.Next()) {
    const BRepAdaptor_Curve curve(TopoDS::Edge(each.Current()));
    const GCPnts_TangentialDeflection chords(curve, chord_turn_radian, chord_gap_m);
    DrawnLine line{.points = {}, .hidden = hidden};
    for (int i = 1; i <= chords.NbPoints(); ++i) {
      const Position p = position(chords.Value(i));
      line.points.push_back({p.x, p.y});
    }
    if (line.points.size() > 1) lines.push_back(std::move(line));
  }
}

std::vector<DrawnLine> drawn(const TopoDS_Shape& solid, const View& view) {
  const View taken = a_little_beside(view);
  const Direction eye = cross(taken.right, taken.up);
  const gp_Ax2 paper(gp_Pnt(), gp_Dir(eye.x, eye.y, eye.z),
                     gp_Dir(taken.right.x, taken.right.y, taken.right.z));
  const Handle(HLRBRep_Algo) hiding = new HLRBRep_Algo;
  hiding->Add(solid);
  hiding->Projector(HLRAlgo_Projector(paper));
  hiding->Update();
  hiding->Hide();
  HLRBRep_HLRToShape found(hiding);
  std::vector<DrawnLine> lines;
  add_lines(found.HCompound(), true, lines);
  add_lines(found.OutLineHCompound(), true, lines);
  add_lines(found.VCompound(), false, lines);
  add_lines(found.OutLineVCompound(), false, lines);
  return lines;
}

std::optional<std::vector<DrawnLine>> found_lines(const Body& body, const View& view) {
  if (!body.assembly || body.faces.size() > most_faces_drawn) return {};
  try {
    // Without the edges between faces that continue each other.
    ShapeUpgrade_UnifySameDomain whole(body.assembly->solid, true, true, false);
    whole.Build();
    auto lines = drawn(whole.Shape(), view);
    if (lines.empty()) return {};
    return lines;
  } catch (const Standard_Failure&) {
    return {};
  }
}

}  // namespace

}  // namespace firstpick::piece

extern "C" [[gnu::visibility("default")]] void firstpick_hidden_lines(const firstpick::piece::Body& body,
                                                                       const firstpick::piece::View& view,
                                                                       firstpick::piece::HiddenLines& lines) {
  lines = firstpick::piece::found_lines(body, view);
}
