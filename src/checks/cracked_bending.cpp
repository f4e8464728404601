// Bars of a line that the engineer lets crack, over every situation of the stage.
//
//   f_s, f_c     demands/cracked_section.hpp, under r_bend x (N, M), at every place where they may be worst
//   n = E_s/E_c  E_c: resistances/concrete_modulus.hpp, at the strength of the lift
//   w            crack_width, of the layer nearest to the pulled face
//
// Where no bars lie on the pulled half of the depth, the piece must not crack: that tension is told apart.
// Range    lines of level rectangular sections; bars anchored over their whole line, as the engineer states;
//          shear is not checked.

#include "checks/cracked_bending.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include <fmt/format.h>

#include "checks/line_model.hpp"
#include "checks/prestressed_bending.hpp"
#include "resistances/concrete_modulus.hpp"

namespace firstpick::checks {

namespace {

constexpr double rectangle_within = 1e-6;  // of a rectangle: area, second moment, fibres
constexpr double bars_aside_within =
    0.02;  // of the width: the middle of all bars from the middle of the section

NotAssessed bar_gap(const plan::Bar& bar, const std::string& what, const char* key) {
  return {fmt::format("bars '{}': {}", bar.name, what), fmt::format("[[piece.bar]] {}", key)};
}

struct BarsAlong {  // one layer along the line
  const plan::Bar* bar = nullptr;
  std::vector<Position> line;  // towards larger x
  plan::Axis axis = plan::Axis::x;

  Length at(const Position& p) const { return axis == plan::Axis::x ? p.x : p.y; }
  // Steps end where layers end: a layer lies in the whole step or in none of it.
  bool covers(const demands::BeamStep& step) const {
    const Length middle = 0.5 * (step.from + step.to);
    return middle > at(line.front()) && middle < at(line.back());
  }
  Position place(Length x) const { return place_on(line, axis, x); }
};

Outcome<std::vector<BarsAlong>> bar_layers_of(const plan::Plan& plan, plan::Axis axis) {
  std::vector<BarsAlong> layers;
  for (const plan::Bar& bar : plan.piece.bars) {
    BarsAlong layer{.bar = &bar, .line = rising_along(bar.line, axis), .axis = axis};
    for (std::size_t i = 1; i < layer.line.size(); ++i)
      if (!(layer.at(layer.line[i]) > layer.at(layer.line[i - 1])))
        return bar_gap(bar, "they do not run along the piece from place to place", "line: towards one end");
    layers.push_back(std::move(layer));
  }
  return layers;
}

bool is_level_rectangle(const piece::Stretch& stretch) {
  const Length height = stretch.middle.highest - stretch.middle.lowest,
               width = stretch.middle.farthest - stretch.middle.nearest;
  const Area area = height * width;
  for (const piece::Section* section : {&stretch.start, &stretch.middle, &stretch.end}) {
    const bool fills = abs(section->area - area) <= rectangle_within * area &&
                       abs(section->about_across - area * height * height / 12.0) <=
                           rectangle_within * area * height * height;
    if (!fills || !(abs(section->lowest - stretch.middle.lowest) <= rectangle_within * height) ||
        !(abs(section->highest - stretch.middle.highest) <= rectangle_within * height))
      return false;
  }
  return true;
}

struct BarSearch {
  const StageFacts& facts;
  const ModelChoice& model;
  const std::vector<BarsAlong>& layers;
  Ratio raise, modular_ratio;
  CrackedBending worst;

