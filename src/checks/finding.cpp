#include "checks/finding.hpp"

#include <type_traits>

namespace firstpick::checks {

std::string print(const Figure& figure, UnitSystem units, Rounding rounding) {
  return std::visit([&](const auto& q) { return firstpick::print(q, units, rounding); }, figure);
}

namespace {

struct SiUnit {
  std::string_view operator()(const Force&) const { return "kN"; }
  std::string_view operator()(const Stress&) const { return "MPa"; }
  std::string_view operator()(const Angle&) const { return "deg"; }
  std::string_view operator()(const Length&) const { return "m"; }
  std::string_view operator()(const Duration&) const { return "h"; }
  std::string_view operator()(const Ratio&) const { return "1"; }
};

struct SiNumber {
  double operator()(const Force& q) const { return in(kN, q); }
  double operator()(const Stress& q) const { return in(MPa, q); }
  double operator()(const Angle& q) const { return in(deg, q); }
  double operator()(const Length& q) const { return in(m, q); }
  double operator()(const Duration& q) const { return in(hour, q); }
  double operator()(const Ratio& q) const { return q.value(); }
};

}  // namespace

std::string_view si_unit(const Figure& figure) { return std::visit(SiUnit{}, figure); }
double si_number(const Figure& figure) { return std::visit(SiNumber{}, figure); }

std::string_view word_for(Result result) {
  switch (result) {
    case Result::pass: return "pass";
    case Result::note: return "note";
    case Result::missing: return "missing";
    case Result::fail: return "fail";
  }
  return "missing";
}

}  // namespace firstpick::checks
