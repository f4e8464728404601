// Plans of pieces for the tests of piece/, written in a few words. Lengths in millimetres unless a type says
// more.
#pragma once

#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <fmt/format.h>

#include "piece/body.hpp"

namespace firstpick::pieces {

using plan::Axis;
using plan::Shape;
using plan::Solid;

inline Position at(double x_mm, double y_mm, double z_mm) { return {x_mm * mm, y_mm * mm, z_mm * mm}; }
inline Position at(Length x, Length y, Length z) { return {x, y, z}; }

inline Solid box(std::string name, Position corner, Position size) {
  Solid s;
  s.name = std::move(name);
  s.at = corner;
  s.size = size;
  return s;
}

inline Solid cylinder(std::string name, Position base, Length diameter, Length length, Axis axis = Axis::z) {
  Solid s;
  s.name = std::move(name);
  s.shape = Shape::cylinder;
  s.at = base;
  s.diameter = diameter;
  s.length = length;
  s.axis = axis;
  return s;
}

inline Solid pipe(std::string name, Position base, Length outside, Length inside, Length length,
                  Axis axis = Axis::z) {
  Solid s = cylinder(std::move(name), base, outside, length, axis);
  s.shape = Shape::pipe;
  s.inside_diameter = inside;
  return s;
}

inline Solid cone(std::string name, Position base, Length bottom, Length top, Length length,
                  Axis axis = Axis::z) {
  Solid s = cylinder(std::move(name), base, bottom, length, axis);
  s.shape = Shape::cone;
  s.bottom_diameter = bottom;
  s.top_diameter = top;
  return s;
}

inline std::vector<plan::PlanarPoint> points(std::vector<std::pair<double, double>> in_mm) {
  std::vector<plan::PlanarPoint> made;
  for (const auto& [x, y] : in_mm) made.push_back({x * mm, y * mm});
  return made;
}

inline Solid prism(std::string name, Position origin, std::vector<plan::PlanarPoint> outline, Length length,
                   Axis axis = Axis::z) {
  Solid s;
  s.name = std::move(name);
  s.shape = Shape::prism;
  s.at = origin;
  s.outline = std::move(outline);
  s.length = length;
  s.axis = axis;
  return s;
}

inline Solid wedge(std::string name, Position corner, Position size, std::array<Length, 2> top_size,
                   std::array<Length, 2> top_at) {
  Solid s = box(std::move(name), corner, size);
  s.shape = Shape::wedge;
  s.top_size = top_size;
  s.top_at = top_at;
  return s;
}

inline Solid cut(Solid s) {
  s.cut = true;
  return s;
}

inline Solid turned(Solid s, Axis about, Angle by) {
  s.turned_about = about;
  s.turned_by = by;
  return s;
}

inline plan::Insert insert(std::string id, Position point) {
  plan::Insert made;
  made.id = std::move(id);
  made.at = point;
  return made;
}

inline plan::Contact contact(std::vector<std::string> names, bool all_but = false) {
  plan::Contact made;
  made.faces.all_but = all_but;
  for (std::string& name : names) made.faces.names.push_back({std::move(name), {}});
  return made;
}

// The n-th solid stands in line 10 n, the n-th contact in line 100 n, its k-th name in column k; the n-th
// insert in line 1000 n, the piece in line 1: so a message can be told by its place.
inline plan::Plan plan_of(std::vector<Solid> solids, std::vector<plan::Contact> contacts = {},
                          std::vector<plan::Insert> inserts = {}) {
  plan::Plan plan;
  plan.file = "piece.toml";
  plan.piece.place = {1, 1};
  plan.piece.solids = std::move(solids);
  plan.inserts = std::move(inserts);
  std::size_t n = 0;
  for (Solid& solid : plan.piece.solids) solid.place = {10 * ++n, 1};
  n = 0;
  for (plan::Insert& each : plan.inserts) each.place = {1000 * ++n, 1};
  n = 0;
  if (!contacts.empty()) plan.form.emplace();
  for (plan::Contact& each : contacts) {
    each.place = {100 * ++n, 1};
    std::size_t k = 0;
    for (auto& name : each.faces.names) name.place = {100 * n, ++k};
    plan.form->contacts.push_back(std::move(each));
  }
  return plan;
}

// The messages of a plan as "line:column what [help]"; empty if it makes a body.
inline std::vector<std::string> faults(const plan::Plan& plan) {
  const auto made = piece::make_body(plan);
  std::vector<std::string> texts;
  if (const auto* diagnostics = std::get_if<std::vector<Diagnostic>>(&made))
    for (const Diagnostic& d : *diagnostics)
      texts.push_back(fmt::format("{}:{} {}{}", d.place.line, d.place.column, d.what,
                                  d.help.empty() ? "" : " [" + d.help + "]"));
  return texts;
}

// The body of a plan that has no fault; else an exception that carries the messages.
inline piece::Body body_of(const plan::Plan& plan) {
  auto made = piece::make_body(plan);
  if (auto* body = std::get_if<piece::Body>(&made)) return std::move(*body);
  std::string all;
  for (const std::string& text : faults(plan)) all += text + "\n";
  throw std::runtime_error(all);
}

inline piece::Body body_of(std::vector<Solid> solids) { return body_of(plan_of(std::move(solids))); }

// Three pieces of the trade.
inline std::vector<Solid> box_culvert() {
  return {box("outer", {}, at(112.0 * inch, 6.0 * ft, 88.0 * inch)),
          cut(box("barrel", at(8.0 * inch, 0.0 * inch, 8.0 * inch), at(8.0 * ft, 6.0 * ft, 6.0 * ft)))};
}

inline std::vector<Solid> manhole_base() {
  return {
      cylinder("outer", {}, 58.0 * inch, 54.0 * inch),
      cut(cylinder("bore", at(0.0 * inch, 0.0 * inch, 6.0 * inch), 48.0 * inch, 48.0 * inch)),
      cut(cylinder("inlet", at(0.0 * inch, 0.0 * inch, 20.0 * inch), 15.0 * inch, 40.0 * inch, Axis::x)),
      cut(cylinder("outlet", at(0.0 * inch, 0.0 * inch, 16.0 * inch), 15.0 * inch, 40.0 * inch, Axis::y))};
}

inline std::vector<Solid> wall_panel() {
  return {box("panel", {}, at(6000, 3000, 180)), cut(box("window", at(1000, 1000, 0), at(1200, 1100, 180)))};
}

}  // namespace firstpick::pieces
