#include "comparison/assumptions.hpp"

#include <algorithm>
#include <array>
#include <type_traits>

#include <fmt/format.h>

#include "comparison/model_sources.hpp"

namespace firstpick::comparison {

namespace {

using tables::RuleSet;

constexpr std::string_view none = "none";

// --- one value with its source, or none

template <class T>
bool same(const Sourced<T>& a, const Sourced<T>& b) {
  return a.value == b.value;
}
template <class T>
bool same(const std::optional<Sourced<T>>& a, const std::optional<Sourced<T>>& b) {
  return a.has_value() == b.has_value() && (!a || same(*a, *b));
}
bool same(const std::optional<tables::LoadFactors>& a, const std::optional<tables::LoadFactors>& b) {
  return a.has_value() == b.has_value() && (!a || (same(a->weight, b->weight) && same(a->grip, b->grip)));
}
template <class T>
bool same(const std::map<std::string, Sourced<T>>& a, const std::map<std::string, Sourced<T>>& b) {
  return std::ranges::equal(a, b, [](const auto& x, const auto& y) { return x.first == y.first && same(x.second, y.second); });
}

template <class T>
std::string told(const Sourced<T>& one) {
  return one.source.value_text;
}
template <class T>
std::string told(const std::optional<Sourced<T>>& one) {
  return one ? told(*one) : std::string(none);
}
bool same(const std::optional<tables::HeavyPieces>& a, const std::optional<tables::HeavyPieces>& b) {
  return a.has_value() == b.has_value() &&
         (!a || (same(a->above, b->above) && same(a->minimum_strength, b->minimum_strength)));
}
std::string told(const std::optional<tables::HeavyPieces>& one) {
  if (!one) return std::string(none);
  return fmt::format("{} above {}", told(one->minimum_strength), told(one->above));
}
bool same(const std::optional<tables::LegCrossCheck>& a, const std::optional<tables::LegCrossCheck>& b) {
  return a.has_value() == b.has_value() && (!a || (same(a->skew, b->skew) && same(a->dynamic_factor, b->dynamic_factor)));
}
std::string told(const std::optional<tables::LegCrossCheck>& one) {
  if (!one) return std::string(none);
  return fmt::format("skew {}, dynamic factor {}", told(one->skew), told(one->dynamic_factor));
}
std::string told(const std::optional<tables::LoadFactors>& one) {
  if (!one) return std::string(none);
  return fmt::format("{} x weights, {} x grip of the form", told(one->weight), told(one->grip));
}

// Headed inserts have it only where their model has no partial factors.
Assumption insert_factor() {
  return {"factor on inserts",
          [](const RuleSet& first, const RuleSet& other) { return !same(first.insert_factor, other.insert_factor); },
          [](const RuleSet& one, const RuleSet& beside, std::string_view) {
            const bool alike = one.headed.en.has_value() == beside.headed.en.has_value();
            return told(one.insert_factor) + (alike           ? ""
                                              : one.headed.en ? ", but on headed inserts"
                                                              : ", on headed inserts too");
          },
          [](RuleSet& into, const RuleSet& from) { into.insert_factor = from.insert_factor; },
          true};
}

template <auto member>
constexpr Assumption value_of(std::string_view name) {
  return {name, [](const RuleSet& first, const RuleSet& other) { return !same(first.*member, other.*member); },
          [](const RuleSet& one, const RuleSet&, std::string_view) { return told(one.*member); },
          [](RuleSet& into, const RuleSet& from) { into.*member = from.*member; }};
}

// --- a value of each stage

Assumption dynamic_factor() {
  return {"dynamic factor",
          [](const RuleSet& first, const RuleSet& other) { return !same(first.dynamic_factor, other.dynamic_factor); },
          [](const RuleSet& one, const RuleSet&, std::string_view stage) {
            const auto own = one.dynamic_factor.find(std::string(stage));
            return own == one.dynamic_factor.end() ? std::string(none) : told(own->second);
          },
          [](RuleSet& into, const RuleSet& from) { into.dynamic_factor = from.dynamic_factor; }};
}

Assumption bending_multiplier() {
  return {"multipliers for bending of the piece",
          [](const RuleSet& first, const RuleSet& other) {
            return !same(first.bending_multiplier, other.bending_multiplier);
          },
          [](const RuleSet& one, const RuleSet&, std::string_view stage) {
            std::string low, high;
            double least = 0.0, most = 0.0;
            for (const auto& [of, factor] : one.bending_multiplier) {
              if (!of.starts_with(stage)) continue;
              if (low.empty() || factor.value.value() < least) least = factor.value.value(), low = told(factor);
              if (high.empty() || factor.value.value() > most) most = factor.value.value(), high = told(factor);
            }
            if (low.empty()) return std::string("none of its own: the dynamic factor");
            return low == high ? low : fmt::format("{} to {} by product and form", low, high);
          },
          [](RuleSet& into, const RuleSet& from) { into.bending_multiplier = from.bending_multiplier; }};
}

// --- models

bool same_constants(const Sources& a, const Sources& b) {
  return std::ranges::equal(a, b, [](const Source* x, const Source* y) {
    return x->symbol == y->symbol && x->value_text == y->value_text;
  });
}

template <class Model>
std::string constants_that_differ(const Model& one, const Model& beside) {
  const Sources own = sources_of(one), others = sources_of(beside);
  std::string text;
  for (std::size_t i = 0; i < std::min(own.size(), others.size()); ++i)
    if (own[i]->value_text != others[i]->value_text)
      text += fmt::format("{}{} {}", text.empty() ? "" : ", ", own[i]->symbol, own[i]->value_text);
  return text;
}

// "ACI 318-19": the title up to its first comma.
std::string short_title(const Source& source) { return source.title.substr(0, source.title.find(',')); }

std::string told_headed(const RuleSet& one, const RuleSet& beside, std::string_view) {
  const tables::HeadedInsertModel& model = one.headed;
  if (model.en.has_value() == beside.headed.en.has_value()) return constants_that_differ(model, beside.headed);
  if (!model.en) return fmt::format("{}, over one factor of {}", short_title(model.k_c.source), told(one.insert_factor));
  return fmt::format("{}, over {} (concrete) or {} f_uk / f_yk, {} or more (steel)", short_title(model.en->gamma_c.source),
                     (model.en->gamma_c.value * model.en->gamma_inst.value).value(),
                     model.en->gamma_s_tension.value.value(), model.en->gamma_s_tension_least.value.value());
}

std::string told_cracking(const RuleSet& one, const RuleSet& beside, std::string_view) {
  const tables::CrackingModel& model = one.cracking;
  if (model.en.has_value() == beside.cracking.en.has_value()) return constants_that_differ(model, beside.cracking);
  return fmt::format("{}, over {}", short_title(model.en ? model.en->f_ctm.source : model.rupture.source),
                     model.factor.value.value());
}

Assumption headed_model() {
  return {"resistance of headed inserts and its factors",
          [](const RuleSet& first, const RuleSet& other) {
            return !same_constants(sources_of(first.headed), sources_of(other.headed));
          },
          told_headed, [](RuleSet& into, const RuleSet& from) { into.headed = from.headed; }};
}

Assumption cracking_model() {
  return {"tension at which the piece cracks",
          [](const RuleSet& first, const RuleSet& other) {
            return !same_constants(sources_of(first.cracking), sources_of(other.cracking));
          },
          told_cracking, [](RuleSet& into, const RuleSet& from) { into.cracking = from.cracking; }};
}

// Told by what differs: what one has and the other has not, and values that are not the same.
template <auto member>
Assumption constants_of(std::string_view name) {
  return {name,
          [](const RuleSet& first, const RuleSet& other) {
            return !same_constants(sources_of(first.*member), sources_of(other.*member));
          },
          [](const RuleSet& one, const RuleSet& beside, std::string_view) {
            std::string text;
            const Sources others = sources_of(beside.*member);
            for (const Source* own : sources_of(one.*member))
              if (std::ranges::none_of(others, [&](const Source* other) {
                    return other->symbol == own->symbol && other->value_text == own->value_text;
                  }))
                text += fmt::format("{}{} {}", text.empty() ? "" : ", ", own->symbol, own->value_text);
            return text.empty() ? std::string(none) : text;
          },
          [](RuleSet& into, const RuleSet& from) { into.*member = from.*member; }};
}

// --- which rules must answer

std::string in_words(const tables::Mandatory& mandatory) {
  return fmt::format("{} ({}; {})", mandatory.rule, mandatory.scope,
                     mandatory.stages.empty() ? "every stage" : fmt::format("{}", fmt::join(mandatory.stages, ", ")));
}

std::string not_in(const std::vector<tables::Mandatory>& others, const std::vector<tables::Mandatory>& own) {
  std::string text;
  for (const tables::Mandatory& mandatory : own)
    if (std::ranges::none_of(others, [&](const auto& other) { return in_words(other) == in_words(mandatory); }))
      text += (text.empty() ? "" : ", ") + in_words(mandatory);
  return text;
}

Assumption mandatory_rules() {
  return {"rules that must answer",
          [](const RuleSet& first, const RuleSet& other) {
            return !not_in(first.mandatory, other.mandatory).empty() || !not_in(other.mandatory, first.mandatory).empty();
          },
          [](const RuleSet& one, const RuleSet& beside, std::string_view) {
            const std::string only = not_in(beside.mandatory, one.mandatory);
            return only.empty() ? std::string("none of its own") : "also " + only;
          },
          [](RuleSet& into, const RuleSet& from) { into.mandatory = from.mandatory; }};
}

}  // namespace

std::span<const Assumption> all_assumptions() {
  static const std::array all = {
      dynamic_factor(),
      value_of<&RuleSet::load_factors>("load factors on headed inserts"),
      value_of<&RuleSet::insert_load>("load that the factor on inserts multiplies"),
      value_of<&RuleSet::load_floor>("least load of a strip, over the weights"),
      value_of<&RuleSet::adhesion_least>("least grip of a form, per area"),
      value_of<&RuleSet::crane_load>("load that the crane is compared with"),
      bending_multiplier(),
      value_of<&RuleSet::sharing>("sharing between legs"),
      value_of<&RuleSet::leg_cross_check>("what the cross-check of four legs asks"),
      value_of<&RuleSet::leg_stiffness_ratio>("stiffness of a leg that is not stated"),
      value_of<&RuleSet::usable_strength>("strength that a set of specimens is worth"),
      value_of<&RuleSet::minimum_results>("least number of specimens"),
      value_of<&RuleSet::fractile>("fractile of the strength"),
      value_of<&RuleSet::known_variation>("variation of the strength that counts as known"),
      value_of<&RuleSet::tolerance_confidence>("confidence of the tolerance bound"),
      value_of<&RuleSet::maturity>("whether maturity counts"),
      value_of<&RuleSet::maturity_margin>("margin on maturity"),
      value_of<&RuleSet::maturity_difference>("difference of maturity from companions"),
      value_of<&RuleSet::companion_share>("least strength of companions over the estimate"),
      value_of<&RuleSet::companion_window>("oldest companions that validate"),
      value_of<&RuleSet::fit_scatter>("most scatter of a calibration"),
      value_of<&RuleSet::fit_error>("most error of a strength from maturity"),
      value_of<&RuleSet::log_doubts>("a temperature log in doubt"),
      value_of<&RuleSet::youngest_test>("youngest age of a test"),
      value_of<&RuleSet::longest_valid_for>("longest time that a test may be used"),
      value_of<&RuleSet::widest_range>("widest range of specimen results"),
      value_of<&RuleSet::pour_lasts>("time that a pour lasts"),
      value_of<&RuleSet::minimum_strength>("least strength to lift at all"),
      value_of<&RuleSet::heavy>("least strength of heavy pieces"),
      value_of<&RuleSet::below_floor>("inserts below the strength that the formulas cover"),
      headed_model(),
      constants_of<&RuleSet::anchor_bars>("bars that hold the body of concrete about an insert"),
      insert_factor(),
      value_of<&RuleSet::hardware_factor>("factor on lifting hardware"),
      value_of<&RuleSet::rating_scaling>("declared load of an insert in weaker concrete"),
      value_of<&RuleSet::rating_basis>("strength for which every load must be declared"),
      cracking_model(),
      constants_of<&RuleSet::prestress>("what strands hold"),
      constants_of<&RuleSet::bars>("what bars of a piece that may crack hold"),
      value_of<&RuleSet::minimum_sling_angle>("flattest leg"),
      value_of<&RuleSet::strength_step>("step of strengths on drawings"),
      value_of<&RuleSet::maximum_tilt>("most that a piece may hang out of level"),
      value_of<&RuleSet::weight_disagreement>("stated weight against the computed one"),
      value_of<&RuleSet::flat_piece>("what counts as a flat piece"),
      value_of<&RuleSet::edge_shear>("shear from which an edge insert needs a hanger bar"),
      value_of<&RuleSet::crane_planned_above>("share of the crane's rating that needs a written plan"),
      value_of<&RuleSet::crane_critical_above>("share of the crane's rating that makes a critical lift"),
      value_of<&RuleSet::inspection_interval>("time between examinations of gear"),
      value_of<&RuleSet::hook_off_plumb>("how far the hook line strays in a turn"),
      value_of<&RuleSet::hook_side_pull>("how far hooks may be pulled off plumb"),
      value_of<&RuleSet::leg_clearance>("least distance of a leg from concrete"),
      value_of<&RuleSet::leg_end>("end of a leg that may stand in a recess"),
      value_of<&RuleSet::hook_clearance>("least distance of a hook from concrete"),
      value_of<&RuleSet::release_swing>("most swing as a piece comes off a table"),
      value_of<&RuleSet::free_turn>("how far a piece may turn by itself"),
      value_of<&RuleSet::side_pull>("side pull at the rim"),
      value_of<&RuleSet::maximum_roll>("most roll under that pull"),
      value_of<&RuleSet::pick_spacing>("least spacing of picks in line"),
      value_of<&RuleSet::minimum_tipping_angle>("least tipping angle"),
      value_of<&RuleSet::wind_caution>("gust in which the lift waits"),
      value_of<&RuleSet::maximum_swing>("most swing in a gust"),
      value_of<&RuleSet::scale_disagreement>("scale against the computed weight"),
      value_of<&RuleSet::loss_step_factor>("step factor when a point lets go"),
      value_of<&RuleSet::loss_of_a_point>("a lift that would not survive the loss of one point"),
      value_of<&RuleSet::no_sign_off>("a plan that no engineer has signed"),
      mandatory_rules(),
  };
  return all;
}

}  // namespace firstpick::comparison
