#include "card/page.hpp"

#include <cmath>

#include <fmt/format.h>

namespace firstpick::card {

namespace {
constexpr double rounding = 1e-6;
}

bool overlap(const Rect& a, const Rect& b) {
  return a.x + a.width > b.x + rounding && b.x + b.width > a.x + rounding &&
         a.y + a.height > b.y + rounding && b.y + b.height > a.y + rounding;
}

bool inside(const Rect& inner, const Rect& outer) {
  return inner.x >= outer.x - rounding && inner.y >= outer.y - rounding &&
         inner.x + inner.width <= outer.x + outer.width + rounding &&
         inner.y + inner.height <= outer.y + outer.height + rounding;
}

std::vector<Point> circle(Point centre, double radius) {
  constexpr int chords = 48;
  constexpr double pi = 3.14159265358979323846;
  std::vector<Point> points;
  for (int i = 0; i <= chords; ++i) {
    const double turn = 2.0 * pi * i / chords;
    points.push_back({centre.x + radius * std::cos(turn), centre.y + radius * std::sin(turn)});
  }
  return points;
}

std::vector<Point> outline(const Rect& r) {
  return {
      {r.x, r.y}, {r.x + r.width, r.y}, {r.x + r.width, r.y + r.height}, {r.x, r.y + r.height}, {r.x, r.y}};
}

bool is_heavy(const LineMark& line) { return line.thick >= 0.7 && line.fill < 0.0; }

std::string box_list(const Page& page) {
  std::string list = fmt::format("page {:.0f} x {:.0f}\n", page.width, page.height);
  for (const Box& box : page.boxes) {
    list += fmt::format("\n[{}] {:.0f},{:.0f} {:.0f}x{:.0f}\n", box.name, box.at.x, box.at.y, box.at.width,
                        box.at.height);
    for (const TextMark& text : box.texts) list += "  " + text.words.text + "\n";
  }
  return list;
}

}  // namespace firstpick::card
