// The shape `mesh`: finds the file below the folder of the plan and has the module read it.

#include <algorithm>
#include <filesystem>
#include <system_error>

#include <fmt/format.h>

#include "piece/mesh_file.hpp"
#include "piece/shape.hpp"
#include "record/program_module.hpp"

namespace firstpick::piece {
namespace {

namespace fs = std::filesystem;

constexpr std::uintmax_t largest_file = 64u << 20;  // bytes

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return text;
}

bool leaves_the_folder(const fs::path& relative) {
  return relative.is_absolute() || relative.has_root_path() ||
         std::find(relative.begin(), relative.end(), "..") != relative.end();
}

std::optional<ShapeFault> file_fault(const std::string& named, const fs::path& path,
                                     const std::string& ending) {
  if (named.empty() || leaves_the_folder(named))
    return ShapeFault{fmt::format("file '{}' is not in the folder of the plan or below it", named), ""};
  if (ending != ".stl" && ending != ".step" && ending != ".stp")
    return ShapeFault{fmt::format("file '{}' is not of a kind that can be read", named),
                      "STEP files end in .step or .stp, STL files in .stl"};
  std::error_code error;
  if (!fs::is_regular_file(path, error)) return ShapeFault{fmt::format("there is no file '{}'", named), ""};
  if (fs::file_size(path, error) > largest_file || error)
    return ShapeFault{fmt::format("file '{}' is too large", named), "files up to 64 MiB are read"};
  return {};
}

}  // namespace

std::variant<TopoDS_Shape, ShapeFault> mesh_shape(const plan::Solid& mesh, const std::string& plan_file) {
  const fs::path path = fs::path(plan_file).parent_path() / mesh.file;
  const std::string ending = lower(path.extension().string());
  if (auto fault = file_fault(mesh.file, path, ending)) return *std::move(fault);
  const auto read_mesh_file = reinterpret_cast<ReadMeshFile>(module_function(mesh_module, mesh_function));
  if (read_mesh_file == nullptr)
    return ShapeFault{"the part of the program that reads STEP and STL files is missing",
                      fmt::format("{} belongs to the installed program", mesh_module)};
  MeshRead read;
  read_mesh_file({path.string(), ending == ".stl", in(m, mesh.file_unit)}, read);
  if (!read.fault.empty()) return ShapeFault{fmt::format("file '{}' {}", mesh.file, read.fault), read.help};
  return read.solid;
}

}  // namespace firstpick::piece
