// A box that fills from the top downwards with words and lines, and is as high as what stands in it.
#pragma once

#include <string>
#include <vector>

#include "card/page.hpp"

namespace firstpick::card {

class Flow {
 public:
  // `inset`: between the frame and the words.
  Flow(std::string name, double x, double y, double width, double inset = 3.0);

  void words(const Words& words, double indent = 0.0);  // a paragraph below what stands
  // A paragraph beside a mark of its own ("1.", "-"), which stands in the indent.
  void item(const std::string& mark, const Words& words, double indent);
  void tick(const Words& words);                             // a paragraph beside an empty square
  void write_in(const Words& label, double width_of_label);  // a label and a line to write on
  // One line of a table: each cell wraps in its own column. Widths add up to at most the width inside.
  void row(const std::vector<std::string>& cells, const std::vector<double>& widths, const Words& like);
  void rule(double thick = 0.5);  // a line across
  void gap(double height) { y_ += height; }

  double inner_width() const { return width_ - 2.0 * inset_; }
  double bottom() const { return y_ + inset_; }
  // `bottom`: how far the frame reaches, if further than what stands in it.
  Box framed(double thick, double bottom = 0.0) const;

 private:
  void put(double x, double width, const Words& words, double height);
  std::string name_;
  double x_, top_, y_, width_, inset_;
  std::vector<LineMark> lines_;
  std::vector<TextMark> texts_;
};

}  // namespace firstpick::card
