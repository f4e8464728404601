// The solids of the plan, added or cut in order, to one solid; and which solid made which face of it.
//
// A step that changes nothing is a fault of the plan, and so is a piece in several parts. Whether a step
// changed anything is read from the topology, not from volumes: it made a face of its own, or a face
// disappeared.

#include <algorithm>
#include <set>
#include <utility>

#include <fmt/format.h>
#include <BRepAlgoAPI_BooleanOperation.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRepTools_History.hxx>
#include <ShapeUpgrade_UnifySameDomain.hxx>
#include <Standard_Failure.hxx>
#include <TopExp.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopTools_ListOfShape.hxx>
#include <TopoDS.hxx>

#include "piece/shape.hpp"
#include "units/print.hpp"

namespace firstpick::piece {

std::vector<TopoDS_Shape> parts(const TopoDS_Shape& shape, TopAbs_ShapeEnum kind) {
  TopTools_IndexedMapOfShape map;
  if (!shape.IsNull()) TopExp::MapShapes(shape, kind, map);
  return {map.cbegin(), map.cend()};
}

namespace {

struct Standing {  // what the solids so far make
  TopoDS_Shape shape;
  TopTools_DataMapOfShapeInteger maker;  // of each face, by index of the solid
  bool of_one_sweep = false;             // one prism, whose outlines were held against each other: nothing to doubt in it
};

TopTools_ListOfShape list(const TopoDS_Shape& shape) {
  TopTools_ListOfShape one;
  one.Append(shape);
  return one;
}

// What has become of a face in the result; empty: it is gone.
TopTools_ListOfShape images(BRepAlgoAPI_BooleanOperation& operation, const TopoDS_Shape& face) {
  if (!operation.Modified(face).IsEmpty()) return operation.Modified(face);
  return operation.IsDeleted(face) ? TopTools_ListOfShape() : list(face);
}

// Adds or cuts `tool`, the solid number `index`. False: the step changed nothing.
std::variant<bool, ShapeFault> apply(Standing& standing, const TopoDS_Shape& tool, bool cut, int index) {
  BRepAlgoAPI_BooleanOperation operation;
  operation.SetArguments(list(standing.shape));
  operation.SetTools(list(tool));
  operation.SetOperation(cut ? BOPAlgo_CUT : BOPAlgo_FUSE);
  operation.Build();
  if (!operation.IsDone() || operation.HasErrors())
    return ShapeFault{"the geometry kernel could not join it with the solids before it", ""};

  Standing after{operation.Shape(), {}, false};
  bool changed = false;
  for (const TopoDS_Shape& face : parts(standing.shape, TopAbs_FACE)) {
    const TopTools_ListOfShape kept = images(operation, face);
    changed = changed || kept.IsEmpty();
    for (const TopoDS_Shape& image : kept)
      if (!after.maker.IsBound(image)) after.maker.Bind(image, standing.maker.Find(face));
  }
  for (const TopoDS_Shape& face : parts(tool, TopAbs_FACE))
    for (const TopoDS_Shape& image : images(operation, face)) {
      if (after.maker.IsBound(image)) continue;  // an earlier solid made it
      after.maker.Bind(image, index);
      changed = true;
    }
  standing = std::move(after);
  return changed;
}

std::string without_effect(bool cut) {
  return cut ? "it cuts nothing away: it does not reach into the solids before it"
             : "it adds nothing: it lies wholly inside the solids before it";
}

// The first fault that a step has, nothing if it went well.
std::optional<ShapeFault> step(Standing& standing, const TopoDS_Shape& tool, bool cut, int index) {
  if (standing.shape.IsNull()) {
    if (cut)
      return ShapeFault{"it is cut, but no solid stands before it", "solids are added or cut in order"};
    standing.shape = tool;
    for (const TopoDS_Shape& face : parts(tool, TopAbs_FACE)) standing.maker.Bind(face, index);
    return {};
  }
  const auto changed = apply(standing, tool, cut, index);
  if (const auto* fault = std::get_if<ShapeFault>(&changed)) return *fault;
  if (!std::get<bool>(changed)) return ShapeFault{without_effect(cut), ""};
  if (parts(standing.shape, TopAbs_SOLID).empty()) return ShapeFault{"it cuts everything away", ""};
  return {};
}

Diagnostic told(const plan::Plan& plan, std::size_t index, const ShapeFault& fault) {
  const plan::Solid& solid = plan.piece.solids[index];
  return {plan.file, solid.place, fmt::format("solid '{}': {}", solid.name, fault.what), fault.help};
}

// Every part but that of the earliest solid is told at the latest solid that bounds it.
std::vector<Diagnostic> loose_parts(const plan::Plan& plan, const Standing& standing) {
  struct Part {
    int earliest, latest;
  };
  std::vector<Part> found;
  const auto solids = parts(standing.shape, TopAbs_SOLID);
  for (const TopoDS_Shape& solid : solids) {
    Part part{static_cast<int>(plan.piece.solids.size()), 0};
    for (const TopoDS_Shape& face : parts(solid, TopAbs_FACE)) {
      const int maker = standing.maker.Find(face);
      part = {std::min(part.earliest, maker), std::max(part.latest, maker)};
    }
    found.push_back(part);
  }
  const auto first = std::min_element(found.begin(), found.end(),
                                      [](const Part& a, const Part& b) { return a.earliest < b.earliest; });
  std::set<int> told_at;
  for (auto part = found.begin(); part != found.end(); ++part)
    if (part != first) told_at.insert(part->latest);
  std::vector<Diagnostic> faults;
  for (const int index : told_at)
    faults.push_back(told(plan, static_cast<std::size_t>(index),
                          {fmt::format("the piece falls into {} parts here", found.size()),
                           "a piece is one solid: its parts touch along faces"}));
  return faults;
}

// Joins faces that continue each other on one surface, so that an edge is a true edge and not a seam between
// solids.
std::optional<Assembly> joined(const Standing& standing) {
  Assembly assembly;
  ShapeUpgrade_UnifySameDomain unify(standing.shape, true, true, false);
  unify.Build();
  const auto solids = parts(unify.Shape(), TopAbs_SOLID);
  if (solids.size() != 1) return {};
  assembly.solid = solids.front();

  TopTools_DataMapOfShapeInteger number;
  for (const TopoDS_Shape& face : parts(assembly.solid, TopAbs_FACE)) {
    number.Bind(face, static_cast<int>(assembly.faces.size()));
    assembly.faces.push_back({TopoDS::Face(face), {}});
  }
  for (const TopoDS_Shape& face : parts(standing.shape, TopAbs_FACE)) {
    const TopTools_ListOfShape& modified = unify.History()->Modified(face);
    const TopoDS_Shape& now = modified.IsEmpty() ? face : modified.First();
    if (!number.IsBound(now)) return {};
    assembly.faces[static_cast<std::size_t>(number.Find(now))].patches.push_back(assembly.patches.size());
    assembly.patches.push_back({TopoDS::Face(face), static_cast<std::size_t>(standing.maker.Find(face))});
  }
  const bool whole = std::none_of(assembly.faces.begin(), assembly.faces.end(),
                                  [](const JoinedFace& face) { return face.patches.empty(); });
  if (!whole || (!standing.of_one_sweep && !BRepCheck_Analyzer(assembly.solid).IsValid())) return {};
  return assembly;
}

}  // namespace

std::variant<Assembly, std::vector<Diagnostic>> assemble(const plan::Plan& plan) {
  std::vector<Diagnostic> faults;
  std::vector<TopoDS_Shape> shapes;
  const auto& solids = plan.piece.solids;
  const auto guarded = [&](std::size_t index, auto&& work) {
    try {
      work();
    } catch (const Standard_Failure& failure) {
      faults.push_back(
          told(plan, index,
               {fmt::format("the geometry kernel gave up on it: {}", failure.GetMessageString()), ""}));
    }
  };

  for (std::size_t i = 0; i < solids.size(); ++i)
    guarded(i, [&] {
      auto made = solid_shape(solids[i], plan.file);
      if (const auto* fault = std::get_if<ShapeFault>(&made))
        faults.push_back(told(plan, i, *fault));
      else
        shapes.push_back(std::get<TopoDS_Shape>(made));
    });
  if (solids.empty()) faults.push_back({plan.file, plan.piece.place, "the piece has no solid", ""});
  if (!faults.empty()) return faults;

  Standing standing;
  std::size_t made = 0;
  if (auto opened = opened_prism(solids)) {
    standing = {std::move(opened->shape), std::move(opened->maker), true};
    made = opened->solids;
  }
  for (std::size_t i = made; i < solids.size(); ++i) {
    guarded(i, [&] {
      if (const auto fault = step(standing, shapes[i], solids[i].cut, static_cast<int>(i)))
        faults.push_back(told(plan, i, *fault));
    });
    if (standing.shape.IsNull() || parts(standing.shape, TopAbs_SOLID).empty()) break;
  }
  if (!faults.empty()) return faults;
  if (faults = loose_parts(plan, standing); !faults.empty()) return faults;

  std::optional<Assembly> assembly;
  guarded(solids.size() - 1, [&] { assembly = joined(standing); });
  if (assembly) return *std::move(assembly);
  if (faults.empty())
    faults.push_back(
        {plan.file, plan.piece.place, "the solids do not make a valid solid",
         "surfaces that only touch along a line or at a point make a solid that has no clear inside"});
  return faults;
}

}  // namespace firstpick::piece
