#include "resistances/lb_in_terms.hpp"

#include <cmath>

#include <fmt/format.h>

namespace firstpick::resistances {

namespace {

const RootStress root_psi = root(psi);
const BreakoutCoefficient lbf_per_root_psi_in_3_2 = lbf / (root(psi) * power<3, 2>(inch));
const DeepBreakoutCoefficient lbf_per_root_psi_in_5_3 = lbf / (root(psi) * power<5, 3>(inch));

}  // namespace

Term lb_in(std::string symbol, Ratio number) { return {std::move(symbol), number.value(), "1"}; }
Term lb_in(std::string symbol, Length length) { return {std::move(symbol), in(inch, length), "in"}; }
Term lb_in(std::string symbol, Area area) { return {std::move(symbol), in(in2, area), "in2"}; }
Term lb_in(std::string symbol, Force force) { return {std::move(symbol), in(lbf, force), "lb"}; }
Term lb_in(std::string symbol, Stress stress) { return {std::move(symbol), in(psi, stress), "psi"}; }
Term lb_in(std::string symbol, RootStress coefficient) {
  return {std::move(symbol), in(root_psi, coefficient), "psi^0.5"};
}
Term lb_in(std::string symbol, BreakoutCoefficient coefficient) {
  return {std::move(symbol), in(lbf_per_root_psi_in_3_2, coefficient), "lbf / (psi^0.5 in^1.5)"};
}
Term lb_in(std::string symbol, DeepBreakoutCoefficient coefficient) {
  return {std::move(symbol), in(lbf_per_root_psi_in_5_3, coefficient), "lbf / (psi^0.5 in^(5/3))"};
}

std::string direction_in_words(const Direction& direction) {
  constexpr double along = 1.0 - 1e-9;
  if (direction.x > along) return "+x";
  if (direction.x < -along) return "-x";
  if (direction.y > along) return "+y";
  if (direction.y < -along) return "-y";
  if (direction.z > along) return "+z";
  if (direction.z < -along) return "-z";
  const auto shown = [](double component) { return std::abs(component) < 5e-4 ? 0.0 : component; };
  return fmt::format("({:.3f}, {:.3f}, {:.3f})", shown(direction.x), shown(direction.y), shown(direction.z));
}

}  // namespace firstpick::resistances
