#include "checks/line_model.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

#include <fmt/format.h>

#include "checks/bending_multiplier.hpp"

namespace firstpick::checks {

namespace {

constexpr int slices = 24;                 // of the whole length: no step is longer
constexpr double lopsided = 0.05;          // product of area over second moment
constexpr double steep = 1.0, rising = 0.176;  // tangents of 45 and 10 degrees
constexpr double corrected_within = 0.02;  // of the loads, so that they balance what the legs carry

const char* const model_remedy = "[piece] bending_check: name the engineer's own check of its bending";

Outcome<std::vector<piece::Stretch>> stretches_of(const plan::Plan& plan, plan::Axis axis) {
  const auto solid = piece::SolidToCut::of(plan);
  if (const auto* missing = std::get_if<NotAssessed>(&solid)) return *missing;
  return piece::stretches(std::get<piece::SolidToCut>(solid), axis, slices);
}

struct OnAxis {  // components of the piece's axes along the line
  plan::Axis axis;
  template <class Q>
  Q along(const Vector<Q>& v) const {
    return axis == plan::Axis::x ? v.x : v.y;
  }
};

std::optional<NotAssessed> refusal(const std::vector<piece::Stretch>& stretches) {
  for (const piece::Stretch& stretch : stretches)
    for (const piece::Section* section : {&stretch.start, &stretch.middle, &stretch.end}) {
      if (section->parts != 1)
        return NotAssessed{fmt::format("at {:.3f} m the piece is in {} parts: it does not bend as one line",
                                       in(m, section->at), section->parts), model_remedy};
      if (!(abs(section->product) <= lopsided * section->about_across))
        return NotAssessed{fmt::format("at {:.3f} m the section of the piece is lopsided: it would also bend sideways",
                                       in(m, section->at)), model_remedy};
    }
  const Length length = stretches.back().to - stretches.front().from;
  if (!(abs(stretches.back().end.centroid.z - stretches.front().start.centroid.z) <= rising * length))
    return NotAssessed{"the piece rises along its length by more than 10 degrees",
                       "write its solids so that its length lies level"};
  return {};
}

Outcome<LineModel> line_of(const std::vector<piece::Stretch>& stretches, plan::Axis axis) {
  LineModel line{.axis = axis};
  const Length whole = stretches.back().to - stretches.front().from;
  for (const piece::Stretch& stretch : stretches) {
    const double tangent =
        abs(stretch.end.centroid.z - stretch.start.centroid.z) / (stretch.end.at - stretch.start.at);
    if (!(tangent <= steep))
      return NotAssessed{fmt::format("at {:.3f} m the middle of the piece rises steeply", in(m, stretch.from)),
                         model_remedy};
    const double shortened = 1.0 / (1.0 + tangent * tangent);
    const piece::Section *a = &stretch.start, *b = &stretch.middle, *c = &stretch.end;
    demands::BeamStep step;
    step.area = shortened * std::min({a->area, b->area, c->area});
    step.second_moment = shortened * std::min({a->about_across, b->about_across, c->about_across});
    step.shear_area = shortened * std::min({a->shear_area, b->shear_area, c->shear_area});
    step.bottom = std::min({a->lowest, b->lowest, c->lowest});
    step.centroid = b->centroid.z;
    step.top = std::max({a->highest, b->highest, c->highest});
    const Area mean = (a->area + 4.0 * b->area + c->area) / 6.0;
    const int parts = std::max(1, static_cast<int>(std::ceil(slices * ((stretch.to - stretch.from) / whole).value())));
    for (int part = 0; part < parts; ++part) {
      step.from = stretch.from + (stretch.to - stretch.from) * (static_cast<double>(part) / parts);
      step.to = stretch.from + (stretch.to - stretch.from) * (static_cast<double>(part + 1) / parts);
      line.steps.push_back(step);
      line.volumes.push_back(mean * (step.to - step.from));
      line.stretches.push_back(stretch);
    }
  }
  return line;
}

Length middle(const demands::BeamStep& step) { return 0.5 * (step.from + step.to); }

}  // namespace

Outcome<LineModel> line_model(const StageFacts& facts, const ModelChoice& model) {
  BendingReuse* const reuse = facts.bending->reuse.get();
  auto& known = facts.anchorage.cut_across;
  auto found = known.find(model.axis);
  if (found == known.end())
    found = known.emplace(model.axis, reuse && reuse->stretches ? *reuse->stretches
                                                                : stretches_of(facts.plan, model.axis)).first;
  const auto& cut = found->second;
  if (reuse) reuse->stretches = cut;
  if (const auto* missing = std::get_if<NotAssessed>(&cut)) return *missing;
  const auto& stretches = std::get<std::vector<piece::Stretch>>(cut);
  if (auto refused = refusal(stretches)) return *std::move(refused);
  return line_of(stretches, model.axis);
}

std::vector<Position> rising_along(std::vector<Position> line, plan::Axis axis) {
  const OnAxis on{axis};
  if (on.along(line.front()) > on.along(line.back())) std::ranges::reverse(line);
  return line;
}

Position place_on(const std::vector<Position>& rising, plan::Axis axis, Length at) {
  const OnAxis on{axis};
  std::size_t i = 1;
  while (i + 1 < rising.size() && at > on.along(rising[i])) ++i;
  const Position &a = rising[i - 1], &b = rising[i];
  return a + ((at - on.along(a)) / (on.along(b) - on.along(a))).value() * (b - a);
}

void cut_at(LineModel& line, const std::vector<Length>& places) {
  const Length least = 1e-9 * (line.steps.back().to - line.steps.front().from);
  for (const Length& place : places)
    for (std::size_t s = 0; s < line.steps.size(); ++s) {
      demands::BeamStep& step = line.steps[s];
      if (!(place > step.from + least && place < step.to - least)) continue;
      const Volume before = line.volumes[s] * ((place - step.from) / (step.to - step.from)).value();
      demands::BeamStep behind = step;
      step.to = behind.from = place;
      const auto next = static_cast<std::ptrdiff_t>(s) + 1;
      line.steps.insert(line.steps.begin() + next, behind);
      line.volumes.insert(line.volumes.begin() + next, line.volumes[s] - before);
      line.volumes[s] = before;
      line.stretches.insert(line.stretches.begin() + next, piece::Stretch(line.stretches[s]));
      break;
    }
}

// The weight by volume, then small corrections, linear over the length, that balance the forces.
Outcome<demands::BeamLine> loaded_line(const StageFacts& facts, const BendingLoads& loads, const LineModel& line,
                                       Legs legs) {
  const OnAxis on{line.axis};
  demands::BeamLine beam{line.steps, {}};
  ForceVector pull;
  for (std::size_t leg = 0; leg < loads.situation.legs.size(); ++leg) {
    ForceVector force = loads.situation.legs[leg].on_insert;
    if (legs == Legs::upright) force.x = force.y = Force{};
    const auto insert = std::ranges::find(facts.plan.inserts, facts.rigging->legs.at(leg).to, &plan::Insert::id);
    if (insert == facts.plan.inserts.end()) continue;  // the leg to a beam or a sheave
    beam.forces.push_back({on.along(insert->at), insert->at.z, on.along(force), force.z});
    pull = pull + force;
  }
  const Force total = norm(pull);
  const double up_z = pull.z / total, up_along = on.along(pull) / total;
  const auto hang = [&](const loads::AppliedLoad& load) {
    beam.forces.push_back({on.along(load.at), load.at.z, -up_along * load.force, -up_z * load.force});
  };
  for (std::size_t i = 1; i <= loads.attached; ++i) hang(loads.set.loads[i]);

  const Length first = line.steps.front().from, last = line.steps.back().to, length = last - first;
  const Length half_way = 0.5 * (first + last);
  const Volume volume = std::accumulate(line.volumes.begin(), line.volumes.end(), Volume{});
  const Force weight = loads.set.loads.front().force;
  for (std::size_t s = 0; s < beam.steps.size(); ++s)
    beam.steps[s].load = up_z * weight * (line.volumes[s] / volume) / (beam.steps[s].to - beam.steps[s].from);
  for (std::size_t i = 1 + loads.attached; i < loads.set.loads.size(); ++i) {
    const loads::AppliedLoad& grip = loads.set.loads[i];
    const double aside = (on.along(grip.at) - half_way) / length;
    if (!(std::abs(aside) <= 1.0 / 6.0))
      return NotAssessed{"the form grips the piece at one end only: its bending by that is not computed", model_remedy};
    for (demands::BeamStep& step : beam.steps)
      step.load += up_z * grip.force / length * (1.0 + 12.0 * aside * ((middle(step) - half_way) / length).value());
  }
  // What the legs pull along the line, the mass takes, each step at its own height.
  Force along{};
  for (const demands::BeamForce& force : beam.forces) along += force.along;
  const std::size_t others = beam.forces.size();
  for (std::size_t s = 0; s < beam.steps.size(); ++s)
    beam.forces.push_back({middle(beam.steps[s]), beam.steps[s].centroid, -along * (line.volumes[s] / volume).value(), {}});

  // Loads x (1 + a + b (x - middle)/length) balance forces and moments to rounding.
  Force up{}, load_0{}, load_1{}, load_2{};  // moments of the step loads, each taken at its middle
  Moment turning{};  // about the middle of the line at height zero, over the length
  for (std::size_t i = 0; i < beam.forces.size(); ++i) {
    const demands::BeamForce& force = beam.forces[i];
    if (i < others) up += force.up;
    turning += force.up * (force.at - half_way) - force.along * force.height;
  }
  for (const demands::BeamStep& step : beam.steps) {
    const Force load = step.load * (step.to - step.from);
    const double x = ((middle(step) - half_way) / length).value();
    load_0 += load, load_1 += x * load, load_2 += x * x * load;
  }
  const double wanted_0 = (up - load_0) / load_0, wanted_1 = (turning / length - load_1) / load_0;
  const double k1 = load_1 / load_0, k2 = load_2 / load_0;
  const double b = (wanted_1 - k1 * wanted_0) / (k2 - k1 * k1), a = wanted_0 - b * k1;
  if (!(std::abs(a) + 0.5 * std::abs(b) <= corrected_within))
    return NotAssessed{"the loads along the piece do not balance what its legs carry", {}};
  for (demands::BeamStep& step : beam.steps) step.load *= 1.0 + a + b * ((middle(step) - half_way) / length).value();
  return beam;
}

Outcome<LinesUnderLoad> lines_under_load(const StageFacts& facts, const ModelChoice& model,
                                         const std::vector<Length>& places) {
  auto& known = facts.bending->lines;
  if (known) return *known;
  const auto compute = [&]() -> Outcome<LinesUnderLoad> {
    auto made = line_model(facts, model);
    if (const auto* missing = std::get_if<NotAssessed>(&made)) return *missing;
    auto& line = std::get<LineModel>(made);
    cut_at(line, places);
    LinesUnderLoad all{.lines = {}, .stretches = line.stretches};
    for (const Situation& situation : std::get<std::vector<Situation>>(facts.gear_situations)) {
      const auto loads = loads_as_they_are(facts, situation);
      if (const auto* missing = std::get_if<NotAssessed>(&loads)) return *missing;
      auto beam = loaded_line(facts, std::get<BendingLoads>(loads), line);
      if (const auto* missing = std::get_if<NotAssessed>(&beam)) return *missing;
      all.lines.push_back({std::get<demands::BeamLine>(std::move(beam)), std::get<BendingLoads>(loads).set.name,
                           situation.name, lighter_set_raise(facts, std::get<BendingLoads>(loads).set.total), situation.some_legs_only});
    }
    if (all.lines.empty()) return NotAssessed{"no situation loads the piece", {}};
    return all;
  };
  known = compute();
  return *known;
}

}  // namespace firstpick::checks
