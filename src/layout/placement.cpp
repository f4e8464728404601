#include "layout/placement.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include <fmt/format.h>

namespace firstpick::layout {

namespace {

constexpr double whole_within = 1e-9;  // of a step: what is a whole number of steps but for rounding

double coordinate_m(const Position& p, std::size_t axis) { return in(m, axis == 0 ? p.x : axis == 1 ? p.y : p.z); }

void set_coordinate(Position& p, std::size_t axis, double value_m) {
  (axis == 0 ? p.x : axis == 1 ? p.y : p.z) = value_m * m;
}

double drawn_step_m(UnitSystem units) { return units == UnitSystem::us ? 0.0254 / 16.0 : 1e-3; }

double to_nearest(double value, double step) { return std::round(value / step) * step; }

const char* axis_name(std::size_t axis) { return axis == 0 ? "x" : axis == 1 ? "y" : "z"; }

}  // namespace

Placement::Placement(const plan::Plan& plan, const plan::Layout& layout, const piece::Body& body)
    : plan_(plan), layout_(layout), centre_(body.centroid) {}

bool Placement::drawn_in_range() const {
  for (std::size_t i = 0; i < size(); ++i)
    if (!(drawn_[i] >= low_[i] - 1e-9 && drawn_[i] <= high_[i] + 1e-9)) return false;
  return true;
}

double Placement::step_m() const { return in(m, layout_.step); }

std::variant<Placement, std::vector<Diagnostic>> Placement::of(const plan::Plan& plan, const plan::Layout& layout,
                                                               const piece::Body& body) {
  Placement made(plan, layout, body);
  std::vector<Diagnostic> faults;
  std::set<std::size_t> moving;
  const auto refuse = [&](const plan::LayoutMove& move, std::string what, std::string help) {
    faults.push_back({.file = plan.file, .place = move.place, .what = std::move(what), .help = std::move(help)});
  };
  for (const plan::LayoutMove& move : layout.moves) {
    Freedom freedom{.axis = static_cast<std::size_t>(move.along), .mirror = move.mirror};
    for (const auto& named : move.inserts) {
      const auto found = std::ranges::find(plan.inserts, named.value, &plan::Insert::id);
      if (found == plan.inserts.end()) continue;  // read_plan has refused it
      freedom.inserts.push_back(static_cast<std::size_t>(found - plan.inserts.begin()));
      moving.insert(freedom.inserts.back());
    }
    if (freedom.inserts.empty()) continue;
    const auto at = [&](std::size_t insert) { return coordinate_m(plan.inserts[insert].at, freedom.axis); };
    freedom.plane_m = move.about ? in(m, *move.about) : coordinate_m(body.centroid, freedom.axis);
    const double drawn = at(freedom.inserts.front());
    double low = move.from ? in(m, *move.from) : coordinate_m(body.lowest, freedom.axis);
    double high = move.to ? in(m, *move.to) : coordinate_m(body.highest, freedom.axis);
    if (freedom.mirror) {
      for (const std::size_t insert : freedom.inserts)
        if (!(std::abs(at(insert) - freedom.plane_m) > 1e-3))
          refuse(move, fmt::format("insert '{}' lies on the plane that it is to be mirrored about: it is on no side of it",
                                   plan.inserts[insert].id),
                 "move it along this axis by itself, or not at all");
      if (drawn < freedom.plane_m) high = std::min(high, freedom.plane_m);
      else low = std::max(low, freedom.plane_m);
    }
    const double step = made.step_m();
    if (!(std::floor(high / step + whole_within) >= std::ceil(low / step - whole_within)))
      refuse(move, fmt::format("no whole number of steps lies in the range of '{}' along {}",
                               plan.inserts[freedom.inserts.front()].id, axis_name(freedom.axis)),
             "a smaller [layout] step, or a wider range; with mirror the first insert stays on its side of the plane");
    made.freedoms_.push_back(std::move(freedom));
    made.low_.push_back(low), made.high_.push_back(high), made.drawn_.push_back(drawn);
  }
  made.moving_.assign(moving.begin(), moving.end());
  if (!faults.empty()) return faults;
  return made;
}

Places Placement::rounded(const Places& places) const {
  const double step = step_m();
  Places made;
  for (std::size_t i = 0; i < size(); ++i) {
    const double least = std::ceil(low_[i] / step - whole_within), most = std::floor(high_[i] / step + whole_within);
    made.push_back(std::clamp(std::round(places.at(i) / step), least, most) * step);
  }
  return made;
}

plan::Plan Placement::placed(const Places& places, bool to_draw) const {
  plan::Plan moved = plan_;
  const double fine = drawn_step_m(plan_.piece.units);
  for (std::size_t i = 0; i < size(); ++i) {
    const Freedom& freedom = freedoms_[i];
    for (const std::size_t insert : freedom.inserts) {
      const double drawn = coordinate_m(plan_.inserts[insert].at, freedom.axis);
      double at = drawn + (places.at(i) - drawn_[i]);
      if (freedom.mirror) {
        const double off = std::abs(places[i] - freedom.plane_m);
        at = drawn < freedom.plane_m ? freedom.plane_m - off : freedom.plane_m + off;
      }
      set_coordinate(moved.inserts[insert].at, freedom.axis, to_draw ? to_nearest(at, fine) : at);
    }
  }
  if (layout_.legs == plan::LegLengths::keep_angle) follow_with_legs(moved);
  return moved;
}

void Placement::follow_with_legs(plan::Plan& moved) const {
  const auto reach = [&](const Position& p) { return std::hypot(in(m, p.x - centre_.x), in(m, p.y - centre_.y)); };
  for (plan::Rigging& rigging : moved.riggings) {
    if (!rigging.hooks.empty()) continue;
    for (plan::Leg& leg : rigging.legs) {
      const auto insert = std::ranges::find(plan_.inserts, leg.to, &plan::Insert::id);
      if (insert == plan_.inserts.end() || !leg.from.empty() || !leg.length) continue;
      const auto index = static_cast<std::size_t>(insert - plan_.inserts.begin());
      const double was = reach(insert->at), is = reach(moved.inserts[index].at);
      if (!(was > 1e-3) || is == was) continue;
      *leg.length = std::ceil(in(m, *leg.length) * is / was / step_m() - whole_within) * layout_.step;
    }
  }
}

}  // namespace firstpick::layout
