// The names by which the entries of a rule set give the constants of AnchorBarModel, and what each must be.

#include "tables/read_rule_set.hpp"

namespace firstpick::tables {

namespace {

AciDevelopment aci_development(EntryReader& read) {
  const auto ratio = [&](std::string_view gives, Limit limit) { return read.quantity<Ratio>(gives, limit); };
  const auto length = [&](std::string_view gives) { return read.quantity<Length>(gives, Limit::positive); };
  return {.thin_up_to = length("anchor_bars.thin_up_to"),
          .straight_thin = read.quantity<RootStress>("anchor_bars.straight_thin", Limit::positive),
          .straight_thick = read.quantity<RootStress>("anchor_bars.straight_thick", Limit::positive),
          .cast_position = ratio("anchor_bars.cast_position", Limit::at_least_one),
          .straight_least = length("anchor_bars.straight_least"),
          .hook = read.quantity<BreakoutCoefficient>("anchor_bars.hook", Limit::positive),
          .hook_factor = ratio("anchor_bars.hook_factor", Limit::at_least_one),
          .hook_base = ratio("anchor_bars.hook_base", Limit::at_most_one),
          .hook_over = read.quantity<Stress>("anchor_bars.hook_over", Limit::positive),
          .hook_diameters = ratio("anchor_bars.hook_diameters", Limit::at_least_one),
          .hook_least = length("anchor_bars.hook_least")};
}

EnAnchorage en_anchorage(EntryReader& read) {
  const auto ratio = [&](std::string_view gives, Limit limit) { return read.quantity<Ratio>(gives, limit); };
  const auto length = [&](std::string_view gives) { return read.quantity<Length>(gives, Limit::positive); };
  return {.bond = ratio("anchor_bars.bond", Limit::positive),
          .thickest = length("anchor_bars.thickest"),
          .straight_diameters = ratio("anchor_bars.straight_diameters", Limit::at_least_one),
          .hook_diameters = ratio("anchor_bars.hook_diameters", Limit::at_least_one),
          .beyond_least = length("anchor_bars.beyond_least"),
          .pryout = ratio("anchor_bars.pryout", Limit::at_most_one),
          .interaction_power = ratio("anchor_bars.interaction_power", Limit::at_most_one)};
}

}  // namespace

std::optional<AnchorBarModel> anchor_bar_model(EntryReader& read, bool by_en) {
  if (!read.has_any("anchor_bars.")) return {};
  AnchorBarModel model{.distance = read.quantity<Ratio>("anchor_bars.distance", Limit::at_most_one),
                       .yield_most = read.quantity<Stress>("anchor_bars.yield_most", Limit::positive)};
  if (by_en) model.en = en_anchorage(read);
  else model.aci = aci_development(read);
  return model;
}

}  // namespace firstpick::tables
