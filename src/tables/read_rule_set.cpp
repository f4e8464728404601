#include "tables/read_rule_set.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <utility>

#include <fmt/format.h>

#include "tables/fields.hpp"

namespace firstpick::tables {
namespace {

template <class Word, std::size_t n>
using Words = std::array<std::pair<std::string_view, Word>, n>;

constexpr Words<InsertLoad, 2> insert_loads{
    {{"with adhesion and dynamic factor", InsertLoad::with_adhesion_and_dynamic},
     {"weight only", InsertLoad::weight_only}}};
constexpr Words<CraneLoad, 2> crane_loads{
    {{"with adhesion", CraneLoad::with_adhesion}, {"weight and gear", CraneLoad::weight_and_gear}}};
constexpr Words<Sharing, 2> sharings{{{"statics", Sharing::statics}, {"elastic", Sharing::elastic}}};
constexpr Words<NoSignOff, 3> no_sign_offs{
    {{"note", NoSignOff::note}, {"hold", NoSignOff::hold}, {"refuse", NoSignOff::refuse}}};
constexpr Words<LossOfAPoint, 3> losses{
    {{"report", LossOfAPoint::report}, {"hold", LossOfAPoint::hold}, {"refuse", LossOfAPoint::refuse}}};
constexpr Words<UsableStrength, 5> usable_strengths{
    {{"lowest", UsableStrength::lowest},
     {"mean", UsableStrength::mean},
     {"fractile, variation known", UsableStrength::fractile_variation_known},
     {"fractile, variation unknown", UsableStrength::fractile_variation_unknown},
     {"tolerance bound", UsableStrength::tolerance_bound}}};
constexpr Words<MaturityUse, 2> maturity_uses{
    {{"refused", MaturityUse::refused}, {"validated with margin", MaturityUse::validated_with_margin}}};
constexpr Words<LogDoubts, 2> log_doubt_words{{{"hold", LogDoubts::hold}, {"note", LogDoubts::note}}};
constexpr Words<BelowFloor, 2> floors{
    {{"refuse", BelowFloor::refuse}, {"proportional", BelowFloor::proportional}}};
constexpr Words<RatingScaling, 3> scalings{{{"proportional", RatingScaling::proportional},
                                            {"square root", RatingScaling::square_root},
                                            {"as declared", RatingScaling::as_declared}}};
constexpr std::string_view aci_inserts = "aci-318-19", en_inserts = "en-1992-4";
constexpr std::string_view aci_cracking = "aci-318-25", en_cracking = "en-1992-1-1";

using Factors = std::map<std::string, Sourced<Ratio>>;

Factors dynamic_factors(EntryReader& read) {
  Factors factors;
  for (const std::string_view stage : stage_words)
    factors.emplace(stage, read.quantity<Ratio>("dynamic_factor", Limit::at_least_one, stage));
  return factors;
}

// Of "<stage>.<product>.<face>"; which products there are is the table's affair.
Factors bending_multipliers(EntryReader& read) {
  Factors factors;
  for (const std::string& of : read.words_of("bending_multiplier")) {
    factors.emplace(of, read.quantity<Ratio>("bending_multiplier", Limit::at_least_one, of));
    const std::string_view stage = std::string_view(of).substr(0, of.find('.'));
    if (std::find(stage_words.begin(), stage_words.end(), stage) == stage_words.end())
      read.fault("bending_multiplier", of, fmt::format("'{}' does not begin with a stage", of),
                 suggestion(stage, {stage_words.begin(), stage_words.end()}));
  }
  return factors;
}

CrackingModel cracking_model(EntryReader& read, bool by_en) {
  const Sourced<RootStress> none{RootStress::from_value(std::numeric_limits<double>::quiet_NaN()), {}};
  return {.rupture = by_en ? none : read.quantity<RootStress>("cracking.rupture", Limit::positive),
          .factor = read.quantity<Ratio>("cracking.factor", Limit::at_least_one),
          .poisson = read.quantity<Ratio>("cracking.poisson", Limit::at_most_one),
          .patch = read.quantity<Ratio>("cracking.patch", Limit::positive),
          .pick_strip = read.quantity<Ratio>("cracking.pick_strip", Limit::positive),
          .line_slenderness = read.quantity<Ratio>("cracking.line_slenderness", Limit::at_least_one),
          .panel_slenderness = read.quantity<Ratio>("cracking.panel_slenderness", Limit::at_least_one),
          .step_ratio = read.quantity<Ratio>("cracking.step_ratio", Limit::at_least_one),
          .block_slenderness = read.quantity<Ratio>("cracking.block_slenderness", Limit::at_least_one),
          .block_size = read.quantity<Length>("cracking.block_size", Limit::positive),
          .wall_support = read.quantity<Ratio>("cracking.wall_support", Limit::at_least_one),
          .wall_spread = read.quantity<Ratio>("cracking.wall_spread", Limit::positive),
          .wall_spread_end = read.quantity<Ratio>("cracking.wall_spread_end", Limit::positive),
          .wall_spread_cantilever = read.quantity<Ratio>("cracking.wall_spread_cantilever", Limit::positive),
          .round_height = read.quantity<Ratio>("cracking.round_height", Limit::at_least_one),
          .shear = by_en ? none : read.quantity<RootStress>("cracking.shear", Limit::positive),
          .shear_factor = read.quantity<Ratio>("cracking.shear_factor", Limit::at_least_one),
          .en = by_en ? std::optional(en_1992_tension(read)) : std::nullopt};
}

PrestressModel prestress_model(EntryReader& read) {
  return {.least = read.quantity<Ratio>("prestress.least", Limit::at_most_one),
          .most = read.quantity<Ratio>("prestress.most", Limit::at_least_one),
          .transfer_least = read.quantity<Ratio>("prestress.transfer_least", Limit::at_most_one),
          .transfer_most = read.quantity<Ratio>("prestress.transfer_most", Limit::at_least_one),
          .compression = read.quantity<Ratio>("prestress.compression", Limit::at_most_one)};
}

BarModel bar_model(EntryReader& read, bool by_en) {
  const Sourced<RootStress> none{RootStress::from_value(std::numeric_limits<double>::quiet_NaN()), {}};
  BarModel model{.yield_share = read.quantity<Ratio>("bars.yield_share", Limit::at_most_one),
                 .modulus = read.quantity<Stress>("bars.modulus", Limit::positive),
                 .concrete_modulus =
                     by_en ? none : read.quantity<RootStress>("bars.concrete_modulus", Limit::positive),
                 .compression = read.quantity<Ratio>("bars.compression", Limit::at_most_one),
                 .crack_width = read.quantity<Length>("bars.crack_width", Limit::positive)};
  if (!by_en) return model;
  model.E_cm = read.quantity<Stress>("bars.E_cm", Limit::positive);
  model.mean_over = read.quantity<Stress>("bars.mean_over", Limit::positive);
  return model;
}

// What only some load models and safety formats have.
std::optional<LoadFactors> load_factors(EntryReader& read, bool are_needed) {
  if (!are_needed) return {};
  return LoadFactors{.weight = read.quantity<Ratio>("load_factors", Limit::at_least_one, "weight"),
                     .grip = read.quantity<Ratio>("load_factors", Limit::at_least_one, "grip")};
}

std::optional<Sourced<Ratio>> load_floor(EntryReader& read) {
  if (!read.has("load_floor")) return {};
  return read.quantity<Ratio>("load_floor", Limit::at_least_one);
}

std::optional<Sourced<Stress>> rating_basis(EntryReader& read) {
  if (!read.has("rating_basis")) return {};
  return read.quantity<Stress>("rating_basis", Limit::positive);
}

std::optional<Sourced<Stress>> adhesion_least(EntryReader& read) {
  if (!read.has("adhesion_least")) return {};
  return read.quantity<Stress>("adhesion_least", Limit::positive);
}

std::optional<HeavyPieces> heavy_pieces(EntryReader& read) {
  if (!read.has_any("heavy.")) return {};
  return HeavyPieces{.above = read.quantity<Mass>("heavy.above", Limit::positive),
                     .minimum_strength = read.quantity<Stress>("heavy.minimum_strength", Limit::positive)};
}

std::optional<LegCrossCheck> leg_cross_check(EntryReader& read) {
  if (!read.has_any("leg_cross_check.")) return {};
  return LegCrossCheck{.skew = read.quantity<Ratio>("leg_cross_check.skew", Limit::at_least_one),
                       .dynamic_factor = read.quantity<Ratio>("leg_cross_check.dynamic_factor", Limit::at_least_one)};
}

std::vector<Mandatory> read_mandatory(const TableFile& file, Faults& faults) {
  static const std::vector<std::string_view> scopes = {"piece",  "rigging", "crane",         "leg",
                                                       "gear",   "insert",  "headed insert", "rated insert",
                                                       "beam",   "sheave",  "loop insert",   "plate insert"};
  std::vector<Mandatory> all;
  for (const toml::table* table : tables_of(file, "mandatory", faults)) {
    Fields fields(file, *table, "[[mandatory]]", faults);
    Mandatory mandatory;
    mandatory.rule = fields.text("rule");
    mandatory.scope = fields.word("scope", scopes);
    mandatory.stages = fields.texts("stages", false);
    fields.refuse_others();
    for (const std::string& stage : mandatory.stages)
      if (std::find(stage_words.begin(), stage_words.end(), stage) == stage_words.end())
        fields.fault(fields.value_region("stages"), fmt::format("'{}' is not a stage", stage),
                     suggestion(stage, {stage_words.begin(), stage_words.end()}));
    const bool twice =
        std::any_of(all.begin(), all.end(), [&](const Mandatory& m) { return m.rule == mandatory.rule; });
    if (twice && !mandatory.rule.empty())
      fields.fault(fields.value_region("rule"), fmt::format("'{}' is listed twice", mandatory.rule));
    all.push_back(std::move(mandatory));
  }
  return all;
}

// Those of the base, and what the rule set adds: it takes none away.
std::vector<Mandatory> all_mandatory(const TableFile& file, const TableFile* base, Faults& faults) {
  std::vector<Mandatory> own = read_mandatory(file, faults);
  if (!base) {
    if (own.empty()) faults.push_back({file.path(), {}, "the rule set has no [[mandatory]] rule", {}});
    return own;
  }
  Faults told_already;
  std::vector<Mandatory> all = read_mandatory(*base, told_already);
  for (Mandatory& more : own) {
    if (std::ranges::find(all, more.rule, &Mandatory::rule) != all.end())
      faults.push_back({file.path(), {}, fmt::format("'{}' is mandatory in {} already", more.rule, base->name()), {}});
    all.push_back(std::move(more));
  }
  return all;
}

struct Heading {
  std::string id, title, edition;
  std::vector<std::string> cautions;
  std::string insert_model, cracking_model, based_on;
};

const toml::table* heading_table(const TableFile& file) {
  const toml::node* node = file.root().get("rule_set");
  return node ? node->as_table() : nullptr;
}

Heading read_heading(const TableFile& file, Faults& faults) {
  const toml::table* table = heading_table(file);
  if (!table) {
    faults.push_back({file.path(), {}, "the file has no [rule_set]", {}});
    return {};
  }
  Fields fields(file, *table, "[rule_set]", faults);
  const bool stands_alone = !fields.has("based_on");
  Heading heading{fields.text("id"), fields.text("title"), fields.text("edition"),
                  fields.texts("cautions", true),
                  stands_alone ? fields.word("insert_model", {aci_inserts, en_inserts}) : "",
                  stands_alone ? fields.word("cracking_model", {aci_cracking, en_cracking}) : "",
                  fields.text_or_none("based_on")};
  fields.refuse_others();
  if (!heading.id.empty() && file.name() != fmt::format("rules/{}.toml", heading.id))
    fields.fault(fields.value_region("id"),
                 fmt::format("the rule set '{}' stands in {}", heading.id, file.name()),
                 "the id is the name of the file without .toml");
  return heading;
}

}  // namespace

std::string base_of(const TableFile& file) {
  const toml::table* table = heading_table(file);
  return table ? table->get("based_on") ? table->get("based_on")->value_or(std::string{}) : std::string{} : std::string{};
}

RuleSet read_rule_set(const TableFile& file, const TableFile* base, EntryReader& read, Faults& faults) {
  refuse_other_keys(file, {"rule_set", "mandatory", "entry"}, faults);
  Heading heading = read_heading(file, faults);
  if (base) {
    Faults told_already;
    const Heading of_base = read_heading(*base, told_already);
    heading.insert_model = of_base.insert_model;
    heading.cracking_model = of_base.cracking_model;
    heading.cautions.insert(heading.cautions.end(), of_base.cautions.begin(), of_base.cautions.end());
  }
  const bool en_headed = heading.insert_model == en_inserts, en_tension = heading.cracking_model == en_cracking;
  const auto ratio = [&](std::string_view gives, Limit limit) { return read.quantity<Ratio>(gives, limit); };
  RuleSet rules{
      .id = heading.id,
      .title = heading.title,
      .edition = heading.edition,
      .based_on = heading.based_on,
      .cautions = std::move(heading.cautions),
      .insert_load = read.word<InsertLoad>("insert_load", insert_loads),
      .crane_load = read.word<CraneLoad>("crane_load", crane_loads),
      .dynamic_factor = dynamic_factors(read),
      .load_factors = load_factors(read, en_headed),
      .load_floor = load_floor(read),
      .adhesion_least = adhesion_least(read),
      .bending_multiplier = bending_multipliers(read),
      .sharing = read.word<Sharing>("sharing", sharings),
      .loss_step_factor = ratio("loss_step_factor", Limit::at_least_one),
      .loss_of_a_point = read.word<LossOfAPoint>("loss_of_a_point", losses),
      .leg_cross_check = leg_cross_check(read),
      .leg_stiffness_ratio = ratio("leg_stiffness_ratio", Limit::positive),
      .usable_strength = read.word<UsableStrength>("usable_strength", usable_strengths),
      .minimum_results = ratio("minimum_results", Limit::whole),
      .minimum_strength = read.quantity<Stress>("minimum_strength", Limit::positive),
      .heavy = heavy_pieces(read),
      .below_floor = read.word<BelowFloor>("below_floor", floors),
      .fractile = ratio("fractile", Limit::at_most_one),
      .known_variation = ratio("known_variation", Limit::at_most_one),
      .tolerance_confidence = ratio("tolerance_confidence", Limit::at_most_one),
      .maturity = read.word<MaturityUse>("maturity", maturity_uses),
      .maturity_margin = read.quantity<Stress>("maturity_margin", Limit::positive),
      .maturity_difference = ratio("maturity_difference", Limit::at_most_one),
      .companion_share = ratio("companion_share", Limit::at_most_one),
      .companion_window = read.quantity<Duration>("companion_window", Limit::positive),
      .fit_scatter = ratio("fit_scatter", Limit::at_most_one),
      .fit_error = ratio("fit_error", Limit::at_most_one),
      .log_doubts = read.word<LogDoubts>("log_doubts", log_doubt_words),
      .youngest_test = read.quantity<Duration>("youngest_test", Limit::positive),
      .longest_valid_for = read.quantity<Duration>("longest_valid_for", Limit::positive),
      .widest_range = ratio("widest_range", Limit::at_most_one),
      .pour_lasts = read.quantity<Duration>("pour_lasts", Limit::positive),
      .insert_factor = ratio("insert_factor", Limit::at_least_one),
      .hardware_factor = ratio("hardware_factor", Limit::at_least_one),
      .rating_scaling = read.word<RatingScaling>("rating_scaling", scalings),
      .rating_basis = rating_basis(read),
      .minimum_sling_angle = read.quantity<Angle>("minimum_sling_angle", Limit::acute),
      .strength_step = read.quantity<Stress>("strength_step", Limit::positive),
      .maximum_tilt = read.quantity<Angle>("maximum_tilt", Limit::acute),
      .weight_disagreement = ratio("weight_disagreement", Limit::at_most_one),
      .flat_piece = ratio("flat_piece", Limit::at_most_one),
      .edge_shear = ratio("edge_shear", Limit::at_most_one),
      .crane_planned_above = ratio("crane_planned_above", Limit::at_most_one),
      .crane_critical_above = ratio("crane_critical_above", Limit::at_most_one),
      .inspection_interval = read.quantity<Duration>("inspection_interval", Limit::positive),
      .hook_off_plumb = read.quantity<Angle>("hook_off_plumb", Limit::acute),
      .hook_side_pull = read.quantity<Angle>("hook_side_pull", Limit::acute),
      .leg_clearance = read.quantity<Length>("leg_clearance", Limit::positive),
      .leg_end = read.quantity<Length>("leg_end", Limit::positive),
      .hook_clearance = read.quantity<Length>("hook_clearance", Limit::positive),
      .release_swing = read.quantity<Angle>("release_swing", Limit::acute),
      .free_turn = read.quantity<Angle>("free_turn", Limit::acute),
      .side_pull = read.quantity<Force>("side_pull", Limit::positive),
      .maximum_roll = read.quantity<Angle>("maximum_roll", Limit::acute),
      .pick_spacing = ratio("pick_spacing", Limit::at_most_one),
      .minimum_tipping_angle = read.quantity<Angle>("minimum_tipping_angle", Limit::acute),
      .wind_caution = read.quantity<Speed>("wind_caution", Limit::positive),
      .maximum_swing = read.quantity<Angle>("maximum_swing", Limit::acute),
      .scale_disagreement = ratio("scale_disagreement", Limit::at_most_one),
      .headed = en_headed ? shared_with_en_1992(read) : headed_insert_model(read),
      .cracking = cracking_model(read, en_tension),
      .prestress = prestress_model(read),
      .bars = bar_model(read, en_tension),
      .anchor_bars = anchor_bar_model(read, en_headed),
      .mandatory = all_mandatory(file, base, faults),
      .no_sign_off = read.word<NoSignOff>("no_sign_off", no_sign_offs),
  };
  read.refuse_others();
  return rules;
}

void refuse_all_but_entries(const TableFile& file, Faults& faults) {
  for (const std::string_view key : {"rule_set", "mandatory"})
    if (const auto found = file.root().find(key); found != file.root().end())
      faults.push_back(file.fault(
          found->first.source(), fmt::format("a plant's change of {} may hold entries only", file.name()),
          "for other cautions or mandatory rules write a rule set of your own, in a new file"));
  std::vector<std::string_view> known = {"rule_set", "mandatory", "entry"};
  refuse_other_keys(file, known, faults);
}

}  // namespace firstpick::tables
