#include "piece/line_drawing.hpp"

#include <array>

#include "piece/hidden_lines.hpp"
#include "record/program_module.hpp"

namespace firstpick::piece {

plan::PlanarPoint seen(const View& view, const Position& point) {
  const auto along = [&](const Direction& d) { return d.x * point.x + d.y * point.y + d.z * point.z; };
  return {along(view.right), along(view.up)};
}

std::optional<std::vector<DrawnLine>> line_drawing(const Body& body, const View& view) {
  static const auto find = reinterpret_cast<FindHiddenLines>(pictures_function(hidden_lines_function));
  HiddenLines lines;
  find(body, view, lines);
  return lines;
}

std::vector<DrawnLine> box_drawing(const Body& body, const View& view) {
  const std::array<Position, 2> ends{body.lowest, body.highest};
  const auto corner = [&](unsigned bits) {
    return seen(view, {ends[bits & 1U].x, ends[(bits >> 1U) & 1U].y, ends[(bits >> 2U) & 1U].z});
  };
  std::vector<DrawnLine> lines;
  for (unsigned from = 0; from < 8; ++from)
    for (const unsigned axis : {1U, 2U, 4U})
      if ((from & axis) == 0) lines.push_back({{corner(from), corner(from | axis)}, false});
  return lines;
}

}  // namespace firstpick::piece
