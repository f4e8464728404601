#include "support/calculix_solid.hpp"

#include <unistd.h>

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <string>

#include <fmt/format.h>

namespace firstpick::tests {

namespace {

namespace fs = std::filesystem;

using Corner = std::array<int, 3>;  // on a grid twice as fine: corners even, middles of edges odd in one way

// In the order of the bricks of twenty nodes: below, above, then middles of edges below, above, upright.
constexpr std::array<Corner, 20> around = {{{0, 0, 0}, {2, 0, 0}, {2, 2, 0}, {0, 2, 0}, {0, 0, 2}, {2, 0, 2}, {2, 2, 2},
                                            {0, 2, 2}, {1, 0, 0}, {2, 1, 0}, {1, 2, 0}, {0, 1, 0}, {1, 0, 2}, {2, 1, 2},
                                            {1, 2, 2}, {0, 1, 2}, {0, 0, 1}, {2, 0, 1}, {2, 2, 1}, {0, 2, 1}}};

double place_on(const std::vector<double>& planes, int doubled) {
  const auto i = static_cast<std::size_t>(doubled / 2);
  return doubled % 2 == 0 ? planes[i] : 0.5 * (planes[i] + planes[i + 1]);
}

struct Bricks {
  std::map<Corner, int> nodes;  // from 1
  std::vector<std::array<int, 20>> elements;
};

Bricks bricks_of(const BrickGrid& grid) {
  Bricks made;
  for (int i = 0; i + 1 < static_cast<int>(grid.x.size()); ++i)
    for (int j = 0; j + 1 < static_cast<int>(grid.y.size()); ++j)
      for (int k = 0; k + 1 < static_cast<int>(grid.z.size()); ++k) {
        if (!grid.is_concrete(place_on(grid.x, 2 * i + 1), place_on(grid.y, 2 * j + 1), place_on(grid.z, 2 * k + 1))) continue;
        std::array<int, 20> element{};
        for (std::size_t n = 0; n < 20; ++n) {
          const Corner at{2 * i + around[n][0], 2 * j + around[n][1], 2 * k + around[n][2]};
          element[n] = made.nodes.try_emplace(at, static_cast<int>(made.nodes.size()) + 1).first->second;
        }
        made.elements.push_back(element);
      }
  return made;
}

void write_input(const fs::path& file, const BrickGrid& grid, const Bricks& bricks) {
  std::ofstream out(file);
  out << "*NODE, NSET=ALL\n";
  for (const auto& [at, number] : bricks.nodes)
    out << fmt::format("{}, {:.12g}, {:.12g}, {:.12g}\n", number, place_on(grid.x, at[0]), place_on(grid.y, at[1]),
                       place_on(grid.z, at[2]));
  out << "*ELEMENT, TYPE=C3D20R, ELSET=BODY\n";
  for (std::size_t e = 0; e < bricks.elements.size(); ++e) {
    out << e + 1;
    for (std::size_t n = 0; n < 20; ++n) out << (n == 10 ? ",\n" : ", ") << bricks.elements[e][n];
    out << "\n";
  }
  out << fmt::format("*MATERIAL, NAME=M\n*ELASTIC\n3e10, {:.12g}\n*DENSITY\n{:.12g}\n*SOLID SECTION, ELSET=BODY, MATERIAL=M\n",
                     grid.poisson, grid.weight);
  out << "*BOUNDARY\n";
  std::vector<int> first_of_line;
  for (const auto& line : grid.held_up) {
    bool first = true;
    for (const auto& [at, number] : bricks.nodes) {
      if (std::hypot(place_on(grid.x, at[0]) - line[0], place_on(grid.y, at[1]) - line[1]) > 1e-9) continue;
      out << fmt::format("{}, 3, 3\n", number);
      if (first) first_of_line.push_back(number);
      first = false;
    }
  }
  const auto chosen = [&](const std::function<bool(double, double, double)>& which) {
    std::vector<int> numbers;
    for (const auto& [at, number] : bricks.nodes)
      if (which && which(place_on(grid.x, at[0]), place_on(grid.y, at[1]), place_on(grid.z, at[2]))) numbers.push_back(number);
    return numbers;
  };
  for (const int number : chosen(grid.held_fast)) out << fmt::format("{}, 1, 3\n", number);
  for (const int number : chosen(grid.no_way_along_y)) out << fmt::format("{}, 2, 2\n", number);
  if (!grid.held_fast) out << fmt::format("{}, 1, 2\n{}, 2, 2\n", first_of_line.at(0), first_of_line.at(1));
  out << "*STEP\n*STATIC\n";
  if (grid.weight > 0.0) out << "*DLOAD\nBODY, GRAV, 1.0, 0., 0., -1.\n";
  if (const std::vector<int> pulled = chosen(grid.pulled); !pulled.empty()) {
    out << "*CLOAD\n";
    for (const int number : pulled)
      for (std::size_t i = 0; i < 3; ++i)
        out << fmt::format("{}, {}, {:.12g}\n", number, i + 1, grid.pull[i] / static_cast<double>(pulled.size()));
  }
  out << "*EL FILE\nS\n*END STEP\n";
}

std::map<int, std::array<double, 3>> read_stresses(const fs::path& file) {
  std::map<int, std::array<double, 3>> stresses;
  std::ifstream in(file);
  bool here = false;
  for (std::string line; std::getline(in, line);) {
    if (line.starts_with(" -4")) here = line.starts_with(" -4  STRESS");
    else if (line.starts_with(" -3")) here = false;
    else if (here && line.starts_with(" -1") && line.size() >= 49) {
      std::array<double, 3> numbers{};
      for (std::size_t i = 0; i < 3; ++i) numbers[i] = std::strtod(line.substr(13 + 12 * i, 12).c_str(), nullptr);
      stresses[std::atoi(line.substr(3, 10).c_str())] = numbers;
    }
  }
  return stresses;
}

}  // namespace

namespace {

std::map<int, std::array<double, 3>> solved(const BrickGrid& grid, const Bricks& bricks) {
  const fs::path folder = fs::temp_directory_path() / fmt::format("firstpick-calculix-bricks-{}", getpid());
  fs::create_directories(folder);
  write_input(folder / "bricks.inp", grid, bricks);
  const std::string command = fmt::format("cd '{}' && OMP_NUM_THREADS=1 ccx bricks >log 2>&1", folder.string());
  const bool ran = std::system(command.c_str()) == 0;
  auto stresses = ran ? read_stresses(folder / "bricks.frd") : std::map<int, std::array<double, 3>>{};
  fs::remove_all(folder);
  return stresses;
}

}  // namespace

std::optional<std::vector<BrickStress>> calculix_brick_stresses(const BrickGrid& grid) {
  const Bricks bricks = bricks_of(grid);
  const auto stresses = solved(grid, bricks);
  if (stresses.empty()) return {};
  std::vector<BrickStress> found;
  for (const auto& [at, number] : bricks.nodes)
    if (const auto stress = stresses.find(number); stress != stresses.end())
      found.push_back({{place_on(grid.x, at[0]), place_on(grid.y, at[1]), place_on(grid.z, at[2])}, stress->second});
  return found;
}

std::optional<std::vector<std::array<double, 3>>> calculix_bricks(const BrickGrid& grid,
                                                                  const std::vector<std::array<double, 3>>& places) {
  const Bricks bricks = bricks_of(grid);
  const auto stresses = solved(grid, bricks);
  if (stresses.empty()) return {};
  std::vector<std::array<double, 3>> found;
  for (const auto& place : places) {
    int best = 0;
    double least = 1e300;
    for (const auto& [at, number] : bricks.nodes) {
      const double distance = std::hypot(place_on(grid.x, at[0]) - place[0], place_on(grid.y, at[1]) - place[1],
                                         place_on(grid.z, at[2]) - place[2]);
      if (distance < least) least = distance, best = number;
    }
    if (least > 1e-6 || !stresses.contains(best)) return {};
    found.push_back(stresses.at(best));
  }
  return found;
}

}  // namespace firstpick::tests
