// 10,000 random rigging trees: how many hang, why the others do not, and how long each takes.
// Build with -DFIRSTPICK_BENCH=ON, then bench_random_trees.

#include <algorithm>
#include <chrono>
#include <map>

#include <fmt/format.h>

#include "support/random_trees.hpp"

using namespace firstpick;
using namespace firstpick::tests;

int main() {
  constexpr int trees = 10000;
  Dice dice(2026);
  std::map<std::string, int> count_of;
  std::vector<double> milliseconds;
  double slowest = 0.0;
  int slowest_tree = 0;
  for (int i = 0; i < trees; ++i) {
    const RandomTree tree(dice);
    const auto start = std::chrono::steady_clock::now();
    const auto hanging = demands::hang(tree.piece);
    const double took =
        std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
    milliseconds.push_back(took);
    if (took > slowest) slowest = took, slowest_tree = i;
    const auto* gap = std::get_if<NotAssessed>(&hanging);
    ++count_of[gap ? gap->why : "hangs"];
  }
  std::ranges::sort(milliseconds);
  for (const auto& [what, count] : count_of) fmt::print("{:6} {}\n", count, what);
  fmt::print("median {:.3f} ms, 99 % within {:.3f} ms, slowest {:.3f} ms (tree {})\n",
             milliseconds[trees / 2], milliseconds[trees * 99 / 100], slowest, slowest_tree);
  return slowest <= 20.0 && milliseconds[trees / 2] <= 0.5 ? 0 : 1;
}
