// Between the program and the module that paints the plot of a pour.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace firstpick::output {

struct PlotInk {
  double r, g, b;
};

struct PlotMark {
  enum class Kind { words, stroke, ring } kind;
  PlotInk ink;
  std::vector<std::pair<double, double>> points;  // of words and of a ring: one
  double thick;
  bool dashed;
  std::string text;
  double back;  // of words: how much of their length lies before the point
};

struct Plot {  // in the units of the picture, dots of a PNG
  double width = 0.0, height = 0.0, text_size = 0.0;
  std::vector<PlotMark> marks;
};

using PaintPlot = bool (*)(const Plot&, bool svg, std::string& bytes);  // false: it could not be painted
inline constexpr const char* paint_plot_function = "firstpick_paint_plot";

}  // namespace firstpick::output
