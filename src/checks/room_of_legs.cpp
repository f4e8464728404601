#include "checks/room_of_legs.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "demands/segments_apart.hpp"
#include "piece/concrete_beside.hpp"
#include "units/print.hpp"

namespace firstpick::checks {

namespace {

constexpr Length rounding = 1e-6 * mm;     // of a distance: touches
constexpr Length goes_through = 1.0 * mm;  // of a line inside the concrete; less is rounding of places

// A straight part of the rigging.
struct Line {
  std::string what;
  Position lower, upper;                    // a leg to an insert starts there
  const piece::InsertSite* site = nullptr;  // of that insert
  std::string beam{};                       // the beam that it is a line of; empty: a leg
  std::string from{}, to{};                 // of a leg: the beams that its upper and its lower end are fixed to
};

struct HookPlace {
  std::string what;
  Position at;                              // of its bearing
  const piece::InsertSite* site = nullptr;  // in a turn: the face that its legs are fixed in, against which it may come to lie
};

// All of the rigging in one attitude.
struct Drawn {
  std::string situation;
  Direction up;
  std::vector<Line> lines;
  std::vector<HookPlace> hooks;
};

// What grazes the concrete is near it, at no distance.
std::optional<Length> beside(const piece::LineInConcrete& lies) {
  return lies.inside > Length{} ? Length{} : lies.nearest;
}

class Room {
 public:
  explicit Room(const StageFacts& facts) : facts_(facts), concrete_(facts.body) {}

  std::optional<NotAssessed> look(const Drawn& drawn) {
    for (const Line& line : drawn.lines)
      if (auto gap = look(line, drawn.situation)) return gap;
    for (const HookPlace& hook : drawn.hooks)
      if (auto gap = look_at_hook(hook, drawn)) return gap;
    look_at_hooks(drawn);
    look_at_crossings(drawn);
    return {};
  }

  // Legs that end in one place, a hook, a sheave, a point of a beam, an insert, meet there.
  void look_at_crossings(const Drawn& drawn) {
    const Length least = facts_.rules.leg_clearance.value;
    const auto meet = [](const Line& a, const Line& b) {
      for (const Position& p : {a.lower, a.upper})
        for (const Position& q : {b.lower, b.upper})
          if (norm(p - q) <= goes_through) return true;
      return false;
    };
    for (std::size_t i = 0; i < drawn.lines.size(); ++i)
      for (std::size_t j = i + 1; j < drawn.lines.size(); ++j) {
        const Line &a = drawn.lines[i], &b = drawn.lines[j];
        if (a.beam.empty() && b.beam.empty()) {
          if (meet(a, b)) continue;
          const Length apart = demands::segments_apart({a.lower, a.upper}, {b.lower, b.upper});
          if (!(apart >= least))
            keep(TooNear::Kind::near_each_other, fmt::format("{} and {}", a.what, b.what), apart, least, drawn.situation);
        } else if (a.beam != b.beam) {
          look_at_beam(a, b, drawn.situation);  // the lines of beams stand behind those of legs
        }
      }
  }

  std::vector<TooNear> found() && { return std::move(found_); }

 private:
  // The worst of each thing is kept: what goes through before what is near, then the larger length or the less distance.
  void keep(TooNear::Kind kind, const std::string& what, Length length, Length least, const std::string& situation) {
    if (length < rounding) length = Length{};
    const auto known = std::ranges::find(found_, what, &TooNear::what);
    if (known == found_.end()) {
      found_.push_back({kind, what, length, least, situation});
      return;
    }
    const auto crosses = [](TooNear::Kind one) { return one == TooNear::Kind::through || one == TooNear::Kind::through_beam; };
    const bool through = crosses(kind), was = crosses(known->kind);
    if (through ? !was || length > known->length : !was && length < known->length)
      *known = {kind, what, length, least, situation};
  }

  // A leg, or a line of another beam, beside a line of a beam. A leg that is fixed to the beam starts on it: its clutch or
  // shackle there is not asked.
  void look_at_beam(const Line& one, const Line& of_beam, const std::string& situation) {
    const Length least = facts_.rules.leg_clearance.value, end = facts_.rules.leg_end.value;
    const Length length = norm(one.upper - one.lower);
    const bool below = one.from == of_beam.beam, above = one.to == of_beam.beam;
    if (!(length > (below && above ? 2.0 : below || above ? 1.0 : 0.0) * end)) return;
    const Position along = (end / length).value() * (one.upper - one.lower);
    const Length apart = demands::segments_apart({above ? one.lower + along : one.lower, below ? one.upper - along : one.upper},
                                                 {of_beam.lower, of_beam.upper});
    const std::string what = fmt::format("{} and {}", one.what, of_beam.what);
    if (!(apart > goes_through)) keep(TooNear::Kind::through_beam, what, apart, least, situation);
    else if (!(apart >= least)) keep(TooNear::Kind::near_each_other, what, apart, least, situation);
  }

