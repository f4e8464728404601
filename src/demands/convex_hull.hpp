// Convex hull of points in a plane, counter-clockwise, without points on its sides; one or two points stay as they are.
#pragma once

#include <vector>

#include "plan/plan.hpp"

namespace firstpick::demands {

std::vector<plan::PlanarPoint> convex_hull(std::vector<plan::PlanarPoint> points);

}  // namespace firstpick::demands
