// What the form grips: faces by solid, by direction, and all but those.

#include <catch2/catch.hpp>

#include <cmath>

#include "unit/piece/pieces.hpp"

using namespace firstpick;
using namespace firstpick::pieces;

namespace {

constexpr double pi = 3.14159265358979323846;

std::vector<piece::ContactArea> contacts_of(std::vector<Solid> solids, std::vector<plan::Contact> contacts) {
  return body_of(plan_of(std::move(solids), std::move(contacts))).contacts;
}

}  // namespace

TEST_CASE("the barrel of a box culvert is four faces") {
  const auto body = body_of(plan_of(box_culvert(), {contact({"barrel"})}));
  REQUIRE(body.contacts.size() == 1);
  const auto& barrel = body.contacts[0];
  REQUIRE(barrel.faces.size() == 4);
  for (const std::size_t face : barrel.faces) {
    CHECK(body.faces.at(face).made_by == std::vector<std::string>{"barrel"});
    CHECK(body.faces.at(face).planar);
  }
  CHECK(in(ft2, barrel.area) == Approx(2.0 * (8.0 * 6.0 + 6.0 * 6.0)).epsilon(1e-9));
  CHECK(in(ft2, barrel.on_pull) == Approx(8.0 * 6.0).epsilon(1e-9));  // the soffit
  CHECK(in(inch, barrel.centroid.x) == Approx(56.0).epsilon(1e-9));
  CHECK(in(inch, barrel.centroid.y) == Approx(36.0).epsilon(1e-9));
  CHECK(in(inch, barrel.centroid.z) == Approx(44.0).epsilon(1e-9));
}

TEST_CASE("a direction leaves what another contact names by its solid") {
  const auto alone = contacts_of(box_culvert(), {contact({"-z"})});
  CHECK(in(ft2, alone[0].area) == Approx(112.0 / 12.0 * 6.0 + 48.0).epsilon(1e-9));  // bottom and soffit
  const auto beside = contacts_of(box_culvert(), {contact({"-z"}), contact({"barrel"})});
  CHECK(in(ft2, beside[0].area) == Approx(112.0 / 12.0 * 6.0).epsilon(1e-9));
  CHECK(in(ft2, beside[0].on_pull) == Approx(112.0 / 12.0 * 6.0).epsilon(1e-9));
  CHECK(in(m, beside[0].centroid.z) == Approx(0.0).margin(1e-9));
}

TEST_CASE("all but the top keeps the floor of an opening, which is left out by its name") {
  const std::vector<Solid> vault = {box("outer", {}, at(1200, 1200, 1000)),
                                    cut(box("inside", at(100, 100, 150), at(1000, 1000, 850)))};
  const double sides = 4.0 * 1.2 * 1.0, bottom = 1.44, lining = 4.0 * 1.0 * 0.85 + 1.0;
  CHECK(in(m2, contacts_of(vault, {contact({"+z"}, true)})[0].area) ==
        Approx(sides + bottom + lining).epsilon(1e-9));
  CHECK(in(m2, contacts_of(vault, {contact({"+z", "inside"}, true)})[0].area) ==
        Approx(sides + bottom).epsilon(1e-9));
  CHECK(in(m2, contacts_of(vault, {contact({"-z"}, true)})[0].area) ==
        Approx(sides + 0.44 + lining).epsilon(1e-9));
}

TEST_CASE("contacts in the order of the plan, each with its own faces") {
  const auto body =
      body_of(plan_of(manhole_base(), {contact({"inlet"}), contact({"bore"}), contact({"outlet"}),
                                       contact({"+x", "-x", "+y", "-y", "-z"})}));
  REQUIRE(body.contacts.size() == 4);
  CHECK(body.contacts[0].faces.size() == 1);
  CHECK(body.contacts[1].faces.size() == 2);  // wall and floor of the bore
  CHECK(body.contacts[3].faces.size() == 2);  // round side and bottom
  CHECK(in(m2, body.contacts[3].on_pull) == Approx(pi * 0.7366 * 0.7366).epsilon(1e-9));
  CHECK(in(m2, body.contacts[0].area) == Approx(in(m2, body.contacts[2].area)).epsilon(1e-7));
  Area all{}, gripped{};
  for (const piece::Face& face : body.faces) all += face.area;
  for (const piece::ContactArea& each : body.contacts) gripped += each.area;
  const double rim = pi * (0.7366 * 0.7366 - 0.6096 * 0.6096);
  CHECK(in(m2, all - gripped) == Approx(rim).epsilon(1e-9));
}

