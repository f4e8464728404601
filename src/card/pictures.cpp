// Calls the module of pictures.

#include "card/pictures_module.hpp"
#include "record/program_module.hpp"

namespace firstpick::card {

Painted paint(const Page& page, Picture picture, const std::string& title) {
  static const auto paint_page = reinterpret_cast<PaintPage>(pictures_function(paint_function));
  Painted painted;
  paint_page(page, picture, title, painted);
  return painted;
}

Extent extent_of(const Words& words, double width) {
  static const auto measure = reinterpret_cast<MeasureWords>(pictures_function(extent_function));
  Extent extent;
  measure(words, width, extent);
  return extent;
}

}  // namespace firstpick::card
