// A panel whose thickness changes in steps: one level face flush, the other in level zones. Ribs, thick
// edges, recesses.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "checks/panel_face.hpp"
#include "demands/stepped_panel_bending.hpp"
#include "tables/rule_set.hpp"

namespace firstpick::checks {

struct SteppedFace {
  PanelFace face;                         // the flush one; thickness: the largest, middle: of all
  std::vector<demands::PanelZone> zones;  // heights over `face.middle`
  Length thinnest{}, thickest{};
  Area covered{};   // of all zones
  Volume volume{};  // of all zones, as their outlines are
};

// Nothing where the piece has no such shape: a sloping or curved face, steps on both faces, round steps, an
// insert in a face that slopes, zones that are not as wide as thick, or more than `cracking.step_ratio` times
// as thick as another.
std::optional<SteppedFace> stepped_face(const plan::Plan& plan, const piece::Body& body,
                                        const tables::CrackingModel& limits);

}  // namespace firstpick::checks