  std::optional<NotAssessed> look(const Line& line, const std::string& situation) {
    const Length least = facts_.rules.leg_clearance.value, end = line.site ? facts_.rules.leg_end.value : Length{};
    const auto asked = concrete_.line(line.lower, line.upper, least, end, line.site);
    if (const auto* gap = std::get_if<NotAssessed>(&asked)) return *gap;
    const auto& lies = std::get<piece::LineInConcrete>(asked);
    const bool end_inside = lies.inside_end > (line.site ? least : goes_through);
    if (lies.inside > goes_through || end_inside)
      keep(TooNear::Kind::through, line.what, lies.inside + lies.inside_end, {}, situation);
    else if (const auto nearest = beside(lies))
      keep(TooNear::Kind::near_concrete, line.what, *nearest, least, situation);
    return {};
  }

  std::optional<NotAssessed> look_at_hook(const HookPlace& hook, const Drawn& drawn) {
    const Length least = facts_.rules.hook_clearance.value;
    const Length past_all = norm(facts_.body.highest - facts_.body.lowest) + least;
    const auto asked = concrete_.line(hook.at, hook.at + drawn.up * past_all, least, {}, hook.site);
    if (const auto* gap = std::get_if<NotAssessed>(&asked)) return *gap;
    const auto& lies = std::get<piece::LineInConcrete>(asked);
    if (lies.inside > goes_through) keep(TooNear::Kind::through, hook.what, lies.inside, {}, drawn.situation);
    else if (const auto nearest = beside(lies))
      keep(TooNear::Kind::near_concrete, hook.what, *nearest, least, drawn.situation);
    return {};
  }

  void look_at_hooks(const Drawn& drawn) {
    const Length least = facts_.rules.hook_clearance.value;
    for (std::size_t i = 0; i < drawn.hooks.size(); ++i)
      for (std::size_t j = i + 1; j < drawn.hooks.size(); ++j)
        if (const Length apart = norm(drawn.hooks[i].at - drawn.hooks[j].at); !(apart >= least))
          keep(TooNear::Kind::hooks, fmt::format("{} and {}", drawn.hooks[i].what, drawn.hooks[j].what), apart, least,
               drawn.situation);
  }

