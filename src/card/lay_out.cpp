#include "card/lay_out.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "card/flow.hpp"
#include "card/heading.hpp"
#include "card/table_columns.hpp"

namespace firstpick::card {

namespace {

constexpr double margin = 18.0, between = 3.0;
constexpr double least_drawing = 104.0;  // height of the drawings below which the small print is shortened instead
constexpr double low_drawing = 80.0;     // and below which letters shrink

enum class Brevity { all, names, counts };

struct Trial {
  Page page;
  double over = 0.0;  // by how much it does not fit
};

struct Room {
  double x, y, width, bottom;
  double scale;         // of what is read at arm's length
  double fine;          // of table, gear and small print
  std::size_t most;     // of a list
  Brevity brevity;      // of the small print
  const ColumnWidths& table;
  bool anyway = false;  // wanted whole though it does not fit
  double least = smallest_letters;
  double drawing = least_drawing;

  double fine_letters(double size) const { return std::max(least, size * fine); }
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
  const double free = room.width - between * static_cast<double>(card.facts.size() - 1);
  constexpr std::array<double, 4> of_a_lift = {0.24, 0.32, 0.235, 0.205};  // the strength says most
  double x = room.x;
  for (std::size_t i = 0; i < card.facts.size(); ++i) {
    const Fact& fact = card.facts[i];
    const double share = card.facts.size() == of_a_lift.size() ? of_a_lift[i] : 1.0 / static_cast<double>(card.facts.size());
    Flow flow("fact: " + fact.label, x, room.y, share * free);
    x += share * free + between;
    flow.words({.text = fact.label, .size = 9.0 * room.scale, .bold = true});
    const double size = (fact.value.size() > 12 ? 13.0 : 19.0) * room.scale;
    for (const std::string* value : {&fact.value, &fact.second})
      flow.words({.text = *value, .size = size, .bold = true});
    flow.words({.text = fact.note, .size = room.fine_letters(7.4)});
    flows.push_back(std::move(flow));
  }
  return add_beside(boxes, flows, 1.2);
}

double add_legs(const Card& card, std::vector<Box>& boxes, const Room& room) {
  Flow flow("legs", room.x, room.y, room.width, 3.0);
  const double size = room.fine_letters(8.4);
  const std::vector<double> widths = columns_for(room.table, size, flow.inner_width());
  std::size_t shown = 0;
  for (const auto& row : card.legs) {
    if (shown > room.most) break;
    flow.row(row, widths, {.text = "", .size = size, .bold = shown == 0});
    if (shown++ == 0) flow.rule();
  }
  if (card.legs.size() > shown)
    flow.words({.text = more(card.legs.size() - shown), .size = size, .bold = true});
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

// Widths of the first two of three columns, as shares.
struct Columns {
  double first, second;
};

struct Instructions {
  Flow steps, ticks, no_gear;  // the third column still empty
  double beside() const { return std::max(steps.bottom(), ticks.bottom()); }
};

Instructions instructions_in(const Columns& columns, const Card& card, const Room& room) {
  const double free = room.width - 2 * between, size = letters_of_steps * room.scale;
  const double first = columns.first * free, second = columns.second * free;
  Instructions made{Flow("steps", room.x, room.y, first), Flow("ticks", room.x + first + between, room.y, second),
                    Flow("piece and gear", room.x + first + second + 2 * between, room.y, free - first - second)};
  made.steps.words({.text = "In this order", .size = 1.15 * size, .bold = true});
  for (std::size_t i = 0; i < card.steps.size(); ++i)
    made.steps.item(fmt::format("{}.", i + 1), {.text = card.steps[i], .size = size}, 1.5 * size);
  made.steps.gap(0.3 * size);
  add_list("STOP, lower if you can, when", card.stops, card.stops.size(), size, made.steps);
  made.ticks.words({.text = "Tick by hand before the lift", .size = 1.15 * size, .bold = true});
  for (const std::string& text : card.ticks) {
    made.ticks.tick({.text = text, .size = size});
    made.ticks.gap(0.12 * size);
  }
  return made;
}

double add_instructions(const Card& card, std::vector<Box>& boxes, const Room& room) {
  const auto third = [&](const Instructions& beside, double letters) {
    Flow gear = beside.no_gear;
    add_piece(card, room, letters, gear);
    add_list("Landing, by the plan", card.landing, room.most, letters, gear);
    add_list("Gear of this lift, and no other", card.gear, room.most, letters, gear);
    return gear;
  };
  const double least = room.fine_letters(8.0);
  // Another share for the column that is the highest, where all three are lower so.
  Instructions made = instructions_in({0.44, 0.31}, card, room);
  Flow gear = third(made, least);
  const bool gear_is_highest = gear.bottom() > made.beside();
  const std::array<Columns, 2> others = gear_is_highest ? std::array<Columns, 2>{{{0.44, 0.28}, {0.41, 0.29}}}
                                                        : std::array<Columns, 2>{{{0.47, 0.30}, {0.50, 0.29}}};
  for (const Columns& columns : others) {
    Instructions other = instructions_in(columns, card, room);
    Flow its_gear = third(other, least);
    if (std::max(other.beside(), its_gear.bottom()) >= std::max(made.beside(), gear.bottom())) break;
    made = std::move(other), gear = std::move(its_gear);
  }
  for (double larger = least + 0.2; larger <= letters_of_steps * room.scale; larger += 0.2) {  // as large as there is room
    Flow trial = third(made, larger);
    if (trial.bottom() > made.beside()) break;
    gear = std::move(trial);
  }
  return add_beside(boxes, {made.steps, made.ticks, gear}, 0.5);
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
    const double size = 8.6 * room.scale, word_width = 7.2 * size;
    Flow flow(fmt::format("signal {}", i + 1), room.x, y, room.width, 1.4);
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
  const std::size_t columns = card.write_in.size() > 6 ? 4 : 3, rows = (card.write_in.size() + columns - 1) / columns;
  const double each = (room.width - static_cast<double>(columns - 1) * between) / static_cast<double>(columns),
               size = room.fine_letters(8.4);
  std::vector<Flow> flows;
  for (std::size_t column = 0; column < columns; ++column) {
    Flow flow(fmt::format("written by hand {}", column + 1),
              room.x + static_cast<double>(column) * (each + between), room.y, each);
    for (std::size_t row = 0; row < rows && column * rows + row < card.write_in.size(); ++row) {
      flow.gap(0.4 * size);
      flow.write_in({.text = card.write_in[column * rows + row], .size = size}, 0.5 * each);
    }
    flows.push_back(std::move(flow));
  }
  return add_beside(boxes, flows, 0.5);
}

double add_small_print(const Card& card, std::vector<Box>& boxes, const Room& room) {
  const double size = room.fine_letters(6.8);
  Flow flow("small print", room.x, room.y, room.width, 2.0);
  for (const SmallPrint& print : card.small_print) {
    const std::string& shorter = room.brevity == Brevity::names && !print.names.empty() ? print.names : print.in_short;
    if (room.brevity != Brevity::all && !shorter.empty()) {
      flow.words({.text = shorter, .size = size});
      continue;
    }
    std::string all = print.title + ": ";
    for (std::size_t i = 0; i < print.texts.size(); ++i) {
      all += print.texts[i];
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
              Page page, Room room) {
  room.x = room.y = margin;
  room.width = page.width - 2 * margin, room.bottom = page.height - margin;
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
  const double letters = legible_at_arms_length * std::max(1.0, room.scale) * std::min(1.0, room.fine / 0.8);
  const double left = 0.58 * (room.width - between);
  // A turn is told in words over its drawing.
  Flow turn("the turn", room.x, room.y, left);
  add_list("How it turns", card.turn, card.turn.size(), letters, turn);
  const double told = card.turn.empty() ? 0.0 : turn.bottom() - room.y + between;
  const double least = hangs ? told + (card.turn.empty() ? room.drawing : 0.8 * room.drawing)
                             : std::max(room.drawing, told - between);
  if (least > free && !room.anyway) return {std::move(page), least - free};  // drawings take most of the time
  const double high = std::max(free, least);
  if (!card.turn.empty()) boxes.push_back(turn.framed(0.5, hangs ? 0.0 : room.y + high));
  if (hangs) boxes.push_back(drawing_box(*hangs, {room.x, room.y + told, left, high - told}, letters));
  if (above)
    boxes.push_back(
        drawing_box(*above, {room.x + left + between, room.y, room.width - left - between, high}, letters));
  for (Box& box : below) {
    shift(box, high + between);
    boxes.push_back(std::move(box));
  }
  return {std::move(page), least - free};
}

Trial other_card(const Card& card, Page page, Room room) {
  constexpr double hatching = 12.0;
  const double inner = margin + hatching + between;
  room.x = room.y = inner;
  room.width = page.width - 2 * inner, room.bottom = page.height - inner;
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
  const bool may_lift = card.verdict == checks::Verdict::go;
  const std::size_t everything =
      std::max({card.legs.size(), card.gear.size(), card.reasons.size(), card.piece.size(), std::size_t{1}});
  const ColumnWidths table = widths_of(card.legs);
  const auto trial = [&](double scale, double fine, Brevity brevity, std::size_t most, bool anyway = false,
                         double least = smallest_letters, double drawing = low_drawing) {
    const Room room{0.0, 0.0, 0.0, 0.0, scale, fine, most, brevity, table, anyway, least, drawing};
    return may_lift ? go_card(card, hangs, above, empty_page(paper), room)
                    : other_card(card, empty_page(paper), room);
  };
  struct Sizes {
    double scale, fine;
    Brevity brevity;
    double drawing = least_drawing;
  };
  constexpr double legible = legible_at_arms_length / letters_of_steps;
  std::vector<Sizes> sizes;
  for (const double scale : {1.25, 1.12, 1.0}) sizes.push_back({scale, scale, Brevity::all});
  for (const Brevity brevity : {Brevity::all, Brevity::names, Brevity::counts})
    for (const double fine : {0.96, 0.88, 0.8, 0.72}) sizes.push_back({legible, fine, brevity});
  for (const double scale : {legible, 0.92, 0.88, 0.84, 0.8, 0.76, 0.72})
    sizes.push_back({scale, 0.72, Brevity::counts, low_drawing});
  for (const Sizes& each : sizes)
    if (Trial whole = trial(each.scale, each.fine, each.brevity, everything, false, smallest_letters, each.drawing);
        whole.over <= 0.0)
      return std::move(whole.page);
  const Sizes& last = sizes.back();
  std::size_t fits = 0, too_many = everything;  // more of a list never takes less room
  std::optional<Page> longest;
  while (too_many - fits > 1) {
    const std::size_t most = fits + (too_many - fits) / 2;
    if (Trial shorter = trial(last.scale, last.fine, last.brevity, most); shorter.over <= 0.0)
      fits = most, longest = std::move(shorter.page);
    else
      too_many = most;
  }
  if (longest) return *std::move(longest);
  // Cautions of a plant's own, without end: all of them, in letters as small as it takes.
  for (const double least : {5.0, 4.0, 3.0})
    if (Trial small = trial(last.scale, least / 8.4, last.brevity, 1, false, least); small.over <= 0.0)
      return std::move(small.page);
  return trial(last.scale, last.fine, last.brevity, 1, true).page;
}

}  // namespace firstpick::card
