#include "demands/panel_flat.hpp"

#include <cmath>
#include <utility>

namespace firstpick::demands {

namespace {

PlatePoint flat_point(const plan::PlanarPoint& p) { return {in(m, p.x), in(m, p.y)}; }

// A grid over the panel as fine as the patches, and its boundary as finely.
void add_reading_points(FlatPanel& flat, double patch_radius_m) {
  const double pitch = std::max(patch_radius_m, flat.size_m() / 60.0);
  if (!(pitch > 0.0) || !std::isfinite(pitch)) return;
  const int columns = std::max(2, static_cast<int>(std::ceil((flat.high_x_m - flat.low_x_m) / pitch)));
  const int rows = std::max(2, static_cast<int>(std::ceil((flat.high_y_m - flat.low_y_m) / pitch)));
  for (int row = 0; row <= rows; ++row)
    for (int column = 0; column <= columns; ++column) {
      const PlatePoint p{flat.low_x_m + (flat.high_x_m - flat.low_x_m) * column / columns,
                         flat.low_y_m + (flat.high_y_m - flat.low_y_m) * row / rows};
      if (is_inside(flat.shape, p)) flat.reading.push_back(p);
    }
  const auto along = [&](const PlateRing& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const PlatePoint &a = ring[i], &b = ring[(i + 1) % ring.size()];
      const int parts = 2 * std::max(1, static_cast<int>(std::ceil(0.5 * distance_m(a, b) / pitch)));
      for (int part = 0; part < parts; ++part)
        flat.reading.push_back(
            {a.x_m + (b.x_m - a.x_m) * part / parts, a.y_m + (b.y_m - a.y_m) * part / parts});
    }
  };
  along(flat.shape.outer);
  for (const PlateRing& hole : flat.shape.holes) along(hole);
}

}  // namespace

PlateShape plate_shape(const std::vector<plan::PlanarPoint>& outer,
                       const std::vector<std::vector<plan::PlanarPoint>>& holes) {
  PlateShape shape;
  for (const auto& p : outer) shape.outer.push_back(flat_point(p));
  for (const auto& hole : holes) {
    PlateRing ring;
    for (const auto& p : hole) ring.push_back(flat_point(p));
    shape.holes.push_back(std::move(ring));
  }
  return shape;
}

bool is_on_panel(const PlateShape& shape, const PlatePoint& p) {
  return is_inside(shape, p) || boundary_distance_m(shape, p) <= 1e-6;
}

FlatPanel flat_panel(const std::vector<plan::PlanarPoint>& outer,
                     const std::vector<std::vector<plan::PlanarPoint>>& holes,
                     const std::vector<plan::PlanarPoint>& places, double patch_radius_m) {
  FlatPanel made;
  made.shape = plate_shape(outer, holes);
  for (const plan::PlanarPoint& place : places) {
    const PlatePoint p = flat_point(place);
    if (made.focus.empty() || !(distance_m(p, made.focus[made.focus_of(p)]) < 1e-6)) made.focus.push_back(p);
  }
  for (const PlatePoint& p : made.shape.outer) {
    made.low_x_m = std::min(made.low_x_m, p.x_m), made.high_x_m = std::max(made.high_x_m, p.x_m);
    made.low_y_m = std::min(made.low_y_m, p.y_m), made.high_y_m = std::max(made.high_y_m, p.y_m);
  }
  add_reading_points(made, patch_radius_m);
  return made;
}

}  // namespace firstpick::demands
