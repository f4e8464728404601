#include "demands/ring_girder.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <Eigen/Dense>

namespace firstpick::demands {

namespace {

constexpr int parts = 2880;               // of the whole ring, an eighth of a degree
constexpr double lopsided_within = 0.02;  // of the weight
constexpr double level_forces_within = 0.02;     // level forces that do not balance, of the load

struct At {  // what acts on one section, newton and metre
  double a = 0.0;
  double V = 0.0, M = 0.0, T = 0.0;   // across the plane
  double X = 0.0, Y = 0.0, m = 0.0;   // in it: sums of level forces from the cut, moment about the section
};

struct Load {  // at an angle
  double a = 0.0, up = 0.0, torque = 0.0, couple = 0.0, x = 0.0, y = 0.0;
};

std::vector<At> walked(const std::vector<double>& angles, const std::vector<Load>& loads, double R, double w, double w_c,
                       double w_s) {
  std::vector<At> all;
  At here{.a = 0.0};
  std::size_t next = 0;
  const auto meet = [&] {  // the loads at this angle: a section on both sides
    for (; next < loads.size() && loads[next].a <= here.a; ++next) {
      all.push_back(here);
      here.V += loads[next].up, here.T += loads[next].torque, here.M += loads[next].couple;
      here.X += loads[next].x, here.Y += loads[next].y;
    }
    all.push_back(here);
  };
  meet();
  for (std::size_t i = 1; i < angles.size(); ++i) {
    const double d = angles[i] - here.a, c = std::cos(d), s = std::sin(d), mid = here.a + 0.5 * d;
    const double load = w + w_c * std::cos(mid) + w_s * std::sin(mid);
    At to = here;
    to.a = angles[i];
    to.M = here.M * c + here.T * s + here.V * R * s - load * R * R * (1.0 - c);
    to.T = here.T * c - here.M * s - here.V * R * (1.0 - c) + load * R * R * (d - s);
    to.V = here.V - load * R * d;
    // Forces X, Y of what lies before, moved along the chord.
    const double x = R * (std::cos(to.a) - std::cos(here.a)), y = R * (std::sin(to.a) - std::sin(here.a));
    to.m = here.m + here.Y * x - here.X * y;
    here = to;
    meet();
  }
  return all;
}

// The unknowns at the cut that make the energy least.
template <class Energy>
Eigen::Vector3d least(const std::vector<At>& all, Energy energy) {
  Eigen::Matrix3d K = Eigen::Matrix3d::Zero();
  Eigen::Vector3d f = Eigen::Vector3d::Zero();
  for (std::size_t i = 1; i < all.size(); ++i) {
    const double d = all[i].a - all[i - 1].a;
    if (!(d > 0.0)) continue;
    for (const At& at : {all[i - 1], all[i]}) energy(at, 0.5 * d, K, f);
  }
  return K.fullPivLu().solve(-f);
}

double saint_venant(double ratio, bool stress) {  // of the longer over the shorter side
  double sum = 0.0;
  for (int n = 1; n < 60; n += 2) {
    const double x = n * M_PI * ratio / 2.0;
    sum += stress ? 1.0 / (n * n * std::cosh(std::min(x, 700.0))) : std::tanh(x) / std::pow(n, 5);
  }
  return sum;
}

}  // namespace

double torsion_stiffness(double long_side, double short_side) {
  const double ratio = long_side / short_side;
  return (1.0 - 192.0 / (std::pow(M_PI, 5) * ratio) * saint_venant(ratio, false)) / 3.0;
}

double torsion_shear(double long_side, double short_side) {
  const double ratio = long_side / short_side;
  return (1.0 - 8.0 / (M_PI * M_PI) * saint_venant(ratio, true)) / torsion_stiffness(long_side, short_side);
}

const RingSection& RingState::most_tension() const {
  return *std::ranges::max_element(sections, {}, [](const RingSection& s) { return s.tension; });
}

Outcome<RingState> ring_state(const Ring& ring) {
  const double R = in(m, ring.radius), b = in(m, ring.wall), h = in(m, ring.depth_counted), full = in(m, ring.depth);
  if (ring.forces.empty() || !(R > 0.5 * b) || !(b > 0.0) || !(h > 0.0) || !(full >= h) || !std::isfinite(R + full) ||
      !(ring.poisson >= 0.0 && ring.poisson < 0.5))
    return NotAssessed{"a number of the ring is not usable", {}};

  std::vector<Load> loads;
  double up = 0.0, up_c = 0.0, up_s = 0.0, x = 0.0, y = 0.0, turn = 0.0;
  for (const RingForce& force : ring.forces) {
    double a = std::fmod(in(radian, force.at), 2.0 * M_PI);
    if (a < 0.0) a += 2.0 * M_PI;
    const double P = in(newton, force.up), H = in(newton, force.inward), S = in(newton, force.around);
    const double e = in(m, force.above_middle), off = in(m, force.outside_middle);
    // A level force over mid-depth twists the ring where it is inward, bends it where it goes around; a force up that stands
    // off the middle line twists it.
    const double c = std::cos(a), s = std::sin(a);
    loads.push_back({a, P, e * H + off * P, e * S, -H * c - S * s, -H * s + S * c});
    up += P, up_c += P * (1.0 + off / R) * c, up_s += P * (1.0 + off / R) * s, turn += std::abs(S) * R;
    x += loads.back().x, y += loads.back().y;
    // Their couples about level axes are balanced by the weight as well.
    up_c -= e * loads.back().x / R, up_s -= e * loads.back().y / R;
    if (!std::isfinite(P + H + S + e + off + a)) return NotAssessed{"a force on the ring is not a usable number", {}};
  }
  if (!(up > 0.0)) return NotAssessed{"nothing carries the ring", {}};
  const double w = up / (2.0 * M_PI * R), w_c = up_c / (M_PI * R), w_s = up_s / (M_PI * R);
  if (!(std::hypot(w_c, w_s) <= lopsided_within * w))
    return NotAssessed{"the picks of the ring do not stand evenly about its axis",
                       "picks at even distances round the ring"};
  if (!(std::hypot(x, y) <= level_forces_within * up) || !(turn <= level_forces_within * up * R))
    return NotAssessed{"the legs pull the ring aside or round", "legs that run towards the axis of the ring"};
  const auto count = static_cast<double>(loads.size());
  for (Load& load : loads) load.x -= x / count, load.y -= y / count;

  std::ranges::sort(loads, {}, &Load::a);
  std::vector<double> angles;
  for (int i = 0; i <= parts; ++i) angles.push_back(2.0 * M_PI * i / parts);
  for (const Load& load : loads) angles.push_back(load.a);
  std::ranges::sort(angles);
  std::vector<At> all = walked(angles, loads, R, w, w_c, w_s);

  // E I and G J without E.
  const double EI = b * h * h * h / 12.0, longer = std::max(b, h), shorter = std::min(b, h);
  const double GJ = torsion_stiffness(longer, shorter) * longer * std::pow(shorter, 3) / (2.0 * (1.0 + ring.poisson));
  const auto bend = [&](double a) { return std::array{std::cos(a), std::sin(a), R * std::sin(a)}; };
  const auto twist = [&](double a) { return std::array{-std::sin(a), std::cos(a), -R * (1.0 - std::cos(a))}; };
  const auto level = [&](double a) { return std::array{1.0, R * (1.0 - std::cos(a)), R * std::sin(a)}; };
  const Eigen::Vector3d across = least(all, [&](const At& at, double d, Eigen::Matrix3d& K, Eigen::Vector3d& f) {
    const auto mu = bend(at.a), tau = twist(at.a);
    for (std::size_t i = 0; i < 3; ++i) {
      const auto row = static_cast<Eigen::Index>(i);
      f[row] += d * (mu[i] * at.M / EI + tau[i] * at.T / GJ);
      for (std::size_t j = 0; j < 3; ++j)
        K(row, static_cast<Eigen::Index>(j)) += d * (mu[i] * mu[j] / EI + tau[i] * tau[j] / GJ);
    }
  });
  const Eigen::Vector3d along = least(all, [&](const At& at, double d, Eigen::Matrix3d& K, Eigen::Vector3d& f) {
    const auto mu = level(at.a);
    for (std::size_t i = 0; i < 3; ++i) {
      f[static_cast<Eigen::Index>(i)] += d * mu[i] * at.m;
      for (std::size_t j = 0; j < 3; ++j)
        K(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)) += d * mu[i] * mu[j];
    }
  });

