#include "support/calculix_tree.hpp"

#include <unistd.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>
#include <string>

#include <fmt/format.h>

namespace firstpick::tests {

namespace {

namespace fs = std::filesystem;
using Point = std::array<double, 3>;  // m

Point point(const Position& p) { return {in(m, p.x), in(m, p.y), in(m, p.z)}; }

double distance(const Point& a, const Point& b) { return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]); }

// A millimetre off to one side and turned by a twentieth of a degree about a level axis.
Point disturbed(const Point& p) {
  constexpr double turn = 0.0008;
  const double c = std::cos(turn), s = std::sin(turn);
  return {c * p[0] - s * p[2] + 0.0008, p[1] - 0.0006, s * p[0] + c * p[2] - 0.0005};
}

struct Model {
  std::vector<Point> nodes;                     // from 1 in the deck
  std::vector<std::vector<std::size_t>> bodies;  // their nodes
  std::vector<std::size_t> fixed;
  std::vector<std::array<std::size_t, 2>> legs;
  std::vector<std::pair<std::size_t, double>> loads_kN;

  std::size_t on_body(std::size_t body, const Point& at) {
    nodes.push_back(disturbed(at));
    bodies[body].push_back(nodes.size());
    return nodes.size();
  }
  std::size_t in_space(const Point& at) {
    nodes.push_back(at);
    fixed.push_back(nodes.size());
    return nodes.size();
  }
};

Model model_of(const demands::HungPiece& piece, const demands::Hanging& rest) {
  Model model;
  model.bodies.resize(1 + piece.carriers.size());
  for (std::size_t i = 0; i < piece.legs.size(); ++i) {
    const demands::HungLeg& leg = piece.legs[i];
    const Point from = point(rest.spans[i][0]), to = point(rest.spans[i][1]);
    const std::size_t upper = leg.from_carrier ? model.on_body(1 + *leg.from_carrier, from) : model.in_space(from);
    model.legs.push_back({upper, model.on_body(leg.to_carrier ? 1 + *leg.to_carrier : 0, to)});
  }
  for (const loads::AppliedLoad& load : piece.loads)
    model.loads_kN.push_back({model.on_body(0, point(load.at)), in(kN, load.force)});
  for (std::size_t k = 0; k < piece.carriers.size(); ++k) {
    const demands::CarrierPose& pose = rest.carriers[k];
    const Position& c = piece.carriers[k].centre;
    const Position at = pose.origin + pose.axes[0] * c.x + pose.axes[1] * c.y + pose.axes[2] * c.z;
    model.loads_kN.push_back({model.on_body(1 + k, point(at)), in(kN, piece.carriers[k].weight)});
  }
  for (std::size_t body = 0; body < model.bodies.size(); ++body) {  // no net is flat
    const Point first = model.nodes[model.bodies[body].front() - 1];
    for (const Point& out : {Point{0.3, 0.2, 1.1}, Point{0.4, -0.9, -0.8}}) {
      model.nodes.push_back({first[0] + out[0], first[1] + out[1], first[2] + out[2]});
      model.bodies[body].push_back(model.nodes.size());
    }
  }
  return model;
}

// CalculiX takes a number without a point for a degree of freedom.
std::string with_point(double number) { return fmt::format("{:.9f}", number); }

