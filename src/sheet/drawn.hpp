// Figures of the sheet beside the layout: breakout bodies, tension over the piece, pulls over the angle of a turn.
#pragma once

#include <vector>

#include "checks/stage_figures.hpp"
#include "sheet/content.hpp"

namespace firstpick::sheet {

// Sections with figures; none where nothing is drawn.
std::vector<Section> drawn_sections(const checks::Report& report, const std::vector<checks::StageFigures>& drawn);

}  // namespace firstpick::sheet
