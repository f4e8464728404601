// Scale, place and labels of a drawing. A label tries places around its point, nearest first, and takes the
// first where it crosses no other label or sign; of those it prefers one that covers no line.

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

#include "card/drawing.hpp"
#include "card/typeset.hpp"

namespace firstpick::card {

namespace {

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
    case Pen::leg: line.thick = 1.8; break;
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

class Labelling {
 public:
  Labelling(Box& box, const Rect& room, double size) : box_(box), room_(room), size_(size) {}

  void keep_clear(const Rect& taken) { taken_.push_back(taken); }

  void write(const Label& label, const Point& at, const std::vector<Point>& on_line) {
    const Words words{.text = label.text, .size = size_};
    const Extent extent = extent_of(words, room_.width);
    std::optional<Rect> best;
    int fewest = std::numeric_limits<int>::max();
    std::vector<Point> centres = on_line;
    for (const Point& beside : places_beside(label, at, extent)) centres.push_back(beside);
    for (std::size_t i = 0; i < centres.size(); ++i) {
      const Point& centre = centres[i];
      const Rect spot{centre.x - extent.width / 2, centre.y - extent.height / 2, extent.width, extent.height};
      if (!inside(spot, room_) ||
          std::ranges::any_of(taken_, [&](const Rect& r) { return overlap(r, spot); }))
        continue;
      // On its own line, which it may also share with an edge that it crosses: better than far from what it measures.
      const int covered = i < on_line.size() ? std::max(0, lines_under(spot) - 2) : lines_under(spot);
      if (covered < fewest) best = spot, fewest = covered;
      if (fewest == 0) break;
    }
    if (!best) {
      if (!label.needed) return;
      best = Rect{std::clamp(at.x - extent.width / 2, room_.x, room_.x + room_.width - extent.width),
                  std::clamp(at.y - extent.height / 2, room_.y, room_.y + room_.height - extent.height),
                  extent.width, extent.height};
    }
    box_.texts.push_back({{best->x, best->y, best->width + 0.5, best->height}, words, true});
    taken_.push_back(*best);
  }

 private:
  std::vector<Point> places_beside(const Label& label, const Point& at, const Extent& extent) const {
    std::vector<Point> around;
    for (const double gap : {1.5, 5.0, 10.0, 18.0}) {
      const double aside = extent.width / 2 + radius_of(label.sign, size_) + gap;
      const double over = extent.height / 2 + radius_of(label.sign, size_) + gap;
      for (const Point& way :
           std::array<Point, 8>{{{1, 0}, {-1, 0}, {0, -1}, {0, 1}, {1, -1}, {-1, -1}, {1, 1}, {-1, 1}}})
        around.push_back({at.x + way.x * aside, at.y + way.y * over});
    }
    return around;
  }

  int lines_under(const Rect& spot) const {
    int count = 0;
    for (const LineMark& line : box_.lines)
      for (std::size_t i = 1; i < line.points.size(); ++i)
        if (crosses(spot, line.points[i - 1], line.points[i])) {
          ++count;
          break;
        }
    return count;
  }

  Box& box_;
  Rect room_;
  double size_;
  std::vector<Rect> taken_;
};

}  // namespace

Box drawing_box(const Drawing& drawing, const std::string& name, const Rect& room, double text_size) {
  Box box{.name = name, .at = room, .lines = {{outline(room), 0.5, false, -1.0}}, .texts = {}};
  const Words title{.text = drawing.title, .size = text_size, .bold = true};
  const double head = extent_of(title, room.width - 8).height + 4;
  box.texts.push_back({{room.x + 4, room.y + 2, room.width - 8, head - 4}, title, false});
  const double side = 4.4 * text_size;  // for labels around the drawing
  const Rect whole{room.x + 3, room.y + head, room.width - 6, room.height - head - 3};
  const OnPage on_page = scaled_into(drawing, {whole.x + side, whole.y + 1.4 * text_size,
                                               whole.width - 2 * side, whole.height - 2.8 * text_size});
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
        std::vector<Point> on_line;
        for (const plan::PlanarPoint& each : label.on_line) on_line.push_back(on_page(each));
        labelling.write(label, on_page(label.at), on_line);
      }
  return box;
}

}  // namespace firstpick::card
