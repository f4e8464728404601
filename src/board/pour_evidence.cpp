#include "board/pour_evidence.hpp"

#include <fmt/format.h>

#include "strength/log_doubt.hpp"
#include "units/print.hpp"

namespace firstpick::board {

namespace {

bool same_moment(const std::optional<plan::Timestamp>& a, const std::optional<plan::Timestamp>& b) {
  if (!a || !b) return !a && !b;
  return a->seconds == b->seconds && a->has_offset == b->has_offset;
}

bool same_specimen(const std::optional<plan::Specimen>& a, const std::optional<plan::Specimen>& b) {
  if (!a || !b) return !a && !b;
  return a->shape == b->shape && a->width == b->width && a->height == b->height;
}

// The key in which two records of specimens differ; empty where they are the same.
std::string difference(const plan::Evidence& a, const plan::Evidence& b) {
  if (!same_moment(a.cast, b.cast)) return "cast";
  if (!same_moment(a.tested, b.tested)) return "tested";
  if (a.results != b.results) return "results";
  if (!same_specimen(a.specimen, b.specimen)) return "specimen";
  if (a.cure != b.cure) return "cure";
  if (a.valid_for != b.valid_for) return "valid_for";
  return {};
}

std::optional<NotAssessed> asks_for_more(const plan::Concrete& of_plan,
                                         const checks::StrengthQuestion& pour) {
  const auto& of_pour = pour.concrete.form_stripping_strength;
  if (!of_pour || (of_plan.form_stripping_strength && *of_pour <= *of_plan.form_stripping_strength))
    return {};
  return NotAssessed{fmt::format("the pour asks for {} at the lift, the plan for {}",
                                 print(*of_pour, pour.units, Rounding::up),
                                 of_plan.form_stripping_strength
                                     ? print(*of_plan.form_stripping_strength, pour.units, Rounding::down)
                                     : std::string("none")),
                     "write the drawing's strength in both"};
}

Duration between(const plan::Timestamp& earlier, const plan::Timestamp& later) {
  return Duration::from_value(static_cast<double>(later.seconds) - static_cast<double>(earlier.seconds));
}

}  // namespace

std::optional<plan::Timestamp> cast_of(const checks::StrengthQuestion& pour) {
  if (pour.log_file && pour.log_file->cast) return pour.log_file->cast;
  return pour.concrete.evidence ? pour.concrete.evidence->cast : std::nullopt;
}

std::optional<NotAssessed> other_pour(const plan::Timestamp& piece, const plan::Timestamp& pour,
                                      const tables::RuleSet& rules) {
  if (piece.seconds > pour.seconds)
    return NotAssessed{fmt::format("the piece was cast {}, later than its specimens or their log, {}: it is younger",
                                   piece.text, pour.text),
                       "name the pour of this piece, or correct cast in [[piece]]"};
  if (between(piece, pour) <= rules.pour_lasts.value) return {};
  return NotAssessed{fmt::format("the piece was cast {}, and its pour {}, {} later: they are of two pours", piece.text,
                                 pour.text, print(between(piece, pour), UnitSystem::si, Rounding::up)),
                     "name the pour of this piece, or correct cast in [[piece]]"};
}

Outcome<plan::Concrete> concrete_of(const plan::Concrete& of_plan, const checks::StrengthQuestion& pour) {
  if (auto conflict = strength::cast_conflict(pour.concrete.evidence,
                                              pour.log_file ? pour.log_file->cast : std::nullopt))
    return *std::move(conflict);
  if (auto conflict = asks_for_more(of_plan, pour)) return *std::move(conflict);
  const auto& own = of_plan.evidence;
  const auto& poured = pour.concrete.evidence;

  plan::Concrete concrete = of_plan;
  if (poured && own) {
    const std::string differs = difference(*own, *poured);
    if (!differs.empty())
      return NotAssessed{
          fmt::format("the specimens of the plan and those of the pour differ in '{}'", differs),
          "remove [concrete.evidence] from the plan, or name the right pour"};
  } else if (own && !(cast_of(pour) && own->cast && same_moment(cast_of(pour), own->cast))) {
    return NotAssessed{
        "the specimens of the plan are not known to be of this pour: the times of casting differ or are "
        "not stated",
        "write the specimens in the strength file of the pour, and remove them from the plan"};
  }
  if (poured) concrete.evidence = poured;
  return concrete;
}

}  // namespace firstpick::board
