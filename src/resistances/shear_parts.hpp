// The parts of a shear towards an edge and along it, and what the edge allows against both together.
#pragma once

#include <string>

#include "resistances/headed_insert.hpp"
#include "resistances/shear_breakout.hpp"

namespace firstpick::resistances {

struct ShearParts {  // of a shear of length 1, each from 0 to 1
  double towards, along;
};

// Whether a shear has a direction in the face of `site`: finite and not zero.
bool has_direction(const Direction& shear, const piece::InsertSite& site);

// `towards`, `along`: unit vectors in the face, out of the edge and along it. The shear must have a
// direction.
ShearParts parts_of(const Direction& shear, const Direction& towards, const Direction& along);

// False: the shear points straight away from the edge, which then does not limit it.
bool limits(const ShearParts& parts);

// The largest resultant with these parts, by the elliptical line between the two strengths.
Force against_resultant(const ShearParts& parts, const EdgeStrength& strength);

void record_resultant(const std::string& whose, const Direction& towards, const ShearParts& parts,
                      const EdgeStrength& strength, Force R, const tables::HeadedInsertModel& model,
                      Trace& trace);

// Whether every number that the shear formulas take of an insert is finite and above zero; and the answer
// if not.
bool is_described_for_shear(const HeadedInsert& insert, Stress f_c);
NotAssessed not_described_for_shear(const HeadedInsert& insert);

// The edge in direction `direction` (0 to 3: u, -u, v, -v of the insert's site) as one insert sees it.
ShearEdge edge_of(const HeadedInsert& insert, std::size_t direction);

}  // namespace firstpick::resistances