  const StageFacts& facts_;
  piece::ConcreteBeside concrete_;
  std::vector<TooNear> found_;
};

const piece::InsertSite* site_of(const StageFacts& facts, const std::string& insert) {
  const auto site = std::ranges::find(facts.body.sites, insert, &piece::InsertSite::insert);
  return site == facts.body.sites.end() ? nullptr : &*site;
}

std::string name_of(const plan::Leg& leg, const plan::Rigging& rigging) {
  const bool one_hook = rigging.hooks.empty() && rigging.beams.empty() && rigging.sheaves.empty();
  return leg.from.empty() || one_hook ? "the leg to " + leg.to : fmt::format("the leg from {} to {}", leg.from, leg.to);
}

Position on(const demands::CarrierPose& carrier, const Position& at) {
  return carrier.origin + carrier.axes[0] * at.x + carrier.axes[1] * at.y + carrier.axes[2] * at.z;
}

// Where hooks stand: the upper ends of the legs that hang from them.
void add_hooks(const plan::Rigging& rigging, const demands::Hanging& hanging, Drawn& drawn) {
  if (rigging.hooks.empty()) {
    drawn.hooks.push_back({"the hook", hanging.hook});
    return;
  }
  for (const plan::Hook& hook : rigging.hooks) {
    const auto leg = std::ranges::find(rigging.legs, hook.id, &plan::Leg::from);
    if (leg == rigging.legs.end()) continue;
    const auto index = static_cast<std::size_t>(leg - rigging.legs.begin());
    drawn.hooks.push_back({"hook " + hook.id, hanging.spans[index][0]});
  }
}

// The beam that has this point; empty: no beam.
std::string beam_of(const plan::Rigging& rigging, const std::string& point) {
  for (const plan::Beam& beam : rigging.beams)
    if (std::ranges::find(beam.points, point, &plan::BeamPoint::id) != beam.points.end()) return beam.id;
  return {};
}

// Of these legs and beams, no others: every place that is drawn is one of it.
bool is_of(const plan::Rigging& rigging, const demands::Hanging& hanging) {
  return hanging.spans.size() == rigging.legs.size() &&
         hanging.carriers.size() == rigging.beams.size() + rigging.sheaves.size();
}

Drawn as_it_hangs(const StageFacts& facts, const demands::Hanging& hanging, std::string situation) {
  const plan::Rigging& rigging = *facts.rigging;
  Drawn drawn{std::move(situation), hanging.up, {}, {}};
  for (std::size_t leg = 0; leg < rigging.legs.size(); ++leg) {
    const auto& [upper, lower] = hanging.spans[leg];
    drawn.lines.push_back({name_of(rigging.legs[leg], rigging), lower, upper, site_of(facts, rigging.legs[leg].to), {},
                           beam_of(rigging, rigging.legs[leg].from), beam_of(rigging, rigging.legs[leg].to)});
  }
  // A beam as the lines between its points, a frame with them.
  for (std::size_t i = 0; i < rigging.beams.size(); ++i) {
    const auto& points = rigging.beams[i].points;
    for (std::size_t a = 0; a < points.size(); ++a)
      for (std::size_t b = a + 1; b < points.size(); ++b)
        if (const Position from = on(hanging.carriers[i], points[a].at), to = on(hanging.carriers[i], points[b].at);
            norm(to - from) > goes_through)
          drawn.lines.push_back({"beam " + rigging.beams[i].id, from, to, nullptr, rigging.beams[i].id});
  }
  add_hooks(rigging, hanging, drawn);
  return drawn;
}

// Legs below a beam that cross as they are drawn: under the load the beam turns round until they do not.
Drawn below_beams_as_drawn(const StageFacts& facts, const demands::Hanging& hanging) {
  const plan::Rigging& rigging = *facts.rigging;
  Drawn drawn{"with the beam as drawn", hanging.up, {}, {}};
  for (std::size_t i = 0; i < rigging.beams.size(); ++i) {
    const auto& points = rigging.beams[i].points;
    if (points.empty()) continue;
    Position hung, flat;
    for (const plan::BeamPoint& point : points) {
      hung = hung + on(hanging.carriers[i], point.at);
      flat = flat + point.at;
    }
    const Position moved = (1.0 / static_cast<double>(points.size())) * (hung - flat);
    for (std::size_t leg = 0; leg < rigging.legs.size(); ++leg) {
      const auto point = std::ranges::find(points, rigging.legs[leg].from, &plan::BeamPoint::id);
      if (point != points.end())
        drawn.lines.push_back({name_of(rigging.legs[leg], rigging), hanging.spans[leg][1], point->at + moved});
    }
  }
  return drawn;
}

Drawn as_it_turns(const StageFacts& facts, const demands::TurnedPiece& piece, const demands::TurnPose& pose) {
  Drawn drawn{fmt::format("turned to {}", print(pose.angle, facts.plan.piece.units)), pose.up, {}, {}};
  const auto add = [&](const std::vector<demands::HungLeg>& legs, const Position& hook) {
    for (const demands::HungLeg& leg : legs)
      drawn.lines.push_back({"the leg to " + leg.to, leg.at, hook, site_of(facts, leg.to)});
  };
  add(piece.legs, pose.hook);
  add(piece.tail_legs, pose.tail_hook);
  const bool two = !piece.tail_legs.empty();
  drawn.hooks.push_back({two ? "the main hook" : "the hook", pose.hook, site_of(facts, piece.legs.front().to)});
  if (two) drawn.hooks.push_back({"the tail hook", pose.tail_hook, site_of(facts, piece.tail_legs.front().to)});
  return drawn;
}

}  // namespace

Outcome<std::vector<TooNear>> room_of_legs(const StageFacts& facts) {
  std::vector<Drawn> all;
  const auto* hanging = std::get_if<demands::Hanging>(&facts.hanging);
  if (facts.turning) {
    if (const auto* gap = std::get_if<NotAssessed>(&*facts.turning)) return *gap;
    const auto& sweep = std::get<TurnSweep>(*facts.turning);
    for (const demands::TurnPose& pose : sweep.poses)
      if (!pose.slack) all.push_back(as_it_turns(facts, sweep.piece, pose));
  } else if (!hanging) {
    return std::get<NotAssessed>(facts.hanging);
  }
  std::vector<const demands::Hanging*> free;
  if (hanging) free.push_back(hanging);
  for (const demands::Hanging& without : facts.without_parts) free.push_back(&without);
  for (const demands::Hanging* one : free)
    if (!facts.rigging || !is_of(*facts.rigging, *one))
      return NotAssessed{"where the legs run as the piece hangs is not known", {}};
  if (hanging) all.push_back(as_it_hangs(facts, *hanging, facts.turning ? "hanging free" : ""));
  for (const demands::Hanging& without : facts.without_parts)
    all.push_back(as_it_hangs(facts, without, "without form parts"));

  Room room(facts);
  for (const Drawn& drawn : all)
    if (auto gap = room.look(drawn)) return *std::move(gap);
  if (hanging) room.look_at_crossings(below_beams_as_drawn(facts, *hanging));
  return std::move(room).found();
}

}  // namespace firstpick::checks
