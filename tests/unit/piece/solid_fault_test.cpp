// Every fault of a solid and of a step, word for word. Those of contacts, inserts and mesh files: beside
// their tests.

#include <catch2/catch.hpp>

#include <limits>

#include "unit/piece/pieces.hpp"

using namespace firstpick;
using namespace firstpick::pieces;

namespace {

using Lines = std::vector<std::string>;
constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
constexpr double endless = std::numeric_limits<double>::infinity();

const std::string size_help = " [lengths of a solid lie between 0.1 mm and 100 m]";
const std::string place_help = " [the piece lies within 100 m of the origin]";
const std::string step_help = " [solids are added or cut in order]";
const std::string part_help = " [a piece is one solid: its parts touch along faces]";
const std::string side_help = " [side 1 runs from point 1 to point 2]";

Solid slab() { return box("slab", {}, at(2000, 1000, 200)); }

Lines faults_of(std::vector<Solid> solids) { return faults(plan_of(std::move(solids))); }

Lines faults_of_outline(std::vector<std::pair<double, double>> outline,
                        std::vector<std::vector<std::pair<double, double>>> holes = {}) {
  Solid wall = prism("wall", {}, points(std::move(outline)), 3000.0 * mm);
  for (auto& hole : holes) wall.holes.push_back(points(std::move(hole)));
  return faults_of({wall});
}

}  // namespace

TEST_CASE("no solid") { CHECK(faults_of({}) == Lines{"1:1 the piece has no solid"}); }

TEST_CASE("a length out of reach of the kernel, or no number") {
  CHECK(faults_of({box("a", {}, at(2000, 0, 200))}) == Lines{"10:1 solid 'a': size is 0 mm" + size_help});
  CHECK(faults_of({box("a", {}, at(2000, -1000, 200))}) ==
        Lines{"10:1 solid 'a': size is -1000 mm" + size_help});
  CHECK(faults_of({box("a", {}, at(2000, not_a_number, 200))}) ==
        Lines{"10:1 solid 'a': size is not a number" + size_help});
  CHECK(faults_of({box("a", {}, at(2000, endless, 200))}).size() == 1);
  CHECK(faults_of({cylinder("a", {}, 0.05 * mm, 1.0 * m)}).size() == 1);
  CHECK(faults_of({cylinder("a", {}, 1.0 * m, 101.0 * m)}) ==
        Lines{"10:1 solid 'a': length is 101.000 m" + size_help});
  CHECK(faults_of({cylinder("a", {}, 1.0 * m, 100.0 * m)}).empty());
  CHECK(faults_of({box("a", at(0.0 * m, 0.0 * m, 101.0 * m), at(2000, 1000, 200))}) ==
        Lines{"10:1 solid 'a': a coordinate of at is 101.000 m" + place_help});
  CHECK(faults_of({box("a", at(0, not_a_number, 0), at(2000, 1000, 200))}) ==
        Lines{"10:1 solid 'a': a coordinate of at is not a number" + place_help});
  CHECK(faults_of({turned(slab(), Axis::z, not_a_number * deg)}) ==
        Lines{"10:1 solid 'slab': the angle of 'turned' is not a number"});
}

TEST_CASE("proportions that make no solid") {
  CHECK(faults_of({pipe("a", {}, 1.0 * m, 1.2 * m, 1.0 * m)}) ==
        Lines{"10:1 solid 'a': inside_diameter 1200 mm leaves no wall in diameter 1000 mm"});
  CHECK(faults_of({pipe("a", {}, 1.0 * m, 1.0 * m, 1.0 * m)}).size() == 1);
  CHECK(faults_of({cone("a", {}, 0.0 * m, 0.0 * m, 1.0 * m)}) ==
        Lines{"10:1 solid 'a': both diameters are zero"});
  CHECK(faults_of({wedge("a", {}, at(1000, 1000, 1000), {1.0 * m, 1.0 * m}, {200.0 * m, 0.0 * m})}) ==
        Lines{"10:1 solid 'a': top_at is 200.000 m" + place_help});
}

TEST_CASE("an outline that bounds no single area") {
  CHECK(faults_of_outline({{0, 0}, {1000, 0}}) ==
        Lines{"10:1 solid 'wall': the outline has 2 points [three at least]"});
  CHECK(faults_of_outline({{0, 0}, {1000, 0}, {1000, 1000}, {0, 1000}, {0, 0}}) ==
        Lines{"10:1 solid 'wall': points 5 and 1 of the outline are one point [each corner is written once; "
              "the last "
              "point joins the first]"});
  CHECK(faults_of_outline({{0, 0}, {1000, 1000}, {1000, 0}, {0, 1000}}) ==
        Lines{"10:1 solid 'wall': side 1 of the outline meets side 3 of the outline" + side_help});
  CHECK(faults_of_outline({{0, 0}, {1000, 0}, {500, 0}, {500, 800}}) ==
        Lines{"10:1 solid 'wall': side 1 of the outline meets side 2 of the outline" + side_help});
  CHECK(faults_of_outline({{0, 0}, {1000, 0}, {1000, 1000}, {500, 0}, {0, 1000}}) ==
        Lines{"10:1 solid 'wall': side 1 of the outline meets side 3 of the outline" + side_help});
  CHECK(faults_of_outline({{0, 0}, {1000, 0}, {2000, 0}}).size() == 1);
  CHECK(faults_of_outline({{0, 0}, {not_a_number, 0}, {1000, 1000}}) ==
        Lines{"10:1 solid 'wall': point 2 of the outline is too far away" + place_help});
  CHECK(faults_of_outline({{0, 0}, {1000, 0}, {1000, 1000}, {0, 1000}}).empty());
  CHECK(faults_of_outline({{0, 0}, {0, 1000}, {1000, 1000}, {1000, 0}}).empty());  // either sense
}

