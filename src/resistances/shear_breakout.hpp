// Strength of one edge against a shear towards it and along it.
#pragma once

#include <array>

#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "tables/rule_set.hpp"
#include "units/quantity.hpp"

namespace firstpick::resistances {

// One insert or a row in front of an edge. Every length finite and above zero, but s, s_max, eccentricity:
// at least zero.
struct ShearEdge {
  Length c_a1;                 // to the edge
  std::array<Length, 2> c_a2;  // along it, to the edges on both sides
  Length s, s_max;             // along it: between the outer inserts of a row, largest between neighbours
  Length eccentricity;         // along it: of the resultant shear from the centroid of the row
  Length h_a;                  // thickness of the concrete
  Length h_ef, d_a;
  Ratio lambda_a;
  bool cracked;
};

struct EdgeStrength {
  Force towards, along;  // nominal, against a shear towards the edge and along it
};

EdgeStrength shear_breakout(const ShearEdge& edge, Stress f_c, const tables::HeadedInsertModel& model,
                            Trace& trace);

}  // namespace firstpick::resistances
