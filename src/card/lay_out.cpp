#include "card/lay_out.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "card/flow.hpp"
#include "card/heading.hpp"

namespace firstpick::card {

namespace {

constexpr double margin = 24.0, between = 4.0;
constexpr double least_drawing = 155.0;  // height of the drawings below which letters shrink instead

struct Trial {
  Page page;
  double over = 0.0;  // by how much it does not fit
};

struct Room {
  double x, y, width, bottom;
  double scale;
  std::size_t most;     // of a list
  std::size_t longest;  // characters of one text of the small print
};

std::string more(std::size_t count) { return fmt::format("and {} more: see firstpick check", count); }

// Boxes side by side under one bottom.
double add_beside(std::vector<Box>& boxes, const std::vector<Flow>& flows, double thick) {
  double bottom = 0.0;
  for (const Flow& flow : flows) bottom = std::max(bottom, flow.bottom());
  for (const Flow& flow : flows) boxes.push_back(flow.framed(thick, bottom));
  return bottom + between;
}

double add_facts(const Card& card, std::vector<Box>& boxes, const Room& room) {
  std::vector<Flow> flows;
  const double each = (room.width - between * static_cast<double>(card.facts.size() - 1)) /
                      static_cast<double>(card.facts.size());
  for (std::size_t i = 0; i < card.facts.size(); ++i) {
    const Fact& fact = card.facts[i];
    Flow flow("fact: " + fact.label, room.x + static_cast<double>(i) * (each + between), room.y, each);
    flow.words({.text = fact.label, .size = 9.0 * room.scale, .bold = true});
    const double size = (fact.value.size() > 12 ? 13.0 : 19.0) * room.scale;
    for (const std::string* value : {&fact.value, &fact.second})
      flow.words({.text = *value, .size = size, .bold = true});
    flow.words({.text = fact.note, .size = 7.0 * room.scale});
    flows.push_back(std::move(flow));
  }
  return add_beside(boxes, flows, 1.2);
}

double add_legs(const Card& card, std::vector<Box>& boxes, const Room& room) {
  Flow flow("legs", room.x, room.y, room.width, 3.0);
  const std::array<double, 10> shares = {0.035, 0.135, 0.085, 0.07, 0.075, 0.125, 0.125, 0.19, 0.08, 0.08};
  std::vector<double> widths;
  for (const double share : shares) widths.push_back(share * flow.inner_width());
  std::size_t shown = 0;
  for (const auto& row : card.legs) {
    if (shown > room.most) break;
    flow.row(row, widths, {.text = "", .size = 7.6 * room.scale, .bold = shown == 0});
    if (shown++ == 0) flow.rule();
  }
  if (card.legs.size() > shown)
    flow.words({.text = more(card.legs.size() - shown), .size = 7.6 * room.scale, .bold = true});
  boxes.push_back(flow.framed(0.5));
  return flow.bottom() + between;
}

void add_list(const std::string& title, const std::vector<std::string>& texts, std::size_t most, double size,
              Flow& flow) {
  if (texts.empty()) return;
  flow.words({.text = title, .size = 1.05 * size, .bold = true});
  for (std::size_t i = 0; i < texts.size() && i < most; ++i)
    flow.item("-", {.text = texts[i], .size = size}, 0.8 * size);
  if (texts.size() > most) flow.words({.text = more(texts.size() - most), .size = size, .bold = true});
  flow.gap(0.3 * size);
}

void add_piece(const Card& card, const Room& room, double size, Flow& flow) {
  flow.words({.text = "The piece", .size = 1.05 * size, .bold = true});
  for (std::size_t i = 0; i < card.piece.size() && i < std::max<std::size_t>(room.most, 11); ++i)
    flow.words({.text = card.piece[i].label + ": " + card.piece[i].value, .size = size});
  if (card.piece.size() > std::max<std::size_t>(room.most, 11))
    flow.words(
        {.text = more(card.piece.size() - std::max<std::size_t>(room.most, 11)), .size = size, .bold = true});
  flow.gap(0.3 * size);
}

double add_instructions(const Card& card, std::vector<Box>& boxes, const Room& room) {
  const double each = (room.width - 2 * between) / 3.0, size = 8.4 * room.scale;
  Flow steps("steps", room.x, room.y, each), ticks("ticks", room.x + each + between, room.y, each),
      gear("piece and gear", room.x + 2 * (each + between), room.y, each);
  steps.words({.text = "In this order", .size = 1.15 * size, .bold = true});
  for (std::size_t i = 0; i < card.steps.size(); ++i)
    steps.item(fmt::format("{}.", i + 1), {.text = card.steps[i], .size = size}, 1.5 * size);
  steps.gap(0.3 * size);
  add_list("STOP, lower if you can, when", card.stops, card.stops.size(), size, steps);
  ticks.words({.text = "Tick by hand before the lift", .size = 1.15 * size, .bold = true});
  for (const std::string& text : card.ticks) {
    ticks.tick({.text = text, .size = size});
    ticks.gap(0.12 * size);
  }
  const double small = 0.95 * size;
  add_piece(card, room, small, gear);
  add_list("Gear: nothing else", card.gear, room.most, small, gear);
  return add_beside(boxes, {steps, ticks, gear}, 0.5);
}

double add_reasons(const Card& card, std::vector<Box>& boxes, const Room& room) {
  Flow flow("reasons", room.x, room.y, room.width, 8.0);
  flow.words({.text = card.verdict == checks::Verdict::no_go ? "Do not lift: it fails"
                                                             : "Do not lift yet: something is missing",
              .size = 17.0 * room.scale,
              .bold = true});
  flow.gap(4.0 * room.scale);
  const std::size_t most = room.most;
  for (std::size_t i = 0; i < card.reasons.size() && i < most; ++i) {
    const ReasonText& reason = card.reasons[i];
    flow.words({.text = reason.why, .size = 12.0 * room.scale, .bold = true});
    if (!reason.remedy.empty())
      flow.item("->", {.text = reason.remedy, .size = 11.0 * room.scale}, 18.0 * room.scale);
    flow.words({.text = "On: " + reason.about, .size = 8.5 * room.scale}, 18.0 * room.scale);
    flow.gap(5.0 * room.scale);
  }
  if (card.reasons.size() > most)
    flow.words({.text = more(card.reasons.size() - most), .size = 12.0 * room.scale, .bold = true});
  flow.words({.text = "No drawing, no gear and no load to pull are on this card: it is not for lifting. Mend "
                      "the plan or the "
                      "piece, check again, print a new card.",
              .size = 9.5 * room.scale});
  boxes.push_back(flow.framed(1.6));
  return flow.bottom() + between;
}

double add_piece_alone(const Card& card, std::vector<Box>& boxes, const Room& room) {
  Flow flow("piece", room.x, room.y, room.width);
  add_piece(card, room, 9.0 * room.scale, flow);
  boxes.push_back(flow.framed(0.5));
  return flow.bottom() + between;
}

double add_signals(const Card& card, std::vector<Box>& boxes, const Room& room) {
  double y = room.y;
  for (std::size_t i = 0; i < card.signals.size(); ++i) {
    const Signal& signal = card.signals[i];
    const double size = 9.0 * room.scale, word_width = 7.2 * size;
    Flow flow(fmt::format("signal {}", i + 1), room.x, y, room.width, 2.0);
    flow.item(std::string(signal.word), {.text = signal.text, .size = size, .bold = true}, word_width);
    Box box = flow.framed(1.0);
    box.lines.push_back(
        {outline({room.x, y, word_width - 2.0, box.at.height}), 0.0, false, 0.0});  // white on black
    box.texts.front().words.white = true;
    boxes.push_back(std::move(box));
    y = flow.bottom() + 1.5;
  }
  return y + between - 1.5;
}

double add_write_in(const Card& card, std::vector<Box>& boxes, const Room& room) {
  const std::size_t columns = 2, rows = (card.write_in.size() + columns - 1) / columns;
  const double each = (room.width - between) / static_cast<double>(columns), size = 8.4 * room.scale;
  std::vector<Flow> flows;
  for (std::size_t column = 0; column < columns; ++column) {
    Flow flow(fmt::format("written by hand {}", column + 1),
              room.x + static_cast<double>(column) * (each + between), room.y, each);
    for (std::size_t row = 0; row < rows && column * rows + row < card.write_in.size(); ++row) {
      flow.gap(0.55 * size);
      flow.write_in({.text = card.write_in[column * rows + row], .size = size}, 0.5 * each);
    }
    flows.push_back(std::move(flow));
  }
  return add_beside(boxes, flows, 0.5);
}

double add_small_print(const Card& card, std::vector<Box>& boxes, const Room& room) {
  const double size = 6.6 * room.scale;
  Flow flow("small print", room.x, room.y, room.width, 2.0);
  for (const SmallPrint& print : card.small_print) {
    std::string all = print.title + ": ";
    for (std::size_t i = 0; i < print.texts.size(); ++i) {
      all += inert(print.texts[i], room.longest);
      if (i + 1 < print.texts.size()) all += all.ends_with('.') ? " " : "; ";
    }
    flow.words({.text = all + (all.ends_with('.') ? "" : "."), .size = size});
  }
  boxes.push_back(flow.framed(0.5));
  return flow.bottom();
}

void shift(Box& box, double down) {
  box.at.y += down;
  for (TextMark& text : box.texts) text.at.y += down;
  for (LineMark& line : box.lines)
    for (Point& point : line.points) point.y += down;
}

// Above: heading, numbers, drawings as high as there is room. Below: the rest, down to the margin.
Trial go_card(const Card& card, const std::optional<Drawing>& hangs, const std::optional<Drawing>& above,
              Page page, double scale, std::size_t most, std::size_t longest) {
  Room room{margin, margin, page.width - 2 * margin, page.height - margin, scale, most, longest};
  std::vector<Box>& boxes = page.boxes;
  boxes = heading(card, room.x, room.y, room.width);
  room.y = boxes.front().at.y + boxes.front().at.height + between;
  room.y = add_facts(card, boxes, room);

  std::vector<Box> below;
  Room rest = room;
  rest.y = add_legs(card, below, rest);
  rest.y = add_instructions(card, below, rest);
  rest.y = add_signals(card, below, rest);
  rest.y = add_write_in(card, below, rest);
  rest.y = add_small_print(card, below, rest);
  const double free = room.bottom - rest.y - between;
  const double left = 0.58 * (room.width - between);
  Flow turn("the turn", room.x, room.y, left);
  if (!hangs) add_list("How it turns", card.turn, card.turn.size(), 9.0 * scale, turn);
  const double least = std::max(least_drawing, turn.bottom() - room.y);
  const double high = std::max(free, least);
  if (hangs) boxes.push_back(drawing_box(*hangs, "as it hangs", {room.x, room.y, left, high}, 7.6 * scale));
  if (!hangs && !card.turn.empty()) boxes.push_back(turn.framed(0.5, room.y + high));
  if (above)
    boxes.push_back(drawing_box(*above, "picks from above",
                                {room.x + left + between, room.y, room.width - left - between, high},
                                7.6 * scale));
  for (Box& box : below) {
    shift(box, high + between);
    boxes.push_back(std::move(box));
  }
  return {std::move(page), least - free};
}

Trial other_card(const Card& card, Page page, double scale, std::size_t most, std::size_t longest) {
  constexpr double hatching = 12.0;
  const double inner = margin + hatching + between;
  Room room{inner, inner, page.width - 2 * inner, page.height - inner, scale, most, longest};
  std::vector<Box>& boxes = page.boxes;
  boxes = hatched_frame(page.width, page.height, margin, hatching);
  for (Box& box : heading(card, room.x, room.y, room.width)) boxes.push_back(std::move(box));
  room.y += boxes.back().at.height + between;
  room.y = add_reasons(card, boxes, room);
  room.y = add_facts(card, boxes, room);
  room.y = add_piece_alone(card, boxes, room);
  room.y = add_signals(card, boxes, room);
  room.y = add_write_in(card, boxes, room);
  room.y = add_small_print(card, boxes, room);
  return {std::move(page), room.y - room.bottom};
}

Page empty_page(Paper paper) {
  return paper == Paper::a4 ? Page{595.276, 841.89, {}} : Page{612.0, 792.0, {}};  // ISO 216; 8.5 x 11 in
}

}  // namespace

Page lay_out(const Card& card, const std::optional<Drawing>& hangs, const std::optional<Drawing>& above,
             Paper paper) {
  constexpr std::array<double, 12> scales = {1.25, 1.12, 1.0,  0.96, 0.92, 0.88,
                                             0.84, 0.8,  0.76, 0.72, 0.68, 0.64};
  const bool may_lift = card.verdict == checks::Verdict::go;
  const auto trial = [&](double scale, std::size_t most, std::size_t longest) {
    return may_lift ? go_card(card, hangs, above, empty_page(paper), scale, most, longest)
                    : other_card(card, empty_page(paper), scale, most, longest);
  };
  constexpr std::size_t whole_text = 10000, cut_text = 90;
  const std::size_t everything =
      std::max({card.legs.size(), card.gear.size(), card.reasons.size(), card.piece.size(), std::size_t{1}});
  for (const double scale : scales)
    if (Trial whole = trial(scale, everything, whole_text); whole.over <= 0.0) return std::move(whole.page);
  for (std::size_t most = everything; most > 1; --most)
    if (Trial shorter = trial(scales.back(), most, cut_text); shorter.over <= 0.0)
      return std::move(shorter.page);
  return trial(scales.back(), 1, cut_text).page;
}

}  // namespace firstpick::card
