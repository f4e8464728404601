// A turn from the side, three moments beside each other on one scale.

#include <algorithm>

#include <fmt/format.h>

#include "card/content.hpp"
#include "card/drawing.hpp"
#include "units/print.hpp"

namespace firstpick::card {

namespace {

plan::PlanarPoint moved(const plan::PlanarPoint& p, Length right, Length up) {
  return {p.x + right, p.y + up};
}

std::string scales(const checks::TurnMoment& moment, UnitSystem units) {
  std::string text = print(moment.angle, units);
  if (!moment.held) return text + (moment.reading ? ": legs slack" : "");
  if (moment.reading) text += ": " + print(*moment.reading, units, Rounding::down);
  if (moment.tail_reading)
    text += " and " + print(*moment.tail_reading, units, Rounding::down);
  return text;
}

// One moment as strokes and labels about the piece's own origin.
Drawing at_moment(const plan::Plan& plan, const piece::Body& body, const plan::Rigging& rigging,
                  std::size_t main_legs, const checks::TurnMoment& moment) {
  Drawing drawing;
  const piece::View view{moment.level, moment.up};
  const auto lines = piece::line_drawing(body, view);
  for (const piece::DrawnLine& line : lines ? *lines : piece::box_drawing(body, view))
    if (!line.hidden) drawing.strokes.push_back({line.points, Pen::edge});
  if (!moment.held) return drawing;
  const auto hook_of = [&](std::size_t leg) {
    return piece::seen(view, leg < main_legs ? moment.hook : moment.tail_hook);
  };
  for (std::size_t leg = 0; leg < rigging.legs.size(); ++leg) {
    const auto insert = std::ranges::find(plan.inserts, rigging.legs[leg].to, &plan::Insert::id);
    if (insert == plan.inserts.end()) continue;
    drawing.strokes.push_back({{hook_of(leg), piece::seen(view, insert->at)}, Pen::leg});
  }
  for (const std::size_t leg : {std::size_t{0}, main_legs})
    if (leg < rigging.legs.size()) drawing.labels.push_back({hook_of(leg), "", Sign::hook});
  return drawing;
}

struct Moment {
  Drawing drawn;
  Span piece, whole;  // without and with its legs
};

Moment with_spans(Drawing drawn) {
  std::vector<piece::DrawnLine> lines;
  for (const Stroke& stroke : drawn.strokes)
    if (stroke.pen == Pen::edge) lines.push_back({stroke.points, false});
  const Span piece = span_of(lines);
  for (const Stroke& stroke : drawn.strokes) lines.push_back({stroke.points, false});
  return {std::move(drawn), piece, span_of(lines)};
}

}  // namespace

std::optional<Drawing> as_it_turns(const plan::Plan& plan, const piece::Body& body,
                                   const checks::Report& report, std::size_t at, const checks::PullsOnScale& pulls) {
  const auto rigging = rigging_of(plan, plan.stages.at(at));
  const auto& turn = plan.stages.at(at).turn;
  if (!turn || !rigging || pulls.moments.empty()) return {};
  const auto second = std::ranges::find(rigging->legs, "second hook", &plan::Leg::from);
  const auto main_legs = static_cast<std::size_t>(second - rigging->legs.begin());
  const bool on_the_ground = turn->method == plan::TurnMethod::edge;

  Drawing drawing{.title = "How it turns, from the side: angle, and what the scale shows at rest",
                  .strokes = {},
                  .labels = {},
                  .name = "as it turns"};
  // Each moment stands on the same ground; between them as much room as the words below them take in a wide box.
  constexpr double wide = 2.9;  // of the box, over its height
  std::vector<Moment> moments;
  Length across{}, high{};
  for (const checks::TurnMoment& moment : pulls.moments) {
    moments.push_back(with_spans(at_moment(plan, body, *rigging, main_legs, moment)));
    across = across + (moments.back().whole.highest.x - moments.back().whole.lowest.x);
    high = std::max(high, moments.back().whole.highest.y - moments.back().piece.lowest.y);
  }
  const Length between = std::max(0.1 * across, (1.0 / static_cast<double>(moments.size())) * (wide * high - across));
  Length right{};
  std::vector<std::pair<plan::PlanarPoint, std::string>> angles;
  for (std::size_t i = 0; i < moments.size(); ++i) {
    auto& [one, piece, whole] = moments[i];
    const Length to_right = right - whole.lowest.x, up = -piece.lowest.y;
    for (Stroke& stroke : one.strokes) {
      for (plan::PlanarPoint& p : stroke.points) p = moved(p, to_right, up);
      drawing.strokes.push_back(std::move(stroke));
    }
    for (Label& label : one.labels) {
      label.at = moved(label.at, to_right, up);
      drawing.labels.push_back(std::move(label));
    }
    angles.push_back({{0.5 * (piece.lowest.x + piece.highest.x) + to_right, Length{}},
                      scales(pulls.moments[i], report.units)});
    right = right + (whole.highest.x - whole.lowest.x) + between;
  }
  if (on_the_ground) drawing.strokes.push_back({{{-0.5 * between, Length{}}, {right - 0.5 * between, Length{}}}, Pen::measure});
  for (auto& [below, text] : angles)
    drawing.labels.push_back({below, std::move(text), Sign::none, false, Write::below});
  return drawing;
}

}  // namespace firstpick::card
