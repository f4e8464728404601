// A_Nc: the area of the breakout bodies of a group on the face, cut off at edges and openings. Exact for
// the outline of the face as it is: cut corners, windows, curves as chords.
#pragma once

#include <cstddef>
#include <map>
#include <utility>
#include <vector>

#include "record/outcome.hpp"
#include "resistances/headed_insert.hpp"
#include "resistances/insert_group.hpp"
#include "units/quantity.hpp"

namespace firstpick::resistances {

// Remembers what it computed, by the set of inserts: one for each Body, never used for another.
class ProjectedAreas {
 public:
  // Union of the squares of half side `half_side` about each insert (in the axes of its site), inside the
  // outline of the face and outside its openings. Not assessed: a half side that is not finite and above
  // zero, a group that is not of one face, an area that is not between zero and the sum of the squares.
  const Outcome<Area>& area(Group group, Length half_side);

  const Outcome<GroupLayout>& layout(Group group);

  // Every area found so far: for drawings.
  using Set = std::vector<const piece::InsertSite*>;
  struct Found {
    Set inserts;
    Length half_side{};
    Area area{};
  };
  std::vector<Found> found() const;

 private:
  std::map<std::pair<Set, double>, Outcome<Area>> areas_;
  std::map<Set, Outcome<GroupLayout>> layouts_;
};

}  // namespace firstpick::resistances
