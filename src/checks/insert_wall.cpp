#include "checks/insert_wall.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "checks/bending_multiplier.hpp"
#include "demands/round_wall.hpp"
#include "demands/wall_strip.hpp"
#include "piece/insert_wall.hpp"

namespace firstpick::checks {

namespace {

constexpr double off_middle_within = 0.25;  // of the thickness: a pull along a wall
constexpr double one_pull_within = 2.0;     // thicknesses: pulls nearer than that are one, to the height of a ring
constexpr Length same_wall = 1e-3 * m;

Position at_of(const StageFacts& facts, std::size_t insert) { return facts.plan.inserts[insert].at; }

const Outcome<piece::InsertWall>& wall_of(const StageFacts& facts, std::size_t insert) {
  auto& known = facts.anchorage.walls;
  known.resize(facts.plan.inserts.size());
  if (!known[insert])
    known[insert] = piece::insert_wall(facts.body, insert, at_of(facts, insert),
                                       facts.rules.cracking.wall_support.value.value());
  return *known[insert];
}

// What the legs of one situation do to every insert.
std::vector<ForceVector> pulls_of(const StageFacts& facts, const Situation& situation) {
  std::vector<ForceVector> pulls(facts.plan.inserts.size());
  for (std::size_t leg = 0; leg < situation.legs.size(); ++leg) {
    const auto insert = std::ranges::find(facts.plan.inserts, facts.rigging->legs.at(leg).to, &plan::Insert::id);
    if (insert == facts.plan.inserts.end()) continue;  // the leg to a beam or a sheave
    auto& pull = pulls[static_cast<std::size_t>(insert - facts.plan.inserts.begin())];
    pull = pull + situation.legs[leg].on_insert;
  }
  return pulls;
}

struct Computed {
  Stress tension{};
  std::string situation;
  demands::WallStrip strip{};
  demands::WallStripState strip_state{};
  demands::RoundBand band{};
  demands::RoundState band_state{};
};

// The way to the nearer support, the opposite one where it is held as well, the two beside them.
struct StripWays {
  std::size_t towards = 0, opposite = 1, beside = 2, beside_too = 3;
  bool between = false;
};

std::optional<StripWays> strip_ways(const piece::InsertWall& wall) {
  std::optional<StripWays> best;
  Length shortest{};
  for (const std::size_t pair : {std::size_t{0}, std::size_t{2}}) {
    if (!wall.ways[pair].held || !wall.ways[pair + 1].held) continue;
    const Length span = wall.ways[pair].reach + wall.ways[pair + 1].reach;
    if (best && !(span < shortest)) continue;
    shortest = span;
    const bool first = wall.ways[pair].reach <= wall.ways[pair + 1].reach;
    best = {first ? pair : pair + 1, first ? pair + 1 : pair, 2 - pair, 3 - pair, true};
  }
  if (best) return best;
  for (std::size_t way = 0; way < 4; ++way) {
    if (!wall.ways[way].held || (best && !(wall.ways[way].reach < shortest))) continue;
    shortest = wall.ways[way].reach;
    const std::size_t pair = way < 2 ? 0 : 2;
    best = {way, way == pair ? pair + 1 : pair, 2 - pair, 3 - pair, false};
  }
  return best;
}

demands::WallStrip strip_of(const StageFacts& facts, std::size_t insert, const piece::InsertWall& wall, const StripWays& ways,
                            const std::vector<ForceVector>& pulls) {
  const tables::CrackingModel& numbers = facts.rules.cracking;
  const piece::WallWay &to = wall.ways[ways.towards], &opposite = wall.ways[ways.opposite];
  const Direction &along = to.towards, &aside = wall.ways[ways.beside].towards;
  const double side = dot(wall.across, pulls[insert]) < Force{} ? -1.0 : 1.0;
  demands::WallStrip strip{.thickness = wall.thickness, .to_support = to.reach,
                           .across = abs(dot(wall.across, pulls[insert])), .along = abs(dot(along, pulls[insert])),
                           .arm = wall.in_face ? Length{0.5 * wall.thickness} : wall.off_middle,
                           .spread = (ways.between ? numbers.wall_spread : numbers.wall_spread_cantilever).value.value(),
                           .spread_end = numbers.wall_spread_end.value.value(),
                           .widest = numbers.pick_strip.value.value()};
  if (ways.between) strip.to_other = opposite.reach;
  const std::array beside{ways.beside, ways.beside_too};
  for (std::size_t i = 0; i < 2; ++i)
    if (!wall.ways[beside[i]].held) strip.free_edge[i] = wall.ways[beside[i]].reach;
  for (std::size_t other = 0; other < pulls.size(); ++other) {
    const Force across = side * dot(wall.across, pulls[other]);
    if (other == insert || !(across > Force{})) continue;
    const Position off = at_of(facts, other) - at_of(facts, insert);
    const Length s = dot(along, off), y = dot(aside, off);
    const Length side_reach = wall.ways[y > Length{} ? ways.beside : ways.beside_too].reach;
    if (abs(dot(wall.across, off)) > 0.5 * wall.thickness + same_wall || s > to.reach || -s > opposite.reach + same_wall ||
        abs(y) > side_reach + same_wall)
      continue;
    strip.others.push_back({across, s, y});
  }
  return strip;
}

Direction unit(const Position& p) {
  const Length length = norm(p);
  return {p.x / length, p.y / length, p.z / length};
}

Position from_axis(const piece::RoundWall& round, const Position& at) {
  const Position off = at - round.axis_at;
  return off - dot(round.axis, off).value() * Position{round.axis.x * m, round.axis.y * m, round.axis.z * m};
}

bool same_round_wall(const piece::RoundWall& a, const piece::RoundWall& b) {
  return std::abs(dot(a.axis, b.axis)) > 1.0 - 1e-6 && norm(from_axis(a, b.axis_at)) <= same_wall &&
         abs(a.inside - b.inside) <= same_wall && abs(a.outside - b.outside) <= same_wall;
}

// Counted: a share of the shortest arc between two pulls.
Length band_height(const StageFacts& facts, const piece::RoundWall& round, const demands::RoundBand& band) {
  const Length radius = 0.5 * (round.inside + round.outside), thickness = round.outside - round.inside;
  std::vector<double> angles;
  for (const demands::RoundPull& pull : band.pulls) {
    const double a = std::fmod(in(radian, pull.at) + 4.0 * std::numbers::pi, 2.0 * std::numbers::pi);
    angles.push_back(a);
  }
  std::ranges::sort(angles);
  double arc = 2.0 * std::numbers::pi;
  const double one = one_pull_within * (thickness / radius).value();
  for (std::size_t i = 0; i < angles.size(); ++i) {
    const double next = i + 1 < angles.size() ? angles[i + 1] : angles.front() + 2.0 * std::numbers::pi;
    if (next - angles[i] > one) arc = std::min(arc, next - angles[i]);
  }
  const Length most = arc / facts.rules.cracking.round_height.value.value() * radius;
  return std::min(Length{round.above + round.below}, most);  // near either end it reaches the farther inwards
}

demands::RoundBand band_of(const StageFacts& facts, std::size_t insert, const piece::RoundWall& round,
                           const std::vector<ForceVector>& pulls) {
  demands::RoundBand band{.inside = round.inside, .outside = round.outside, .height = {}, .pulls = {}};
  const Direction x = unit(from_axis(round, at_of(facts, insert))), y = cross(round.axis, x);
  for (std::size_t other = 0; other < pulls.size(); ++other) {
    if (norm(pulls[other]) == Force{}) continue;
    const auto& wall = wall_of(facts, other);
    const auto* known = std::get_if<piece::InsertWall>(&wall);
    if (other != insert && (!known || !known->round || !same_round_wall(round, *known->round))) continue;
    const Direction out = unit(from_axis(round, at_of(facts, other)));
    band.pulls.push_back({std::atan2(dot(y, out), dot(x, out)) * radian, dot(out, pulls[other]),
                          dot(cross(round.axis, out), pulls[other])});
  }
  band.height = band_height(facts, round, band);
  return band;
}

Outcome<Computed> computed(const StageFacts& facts, std::size_t insert, const piece::InsertWall& wall,
                           const std::optional<StripWays>& ways, const std::vector<ForceVector>& pulls) {
  Computed one;
  if (wall.round) {
    one.band = band_of(facts, insert, *wall.round, pulls);
    auto state = demands::round_state(one.band);
    if (const auto* gap = std::get_if<NotAssessed>(&state)) return *gap;
    one.band_state = std::get<demands::RoundState>(state);
    one.tension = one.band_state.tension;
    return one;
  }
  one.strip = strip_of(facts, insert, wall, *ways, pulls);
  auto state = demands::wall_strip_state(one.strip);
  if (const auto* gap = std::get_if<NotAssessed>(&state)) return *gap;
  one.strip_state = std::get<demands::WallStripState>(state);
  one.tension = one.strip_state.tension;
  return one;
}

void tell_strip(const StageFacts& facts, const Computed& one, Trace& trace) {
  const tables::CrackingModel& numbers = facts.rules.cracking;
  const demands::WallStrip& strip = one.strip;
  const demands::WallStripState& state = one.strip_state;
  const bool between = strip.to_other.has_value();
  const Term t{"t_w", in(m, strip.thickness), "m"}, a{"a_w", in(m, state.to_support), "m"}, l{"l_w", in(m, state.span), "m"};
  trace.add([&] {
    const auto& spread = !between ? numbers.wall_spread_cantilever : state.at_support ? numbers.wall_spread_end : numbers.wall_spread;
    const std::string k = !between ? "k_c" : state.at_support ? "k_e" : "k_w";
    Step step{.words = "width of the wall that carries one pull",
              .result = {"w", in(m, state.spread), "m"},
              .formula = fmt::format("min(t_w + {} * a_w{}, n_strip * t_w)", k,
                                     !between ? "" : state.at_support ? " * (2 - a_w / l_w)" : " * (1 - a_w / l_w)"),
              .given = {t, {k, spread.value.value(), "1"}, a, {"n_strip", numbers.pick_strip.value.value(), "1"}},
              .clause = "DAfStb Heft 240",
              .sources = {spread.source, numbers.pick_strip.source, numbers.wall_support.source}};
    if (between) step.given.push_back(l);
    return step;
  });
  trace.add([&] {
    return Step{.words = "what edges and other pulls beside the insert leave of it, to either side",
                .result = {"w_s", in(m, state.width), "m"},
                .formula = "min(w / 2, c_1) + min(w / 2, c_2)",
                .given = {{"w", in(m, state.spread), "m"}, {"c_1", in(m, state.sides[0]), "m"},
                          {"c_2", in(m, state.sides[1]), "m"}},
                .clause = "statics of beams"};
  });
  trace.add([&] {
    Step step{.words = fmt::format("moment of that strip, {}; {}",
                                   !between           ? "jutting out from what holds it"
                                   : state.at_support ? "at what holds it on the nearer side"
                                                      : "at the pull, between what holds it", one.situation),
              .result = {"M_w", in(kN * m, state.moment), "kN m"},
              .formula = fmt::format("F_w * a_w{} + H_w * e_w + M_o",
                                     !between           ? ""
                                     : state.at_support ? " * (1 - a_w / l_w)^2"
                                                        : " * (l_w - a_w) / l_w"),
              .clause = "statics of beams"};
    step.given = {{"F_w", in(kN, strip.across), "kN"}, a, {"H_w", in(kN, strip.along), "kN"},
                  {"e_w", in(m, strip.arm), "m"}, {"M_o", in(kN * m, state.of_others), "kN m"}};
    if (between) step.given.push_back(l);
    return step;
  });
  trace.add([&] {
    return Step{.words = "tension in bending",
                .result = {"sigma_0", in(MPa, one.tension), "MPa"},
                .formula = "(6 * M_w / (w_s * t_w^2) + H_w / (w_s * t_w)) / 1000",
                .given = {{"M_w", in(kN * m, state.moment), "kN m"}, {"w_s", in(m, state.width), "m"}, t,
                          {"H_w", in(kN, strip.along), "kN"}},
                .clause = "statics of beams"};
  });
}

void tell_ring(const StageFacts& facts, const Computed& one, Trace& trace) {
  const demands::RoundBand& band = one.band;
  const Length t = band.outside - band.inside;
  const double of_a_ring = one.band_state.moment == Moment{}
                               ? 6.0
                               : ((one.tension - std::max(one.band_state.axial, Force{}) / (band.height * t)) *
                                  (band.height * t * t) / one.band_state.moment).value();
  trace.add([&] {
    return Step{.words = fmt::format("moment of the round wall as a ring of {} pulls, held by shear round it; {}",
                                     band.pulls.size(), one.situation),
                .result = {"M_w", in(kN * m, one.band_state.moment), "kN m"},
                .clause = "statics of thin rings",
                .sources = {facts.rules.cracking.round_height.source}};
  });
  trace.add([&] {
    return Step{.words = "tension in bending of the height that counts",
                .result = {"sigma_0", in(MPa, one.tension), "MPa"},
                .formula = "(k_curve * M_w / (h_w * t_w^2) + max(N_w, 0) / (h_w * t_w)) / 1000",
                .given = {{"k_curve", of_a_ring, "1"}, {"M_w", in(kN * m, one.band_state.moment), "kN m"},
                          {"h_w", in(m, band.height), "m"}, {"t_w", in(m, t), "m"},
                          {"N_w", in(kN, one.band_state.axial), "kN"}},
                .clause = "statics of curved beams"};
  });
}

std::string what_of(const piece::InsertWall& wall, const Computed& one) {
  if (wall.round) return "round wall it sits in";
  return one.strip.to_other ? "wall or slab it sits in, between what holds it"
                            : "wall or slab it sits in, which juts out from what holds it";
}

}  // namespace

bool pulls_are_in_its_bending(const StageFacts& facts) {
  const ModelChoice model = piece_model(facts.plan, facts.body, facts.rules.cracking);
  if (model.model == plan::PieceModel::panel) return true;
  return model.known != Known::no && !bending_gap(facts) && !is_turned(facts) &&
         is_assessed(bending_tension(facts, model));
}

bool bends_with_the_piece(const StageFacts& facts, std::size_t insert) {
  const auto* wall = std::get_if<piece::InsertWall>(&wall_of(facts, insert));
  return wall && !wall->round && !strip_ways(*wall);
}

namespace {

Outcome<std::optional<WallTension>> found_wall_tension(const StageFacts& facts, std::size_t insert,
                                                       Trace& trace) {
  if (auto gap = bending_gap(facts)) return *std::move(gap);
  const auto raise = bending_raise(facts, trace);
  if (const auto* gap = std::get_if<NotAssessed>(&raise)) return *gap;
  const auto& found = wall_of(facts, insert);
  std::optional<Computed> worst;
  for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations)) {
    std::vector<ForceVector> pulls;
    if (is_turned(facts)) {
      pulls = pulls_of(facts, situation);
    } else {
      const auto loads = bending_loads(facts, situation);
      if (const auto* gap = std::get_if<NotAssessed>(&loads)) return *gap;
      pulls = pulls_of(facts, std::get<BendingLoads>(loads).situation);
    }
    if (norm(pulls[insert]) == Force{}) continue;
    if (const auto* gap = std::get_if<NotAssessed>(&found)) return *gap;  // one that nothing pulls need not be measured
    const auto& wall = std::get<piece::InsertWall>(found);
    if (!wall.in_face && !(wall.off_middle <= off_middle_within * wall.thickness))
      return NotAssessed{"the insert pulls along a wall off its middle by more than a quarter of the thickness", {}};
    const auto ways = wall.round ? std::nullopt : strip_ways(wall);
    if (!wall.round && !ways) return std::optional<WallTension>{};
    auto one = computed(facts, insert, wall, ways, pulls);
    if (const auto* gap = std::get_if<NotAssessed>(&one)) return *gap;
    auto& state = std::get<Computed>(one);
    constexpr double more = 1.0 + 1e-9;  // of equals the first is named, whatever their last bits
    if (worst && !(state.tension > more * worst->tension)) continue;
    state.situation = situation.name;
    worst = std::move(state);
  }
  if (!worst) return std::optional<WallTension>{};
  const auto& wall = std::get<piece::InsertWall>(found);
  if (wall.round) tell_ring(facts, *worst, trace);
  else tell_strip(facts, *worst, trace);
  const Ratio r = std::get<Ratio>(raise);
  const std::string symbol = is_turned(facts) ? "r_turn" : "r_bend";
  const Stress tension = r * worst->tension;
  trace.add([&] {
    return Step{.words = fmt::format("largest tension of the {}; {}", what_of(wall, *worst), worst->situation),
                .result = {"sigma", in(MPa, tension), "MPa"},
                .formula = symbol + " * sigma_0",
                .given = {{symbol, r.value(), "1"}, {"sigma_0", in(MPa, worst->tension), "MPa"}},
                .clause = "statics of beams"};
  });
  return std::optional<WallTension>{WallTension{tension, wall.thickness, what_of(wall, *worst), worst->situation,
                                                wall.in_face, wall.round.has_value()}};
}

}  // namespace

Outcome<std::optional<WallTension>> insert_wall_tension(const StageFacts& facts, std::size_t insert,
                                                        Trace& trace) {
  if (trace.is_recording() || !facts.bending) return found_wall_tension(facts, insert, trace);
  auto& known = facts.bending->walls;
  known.resize(facts.plan.inserts.size());
  if (!known[insert]) known[insert] = found_wall_tension(facts, insert, trace);
  return *known[insert];
}

}  // namespace firstpick::checks
