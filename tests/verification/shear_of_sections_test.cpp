// Largest shear stress of a T section: Gere, Mechanics of Materials, 6th edition, example 5-15, from memory: flange 4 x 1 in, web
// 1 in, 8 in deep, V = 10,000 lb. Printed: largest shear stress 1760 psi. Tolerance: half a unit of the last digit that counts,
// 5 psi.
//
// Outside  piece-shear

#include <catch2/catch.hpp>

#include "piece/section.hpp"
#include "support/assessed.hpp"

using namespace firstpick;
using namespace firstpick::tests;

TEST_CASE("T section 4 x 8 in, web and flange 1 in: largest shear stress") {
  plan::Plan plan;
  plan::Solid web, flange;
  web.name = "web", flange.name = "flange";
  web.at = {0.0 * m, 1.5 * inch, 0.0 * m}, web.size = {100.0 * inch, 1.0 * inch, 7.0 * inch};
  flange.at = {0.0 * m, 0.0 * m, 7.0 * inch}, flange.size = {100.0 * inch, 4.0 * inch, 1.0 * inch};
  plan.piece.solids = {web, flange};
  const auto solid = assessed(piece::SolidToCut::of(plan));
  const piece::Section section = assessed(piece::section_at(solid, plan::Axis::x, 50.0 * inch));
  CHECK(in(psi, Stress{10000.0 * lbf / section.shear_area}) == Approx(1760.0).margin(5.0));
}