TEST_CASE("a chamfer belongs to the direction its normal is nearest to, halfway, to z before x before y") {
  const auto area = [](std::vector<std::pair<double, double>> section, const char* direction) {
    return in(m2, contacts_of({prism("kerb", {}, points(std::move(section)), 1000.0 * mm, Axis::y)},
                              {contact({direction})})[0]
                      .area);
  };
  // Axis y: the outline is z, x. A chamfer under the edge at +x: 100 along x and `drop` along z.
  const auto steep =
      std::vector<std::pair<double, double>>{{0, 0}, {0, 400}, {200, 500}, {600, 500}, {600, 0}};
  const auto flat = std::vector<std::pair<double, double>>{{0, 0}, {0, 400}, {50, 500}, {600, 500}, {600, 0}};
  const auto halfway =
      std::vector<std::pair<double, double>>{{0, 0}, {0, 400}, {100, 500}, {600, 500}, {600, 0}};
  CHECK(area(steep, "+x") == Approx(0.4 + std::hypot(0.1, 0.2)).epsilon(1e-9));
  CHECK(area(steep, "-z") == Approx(0.4).epsilon(1e-9));
  CHECK(area(flat, "-z") == Approx(0.4 + std::hypot(0.1, 0.05)).epsilon(1e-9));
  CHECK(area(halfway, "-z") == Approx(0.4 + std::hypot(0.1, 0.1)).epsilon(1e-9));
  CHECK(area(halfway, "+x") == Approx(0.5).epsilon(1e-9));
}

TEST_CASE("on the pull: an inclined face by its plan area") {
  const auto contacts = contacts_of(
      {wedge("hopper", {}, at(1000, 1000, 800), {2000.0 * mm, 1600.0 * mm}, {-500.0 * mm, -300.0 * mm})},
      {contact({"hopper"})});
  // It widens upward: the four sides and the bottom face down, over the plan area of the top.
  CHECK(in(m2, contacts[0].on_pull) == Approx(2.0 * 1.6).epsilon(1e-9));
}

TEST_CASE("on the pull: the lower half of a lying pipe outside, the upper half of its bore") {
  const auto contacts = contacts_of({cylinder("outer", {}, 900.0 * mm, 2000.0 * mm, Axis::x),
                                     cut(cylinder("bore", {}, 600.0 * mm, 2000.0 * mm, Axis::x))},
                                    {contact({"bore"}), contact({"+y", "-y", "+z", "-z"})});
  CHECK(in(m2, contacts[0].area) == Approx(pi * 0.6 * 2.0).epsilon(1e-9));
  CHECK(in(m2, contacts[0].on_pull) == Approx(0.6 * 2.0).epsilon(1e-7));
  CHECK(in(m2, contacts[1].area) == Approx(pi * 0.9 * 2.0).epsilon(1e-9));
  CHECK(in(m2, contacts[1].on_pull) == Approx(0.9 * 2.0).epsilon(1e-7));
}

TEST_CASE("on the pull: a core with draft, and a cone that stands on its point") {
  const auto core =
      contacts_of({box("outer", {}, at(2000, 2000, 1000)),
                   cut(cone("core", at(1000, 1000, 200), 1000.0 * mm, 1200.0 * mm, 800.0 * mm))},
                  {contact({"core"})});
  CHECK(in(m2, core[0].on_pull) == Approx(0.0).margin(1e-9));  // opens upward: nothing of it faces down
  const auto point =
      contacts_of({cone("funnel", {}, 0.0 * mm, 1200.0 * mm, 800.0 * mm)}, {contact({"funnel"})});
  CHECK(in(m2, point[0].on_pull) == Approx(pi * 0.36).epsilon(1e-7));
  const auto turned_cylinder = contacts_of(
      {turned(cylinder("post", {}, 500.0 * mm, 2000.0 * mm), Axis::x, 30.0 * deg)}, {contact({"post"})});
  // Ends: pi r2 cos(30); half of the side: 2 r L sin(30).
  CHECK(in(m2, turned_cylinder[0].on_pull) ==
        Approx(pi * 0.0625 * std::cos(pi / 6.0) + 0.5 * 2.0 * 0.5).epsilon(1e-7));
}

