// The three-cornered thin-plate element DKT (discrete Kirchhoff triangle): three freedoms at each corner,
//
//   w (down), theta_x = dw/dy, theta_y = -dw/dx
//
// Slopes vary quadratically, and are those of w at the corners and at the middles of the sides; the moments
//
//   M_x = -D (w_xx + nu w_yy), M_y = -D (w_yy + nu w_xx), M_xy = -D (1 - nu) w_xy        tension below positive
//
// are linear in the element. No shear deformation: right for panels, whose thickness is small against their spans.
//
// Source   Batoz, Bathe and Ho, "A study of three-node triangular plate bending elements", International Journal for
//          Numerical Methods in Engineering 15 (1980) 1771-1812: shape functions of the slopes; stiffness by three points
//          at the middles of the sides, exact for it. Outside check: tests/verification/plate_*_test.cpp.
#pragma once

#include <array>

#include "demands/plate_shape.hpp"

namespace firstpick::demands {

using ElementMatrix = std::array<std::array<double, 9>, 9>;
using ElementVector = std::array<double, 9>;

class PlateElement {
 public:
  explicit PlateElement(const std::array<PlatePoint, 3>& corners_m);

  double area_m2() const { return area_m2_; }
  using Curvatures = std::array<std::array<double, 9>, 3>;  // of each freedom: w_xx, w_yy, 2 w_xy, sign changed
  // At the place with these shares of corners 2 and 3 (area coordinates).
  Curvatures curvatures(double share_2, double share_3) const;
  ElementMatrix stiffness(double rigidity, double poisson) const;
  // M_x, M_y, M_xy at the place of these curvatures.
  static std::array<double, 3> moments(const Curvatures& curvatures, const ElementVector& freedoms, double rigidity,
                                       double poisson);

 private:
  double area_m2_ = 0.0;
  double x31_ = 0.0, x12_ = 0.0, y31_ = 0.0, y12_ = 0.0;
  std::array<double, 3> a_{}, b_{}, c_{}, d_{}, e_{};  // of the sides 23, 31, 12 (4, 5, 6 in the source)
};

}  // namespace firstpick::demands
