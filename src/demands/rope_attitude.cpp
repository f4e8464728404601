#include "demands/rope_attitude.hpp"

#include <algorithm>
#include <cmath>

#include "demands/rope_bodies.hpp"

namespace firstpick::demands {

namespace {

template <std::size_t bodies>
void measure(const RopeSystem<bodies>& system, Attitude<bodies>& at) {
  for (std::size_t s = 0; s < system.span_count; ++s) {
    const std::array<const RopeEnd*, 2> ends = {&system.spans[s].from, &system.spans[s].to};
    std::array<Point, 2> end;
    for (std::size_t i = 0; i < 2; ++i) {
      at.reach[s].arm[i] = {};
      end[i] = ends[i]->at;
      if (ends[i]->body == in_space) continue;
      const Pose& pose = at.poses[static_cast<std::size_t>(ends[i]->body)];
      at.reach[s].arm[i] = end[i].x * pose.axes[0] + end[i].y * pose.axes[1] + end[i].z * pose.axes[2];
      end[i] = pose.origin + at.reach[s].arm[i];
    }
    const Point apart = end[1] - end[0];
    at.reach[s].length = norm(apart);
    at.reach[s].direction = (1.0 / std::max(at.reach[s].length, 1e-300)) * apart;
  }
  for (std::size_t r = 0; r < system.rope_count; ++r) {
    const Rope& rope = system.ropes[r];
    at.length[r] = 0.0;
    for (std::size_t s = rope.first_span; s < rope.first_span + rope.span_count; ++s)
      at.length[r] += at.reach[s].length;
  }
}

// exp(turn x) applied to each axis (O. Rodrigues' formula).
void turn_axes(std::array<Point, 3>& axes, const Point& turn) {
  const double angle = norm(turn);
  if (!(angle > 0.0)) return;
  const Point n = (1.0 / angle) * turn;
  const double sine_of = std::sin(angle), one_less_cosine = 2.0 * std::pow(std::sin(0.5 * angle), 2);
  for (Point& axis : axes) {
    const Point across = cross(n, axis);
    axis = axis + sine_of * across + one_less_cosine * cross(n, across);
  }
}

template <std::size_t size>
using Square = std::array<std::array<double, size>, size>;

// Adds factor * [v x], factor * 1 and factor * a b^T to the 3 x 3 block at (i, j).
template <std::size_t size>
void add_cross(Square<size>& to, std::size_t i, std::size_t j, double factor, const Point& v) {
  to[i][j + 1] -= factor * v.z;
  to[i][j + 2] += factor * v.y;
  to[i + 1][j] += factor * v.z;
  to[i + 1][j + 2] -= factor * v.x;
  to[i + 2][j] -= factor * v.y;
  to[i + 2][j + 1] += factor * v.x;
}
template <std::size_t size>
void add_unit(Square<size>& to, std::size_t i, std::size_t j, double factor) {
  for (std::size_t k = 0; k < 3; ++k) to[i + k][j + k] += factor;
}
template <std::size_t size>
void add_outer(Square<size>& to, std::size_t i, std::size_t j, double factor, const Point& a,
               const Point& b) {
  const std::array<double, 3> left = {factor * a.x, factor * a.y, factor * a.z}, right = {b.x, b.y, b.z};
  for (std::size_t k = 0; k < 3; ++k)
    for (std::size_t l = 0; l < 3; ++l) to[i + k][j + l] += left[k] * right[l];
}

template <std::size_t size>
void add(std::array<double, size>& to, std::size_t i, const Point& v) {
  to[i] += v.x;
  to[i + 1] += v.y;
  to[i + 2] += v.z;
}

}  // namespace

template <std::size_t bodies>
Attitude<bodies> attitude(const RopeSystem<bodies>& system, const std::array<Pose, bodies>& poses) {
  Attitude<bodies> at;
  at.poses = poses;
  measure(system, at);
  return at;
}

template <std::size_t bodies>
Attitude<bodies> moved(const RopeSystem<bodies>& system, const Attitude<bodies>& from,
                       const Move<bodies>& move) {
  Attitude<bodies> at;
  at.poses = from.poses;
  for (std::size_t k = 0; k < bodies; ++k) {
    const std::size_t i = 6 * k;
    at.poses[k].origin = at.poses[k].origin + Point{move[i], move[i + 1], move[i + 2]};
    turn_axes(at.poses[k].axes, {move[i + 3], move[i + 4], move[i + 5]});
  }
  measure(system, at);
  return at;
}

template <std::size_t bodies>
Move<bodies> pull_of(const RopeSystem<bodies>& system, const Attitude<bodies>& at, const Rope& rope,
                     double tension, Curvature<bodies>& curvature) {
  Move<bodies> whole{};
  for (std::size_t s = rope.first_span; s < rope.first_span + rope.span_count; ++s) {
    const auto& reach = at.reach[s];
    const std::array<int, 2> body = {system.spans[s].from.body, system.spans[s].to.body};
    const double swing = tension / std::max(reach.length, 1e-12);
    Move<bodies> g{};
    for (std::size_t i = 0; i < 2; ++i) {
      if (body[i] == in_space) continue;
      const std::size_t a = 6 * static_cast<std::size_t>(body[i]);
      const Point& r = reach.arm[i];
      const Point u = (i == 0 ? -1.0 : 1.0) * reach.direction;
      add(g, a, u);
      add(g, a + 3, cross(r, u));
      for (std::size_t j = 0; j < 2; ++j) {
        if (body[j] == in_space) continue;
        const std::size_t b = 6 * static_cast<std::size_t>(body[j]);
        const Point& other = reach.arm[j];
        const double k = i == j ? swing : -swing;
        add_unit(curvature, a, b, k);
        add_cross(curvature, a, b + 3, -k, other);
        add_cross(curvature, a + 3, b, k, r);
        add_unit(curvature, a + 3, b + 3, k * dot(r, other));
        add_outer(curvature, a + 3, b + 3, -k, other, r);
      }
      add_outer(curvature, a + 3, a + 3, 0.5 * tension, u, r);
      add_outer(curvature, a + 3, a + 3, 0.5 * tension, r, u);
      add_unit(curvature, a + 3, a + 3, -tension * dot(u, r));
    }
    for (std::size_t i = 0; i < g.size(); ++i) {
      if (g[i] == 0.0) continue;  // most bodies have no part in the span
      whole[i] += g[i];
      for (std::size_t j = 0; j < g.size(); ++j) curvature[i][j] -= swing * g[i] * g[j];
    }
  }
  return whole;
}

namespace {

// A unit of energy on turning these bodies about the vertical through a point.
template <std::size_t bodies>
void hold_yaw(const RopeSystem<bodies>& system, const Attitude<bodies>& at, const std::array<bool, bodies>& turns,
              const Point& about, Curvature<bodies>& curvature) {
  Move<bodies> yaw{};
  double square = 0.0;
  for (std::size_t k = 0; k < bodies; ++k) {
    if (!turns[k]) continue;
    const Point out = at.poses[k].origin - about;
    yaw[6 * k] = -out.y;
    yaw[6 * k + 1] = out.x;
    yaw[6 * k + 5] = system.is_point[k] ? 0.0 : 1.0;
    square += out.x * out.x + out.y * out.y + 1.0;
  }
  for (std::size_t i = 0; i < yaw.size(); ++i)
    for (std::size_t j = 0; j < yaw.size(); ++j) curvature[i][j] += yaw[i] * yaw[j] / square;
}

template <std::size_t bodies>
Point place_of(const RopeEnd& end, const Attitude<bodies>& at) {
  if (end.body == in_space) return end.at;
  const Pose& pose = at.poses[static_cast<std::size_t>(end.body)];
  return pose.origin + end.at.x * pose.axes[0] + end.at.y * pose.axes[1] + end.at.z * pose.axes[2];
}

}  // namespace

template <std::size_t bodies>
Curvature<bodies> free_curvature(const RopeSystem<bodies>& system, const Attitude<bodies>& at) {
  Curvature<bodies> curvature{};
  std::array<bool, bodies> all;
  all.fill(true);
  if (system.yaw_is_free) hold_yaw(system, at, all, Point{}, curvature);
  for (std::size_t i = 0; i < system.spin_count; ++i)
    hold_yaw(system, at, system.spins[i].turns, place_of(system.spins[i].apex, at), curvature);
  for (std::size_t k = 0; k < bodies; ++k)
    if (system.is_point[k]) add_unit(curvature, 6 * k + 3, 6 * k + 3, 1.0);
  return curvature;
}

// The piece, and up to six beams and sheaves above it.
#define FIRSTPICK_FOR(n)                                                                                \
  template Attitude<n> attitude<n>(const RopeSystem<n>&, const std::array<Pose, n>&);                   \
  template Attitude<n> moved<n>(const RopeSystem<n>&, const Attitude<n>&, const Move<n>&);              \
  template Move<n> pull_of<n>(const RopeSystem<n>&, const Attitude<n>&, const Rope&, double,            \
                              Curvature<n>&);                                                           \
  template Curvature<n> free_curvature<n>(const RopeSystem<n>&, const Attitude<n>&);
FIRSTPICK_FOR_EACH_NUMBER_OF_BODIES(FIRSTPICK_FOR)
#undef FIRSTPICK_FOR

}  // namespace firstpick::demands
