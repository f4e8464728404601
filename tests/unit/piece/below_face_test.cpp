// What of the body about an insert is not concrete, under a flat face: by integrals over slices, and none where sides go
// straight down.

#include <catch2/catch.hpp>

#include <cmath>

#include "unit/piece/pieces.hpp"

using namespace firstpick;
using namespace firstpick::pieces;

namespace {

double share_at(std::vector<Solid> solids, Position point, Length h_ef) {
  plan::Insert headed = insert("A1", point);
  headed.kind = "headed";
  headed.embedment = h_ef;
  return body_of(plan_of(std::move(solids), {}, {headed})).sites.at(0).not_concrete.value().value();
}

double rated_share_at(std::vector<Solid> solids, Position point, Length minimum_edge) {
  plan::Insert rated = insert("A1", point);
  rated.kind = "rated";
  rated.rating.emplace();
  rated.rating->minimum_edge = minimum_edge;
  return body_of(plan_of(std::move(solids), {}, {rated})).sites.at(0).not_concrete.value().value();
}

// Of a circle, what lies farther than `a` to either side of its middle.
double beyond_m2(double r_m, double a_m) {
  return a_m >= r_m ? 0.0 : 2.0 * (r_m * r_m * std::acos(a_m / r_m) - a_m * std::sqrt(r_m * r_m - a_m * a_m));
}

std::vector<Solid> tee() {  // stem 120 mm wide, flange 60 mm thick
  return {box("stem", at(0, -60, 0), at(3000, 120, 600)),
          box("flange", at(0, -500, 540), at(3000, 1000, 60))};
}

}  // namespace

TEST_CASE("below a flat face: sides that go straight down leave nothing out, however near") {
  const auto block = [] { return std::vector<Solid>{box("block", at(0, 0, 0), at(1000, 300, 600))}; };
  CHECK(share_at(block(), at(500, 150, 600), 180.0 * mm) == 0.0);
  CHECK(share_at(block(), at(40, 40, 600), 180.0 * mm) == 0.0);
  CHECK(rated_share_at(block(), at(500, 50, 600), 50.0 * mm) == 0.0);
  // The rim of a ring, an opening in the face: round and flat sides straight down.
  CHECK(share_at({pipe("ring", at(0, 0, 0), 2.0 * m, 1.7 * m, 0.6 * m)}, at(925, 0, 600), 150.0 * mm) == 0.0);
  CHECK(share_at({box("slab", at(0, 0, 0), at(2000, 2000, 300)),
                  cut(box("hole", at(600, 600, 0), at(400, 400, 300)))},
                 at(500, 800, 300), 150.0 * mm) == 0.0);
}

TEST_CASE("below a flat face: of a cone over a stem, what lies beyond its sides") {
  // Slices of the cone, radius 1.5 (h - z), below the flange.
  const double h_m = 0.18;
  double beyond_m3 = 0.0;
  constexpr int slices = 20000;
  for (int i = 0; i < slices; ++i) {
    const double z_m = 0.06 + (h_m - 0.06) * (i + 0.5) / slices;
    beyond_m3 += beyond_m2(1.5 * (h_m - z_m), 0.06) * (h_m - 0.06) / slices;
  }
  const double cone_m3 = M_PI * 0.27 * 0.27 * h_m / 3.0;
  CHECK(share_at(tee(), at(1500, 0, 600), h_m * m) == Approx(beyond_m3 / cone_m3).epsilon(1e-4));
  CHECK(beyond_m3 / cone_m3 > 0.1);
  // A rated one that asks for 200 mm: a cylinder as deep, the stem alone below 60 mm.
  const double missing = beyond_m2(0.2, 0.06) * 0.14 / (M_PI * 0.04 * 0.2);
  CHECK(rated_share_at(tee(), at(1500, 0, 600), 200.0 * mm) == Approx(missing).epsilon(1e-6));
}

TEST_CASE("below a flat face: voids beside the shank are seen, those out of reach are not") {
  const auto with_void = [](double y_mm, double z_mm) {
    return std::vector<Solid>{box("block", at(0, 0, 0), at(1100, 1000, 600)),
                              cut(cylinder("void", at(0, y_mm, z_mm), 200.0 * mm, 1100.0 * mm, Axis::x))};
  };
  CHECK(share_at(with_void(620, 480), at(550, 500, 600), 180.0 * mm) > 0.05);
  CHECK(share_at(with_void(620, 200), at(550, 500, 600), 180.0 * mm) == 0.0);
  CHECK(share_at(with_void(890, 480), at(550, 500, 600), 180.0 * mm) == 0.0);
}

TEST_CASE("below a flat face: the draft of a form is within what is let pass, a taper is not") {
  const auto drafted = [](double bottom_mm) {
    return std::vector<Solid>{cone("block", at(0, 0, 0), bottom_mm * mm, 1000.0 * mm, 500.0 * mm)};
  };
  const double draft = share_at(drafted(980.0), at(400, 0, 500), 150.0 * mm);  // 1 in 50
  CHECK(draft > 0.0);
  CHECK(draft <= piece::whole_below.value());
  CHECK(share_at(drafted(600.0), at(400, 0, 500), 150.0 * mm) > 2.0 * piece::whole_below.value());
  CHECK(share_at(drafted(1100.0), at(400, 0, 500), 150.0 * mm) == Approx(0.0).margin(1e-6));  // wider below
}
