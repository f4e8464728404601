#include "resistances/declared_load.hpp"

#include <cmath>
#include <limits>

#include "support/assessed.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

// In the top face, u along y of the piece and v against x: the plane of the insert is told by the axes of the piece.
piece::InsertSite top_site() {
  piece::InsertSite site;
  site.insert = "R1";
  site.planar = true;
  site.normal = {0.0, 0.0, 1.0};
  site.u = {0.0, 1.0, 0.0};
  site.v = {-1.0, 0.0, 0.0};
  return site;
}

plan::Insert insert_with(std::vector<plan::RatedRange> ranges, std::optional<plan::Axis> plane = {},
                         std::optional<Angle> within = {}) {
  plan::Insert insert;
  insert.id = "R1";
  insert.kind = "rated";
  insert.rating.emplace();
  insert.rating->load = 40.0 * kN;
  insert.rating->plane = plane;
  insert.rating->in_plane_within = within;
  insert.rating->ranges = std::move(ranges);
  return insert;
}

plan::RatedRange range(double from_deg, double to_deg, double load_kN, bool across = false) {
  plan::RatedRange one;
  if (from_deg > 0.0) one.from = from_deg * deg;
  one.to = to_deg * deg;
  one.load = load_kN * kN;
  one.across = across;
  return one;
}

// A pull of 10 kN, so far from the axis of the insert, towards `from_x` anticlockwise from x in the top face.
resistances::Pull pull(double from_axis_deg, double from_x_deg = 0.0) {
  const double a = in(radian, from_axis_deg * deg), b = in(radian, from_x_deg * deg);
  const Force whole = 10.0 * kN;
  return {whole * std::cos(a), whole * std::sin(a) * std::sin(b), -(whole * std::sin(a) * std::cos(b))};
}

double load_kN(const plan::Insert& insert, const resistances::Pull& p) {
  return in(kN, assessed(resistances::declared_load(insert, top_site(), p)));
}
std::string why(const plan::Insert& insert, const resistances::Pull& p) {
  return why_not(resistances::declared_load(insert, top_site(), p));
}

}  // namespace

TEST_CASE("a rating without directions holds to every side") {
  CHECK(load_kN(insert_with({}), pull(50.0, 70.0)) == 40.0);
}

TEST_CASE("ranges: the load of the range, at a common limit the lesser, outside them nothing") {
  const auto insert = insert_with({range(0, 30, 40), range(30, 60, 32)});
  CHECK(load_kN(insert, pull(0.0)) == 40.0);
  CHECK(load_kN(insert, pull(29.99)) == 40.0);
  CHECK(load_kN(insert, pull(30.0)) == 32.0);
  CHECK(load_kN(insert, pull(30.01)) == 32.0);
  CHECK(load_kN(insert, pull(60.0)) == 32.0);
  CHECK(why(insert, pull(60.01)).starts_with("insert R1 is pulled 60.1 deg from its axis, and no range"));
  CHECK(why(insert_with({range(10, 30, 40)}), pull(5.0)).find("no range") != std::string::npos);
}

TEST_CASE("a range never counts with more than the load of the rating") {
  CHECK(load_kN(insert_with({range(0, 60, 55)}), pull(20.0)) == 40.0);
}

TEST_CASE("a pull across the plane needs a load declared for it") {
  const auto along_x = insert_with({}, plan::Axis::x, 5.0 * deg);
  CHECK(load_kN(along_x, pull(40.0, 0.0)) == 40.0);
  CHECK(load_kN(along_x, pull(40.0, 180.0)) == 40.0);
  CHECK(load_kN(along_x, pull(4.9, 90.0)) == 40.0);
  CHECK(why(along_x, pull(5.1, 90.0)).find("across its plane") != std::string::npos);
  CHECK(why(along_x, pull(40.0, 90.0)).find("declares no load for that") != std::string::npos);
  // 40 deg from the axis towards 8 deg from x: out of the plane by asin(sin 40 x sin 8) = 5.13 deg
  CHECK(why(along_x, pull(40.0, 8.0)).find("5.2 deg across") != std::string::npos);
  CHECK(load_kN(along_x, pull(40.0, 7.5)) == 40.0);
  const auto along_y = insert_with({}, plan::Axis::y, 5.0 * deg);
  CHECK(load_kN(along_y, pull(40.0, 90.0)) == 40.0);
  CHECK(why(along_y, pull(40.0, 0.0)).find("across its plane") != std::string::npos);
}

TEST_CASE("across the plane the load of its own range counts, and no other") {
  const auto insert = insert_with({range(0, 60, 36), range(0, 45, 15, true)}, plan::Axis::x, 5.0 * deg);
  CHECK(load_kN(insert, pull(40.0, 0.0)) == 36.0);
  CHECK(load_kN(insert, pull(40.0, 90.0)) == 15.0);
  CHECK(why(insert, pull(50.0, 90.0)).find("across its plane") != std::string::npos);
  CHECK(load_kN(insert, pull(50.0, 0.0)) == 36.0);
}

TEST_CASE("a plane without its tolerance, or out of the face, or a pull that is no number: nothing") {
  CHECK(why(insert_with({}, plan::Axis::x), pull(10.0)).find("how far a pull may leave its plane") != std::string::npos);
  CHECK(why(insert_with({}, plan::Axis::z, 5.0 * deg), pull(10.0)).find("does not lie along its face") != std::string::npos);
  resistances::Pull broken = pull(10.0);
  broken.along_u = std::numeric_limits<double>::quiet_NaN() * kN;
  CHECK(why(insert_with({range(0, 60, 36)}), broken) == "the pull on the insert is not a usable number");
}

TEST_CASE("of ranges that hold one pull the least load counts, in any order, no pull is none") {
  CHECK(load_kN(insert_with({range(0, 60, 20), range(0, 60, 32)}), pull(20.0)) == 20.0);
  CHECK(load_kN(insert_with({range(0, 60, 32), range(0, 60, 20)}), pull(20.0)) == 20.0);
  CHECK(why(insert_with({range(0, 60, 36)}), resistances::Pull{}) == "the pull on the insert is not a usable number");
}
