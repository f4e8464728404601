// The search on functions whose least value is known.

#include <catch2/catch.hpp>

#include <cmath>
#include <stdexcept>

#include "layout/search.hpp"

using firstpick::layout::Places;
using firstpick::layout::search;
using firstpick::layout::SearchBox;

namespace {

SearchBox box(std::size_t size, double start) {
  return {Places(size, 0.0), Places(size, 1.0), Places(size, start), 0.001};
}

}  // namespace

TEST_CASE("search: two valleys that mirror each other but for a little: the deeper one, from the shallow one") {
  const auto score = [](const Places& p) { return std::min(std::abs(p[0] - 0.2), std::abs(p[0] - 0.83) - 0.01); };
  const auto found = search(score, box(1, 0.2));
  REQUIRE_FALSE(found.empty());
  CHECK(found.front().places[0] == Approx(0.83).margin(0.002));
}

TEST_CASE("search: the corner where three rules meet, as in a layout, with no slope to follow past it") {
  const auto score = [](const Places& p) {
    return std::max({0.3 + p[0], 1.0 - 1.5 * p[0] + 0.1 * std::abs(p[1] - 0.4), 0.2 + std::abs(p[1] - 0.4)});
  };
  const auto found = search(score, box(2, 0.9));
  REQUIRE_FALSE(found.empty());
  CHECK(found.front().places[0] == Approx(0.28).margin(0.005));
  CHECK(found.front().score == Approx(0.58).margin(0.005));
}

TEST_CASE("search: behind a wall of what is not allowed") {
  const auto score = [](const Places& p) {
    const double lack = std::max(0.0, 0.7 - p[0]);
    return lack > 0.0 ? 1e6 * (1.0 + lack) : std::abs(p[0] - 0.71) + std::abs(p[1] - 0.1);
  };
  const auto found = search(score, box(2, 0.1));
  REQUIRE_FALSE(found.empty());
  CHECK(found.front().score < 0.01);
}

TEST_CASE("search: the same places every time, and each place it tells lies in the box") {
  const auto score = [](const Places& p) { return std::sin(9.0 * p[0]) * std::cos(7.0 * p[1]) + p[2]; };
  const auto first = search(score, box(3, 0.5)), second = search(score, box(3, 0.5));
  REQUIRE(first.size() == second.size());
  for (std::size_t i = 0; i < first.size(); ++i) {
    CHECK(first[i].places == second[i].places);
    for (const double at : first[i].places) CHECK((at >= 0.0 && at <= 1.0));
  }
}

TEST_CASE("search: no room is the start, and what the function throws comes out of the library") {
  SearchBox still{{0.4}, {0.4}, {0.4}, 0.001};
  REQUIRE(search([](const Places&) { return 1.0; }, still).size() == 1);
  CHECK_THROWS_AS(search([](const Places& p) -> double {
                    if (p[0] > 0.6) throw std::runtime_error("made for the test");
                    return 1.0;
                  }, box(1, 0.5)),
                  std::runtime_error);
}
