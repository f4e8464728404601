// Words as Pango sets them, the same for measuring and for painting. Included by
// set_words.cpp and paint_page.cpp only.
#pragma once

#include <memory>

#include <pango/pangocairo.h>

#include "card/page.hpp"

namespace firstpick::card {

using PangoWords = std::unique_ptr<PangoLayout, void (*)(gpointer)>;

// `context` of a map at 72 dots to the inch, so that its units are points.
PangoWords pango_words(PangoContext* context, const Words& words, double width);

// Without hints: the same lines at every resolution and on paper.
std::unique_ptr<PangoContext, void (*)(gpointer)> pango_context();

}  // namespace firstpick::card
