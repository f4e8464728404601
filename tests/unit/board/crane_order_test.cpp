// The order for the crane: each rule of it alone, and that the order of the list given does not matter.

#include "board/crane_order.hpp"

#include <algorithm>
#include <random>

#include <catch2/catch.hpp>

using namespace firstpick::board;

namespace {

Line line(std::size_t position, Verdict verdict, long long expected_s = 0,
          std::optional<long long> priority = {}) {
  Line made{.position = position, .priority = priority};
  made.judged.verdict = verdict;
  if (expected_s > 0) made.judged.expected = {.kind = Expected::Kind::at, .utc_s = expected_s};
  return made;
}

std::vector<std::size_t> order_of(std::vector<Line> lines) {
  put_in_crane_order(lines);
  std::vector<std::size_t> positions;
  for (const Line& each : lines) positions.push_back(each.position);
  return positions;
}

}  // namespace

TEST_CASE("GO before HOLD before NO-GO, whatever their priority") {
  CHECK(order_of({line(1, Verdict::no_go, 0, 1), line(2, Verdict::hold, 100, 1), line(3, Verdict::go)}) ==
        std::vector<std::size_t>{3, 2, 1});
}

TEST_CASE("among those that wait the earliest time first, then those without a time") {
  CHECK(order_of({line(1, Verdict::hold), line(2, Verdict::hold, 300), line(3, Verdict::hold, 200),
                  line(4, Verdict::no_go), line(5, Verdict::no_go, 100)}) ==
        std::vector<std::size_t>{3, 2, 1, 5, 4});
}

TEST_CASE("among equals the smaller priority, then none, then the order of the shift file") {
  CHECK(order_of({line(1, Verdict::go), line(2, Verdict::go, 0, 2), line(3, Verdict::go, 0, 1),
                  line(4, Verdict::go), line(5, Verdict::go, 0, 1)}) ==
        std::vector<std::size_t>{3, 5, 2, 1, 4});
}

TEST_CASE("the order of the list given does not matter") {
  std::vector<Line> lines;
  for (std::size_t i = 1; i <= 24; ++i)
    lines.push_back(
        line(i, static_cast<Verdict>(i % 3), static_cast<long long>((i * 7) % 4),
             i % 2 == 0 ? std::optional<long long>(1 + static_cast<long long>(i % 3)) : std::nullopt));
  const auto expected = order_of(lines);
  std::mt19937_64 random(7);
  for (int i = 0; i < 50; ++i) {
    std::ranges::shuffle(lines, random);
    CHECK(order_of(lines) == expected);
  }
}
