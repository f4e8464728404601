#include "demands/plate_six_corners.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace firstpick::demands {

SixCorneredMesh::SixCorneredMesh(const PlateMesh& of, double nu) : grid(of, 1.0, nu) {
  nodes = static_cast<int>(of.nodes.size());
  std::map<std::pair<int, int>, int> middles;
  for (const auto& corner : of.triangles) {
    std::array<int, 6> six{corner[0], corner[1], corner[2], 0, 0, 0};
    for (std::size_t i = 0; i < 3; ++i) {
      const auto side = std::minmax(corner[i], corner[(i + 1) % 3]);
      const auto [place, is_new] = middles.try_emplace({side.first, side.second}, nodes);
      if (is_new) ++nodes;
      six[3 + i] = place->second;
    }
    triangles.push_back(six);
  }
  const double part = 1.0 - nu * nu;
  law = {{{1.0 / part, nu / part, 0.0}, {nu / part, 1.0 / part, 0.0}, {0.0, 0.0, 0.5 * (1.0 - nu) / part}}};
}

SixStrains SixCorneredMesh::strains(std::size_t triangle, double share_2, double share_3) const {
  const auto& t = grid.mesh.triangles[triangle];
  const auto at = [&](std::size_t i) { return grid.mesh.nodes[static_cast<std::size_t>(t[i])]; };
  const PlatePoint a = at(0), b = at(1), c = at(2);
  const double doubled = 2.0 * grid.elements[triangle].area_m2();
  const std::array<double, 3> share{1.0 - share_2 - share_3, share_2, share_3};
  const std::array<double, 3> by_x{(b.y_m - c.y_m) / doubled, (c.y_m - a.y_m) / doubled, (a.y_m - b.y_m) / doubled};
  const std::array<double, 3> by_y{(c.x_m - b.x_m) / doubled, (a.x_m - c.x_m) / doubled, (b.x_m - a.x_m) / doubled};
  SixStrains made{};
  const auto set = [&](std::size_t node, double x, double y) {
    made[0][2 * node] = x, made[1][2 * node + 1] = y;
    made[2][2 * node] = y, made[2][2 * node + 1] = x;
  };
  for (std::size_t i = 0; i < 3; ++i) {
    const std::size_t j = (i + 1) % 3;
    set(i, (4.0 * share[i] - 1.0) * by_x[i], (4.0 * share[i] - 1.0) * by_y[i]);
    set(3 + i, 4.0 * (share[i] * by_x[j] + share[j] * by_x[i]),
        4.0 * (share[i] * by_y[j] + share[j] * by_y[i]));
  }
  return made;
}

std::array<int, 3> SixCorneredMesh::holds() const {
  int a = 0, b = 0;
  const auto node = [&](int n) { return grid.mesh.nodes[static_cast<std::size_t>(n)]; };
  for (int n = 1; n < static_cast<int>(grid.mesh.nodes.size()); ++n)
    if (node(n).x_m + node(n).y_m < node(a).x_m + node(a).y_m) a = n;
  for (int n = 0; n < static_cast<int>(grid.mesh.nodes.size()); ++n)
    if (distance_m(node(n), node(a)) > distance_m(node(b), node(a))) b = n;
  const bool along_x = std::abs(node(b).x_m - node(a).x_m) >= std::abs(node(b).y_m - node(a).y_m);
  return {2 * a, 2 * a + 1, along_x ? 2 * b + 1 : 2 * b};
}

}  // namespace firstpick::demands