  const double shear_of_torsion = torsion_shear(longer, shorter) / (longer * shorter * shorter);
  const double inner = R - 0.5 * b, neutral = b / std::log((R + 0.5 * b) / inner), off = R - neutral;
  RingState state;
  for (const At& at : all) {
    const auto mu = bend(at.a), tau = twist(at.a), nu = level(at.a);
    double M = at.M, T = at.T, m_level = at.m;
    for (std::size_t i = 0; i < 3; ++i) {
      const auto k = static_cast<Eigen::Index>(i);
      M += across[k] * mu[i], T += across[k] * tau[i], m_level += along[k] * nu[i];
    }
    const double V = at.V + across[2];
    // Level forces at the cut: along[1] per radian of the first arm is a force along y, along[2] along x.
    const double X = at.X - along[2], Y = at.Y - along[1];
    const double N = -(-X * std::sin(at.a) + Y * std::cos(at.a));
    // Curved beam: inside (r_n - r_i)/(A e r_i), the largest of both faces.
    const double level_stress = std::abs(m_level) * (neutral - inner) / (b * full * off * inner);
    const double direct = 6.0 * std::abs(M) / (b * h * h) + level_stress + std::max(N, 0.0) / (b * full);
    const double shear = std::abs(T) * shear_of_torsion + 1.5 * std::abs(V) / (b * full);
    state.sections.push_back({at.a * radian, Moment::from_value(M), Moment::from_value(T), Moment::from_value(m_level), N * newton, V * newton,
                              Stress::from_value(0.5 * direct + std::hypot(0.5 * direct, shear))});
    if (!std::isfinite(direct + shear)) return NotAssessed{"the ring could not be computed", {}};
  }
  return state;
}

}  // namespace firstpick::demands
