// For which numbers of bodies the templates of the rope kernel are compiled: the piece alone, and with up to six
// beams and sheaves above it.
#pragma once

#include "demands/hanging.hpp"

#define FIRSTPICK_FOR_EACH_NUMBER_OF_BODIES(declare) \
  declare(1) declare(2) declare(3) declare(4) declare(5) declare(6) declare(7)

static_assert(firstpick::demands::most_carriers + 1 == 7, "the list above ends with the most that are hung");
