// A panel divided into triangles: nearly equal-sided, smaller near picks and inward corners. Nobody sets it by hand.
//
// Points: the boundary, split until each side is as short as the size wanted there; the picks; between them points of
// triangular grids, each where the size wanted is that of its grid, moved towards the middle of their neighbours. The
// triangles are those of Delaunay, from the Voronoi diagram of the points. A boundary side that is not a side of a
// triangle is halved and all is done again, so the boundary is kept exactly.
//
// Source   Voronoi diagram: Fortune, "A sweepline algorithm for Voronoi diagrams", Algorithmica 2 (1987), as Boost.Polygon
//          does it, exact on whole numbers: points are on a grid of a tenth of a micrometre.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "demands/plate_shape.hpp"

namespace firstpick::demands {

struct PlateMesh {
  std::vector<PlatePoint> nodes;
  std::vector<std::array<int, 3>> triangles;  // counter-clockwise
  std::vector<int> focus_nodes;               // node of each focus point, in their order
  double least_angle_rad = 0.0;
};

// `size_m`: of triangles far from everything. `focus`: points that must be nodes, inside or on the boundary (picks).
// Nothing: no division was found that keeps the boundary, covers the area to 1e-6 and has no angle under 2 degrees.
std::optional<PlateMesh> plate_mesh(const PlateShape& shape, const std::vector<PlatePoint>& focus, double size_m);

}  // namespace firstpick::demands
