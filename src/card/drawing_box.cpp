// Scale, place and labels of a drawing. A label tries places around its point, nearest first, and takes the first where
// it crosses no other label or sign, and no edge, leg or beam; of those it prefers one that covers no line at all. What is
// needed and finds no such place stands where it covers least.

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

#include "card/drawing.hpp"
#include "card/typeset.hpp"

namespace firstpick::card {

namespace {

constexpr double thick_of_leg = 1.8;

struct OnPage {  // metres to points
  double scale, x0, y0;
  Point operator()(const plan::PlanarPoint& p) const {
    return {x0 + scale * in(m, p.x), y0 - scale * in(m, p.y)};
  }
};

struct Limits {
  double low_x = std::numeric_limits<double>::infinity(), high_x = -low_x, low_y = low_x, high_y = -low_x;
  void take(const plan::PlanarPoint& p) {
    low_x = std::min(low_x, in(m, p.x)), high_x = std::max(high_x, in(m, p.x));
    low_y = std::min(low_y, in(m, p.y)), high_y = std::max(high_y, in(m, p.y));
  }
};

OnPage scaled_into(const Drawing& drawing, const Rect& room) {
  Limits limits;
  for (const Stroke& stroke : drawing.strokes)
    for (const auto& p : stroke.points) limits.take(p);
  for (const Label& label : drawing.labels) limits.take(label.at);
  const double wide = std::max(limits.high_x - limits.low_x, 1e-6),
               high = std::max(limits.high_y - limits.low_y, 1e-6);
  const double scale = std::min(room.width / wide, room.height / high);
  return {scale, room.x + room.width / 2 - scale * (limits.low_x + limits.high_x) / 2,
          room.y + room.height / 2 + scale * (limits.low_y + limits.high_y) / 2};
}

LineMark drawn(const Stroke& stroke, const OnPage& on_page) {
  LineMark line;
  for (const auto& p : stroke.points) line.points.push_back(on_page(p));
  switch (stroke.pen) {
    case Pen::edge: line.thick = 0.8; break;
    case Pen::hidden: line.thick = 0.35, line.dashed = true; break;
    case Pen::leg: line.thick = thick_of_leg; break;
    case Pen::beam: line.thick = 3.0; break;
    case Pen::measure: line.thick = 0.4; break;
  }
  return line;
}

double radius_of(Sign sign, double size) {
  switch (sign) {
    case Sign::none: return 0.0;
    case Sign::pick: return 0.85 * size;
    case Sign::centre_of_gravity: return 0.55 * size;
    default: return 0.45 * size;
  }
}

void draw_sign(Sign sign, const Point& at, double size, Box& box) {
  const double r = radius_of(sign, size);
  switch (sign) {
    case Sign::none: return;
    case Sign::pick: box.lines.push_back({circle(at, r), 1.2, false, 1.0}); return;
    case Sign::sheave: box.lines.push_back({circle(at, r), 1.6, false, 1.0}); return;
    case Sign::unused_insert:
      box.lines.push_back({{{at.x - r, at.y - r}, {at.x + r, at.y + r}}, 0.6, false, -1.0});
      box.lines.push_back({{{at.x - r, at.y + r}, {at.x + r, at.y - r}}, 0.6, false, -1.0});
      return;
    case Sign::hook:
      box.lines.push_back({circle(at, r), 1.2, false, 0.0});
      box.lines.push_back({{{at.x, at.y - r}, {at.x, at.y - 2.2 * r}}, 2.4, false, -1.0});
      return;
    case Sign::centre_of_gravity: {  // quarters of a disc, two of them black
      box.lines.push_back({circle(at, r), 0.8, false, 1.0});
      const auto ring = circle(at, r);
      const std::size_t quarter = (ring.size() - 1) / 4;
      for (const std::size_t from : {std::size_t{0}, 2 * quarter}) {
        std::vector<Point> wedge(ring.begin() + static_cast<std::ptrdiff_t>(from),
                                 ring.begin() + static_cast<std::ptrdiff_t>(from + quarter + 1));
        wedge.push_back(at);
        box.lines.push_back({wedge, 0.0, false, 0.0});
      }
      return;
    }
  }
}

bool crosses(const Rect& r, const Point& a,
             const Point& b) {  // a line, looked at in steps finer than a letter
  const double length = std::hypot(b.x - a.x, b.y - a.y);
  const int steps = 1 + static_cast<int>(length / 2.0);
  for (int i = 0; i <= steps; ++i) {
    const double x = a.x + (b.x - a.x) * i / steps, y = a.y + (b.y - a.y) * i / steps;
    if (x > r.x && x < r.x + r.width && y > r.y && y < r.y + r.height) return true;
  }
  return false;
}

double distance(const Point& p, const std::vector<Point>& line) {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Point &a = line[i - 1], &b = line[i];
    const double dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
    const double along =
        square > 0.0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / square, 0.0, 1.0) : 0.0;
    least = std::min(least, std::hypot(p.x - a.x - along * dx, p.y - a.y - along * dy));
  }
  return least;
}

