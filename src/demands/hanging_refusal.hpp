// What cannot be hung, told before anything is computed: numbers that are none, legs that cannot meet at one
// hook.
#pragma once

#include <optional>

#include "demands/hanging.hpp"

namespace firstpick::demands {

std::optional<NotAssessed> hanging_refusal(const HungPiece& piece);

}  // namespace firstpick::demands
