// A page on paper or screen: PDF, SVG or PNG by the ending of its name (cairo stays inside).
#pragma once

#include <string>

#include "card/page.hpp"

namespace firstpick::card {

enum class Picture { pdf, svg, png };

struct Painted {
  std::string bytes;
  std::string fault;  // empty where it succeeded
};

// Same page, same bytes. `title` goes into the properties of a PDF.
Painted paint(const Page& page, Picture picture, const std::string& title);

}  // namespace firstpick::card
