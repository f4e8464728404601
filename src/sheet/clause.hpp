// The clause of a step in words that stand alone.
#pragma once

#include <string>

#include "record/trace.hpp"

namespace firstpick::sheet {

// "(d)" is a clause of nothing: where it is the place in one of the step's sources, with that source in front.
std::string clause_in_words(const Step& step);

}  // namespace firstpick::sheet
