// What the engineer allows `firstpick layout` to change, as the plan says it.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "plan/plan.hpp"

namespace firstpick::plan {

enum class LegLengths { keep_length, keep_angle };

struct LayoutMove {                            // inserts that move together along one axis
  std::vector<Placed<std::string>> inserts;    // the first one leads
  Axis along = Axis::x;
  bool mirror = false;                         // about a plane across the axis; else all shift alike
  std::optional<Length> about;                 // absent: through the centre of gravity of the concrete
  std::optional<Length> from, to;              // of the first insert; absent: as far as the piece goes
  Place place;
};

struct KeepOut {
  std::array<Position, 2> corners;             // the lowest and the highest
  Place place;
};

struct Layout {
  Length step{};
  LegLengths legs = LegLengths::keep_length;
  std::optional<Length> edge_distance;
  std::vector<LayoutMove> moves;
  std::vector<KeepOut> keep_outs;
  Place place;
};

}  // namespace firstpick::plan
