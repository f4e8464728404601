// Two reports on one piece, held against each other.
//
//   u = D / (N / n)            D what is asked, N what is held before the factor, n the factor
//   u2 / u1 = (D2 / D1) (n2 / n1) / (N2 / N1)
//
// The largest of the three is the one farthest from 1, up or down, on a scale on which x 2 and x 0.5 are equally far.
// Source   arithmetic on the findings as the rules gave them.

#include "comparison/contrast.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace firstpick::comparison {

namespace {

using checks::Finding;
using checks::Result;
using checks::StageReport;
using checks::Verdict;

constexpr double of_the_same = 1e-6;    // relative: a split that does not give the use back is none
constexpr double changes_nothing = 5e-4;

const Finding* find(const StageReport& stage, std::string_view rule, std::string_view subject) {
  const auto found = std::ranges::find_if(
      stage.findings, [&](const Finding& f) { return f.rule == rule && f.subject == subject; });
  return found == stage.findings.end() ? nullptr : &*found;
}

std::optional<Finding> copy_of(const Finding* finding) {
  return finding ? std::optional(*finding) : std::nullopt;
}

bool is_near(double a, double b) { return std::abs(a - b) <= of_the_same * std::abs(b); }

// Demand, nominal and factor of a finding as numbers, where they give its use. None of a share of other uses (interaction).
struct Split {
  double demand, nominal, factor;
};
std::optional<Split> split_of(const Finding& f) {
  if (!f.demand || !f.nominal || !f.factor || !f.utilization) return {};
  if (f.demand->index() != f.nominal->index() || std::holds_alternative<Ratio>(*f.demand)) return {};
  const Split split{checks::si_number(*f.demand), checks::si_number(*f.nominal), *f.factor};
  const bool is_usable = split.demand > 0.0 && split.nominal > 0.0 && split.factor > 0.0;
  if (!is_usable || !is_near(split.demand * split.factor / split.nominal, *f.utilization)) return {};
  return split;
}

std::optional<Part> largest_of(const Ratios& ratios) {
  std::optional<Part> largest;
  double most = changes_nothing;
  const auto look = [&](Part part, double ratio) {
    if (!(std::abs(std::log(ratio)) > most)) return;
    most = std::abs(std::log(ratio));
    largest = part;
  };
  look(Part::demand, *ratios.demand);
  look(Part::nominal, *ratios.nominal);
  look(Part::factor, *ratios.factor);
  return largest;
}

// Worse first: result, then use.
bool decides_before(const Finding& a, const Finding& b) {
  constexpr double more = 1.0 + 1e-9;  // of equals the first, whatever their last bits
  if (a.result != b.result) return a.result > b.result;
  return a.utilization.value_or(0.0) > more * b.utilization.value_or(0.0);
}

bool is_meant_for(const Swapped& swap, std::string_view rule) {
  return std::ranges::find(swap.not_meant_for, rule) == swap.not_meant_for.end();
}

Pair pair_of(const Finding& finding, const StageReport& first, const StageReport& other) {
  Pair pair{finding.rule, finding.subject, copy_of(find(first, finding.rule, finding.subject)),
            copy_of(find(other, finding.rule, finding.subject)), {}};
  if (pair.first && pair.other) pair.ratios = ratios_of(*pair.first, *pair.other);
  return pair;
}

// Every key once: the first report's findings in their order, then what only the other has.
std::vector<const Finding*> keys_of(const StageReport& first, const StageReport& other) {
  std::vector<const Finding*> keys;
  const auto is_new = [&](const Finding& f) {
    return std::ranges::none_of(keys, [&](const Finding* k) { return k->rule == f.rule && k->subject == f.subject; });
  };
  for (const StageReport* stage : {&first, &other})
    for (const Finding& f : stage->findings)
      if (is_new(f)) keys.push_back(&f);
  return keys;
}

template <class Wanted>
const Finding* worst_of(const StageReport& stage, Wanted is_wanted) {
  const Finding* worst = nullptr;
  for (const Finding& f : stage.findings)
    if (f.utilization && is_wanted(f) && (!worst || decides_before(f, *worst))) worst = &f;
  return worst;
}

bool is_used_alike(const Finding& f, const StageReport& beside) {
  const Finding* same = find(beside, f.rule, f.subject);
  if (!same || !same->utilization || !f.utilization) return false;
  return f.result == same->result && std::abs(*f.utilization - *same->utilization) <= changes_nothing * *f.utilization;
}

// What decides under either set, and what decides among those that split, where the two are not alike; then each rule that one
// set passes and the other does not, at its worst subject.
std::vector<const Finding*> deciding(const StageReport& first, const StageReport& other) {
  std::vector<const Finding*> found;
  const auto add = [&](const Finding* f) {
    if (f && std::ranges::none_of(found, [&](const Finding* k) { return k->rule == f->rule; })) found.push_back(f);
  };
  for (const StageReport* stage : {&first, &other}) {
    const StageReport& beside = stage == &first ? other : first;
    const Finding* worst = worst_of(*stage, [](const Finding&) { return true; });
    if (worst && !is_used_alike(*worst, beside)) add(worst);
    add(worst_of(*stage, [&](const Finding& f) { return split_of(f) && !is_used_alike(f, beside); }));
  }
  for (const StageReport* stage : {&first, &other}) {
    const StageReport& beside = stage == &first ? other : first;
    const auto is_told_otherwise = [&](const Finding& f) {
      const Finding* same = find(beside, f.rule, f.subject);
      return same && same->utilization && f.result > Result::note && same->result <= Result::note;
    };
    for (const Finding& f : stage->findings)
      if (f.utilization && is_told_otherwise(f))
        add(worst_of(*stage, [&](const Finding& g) { return g.rule == f.rule && is_told_otherwise(g); }));
  }
  return found;
}

std::vector<Effect> effects_on(const Pair& pair, std::size_t stage, std::span<const Swapped> swapped) {
  std::vector<Effect> effects;
  if (!pair.first || !pair.first->utilization || !(*pair.first->utilization > 0.0)) return effects;
  for (const Swapped& one : swapped) {
    const Finding* then = find(one.stages.at(stage), pair.rule, pair.subject);
    if (!then || !then->utilization || !is_meant_for(one, pair.rule)) continue;
    const double ratio = *then->utilization / *pair.first->utilization;
    if (!(ratio > 0.0) || !(std::abs(std::log(ratio)) > changes_nothing)) continue;
    effects.push_back({one.assumption, one.first.at(stage), one.other.at(stage), *then->utilization, ratio});
  }
  std::ranges::stable_sort(effects, std::greater{}, [](const Effect& e) { return std::abs(std::log(e.ratio)); });
  return effects;
}

// A note and a pass are the same to whoever lifts; a rule that speaks of a number under one set only is not.
bool is_told_alike(const Finding* first, const Finding* other) {
  if (!first || !other) return false;
  const auto weight = [](Result r) { return std::max(r, Result::note); };
  return weight(first->result) == weight(other->result) && first->utilization.has_value() == other->utilization.has_value();
}

bool is_one(const Difference& known, const Difference& fresh) {
  return known.rule == fresh.rule && known.first == fresh.first && known.other == fresh.other &&
         known.turned_by == fresh.turned_by;
}

std::vector<Difference> differences(const StageReport& first, const StageReport& other, std::size_t stage,
                                    std::span<const Swapped> swapped) {
  std::vector<Difference> all;
  const auto result = [](const Finding* f) { return f ? std::optional(f->result) : std::nullopt; };
  const auto text = [](const Finding* f) { return f ? f->text : std::string(); };
  for (const Finding* key : keys_of(first, other)) {
    const Finding* one = find(first, key->rule, key->subject);
    const Finding* two = find(other, key->rule, key->subject);
    if (is_told_alike(one, two)) continue;
    Difference fresh{key->rule, {key->subject}, result(one), result(two), text(one), text(two), {}};
    for (const Swapped& swap : swapped)
      if (is_meant_for(swap, key->rule) && is_told_alike(find(swap.stages.at(stage), key->rule, key->subject), two))
        fresh.turned_by.emplace_back(swap.assumption);
    const auto known = std::ranges::find_if(all, [&](const Difference& d) { return is_one(d, fresh); });
    if (known == all.end()) all.push_back(std::move(fresh));
    else known->subjects.push_back(key->subject);
  }
  return all;
}

StageContrast contrast_of(const StageReport& first, const StageReport& other, std::size_t stage,
                          std::span<const Swapped> swapped) {
  StageContrast contrast{.kind = first.kind, .first = first.verdict, .other = other.verdict};
  for (const Finding* key : keys_of(first, other)) {
    Pair pair = pair_of(*key, first, other);
    if ((pair.first && pair.first->utilization) || (pair.other && pair.other->utilization))
      contrast.pairs.push_back(std::move(pair));
  }
  for (const Finding* finding : deciding(first, other)) {
    Explained explained{pair_of(*finding, first, other), {}};
    explained.effects = effects_on(explained.pair, stage, swapped);
    contrast.explained.push_back(std::move(explained));
  }
  contrast.differences = differences(first, other, stage, swapped);
  for (const Swapped& one : swapped)
    if (one.not_meant_for.empty() && one.stages.at(stage).verdict != first.verdict)
      contrast.turned.push_back({one.assumption, one.first.at(stage), one.other.at(stage), one.stages.at(stage).verdict});
  return contrast;
}

}  // namespace

