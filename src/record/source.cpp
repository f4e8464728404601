#include "record/source.hpp"

namespace firstpick {

std::string_view word_for(Basis basis) {
  switch (basis) {
    case Basis::published: return "published";
    case Basis::quoted: return "quoted";
    case Basis::common_practice: return "common practice";
    case Basis::from_memory: return "from memory";
    case Basis::choice: return "choice";
  }
  return "from memory";
}

std::string citation(const Source& source) {
  return source.locator.empty() ? source.title : source.title + ", " + source.locator;
}

}  // namespace firstpick