TEST_CASE("a solid's name stands for its own part of a joined face") {
  const auto body =
      body_of(plan_of({box("base", {}, at(1000, 1000, 200)), box("wall", at(0, 0, 200), at(1000, 150, 800))},
                      {contact({"base"}), contact({"wall"})}));
  CHECK(in(m2, body.contacts[0].area) == Approx(2.0 - 0.15 + 4.0 * 0.2).epsilon(1e-9));
  CHECK(in(m2, body.contacts[1].area) == Approx(2.0 * 0.8 + 0.15 + 2.0 * 0.15 * 0.8).epsilon(1e-9));
  std::size_t shared = 0;
  for (const piece::Face& face : body.faces) shared += face.made_by.size() == 2 ? 1 : 0;
  CHECK(shared == 3);  // the back and the two ends run through
}

TEST_CASE("where two surfaces fall together the earlier solid made the face") {
  const auto body = body_of(
      plan_of({box("first", {}, at(1000, 1000, 200)), box("second", at(500, 0, 0), at(1000, 1000, 200))},
              {contact({"first"}), contact({"second"})}));
  CHECK(in(m2, body.contacts[0].area) == Approx(2.0 + 0.2 + 2.0 * 0.2).epsilon(1e-9));
  CHECK(in(m2, body.contacts[1].area) == Approx(1.0 + 0.2 + 2.0 * 0.1).epsilon(1e-9));
}

TEST_CASE("a cut that only touches a face does not take it over") {
  const auto body = body_of(
      plan_of({box("slab", {}, at(2000, 1000, 200)), box("upstand", at(0, 0, 200), at(300, 1000, 300)),
               cut(box("recess", at(100, 200, 200), at(1500, 600, 150)))},
              {contact({"recess"})}));
  // Cuts into the upstand only: its bottom lies flush on the slab and is the slab's face where it was free
  // before.
  CHECK(in(m2, body.contacts[0].area) ==
        Approx(0.2 * 0.6 * 2.0 + 0.6 * 0.15 + 2.0 * 0.2 * 0.15).epsilon(1e-9));
}

TEST_CASE("no form, no contacts") { CHECK(body_of(plan_of(box_culvert())).contacts.empty()); }

TEST_CASE("a name or direction that chooses nothing") {
  CHECK(faults(plan_of({cylinder("tank", {}, 1.0 * m, 1.0 * m)}, {contact({"-z", "+x"})})) ==
        std::vector<std::string>{
            "100:2 no face of the piece is chosen by '+x' [a curved face is chosen by the name of "
            "its solid, or when all directions it faces are named together]"});
  CHECK(faults(plan_of({box("slab", {}, at(1000, 1000, 200)), box("over", at(0, 0, 100), at(1000, 1000, 200)),
                        cut(box("off", at(0, 0, 200), at(1000, 1000, 100)))},
                       {contact({"slab"}), contact({"over"})})) ==
        std::vector<std::string>{
            "200:1 no face of the piece is made by solid 'over' [a face where two solids meet flush "
            "belongs to the earlier one]"});
}

TEST_CASE("a contact that chooses no face") {
  CHECK(faults(plan_of({box("slab", {}, at(1000, 1000, 200))}, {contact({"slab"}, true)})) ==
        std::vector<std::string>{"100:1 this contact chooses no face of the piece"});
  CHECK(faults(plan_of({box("slab", {}, at(1000, 1000, 200))}, {contact({})})) ==
        std::vector<std::string>{"100:1 this contact chooses no face of the piece"});
}

TEST_CASE("a face in two contacts") {
  CHECK(faults(plan_of({box("slab", {}, at(1000, 1000, 200))},
                       {contact({"+x", "-x"}), contact({"-z", "-x"})})) ==
        std::vector<std::string>{
            "200:1 a face made by solid 'slab' is in this contact and in the one at line 100 [its "
            "area would count twice: name each face in one contact]"});
}
