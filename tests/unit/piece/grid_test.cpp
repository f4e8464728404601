// Random boxes on a coarse grid, added and cut in random order, against a count of the grid's cells: an
// independent computation of volume, centroid, surface by direction, and of every fault of the steps.

#include <catch2/catch.hpp>

#include <array>
#include <random>
#include <set>

#include "unit/piece/pieces.hpp"

using namespace firstpick;
using namespace firstpick::pieces;

namespace {

constexpr int side = 6;  // cells along each edge of the grid
constexpr double cell_mm = 250.0;

using Cell = std::array<int, 3>;
using Cells = std::set<Cell>;

struct Block {
  Cell low, high;
  bool cut;
};

Cells cells_of(const Block& block) {
  Cells cells;
  for (int x = block.low[0]; x < block.high[0]; ++x)
    for (int y = block.low[1]; y < block.high[1]; ++y)
      for (int z = block.low[2]; z < block.high[2]; ++z) cells.insert({x, y, z});
  return cells;
}

Cell moved(Cell cell, std::size_t axis, int by) {
  cell[axis] += by;
  return cell;
}

std::size_t count_parts(const Cells& cells) {  // that hang together by faces
  Cells open = cells;
  std::size_t parts = 0;
  while (!open.empty()) {
    ++parts;
    std::vector<Cell> next = {*open.begin()};
    open.erase(open.begin());
    while (!next.empty()) {
      const Cell cell = next.back();
      next.pop_back();
      for (std::size_t axis = 0; axis < 3; ++axis)
        for (const int by : {-1, 1})
          if (open.erase(moved(cell, axis, by)) == 1) next.push_back(moved(cell, axis, by));
    }
  }
  return parts;
}

// Somewhere two cells touch only along a line or at a corner: no solid in the sense of the kernel.
bool has_pinch(const Cells& cells) {
  for (int x = -1; x <= side; ++x)
    for (int y = -1; y <= side; ++y)
      for (int z = -1; z <= side; ++z) {
        Cells block;
        for (int i = 0; i < 8; ++i) {
          const Cell cell = {x + (i & 1), y + (i >> 1 & 1), z + (i >> 2 & 1)};
          if (cells.contains(cell)) block.insert(cell);
        }
        Cells voids;
        for (int i = 0; i < 8; ++i) {
          const Cell cell = {x + (i & 1), y + (i >> 1 & 1), z + (i >> 2 & 1)};
          if (!cells.contains(cell)) voids.insert(cell);
        }
        if (count_parts(block) > 1 || count_parts(voids) > 1) return true;
      }
  return false;
}

double exposed_m2(const Cells& cells, std::size_t axis, int by) {
  double count = 0.0;
  for (const Cell& cell : cells) count += cells.contains(moved(cell, axis, by)) ? 0.0 : 1.0;
  return count * cell_mm * cell_mm * 1e-6;
}

struct Expected {
  Cells cells;
  std::vector<std::string> faults;
};

Expected expected_of(const std::vector<Block>& blocks) {
  Expected e;
  std::size_t line = 0;
  for (const Block& block : blocks) {
    line += 10;
    const Cells before = e.cells;
    for (const Cell& cell : cells_of(block))
      block.cut ? void(e.cells.erase(cell)) : void(e.cells.insert(cell));
    const std::string where = fmt::format("{}:1 solid 'block {}': ", line, line / 10);
    if (e.cells == before && block.cut)
      e.faults.push_back(where + "it cuts nothing away: it does not reach into the solids before it");
    if (e.cells == before && !block.cut)
      e.faults.push_back(where + "it adds nothing: it lies wholly inside the solids before it");
    if (e.cells.empty()) {
      e.faults.push_back(where + "it cuts everything away");
      return e;
    }
  }
  return e;
}

}  // namespace

TEST_CASE("random boxes agree with a count of cells") {
  std::mt19937 random(20260302);
  const auto pick = [&](int from, int to) { return std::uniform_int_distribution<int>(from, to)(random); };
  int bodies = 0, with_faults = 0, in_parts = 0;
  for (int trial = 0; trial < 60; ++trial) {
    std::vector<Block> blocks;
    const int count = pick(2, 5);
    for (int i = 0; i < count; ++i) {
      Block block{{}, {}, i > 0 && pick(0, 1) == 1};
      for (std::size_t axis = 0; axis < 3; ++axis) {
        block.low[axis] = pick(0, i == 0 ? 1 : side - 2);
        block.high[axis] = i == 0 ? pick(4, side) : pick(block.low[axis] + 1, side);
      }
      blocks.push_back(block);
    }
    const Expected expected = expected_of(blocks);
    if (has_pinch(expected.cells)) continue;  // told as a fault of its own, see faults_test.cpp

    std::vector<Solid> solids;
    std::string story;
    for (const Block& b : blocks) {
      Solid s = box(fmt::format("block {}", solids.size() + 1),
                    at(b.low[0] * cell_mm, b.low[1] * cell_mm, b.low[2] * cell_mm),
                    at((b.high[0] - b.low[0]) * cell_mm, (b.high[1] - b.low[1]) * cell_mm,
                       (b.high[2] - b.low[2]) * cell_mm));
      s.cut = b.cut;
      story += fmt::format("{}{} {} {} to {} {} {}; ", b.cut ? "-" : "+", b.low[0], b.low[1], b.low[2],
                           b.high[0], b.high[1], b.high[2]);
      solids.push_back(std::move(s));
    }
    CAPTURE(trial, story);
    const plan::Plan plan = plan_of(solids, {contact({"-z"})});
    if (!expected.faults.empty()) {
      ++with_faults;
      CHECK(faults(plan) == expected.faults);
    } else if (const std::size_t parts = count_parts(expected.cells); parts > 1) {
      ++in_parts;
      const auto told = faults(plan);
      REQUIRE_FALSE(told.empty());
      CHECK(told.front().find(fmt::format("the piece falls into {} parts here", parts)) != std::string::npos);
    } else {
      ++bodies;
      const auto body = body_of(plan);
      double x = 0.0, z = 0.0;
      for (const Cell& cell : expected.cells) {
        x += cell[0] + 0.5;
        z += cell[2] + 0.5;
      }
      const auto cells = static_cast<double>(expected.cells.size());
      CHECK(in(m3, body.volume) == Approx(cells * std::pow(cell_mm * 1e-3, 3)).epsilon(1e-12));
      CHECK(in(mm, body.centroid.x) == Approx(x / cells * cell_mm).epsilon(1e-9));
      CHECK(in(mm, body.centroid.z) == Approx(z / cells * cell_mm).epsilon(1e-9));
      CHECK(in(m2, body.contacts.at(0).area) == Approx(exposed_m2(expected.cells, 2, -1)).epsilon(1e-9));
      double surface = 0.0;
      for (std::size_t axis = 0; axis < 3; ++axis)
        for (const int by : {-1, 1}) surface += exposed_m2(expected.cells, axis, by);
      double ours = 0.0;
      for (const piece::Face& face : body.faces) ours += in(m2, face.area);
      CHECK(ours == Approx(surface).epsilon(1e-9));
    }
  }
  CHECK(bodies >= 15);
  CHECK(with_faults >= 5);
  CHECK(in_parts >= 1);
}
