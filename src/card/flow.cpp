#include "card/flow.hpp"

#include <algorithm>
#include <utility>

#include "card/typeset.hpp"

namespace firstpick::card {

Flow::Flow(std::string name, double x, double y, double width, double inset)
    : name_(std::move(name)), x_(x), top_(y), y_(y + inset), width_(width), inset_(inset) {}

void Flow::put(double x, double width, const Words& words, double height) {
  texts_.push_back({{x, y_, width, height}, words, false});
}

void Flow::words(const Words& words, double indent) {
  if (words.text.empty()) return;
  const double width = inner_width() - indent;
  const double height = extent_of(words, width).height;
  put(x_ + inset_ + indent, width, words, height);
  y_ += height;
}

void Flow::item(const std::string& mark, const Words& text, double indent) {
  Words sign = text;
  sign.text = mark;
  put(x_ + inset_, indent, sign, extent_of(sign, indent).height);
  words(text, indent);
}

void Flow::tick(const Words& text) {
  const double side = 0.85 * text.size;
  lines_.push_back({outline({x_ + inset_ + 0.5, y_ + 0.2 * text.size, side, side}), 1.0, false, -1.0});
  words(text, 1.5 * text.size);
}

void Flow::write_in(const Words& label, double width_of_label) {
  const double height = extent_of(label, width_of_label).height;
  put(x_ + inset_, width_of_label, label, height);
  y_ += height;
  lines_.push_back(
      {{{x_ + inset_ + width_of_label + 2.0, y_ - 1.0}, {x_ + width_ - inset_, y_ - 1.0}}, 0.5, false, -1.0});
}

void Flow::row(const std::vector<std::string>& cells, const std::vector<double>& widths, const Words& like) {
  constexpr double between = 3.0;
  double x = x_ + inset_, high = 0.0;
  for (std::size_t i = 0; i < cells.size() && i < widths.size(); ++i) {
    Words cell = like;
    cell.text = cells[i];
    const double width = widths[i] - between;
    const double height = extent_of(cell, width).height;
    if (!cell.text.empty()) put(x, width, cell, height);
    high = std::max(high, height);
    x += widths[i];
  }
  y_ += high;
}

void Flow::rule(double thick) {
  y_ += 1.0;
  lines_.push_back({{{x_ + inset_, y_}, {x_ + width_ - inset_, y_}}, thick, false, -1.0});
  y_ += 1.0;
}

Box Flow::framed(double thick, double bottom) const {
  const Rect at{x_, top_, width_, std::max(bottom, y_ + inset_) - top_};
  Box box{.name = name_, .at = at, .lines = {}, .texts = texts_};
  if (thick > 0.0) box.lines.push_back({outline(at), thick, false, -1.0});
  box.lines.insert(box.lines.end(), lines_.begin(), lines_.end());
  return box;
}

}  // namespace firstpick::card
