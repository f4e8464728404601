#include "record/program_module.hpp"

#include <filesystem>
#include <stdexcept>
#include <system_error>

#include <dlfcn.h>

namespace firstpick {

void* module_function(const char* module, const char* function) {
  namespace fs = std::filesystem;
  std::error_code unknown;
  const fs::path program = fs::read_symlink("/proc/self/exe", unknown);
  if (unknown) return nullptr;  // else a folder that somebody stands in would be searched
  const fs::path path = program.parent_path() / FIRSTPICK_MODULES_FROM_PROGRAM / module;
  void* const loaded = dlopen(path.c_str(), RTLD_NOW | RTLD_LOCAL);
  return loaded == nullptr ? nullptr : dlsym(loaded, function);
}

void* pictures_function(const char* function) {
  void* const found = module_function(pictures_module, function);
  if (found == nullptr)
    throw std::runtime_error(std::string("the part of the program that draws is missing: ") + pictures_module +
                             " belongs to the installed program");
  return found;
}

}  // namespace firstpick