class Labelling {
 public:
  Labelling(Box& box, const Rect& room, double size) : box_(box), room_(room), size_(size) {}

  void keep_clear(const Rect& taken) { taken_.push_back(taken); }

  void write(const Label& label, const std::vector<Point>& places) {
    const Words words{.text = label.text, .size = size_};
    const Extent extent = extent_of(words, room_.width);
    const Point& at = places.front();
    std::optional<Rect> best;
    int least = std::numeric_limits<int>::max();
    for (const Point& centre : centres_of(label, places, extent)) {
      const Rect spot{centre.x - extent.width / 2, centre.y - extent.height / 2, extent.width, extent.height};
      if (!inside(spot, room_) ||
          std::ranges::any_of(taken_, [&](const Rect& r) { return overlap(r, spot); }))
        continue;
      if (label.write == Write::beside && is_nearer_another(label.stroke, centre)) continue;
      const int covered = covered_by(spot);
      if (!label.needed && covered >= heavy) continue;
      if (covered < least) best = spot, least = covered;
      if (least == 0) break;
    }
    if (!best) {
      if (!label.needed) return;
      best = Rect{std::clamp(at.x - extent.width / 2, room_.x, room_.x + room_.width - extent.width),
                  std::clamp(at.y - extent.height / 2, room_.y, room_.y + room_.height - extent.height),
                  extent.width, extent.height};
    }
    box_.texts.push_back({{best->x, best->y, best->width + 0.5, best->height}, words, true});
    taken_.push_back({best->x - 1.5, best->y, best->width + 3.5, best->height});  // words beside words need a gap
  }

 private:
  // Nearest first, as the label's way of writing has it.
  std::vector<Point> centres_of(const Label& label, const std::vector<Point>& places,
                                const Extent& extent) const {
    const Point& at = places.front();
    const double wide = extent.width / 2, high = extent.height / 2;
    constexpr double gap = 2.5;
    std::vector<Point> centres;
    switch (label.write) {
      case Write::about: return places_about(label, at, extent);
      case Write::across: return places;
      case Write::beside:
        for (const double further : {gap, 3.0 * gap})
          for (const Point& place : places)
            for (const Point& way :
                 std::array<Point, 6>{{{1, 0}, {-1, 0}, {1, 1}, {-1, 1}, {1, -1}, {-1, -1}}})
              centres.push_back({place.x + way.x * (wide + further), place.y + way.y * high});
        return centres;
      case Write::left:
        for (int row = 0; row < 4; ++row)
          for (const double way : {1.0, -1.0})
            centres.push_back({at.x - wide - gap, at.y + way * row * 1.1 * high});
        return centres;
      case Write::below:
        for (int row = 0; row < 4; ++row) centres.push_back({at.x, at.y + high * (1.0 + 2.0 * row) + gap});
        return centres;
    }
    return centres;
  }

