// Rolling under a side pull: the closed form, its limits, and the worst line of picks.

#include <catch2/catch.hpp>

#include <cmath>

#include "demands/side_pull.hpp"

using namespace firstpick;
using namespace firstpick::demands;

namespace {

Moment moment(double newton_metres) { return Moment::from_value(newton_metres); }

piece::Body disc_like_box() {
  piece::Body body;
  body.lowest = {-1.0 * m, -1.0 * m, 0.0 * m};
  body.highest = {1.0 * m, 1.0 * m, 0.2 * m};
  body.faces.push_back({.planar = false});
  return body;
}

}  // namespace

TEST_CASE("in line: asin(M / (W z))") {
  for (const double pull : {1.0, 50.0, 99.9})
    CHECK(roll_under(moment(pull), 1000.0 * newton, 0.0 * m, 0.1 * m).value() == Approx(std::asin(pull / 100.0)));
}

TEST_CASE("a leg holds the piece up to W d, and past W R nothing does") {
  const Force w = 1000.0 * newton;
  CHECK(roll_under(moment(300.0), w, 0.3 * m, 0.4 * m) == Angle{});
  CHECK(roll_under(moment(301.0), w, 0.3 * m, 0.4 * m) > Angle{});
  const Angle at_most = roll_under(moment(500.0), w, 0.3 * m, 0.4 * m);
  CHECK(at_most.value() == Approx(M_PI / 2.0 - std::atan2(0.3, 0.4)));
  CHECK(in(deg, roll_under(moment(500.1), w, 0.3 * m, 0.4 * m)) == Approx(180.0));
  const Angle some = roll_under(moment(400.0), w, 0.3 * m, 0.4 * m);
  CHECK(1000.0 * (0.3 * std::cos(some.value()) + 0.4 * std::sin(some.value())) == Approx(400.0));
}

TEST_CASE("not below its picks, without weight, or with what is no number, it rolls over") {
  const Force w = 1000.0 * newton;
  CHECK(in(deg, roll_under(moment(1.0), w, 0.0 * m, 0.0 * m)) == Approx(180.0));
  CHECK(in(deg, roll_under(moment(0.0), w, 0.0 * m, 0.0 * m)) == Approx(180.0));
  CHECK(in(deg, roll_under(moment(400.0), w, 0.3 * m, -0.1 * m)) == Approx(180.0));
  CHECK(roll_under(moment(100.0), w, 0.3 * m, -0.1 * m) == Angle{});
  CHECK(in(deg, roll_under(moment(std::nan("")), w, 0.3 * m, 0.1 * m)) == Approx(180.0));
  CHECK(in(deg, roll_under(moment(1.0), std::nan("") * newton, 0.3 * m, 0.1 * m)) == Approx(180.0));
  CHECK(in(deg, roll_under(moment(1.0), w, std::nan("") * m, 0.1 * m)) == Approx(180.0));
  CHECK(in(deg, roll_under(moment(1.0), w, 0.3 * m, std::nan("") * m)) == Approx(180.0));
  CHECK(in(deg, roll_under(moment(1.0), w, 0.3 * m, double{INFINITY} * m)) == Approx(180.0));
}

TEST_CASE("two picks in line roll about their line, a third beside it holds") {
  const piece::Body body = disc_like_box();
  const Position centre{0.0 * m, 0.0 * m, 0.1 * m};
  const Direction up{0.0, 0.0, 1.0};
  const Position a{-0.5 * m, 0.0 * m, 0.2 * m}, b{0.5 * m, 0.0 * m, 0.2 * m}, c{0.0 * m, 0.6 * m, 0.2 * m},
      d{0.0 * m, -0.6 * m, 0.2 * m};
  const auto two = worst_roll({a, b}, centre, 1000.0 * newton, 50.0 * newton, body, up);
  REQUIRE(std::holds_alternative<Roll>(two));
  CHECK(std::get<Roll>(two).angle.value() == Approx(std::asin(0.5)));
  const auto four = worst_roll({a, b, c, d}, centre, 1000.0 * newton, 50.0 * newton, body, up);
  CHECK(std::get<Roll>(four).angle == Angle{});
  const auto one = worst_roll({{0.0 * m, 0.0 * m, 0.2 * m}}, centre, 1000.0 * newton, 50.0 * newton, body, up);
  CHECK(std::get<Roll>(one).angle.value() == Approx(std::asin(0.5)));
  CHECK_FALSE(is_assessed(worst_roll({}, centre, 1000.0 * newton, 50.0 * newton, body, up)));
}

TEST_CASE("a heavier piece rolls less, a harder pull more") {
  double before = 0.0;
  for (const double weight : {4000.0, 2000.0, 1000.0, 600.0}) {
    const double phi = roll_under(moment(55.0), weight * newton, 0.01 * m, 0.1 * m).value();
    CHECK(phi > before);
    before = phi;
  }
}

