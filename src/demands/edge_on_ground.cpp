#include "demands/edge_on_ground.hpp"

#include <algorithm>
#include <cmath>

#include "demands/base_plane.hpp"

namespace firstpick::demands {

namespace {

constexpr Length drawn_within = 1.0 * mm;

}  // namespace

std::optional<NotAssessed> edge_refusal(const piece::Body& body, const TurningFrame& frame, Angle from, Angle to) {
  const std::string remedy = "[stage.turn] about = two points of an edge of the piece that is lowest all the way";
  const std::array ends{up_at(frame, from), up_at(frame, 0.5 * (from + to)), up_at(frame, to)};
  // Of a piece with curved faces these are the corners of the box around it too: none of it lies lower.
  for (const Position& p : corners_of(body))
    for (const Direction& up : ends)
      if (!(dot(up, p - frame.on_axis) >= -drawn_within))
        return NotAssessed{"the piece reaches below the edge about which it is to turn", remedy};

  Length low = Length::from_value(INFINITY), high = -low;
  for (const piece::Face& face : body.faces)
    for (const auto& ring : face.rings)
      for (const Position& p : ring) {
        const Position out = p - frame.on_axis;
        const Length s = dot(frame.along, out);
        if (!(norm(out - frame.along * s) <= drawn_within)) continue;
        low = std::min(low, s);
        high = std::max(high, s);
      }
  if (!(low <= drawn_within) || !(high >= frame.reach - drawn_within))
    return NotAssessed{"the two points do not lie on an edge of the piece", remedy};
  return {};
}

}  // namespace firstpick::demands
