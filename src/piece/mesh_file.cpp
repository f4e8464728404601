// Reads one closed solid from a STEP file (ISO 10303-21) or an STL file. Built as a module: see
// mesh_file.hpp.

#include "piece/mesh_file.hpp"

#include <exception>

#include <fmt/format.h>
#include <BOPAlgo_ArgumentAnalyzer.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <BRep_Tool.hxx>
#include <GProp_GProps.hxx>
#include <Interface_Static.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_Printer.hxx>
#include <STEPControl_Reader.hxx>
#include <Standard_Failure.hxx>
#include <TopExp.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>

namespace firstpick::piece {
namespace {

void read_step(const MeshFile& file, MeshRead& read) {
  STEPControl_Reader reader;
  Interface_Static::SetCVal("xstep.cascade.unit", "M");  // known from the first reader on
  if (reader.ReadFile(file.path.c_str()) != IFSelect_RetDone) {
    read.fault = "is not a STEP file that can be read";
    return;
  }
  reader.TransferRoots();
  const TopoDS_Shape shape = reader.OneShape();
  TopTools_IndexedMapOfShape solids;
  if (!shape.IsNull()) TopExp::MapShapes(shape, TopAbs_SOLID, solids);
  if (solids.Extent() != 1) {
    read.fault = fmt::format("holds {} solids", solids.Extent());
    read.help = "one closed solid is read from a file; surfaces alone are no solid";
    return;
  }
  read.solid = solids(1);
}

// What both kinds of file must be: closed, valid, turned outward, not crossing itself.
void check(MeshRead& read) {
  TopTools_IndexedMapOfShape shells;
  TopExp::MapShapes(read.solid, TopAbs_SHELL, shells);
  for (int i = 1; i <= shells.Extent(); ++i)
    if (!BRep_Tool::IsClosed(shells(i))) {
      read.fault = "holds a surface that is not closed";
      return;
    }
  if (!BRepCheck_Analyzer(read.solid).IsValid()) {
    read.fault = "holds a solid that is not valid";
    return;
  }
  GProp_GProps measured;
  BRepGProp::VolumeProperties(read.solid, measured);
  if (!(measured.Mass() > 0.0)) {
    read.fault = "holds a solid whose surface faces inward";
    return;
  }
  BOPAlgo_ArgumentAnalyzer crossings;
  crossings.SetShape1(read.solid);
  crossings.SelfInterMode() = true;
  crossings.Perform();
  if (crossings.HasFaulty()) read.fault = "holds a surface that crosses itself";
}

void read_mesh_file(const MeshFile& file, MeshRead& read) {
  // The kernel would write its own remarks to standard output, which belongs to the answer.
  Message::DefaultMessenger()->RemovePrinters(Message_Printer::get_type_descriptor());
  try {
    file.is_stl ? read_stl(file, read) : read_step(file, read);
    if (read.fault.empty()) check(read);
  } catch (const Standard_Failure& failure) {
    read.fault = fmt::format("cannot be read: {}", failure.GetMessageString());
  } catch (const std::exception& failure) {
    read.fault = fmt::format("cannot be read: {}", failure.what());
  }
}

}  // namespace
}  // namespace firstpick::piece

extern "C" [[gnu::visibility("default")]] void firstpick_read_mesh_file(
    const firstpick::piece::MeshFile& file, firstpick::piece::MeshRead& read) {
  firstpick::piece::read_mesh_file(file, read);
}
