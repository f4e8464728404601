// A commented plan to start from, for each common piece. As written it is HOLD: what somebody must measure,
// read off a tag or see with their own eyes stands there as a comment only.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "units/print.hpp"

namespace firstpick::editor {

struct NewKind {
  std::string_view name;  // "manhole-base"
  std::string_view what;  // one line
};

std::span<const NewKind> new_kinds();

// The plan of a kind that exists.
std::string new_plan(std::string_view kind, UnitSystem units);

}  // namespace firstpick::editor
