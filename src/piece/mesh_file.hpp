// Between the program and the module that reads STEP and STL files. The module links toolkits that would
// double the start-up time of the program, so it is loaded only when a plan names such a file.
#pragma once

#include <string>

#include <TopoDS_Shape.hxx>

namespace firstpick::piece {

struct MeshFile {
  std::string path;
  bool is_stl = false;
  double m_per_unit = 1.0;  // STL only: a STEP file names its unit
};

struct MeshRead {
  TopoDS_Shape solid;  // one closed solid in metres, outward, unless `fault` says why not
  std::string fault, help;
};

using ReadMeshFile = void (*)(const MeshFile&, MeshRead&);
inline constexpr const char* mesh_function = "firstpick_read_mesh_file";

// In mesh_stl.cpp: facets -> solid.
void read_stl(const MeshFile& file, MeshRead& read);

}  // namespace firstpick::piece
