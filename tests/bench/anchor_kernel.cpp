// What the quantities cost: the concrete resistances of one insert near an edge, with quantities and with
// bare doubles.
//
//   anchor_kernel quantities|doubles [times]
//
// One kernel, compiled with either kind of number; both print the same result. For instruction counts:
//   valgrind --tool=callgrind anchor_kernel quantities 1000000

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <string_view>

#include <fmt/format.h>

#include "units/quantity.hpp"

using namespace firstpick;

namespace {

// In SI, read anew in every round, out of reach of the optimiser: f_c, h_ef, c_a1, A_brg, k_c, k_sb, k_p,
// psi_ed b and a.
volatile double inputs_SI[9] = {20.0e6, 0.15, 0.10, 5.9e-3, 1e4, 13e3, 8.0, 0.7, 0.3};

struct Quantities {
  using Length = firstpick::Length;
  using Area = firstpick::Area;
  using Force = firstpick::Force;
  using Stress = firstpick::Stress;
  using Ratio = firstpick::Ratio;
  using Breakout = BreakoutCoefficient;
  using Blowout = RootStress;
  template <class Q>
  static Q read(int i) {
    return Q::from_value(static_cast<double>(inputs_SI[i]));
  }
  template <class Q>
  static auto root(const Q& q) {
    return firstpick::root(q);
  }
  static auto power_3_2(const Length& q) { return power<3, 2>(q); }
};

struct Doubles {
  using Length = double;
  using Area = double;
  using Force = double;
  using Stress = double;
  using Ratio = double;
  using Breakout = double;
  using Blowout = double;
  template <class>
  static double read(int i) {
    return inputs_SI[i];
  }
  static double root(double q) { return std::sqrt(q); }
  static double power_3_2(double q) { return q * std::sqrt(q); }
};

template <class As>
typename As::Force least_resistance() {
  const auto f_c = As::template read<typename As::Stress>(0);
  const auto h_ef = As::template read<typename As::Length>(1),
             c_a1 = As::template read<typename As::Length>(2);
  const auto A_brg = As::template read<typename As::Area>(3);
  const auto k_c = As::template read<typename As::Breakout>(4);
  const auto k_sb = As::template read<typename As::Blowout>(5);
  const auto k_p = As::template read<typename As::Ratio>(6);
  const auto b = As::template read<typename As::Ratio>(7), a = As::template read<typename As::Ratio>(8);

  const typename As::Length reach = 1.5 * h_ef;
  const typename As::Area A_Nco = 4.0 * reach * reach;
  const typename As::Area A_Nc = (std::min(reach, c_a1) + reach) * (2.0 * reach);
  const typename As::Ratio psi_ed =
      b + a * std::min(typename As::Ratio{c_a1 / reach}, typename As::Ratio{1.0});
  const typename As::Force N_cb = (A_Nc / A_Nco) * psi_ed * (k_c * As::root(f_c) * As::power_3_2(h_ef));
  const typename As::Force N_p = k_p * A_brg * f_c;
  const typename As::Force N_sb = k_sb * c_a1 * As::root(A_brg) * As::root(f_c);
  return std::min({N_cb, N_p, N_sb});
}

}  // namespace

int main(int count, char** arguments) {
  const std::string_view numbers = count > 1 ? arguments[1] : "";
  const long times = count > 2 ? std::strtol(arguments[2], nullptr, 10) : 1000000;
  if ((numbers != "quantities" && numbers != "doubles") || times < 1) {
    fmt::print(stderr, "usage: anchor_kernel quantities|doubles [times]\n");
    return 2;
  }
  double sum_N = 0.0;
  if (numbers == "quantities")
    for (long i = 0; i < times; ++i) sum_N += least_resistance<Quantities>().value();
  else
    for (long i = 0; i < times; ++i) sum_N += least_resistance<Doubles>();
  fmt::print("{} times, mean {:.9g} N\n", times, sum_N / static_cast<double>(times));
}
