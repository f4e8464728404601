// The text of a plan with other places of inserts and other lengths of legs; everything else, comments too, byte for byte.
#pragma once

#include <string>
#include <string_view>
#include <variant>

#include "plan/plan.hpp"
#include "record/diagnostic.hpp"

namespace firstpick::plan {

// `length` in the units and with the decimals of `like` ("8 ft 4 in", "0.83 m"), to 1 mm or 1/16 in: what a drawing states.
std::string written_like(std::string_view like, Length length);

// `before` is the plan that `text` says, `after` the same with inserts moved and legs of other lengths. Only values that
// differ are written anew. A fault: a value that is not written as one plain string.
std::variant<std::string, Diagnostic> with_picks_of(const std::string& file, std::string_view text, const Plan& before,
                                                    const Plan& after);

}  // namespace firstpick::plan
