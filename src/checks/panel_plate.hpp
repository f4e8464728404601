// What the two ways to load a panel have in common: level (panel_tension.cpp), and turned (turned_panel_tension.cpp).
#pragma once

#include <optional>
#include <string>

#include "checks/panel_face.hpp"
#include "checks/piece_bending.hpp"
#include "demands/panel_bending.hpp"

namespace firstpick::checks {

// Outline, Poisson's ratio and widths, still without loads.
demands::Panel plate_of(const StageFacts& facts, const PanelFace& face);

// Of one situation of a level panel.
demands::PanelLoad panel_load(const StageFacts& facts, const BendingLoads& loads, const PanelFace& face);

// Of one situation of a turned panel, by its name, with its one load; nothing where there is none, or it is not assessed.
std::optional<demands::Panel> turned_panel_in(const StageFacts& facts, const PanelFace& face, const std::string& situation);

// Takes the tension of one situation into the worst of all. `as_cast` behind the side: " as cast" where it is turned.
void look_at(BendingTension& worst, const demands::PanelBending& bending, const PanelFace& face,
             const Situation& situation, UnitSystem units, const char* as_cast);

inline NotAssessed no_panel() {
  return {"the piece is no panel of one thickness, nor one with low steps or ribs on one face, with its inserts in its faces or edges",
          "[piece] model = \"line\" where it is a beam, or bending_check: name the engineer's own check of its bending"};
}

}  // namespace firstpick::checks