  std::optional<NotAssessed> look(const LineUnderLoad& line, const demands::BeamSection& section,
                                  const piece::Stretch& stretch) {
    const Ratio raised = raise * line.lighter_raise;
    const Moment moment = raised * section.moment;
    const Force axial = raised * section.axial;
    const bool pulls_below = section.bottom_stress >= section.top_stress;
    const UnitSystem units = facts.plan.piece.units;
    const auto place = [&](const char* face) {
      return CrackedPlace{fmt::format("{} of the piece, at {} = {}", face,
                                      model.axis == plan::Axis::x ? "x" : "y", print(section.at, units)),
                          line.situation, line.some_legs_only};
    };
    const char* const pulled = pulls_below ? "bottom" : "top";

    const Length middle = 0.5 * (stretch.middle.lowest + stretch.middle.highest);
    demands::CrackedSection cut{.width = stretch.middle.farthest - stretch.middle.nearest,
                                .bottom = stretch.middle.lowest,
                                .top = stretch.middle.highest,
                                .layers = {},
                                .modular_ratio = modular_ratio};
    std::vector<std::size_t> which;
    bool on_pulled_side = false;
    Area all{};
    Volume aside{};
    for (std::size_t i = 0; i < layers.size(); ++i) {
      if (!layers[i].covers(line.beam.steps.at(section.step))) continue;
      const Position at = layers[i].place(section.at);
      cut.layers.push_back({*layers[i].bar->area, at.z});
      which.push_back(i);
      on_pulled_side = on_pulled_side || (pulls_below ? at.z < middle : at.z > middle);
      all += *layers[i].bar->area;
      const Length off =
          model.axis == plan::Axis::x ? at.y - stretch.middle.centroid.y : at.x - stretch.middle.centroid.x;
      aside += *layers[i].bar->area * off;
    }
    if (!on_pulled_side) {
      const Stress tension = raised * std::max({section.top_stress, section.bottom_stress, Stress{}});
      if (worst.bare.where.empty() || tension > worst.bare.tension) {
        const CrackedPlace at = place(pulled);
        worst.bare = {tension, at.where, at.situation, abs(moment), at.some_legs_only};
      }
      return {};
    }
    if (!is_level_rectangle(stretch))
      return NotAssessed{
          fmt::format("at {:.3f} m the section of the piece is no level rectangle: its bars are not computed",
                      in(m, section.at)),
          std::string(own_bending_check)};
    if (!(abs(aside) <= bars_aside_within * all * cut.width))
      return NotAssessed{fmt::format("at {:.3f} m the bars together lie to one side", in(m, section.at)),
                         std::string(own_bending_check)};
    const auto found = demands::cracked_stress(cut, axial, moment);
    if (const auto* gap = std::get_if<NotAssessed>(&found)) return *gap;
    const auto& stress = std::get<demands::CrackedStress>(found);
    if (worst.concrete_at.where.empty() || stress.concrete > worst.concrete) {
      worst.concrete = stress.concrete;
      worst.concrete_at = place(pulls_below ? "top" : "bottom");
    }
    for (std::size_t i = 0; i < which.size(); ++i) {
      const plan::Bar& bar = *layers[which[i]].bar;
      const bool more = stress.bars[i] / *bar.yield_strength > worst.bar / worst.yield_strength;
      if (!worst.bar_at.where.empty() && !more) continue;
      worst.bar = std::max(stress.bars[i], Stress{});
      worst.yield_strength = *bar.yield_strength;
      worst.bar_at = place(pulled);
      worst.layer = bar.name;
      worst.section = cut, worst.stress = stress, worst.axial = axial, worst.moment = moment,
      worst.in_layer = i;
    }
    widest_crack(stress, cut, which, place(pulled));
    return {};
  }

