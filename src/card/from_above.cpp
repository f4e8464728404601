#include <algorithm>
#include <cmath>

#include "card/content.hpp"
#include "card/drawing.hpp"
#include "units/print.hpp"

namespace firstpick::card {

namespace {

// Places along one axis, nearer ones than this as one.
std::vector<Length> distinct(std::vector<Length> places) {
  constexpr Length together = 2.0 * mm;
  std::ranges::sort(places);
  std::vector<Length> apart;
  for (const Length& place : places)
    if (apart.empty() || place - apart.back() > together) apart.push_back(place);
  return apart;
}

// Edge, picks, edge: each distance on a line beside the piece.
void add_chain(const std::vector<Length>& stations, Length beside, bool along_x, UnitSystem units,
               Drawing& drawing) {
  const auto point = [&](Length along, Length across) {
    return along_x ? plan::PlanarPoint{along, across} : plan::PlanarPoint{across, along};
  };
  const Length tick = 0.012 * (stations.back() - stations.front());
  drawing.strokes.push_back(
      {{point(stations.front(), beside), point(stations.back(), beside)}, Pen::measure});
  for (std::size_t i = 0; i < stations.size(); ++i) {
    drawing.strokes.push_back(
        {{point(stations[i], beside - tick), point(stations[i], beside + tick)}, Pen::measure});
    if (i == 0 || stations[i] - stations[i - 1] < mm) continue;
    const plan::PlanarPoint middle = point(0.5 * (stations[i] + stations[i - 1]), beside);
    drawing.labels.push_back({middle, print(stations[i] - stations[i - 1], units), Sign::none, false,
                              along_x ? Write::below : Write::left});
  }
}

// In the order of their direction from their middle: neighbours round the piece.
std::vector<plan::PlanarPoint> round_the_middle(std::vector<plan::PlanarPoint> points) {
  Length x{}, y{};
  for (const auto& p : points)
    x += p.x / static_cast<double>(points.size()), y += p.y / static_cast<double>(points.size());
  std::ranges::stable_sort(
      points, {}, [&](const plan::PlanarPoint& p) { return std::atan2(in(m, p.y - y), in(m, p.x - x)); });
  return points;
}

void add_between(const std::vector<plan::PlanarPoint>& picks, UnitSystem units, Drawing& drawing) {
  constexpr std::size_t most_told = 6;
  if (picks.size() < 2 || picks.size() > most_told) return;
  const auto ring = round_the_middle(picks);
  for (std::size_t i = 0; i < ring.size() && (ring.size() > 2 || i == 0); ++i) {
    const plan::PlanarPoint &a = ring[i], &b = ring[(i + 1) % ring.size()];
    const Length apart = std::hypot(in(m, a.x - b.x), in(m, a.y - b.y)) * m;
    drawing.strokes.push_back({{a, b}, Pen::measure});
    const auto at = [&](double part) {
      return plan::PlanarPoint{part * a.x + (1.0 - part) * b.x, part * a.y + (1.0 - part) * b.y};
    };
    drawing.labels.push_back({at(0.5),
                              print(apart, units),
                              Sign::none,
                              false,
                              Write::across,
                              {at(0.35), at(0.65), at(0.25), at(0.75)}});
  }
}

}  // namespace

std::optional<Drawing> from_above(const plan::Plan& plan, const piece::Body& body,
                                  const checks::Report& report, std::size_t stage) {
  const auto& hanging = report.stages.at(stage).hanging;
  const auto rigging = rigging_of(plan, plan.stages.at(stage));
  if (!rigging) return {};
  const piece::View view = view_from_above(hanging ? hanging->up : Direction{0.0, 0.0, 1.0});
  Drawing drawing{.title = "Picks from above: from the edges, from each other",
                  .strokes = {},
                  .labels = {},
                  .name = "picks from above"};
  const auto lines = piece::line_drawing(body, view);
  for (const piece::DrawnLine& line : lines ? *lines : piece::box_drawing(body, view))
    if (!line.hidden) drawing.strokes.push_back({line.points, Pen::edge});

  const Span span = span_of(body, view);
  std::vector<plan::PlanarPoint> picks;
  std::vector<Length> across{span.lowest.x, span.highest.x}, along{span.lowest.y, span.highest.y};
  std::vector<bool> used(plan.inserts.size());
  for (const Pick& pick : picks_of(plan, *rigging)) {
    used[pick.insert] = true;
    picks.push_back(piece::seen(view, plan.inserts[pick.insert].at));
    across.push_back(picks.back().x);
    along.push_back(picks.back().y);
    drawing.labels.push_back({picks.back(), std::to_string(pick.number), Sign::pick});
  }
  for (std::size_t i = 0; i < plan.inserts.size(); ++i)
    if (!used[i]) drawing.labels.push_back({piece::seen(view, plan.inserts[i].at), "", Sign::unused_insert});
  drawing.labels.push_back({piece::seen(view, report.centre_of_gravity), "", Sign::centre_of_gravity});
  add_between(picks, report.units, drawing);
  const Length size = std::max(span.highest.x - span.lowest.x, span.highest.y - span.lowest.y);
  add_chain(distinct(across), span.lowest.y - 0.07 * size, true, report.units, drawing);
  add_chain(distinct(along), span.lowest.x - 0.07 * size, false, report.units, drawing);
  return drawing;
}

}  // namespace firstpick::card
