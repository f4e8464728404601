#include "resistances/projected_area.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "resistances/clipped_area.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

namespace {

Outcome<Area> projected_area(Group group, Length half_side) {
  if (group.empty()) return NotAssessed{"a group without inserts", {}};
  const HeadedInsert& first = *group.front();
  const piece::InsertSite& face = *first.site;

  std::vector<Square> squares;
  for (const HeadedInsert* insert : group) {
    if (insert->site->face != face.face)
      return NotAssessed{fmt::format("inserts {} and {} are not in one face", first.id, insert->id), {}};
    const Position apart = insert->at - first.at;
    squares.push_back({.centre = {dot(face.u, apart), dot(face.v, apart)},
                       .u_x = dot(face.u, insert->site->u),
                       .u_y = dot(face.v, insert->site->u),
                       .half_side = half_side});
  }
  const Area area = reached_area(face.outline, squares);
  const Area of_squares = static_cast<double>(group.size()) * 4.0 * half_side * half_side;
  constexpr double rounding = 1e-9;
  if (!(area > Area{}) || !(area <= (1.0 + rounding) * of_squares))
    return NotAssessed{fmt::format("the breakout area about insert {} cannot be found on its face", first.id),
                       {}};
  return std::min(area, of_squares);
}

std::vector<const piece::InsertSite*> sites_of(Group group) {
  std::vector<const piece::InsertSite*> sites;
  sites.reserve(group.size());
  for (const HeadedInsert* insert : group) sites.push_back(insert->site);
  return sites;
}

}  // namespace

const Outcome<Area>& ProjectedAreas::area(Group group, Length half_side) {
  static const Outcome<Area> no_size = NotAssessed{"the breakout body has no usable size", {}};
  if (!is_usable(half_side)) return no_size;  // and NaN never becomes a key of the map
  std::pair<Set, double> key{sites_of(group), in(m, half_side)};
  const auto known = areas_.find(key);
  if (known != areas_.end()) return known->second;
  return areas_.emplace(std::move(key), projected_area(group, half_side)).first->second;
}

std::vector<ProjectedAreas::Found> ProjectedAreas::found() const {
  std::vector<Found> all;
  for (const auto& [key, area] : areas_)
    if (is_assessed(area)) all.push_back({key.first, key.second * m, std::get<Area>(area)});
  return all;
}

const Outcome<GroupLayout>& ProjectedAreas::layout(Group group) {
  Set key = sites_of(group);
  const auto known = layouts_.find(key);
  if (known != layouts_.end()) return known->second;
  return layouts_.emplace(std::move(key), group_layout(group)).first->second;
}

}  // namespace firstpick::resistances
