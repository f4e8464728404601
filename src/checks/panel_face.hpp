// A piece of one thickness as a flat panel: its top face as cast, with coordinates in it.
#pragma once

#include <optional>

#include "piece/body.hpp"
#include "plan/plan.hpp"

namespace firstpick::checks {

// Upright, or in one of the two faces of a panel.
bool is_flush(const piece::Face& face, const piece::Body& body);

struct PanelFace {
  Position origin;       // zero of the outline
  Direction u, v;        // its axes; u, v and up as cast right-handed
  piece::Outline outline;
  Length thickness{}, middle{};  // and height of mid-depth

  plan::PlanarPoint at(const Position& p) const { return {dot(u, p - origin), dot(v, p - origin)}; }
  Position in_piece(const plan::PlanarPoint& p) const { return origin + u * p.x + v * p.y; }
};

// Opening left out; curves as their chords.
Area area_of(const piece::Outline& outline);

// Nothing where the piece is none: no level top face whose area x thickness is the volume, an insert in a curved or sloping
// face. Inserts may sit in the top, in the bottom and in the edges.
std::optional<PanelFace> panel_face(const plan::Plan& plan, const piece::Body& body);

}  // namespace firstpick::checks
