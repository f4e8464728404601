#include "support/calculix_plate.hpp"

#include <unistd.h>

#include <array>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <string>
#include <utility>

#include <fmt/format.h>

namespace firstpick::tests {

namespace {

namespace fs = std::filesystem;
using demands::MembraneNodeForce;
using demands::PlateMesh;
using demands::PlatePoint;

constexpr double modulus = 1e6;  // scaled out of the results

struct QuadraticMesh {
  std::vector<PlatePoint> nodes;
  std::vector<std::array<int, 6>> triangles;  // from 1, corners then middles of the sides
};

QuadraticMesh quadratic(const PlateMesh& mesh) {
  QuadraticMesh made{mesh.nodes, {}};
  std::map<std::pair<int, int>, int> middles;
  for (const auto& corner : mesh.triangles) {
    std::array<int, 6> six{corner[0] + 1, corner[1] + 1, corner[2] + 1, 0, 0, 0};
    for (std::size_t i = 0; i < 3; ++i) {
      const int a = corner[i], b = corner[(i + 1) % 3];
      int& middle = middles[{std::min(a, b), std::max(a, b)}];
      if (middle == 0) {
        const PlatePoint p = mesh.nodes[static_cast<std::size_t>(a)], q = mesh.nodes[static_cast<std::size_t>(b)];
        made.nodes.push_back({0.5 * (p.x_m + q.x_m), 0.5 * (p.y_m + q.y_m)});
        middle = static_cast<int>(made.nodes.size());
      }
      six[3 + i] = middle;
    }
    made.triangles.push_back(six);
  }
  return made;
}

std::ofstream begun_input(const fs::path& file, const QuadraticMesh& mesh, double poisson, double thickness) {
  std::ofstream out(file);
  out << "*NODE, NSET=ALL\n";
  for (std::size_t i = 0; i < mesh.nodes.size(); ++i)
    out << fmt::format("{}, {:.12g}, {:.12g}, 0\n", i + 1, mesh.nodes[i].x_m, mesh.nodes[i].y_m);
  out << "*ELEMENT, TYPE=S6, ELSET=PLATE\n";
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
    const auto& n = mesh.triangles[t];
    out << fmt::format("{}, {}, {}, {}, {}, {}, {}\n", t + 1, n[0], n[1], n[2], n[3], n[4], n[5]);
  }
  out << fmt::format("*MATERIAL, NAME=M\n*ELASTIC\n{:.12g}, {:.12g}\n*SHELL SECTION, ELSET=PLATE, MATERIAL=M\n{:.12g}\n",
                     modulus, poisson, thickness);
  return out;
}

constexpr const char* asked_for = "*NODE FILE, OUTPUT=3D\nU\n*EL FILE, OUTPUT=3D\nS\n*END STEP\n";

void write_bent(const fs::path& file, const QuadraticMesh& mesh, const std::vector<int>& held, double poisson,
                double thickness) {
  std::ofstream out = begun_input(file, mesh, poisson, thickness);
  out << "*BOUNDARY\n";
  for (const int node : held) out << fmt::format("{}, 3, 3\n", node + 1);
  out << fmt::format("{}, 1, 2\n{}, 2, 2\n", held[0] + 1, held[1] + 1);
  out << "*STEP\n*STATIC\n*DLOAD\nPLATE, P, -1.0\n" << asked_for;
}

// The whole kept in its plane; three freedoms hold what already balances. The load is spread over the nodes as an even one
// on a triangle of six is: a third of it to the middle of each side.
void write_pulled(const fs::path& file, const QuadraticMesh& mesh, const PlatePoint& body,
                  const std::vector<MembraneNodeForce>& forces, double poisson, double thickness) {
  std::ofstream out = begun_input(file, mesh, poisson, thickness);
  std::size_t far = 0;
  for (std::size_t n = 1; n < mesh.nodes.size(); ++n)
    if (distance_m(mesh.nodes[n], mesh.nodes[0]) > distance_m(mesh.nodes[far], mesh.nodes[0])) far = n;
  const bool along_x = std::abs(mesh.nodes[far].x_m - mesh.nodes[0].x_m) >= std::abs(mesh.nodes[far].y_m - mesh.nodes[0].y_m);
  out << fmt::format("*BOUNDARY\nALL, 3, 3\n1, 1, 2\n{}, {}, {}\n", far + 1, along_x ? 2 : 1, along_x ? 2 : 1);
  std::map<int, std::array<double, 2>> loads;
  for (const auto& t : mesh.triangles) {
    const auto at = [&](std::size_t i) { return mesh.nodes[static_cast<std::size_t>(t[i] - 1)]; };
    const double area = 0.5 * std::abs((at(1).x_m - at(0).x_m) * (at(2).y_m - at(0).y_m) -
                                       (at(2).x_m - at(0).x_m) * (at(1).y_m - at(0).y_m));
    for (std::size_t side = 3; side < 6; ++side) {
      loads[t[side]][0] += area / 3.0 * body.x_m;
      loads[t[side]][1] += area / 3.0 * body.y_m;
    }
  }
  for (const MembraneNodeForce& force : forces) {
    loads[force.node + 1][0] += force.x;
    loads[force.node + 1][1] += force.y;
  }
  out << "*STEP\n*STATIC\n*CLOAD\n";
  for (const auto& [node, load] : loads)
    out << fmt::format("{0}, 1, {1:.12g}\n{0}, 2, {2:.12g}\n", node, load[0], load[1]);
  out << asked_for;
}

struct Results {  // by node of the bricks
  std::map<int, std::array<double, 4>> place, displacement, stress;  // stress: xx, yy, zz, xy
};

Results read_results(const fs::path& file) {
  Results results;
  std::ifstream in(file);
  std::map<int, std::array<double, 4>>* block = nullptr;
  for (std::string line; std::getline(in, line);) {
    if (line.starts_with("    2C")) block = &results.place;
    else if (line.starts_with("    3C")) block = nullptr;
    else if (line.starts_with(" -4  DISP")) block = &results.displacement;
    else if (line.starts_with(" -4  STRESS")) block = &results.stress;
    else if (line.starts_with(" -4")) block = nullptr;
    else if (line.starts_with(" -3")) block = nullptr;
    else if (block && line.starts_with(" -1") && line.size() >= 49) {
      std::array<double, 4> numbers{};
      for (std::size_t i = 0; i < 4 && line.size() >= 25 + 12 * i; ++i) numbers[i] = std::strtod(line.substr(13 + 12 * i, 12).c_str(), nullptr);
      (*block)[std::atoi(line.substr(3, 10).c_str())] = numbers;
    }
  }
  return results;
}

// The node of the bricks nearest to a place of a face.
int nearest(const Results& results, const PlatePoint& p, double z) {
  int best = 0;
  double least = 1e300;
  for (const auto& [node, at] : results.place) {
    const double distance = std::hypot(at[0] - p.x_m, at[1] - p.y_m, at[2] - z);
    if (distance < least) least = distance, best = node;
  }
  return best;
}

}  // namespace

