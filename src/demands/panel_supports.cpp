#include "demands/panel_supports.hpp"

#include <algorithm>
#include <cmath>

namespace firstpick::demands {

namespace {

constexpr double on_the_line_m = 1e-6, may_lift = 1e-6;  // metres; of the mean reaction

}  // namespace

std::optional<std::vector<EdgeShare>> edge_shares(const PlateMesh& mesh, const PlateShape& shape,
                                                  const std::array<PlatePoint, 2>& line, const PlatePoint& resultant) {
  const double reach_m = distance_m(line[0], line[1]);
  if (!(reach_m > 0.0) || !std::isfinite(reach_m)) return {};
  const auto along = [&](const PlatePoint& p) {
    return ((p.x_m - line[0].x_m) * (line[1].x_m - line[0].x_m) + (p.y_m - line[0].y_m) * (line[1].y_m - line[0].y_m)) /
           reach_m;
  };
  struct OnLine {
    int node;
    double s_m, width_m;
  };
  std::vector<OnLine> nodes;
  for (std::size_t n = 0; n < mesh.nodes.size(); ++n)
    if (distance_m(mesh.nodes[n], line[0], line[1]) <= on_the_line_m)
      nodes.push_back({static_cast<int>(n), along(mesh.nodes[n]), 0.0});
  std::ranges::sort(nodes, {}, &OnLine::s_m);
  for (std::size_t i = 1; i < nodes.size(); ++i) {
    const PlatePoint &p = mesh.nodes[static_cast<std::size_t>(nodes[i - 1].node)],
                     &q = mesh.nodes[static_cast<std::size_t>(nodes[i].node)];
    // Across a gap, a door to the ground, there is no edge.
    if (!(boundary_distance_m(shape, {0.5 * (p.x_m + q.x_m), 0.5 * (p.y_m + q.y_m)}) <= on_the_line_m)) continue;
    const double half_m = 0.5 * (nodes[i].s_m - nodes[i - 1].s_m);
    nodes[i - 1].width_m += half_m, nodes[i].width_m += half_m;
  }
  double l_0 = 0.0, l_1 = 0.0, l_2 = 0.0;
  for (const OnLine& n : nodes) l_0 += n.width_m, l_1 += n.width_m * n.s_m, l_2 += n.width_m * n.s_m * n.s_m;
  const double s_r = along(resultant), determinant = l_0 * l_2 - l_1 * l_1;
  const double a = (l_2 - l_1 * s_r) / determinant, b = (l_0 * s_r - l_1) / determinant;
  std::vector<EdgeShare> shares;
  for (const OnLine& n : nodes) {
    const double pressure = a + b * n.s_m;
    if (!(pressure >= -may_lift / l_0)) return {};
    shares.push_back({n.node, pressure * n.width_m});
  }
  if (shares.empty()) return {};
  return shares;
}

std::vector<int> holding_nodes(const PlateMesh& mesh) {
  const auto most = [&](auto value) {
    int best = 0;
    for (std::size_t n = 1; n < mesh.nodes.size(); ++n)
      if (value(mesh.nodes[n]) > value(mesh.nodes[static_cast<std::size_t>(best)])) best = static_cast<int>(n);
    return best;
  };
  const int a = most([](const PlatePoint& p) { return -p.x_m - p.y_m; });
  const PlatePoint at_a = mesh.nodes[static_cast<std::size_t>(a)];
  const int b = most([&](const PlatePoint& p) { return distance_m(p, at_a); });
  const PlatePoint at_b = mesh.nodes[static_cast<std::size_t>(b)];
  const int c = most([&](const PlatePoint& p) {
    return std::abs((at_b.x_m - at_a.x_m) * (p.y_m - at_a.y_m) - (at_b.y_m - at_a.y_m) * (p.x_m - at_a.x_m));
  });
  return {3 * a, 3 * b, 3 * c};
}

}  // namespace firstpick::demands
