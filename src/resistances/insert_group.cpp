// Which inserts act together, by the spacings at which ACI 318-19 17.5.1.3 ends the effect of a group: 3
// h_ef for breakout in tension, 3 c_a1 for breakout in shear, 6 c_a1 for side-face blowout (17.6.4.2).
//
// Breakout bodies are squares, and two squares meet where neither coordinate of the distance reaches the
// limit. The distance is taken in the axes of either insert; if they meet in one of the two, the inserts
// are one group.

#include "resistances/insert_group.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>

#include "resistances/edge_distance.hpp"
#include "resistances/linked_sets.hpp"

namespace firstpick::resistances {

namespace {

using Inserts = std::span<const Outcome<HeadedInsert>>;

const HeadedInsert& insert_at(Inserts inserts, std::size_t i) { return std::get<HeadedInsert>(inserts[i]); }

std::vector<std::size_t> assessed(Inserts inserts) {
  std::vector<std::size_t> indices;
  for (std::size_t i = 0; i < inserts.size(); ++i)
    if (is_assessed(inserts[i])) indices.push_back(i);
  return indices;
}

bool squares_meet(const HeadedInsert& a, const HeadedInsert& b, Length reach) {
  const Position apart = b.at - a.at;
  const auto meet_in = [&](const piece::InsertSite& site) {
    return abs(dot(site.u, apart)) < reach && abs(dot(site.v, apart)) < reach;
  };
  return meet_in(*a.site) || meet_in(*b.site);
}

// The four directions of every insert of one face, each direction once.
std::vector<Direction> directions_of(Inserts inserts, const std::vector<std::size_t>& members) {
  std::vector<Direction> directions;
  for (const std::size_t i : members)
    for (const Direction& axis : {insert_at(inserts, i).site->u, insert_at(inserts, i).site->v})
      for (const double sign : {1.0, -1.0}) {
        const Direction d = sign * axis;
        const auto same = [&](const Direction& known) { return norm(known - d) < 1e-6; };
        if (std::ranges::none_of(directions, same)) directions.push_back(d);
      }
  return directions;
}

std::vector<std::vector<std::size_t>> by_face(Inserts inserts) {
  return linked_sets(assessed(inserts), [&](std::size_t i, std::size_t j) {
    return insert_at(inserts, i).site->face == insert_at(inserts, j).site->face;
  });
}

// Rows of two and more along each edge. `reach` is how far insert i with edge distance c_a1 reaches for a
// neighbour; zero: it takes no part.
template <class Reach>
std::vector<EdgeRow> rows(Inserts inserts, Reach reach) {
  std::vector<EdgeRow> found;
  for (const auto& face : by_face(inserts)) {
    if (face.size() < 2) continue;
    for (const Direction& towards : directions_of(inserts, face)) {
      std::vector<Length> reaches(inserts.size(), Length{});
      std::vector<std::size_t> members;
      for (const std::size_t i : face) {
        const auto edges = edge_distances(insert_at(inserts, i), towards);
        if (const auto* known = std::get_if<EdgeDistances>(&edges))
          reaches[i] = reach(insert_at(inserts, i), known->c[0]);
        if (reaches[i] > Length{}) members.push_back(i);
      }
      for (auto& set : linked_sets(members, [&](std::size_t i, std::size_t j) {
             return norm(insert_at(inserts, i).at - insert_at(inserts, j).at) <
                    std::min(reaches[i], reaches[j]);
           }))
        if (set.size() > 1) found.push_back({towards, std::move(set)});
    }
  }
  return found;
}

}  // namespace

std::vector<std::vector<std::size_t>> breakout_groups(Inserts inserts,
                                                      const tables::HeadedInsertModel& model) {
  return linked_sets(assessed(inserts), [&](std::size_t i, std::size_t j) {
    const HeadedInsert &a = insert_at(inserts, i), &b = insert_at(inserts, j);
    return a.site->face == b.site->face && squares_meet(a, b, model.cone_extent.value * (a.h_ef + b.h_ef));
  });
}

std::vector<EdgeRow> blowout_rows(Inserts inserts, const tables::HeadedInsertModel& model) {
  return rows(inserts, [&](const HeadedInsert& insert, Length c_a1) {
    const bool occurs = insert.h_ef > model.blowout_depth.value * c_a1;
    return occurs ? Length{model.blowout_group.value * c_a1} : Length{};
  });
}

std::vector<EdgeRow> shear_rows(Inserts inserts, const tables::HeadedInsertModel& model) {
  return rows(inserts, [&](const HeadedInsert&, Length c_a1) {
    return Length{2.0 * model.shear_extent.value * c_a1};
  });
}

}  // namespace firstpick::resistances