  void widest_crack(const demands::CrackedStress& stress, const demands::CrackedSection& cut,
                    const std::vector<std::size_t>& which, const CrackedPlace& place) {
    if (stress.whole) return;
    const Length height = cut.top - cut.bottom;
    std::size_t outer = 0;
    const auto depth = [&](std::size_t i) {
      return stress.pressed_below ? cut.layers[i].height - cut.bottom : cut.top - cut.layers[i].height;
    };
    for (std::size_t i = 1; i < which.size(); ++i)
      if (depth(i) > depth(outer)) outer = i;
    if (!(stress.bars[outer] > Stress{})) return;
    const Ratio beta = (height - stress.pressed) / (depth(outer) - stress.pressed);
    const Length crack = demands::crack_width(stress.bars[outer], facts.rules.bars.modulus.value, beta,
                                              height - depth(outer), *layers[which[outer]].bar->spacing);
    if (!(crack > worst.crack)) return;
    worst.crack = crack;
    worst.crack_at = place;
  }
};

void tell_bar_steps(const CrackedBending& bent, Ratio n, const StageFacts& facts, Trace& trace) {
  if (bent.bar_at.where.empty() || bent.stress.whole) return;
  const Length height = bent.section.top - bent.section.bottom;
  const double h = in(mm, height), b = in(mm, bent.section.width), x = in(mm, bent.stress.pressed);
  const double M = std::abs(bent.moment.value()) * 1e3;
  std::string sum = "b_s * x_s^2 / 2 * (h_s / 2 - x_s / 3)";
  std::vector<Term> given{
      {"M_s", M, "N mm"}, {"b_s", b, "mm"}, {"x_s", x, "mm"}, {"h_s", h, "mm"}, {"n_s", n.value(), "1"}};
  double of_bars = 0.0;
  for (std::size_t i = 0; i < bent.section.layers.size(); ++i) {
    const demands::BarLayer& layer = bent.section.layers[i];
    const double d = in(
        mm, bent.stress.pressed_below ? layer.height - bent.section.bottom : bent.section.top - layer.height);
    const double A = in(mm2, layer.area);
    const std::string of = fmt::format("{}", i + 1);
    sum +=
        fmt::format(" + {0} * A_s{1} * (d_s{1} - x_s) * (d_s{1} - h_s / 2)", d < x ? "(n_s - 1)" : "n_s", of);
    of_bars += (d < x ? n.value() - 1.0 : n.value()) * A * (d - x) * (d - h / 2.0);
    given.push_back({"A_s" + of, A, "mm2"});
    given.push_back({"d_s" + of, d, "mm"});
  }
  const double k = M / (b * x * x / 2.0 * (h / 2.0 - x / 3.0) + of_bars);
  trace.add([&] {
    return Step{.words = fmt::format("depth of the section that stays pressed, {}; {}", bent.bar_at.where,
                                     bent.bar_at.situation),
                .result = {"x_s", x, "mm"},
                .given = {{"N_s", in(newton, bent.axial), "N"}},
                .clause = "elastic analysis of cracked sections"};
  });
  trace.add([&] {
    return Step{.words = "slope of the stress of the concrete over the depth there",
                .result = {"k_s", k, "N/mm3"},
                .formula = fmt::format("M_s / ({})", sum),
                .given = given,
                .clause = "elastic analysis of cracked sections"};
  });
  const std::string of = fmt::format("{}", bent.in_layer + 1);
  const demands::BarLayer& layer = bent.section.layers[bent.in_layer];
  const double d = in(
      mm, bent.stress.pressed_below ? layer.height - bent.section.bottom : bent.section.top - layer.height);
  trace.add([&] {
    return Step{
        .words = fmt::format("stress of bars '{}'", bent.layer),
        .result = {"f_s", n.value() * k * (d - x), "MPa"},
        .formula = fmt::format("n_s * k_s * (d_s{} - x_s)", of),
        .given = {{"n_s", n.value(), "1"}, {"k_s", k, "N/mm3"}, {"d_s" + of, d, "mm"}, {"x_s", x, "mm"}},
        .clause = "elastic analysis of cracked sections",
        .sources = {facts.rules.bars.yield_share.source}};
  });
}

}  // namespace

std::optional<NotAssessed> unusable_bars(const StageFacts& facts) {
  const Vector<Length> extent = facts.body.highest - facts.body.lowest;
  const Area section = facts.body.volume / std::max(extent.x, extent.y);  // the mean one
  for (const plan::Bar& bar : facts.plan.piece.bars) {
    if (!bar.area) return bar_gap(bar, "their area is not stated", "area: of all bars of the layer");
    if (!bar.yield_strength)
      return bar_gap(bar, "their yield strength is not stated", "yield_strength: as specified");
    if (!(*bar.yield_strength > Stress{}) || !is_finite(*bar.yield_strength))
      return bar_gap(bar, "their yield strength is not a usable number", "yield_strength: as specified");
    if (bar.line.size() < 2) return bar_gap(bar, "where they run is not stated", "line: from place to place");
    if (!bar.spacing) return bar_gap(bar, "their spacing is not stated", "spacing: from bar to bar");
    if (!(*bar.spacing > Length{}) || !is_finite(*bar.spacing))
      return bar_gap(bar, "their spacing is not a usable number", "spacing: from bar to bar");
    if (!(*bar.area < section)) return bar_gap(bar, "they are larger than the piece's section", "area: of all bars of the layer");
    if (!is_in_box_around(facts.body, bar.line))
      return bar_gap(bar, "they do not lie in the piece", "line: as the drawing has it");
  }
  return {};
}

Outcome<CrackedBending> cracked_bending(const StageFacts& facts, const ModelChoice& model, Ratio raise,
                                        Stress strength, Trace& trace) {
  if (auto gap = unusable_bars(facts)) return *std::move(gap);
  const auto made = bar_layers_of(facts.plan, model.axis);
  if (const auto* missing = std::get_if<NotAssessed>(&made)) return *missing;
  const auto& layers = std::get<std::vector<BarsAlong>>(made);
  const auto modulus = resistances::concrete_modulus(facts.plan.concrete, strength, facts.rules, facts.tables, trace);
  if (const auto* missing = std::get_if<NotAssessed>(&modulus)) return *missing;
  const Stress E_s = facts.rules.bars.modulus.value, E_c = std::get<Stress>(modulus);
  const Ratio n = std::max(Ratio::from_value(1.0), Ratio{E_s / E_c});
  trace.add([&] {
    return Step{.words = "how many times bars are counted against concrete",
                .result = {"n_s", n.value(), "1"},
                .formula = "max(1, E_s / E_c)",
                .given = {{"E_s", in(MPa, E_s), "MPa"}, {"E_c", in(MPa, E_c), "MPa"}},
                .clause = "elastic analysis of cracked sections",
                .sources = {facts.rules.bars.modulus.source}};
  });

  std::vector<Length> ends;
  for (const BarsAlong& layer : layers)
    for (const Position& place : layer.line) ends.push_back(layer.at(place));
  const auto loaded = lines_under_load(facts, model, ends);
  if (const auto* missing = std::get_if<NotAssessed>(&loaded)) return *missing;
  const auto& under = std::get<LinesUnderLoad>(loaded);
  BarSearch search{facts, model, layers, raise, n, {}};
  for (const LineUnderLoad& line : under.lines) {
    const auto state = demands::beam_state(line.beam);
    if (const auto* missing = std::get_if<NotAssessed>(&state)) return *missing;
    for (const demands::BeamSection& section : std::get<demands::BeamState>(state).sections)
      if (auto gap = search.look(line, section, under.stretches.at(section.step))) return *std::move(gap);
  }
  tell_bar_steps(search.worst, n, facts, trace);
  return search.worst;
}

}  // namespace firstpick::checks
