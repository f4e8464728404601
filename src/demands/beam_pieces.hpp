// A beam line cut where anything changes: within a piece the load is constant and no force acts.
#pragma once

#include <optional>
#include <vector>

#include "demands/beam_line.hpp"

namespace firstpick::demands {

struct Cut {  // what the part left of a section does to it, about the centroid, without prestress
  Force axial{}, shear{};
  Moment moment{};
};

struct BeamPiece {
  Length from{}, to{};
  std::size_t step = 0;
  LineLoad load{};
  Cut start;                       // just behind `from`, forces there included
  Cut cut_at(Length into) const;   // 0 <= into <= to - from
};

// Cut at steps, forces and the places `besides`.
std::vector<BeamPiece> beam_pieces(const BeamLine& beam, const std::vector<Length>& besides);

// Behind the right end, where nothing may be left.
Cut with_forces_at_end(const BeamLine& beam, const BeamPiece& last);

struct BeamMeasure {
  Force load{};     // sum of all loads and forces, each without its sign
  Length length{};
};
BeamMeasure beam_measure(const BeamLine& beam);

// Why there is nothing to compute; the balance of the forces is not looked at.
std::optional<NotAssessed> beam_refusal(const BeamLine& beam);

}  // namespace firstpick::demands
