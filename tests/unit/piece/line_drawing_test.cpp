// Lines of simple solids, counted by hand: which edges show, which the concrete hides.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "piece/line_drawing.hpp"
#include "unit/piece/pieces.hpp"

using namespace firstpick;
using namespace firstpick::pieces;

namespace {

const piece::View from_above{};
const Direction corner_right{1.0 / std::sqrt(2.0), 1.0 / std::sqrt(2.0), 0.0};
const Direction corner_up{-1.0 / std::sqrt(6.0), 1.0 / std::sqrt(6.0), 2.0 / std::sqrt(6.0)};
const piece::View from_a_corner{corner_right, corner_up};  // isometric: all three axes alike

Length drawn_length(const std::vector<piece::DrawnLine>& lines, bool hidden) {
  Length total{};
  for (const auto& line : lines)
    for (std::size_t i = 1; line.hidden == hidden && i < line.points.size(); ++i)
      total += std::hypot(in(m, line.points[i].x - line.points[i - 1].x),
                          in(m, line.points[i].y - line.points[i - 1].y)) *
               m;
  return total;
}

}  // namespace

// The kernel looks a thousandth of a radian beside: lengths agree to that, times the depth.
TEST_CASE("a cube from a corner shows nine edges and hides three") {
  const piece::Body cube = body_of({box("cube", {}, at(1000, 1000, 1000))});
  const auto lines = piece::line_drawing(cube, from_a_corner);
  REQUIRE(lines.has_value());
  const double edge_m = std::sqrt(2.0 / 3.0);  // of 1 m, isometric
  CHECK(in(m, drawn_length(*lines, false)) == Approx(9 * edge_m).epsilon(0.003));
  CHECK(in(m, drawn_length(*lines, true)) == Approx(3 * edge_m).epsilon(0.003));
}

TEST_CASE("a plate with a window from above shows two rectangles") {
  const piece::Body panel = body_of(wall_panel());
  const auto lines = piece::line_drawing(panel, from_above);
  REQUIRE(lines.has_value());
  const double around_m = 2 * (6.0 + 3.0) + 2 * (1.2 + 1.1);
  // What is a millimetre aside, the lower edges, is drawn too: twice the length at most.
  CHECK(in(m, drawn_length(*lines, false)) >= 0.999 * around_m);
  CHECK(in(m, drawn_length(*lines, false)) <= 2.01 * around_m);
  for (const auto& line : *lines)
    for (const auto& p : line.points) {
      CHECK(in(m, p.x) == Approx(in(m, std::clamp(p.x, 0.0 * m, 6.0 * m))).margin(2e-3));
      CHECK(in(m, p.y) == Approx(in(m, std::clamp(p.y, 0.0 * m, 3.0 * m))).margin(2e-3));
    }
}

TEST_CASE("the hidden bore of a manhole base is drawn as hidden, the outside as seen") {
  const piece::Body base = body_of(manhole_base());
  const Direction x{1.0, 0.0, 0.0}, z{0.0, 0.0, 1.0};
  const auto lines = piece::line_drawing(base, {x, z});
  REQUIRE(lines.has_value());
  const auto reaches = [&](bool hidden, Length to_the_side) {
    return std::ranges::any_of(*lines, [&](const piece::DrawnLine& line) {
      const Length high = abs(line.points.front().y - line.points.back().y);
      return line.hidden == hidden && high > 0.3 * m && std::ranges::all_of(line.points, [&](const auto& p) {
               return abs(abs(p.x) - to_the_side) < 5.0 * mm;
             });
    });
  };
  CHECK(reaches(false, 29.0 * inch));  // outline of the outside
  CHECK(reaches(true, 24.0 * inch));   // wall of the bore
  CHECK_FALSE(reaches(false, 24.0 * inch));
}

TEST_CASE("the drawing has the place of a point") {
  const plan::PlanarPoint p = piece::seen({{0.0, 1.0, 0.0}, {0.0, 0.0, 1.0}}, at(1, 2, 3));
  CHECK(in(mm, p.x) == Approx(2.0));
  CHECK(in(mm, p.y) == Approx(3.0));
}

TEST_CASE("a body that nobody built has no lines, its box has twelve") {
  piece::Body body = body_of({box("cube", {}, at(1000, 1000, 1000))});
  CHECK(piece::box_drawing(body, from_a_corner).size() == 12);
  CHECK(in(m, drawn_length(piece::box_drawing(body, from_a_corner), false)) ==
        Approx(12 * std::sqrt(2.0 / 3.0)));
  body.assembly.reset();
  CHECK_FALSE(piece::line_drawing(body, from_a_corner).has_value());
}

TEST_CASE("a solid of very many faces is not drawn in full") {
  piece::Body body = body_of({box("cube", {}, at(1000, 1000, 1000))});
  body.faces.resize(piece::most_faces_drawn + 1);
  CHECK_FALSE(piece::line_drawing(body, from_a_corner).has_value());
}
