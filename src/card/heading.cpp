#include "card/heading.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "card/flow.hpp"
#include "card/qr_code.hpp"
#include "card/typeset.hpp"

namespace firstpick::card {

namespace {

using checks::Verdict;

void bar(Box& box, double x, double y, double width, double height, double grey) {
  box.lines.push_back({outline({x, y, width, height}), 0.0, false, grey});
}

void diagonal(Box& box, Point from, Point to, double thick, double grey) {
  // A stroke is black: on black ground the bar is an area.
  const double dx = to.x - from.x, dy = to.y - from.y;
  const double across = thick / (2.0 * std::max(std::abs(dx), std::abs(dy)) * 1.4142135623730951);
  const Point n{-dy * across, dx * across};
  box.lines.push_back({{{from.x + n.x, from.y + n.y},
                        {to.x + n.x, to.y + n.y},
                        {to.x - n.x, to.y - n.y},
                        {from.x - n.x, from.y - n.y},
                        {from.x + n.x, from.y + n.y}},
                       0.0,
                       false,
                       grey});
}

// (+) open circle, (?) circle with a heavy ring, (x) black disc.
void draw_sign(Verdict verdict, const Point& at, double r, Box& box) {
  const double arm = 0.58 * r, thick = 0.26 * r;
  box.lines.push_back({circle(at, r), 0.14 * r, false, verdict == Verdict::no_go ? 0.0 : 1.0});
  if (verdict == Verdict::go) {
    bar(box, at.x - arm, at.y - thick / 2, 2 * arm, thick, 0.0);
    bar(box, at.x - thick / 2, at.y - arm, thick, 2 * arm, 0.0);
  } else if (verdict == Verdict::no_go) {
    diagonal(box, {at.x - arm, at.y - arm}, {at.x + arm, at.y + arm}, thick, 1.0);
    diagonal(box, {at.x - arm, at.y + arm}, {at.x + arm, at.y - arm}, thick, 1.0);
  } else {
    const Words question{.text = "?", .size = 1.5 * r, .bold = true, .align = Align::centre};
    const double high = extent_of(question, 2 * r).height;
    box.texts.push_back({{at.x - r, at.y - high / 2, 2 * r, high}, question, false});
  }
}

}  // namespace

std::vector<Box> heading(const Card& card, double x, double y, double width) {
  const double high = 78.0;  // the code does not shrink: a telephone must read it
  const double code_side = high, sign = 54.0, word_size = card.verdict == Verdict::go ? 44.0 : 34.0;
  const Words word{.text = std::string(checks::word_for(card.verdict)), .size = word_size, .bold = true};
  const Extent word_extent = extent_of(word, 400.0);
  const double verdict_width = sign + word_extent.width + 24.0;

  Box verdict{.name = "verdict", .at = {x, y, verdict_width, high}, .lines = {}, .texts = {}};
  verdict.lines.push_back({outline(verdict.at), 1.6, false, -1.0});
  draw_sign(card.verdict, {x + 8 + sign / 2, y + (high - 16) / 2}, sign / 2, verdict);
  verdict.texts.push_back(
      {{x + sign + 16, y + (high - 16 - word_extent.height) / 2, word_extent.width + 2, word_extent.height},
       word,
       false});
  Words stage{.text = card.verdict == Verdict::go ? card.verdict_words + ", " + card.stage + " only"
                                                        : card.verdict_words + ": DO NOT LIFT. " + card.stage,
                    .size = card.verdict == Verdict::go ? 10.0 : 9.0,
                    .bold = true,
                    .align = Align::centre};
  while (stage.size > 6.0 && extent_of(stage, 1000.0).width > verdict_width - 6) stage.size -= 0.25;  // one line
  const double stage_high = extent_of(stage, verdict_width - 6).height;
  verdict.texts.push_back({{x + 3, y + high - stage_high - 2, verdict_width - 6, stage_high}, stage, false});

  const double code_width = code_side + 4.0;
  const double middle = width - verdict_width - code_width - 8.0;
  Flow piece("piece mark", x + verdict_width + 4.0, y, middle, 3.0);
  for (double size = 20.0; size >= 6.0; size -= 1.0) {  // the largest letters that leave room for the rest
    Flow trial("piece mark", x + verdict_width + 4.0, y, middle, 3.0);
    trial.words({.text = card.mark, .size = size, .bold = true});
    trial.words({.text = card.title, .size = std::min(9.5, 0.7 * size)});
    trial.words({.text = card.origin, .size = std::min(6.5, 0.6 * size)});
    trial.words(
        {.text = "fingerprint " + card.fingerprint, .size = std::min(6.0, 0.6 * size), .fixed = true});
    piece = trial;
    if (trial.bottom() <= y + high) break;
  }
  Box code{.name = "code of the fingerprint",
           .at = {x + width - code_width, y, code_width, high},
           .lines = {},
           .texts = {}};
  for (LineMark& module : qr_code(card.fingerprint, {code.at.x + 2, y, code_side, code_side}))
    code.lines.push_back(std::move(module));
  return {verdict, piece.framed(0.0, y + high), code};
}

std::vector<Box> hatched_frame(double page_width, double page_height, double from_edge, double thick) {
  const Rect outer{from_edge, from_edge, page_width - 2 * from_edge, page_height - 2 * from_edge};
  std::vector<Box> strips = {
      {"hatching above", {outer.x, outer.y, outer.width, thick}, {}, {}},
      {"hatching below", {outer.x, outer.y + outer.height - thick, outer.width, thick}, {}, {}},
      {"hatching left", {outer.x, outer.y + thick, thick, outer.height - 2 * thick}, {}, {}},
      {"hatching right",
       {outer.x + outer.width - thick, outer.y + thick, thick, outer.height - 2 * thick},
       {},
       {}}};
  for (Box& strip : strips) {
    const Rect& r = strip.at;
    const bool lying = r.width > r.height;
    const double length = lying ? r.width : r.height;
    const double bar_width = thick;
    for (double at = 0.0; at + 2 * bar_width <= length + 0.5; at += 2 * bar_width) {
      const std::vector<Point> slanted = lying ? std::vector<Point>{{r.x + at, r.y + thick},
                                                                    {r.x + at + bar_width, r.y},
                                                                    {r.x + at + 2 * bar_width, r.y},
                                                                    {r.x + at + bar_width, r.y + thick},
                                                                    {r.x + at, r.y + thick}}
                                               : std::vector<Point>{{r.x, r.y + at + bar_width},
                                                                    {r.x + thick, r.y + at},
                                                                    {r.x + thick, r.y + at + bar_width},
                                                                    {r.x, r.y + at + 2 * bar_width},
                                                                    {r.x, r.y + at + bar_width}};
      strip.lines.push_back({slanted, 0.0, false, 0.0});
    }
    strip.lines.push_back({outline(r), 0.8, false, -1.0});
  }
  return strips;
}

}  // namespace firstpick::card
