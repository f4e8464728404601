// The declared load of a rated insert by the direction of the pull.
//
//   alpha = angle of the pull from the outward normal        beta = asin(|F . q| / |F|), q = n x p
//
// p        the plane's axis, seen in the face: an insert made for one plane is pulled along n and p. A pull that leaves the
//          plane by more than in_plane_within is across it.
// Source   the supplier's declaration (DGUV Regel 101-001 4.2.1 asks for limits of direction, and for what holds at other
//          angles). Between two ranges that meet, the lesser load counts. A range never counts with more than `load`.
// Absent   ranges: `load` up to maximum_angle, which rule insert-angle judges. plane: the declaration holds to every side.

#include "resistances/declared_load.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "resistances/usable.hpp"
#include "units/print.hpp"

namespace firstpick::resistances {

namespace {

constexpr double last_bits = 1e-9;  // rad: an angle that is a limit but for these is the limit

Direction axis_of(plan::Axis axis) {
  return axis == plan::Axis::x ? Direction{1.0, 0.0, 0.0} : axis == plan::Axis::y ? Direction{0.0, 1.0, 0.0} : Direction{0.0, 0.0, 1.0};
}

struct Way {
  Angle from_axis{};
  bool across = false;
  Angle out_of_plane{};
};

Outcome<Way> way_of(const plan::Insert& insert, const piece::InsertSite& site, const Pull& pull) {
  const plan::Rating& rating = *insert.rating;
  const double n = pull.tension.value(), u = pull.along_u.value(), v = pull.along_v.value();
  const double whole = std::sqrt(n * n + u * u + v * v);
  if (!std::isfinite(whole) || !(whole > 0.0)) return NotAssessed{"the pull on the insert is not a usable number", {}};
  Way way{.from_axis = Angle::from_value(std::atan2(std::hypot(u, v), n))};
  if (!rating.plane) return way;
  if (!rating.in_plane_within)
    return NotAssessed{fmt::format("the rating of insert {} does not say how far a pull may leave its plane", insert.id),
                       "rating = { ..., in_plane_within = \"...\" }, from the supplier's declaration"};
  const Direction axis = axis_of(*rating.plane);
  if (std::abs(dot(axis, site.normal)) > 1e-6)
    return NotAssessed{fmt::format("the plane of insert {} does not lie along its face: its axis stands out of it", insert.id),
                       "plane = an axis of the piece that lies in the face of the insert"};
  const Direction q = cross(site.normal, axis);
  const double out = std::abs(u * dot(site.u, q) + v * dot(site.v, q));
  way.out_of_plane = Angle::from_value(std::asin(std::min(1.0, out / whole)));
  way.across = way.out_of_plane.value() > rating.in_plane_within->value() + last_bits;
  return way;
}

}  // namespace

Outcome<Force> declared_load(const plan::Insert& insert, const piece::InsertSite& site, const Pull& pull) {
  const plan::Rating& rating = *insert.rating;
  if (!rating.plane && rating.ranges.empty()) return rating.load;
  const auto found = way_of(insert, site, pull);
  if (const auto* why = std::get_if<NotAssessed>(&found)) return *why;
  const Way& way = std::get<Way>(found);
  const auto has = [&](bool across) { return std::ranges::any_of(rating.ranges, [&](const auto& r) { return r.across == across; }); };
  if (!way.across && !has(false)) return rating.load;
  std::optional<Force> least;
  for (const plan::RatedRange& range : rating.ranges) {
    if (range.across != way.across) continue;
    const double from = range.from.value_or(Angle{}).value() - last_bits, to = range.to.value() + last_bits;
    if (way.from_axis.value() < from || way.from_axis.value() > to) continue;
    const Force load = std::min(range.load, rating.load);
    if (!least || load < *least) least = load;
  }
  if (least) return *least;
  if (way.across)
    return NotAssessed{
        fmt::format("insert {} is pulled {} across its plane, {} from its axis, and its supplier declares no load for that",
                    insert.id, print(way.out_of_plane, UnitSystem::si, Rounding::up),
                    print(way.from_axis, UnitSystem::si, Rounding::up)),
        "legs in the plane of the insert, or a load declared across it: ranges = [ { ..., across = true } ]"};
  return NotAssessed{fmt::format("insert {} is pulled {} from its axis, and no range of its rating holds that", insert.id,
                                 print(way.from_axis, UnitSystem::si, Rounding::up)),
                     "the load that the supplier declares for this direction, or steeper legs"};
}

}  // namespace firstpick::resistances
