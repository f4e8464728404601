#include "board/crane_order.hpp"

#include <algorithm>
#include <limits>
#include <tuple>

namespace firstpick::board {

namespace {

constexpr long long never = std::numeric_limits<long long>::max();

auto rank_of(const Line& line) {
  const Judged& judged = line.judged;
  const bool waits = judged.verdict != Verdict::go && judged.expected.kind != Expected::Kind::none;
  return std::tuple{judged.verdict, waits ? judged.expected.utc_s : never, line.priority.value_or(never),
                    line.position};
}

}  // namespace

void put_in_crane_order(std::vector<Line>& lines) { std::ranges::sort(lines, {}, rank_of); }

}  // namespace firstpick::board
