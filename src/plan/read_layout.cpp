#include <map>

#include <fmt/format.h>

#include "plan/read_sections.hpp"

namespace firstpick::plan {
namespace {

LayoutMove read_move(const toml::table& table, Reading& reading) {
  Fields in(table, section("layout.move"), reading);
  LayoutMove move;
  move.place = in.place();
  move.inserts = in.names("inserts");
  move.along = in.choice<Axis>("along", axis_words).value_or(Axis::x);
  move.mirror = in.yes_no("mirror").value_or(false);
  move.about = in.quantity<Length>("about");
  move.from = in.quantity<Length>("from");
  move.to = in.quantity<Length>("to");
  if (in.has("about") && !move.mirror)
    reading.faults.at(in.where("about"), "'about' is the plane of 'mirror', which is not true here",
                      "write mirror = true, or take 'about' out");
  if (move.mirror && move.inserts.size() == 1)
    reading.faults.at(in.where("mirror"), "one insert alone has no mirror image", "name the inserts on the other side too");
  if (move.from && move.to && !(*move.from < *move.to))
    reading.faults.at(in.where("to"), "'to' is not more than 'from'", "from = the least place, to = the greatest");
  return move;
}

KeepOut read_keep_out(const toml::table& table, Reading& reading) {
  Fields in(table, section("layout.keep_out"), reading);
  KeepOut box;
  box.place = in.place();
  if (const auto corners = in.two_points("corners")) {
    const auto& [a, b] = *corners;
    box.corners = {Position{std::min(a.x, b.x), std::min(a.y, b.y), std::min(a.z, b.z)},
                   Position{std::max(a.x, b.x), std::max(a.y, b.y), std::max(a.z, b.z)}};
  }
  return box;
}

}  // namespace

Layout read_layout(const toml::table& table, Reading& reading) {
  Fields in(table, section("layout"), reading);
  Layout layout;
  layout.place = in.place();
  layout.step = in.quantity<Length>("step").value_or(Length{});
  layout.legs = in.choice<LegLengths>("legs", leg_length_words).value_or(LegLengths::keep_length);
  layout.edge_distance = in.quantity<Length>("edge_distance");
  for (const toml::table* move : in.each("layout.move")) layout.moves.push_back(read_move(*move, reading));
  for (const toml::table* box : in.each("layout.keep_out")) layout.keep_outs.push_back(read_keep_out(*box, reading));

  std::map<std::pair<std::string, Axis>, Place> moved;
  for (const LayoutMove& move : layout.moves)
    for (const Placed<std::string>& insert : move.inserts)
      if (const auto [first, is_new] = moved.try_emplace({insert.value, move.along}, insert.place); !is_new)
        reading.faults.add(insert.place,
                           fmt::format("insert {} moves along {} already, in line {}", in_quotes(insert.value),
                                       axis_words[static_cast<std::size_t>(move.along)], first->second.line),
                           "name it once for each axis");
  return layout;
}

}  // namespace firstpick::plan
