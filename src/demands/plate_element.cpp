#include "demands/plate_element.hpp"

namespace firstpick::demands {

namespace {

// Derivatives of the six quadratic shape functions by share_2 and share_3; in order corner 1, 2, 3, side 23, 31, 12.
using SixSlopes = std::array<double, 6>;
SixSlopes by_share_2(double s, double t) {
  return {4.0 * (s + t) - 3.0, 4.0 * s - 1.0, 0.0, 4.0 * t, -4.0 * t, 4.0 * (1.0 - 2.0 * s - t)};
}
SixSlopes by_share_3(double s, double t) {
  return {4.0 * (s + t) - 3.0, 0.0, 4.0 * t - 1.0, 4.0 * s, 4.0 * (1.0 - s - 2.0 * t), -4.0 * s};
}

// M = D (kappa_x + nu kappa_y), D (kappa_y + nu kappa_x), D (1 - nu)/2 x 2 kappa_xy
std::array<double, 3> moments_of(const std::array<double, 3>& kappa, double rigidity, double poisson) {
  return {rigidity * (kappa[0] + poisson * kappa[1]), rigidity * (kappa[1] + poisson * kappa[0]),
          rigidity * 0.5 * (1.0 - poisson) * kappa[2]};
}

}  // namespace

PlateElement::PlateElement(const std::array<PlatePoint, 3>& p) {
  x31_ = p[2].x_m - p[0].x_m, y31_ = p[2].y_m - p[0].y_m;
  x12_ = p[0].x_m - p[1].x_m, y12_ = p[0].y_m - p[1].y_m;
  area_m2_ = 0.5 * (x31_ * y12_ - x12_ * y31_);
  constexpr std::array<std::array<std::size_t, 2>, 3> sides = {{{1, 2}, {2, 0}, {0, 1}}};
  for (std::size_t k = 0; k < 3; ++k) {
    const double x = p[sides[k][0]].x_m - p[sides[k][1]].x_m, y = p[sides[k][0]].y_m - p[sides[k][1]].y_m;
    const double square = x * x + y * y;
    a_[k] = -x / square;
    b_[k] = 0.75 * x * y / square;
    c_[k] = (0.25 * x * x - 0.5 * y * y) / square;
    d_[k] = -y / square;
    e_[k] = (0.25 * y * y - 0.5 * x * x) / square;
  }
}

PlateElement::Curvatures PlateElement::curvatures(double share_2, double share_3) const {
  // Each freedom's slopes H_x, H_y, derived by the two shares. Corner i lies between the sides j and k: of the sides
  // 23, 31, 12 these are 31 and 12 for corner 1, and so on around.
  const auto slopes = [&](const SixSlopes& n) {
    std::array<std::array<double, 9>, 2> h{};
    constexpr std::array<std::array<std::size_t, 2>, 3> beside = {{{1, 2}, {2, 0}, {0, 1}}};
    for (std::size_t i = 0; i < 3; ++i) {
      const auto [j, k] = beside[i];
      const double nj = n[3 + j], nk = n[3 + k];
      h[0][3 * i] = 1.5 * (a_[k] * nk - a_[j] * nj);
      h[0][3 * i + 1] = b_[j] * nj + b_[k] * nk;
      h[0][3 * i + 2] = n[i] - c_[j] * nj - c_[k] * nk;
      h[1][3 * i] = 1.5 * (d_[k] * nk - d_[j] * nj);
      h[1][3 * i + 1] = -n[i] + e_[j] * nj + e_[k] * nk;
      h[1][3 * i + 2] = -b_[j] * nj - b_[k] * nk;
    }
    return h;
  };
  const auto by_2 = slopes(by_share_2(share_2, share_3)), by_3 = slopes(by_share_3(share_2, share_3));
  const double doubled = 2.0 * area_m2_;
  Curvatures curvatures{};
  for (std::size_t f = 0; f < 9; ++f) {
    const auto by_x = [&](std::size_t slope) { return (y31_ * by_2[slope][f] + y12_ * by_3[slope][f]) / doubled; };
    const auto by_y = [&](std::size_t slope) { return (-x31_ * by_2[slope][f] - x12_ * by_3[slope][f]) / doubled; };
    curvatures[0][f] = by_x(0);
    curvatures[1][f] = by_y(1);
    curvatures[2][f] = by_y(0) + by_x(1);
  }
  return curvatures;
}

ElementMatrix PlateElement::stiffness(double rigidity, double poisson) const {
  ElementMatrix sum{};
  for (const auto& [s, t] : {std::array{0.5, 0.0}, std::array{0.5, 0.5}, std::array{0.0, 0.5}}) {
    const Curvatures b = curvatures(s, t);
    for (std::size_t j = 0; j < 9; ++j) {
      const auto moment = moments_of({b[0][j], b[1][j], b[2][j]}, rigidity, poisson);
      for (std::size_t i = 0; i < 9; ++i)
        sum[i][j] += area_m2_ / 3.0 * (b[0][i] * moment[0] + b[1][i] * moment[1] + b[2][i] * moment[2]);
    }
  }
  return sum;
}

std::array<double, 3> PlateElement::moments(const Curvatures& b, const ElementVector& freedoms, double rigidity,
                                            double poisson) {
  std::array<double, 3> kappa{};
  for (std::size_t row = 0; row < 3; ++row)
    for (std::size_t f = 0; f < 9; ++f) kappa[row] += b[row][f] * freedoms[f];
  return moments_of(kappa, rigidity, poisson);
}

}  // namespace firstpick::demands
