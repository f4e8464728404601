// A box or a prism with openings right through it, as sections across one axis: found without the geometry kernel.
#pragma once

#include <optional>
#include <vector>

#include "plan/plan.hpp"

namespace firstpick::piece {

// Where the concrete, or what is cut from it, lies along the axis, and its outline across it, both in piece axes.
struct SweptOutline {
  Length low{}, high{};
  std::vector<plan::PlanarPoint> outline;  // of a round one: the square about it
  std::vector<std::vector<plan::PlanarPoint>> holes;
  std::optional<Length> radius;
  plan::PlanarPoint middle{};
};

struct OpenedBody {
  plan::Axis axis = plan::Axis::z;
  SweptOutline body;
  std::vector<SweptOutline> openings;  // of the solids that follow the first, one each
};

// The solids with which a plan begins, where they are a box or a prism and openings that pass right through it, clear of its
// sides and of each other, along the axis that takes most of them. Nothing: they are not such.
std::optional<OpenedBody> opened_body(const std::vector<plan::Solid>& solids);

}  // namespace firstpick::piece
