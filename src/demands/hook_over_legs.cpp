#include "demands/hook_over_legs.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "demands/leg_force.hpp"

namespace firstpick::demands {

namespace {

constexpr std::size_t most_legs = 16;
constexpr double meets_within = 1e-9;      // of a length; of the pull
constexpr double carries = 1e-12;      // a smaller share is that of a set with fewer legs

using Point = Vector<double>;          // metres

Point metres(const Position& p) { return {in(m, p.x), in(m, p.y), in(m, p.z)}; }
Position position(const Point& p) { return {p.x * m, p.y * m, p.z * m}; }

struct Ball {
  Point centre;
  double radius;
};

// The highest points of the meeting of one, two or three balls' surfaces.
std::vector<Point> highest(std::span<const Ball> balls, const Point& up) {
  if (balls.size() == 1) return {balls[0].centre + balls[0].radius * up};
  const Point apart = balls[1].centre - balls[0].centre;
  const double d = norm(apart);
  if (!(d > 0.0)) return {};
  const Point e = (1.0 / d) * apart;
  const double along = (d * d + balls[0].radius * balls[0].radius - balls[1].radius * balls[1].radius) / (2.0 * d);
  const double square = balls[0].radius * balls[0].radius - along * along;
  if (!(square > 0.0)) return {};
  const Point centre = balls[0].centre + along * e;
  if (balls.size() == 2) {
    const Point across = up - dot(up, e) * e;
    const double length = norm(across);
    if (!(length > meets_within)) return {};
    return {centre + (std::sqrt(square) / length) * across};
  }
  const Point to_third = balls[2].centre - centre;
  const Point side = to_third - dot(to_third, e) * e;
  const double s = norm(side);
  if (!(s > meets_within * d)) return {};
  const Point f = (1.0 / s) * side;
  const double y = (square + dot(to_third, to_third) - balls[2].radius * balls[2].radius) / (2.0 * s);
  const double rest = square - y * y;
  if (!(rest >= -meets_within * square)) return {};
  const Point g = std::sqrt(std::max(0.0, rest)) * cross(e, f);
  return {centre + y * f + g, centre + y * f - g};
}

// Shares of the legs of `set` that balance the pull, each carrying something.
std::optional<std::array<double, 3>> balance(std::span<const Point> u, const Point& up) {
  std::array<double, 3> t{};
  if (u.size() == 1) {
    t[0] = dot(u[0], up);
  } else if (u.size() == 2) {
    const double c = dot(u[0], u[1]), det = 1.0 - c * c;
    if (!(det > 1e-14)) return {};
    const double p = dot(u[0], up), q = dot(u[1], up);
    t = {(p - c * q) / det, (q - c * p) / det, 0.0};
  } else {
    const double det = dot(u[0], cross(u[1], u[2]));
    if (!(std::abs(det) > 1e-12)) return {};
    t = {dot(up, cross(u[1], u[2])) / det, dot(up, cross(u[2], u[0])) / det, dot(up, cross(u[0], u[1])) / det};
  }
  Point left = up;
  for (std::size_t i = 0; i < u.size(); ++i) {
    if (!(t[i] > carries)) return {};
    left = left - t[i] * u[i];
  }
  if (!(norm(left) <= meets_within)) return {};
  return t;
}

// Calls `visit` with every set of one, two or three of `count` legs until it returns true.
template <class Visit>
bool any_set(std::size_t count, const Visit& visit) {
  for (std::size_t a = 0; a < count; ++a)
    if (visit(std::vector{a})) return true;
  for (std::size_t a = 0; a < count; ++a)
    for (std::size_t b = a + 1; b < count; ++b)
      if (visit(std::vector{a, b})) return true;
  for (std::size_t a = 0; a < count; ++a)
    for (std::size_t b = a + 1; b < count; ++b)
      for (std::size_t c = b + 1; c < count; ++c)
        if (visit(std::vector{a, b, c})) return true;
  return false;
}

std::optional<std::array<double, 3>> balance_at(const Point& hook, std::span<const Ball> balls,
                                                const std::vector<std::size_t>& set, const Point& up) {
  std::vector<Point> u;
  for (const std::size_t i : set) {
    const Point along = hook - balls[i].centre;
    u.push_back((1.0 / norm(along)) * along);
  }
  return balance(u, up);
}

std::optional<Point> hook_of(std::span<const Ball> balls, const Point& up) {
  std::optional<Point> found;
  any_set(balls.size(), [&](const std::vector<std::size_t>& set) {
    std::vector<Ball> some;
    for (const std::size_t i : set) some.push_back(balls[i]);
    for (const Point& hook : highest(some, up)) {
      const bool reached = std::ranges::all_of(balls, [&](const Ball& ball) {
        return norm(hook - ball.centre) <= ball.radius * (1.0 + meets_within);
      });
      if (reached && balance_at(hook, balls, set, up)) {
        found = hook;
        return true;
      }
    }
    return false;
  });
  return found;
}

Outcome<HookOverLegs> hook_on_sheave(const Ball& one, const Ball& other, const Point& up) {
  const Point apart = other.centre - one.centre;
  const double d = norm(apart), a = 0.5 * (one.radius + other.radius), f = 0.5 * d;
  if (!(d > 0.0) || !(a > f)) return NotAssessed{"the two equalised legs are too short to meet", "longer legs"};
  const Point e = (1.0 / d) * apart;
  const double along = dot(up, e), b2 = a * a - f * f;
  const double reach = std::sqrt(a * a * along * along + b2 * (1.0 - along * along));
  const Point out = (1.0 / reach) * (a * a * along * e + b2 * (up - along * e));
  const Point hook = one.centre + 0.5 * apart + out;
  const Point u1 = hook - one.centre, u2 = hook - other.centre;
  const double both = dot((1.0 / norm(u1)) * u1 + (1.0 / norm(u2)) * u2, up);
  return HookOverLegs{position(hook), {{1.0 / both, 1.0 / both}}};
}

}  // namespace

Outcome<HookOverLegs> hook_over_legs(std::span<const HungLeg> legs,
                                     std::span<const std::vector<std::size_t>> equalised, const Direction& up) {
  if (legs.empty() || legs.size() > most_legs)
    return NotAssessed{"a rigging has no legs, or more than 16", "list the legs of the rigging, 16 at most"};
  std::vector<Ball> balls;
  for (const HungLeg& leg : legs) {
    const Ball ball{metres(leg.at), in(m, leg.length)};
    if (!(ball.radius > 0.0) || !std::isfinite(ball.radius + norm(ball.centre)))
      return NotAssessed{"the leg to " + leg.to + " has no usable length or place",
                         "give the length from hook bearing to insert bearing"};
    balls.push_back(ball);
  }
  if (!equalised.empty()) {
    if (equalised.size() == 1 && equalised.front().size() == 2 && balls.size() == 2)
      return hook_on_sheave(balls[0], balls[1], up);
    return NotAssessed{"legs that run over a sheave are computed in a turn only where they are the only two",
                       "turn the piece on legs of their own length"};
  }

  const auto hook = hook_of(balls, up);
  if (!hook)
    return NotAssessed{"no place was found at which the legs meet over the piece as it is turned",
                       "check the lengths of the legs against the places of the inserts"};
  HookOverLegs found{position(*hook), {}};
  any_set(balls.size(), [&](const std::vector<std::size_t>& set) {
    if (const auto t = balance_at(*hook, balls, set, up)) {
      std::vector<double> shares(balls.size(), 0.0);
      for (std::size_t i = 0; i < set.size(); ++i) shares[set[i]] = (*t)[i];
      found.shares.push_back(std::move(shares));
    }
    return false;
  });
  return found;
}

}  // namespace firstpick::demands