std::string_view word_for(Part part) {
  switch (part) {
    case Part::demand: return "demand";
    case Part::nominal: return "nominal";
    case Part::factor: return "factor";
  }
  return "demand";
}

std::optional<Ratios> ratios_of(const Finding& first, const Finding& other) {
  if (!first.utilization || !other.utilization) return {};
  const double use = *other.utilization / *first.utilization;
  if (!(use > 0.0) || !std::isfinite(use)) return {};
  Ratios ratios{.use = use};
  const auto a = split_of(first), b = split_of(other);
  if (!a || !b || first.demand->index() != other.demand->index()) return ratios;
  ratios.demand = b->demand / a->demand;
  ratios.nominal = b->nominal / a->nominal;
  ratios.factor = b->factor / a->factor;
  ratios.largest = largest_of(ratios);
  return ratios;
}

std::vector<StageContrast> contrast(const checks::Report& first, const checks::Report& other,
                                    std::span<const Swapped> swapped) {
  if (first.stages.size() != other.stages.size()) throw std::invalid_argument("reports of two plans are held together");
  std::vector<StageContrast> all;
  for (std::size_t i = 0; i < first.stages.size(); ++i)
    all.push_back(contrast_of(first.stages[i], other.stages[i], i, swapped));
  return all;
}

}  // namespace firstpick::comparison