TEST_CASE(
    "the pull has the longest arm of the piece about the line of its picks, and inside it what a leg holds") {
  piece::Body body = disc_like_box();  // from -1.0 to 0.4 m across
  body.highest.y = 0.4 * m;
  const Position centre{0.0 * m, 0.0 * m, 0.1 * m};
  const auto rolls = [&](const std::vector<Position>& picks, const Direction& up) {
    const auto found = worst_roll(picks, centre, 1000.0 * newton, 50.0 * newton, body, up);
    REQUIRE(std::holds_alternative<Roll>(found));
    return std::get<Roll>(found);
  };
  const Direction up{0.0, 0.0, 1.0};
  // A line along x at y = 0.3 m: 1.3 m to the far side, 0.1 m over the centre of gravity.
  const Roll along_x = rolls({{-0.5 * m, 0.3 * m, 0.2 * m}, {0.5 * m, 0.3 * m, 0.2 * m}}, up);
  CHECK(along_x.pull.value() == Approx(50.0 * 1.3));
  CHECK(along_x.angle.value() == Approx(std::asin(0.65)));
  // Along y at x = -0.3 m, where the piece reaches from -1.0 to 1.0 m.
  const Roll along_y = rolls({{-0.3 * m, -0.5 * m, 0.2 * m}, {-0.3 * m, 0.5 * m, 0.2 * m}}, up);
  CHECK(along_y.pull.value() == Approx(50.0 * 1.3));
  // Upright, its side up: heights along x. From the picks, 1.0 m up, 2.0 m down to its lowest corner.
  const Roll on_end = rolls({{1.0 * m, -0.1 * m, 0.1 * m}, {1.0 * m, 0.1 * m, 0.1 * m}}, {1.0, 0.0, 0.0});
  CHECK(on_end.pull.value() == Approx(50.0 * 2.0));
  CHECK(in(m, on_end.depth) == Approx(1.0));
  CHECK(on_end.angle.value() == Approx(std::asin(0.1)));
}

TEST_CASE("a triangle of picks holds as far as its nearest side is from the centre of gravity") {
  piece::Body body = disc_like_box();
  const Position centre{0.0 * m, 0.0 * m, 0.1 * m};
  // Its lowest side 0.05 m beside the centre of gravity, all picks 0.1 m over it.
  const auto found =
      worst_roll({{-0.5 * m, -0.05 * m, 0.2 * m}, {0.5 * m, -0.05 * m, 0.2 * m}, {0.0 * m, 0.9 * m, 0.2 * m}},
                 centre, 1000.0 * newton, 80.0 * newton, body, {0.0, 0.0, 1.0});
  REQUIRE(std::holds_alternative<Roll>(found));
  const Roll roll = std::get<Roll>(found);
  CHECK(in(m, roll.inside) == Approx(0.05));
  CHECK(roll.pull.value() == Approx(80.0 * 1.05));
  CHECK(roll.angle.value() ==
        Approx(std::asin(84.0 / (1000.0 * std::hypot(0.05, 0.1))) - std::atan2(0.05, 0.1)));
  for (const double weight : {0.0, -1.0, std::nan(""), double{INFINITY}}) {
    const auto none = worst_roll({{0.0 * m, 0.0 * m, 0.2 * m}}, centre, weight * newton, 50.0 * newton, body,
                                 {0.0, 0.0, 1.0});
    REQUIRE_FALSE(is_assessed(none));
    CHECK(std::get<NotAssessed>(none).why == "the piece has no picks or no weight");
  }
}

TEST_CASE("on two picks near each other a long piece pitches about either, more than it rolls about their line") {
  piece::Body body = disc_like_box();  // 2 m long, 0.4 m wide
  body.lowest.y = -0.2 * m, body.highest.y = 0.2 * m;
  const auto found = worst_roll({{-0.02 * m, 0.0 * m, 0.2 * m}, {0.02 * m, 0.0 * m, 0.2 * m}}, {0.0 * m, 0.0 * m, 0.1 * m},
                                1000.0 * newton, 50.0 * newton, body, {0.0, 0.0, 1.0});
  REQUIRE(std::holds_alternative<Roll>(found));
  const Roll pitch = std::get<Roll>(found);
  CHECK(pitch.pull.value() == Approx(50.0 * 1.02));  // to the far end
  CHECK(in(m, pitch.inside) == Approx(0.02));
  CHECK(pitch.angle.value() == Approx(std::asin(51.0 / (1000.0 * std::hypot(0.02, 0.1))) - std::atan2(0.02, 0.1)));
}

TEST_CASE("a line of picks that climbs holds as deep as it is where it passes the centre of gravity") {
  const piece::Body body = disc_like_box();
  // A quarter of the way from the lower pick, 0.1 m over the centre of gravity, to the upper, 0.3 m over it.
  const auto found = worst_roll({{-0.3 * m, -0.4 * m, 0.2 * m}, {0.9 * m, 1.2 * m, 0.4 * m}}, {0.0 * m, 0.0 * m, 0.1 * m},
                                1000.0 * newton, 50.0 * newton, body, {0.0, 0.0, 1.0});
  REQUIRE(std::holds_alternative<Roll>(found));
  const Roll roll = std::get<Roll>(found);
  CHECK(in(m, roll.depth) == Approx(0.15));
  CHECK(roll.pull.value() == Approx(50.0 * 1.4));  // of the corners (-1, 1) and (1, -1) from the line
  CHECK(roll.angle.value() == Approx(std::asin(70.0 / 150.0)));
}
