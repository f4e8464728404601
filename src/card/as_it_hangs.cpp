#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "card/content.hpp"
#include "card/drawing.hpp"
#include "plan/rigging_tree.hpp"
#include "units/print.hpp"

namespace firstpick::card {

namespace {

constexpr Angle eye_above_level = 25.0 * deg;
constexpr std::size_t most_legs_labelled = 6;  // more would hide each other: the table has them

Direction unit(const Direction& d) { return (1.0 / norm(d)) * d; }

// Seen from this side: `turned` about the vertical from the piece's x axis.
piece::View view_from(const Direction& up, Angle turned) {
  const Direction x{1.0, 0.0, 0.0}, y{0.0, 1.0, 0.0};
  const Direction& along = std::abs(up.x) < 0.9 ? x : y;
  const Direction level = unit(along - dot(along, up) * up);
  const Direction right = cosine(turned) * level + sine(turned) * cross(up, level);
  return {right, cosine(eye_above_level) * up + sine(eye_above_level) * cross(up, right)};
}

// The side from which the picks stand farthest apart.
piece::View clearest_view(const plan::Plan& plan, const std::vector<Pick>& picks, const Direction& up) {
  constexpr std::array<double, 10> sides_deg = {-25, 25, -35, 35, -15, 15, -50, 50, -65, 65};
  piece::View best = view_from(up, sides_deg[0] * deg);
  Length best_gap{};
  for (const double side : sides_deg) {
    const piece::View view = view_from(up, side * deg);
    std::vector<Length> across;
    across.reserve(picks.size());
    for (const Pick& pick : picks) across.push_back(piece::seen(view, plan.inserts[pick.insert].at).x);
    std::ranges::sort(across);
    if (across.size() < 2) return view;
    Length gap = across[1] - across[0];
    for (std::size_t i = 2; i < across.size(); ++i) gap = std::min(gap, across[i] - across[i - 1]);
    if (gap > 1.02 * best_gap) best = view, best_gap = gap;  // of equals the first
  }
  return best;
}

Position on(const demands::CarrierPose& carrier, const Position& at) {
  return carrier.origin + carrier.axes[0] * at.x + carrier.axes[1] * at.y + carrier.axes[2] * at.z;
}

// A beam as the outline of its points: two are joined where no third is nearer to both.
void add_beam(const plan::Beam& beam, const demands::CarrierPose& pose, const piece::View& view,
              Drawing& drawing) {
  std::vector<Position> points;
  for (const plan::BeamPoint& point : beam.points) points.push_back(on(pose, point.at));
  for (std::size_t a = 0; a < points.size(); ++a)
    for (std::size_t b = a + 1; b < points.size(); ++b) {
      const Length apart = norm(points[a] - points[b]);
      const bool other_between = std::ranges::any_of(points, [&](const Position& p) {
        return std::max(norm(p - points[a]), norm(p - points[b])) < 0.999 * apart;
      });
      if (!other_between)
        drawing.strokes.push_back({{piece::seen(view, points[a]), piece::seen(view, points[b])}, Pen::beam});
    }
  drawing.labels.push_back(
      {piece::seen(view, pose.origin), "beam " + inert_at_both_ends(beam.id, 16), Sign::none});
}

void add_legs(const plan::Rigging& rigging, const demands::Hanging& hanging, const std::vector<Pick>& picks,
              const piece::View& view, UnitSystem units, Drawing& drawing) {
  std::vector<plan::PlanarPoint> hooks;
  const auto name_of = [&](std::size_t leg) {
    const auto pick = std::ranges::find(picks, leg, &Pick::leg);
    return pick == picks.end() ? inert_at_both_ends(rigging.legs[leg].to, 12) : std::to_string(pick->number);
  };
  for (std::size_t i = 0; i < rigging.legs.size(); ++i) {
    const plan::Leg& leg = rigging.legs[i];
    const auto& span = hanging.spans.at(i);
    const plan::PlanarPoint from = piece::seen(view, span[0]), to = piece::seen(view, span[1]);
    drawing.strokes.push_back({{from, to}, Pen::leg});
    const bool at_a_hook = leg.from.empty() ||
                           std::ranges::find(rigging.hooks, leg.from, &plan::Hook::id) != rigging.hooks.end();
    const auto near = [&](const plan::PlanarPoint& p) {
      return abs(p.x - from.x) < mm && abs(p.y - from.y) < mm;
    };
    if (at_a_hook && std::ranges::none_of(hooks, near)) {
      hooks.push_back(from);
      drawing.labels.push_back(
          {from, leg.from.empty() ? "hook" : "hook " + inert_at_both_ends(leg.from, 14), Sign::hook});
    }
    if (!leg.length || rigging.legs.size() > most_legs_labelled) continue;
    const auto part = [&](double down) {
      return plan::PlanarPoint{(1.0 - down) * from.x + down * to.x, (1.0 - down) * from.y + down * to.y};
    };
    drawing.labels.push_back({part(0.5),
                              fmt::format("{}: {}, {}", name_of(i), print(*leg.length, units),
                                          print(hanging.legs.at(i).angle_from_horizontal, units)),
                              Sign::none,
                              false,
                              Write::beside,
                              {part(0.6), part(0.4), part(0.7), part(0.3), part(0.8)},
                              drawing.strokes.size() - 1});
  }
}

}  // namespace

std::optional<Drawing> as_it_hangs(const plan::Plan& plan, const piece::Body& body,
                                   const checks::Report& report, std::size_t stage) {
  const auto& hanging = report.stages.at(stage).hanging;
  const auto rigging = rigging_of(plan, plan.stages.at(stage));
  if (!hanging || !rigging || hanging->spans.size() != rigging->legs.size()) return {};
  const std::vector<Pick> picks = picks_of(plan, *rigging);
  const piece::View view = clearest_view(plan, picks, hanging->up);

  Drawing drawing{
      .title = rigging->legs.size() > most_legs_labelled
                   ? "As it hangs, to scale: lengths and angles of the legs are in the table"
                   : "As it hangs, to scale: length of a leg, its angle from level",
      .strokes = {},
      .labels = {}};
  auto lines = piece::line_drawing(body, view);
  if (!lines) {
    lines = piece::box_drawing(body, view);
    drawing.title += " (the piece drawn as the box around it)";
  }
  for (piece::DrawnLine& line : *lines)
    drawing.strokes.push_back({std::move(line.points), line.hidden ? Pen::hidden : Pen::edge});
  for (const Pick& pick : picks)
    drawing.labels.push_back(
        {piece::seen(view, plan.inserts[pick.insert].at), std::to_string(pick.number), Sign::pick});
  add_legs(*rigging, *hanging, picks, view, report.units, drawing);
  for (std::size_t i = 0; i < rigging->beams.size() && i < hanging->carriers.size(); ++i)
    add_beam(rigging->beams[i], hanging->carriers[i], view, drawing);
  for (std::size_t i = 0; i < rigging->sheaves.size() && rigging->beams.size() + i < hanging->carriers.size();
       ++i)
    drawing.labels.push_back({piece::seen(view, hanging->carriers[rigging->beams.size() + i].origin),
                              fmt::format("{} {}", plan::kind_of(rigging->sheaves[i]),
                                          inert_at_both_ends(rigging->sheaves[i].id, 14)),
                              Sign::sheave});
  drawing.labels.push_back({piece::seen(view, report.centre_of_gravity), "", Sign::centre_of_gravity});
  return drawing;
}

}  // namespace firstpick::card
