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
  return box.name == "as it hangs" || box.name == "picks from above";
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
