// A group of inserts and where they stand.
#pragma once

#include <span>
#include <vector>

#include "resistances/headed_insert.hpp"

namespace firstpick::resistances {

// Inserts of one face, none twice. One insert is a group too.
using Group = std::span<const HeadedInsert* const>;

struct GroupLayout {
  Direction u, v;  // axes of the group: those of its first insert
  std::vector<plan::PlanarPoint>
      from_centroid;    // each insert in u, v from the centroid of the group, in its order
  EdgeDistances edges;  // in u, v: the least over the inserts
  Length s_max;  // the largest of the spacings that link the group to its nearest neighbours; 0 for one
  Length s_min;  // the least spacing of two inserts; infinite for one
};

// Geometry alone. Not assessed: empty, inserts of different faces, one that is in it twice.
Outcome<GroupLayout> group_layout(Group group);

}  // namespace firstpick::resistances
