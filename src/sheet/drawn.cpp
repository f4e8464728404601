#include "sheet/drawn.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "card/typeset.hpp"
#include "checks/finding.hpp"
#include "record/diagnostic.hpp"
#include "units/print.hpp"

namespace firstpick::sheet {

namespace {

using card::Align;
using card::Box;
using card::LineMark;
using card::Point;
using card::Rect;
using checks::Report;

constexpr double wide = 420.0, letters = 7.5, line_high = 11.0;

LineMark line(std::vector<Point> points, double thick, bool dashed = false) {
  return {std::move(points), thick, dashed, -1.0};
}

LineMark area(std::vector<Point> points, double grey) { return {std::move(points), 0.0, false, grey}; }

// `at`: the middle of the words, or their left or right end.
void write(Box& box, const std::string& text, const Point& at, Align align = Align::left, bool clears = false) {
  const card::Words words{.text = printable(text), .size = letters};
  const card::Extent extent = card::extent_of(words, wide);
  const double left = align == Align::left ? at.x : align == Align::right ? at.x - extent.width : at.x - extent.width / 2;
  box.texts.push_back({{std::clamp(left, 0.0, std::max(0.0, wide - extent.width - 1.0)), at.y - extent.height / 2,
                        extent.width + 0.5, extent.height}, words, clears});
}

// Places in metres, drawn to one scale into a rectangle, y upwards.
class Scaled {
 public:
  Scaled(const std::vector<plan::PlanarPoint>& all, const Rect& room) {
    double low_x = 1e300, high_x = -1e300, low_y = 1e300, high_y = -1e300;
    for (const auto& p : all) {
      low_x = std::min(low_x, in(m, p.x)), high_x = std::max(high_x, in(m, p.x));
      low_y = std::min(low_y, in(m, p.y)), high_y = std::max(high_y, in(m, p.y));
    }
    scale_ = std::min(room.width / std::max(high_x - low_x, 1e-6), room.height / std::max(high_y - low_y, 1e-6));
    x0_ = room.x + room.width / 2 - scale_ * (low_x + high_x) / 2;
    y0_ = room.y + room.height / 2 + scale_ * (low_y + high_y) / 2;
  }
  Point operator()(const plan::PlanarPoint& p) const { return {x0_ + scale_ * in(m, p.x), y0_ - scale_ * in(m, p.y)}; }
  std::vector<Point> ring(const std::vector<plan::PlanarPoint>& points) const {
    std::vector<Point> made;
    for (const auto& p : points) made.push_back((*this)(p));
    if (!made.empty()) made.push_back(made.front());
    return made;
  }
  double points_per_metre() const { return scale_; }

