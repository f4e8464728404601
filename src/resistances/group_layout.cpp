// Where the inserts of a group stand towards each other and towards the edges of their face.
//
// s_max is the longest link of the shortest tree over the inserts: the largest spacing of neighbours, in a
// rectangle the longer of its two spacings.

#include "resistances/group_layout.hpp"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <utility>

#include <fmt/format.h>

#include "resistances/edge_distance.hpp"

namespace firstpick::resistances {

Outcome<GroupLayout> group_layout(Group group) {
  if (group.empty()) return NotAssessed{"a group without inserts", {}};
  const HeadedInsert& first = *group.front();
  GroupLayout layout{.u = first.site->u,
                     .v = first.site->v,
                     .from_centroid = {},
                     .edges = first.edges,
                     .s_max = Length{},
                     .s_min = std::numeric_limits<double>::infinity() * m};
  const double count = static_cast<double>(group.size());
  plan::PlanarPoint centroid{};
  for (const HeadedInsert* insert : group) {
    if (insert->site->face != first.site->face)
      return NotAssessed{fmt::format("inserts {} and {} are not in one face", first.id, insert->id), {}};
    const Position apart = insert->at - first.at;
    layout.from_centroid.push_back({dot(layout.u, apart), dot(layout.v, apart)});
    centroid.x += layout.from_centroid.back().x / count;
    centroid.y += layout.from_centroid.back().y / count;
    if (insert == &first) continue;
    const auto edges = edge_distances(*insert, layout.u);
    if (const auto* why = std::get_if<NotAssessed>(&edges)) return *why;
    const auto& own = std::get<EdgeDistances>(edges);
    for (std::size_t i = 0; i < 4; ++i) layout.edges.c[i] = std::min(layout.edges.c[i], own.c[i]);
    layout.edges.nearest = std::min(layout.edges.nearest, own.nearest);
  }
  for (auto& point : layout.from_centroid) point.x -= centroid.x, point.y -= centroid.y;

  // Shortest tree over the inserts (grown from the first): its longest link is s_max.
  std::vector<Length> to_tree(group.size(), std::numeric_limits<double>::infinity() * m);
  std::vector<bool> in_tree(group.size(), false);
  to_tree[0] = Length{};
  for (std::size_t grown = 0; grown < group.size(); ++grown) {
    std::size_t next = group.size();
    for (std::size_t i = 0; i < group.size(); ++i)
      if (!in_tree[i] && (next == group.size() || to_tree[i] < to_tree[next])) next = i;
    in_tree[next] = true;
    layout.s_max = std::max(layout.s_max, to_tree[next]);
    for (std::size_t i = 0; i < group.size(); ++i) {
      if (i == next) continue;
      const Length s = norm(group[i]->at - group[next]->at);
      layout.s_min = std::min(layout.s_min, s);
      to_tree[i] = std::min(to_tree[i], s);
    }
  }
  if (group.size() > 1 && !(layout.s_min > Length{} && is_finite(layout.s_max)))
    return NotAssessed{fmt::format("two inserts of the group of {} are at one place", first.id), {}};
  return layout;
}

}  // namespace firstpick::resistances
