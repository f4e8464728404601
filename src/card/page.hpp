// A page as boxes of words and lines, before anyone paints it. Tests read these: no box crosses another, all
// words are inside. Measures in points (1/72 in) from the top left corner, y downwards.
#pragma once

#include <string>
#include <vector>

namespace firstpick::card {

inline constexpr double dots_per_point = 150.0 / 72.0;  // of a PNG

struct Point {
  double x = 0.0, y = 0.0;
};

struct Rect {
  double x = 0.0, y = 0.0, width = 0.0, height = 0.0;
};

bool overlap(const Rect& a, const Rect& b);  // by more than rounding
bool inside(const Rect& inner, const Rect& outer);

enum class Align { left, centre, right };

// Never markup. The text is inert: card/content.hpp has made control characters visible.
struct Words {
  std::string text;
  double size = 9.0;
  bool bold = false;
  Align align = Align::left;
  bool white = false;  // on black
  bool fixed = false;  // letters of one width
};

struct TextMark {
  Rect at;  // of the words, as measured at this width
  Words words;
  bool clears = false;  // wipes what is drawn beneath
};

struct LineMark {
  std::vector<Point> points;
  double thick = 0.6;  // zero: not stroked
  bool dashed = false;
  double fill = -1.0;  // grey of the area inside, 0 black to 1 white; below zero: not filled
};

// Ink that no word may cover: edges, legs, beams; not the thin lines of measures and hidden edges, nor filled areas.
bool is_heavy(const LineMark& line);

struct Box {
  std::string name;
  Rect at;
  std::vector<LineMark> lines;
  std::vector<TextMark> texts;
};

struct Page {
  double width = 0.0, height = 0.0;
  std::vector<Box> boxes;
};

std::vector<Point> circle(Point centre, double radius);  // closed, as chords
std::vector<Point> outline(const Rect& rect);            // closed

// Everything the page says, box by box, and where: for comparing one version with the next.
std::string box_list(const Page& page);

}  // namespace firstpick::card
