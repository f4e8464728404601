// What a quantity looks like, as a regular expression for editors. It lets through all that the reader takes
// in the forms of docs/quantities.md, and little else; the reader is the judge.
#pragma once

#include <string>

#include "plan/keys.hpp"

namespace firstpick::editor {

// Of the whole text in quotes, anchored. For quantities, shares and numbers.
std::string quantity_pattern(plan::Kind kind, plan::Limit limit);

}  // namespace firstpick::editor