void write_input(const fs::path& file, const Model& model, const demands::HungPiece& piece, const Direction& up) {
  std::ofstream out(file);
  out << "*NODE, NSET=ALL\n";
  for (std::size_t i = 0; i < model.nodes.size(); ++i)
    out << fmt::format("{}, {:.12f}, {:.12f}, {:.12f}\n", i + 1, model.nodes[i][0], model.nodes[i][1], model.nodes[i][2]);
  std::size_t element = 0;
  double stiffest = 0.0;
  for (std::size_t i = 0; i < model.legs.size(); ++i) {
    const demands::HungLeg& leg = piece.legs[i];
    const double length = in(m, leg.length), stiffness = in(kN, leg.axial_stiffness) / length;
    stiffest = std::max(stiffest, stiffness);
    // Pull over the elongation from where it starts: none up to its own length.
    const double slack = length - distance(model.nodes[model.legs[i][0] - 1], model.nodes[model.legs[i][1] - 1]);
    out << fmt::format("*ELEMENT, TYPE=SPRINGA, ELSET=E{0}\n{0}, {1}, {2}\n*SPRING, NONLINEAR, ELSET=E{0}\n", ++element,
                       model.legs[i][0], model.legs[i][1]);
    out << fmt::format("0.0, {}\n0.0, {}\n{}, {}\n", with_point(slack - 1.0), with_point(slack), with_point(stiffness),
                       with_point(slack + 1.0));
  }
  for (const auto& body : model.bodies)
    for (std::size_t a = 0; a < body.size(); ++a)
      for (std::size_t b = a + 1; b < body.size(); ++b) {
        if (distance(model.nodes[body[a] - 1], model.nodes[body[b] - 1]) < 1e-6) continue;
        out << fmt::format("*ELEMENT, TYPE=SPRINGA, ELSET=E{0}\n{0}, {1}, {2}\n*SPRING, ELSET=E{0}\n{3}\n", ++element,
                           body[a], body[b], with_point(1e6 * stiffest));
      }
  for (const auto& body : model.bodies)  // holds what is free: yaw
    for (const std::size_t node : body)
      for (int axis = 1; axis <= 3; ++axis)
        out << fmt::format("*ELEMENT, TYPE=SPRING1, ELSET=E{0}\n{0}, {1}\n*SPRING, ELSET=E{0}\n{2}\n0.001\n", ++element,
                           node, axis);
  out << "*BOUNDARY\n";
  for (const std::size_t node : model.fixed) out << fmt::format("{}, 1, 3\n", node);
  out << "*STEP, NLGEOM, INC=100\n*STATIC, DIRECT\n1.0, 1.0\n*CONTROLS, PARAMETERS=FIELD\n1.e-4, 1.e-4\n*CLOAD\n";
  for (const auto& [node, load] : model.loads_kN) {
    const std::array<double, 3> down = {-up.x * load, -up.y * load, -up.z * load};
    for (std::size_t axis = 0; axis < 3; ++axis) out << fmt::format("{}, {}, {}\n", node, axis + 1, with_point(down[axis]));
  }
  out << "*NODE PRINT, NSET=ALL\nU\n*END STEP\n";
}

std::map<std::size_t, Point> read_displacements(const fs::path& file) {
  std::map<std::size_t, Point> found;
  std::ifstream in_file(file);
  for (std::string line; std::getline(in_file, line);) {
    std::istringstream words(line);
    std::size_t node = 0;
    Point u{};
    if (words >> node >> u[0] >> u[1] >> u[2]) found[node] = u;
  }
  return found;
}

}  // namespace

std::optional<std::vector<Force>> calculix_tensions(const demands::HungPiece& piece, const demands::Hanging& rest) {
  const Model model = model_of(piece, rest);
  const fs::path folder = fs::temp_directory_path() / fmt::format("firstpick-calculix-tree-{}", getpid());
  fs::create_directories(folder);
  write_input(folder / "tree.inp", model, piece, rest.up);
  const std::string command = fmt::format("cd '{}' && OMP_NUM_THREADS=1 ccx tree >log 2>&1", folder.string());
  const bool ran = std::system(command.c_str()) == 0;
  const auto moved = ran ? read_displacements(folder / "tree.dat") : std::map<std::size_t, Point>{};
  fs::remove_all(folder);
  if (moved.size() != model.nodes.size()) return {};

  const auto place = [&](std::size_t node) {
    const Point &at = model.nodes[node - 1], &u = moved.at(node);
    return Point{at[0] + u[0], at[1] + u[1], at[2] + u[2]};
  };
  std::vector<Force> tensions;
  for (std::size_t i = 0; i < model.legs.size(); ++i) {
    const double strain = distance(place(model.legs[i][0]), place(model.legs[i][1])) / in(m, piece.legs[i].length) - 1.0;
    tensions.push_back(std::max(0.0, strain) * piece.legs[i].axial_stiffness);
  }
  return tensions;
}

}  // namespace firstpick::tests
