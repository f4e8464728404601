// Strips that bend as beams beside the plate of panel_tension.cpp.
//
//   sigma_a = 6 M_a/(b_a t^2),   M_a = r_bend w b/2 max(c^2/2, a^2/8 - a c/2),   b_a = min(b/2, n_strip t)
//
// a the side that the strips run along, b the other, c from its ends to the picks; and the same the other
// way. w is the load of the heaviest load set over the area.
//
// Source   demands/handbook_panel.hpp: PCI handbook, from memory, for picks at 0.2071 of the sides; other
//          places by the same statics. n_strip: "cracking.pick_strip" of the rule set.
// Differs  from the plate: all legs carry alike and hang upright, a strip bends alike over its width, no
//          twist. The plate has the legs as they share and pull, what gathers near picks, and a part on top
//          for its own error.

#include "checks/line_method.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <fmt/format.h>

#include "checks/bending_multiplier.hpp"
#include "checks/panel_face.hpp"
#include "checks/piece_bending.hpp"
#include "demands/handbook_panel.hpp"

namespace firstpick::checks {

namespace {

constexpr double picks_even_within = 0.01;        // of a side: picks in pairs
constexpr double rectangle_corner_within = 1e-6;  // of the longer side: corners of a rectangle

struct Strips {
  Length a{}, b{}, end_a{}, end_b{}, thickness{};
  Stress load{};  // with the raise
  Ratio raise{};
  Length strip_a{}, strip_b{};  // widths
  demands::HandbookPanel moments;
};

// Two picks at each end of a side, as far from it at both ends; or nothing.
std::optional<Length> end_to_picks(std::vector<Length> places, Length from, Length to) {
  std::ranges::sort(places);
  const Length side = to - from, left = 0.5 * (places[0] + places[1]) - from,
               right = to - 0.5 * (places[2] + places[3]);
  const bool even = places[1] - places[0] <= picks_even_within * side &&
                    places[3] - places[2] <= picks_even_within * side &&
                    abs(left - right) <= picks_even_within * side;
  if (!even || !(places[2] - places[1] > picks_even_within * side)) return {};
  return std::max(left, right);
}

std::optional<Strips> strips_of(const StageFacts& facts, const ModelChoice& model) {
  if (model.model != plan::PieceModel::panel || bending_gap(facts) || is_turned(facts)) return {};
  const auto face = panel_face(facts.plan, facts.body);
  if (!face || !face->outline.holes.empty() || face->outline.outer.size() != 4) return {};
  if (!facts.rigging || facts.plan.inserts.size() != 4) return {};
  Length low_x = face->outline.outer[0].x, high_x = low_x, low_y = face->outline.outer[0].y, high_y = low_y;
  for (const plan::PlanarPoint& p : face->outline.outer) {
    low_x = std::min(low_x, p.x), high_x = std::max(high_x, p.x);
    low_y = std::min(low_y, p.y), high_y = std::max(high_y, p.y);
  }
  const Length near = rectangle_corner_within * std::max(high_x - low_x, high_y - low_y);
  for (const plan::PlanarPoint& p : face->outline.outer)
    if (std::min(abs(p.x - low_x), abs(p.x - high_x)) > near ||
        std::min(abs(p.y - low_y), abs(p.y - high_y)) > near)
      return {};
  std::vector<Length> x, y;
  for (const plan::Insert& insert : facts.plan.inserts) {
    if (std::ranges::none_of(facts.rigging->legs, [&](const plan::Leg& leg) { return leg.to == insert.id; }))
      return {};
    x.push_back(face->at(insert.at).x);
    y.push_back(face->at(insert.at).y);
  }
  const auto end_x = end_to_picks(x, low_x, high_x), end_y = end_to_picks(y, low_y, high_y);
  if (!end_x || !end_y) return {};
  Trace silent;
  const auto raise = bending_raise(facts, silent);
  if (!is_assessed(raise)) return {};
  Force heaviest{};
  for (const loads::LoadSet& set : std::get<loads::StageLoad>(facts.load).gear_loads)
    heaviest = std::max(heaviest, set.total);
  const bool x_longer = high_x - low_x >= high_y - low_y;
  Strips made{.a = x_longer ? high_x - low_x : high_y - low_y,
              .b = x_longer ? high_y - low_y : high_x - low_x,
              .end_a = x_longer ? *end_x : *end_y,
              .end_b = x_longer ? *end_y : *end_x,
              .thickness = face->thickness,
              .raise = std::get<Ratio>(raise)};
  made.load = made.raise * heaviest / area_of(face->outline);
  const Length widest = facts.rules.cracking.pick_strip.value * face->thickness;
  made.moments = demands::four_picks_at(made.load, made.a, made.b, made.end_a, made.end_b, widest);
  return made;
}

Stress strip_tension(const demands::StripMoment& strip, Length thickness) {
  return 6.0 * strip.per_width() / (thickness * thickness);
}

}  // namespace

std::optional<LineMethod> line_method(const StageFacts& facts, const ModelChoice& model) {
  const auto strips = strips_of(facts, model);
  if (!strips) return {};
  return LineMethod{strip_tension(strips->moments.along, strips->thickness),
                    strip_tension(strips->moments.across, strips->thickness)};
}

void tell_line_method(const StageFacts& facts, const ModelChoice& model, Trace& trace) {
  const auto strips = strips_of(facts, model);
  if (!strips) return;
  const auto tell = [&](const std::string& of, const char* words, const demands::StripMoment& strip,
                        Length side, Length other, Length end) {
    trace.add([&] {
      return Step{
          .words = words,
          .result = {"sigma_" + of, in(MPa, strip_tension(strip, strips->thickness)), "MPa"},
          .formula = fmt::format("6 * w_l * l_{1} / 2 * max(c_{0}^2 / 2, l_{0}^2 / 8 - l_{0} * c_{0} / 2) / "
                                 "(b_{0} * t_l^2)",
                                 of, of == "a" ? "b" : "a"),
          .given = {{"w_l", in(MPa, strips->load), "N/mm2"},
                    {"l_" + of, in(mm, side), "mm"},
                    {of == "a" ? "l_b" : "l_a", in(mm, other), "mm"},
                    {"c_" + of, in(mm, end), "mm"},
                    {"b_" + of, in(mm, strip.width), "mm"},
                    {"t_l", in(mm, strips->thickness), "mm"}},
          .clause = "statics of beams",
          .sources = {facts.rules.cracking.pick_strip.source}};
    });
  };
  tell("a",
       "beside the plate, by hand: tension of a strip along the panel on upright legs that carry alike",
       strips->moments.along, strips->a, strips->b, strips->end_a);
  tell(
      "b",
      "beside the plate, by hand: tension of a strip across the panel on upright legs that carry alike",
      strips->moments.across, strips->b, strips->a, strips->end_b);
}

std::string line_method_told(const StageFacts& facts, const ModelChoice& model) {
  const auto by_hand = line_method(facts, model);
  const auto* known = facts.bending && facts.bending->tension
                          ? std::get_if<BendingTension>(&*facts.bending->tension)
                          : nullptr;
  if (!by_hand || !known) return {};
  Trace silent;
  const auto raise = bending_raise(facts, silent);
  if (!is_assessed(raise)) return {};
  const UnitSystem units = facts.plan.piece.units;
  return fmt::format(
      "bending in stage {}: {} by the plate; by hand, strips that bend as beams, {} along and {} across. "
      "The plate has the legs as they share and pull, and what gathers near the picks; strips have upright "
      "legs that carry alike",
      plan::word_for(facts.stage.kind),
      print(Stress{std::get<Ratio>(raise) * known->tension}, units, Rounding::up),
      print(by_hand->along, units, Rounding::up), print(by_hand->across, units, Rounding::up));
}

}  // namespace firstpick::checks