  std::vector<Point> places_about(const Label& label, const Point& at, const Extent& extent) const {
    std::vector<Point> around;
    for (const double gap : {1.5, 5.0, 10.0, 18.0, 28.0, 40.0}) {
      const double aside = extent.width / 2 + radius_of(label.sign, size_) + gap;
      const double over = extent.height / 2 + radius_of(label.sign, size_) + gap;
      for (const Point& way :
           std::array<Point, 8>{{{1, 0}, {-1, 0}, {0, -1}, {0, 1}, {1, -1}, {-1, -1}, {1, 1}, {-1, 1}}})
        around.push_back({at.x + way.x * aside, at.y + way.y * over});
    }
    return around;
  }

  // Thin lines (measures, hidden edges) count one each, an edge, a leg or a beam more than all of them.
  int covered_by(const Rect& spot) const {
    int count = 0;
    for (const LineMark& line : box_.lines)
      for (std::size_t i = 1; i < line.points.size(); ++i)
        if (crosses(spot, line.points[i - 1], line.points[i])) {
          count += is_heavy(line) ? heavy : 1;
          break;
        }
    return count;
  }

  bool is_nearer_another(std::size_t stroke, const Point& centre) const {
    const double own = distance(centre, box_.lines.at(stroke + 1).points);  // the first line is the frame
    for (std::size_t i = 1; i < box_.lines.size(); ++i)
      if (i != stroke + 1 && box_.lines[i].thick >= thick_of_leg && box_.lines[i].fill < 0.0 &&
          distance(centre, box_.lines[i].points) < 1.2 * own)
        return true;
    return false;
  }

  static constexpr int heavy = 1000;

  Box& box_;
  Rect room_;
  double size_;
  std::vector<Rect> taken_;
};

}  // namespace

Box drawing_box(const Drawing& drawing, const Rect& room, double text_size) {
  Box box{.name = drawing.name, .at = room, .lines = {{outline(room), 0.5, false, -1.0}}, .texts = {}};
  const Words title{.text = drawing.title, .size = text_size, .bold = true};
  const double head = extent_of(title, room.width - 8).height + 4;
  box.texts.push_back({{room.x + 4, room.y + 2, room.width - 8, head - 4}, title, false});
  double side = 2.2 * text_size, below = 1.4 * text_size;  // for labels around the drawing
  for (const Label& label : drawing.labels) {
    const Extent extent = extent_of({.text = label.text, .size = text_size}, room.width);
    if (label.write == Write::left) side = std::max(side, extent.width + 5.0);
    if (label.write == Write::beside) side = std::max(side, 4.4 * text_size);
    if (label.write == Write::below) below = std::max(below, 2.0 * extent.height + 4.0);
  }
  const Rect whole{room.x + 3, room.y + head, room.width - 6, room.height - head - 3};
  const OnPage on_page = scaled_into(drawing, {whole.x + side, whole.y + 1.4 * text_size,
                                               whole.width - side - std::min(side, 4.4 * text_size),
                                               whole.height - 1.4 * text_size - below});
  for (const Stroke& stroke : drawing.strokes) box.lines.push_back(drawn(stroke, on_page));

  Labelling labelling(box, whole, text_size);
  for (const Label& label : drawing.labels) {
    const Point at = on_page(label.at);
    const double r = radius_of(label.sign, text_size);
    draw_sign(label.sign, at, text_size, box);
    if (label.sign == Sign::none) continue;
    labelling.keep_clear({at.x - r, at.y - r, 2 * r, 2 * r});
    if (label.sign != Sign::pick) continue;
    const Words number{.text = label.text, .size = text_size, .bold = true, .align = Align::centre};
    const Extent extent = extent_of(number, 8 * r);
    box.texts.push_back(
        {{at.x - extent.width / 2 - 0.25, at.y - extent.height / 2, extent.width + 0.5, extent.height},
         number,
         false});
  }
  for (const bool needed : {true, false})
    for (const Label& label : drawing.labels)
      if (label.needed == needed && label.sign != Sign::pick && !label.text.empty()) {
        std::vector<Point> places{on_page(label.at)};
        for (const plan::PlanarPoint& each : label.places) places.push_back(on_page(each));
        labelling.write(label, places);
      }
  return box;
}

}  // namespace firstpick::card
