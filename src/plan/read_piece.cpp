#include <algorithm>

#include <fmt/format.h>

#include "plan/read_sections.hpp"

namespace firstpick::plan {
namespace {

constexpr std::size_t most_points = 1000;  // of one prism: sides are compared two by two

void check_pipe(const Solid& solid, const Fields& in, Reading& reading) {
  const bool both = solid.diameter > Length{} && solid.inside_diameter > Length{};
  if (both && solid.inside_diameter >= solid.diameter)
    reading.faults.at(in.where("inside_diameter"),
                      fmt::format("'inside_diameter' must be less than 'diameter' in line {}",
                                  reading.faults.place_of(in.where("diameter")).line));
}

void check_cone(const Solid& solid, const Fields& in, Reading& reading) {
  const bool pointed = in.has("bottom_diameter") && in.has("top_diameter") &&
                       solid.bottom_diameter == Length{} && solid.top_diameter == Length{};
  if (pointed) reading.faults.at(in.where("top_diameter"), "a cone cannot be a point at both ends");
}

void check_prism(const Solid& solid, const Fields& in, Reading& reading) {
  std::size_t points = solid.outline.size();
  for (const auto& hole : solid.holes) points += hole.size();
  if (points > most_points)
    reading.faults.at(in.where("outline"),
                      fmt::format("a prism has at most {} points, with its holes", most_points));
}

std::string ending(const std::string& file) {
  std::string end = file.substr(std::min(file.rfind('.'), file.size()));
  for (char& c : end)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return end;
}

// An STL file does not say its unit; a unit taken for granted could make a piece a thousand times lighter.
void check_mesh(const Solid& solid, const Fields& in, Reading& reading) {
  if (solid.file.empty()) return;
  const std::string end = ending(solid.file);
  if (end == ".stl") {
    if (!in.has("file_unit"))
      reading.faults.at(in.where("file"), "an STL file needs the key 'file_unit'",
                        "for example: file_unit = \"1 mm\"");
  } else if (end == ".step" || end == ".stp") {
    if (in.has("file_unit"))
      reading.faults.at(in.where("file_unit"),
                        "'file_unit' is for STL files; a STEP file says its unit itself");
  } else {
    reading.faults.at(in.where("file"), "'file' must end in .step, .stp or .stl");
  }
}

Solid read_solid(const toml::table& table, Reading& reading) {
  Fields in(table, section("piece.solid"), reading);
  Solid solid;
  solid.place = in.place();
  solid.name = in.line("name");
  solid.cut = in.yes_no("cut").value_or(false);
  solid.at = in.xyz("at").value_or(Position{});
  solid.axis = in.choice<Axis>("axis", axis_words).value_or(Axis::z);
  solid.size = in.xyz("size").value_or(Position{});
  solid.diameter = in.quantity<Length>("diameter").value_or(Length{});
  solid.inside_diameter = in.quantity<Length>("inside_diameter").value_or(Length{});
  solid.bottom_diameter = in.quantity<Length>("bottom_diameter").value_or(Length{});
  solid.top_diameter = in.quantity<Length>("top_diameter").value_or(Length{});
  solid.length = in.quantity<Length>("length").value_or(Length{});
  solid.top_size = in.xy("top_size").value_or(std::array<Length, 2>{});
  solid.top_at = in.xy("top_at").value_or(std::array<Length, 2>{});
  solid.outline = in.points("outline");
  solid.holes = in.point_lists("holes");
  solid.file = in.line("file");
  solid.file_unit = in.quantity<Length>("file_unit").value_or(solid.file_unit);
  if (const toml::table* turned = in.inside("piece.solid.turned")) {
    Fields turn(*turned, section("piece.solid.turned"), reading);
    solid.turned_about = turn.choice<Axis>("about", axis_words);
    solid.turned_by = turn.quantity<Angle>("by").value_or(Angle{});
  }

  if (std::ranges::find(direction_words, solid.name) != direction_words.end())
    reading.faults.at(in.where("name"),
                      fmt::format("'name' cannot be {}: that is a direction", in_quotes(solid.name)));

  const auto shape = in.choice<Shape>("shape", shape_words);
  if (!shape) return solid;
  solid.shape = *shape;
  in.check_shape(word_for(*shape));
  if (*shape == Shape::pipe) check_pipe(solid, in, reading);
  if (*shape == Shape::cone) check_cone(solid, in, reading);
  if (*shape == Shape::prism) check_prism(solid, in, reading);
  if (*shape == Shape::mesh) check_mesh(solid, in, reading);
  return solid;
}

// Along it, no place twice: the program could not tell which way the strand or bar runs.
void check_path(const std::vector<Position>& line, const Fields& in, Reading& reading) {
  for (std::size_t i = 1; i < line.size(); ++i)
    if (norm(line[i] - line[i - 1]) == Length{})
      reading.faults.at(in.where("line"), fmt::format("points {} and {} of 'line' are the same", i, i + 1));
}

Strand read_strand(const toml::table& table, Reading& reading) {
  Fields in(table, section("piece.strand"), reading);
  Strand strand;
  strand.place = in.place();
  strand.name = in.line("name");
  strand.force = in.quantity<Force>("force");
  strand.line = in.path("line");
  strand.transfer_length = in.quantity<Length>("transfer_length");
  check_path(strand.line, in, reading);
  return strand;
}

Bar read_bar(const toml::table& table, Reading& reading) {
  Fields in(table, section("piece.bar"), reading);
  Bar bar;
  bar.place = in.place();
  bar.name = in.line("name");
  bar.area = in.quantity<Area>("area");
  bar.yield_strength = in.quantity<Stress>("yield_strength");
  bar.line = in.path("line");
  bar.spacing = in.quantity<Length>("spacing");
  check_path(bar.line, in, reading);
  return bar;
}

}  // namespace

Piece read_piece(const toml::table& table, Reading& reading) {
  Fields in(table, section("piece"), reading);
  Piece piece;
  piece.place = in.place();
  piece.mark = in.line("mark");
  piece.title = in.line("title");
  piece.revision = in.line("revision");
  piece.prepared_by = in.line("prepared_by");
  piece.engineer = in.line("engineer");
  piece.units = in.choice<UnitSystem>("units", unit_system_words).value_or(piece.units);
  piece.stated_weight = in.quantity<Force>("stated_weight");
  piece.model = in.choice<PieceModel>("model", piece_model_words);
  piece.bending_check = in.line("bending_check");
  piece.may_crack = in.yes_no("may_crack").value_or(false);
  for (const toml::table* strand : in.each("piece.strand")) piece.strands.push_back(read_strand(*strand, reading));
  for (const toml::table* bar : in.each("piece.bar")) piece.bars.push_back(read_bar(*bar, reading));
  for (const toml::table* solid : in.each("piece.solid")) piece.solids.push_back(read_solid(*solid, reading));
  if (!piece.solids.empty() && piece.solids.front().cut)
    reading.faults.add(piece.solids.front().place,
                       "the first solid is a cut: there is nothing to take away from");
  return piece;
}

}  // namespace firstpick::plan