TEST_CASE("holes of an outline") {
  const std::vector<std::pair<double, double>> wall = {{0, 0}, {3000, 0}, {3000, 2000}, {0, 2000}};
  const auto square = [](double x, double y, double s) {
    return std::vector<std::pair<double, double>>{{x, y}, {x + s, y}, {x + s, y + s}, {x, y + s}};
  };
  CHECK(faults_of_outline(wall, {square(500, 500, 400), square(1500, 500, 400)}).empty());
  CHECK(faults_of_outline(wall, {square(4000, 500, 400)}) ==
        Lines{"10:1 solid 'wall': hole 1 lies outside the outline"});
  CHECK(faults_of_outline(wall, {square(2800, 500, 400)}) ==
        Lines{"10:1 solid 'wall': side 2 of the outline meets side 1 of hole 1" + side_help});
  CHECK(faults_of_outline(wall, {square(500, 500, 900), square(700, 700, 200)}) ==
        Lines{"10:1 solid 'wall': hole 2 lies inside hole 1"});
  CHECK(faults_of_outline(wall, {square(500, 500, 400), square(900, 900, 400)}).size() ==
        1);                                                           // corner to corner
  CHECK(faults_of_outline(wall, {square(0, 500, 400)}).size() == 1);  // flush with the outline
}

TEST_CASE("a step without effect") {
  CHECK(faults_of({slab(), cut(box("above", at(0, 0, 500), at(100, 100, 100)))}) ==
        Lines{"20:1 solid 'above': it cuts nothing away: it does not reach into the solids before it"});
  CHECK(faults_of({slab(), cut(box("touching", at(500, 200, 200), at(100, 100, 100)))}) ==
        Lines{"20:1 solid 'touching': it cuts nothing away: it does not reach into the solids before it"});
  CHECK(faults_of({slab(), cut(box("hole", at(500, 200, 0), at(300, 300, 200))),
                   cut(cylinder("again", at(650, 350, 0), 200.0 * mm, 200.0 * mm))}) ==
        Lines{"30:1 solid 'again': it cuts nothing away: it does not reach into the solids before it"});
  CHECK(faults_of({slab(), box("within", at(500, 200, 50), at(100, 100, 100))}) ==
        Lines{"20:1 solid 'within': it adds nothing: it lies wholly inside the solids before it"});
  CHECK(faults_of({slab(), box("flush", at(500, 200, 50), at(100, 100, 150))}) ==
        Lines{"20:1 solid 'flush': it adds nothing: it lies wholly inside the solids before it"});
  CHECK(faults_of({slab(), slab()}) ==
        Lines{"20:1 solid 'slab': it adds nothing: it lies wholly inside the solids before it"});
}

TEST_CASE("nothing to cut from, nothing left") {
  CHECK(faults_of({cut(slab()), slab()}) ==
        Lines{"10:1 solid 'slab': it is cut, but no solid stands before it" + step_help});
  CHECK(faults_of({slab(), cut(box("all", at(-10, -10, -10), at(3000, 3000, 3000)))}) ==
        Lines{"20:1 solid 'all': it cuts everything away"});
  CHECK(faults_of({slab(), cut(slab())}) == Lines{"20:1 solid 'slab': it cuts everything away"});
}

TEST_CASE("a piece in several parts") {
  CHECK(faults_of({slab(), box("loose", at(0, 0, 300), at(100, 100, 100))}) ==
        Lines{"20:1 solid 'loose': the piece falls into 2 parts here" + part_help});
  CHECK(faults_of({slab(), cut(box("saw", at(900, -10, -10), at(20, 2000, 400)))}) ==
        Lines{"20:1 solid 'saw': the piece falls into 2 parts here" + part_help});
  CHECK(faults_of({slab(), box("edge", at(2000, 0, 200), at(100, 1000, 100))}) ==
        Lines{"20:1 solid 'edge': the piece falls into 2 parts here" + part_help});
  CHECK(faults_of({slab(), box("one", at(0, 0, 300), at(100, 100, 100)),
                   box("two", at(500, 0, 300), at(100, 100, 100))}) ==
        Lines{"20:1 solid 'one': the piece falls into 3 parts here" + part_help,
              "30:1 solid 'two': the piece falls into 3 parts here" + part_help});
  // Apart on the way, one at the end.
  CHECK(faults_of({slab(), box("top", at(0, 0, 500), at(2000, 1000, 200)),
                   box("post", at(0, 0, 200), at(300, 300, 300))})
            .empty());
}

TEST_CASE("all faults come back together, each at its solid") {
  CHECK(faults_of({box("a", {}, at(0, 1, 1)), slab(), pipe("c", {}, 1.0 * m, 2.0 * m, 1.0 * m)}) ==
        Lines{"10:1 solid 'a': size is 0 mm" + size_help,
              "30:1 solid 'c': inside_diameter 2000 mm leaves no wall in diameter 1000 mm"});
  CHECK(faults_of({slab(), cut(box("off", at(0, 0, 500), at(1, 1, 1))),
                   box("in", at(10, 10, 10), at(10, 10, 10))}) ==
        Lines{"20:1 solid 'off': it cuts nothing away: it does not reach into the solids before it",
              "30:1 solid 'in': it adds nothing: it lies wholly inside the solids before it"});
}
