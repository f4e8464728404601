// Parts of the program that link libraries which would lengthen its start: loaded when they are first asked for.
#pragma once

#include <string>

namespace firstpick {

inline constexpr const char* mesh_module = "firstpick_mesh.so";          // reads STEP and STL files
inline constexpr const char* pictures_module = "firstpick_pictures.so";  // sets words, paints pages, finds hidden lines

// A function of a module by its name. The modules lie in a folder of their own beside the program, in the build tree as in an
// installed one. A module stays loaded; a second call finds it again. Null: it is not there.
void* module_function(const char* module, const char* function);

// Of the module of pictures. Error: std::runtime_error where it is missing, for without it no page has its measure.
void* pictures_function(const char* function);

}  // namespace firstpick