 private:
  double scale_ = 1.0, x0_ = 0.0, y0_ = 0.0;
};

double high_for(const std::vector<plan::PlanarPoint>& outline, double width, double most) {
  double low_x = 1e300, high_x = -1e300, low_y = 1e300, high_y = -1e300;
  for (const auto& p : outline) {
    low_x = std::min(low_x, in(m, p.x)), high_x = std::max(high_x, in(m, p.x));
    low_y = std::min(low_y, in(m, p.y)), high_y = std::max(high_y, in(m, p.y));
  }
  return std::clamp(width * (high_y - low_y) / std::max(high_x - low_x, 1e-6), 60.0, most);
}

void draw_outline(Box& box, const piece::Outline& outline, const Scaled& scaled, double thick) {
  box.lines.push_back(line(scaled.ring(outline.outer), thick));
  for (const auto& hole : outline.holes) box.lines.push_back(line(scaled.ring(hole), thick));
}

Figure breakout_figure(const checks::BreakoutFace& face, const Report& report, const std::string& caption) {
  const double high = high_for(face.outline.outer, wide - 60.0, 300.0) + 16.0;
  Box box{.name = "breakout", .at = {0.0, 0.0, wide, high}, .lines = {}, .texts = {}};
  const Scaled scaled(face.outline.outer, {30.0, 8.0, wide - 60.0, high - 16.0});
  for (const auto& body : face.bodies)
    for (const auto& part : body.reached) box.lines.push_back(area(scaled.ring(part), 0.85));
  for (const auto& body : face.bodies) {
    for (const auto& hole : body.covered.holes) box.lines.push_back(area(scaled.ring(hole), 1.0));
    box.lines.push_back(line(scaled.ring(body.covered.outer), 0.6, true));
  }
  draw_outline(box, face.outline, scaled, 1.0);
  for (const auto& body : face.bodies) {
    const Point at = scaled(body.at);
    box.lines.push_back({card::circle(at, 2.2), 0.8, false, 0.0});
    write(box, body.insert, {at.x, at.y - 9.0}, Align::centre, true);
  }
  std::string words = "breakout bodies on the " + face.side;
  std::string told = caption + ": " + face.side + ", areas A_Nc of the breakout bodies, grey, cut off at edges and openings, white where it lies behind an opening: ";
  for (std::size_t i = 0; i < face.areas.size(); ++i)
    told += fmt::format("{}{} {}", i == 0 ? "" : "; ", face.areas[i].first, print(face.areas[i].second, report.units));
  return {told, {wide, high, {std::move(box)}}, words};
}

// Shares of the tension allowed; the last band is beyond it.
constexpr std::array<double, 6> bands = {0.2, 0.4, 0.6, 0.8, 1.0, 1e300};
constexpr std::array<double, 6> greys = {1.0, 0.88, 0.74, 0.58, 0.4, 0.0};

std::size_t band_of(double share) {
  std::size_t band = 0;
  while (band + 1 < bands.size() && share > bands[band]) ++band;
  return band;
}

void draw_legend(Box& box, double y, bool of_allowed) {
  double x = 4.0;
  for (std::size_t i = 0; i < bands.size(); ++i) {
    if (!of_allowed && i + 1 == bands.size()) break;
    const Rect swatch{x, y - 4.0, 12.0, 8.0};
    box.lines.push_back(area(card::outline(swatch), greys[i]));
    box.lines.push_back(line(card::outline(swatch), 0.4));
    const std::string text = i + 1 == bands.size() ? "over 100 %" : fmt::format("to {:.0f} %", 100.0 * bands[i]);
    write(box, text, {x + 15.0, y});
    x += 15.0 + card::extent_of({.text = text, .size = letters}, wide).width + 8.0;
  }
  write(box, of_allowed ? "of the tension allowed" : "of the largest tension", {x, y});
}

// What of a rectangle lies on the side of another, which cells at the rim of a face may pass.
Rect within(const Rect& cell, const Rect& face) {
  const double x = std::max(cell.x, face.x), y = std::max(cell.y, face.y);
  return {x, y, std::min(cell.x + cell.width, face.x + face.width) - x, std::min(cell.y + cell.height, face.y + face.height) - y};
}

Rect around(const std::vector<Point>& points) {
  const auto [left, right] = std::ranges::minmax(points, {}, &Point::x);
  const auto [above, below] = std::ranges::minmax(points, {}, &Point::y);
  return {left.x, above.y, right.x - left.x, below.y - above.y};
}

// Cells of one grey beside each other in one bar.
void draw_cells(Box& box, const checks::TensionMap& map, Stress checks::TensionMap::Cell::*face, Stress whole,
                const Scaled& scaled) {
  const double side = scaled.points_per_metre() * in(m, map.side);
  const Rect rim = around(scaled.ring(map.outline.outer));
  for (std::size_t i = 0; i < map.cells.size();) {
    const auto band = [&](std::size_t at) { return band_of((map.cells[at].*face / whole).value()); };
    std::size_t end = i + 1;
    while (end < map.cells.size() && band(end) == band(i) && map.cells[end].middle.y == map.cells[i].middle.y &&
           map.cells[end].middle.x - map.cells[end - 1].middle.x < 1.5 * map.side)
      ++end;
    const Point from = scaled(map.cells[i].middle);
    if (band(i) > 0)
      box.lines.push_back(area(card::outline(within({from.x - side / 2, from.y - side / 2,
                                                     side * static_cast<double>(end - i), side}, rim)),
                               greys[band(i)]));
    i = end;
  }
}

Figure map_figure(const checks::TensionPicture& picture, const Report& report, const std::string& caption) {
  const checks::TensionMap& map = *picture.map;
  const double each = wide / 2 - 10.0;
  const double high = high_for(map.outline.outer, each - 12.0, 260.0) + 3.0 * line_high + 12.0;
  Box box{.name = "tension", .at = {0.0, 0.0, wide, high}, .lines = {}, .texts = {}};
  Stress largest{};
  for (const auto& cell : map.cells) largest = std::max({largest, cell.bottom, cell.top});
  // Where little of what is allowed is used, shades of it would all be white.
  const bool of_allowed = picture.allowed && *picture.allowed > Stress{} && largest > 0.4 * *picture.allowed;
  const Stress whole = of_allowed ? *picture.allowed : std::max(largest, 1.0 * psi);
  using Cell = checks::TensionMap::Cell;
  for (const auto& [face, title, left] : {std::tuple{&Cell::top, "top as cast, seen from above", 0.0},
                                          {&Cell::bottom, "bottom as cast, seen from above", wide / 2}}) {
    const Scaled scaled(map.outline.outer, {left + 16.0, line_high + 6.0, each - 12.0, high - 3.0 * line_high - 12.0});
    draw_cells(box, map, face, whole, scaled);
    draw_outline(box, map.outline, scaled, 1.0);
    for (const auto& pick : map.picks) box.lines.push_back({card::circle(scaled(pick), 2.6), 1.0, false, 1.0});
    Stress most{};
    for (const auto& cell : map.cells) most = std::max(most, cell.*face);
    write(box, fmt::format("{}: at most {}", title, print(most, report.units, Rounding::up)),
          {left + each / 2, line_high / 2 + 1.0}, Align::centre);
  }
  draw_legend(box, high - line_high, of_allowed);
  const std::string allowed =
      picture.allowed ? fmt::format("; {} is allowed", print(*picture.allowed, report.units, Rounding::down)) : "";
  return {caption + ": largest tension in bending" + (picture.turned ? " alone, without that along the panel, " : ", ") +
              picture.situation + allowed +
              ". Circles: picks. At them the rule reads the mean over a strip, which is in the calculation and not here. "
              "The shades are from a coarse mesh: the number that counts is in the calculation.",
          {wide, high, {std::move(box)}}, "tension in bending over the panel, as shades"};
}

// A chart: x to the right from `low` to `high`, y upwards from `least` to `most`.
struct Chart {
  Rect room;
  double low = 0.0, high = 1.0, least = 0.0, most = 1.0;
  Point at(double x, double y) const {
    return {room.x + room.width * (x - low) / (high - low), room.y + room.height * (most - y) / (most - least)};
  }
};

// 1, 2 or 5 times a power of ten: four to ten steps over the range.
double step_for(double range) {
  const double power = std::pow(10.0, std::floor(std::log10(range / 4.0)));
  for (const double times : {5.0, 2.0})
    if (range / (times * power) >= 4.0) return times * power;
  return power;
}

void draw_axes(Box& box, const Chart& chart, const std::string& across, const std::string& up) {
  box.lines.push_back(line(card::outline(chart.room), 0.6));
  const double dx = step_for(chart.high - chart.low), dy = step_for(chart.most - chart.least);
  for (double x = std::ceil(chart.low / dx - 1e-9) * dx; x <= chart.high + 1e-9 * dx; x += dx) {
    const Point foot = chart.at(x, chart.least);
    box.lines.push_back(line({foot, {foot.x, foot.y + 3.0}}, 0.5));
    write(box, fmt::format("{:g}", std::abs(x) < 1e-9 * dx ? 0.0 : x), {foot.x, foot.y + 8.5}, Align::centre);
  }
  for (double y = std::ceil(chart.least / dy - 1e-9) * dy; y <= chart.most + 1e-9 * dy; y += dy) {
    const Point side = chart.at(chart.low, y);
    box.lines.push_back(line({side, chart.at(chart.high, y)}, 0.25));
    write(box, fmt::format("{:g}", std::abs(y) < 1e-9 * dy ? 0.0 : y), {side.x - 3.0, side.y}, Align::right);
  }
  write(box, across, {chart.room.x + chart.room.width / 2, chart.room.y + chart.room.height + 19.0}, Align::centre);
  write(box, up, {2.0, chart.room.y - 7.0});
}

struct Curve {
  std::string name;
  std::vector<std::pair<double, double>> points;
  double thick = 1.2;
  bool dashed = false;
};

void draw_curves(Box& box, const Chart& chart, const std::vector<Curve>& curves) {
  double x = chart.room.x + chart.room.width;
  for (auto curve = curves.rbegin(); curve != curves.rend(); ++curve) {
    std::vector<Point> points;
    for (const auto& [across, up] : curve->points) points.push_back(chart.at(across, up));
    box.lines.push_back(line(points, curve->thick, curve->dashed));
    const double width = card::extent_of({.text = curve->name, .size = letters}, wide).width;
    x -= width + 2.0;
    write(box, curve->name, {x, chart.room.y - 7.0});
    x -= 20.0;
    box.lines.push_back(line({{x, chart.room.y - 7.0}, {x + 16.0, chart.room.y - 7.0}}, curve->thick, curve->dashed));
    x -= 8.0;
  }
}

Figure line_figure(const checks::TensionPicture& picture, const Report& report, const std::string& caption) {
  const checks::TensionLine& told = *picture.line;
  const double high = 190.0;
  Box box{.name = "tension", .at = {0.0, 0.0, wide, high}, .lines = {}, .texts = {}};
  Stress largest = picture.allowed.value_or(Stress{});
  for (const auto& section : told.sections) largest = std::max({largest, abs(section.top), abs(section.bottom)});
  const bool us = report.units == UnitSystem::us;
  const auto stress = [&](Stress s) { return us ? in(psi, s) : in(MPa, s); };
  const auto place = [&](Length l) { return us ? in(ft, l) : in(m, l); };
  Chart chart{.room = {44.0, 18.0, wide - 54.0, high - 44.0}, .low = place(told.sections.front().at),
              .high = place(told.sections.back().at), .least = -1.05 * stress(largest), .most = 1.05 * stress(largest)};
  if (!(chart.high > chart.low) || !(chart.most > 0.0)) return {};
  draw_axes(box, chart, fmt::format("place along {}, {}", told.axis, us ? "ft" : "m"),
            fmt::format("stress, {}, tension up", us ? "psi" : "MPa"));
  Curve top{"top", {}, 1.6, false}, bottom{"bottom", {}, 1.2, true}, allowed{"allowed", {}, 0.6, false};
  for (const auto& section : told.sections) {
    top.points.emplace_back(place(section.at), stress(section.top));
    bottom.points.emplace_back(place(section.at), stress(section.bottom));
  }
  std::vector<Curve> curves{top, bottom};
  if (picture.allowed) {
    allowed.points = {{chart.low, stress(*picture.allowed)}, {chart.high, stress(*picture.allowed)}};
    curves.push_back(allowed);
  }
  draw_curves(box, chart, curves);
  return {caption + ": stress along the piece, " + picture.situation + ".", {wide, high, {std::move(box)}},
          "stress at top and bottom along the piece, as curves"};
}

Figure turn_figure(const std::vector<checks::TurnAt>& turn, const Report& report, const std::string& caption) {
  const double high = 190.0;
  Box box{.name = "turn", .at = {0.0, 0.0, wide, high}, .lines = {}, .texts = {}};
  const bool us = report.units == UnitSystem::us;
  const auto force = [&](Force f) { return us ? in(kip, f) : in(kN, f); };
  double most = 0.0, tail = 0.0, edge = 0.0;
  Curve main_pull{"hook", {}, 1.6, false}, tail_pull{"second hook", {}, 1.2, true}, reaction{"edge on the ground", {}, 0.7, true};
  for (const checks::TurnAt& at : turn) {
    const double angle = in(deg, at.angle);
    main_pull.points.emplace_back(angle, force(at.main));
    tail_pull.points.emplace_back(angle, force(at.tail));
    reaction.points.emplace_back(angle, force(at.edge));
    tail = std::max(tail, force(at.tail)), edge = std::max(edge, force(at.edge));
    most = std::max({most, force(at.main), tail, edge});
  }
  Chart chart{.room = {44.0, 18.0, wide - 54.0, high - 44.0}, .low = in(deg, turn.front().angle),
              .high = in(deg, turn.back().angle), .least = 0.0, .most = 1.08 * most};
  if (!(chart.high > chart.low) || !(chart.most > 0.0)) return {};
  draw_axes(box, chart, "angle of the turn, deg", us ? "pull, kip" : "pull, kN");
  std::vector<Curve> curves{main_pull};
  if (tail > 0.0) curves.push_back(tail_pull);
  if (edge > 0.0) curves.push_back(reaction);
  draw_curves(box, chart, curves);
  return {caption + ": what the hook pulls on the piece, and the edge carries, while it turns; dynamic factor included.",
          {wide, high, {std::move(box)}}, "pulls over the angle of the turn, as curves"};
}

void add(Section& section, Figure figure) {
  if (!figure.page.boxes.empty()) section.figures.push_back(std::move(figure));
}

}  // namespace

std::vector<Section> drawn_sections(const Report& report, const std::vector<checks::StageFigures>& drawn) {
  Section breakouts{.title = "Breakout areas"}, tension{.title = "Tension over the piece"}, turns{.title = "The turn"};
  for (std::size_t i = 0; i < drawn.size() && i < report.stages.size(); ++i) {
    const std::string stage = fmt::format("Stage {}", checks::word_for(report.stages[i].kind));
    for (const checks::BreakoutFace& face : drawn[i].breakouts) add(breakouts, breakout_figure(face, report, stage));
    if (const auto& picture = drawn[i].tension) {
      if (picture->map && !picture->map->cells.empty()) add(tension, map_figure(*picture, report, stage));
      if (picture->line && !picture->line->sections.empty()) add(tension, line_figure(*picture, report, stage));
    }
    if (!drawn[i].turn.empty()) add(turns, turn_figure(drawn[i].turn, report, stage));
  }
  std::vector<Section> all;
  for (Section* section : {&breakouts, &tension, &turns})
    if (!section->figures.empty()) all.push_back(std::move(*section));
  return all;
}

}  // namespace firstpick::sheet