bool calculix_is_installed() { return std::system("command -v ccx >/dev/null 2>&1") == 0; }

namespace {

// Nothing: it did not run, or wrote no result.
template <class Write>
std::optional<Results> results_of(const Write& write) {
  const fs::path folder = fs::temp_directory_path() / fmt::format("firstpick-calculix-{}", getpid());
  fs::create_directories(folder);
  write(folder / "plate.inp");
  const std::string command = fmt::format("cd '{}' && OMP_NUM_THREADS=1 ccx plate >log 2>&1", folder.string());
  const bool ran = std::system(command.c_str()) == 0;
  Results results = ran ? read_results(folder / "plate.frd") : Results{};
  fs::remove_all(folder);
  if (results.place.empty() || results.displacement.empty() || results.stress.empty()) return {};
  return results;
}

}  // namespace

std::optional<CalculixPlate> calculix_plate(const PlateMesh& mesh, const std::vector<int>& held, double poisson,
                                            double thickness, const std::vector<PlatePoint>& places) {
  const auto read = results_of(
      [&](const fs::path& file) { write_bent(file, quadratic(mesh), held, poisson, thickness); });
  if (!read) return {};
  const Results& results = *read;
  const double rigidity = modulus * std::pow(thickness, 3) / (12.0 * (1.0 - poisson * poisson));
  CalculixPlate plate;
  for (const PlatePoint& p : places) {
    const int top = nearest(results, p, 0.5 * thickness), bottom = nearest(results, p, -0.5 * thickness);
    // The pressure of -1 pushes against the normal, which is +z: down.
    plate.deflection.push_back(-0.5 * (results.displacement.at(top)[2] + results.displacement.at(bottom)[2]) * rigidity);
    const auto moment = [&](std::size_t component) {
      return (results.stress.at(bottom)[component] - results.stress.at(top)[component]) / 2.0 * thickness * thickness / 6.0;
    };
    plate.M_x.push_back(moment(0));
    plate.M_y.push_back(moment(1));
  }
  return plate;
}

std::optional<CalculixMembrane> calculix_membrane(const PlateMesh& mesh, const PlatePoint& body,
                                                  const std::vector<MembraneNodeForce>& forces, double poisson,
                                                  const std::vector<PlatePoint>& places) {
  constexpr double thickness = 0.01;
  const auto read = results_of(
      [&](const fs::path& file) { write_pulled(file, quadratic(mesh), body, forces, poisson, thickness); });
  if (!read) return {};
  CalculixMembrane membrane;
  for (const PlatePoint& p : places) {
    const int top = nearest(*read, p, 0.5 * thickness), bottom = nearest(*read, p, -0.5 * thickness);
    const auto mean = [&](const auto& values, std::size_t i) { return 0.5 * (values.at(top)[i] + values.at(bottom)[i]); };
    membrane.forces.push_back({thickness * mean(read->stress, 0), thickness * mean(read->stress, 1),
                               thickness * mean(read->stress, 3)});
    membrane.moved.push_back({modulus * thickness * mean(read->displacement, 0),
                              modulus * thickness * mean(read->displacement, 1)});
  }
  return membrane;
}

}  // namespace firstpick::tests
