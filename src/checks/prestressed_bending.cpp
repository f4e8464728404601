// The faces of a line with strands, over every situation of the stage.
//
//   stress = s x (stress of the loads) + stress of the strands      demands/prestressed_line.hpp
//
//   s      from the least to the most: r_bend (bending_multiplier.cpp), and of "hanging", with form parts or
//          without them, where the load may also help,
//
//          s_min = max(0, 2 - phi)/phi x W_least/W      as far below the weight as the dynamic factor goes above it;
//                                                       W_least with the tolerance of the density taken off
//
//          of other load sets at least 1
//   rows   each at its least or its most (prestress.* of the rule set), whichever hurts
//
// Source   statics; that a load bounces as far up as down: an undamped swing about rest.
// Range    strands that end in the concrete, bonded; section alike between two stations; strands even about
//          the middle.

#include "checks/prestressed_bending.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "checks/line_model.hpp"

namespace firstpick::checks {

namespace {

constexpr double strands_aside_within =
    0.02;  // of the width: the pull of all strands from the middle of the section
constexpr double just_inside = 1e-6;  // of the way between two places

Length along_line(plan::Axis axis, const Position& p) { return axis == plan::Axis::x ? p.x : p.y; }
Length across_line(plan::Axis axis, const Position& p) { return axis == plan::Axis::x ? p.y : p.x; }

NotAssessed strand_gap(const plan::Strand& strand, const std::string& what, const char* key) {
  return {fmt::format("strands '{}': {}", strand.name, what), fmt::format("[[piece.strand]] {}", key)};
}

// Of strands whose numbers are all there.
std::vector<demands::StrandRow> strand_rows_of(const plan::Plan& plan, plan::Axis axis) {
  std::vector<demands::StrandRow> rows;
  for (const plan::Strand& strand : plan.piece.strands) {
    demands::StrandRow row{.force = *strand.force, .points = {}, .transfer = *strand.transfer_length};
    for (const Position& place : rising_along(strand.line, axis))
      row.points.push_back({along_line(axis, place), place.z});
    rows.push_back(std::move(row));
  }
  return rows;
}

// All strands together pull in the middle of the width, or they bend the piece sideways. Between two places
// where a row ends or bends, or the section changes, their pull moves along a straight line: its ends count,
// just inside.
std::optional<NotAssessed> strands_to_one_side(const plan::Plan& plan, plan::Axis axis,
                                               const std::vector<piece::Stretch>& stretches) {
  std::vector<Length> places;
  std::vector<std::vector<Position>> rows;
  for (const piece::Stretch& stretch : stretches) places.insert(places.end(), {stretch.from, stretch.to});
  for (const plan::Strand& strand : plan.piece.strands) {
    rows.push_back(rising_along(strand.line, axis));
    for (const Position& place : rows.back()) places.push_back(along_line(axis, place));
  }
  std::ranges::sort(places);
  const auto is_aside = [&](Length at, const piece::Section& section) {
    Force all{};
    Moment aside{};
    for (std::size_t i = 0; i < rows.size(); ++i) {
      if (at < along_line(axis, rows[i].front()) || at > along_line(axis, rows[i].back())) continue;
      const Force force = *plan.piece.strands[i].force;
      all += force;
      aside += force * (across_line(axis, place_on(rows[i], axis, at)) - across_line(axis, section.centroid));
    }
    return !(abs(aside) <= strands_aside_within * all * (section.farthest - section.nearest));
  };
  for (std::size_t i = 1; i < places.size(); ++i) {
    if (!(places[i] > places[i - 1])) continue;
    for (const double share : {just_inside, 1.0 - just_inside}) {
      const Length at = places[i - 1] + share * (places[i] - places[i - 1]);
      const auto stretch = std::ranges::find_if(
          stretches, [&](const piece::Stretch& one) { return at >= one.from && at <= one.to; });
      if (stretch != stretches.end() && is_aside(at, stretch->middle))
        return NotAssessed{
            fmt::format(
                "at {:.3f} m the strands together lie to one side: they would bend the piece sideways",
                in(m, at)),
            std::string(own_bending_check)};
    }
  }
  return {};
}

std::optional<NotAssessed> gradual_section(const std::vector<piece::Stretch>& stretches) {
  for (const piece::Stretch& stretch : stretches)
    if (!stretch.prismatic)
      return NotAssessed{
          fmt::format("from {:.3f} m on the section of the piece changes gradually: with strands that is not "
                      "computed",
                      in(m, stretch.from)),
          std::string(own_bending_check)};
  return {};
}

Ratio least_load_share(const StageFacts& facts) {
  const auto& load = std::get<loads::StageLoad>(facts.load);
  const double phi = load.dynamic_factor.value();
  const Ratio tolerance = facts.plan.concrete.density_tolerance.value_or(Ratio::from_value(1.0));
  Force weight =
      facts.body.volume * facts.plan.concrete.density * (1.0 - tolerance.value()) * standard_gravity;
  if (facts.plan.piece.stated_weight) weight = std::min(weight, *facts.plan.piece.stated_weight);
  const double share = std::max(0.0, 2.0 - phi) / phi * (weight / load.weight).value();
  return Ratio::from_value(std::clamp(share, 0.0, 1.0));
}

std::string fibre_place(const demands::FibreStress& stress, plan::Axis axis, UnitSystem units) {
  return fmt::format("{} of the piece, at {} = {}", stress.top ? "top" : "bottom",
                     axis == plan::Axis::x ? "x" : "y", print(stress.at, units));
}

}  // namespace

std::optional<NotAssessed> unusable_strands(const StageFacts& facts) {
  for (const plan::Strand& strand : facts.plan.piece.strands) {
    if (!strand.force)
      return strand_gap(strand, "the force that they hold at this lift is not stated",
                        "force: as the engineer states it");
    if (strand.line.size() < 2)
      return strand_gap(strand, "where they run is not stated", "line: from place to place");
    if (!strand.transfer_length)
      return strand_gap(strand, "the length over which their force comes into the concrete is not stated",
                        "transfer_length: as the engineer states it");
    if (!is_in_box_around(facts.body, strand.line))
      return strand_gap(strand, "they do not lie in the piece", "line: as the drawing has it");
    if (!(norm(strand.line.back() - strand.line.front()) >= 2.0 * *strand.transfer_length))
      return strand_gap(strand, "they are bonded over less than the two lengths over which their force comes in",
                        "line and transfer_length: as the drawing has them");
  }
  return {};
}

Outcome<PrestressedBending> prestressed_bending(const StageFacts& facts, const ModelChoice& model,
                                                Ratio raise) {
  if (!facts.plan.concrete.release_strength)
    return NotAssessed{"the strength that the strands ask for before they are released is not in the plan",
                       "[concrete] release_strength: as the drawing has it"};
  if (auto gap = unusable_strands(facts)) return *std::move(gap);
  const std::vector<demands::StrandRow> rows = strand_rows_of(facts.plan, model.axis);
  const auto loaded = lines_under_load(facts, model, {});
  if (const auto* missing = std::get_if<NotAssessed>(&loaded)) return *missing;
  const auto& under = std::get<LinesUnderLoad>(loaded);
  if (auto refused = gradual_section(under.stretches)) return *std::move(refused);
  if (auto refused = strands_to_one_side(facts.plan, model.axis, under.stretches)) return *std::move(refused);

  const tables::PrestressModel& limits = facts.rules.prestress;
  demands::PrestressRange range{.least = limits.least.value,
                                .most = limits.most.value,
                                .transfer_least = limits.transfer_least.value,
                                .transfer_most = limits.transfer_most.value,
                                .load_least = {},
                                .load_most = {}};
  PrestressedBending worst;
  const UnitSystem units = facts.plan.piece.units;
  for (const LineUnderLoad& line : under.lines) {
    range.load_most = raise * line.lighter_raise;
    range.load_least = line.set.starts_with("hanging") ? least_load_share(facts) : Ratio::from_value(1.0);
    const auto found = demands::prestressed_state(line.beam, rows, range);
    if (const auto* missing = std::get_if<NotAssessed>(&found)) return *missing;
    const auto& state = std::get<demands::PrestressedState>(found);
    if (worst.tension_where.empty() || state.tension.stress > worst.tension.stress) {
      worst.tension = state.tension;
      worst.tension_where = fibre_place(state.tension, model.axis, units);
      worst.tension_situation = line.situation;
      worst.some_legs_only = line.some_legs_only;
    }
    if (worst.compression_where.empty() || state.compression.stress < worst.compression.stress) {
      worst.compression = state.compression;
      worst.compression_where = fibre_place(state.compression, model.axis, units);
      worst.compression_situation = line.situation;
    }
  }
  return worst;
}

namespace {

// `of`: t for the place of most tension, p for that of most pressure.
void tell_fibre(const demands::FibreStress& stress, const std::string& words, const std::string& of,
                const StageFacts& facts, Trace& trace) {
  const tables::PrestressModel& limits = facts.rules.prestress;
  Step sum{.words = words,
           .result = {of == "t" ? "sigma" : "sigma_p", 0.0, "MPa"},
           .formula = fmt::format("s_{} * sigma_{}0", of, of),
           .given = {{"s_" + of, stress.load.value(), "1"},
                     {fmt::format("sigma_{}0", of), in(MPa, stress.of_load), "MPa"}},
           .clause = "statics of beams"};
  for (std::size_t r = 0; r < stress.rows.size(); ++r) {
    const plan::Strand& strand = facts.plan.piece.strands.at(r);
    const std::string row = fmt::format("{}{}", of, r + 1);
    const double share = (stress.rows[r] / *strand.force).value();
    const bool at_most = stress.at_most[r];
    const auto& bound = at_most ? limits.most : limits.least;
    const auto& length = at_most ? limits.transfer_least : limits.transfer_most;
    const std::string r_of = at_most ? "r_sup" : "r_inf";
    trace.add([&] {
      return Step{.words = fmt::format(
                      "force of strands '{}' there, of which the share {} has come into the concrete",
                      strand.name, "a_" + row),
                  .result = {"P_" + row, in(newton, stress.rows[r]), "N"},
                  .formula = fmt::format("{} * P_{} * a_{}", r_of, r + 1, row),
                  .given = {{r_of, bound.value.value(), "1"},
                            {fmt::format("P_{}", r + 1), in(newton, *strand.force), "N"},
                            {"a_" + row, share / bound.value.value(), "1"}},
                  .sources = {bound.source, length.source}};
    });
    const double up = stress.top ? 1.0 : -1.0;
    trace.add([&] {
      return Step{.words = fmt::format("stress of that fibre by strands '{}', tension positive", strand.name),
                  .result = {"sigma_" + row, in(MPa, stress.of_rows[r]), "MPa"},
                  .formula = fmt::format("P_{0} * (e_{0} * z_{1} / I_{1} - 1 / A_{1})", row, of),
                  .given = {{"P_" + row, in(newton, stress.rows[r]), "N"},
                            {"e_" + row, in(mm, stress.below_centroid[r]), "mm"},
                            {"z_" + of, up * in(mm, stress.from_centroid), "mm"},
                            {"I_" + of, stress.second_moment.value() * 1e12, "mm4"},
                            {"A_" + of, in(mm2, stress.area), "mm2"}},
                  .clause = "statics of beams"};
    });
    sum.formula += " + sigma_" + row;
    sum.given.push_back({"sigma_" + row, in(MPa, stress.of_rows[r]), "MPa"});
  }
  sum.result.number = in(MPa, stress.stress);
  trace.add([&] { return sum; });
}

}  // namespace

void tell_steps(const PrestressedBending& bent, const StageFacts& facts, Trace& trace) {
  tell_fibre(bent.tension, fmt::format("largest tension, {}; {}", bent.tension_where, bent.tension_situation),
             "t", facts, trace);
  tell_fibre(bent.compression,
             fmt::format("largest compression, below zero, {}; {}", bent.compression_where,
                         bent.compression_situation),
             "p", facts, trace);
}

}  // namespace firstpick::checks
