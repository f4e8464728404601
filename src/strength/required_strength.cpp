// The concrete strength that a stage needs before anything is lifted.
//
//   f_req = max(f_drawing, f_min), and f_release of a piece with strands
//
// Source   f_drawing: the drawing's strength for the stage, by the names of ISO 16739 (from memory): strip
//          FormStrippingStrength, haul TransportationStrength, every other stage LiftingStrength. f_release: its
//          ReleaseStrength, reached before the strands are cut, and so before any lift. f_min:
//          minimum_strength of the rule set; "minimum or as plan", Iowa DOT Materials IM 445.06, works the
//          same way. WAC 296-155-691 asks that the plan state the strength at lifting.
//          Of a rule set with a second minimum for heavy pieces (VicRoads 620.03: above five tonnes): by the mass.
// Range    a drawing that does not state it is not assessed: the rule set's minimum alone is nobody's design.

#include <fmt/format.h>

#include "strength/strength_at_lift.hpp"

namespace firstpick::strength {

namespace {

struct DrawingStrength {
  std::optional<Stress> value;
  const char* key;
};

DrawingStrength drawing_strength(plan::StageKind stage, const plan::Concrete& concrete) {
  if (stage == plan::StageKind::strip) return {concrete.form_stripping_strength, "form_stripping_strength"};
  if (stage == plan::StageKind::haul) return {concrete.transportation_strength, "transportation_strength"};
  return {concrete.lifting_strength, "lifting_strength"};
}

// The minimum that counts for this piece. A mass that is the limit but for its last bits is the limit.
const Sourced<Stress>& minimum_for(const tables::RuleSet& rules, std::optional<Mass> mass, Trace& trace) {
  if (!rules.heavy) return rules.minimum_strength;
  constexpr double last_bits = 1.0 + 1e-12;
  const bool is_light = mass && *mass <= last_bits * rules.heavy->above.value;
  trace.add([&] {
    Step step{.words = is_light ? "mass of the piece: the minimum strength of light ones counts"
                       : mass   ? "mass of the piece: the minimum strength of heavy ones counts"
                                : "the mass of the piece is not known here: the minimum strength of heavy ones counts",
              .result = {"m_limit", in(tonne, rules.heavy->above.value), "t"},
              .sources = {rules.heavy->above.source}};
    if (mass) step.words += fmt::format(", {:.3f} t", in(tonne, *mass));
    return step;
  });
  return is_light ? rules.minimum_strength : rules.heavy->minimum_strength;
}

}  // namespace

Outcome<Stress> required_strength(plan::StageKind stage, const plan::Concrete& concrete,
                                  const tables::RuleSet& rules, Trace& trace, std::optional<Mass> mass) {
  const auto [drawing, key] = drawing_strength(stage, concrete);
  if (!drawing)
    return NotAssessed{
        fmt::format("the strength required for the stage '{}' is not in the plan", plan::word_for(stage)),
        fmt::format("write {} in [concrete] as the drawing has it, in the form \"2500 psi\"", key)};
  if (!(*drawing > Stress{}) || !is_finite(*drawing))
    return NotAssessed{fmt::format("{} is not a usable number", key),
                       fmt::format("write {} in [concrete], above zero", key)};
  const Sourced<Stress>& least = minimum_for(rules, mass, trace);
  const Stress minimum = least.value;
  if (!(minimum >= Stress{}) || !is_finite(minimum))
    return NotAssessed{"the minimum strength of the rule set is not a usable number", {}};

  const auto& release = concrete.release_strength;
  if (release && (!(*release > Stress{}) || !is_finite(*release)))
    return NotAssessed{"release_strength is not a usable number", "write release_strength in [concrete], above zero"};
  Stress required = *drawing > minimum ? *drawing : minimum;
  if (release && *release > required) required = *release;
  trace.add([&, drawing = *drawing] {
    if (release)
      return Step{.words = "strength required: the drawing's, also to release the strands, not below the rule set's minimum",
                  .result = {"f_req", in(MPa, required), "MPa"},
                  .formula = "max(f_drawing, f_release, f_min)",
                  .given = {{"f_drawing", in(MPa, drawing), "MPa"},
                            {"f_release", in(MPa, *release), "MPa"},
                            {"f_min", in(MPa, minimum), "MPa"}},
                  .sources = {least.source}};
    return Step{.words = "strength required: the drawing's, not below the rule set's minimum",
                .result = {"f_req", in(MPa, required), "MPa"},
                .formula = "max(f_drawing, f_min)",
                .given = {{"f_drawing", in(MPa, drawing), "MPa"}, {"f_min", in(MPa, minimum), "MPa"}},
                .sources = {least.source}};
  });
  return required;
}

}  // namespace firstpick::strength
