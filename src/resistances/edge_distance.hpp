// How far the edges of a face are from an insert, in four directions.
#pragma once

#include "piece/body.hpp"
#include "record/outcome.hpp"
#include "resistances/headed_insert.hpp"
#include "units/vector.hpp"

namespace firstpick::resistances {

// Distances from the insert of `site` along u, -u, v, -v to the edges of the face, openings included; `u`
// and `v` are unit vectors in the plane of the face (piece axes), at right angles. What counts as an edge
// in a direction: see the source file. Not assessed: no outline, the insert not inside it, a point that is
// not finite.
Outcome<EdgeDistances> edge_distances(const piece::InsertSite& site, const Direction& u, const Direction& v);

// The same with u = `towards` (unit vector in the face) and v = normal x u. Where these are axes of the
// insert, what is known already is used.
Outcome<EdgeDistances> edge_distances(const HeadedInsert& insert, const Direction& towards);

}  // namespace firstpick::resistances
