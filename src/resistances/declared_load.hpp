#pragma once

#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "units/vector.hpp"

namespace firstpick::resistances {

// A pull on an insert in the axes of its face (InsertSite::normal, u, v).
struct Pull {
  Force tension{}, along_u{}, along_v{};
};

// The load that the supplier declares for this direction: that of the rating, or the least of the ranges that hold it.
// Not assessed: a direction that no range holds; an insert made for one plane pulled across it without a load declared for
// that; a plane that does not lie in the face, or without in_plane_within; a pull that is not a usable number.
Outcome<Force> declared_load(const plan::Insert& insert, const piece::InsertSite& site, const Pull& pull);

}  // namespace firstpick::resistances
