// What must hold for every lift card, whatever the plan: boxes apart and on the paper, words inside their
// box.
#pragma once

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>

#include "card/page.hpp"
#include "card/typeset.hpp"

namespace firstpick::tests {

inline std::string words_of(const card::Page& page) {
  std::string all;
  for (const card::Box& box : page.boxes)
    for (const card::TextMark& text : box.texts) all += text.words.text + "\n";
  return all;
}

inline bool has_box(const card::Page& page, const std::string& name) {
  return std::ranges::any_of(page.boxes, [&](const card::Box& box) { return box.name == name; });
}

inline bool is_drawing(const card::Box& box) {
  return box.name == "as it hangs" || box.name == "as it turns" || box.name == "picks from above";
}

// The least that printers leave white on each side, in points.
constexpr double white_edge = 18.0;

inline void check_boxes(const card::Page& page) {
  const card::Rect printable_part{white_edge, white_edge, page.width - 2 * white_edge,
                                  page.height - 2 * white_edge};
  for (const card::Box& box : page.boxes) {
    CAPTURE(box.name, box.at.x, box.at.y, box.at.width, box.at.height, page.height);
    CHECK(card::inside(box.at, printable_part));
    for (const card::LineMark& line : box.lines)
      for (const card::Point& p : line.points) {
        const bool within = card::inside(
            {p.x, p.y, 0, 0}, {box.at.x - 0.5, box.at.y - 0.5, box.at.width + 1, box.at.height + 1});
        if (!within) FAIL_CHECK("a line leaves the box at " << p.x << ", " << p.y);
      }
    for (const card::TextMark& text : box.texts) {
      CAPTURE(text.words.text, text.at.x, text.at.y, text.at.width, text.at.height);
      CHECK(card::inside(text.at, box.at));
      const card::Extent extent = card::extent_of(text.words, text.at.width);
      CHECK(extent.height <= text.at.height + 1e-6);
      CHECK(extent.width <= text.at.width + 0.5);
    }
  }
  for (std::size_t a = 0; a < page.boxes.size(); ++a)
    for (std::size_t b = a + 1; b < page.boxes.size(); ++b) {
      CAPTURE(page.boxes[a].name, page.boxes[b].name);
      CHECK_FALSE(card::overlap(page.boxes[a].at, page.boxes[b].at));
    }
}

inline bool crosses(const card::Rect& r, const card::Point& a, const card::Point& b) {
  double from = 0.0, to = 1.0;  // part of the line that is inside, by one side after the other
  const auto cut = [&](double start, double step, double low, double high) {
    if (step == 0.0) {
      if (start <= low || start >= high) to = -1.0;
      return;
    }
    const double one = (low - start) / step, other = (high - start) / step;
    from = std::max(from, std::min(one, other)), to = std::min(to, std::max(one, other));
  };
  cut(a.x, b.x - a.x, r.x, r.x + r.width);
  cut(a.y, b.y - a.y, r.y, r.y + r.height);
  return to - from > 1e-6;
}

// No label of a drawing over an edge, a leg or a beam: what it would wipe away is what somebody hooks on by.
inline void check_words_off_lines(const card::Page& page) {
  for (const card::Box& box : page.boxes) {
    if (!is_drawing(box)) continue;
    for (const card::TextMark& text : box.texts) {
      if (!text.clears) continue;
      const card::Rect inner{text.at.x + 1.0, text.at.y + 1.0, text.at.width - 2.0, text.at.height - 2.0};
      for (const card::LineMark& line : box.lines)
        for (std::size_t i = 1; card::is_heavy(line) && i < line.points.size(); ++i) {
          CAPTURE(box.name, text.words.text);
          if (crosses(inner, line.points[i - 1], line.points[i])) FAIL_CHECK("words over a line of the drawing");
        }
    }
  }
}

// No words over other words. Signs of picks may cover each other where the picks do: with_drawings false.
inline void check_words_apart(const card::Page& page, bool with_drawings) {
  for (const card::Box& box : page.boxes) {
    if (is_drawing(box) && !with_drawings) continue;
    for (std::size_t a = 0; a < box.texts.size(); ++a)
      for (std::size_t b = a + 1; b < box.texts.size(); ++b) {
        CAPTURE(box.name, box.texts[a].words.text, box.texts[b].words.text);
        CHECK_FALSE(card::overlap(box.texts[a].at, box.texts[b].at));
      }
  }
}

}  // namespace firstpick::tests
