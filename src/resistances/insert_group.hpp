// Inserts of one face that act together.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "resistances/group_layout.hpp"
#include "resistances/headed_insert.hpp"

namespace firstpick::resistances {

// Sets of inserts (indices) whose breakout bodies meet: in one face, neither spacing along the axes of the
// face at least cone_extent (h_ef,i + h_ef,j), 3 h_ef for equal inserts. Inserts that are not assessed are
// in no group; every other one is in exactly one, alone where nothing is near.
std::vector<std::vector<std::size_t>> breakout_groups(std::span<const Outcome<HeadedInsert>> inserts,
                                                      const tables::HeadedInsertModel& model);

// Two or more inserts side by side along one edge.
struct EdgeRow {
  Direction towards;                 // unit vector in piece axes, in the face, from the inserts to the edge
  std::vector<std::size_t> inserts;  // indices
};

// Rows that share a side-face blowout: each with h_ef > 2.5 c_a1, neighbours nearer than 6 c_a1 (the
// smaller c_a1).
std::vector<EdgeRow> blowout_rows(std::span<const Outcome<HeadedInsert>> inserts,
                                  const tables::HeadedInsertModel& model);

// Rows that share a shear breakout towards an edge: neighbours nearer than 3 c_a1 (the smaller c_a1), in
// any direction of the face, so that an insert close behind another belongs to its row.
std::vector<EdgeRow> shear_rows(std::span<const Outcome<HeadedInsert>> inserts,
                                const tables::HeadedInsertModel& model);

}  // namespace firstpick::resistances
