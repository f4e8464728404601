// Values that nobody has confirmed, among those that took part in what was computed.
#pragma once

#include <vector>

#include "record/source.hpp"
#include "record/trace.hpp"

namespace firstpick::checks {

// Each once, in the order of their names.
std::vector<Source> unconfirmed_in(const Trace& trace);

}  // namespace firstpick::checks
