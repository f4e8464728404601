#include "checks/turn_sweep.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

#include <fmt/format.h>

#include "demands/insert_force.hpp"
#include "demands/worst_angle.hpp"
#include "units/print.hpp"

namespace firstpick::checks {

namespace {

using demands::TurnPose;

constexpr Angle step = 3.0 * deg;          // between samples; the worst angles are searched between them
constexpr Angle fine_step = 0.25 * deg;    // between angles at which the turn must be possible at all
constexpr Angle same_angle = 1e-3 * deg;

// With the hook off plumb by delta: the level part of its pull over what is left on the edge.
//   F tan(delta) / N
double push_over_reaction(const TurnPose& pose, Angle off_plumb) {
  if (!(pose.main_pull > Force{})) return 0.0;
  return std::tan(off_plumb.value()) * pose.main_pull.value() / pose.edge.upward.value();
}

// What is followed over the turn, each as a number for a pose.
using Measure = std::function<double(const TurnPose&)>;

double over_sharings(const TurnPose& pose, const std::function<double(const demands::Sharing&)>& value) {
  double most = 0.0;
  for (const demands::Sharing& sharing : pose.sharings) {
    const double one = value(sharing);
    if (!(one <= most)) most = one;  // what is not a number stays, and is met later
    if (std::isnan(most)) return most;
  }
  return most;
}

std::vector<Measure> measures(const demands::TurnedPiece& piece, const plan::Plan& plan, const piece::Body& body,
                              Angle off_plumb) {
  std::vector<Measure> all{[](const TurnPose& pose) { return pose.main_pull.value(); },
                           [](const TurnPose& pose) { return pose.tail_pull.value(); },
                           [](const TurnPose& pose) { return pose.sideways.value(); }};
  if (piece.method == plan::TurnMethod::edge)
    all.push_back([off_plumb](const TurnPose& pose) { return push_over_reaction(pose, off_plumb); });
  std::vector<demands::HungLeg> legs = piece.legs;
  legs.insert(legs.end(), piece.tail_legs.begin(), piece.tail_legs.end());
  for (std::size_t leg = 0; leg < legs.size(); ++leg) {
    all.push_back([leg](const TurnPose& pose) {
      return over_sharings(pose, [leg](const demands::Sharing& s) { return s.legs.at(leg).tension.value(); });
    });
    const auto insert = std::ranges::find(plan.inserts, legs[leg].to, &plan::Insert::id);
    const auto& site = body.sites.at(static_cast<std::size_t>(insert - plan.inserts.begin()));
    all.push_back([leg, &site](const TurnPose& pose) {
      return over_sharings(pose, [&](const demands::Sharing& s) {
        return demands::insert_force(s.legs.at(leg), site).tension.value();
      });
    });
    all.push_back([leg, &site](const TurnPose& pose) {
      return over_sharings(pose, [&](const demands::Sharing& s) {
        return demands::insert_force(s.legs.at(leg), site).shear.value();
      });
    });
  }
  return all;
}

// From the balance, or the start past it, to the first angle at which the hook holds it again.
Angle falls_free(const TurnSweep& sweep) {
  Angle free{};
  for (std::size_t i = 0; i < sweep.poses.size(); ++i) {
    if (!sweep.poses[i].slack) continue;
    const Angle end = i + 1 < sweep.poses.size() ? sweep.poses[i + 1].angle : sweep.high;
    free = std::max(free, Angle{end - std::max(sweep.low, sweep.balance)});
  }
  return free;
}

}  // namespace

std::vector<Angle> in_order(std::vector<Angle> angles) {
  std::ranges::sort(angles, {}, [](const Angle& a) { return a.value(); });
  std::vector<Angle> kept;
  for (const Angle& angle : angles)
    if (kept.empty() || angle - kept.back() > same_angle) kept.push_back(angle);
  if (!angles.empty() && kept.back() != angles.back() && kept.size() > 1) kept.back() = angles.back();
  return kept;
}

Outcome<TurnPose> pose_at(const demands::TurnedPiece& piece, Angle angle) {
  auto pose = demands::turn_pose(piece, angle);
  if (const auto* gap = std::get_if<NotAssessed>(&pose))
    return NotAssessed{fmt::format("turned to {}: {}", print(angle, UnitSystem::si), gap->why), gap->remedy};
  return pose;
}

Outcome<TurnSweep> turn_sweep(const demands::TurnedPiece& piece, const TurnRange& range, const plan::Plan& plan,
                              const piece::Body& body, const tables::RuleSet& rules) {
  TurnSweep sweep{.piece = piece, .low = range.low, .high = range.high};
  const std::vector<Angle> samples = demands::angles_between(range.low, range.high, step);
  std::vector<Angle> passed = samples;
  for (const Angle& angle : demands::angles_between(range.low, range.high, fine_step)) passed.push_back(angle);
  // A hook that stands inside the centre of gravity as the piece comes to its balance lifts it off the ground just before.
  if (piece.method == plan::TurnMethod::edge) {
    const Angle balance = demands::balance_angle(piece);
    for (const double beside : {-1e-2, -1e-3, -1e-4, -1e-5, -1e-6, 1e-6, 1e-5, 1e-4, 1e-3, 1e-2})
      if (const Angle angle = balance + beside * radian; angle > range.low && angle < range.high) passed.push_back(angle);
  }
  for (const Angle& angle : passed)
    if (const auto pose = pose_at(piece, angle); !is_assessed(pose)) return std::get<NotAssessed>(pose);

  const Angle off_plumb = rules.hook_off_plumb.value;
  std::vector<Angle> angles = samples;
  for (const Measure& measure : measures(piece, plan, body, off_plumb))
    angles.push_back(demands::worst_angle(samples, [&](Angle angle) {
      const auto pose = demands::turn_pose(piece, angle);
      return is_assessed(pose) ? measure(std::get<TurnPose>(pose)) : std::nan("");
    }));

  Force total{};
  for (const loads::AppliedLoad& load : piece.loads) total += load.force;
  for (const Angle& angle : in_order(std::move(angles))) {
    auto found = pose_at(piece, angle);
    if (const auto* gap = std::get_if<NotAssessed>(&found)) return *gap;
    TurnPose& pose = std::get<TurnPose>(found);
    const double main = pose.main_pull / total, tail = pose.tail_pull / total;
    if (main > sweep.main.share) sweep.main = {main, angle};
    if (tail > sweep.tail.share) sweep.tail = {tail, angle};
    if (is_finite(sweep.sideways) && !(pose.sideways <= sweep.sideways)) sweep.sideways = pose.sideways;
    if (piece.method == plan::TurnMethod::edge)
      if (const double slip = push_over_reaction(pose, off_plumb);
          is_finite(sweep.slip) && !(slip <= sweep.slip.value())) {  // what is no number stays
        sweep.slip = Ratio{slip};
        sweep.slip_at = angle;
      }
    sweep.poses.push_back(std::move(pose));
  }
  if (piece.method == plan::TurnMethod::edge) {
    sweep.balance = demands::balance_angle(piece);
    sweep.falls_free = falls_free(sweep);
  }
  return sweep;
}

}  // namespace firstpick::checks
