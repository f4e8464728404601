// The edges of the piece as somebody sees them: what shows, and what the concrete hides.
#pragma once

#include <optional>
#include <vector>

#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "units/vector.hpp"

namespace firstpick::piece {

// Where the drawing's axes lie in those of the piece: unit, at right angles. The eye is far off at right x
// up.
struct View {
  Direction right{1.0, 0.0, 0.0}, up{0.0, 1.0, 0.0};
};

plan::PlanarPoint seen(const View& view, const Position& point);

struct DrawnLine {
  std::vector<plan::PlanarPoint> points;  // in the drawing's axes, from the origin of the piece
  bool hidden = false;
};

// Sharp edges and outlines of curved faces, curves as chords. A solid of more than `most_faces_drawn` faces
// (a scanned mesh) is not drawn in full: absent, and the caller says so. Absent too where the kernel gives
// up.
inline constexpr std::size_t most_faces_drawn = 400;
std::optional<std::vector<DrawnLine>> line_drawing(const Body& body, const View& view);

// The twelve edges of the box around the piece, none hidden: what is drawn where the piece cannot be.
std::vector<DrawnLine> box_drawing(const Body& body, const View& view);

}  // namespace firstpick::piece
