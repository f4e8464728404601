// What painting to bytes takes, for cards and plots.
#pragma once

#include <regex>
#include <string>

#include <cairo.h>

namespace firstpick::pictures {

inline cairo_status_t append_bytes(void* text, const unsigned char* data, unsigned int size) {
  static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(data), size);
  return CAIRO_STATUS_SUCCESS;
}

// cairo numbers its surfaces through the life of the program: the number says nothing, and would make the same
// picture another one.
inline std::string without_surface_numbers(const std::string& svg) {
  static const std::regex numbered("\"surface[0-9]+\"");
  return std::regex_replace(svg, numbered, "\"surface\"");
}

}  // namespace firstpick::pictures
