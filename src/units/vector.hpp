// Three components of one quantity in the piece's axes: x, y on the plan, z up as cast.
#pragma once

#include <cmath>

#include "units/quantity.hpp"

namespace firstpick {

template <class Q>
struct Vector {
  Q x{}, y{}, z{};
};

using Position = Vector<Length>;
using ForceVector = Vector<Force>;
using Direction = Vector<double>;  // unit length

template <class Q>
Vector<Q> operator+(const Vector<Q>& a, const Vector<Q>& b) {
  return {a.x + b.x, a.y + b.y, a.z + b.z};
}
template <class Q>
Vector<Q> operator-(const Vector<Q>& a, const Vector<Q>& b) {
  return {a.x - b.x, a.y - b.y, a.z - b.z};
}
template <class Q>
Vector<Q> operator*(double factor, const Vector<Q>& a) {
  return {factor * a.x, factor * a.y, factor * a.z};
}
// Scales a direction to a quantity: Direction * Force -> ForceVector.
template <class Unit>
Vector<bu::quantity<Unit>> operator*(const Direction& d, const bu::quantity<Unit>& q) {
  return {d.x * q, d.y * q, d.z * q};
}
template <class A, class B>
auto dot(const Vector<A>& a, const Vector<B>& b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}
template <class A, class B>
auto cross(const Vector<A>& a, const Vector<B>& b) -> Vector<decltype(a.x * b.x)> {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
template <class Unit>
bu::quantity<Unit> norm(const Vector<bu::quantity<Unit>>& a) {
  return bu::quantity<Unit>::from_value(
      std::sqrt(a.x.value() * a.x.value() + a.y.value() * a.y.value() + a.z.value() * a.z.value()));
}
inline double norm(const Direction& a) { return std::sqrt(dot(a, a)); }

}  // namespace firstpick
