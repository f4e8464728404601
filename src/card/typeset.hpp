// How much room words take (Pango stays inside).
#pragma once

#include "card/page.hpp"

namespace firstpick::card {

struct Extent {
  double width = 0.0, height = 0.0;  // points
};

// Of words broken into lines of at most `width` points; a word longer than a line is broken too.
Extent extent_of(const Words& words, double width);

}  // namespace firstpick::card
