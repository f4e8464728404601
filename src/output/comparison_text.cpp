#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "checks/rule.hpp"
#include "output/comparison.hpp"
#include "output/side_by_side.hpp"
#include "output/text_layout.hpp"
#include "output/verdict_words.hpp"

namespace firstpick::output {

namespace {

using checks::Finding;
using checks::Report;
using checks::Result;
using checks::StageReport;
using comparison::Comparison;
using comparison::Contrast;
using comparison::Effect;
using comparison::Explained;
using comparison::Pair;
using comparison::StageContrast;

std::string change_in_words(double ratio) { return fmt::format("x {:.2f}", ratio); }

// Nothing where the two are the same to the figures printed: what differs is to be seen.
std::string change_if_any(double ratio) {
  constexpr double to_the_figures = 0.005;
  return std::abs(ratio - 1.0) < to_the_figures ? std::string() : change_in_words(ratio);
}

template <class Q>
std::string change_between(const Q& one, const Q& two) {
  return one > Q{} && two > Q{} ? change_if_any(two / one) : std::string();
}

// --- verdicts

std::string verdict_line(const Report& report, const TerminalStyle& style) {
  const std::string lead = fmt::format("  {}  ", verdict_words(report.verdict, style.colour));
  return paragraph(lead, "      ", fmt::format("by {}: {}", printable(report.rules), printable(report.rules_title)), style.width) +
         paragraph("      ", "      ",
                   fmt::format("fingerprint {}; {}", report.fingerprint.substr(0, 16), printable(checks::in_words(report.sign_off))),
                   style.width);
}

std::string compared_heading(const Comparison& all, const TerminalStyle& style) {
  const Report& report = all.reports.front();
  std::string names;
  for (const Report& each : all.reports) names += (names.empty() ? "" : ", ") + printable(each.rules);
  std::string out = verdict_words(all.worst, style.colour) + (is_agreed(all) ? "\n" : "  the worst of several\n");
  const std::string piece = report.mark + (report.revision.empty() ? "" : " rev " + report.revision) +
                            (report.title.empty() ? "" : ", " + report.title);
  out += paragraph("    ", "    ", printable(piece), style.width);
  out += paragraph("    ", "    ", fmt::format("{}; rule sets side by side: {}", printable(report.file), names), style.width);
  out += paragraph("    ", "    ",
                   all.named_by_plan.empty()
                       ? std::string("the plan names no rule set")
                       : fmt::format("the plan names rule set {}: its cards and sheets go by that", printable(all.named_by_plan)),
                   style.width);
  out += "\nVerdicts\n";
  for (const Report& each : all.reports) out += verdict_line(each, style);
  out += "\n";
  for (const std::string& sentence : statement(all)) out += paragraph("", "", printable(sentence), style.width);
  return out;
}

// --- loads

std::string load_row(std::string_view label, Force one, Force two, const SideBySide& sides) {
  if (!(one > Force{}) && !(two > Force{})) return {};
  const auto up = [&](Force f) { return firstpick::print(f, sides.units(), Rounding::up); };
  return sides.row(label, up(one), up(two), change_between(one, two));
}

Force most_on_inserts(const loads::StageLoad& load) {
  Force most{};
  for (const loads::LoadSet& set : load.insert_loads) most = std::max(most, set.total);
  return most;
}

// Rules of inserts that are asked for this load; declared loads, gear and crane are not.
bool has_computed_inserts(const StageReport& stage) {
  return std::ranges::any_of(stage.findings, [](const Finding& finding) {
    const checks::Rule* rule = checks::rule_named(finding.rule);
    return rule && (rule->scope == checks::Scope::headed_insert || rule->scope == checks::Scope::loop_insert);
  });
}

std::string strength_row(std::string_view label, const std::optional<Stress>& one, const std::optional<Stress>& two,
                         const SideBySide& sides, Rounding rounding) {
  const auto told = [&](const std::optional<Stress>& s) { return s ? firstpick::print(*s, sides.units(), rounding) : "-"; };
  return one || two ? sides.row(label, told(one), told(two), one && two ? change_between(*one, *two) : "") : std::string();
}

std::string loads_of(const StageReport& one, const StageReport& two, const SideBySide& sides) {
  std::string out = sides.header("loads, and the strength that counts");
  if (one.load && two.load) {
    const auto &a = *one.load, &b = *two.load;
    out += load_row("weight", a.weight, b.weight, sides);
    out += load_row("form parts", a.attached, b.attached, sides);
    out += load_row("grip of the form", a.adhesion, b.adhesion, sides);
    const auto number = [](Ratio r) { return print_number(r.value(), 3, Rounding::up); };
    out += sides.row("dynamic factor", number(a.dynamic_factor), number(b.dynamic_factor),
                     change_between(a.dynamic_factor, b.dynamic_factor));
    out += load_row("load on the legs", a.total, b.total, sides);
    if (has_computed_inserts(one) || has_computed_inserts(two))
      out += load_row("on headed inserts and loops", most_on_inserts(a), most_on_inserts(b), sides);
  } else {
    out += paragraph("  ", "  ",
                     fmt::format("The loads are not known by {}.",
                                 one.load ? sides.other_name() : two.load ? sides.first_name() : "either"), sides.width());
  }
  if (one.hook && two.hook) out += load_row("on the crane", *one.hook, *two.hook, sides);
  out += strength_row("strength that counts", sides.first().usable_strength, sides.other().usable_strength, sides,
                      Rounding::down);
  return out + strength_row("strength required", one.required_strength, two.required_strength, sides, Rounding::up);
}

// --- uses

std::string_view mark_of_side(const std::optional<Finding>& side) {
  if (!side) return "-";
  switch (side->result) {
    case Result::pass: return "+";
    case Result::note: return ".";
    case Result::missing: return "?";
    case Result::fail: return "x";
  }
  return "?";
}

std::string use_of_side(const std::optional<Finding>& side) {
  if (!side) return "no finding";
  return fmt::format("{} {}", mark_of_side(side), side->utilization ? print_utilization(*side->utilization) : "-");
}

double most_used(const Pair& pair) {
  const auto use = [](const std::optional<Finding>& side) { return side ? side->utilization.value_or(0.0) : 0.0; };
  return std::max(use(pair.first), use(pair.other));
}

std::vector<const Pair*> to_tell(const StageContrast& stage, bool tells_all) {
  std::vector<const Pair*> pairs;
  constexpr double more = 1.0 + 1e-9;  // of equals the first, whatever their last bits
  for (const Pair& pair : stage.pairs) {
    const auto known = std::ranges::find_if(pairs, [&](const Pair* p) { return p->rule == pair.rule; });
    if (tells_all || known == pairs.end()) pairs.push_back(&pair);
    else if (most_used(pair) > more * most_used(**known)) *known = &pair;
  }
  return pairs;
}

std::string uses_of(const StageContrast& stage, const SideBySide& sides) {
  std::string out = sides.header(sides.tells_all() ? "used of what is allowed" : "used of what is allowed, worst subject");
  for (const Pair* pair : to_tell(stage, sides.tells_all()))
    out += sides.row(fmt::format("{}, {}", pair->rule, printable(pair->subject)), use_of_side(pair->first),
                     use_of_side(pair->other), pair->ratios ? change_if_any(pair->ratios->use) : "");
  return out;
}

// --- what parts them

std::string split_rows(const Pair& pair, const SideBySide& sides) {
  if (!pair.ratios || !pair.ratios->demand) return {};
  const auto& ratios = *pair.ratios;
  const auto figure = [&](const std::optional<checks::Figure>& f, Rounding r) { return checks::print(*f, sides.units(), r); };
  const auto label = [&](comparison::Part part, std::string_view words) {
    return fmt::format("  {}{}", words, ratios.largest == part ? " (largest)" : "");
  };
  return sides.row(label(comparison::Part::demand, "asked"), figure(pair.first->demand, Rounding::up),
                   figure(pair.other->demand, Rounding::up), change_in_words(*ratios.demand)) +
         sides.row(label(comparison::Part::nominal, "held, before the factor"), figure(pair.first->nominal, Rounding::down),
                   figure(pair.other->nominal, Rounding::down), change_in_words(*ratios.nominal)) +
         sides.row(label(comparison::Part::factor, "factor on what is held"), print_number(*pair.first->factor, 3, Rounding::up),
                   print_number(*pair.other->factor, 3, Rounding::up), change_in_words(*ratios.factor));
}

std::string together_in_words(const Pair& pair, const SideBySide& sides) {
  if (pair.first->together == pair.other->together) return {};
  const auto who = [&](const Finding& f) { return f.together.empty() ? f.subject + " alone" : f.together + " as one"; };
  return paragraph("    ", "    ",
                   fmt::format("What decides is {} by {}, {} by {}: asked and held are not of the same inserts.",
                               printable(who(*pair.first)), sides.first_name(), printable(who(*pair.other)),
                               sides.other_name()), sides.width());
}

std::string largest_in_words(const Pair& pair, const SideBySide& sides) {
  if (!pair.ratios || !pair.ratios->largest) return {};
  const auto& ratios = *pair.ratios;
  double alone = 1.0;
  std::string words;
  switch (*ratios.largest) {
    case comparison::Part::demand: alone = *ratios.demand, words = "what is asked"; break;
    case comparison::Part::nominal: alone = 1.0 / *ratios.nominal, words = "what the model of resistance gives"; break;
    case comparison::Part::factor: alone = *ratios.factor, words = "the factor on what is held"; break;
  }
  return paragraph("    ", "    ",
                   fmt::format("The largest part of the difference is {}: alone it makes the use {} times that by {}.", words,
                               fmt::format("{:.2f}", alone), sides.first_name()), sides.width());
}

std::string both_in_words(std::string_view assumption, const std::string& first, const std::string& other,
                          const SideBySide& sides) {
  return fmt::format("{}. {}: {}; {}: {}", assumption, sides.first_name(), printable(first), sides.other_name(),
                     printable(other));
}

std::string effect_rows(const Explained& one, const SideBySide& sides) {
  if (!one.pair.first || !one.pair.first->utilization) return {};
  if (one.effects.empty())
    return paragraph("    ", "    ",
                     fmt::format("No single assumption of {}, taken into {}, changes this use.", sides.other_name(),
                                 sides.first_name()), sides.width());
  std::string out = paragraph("    ", "    ",
                              fmt::format("By {} with one assumption of {} at a time it would be used:", sides.first_name(),
                                          sides.other_name()), sides.width());
  for (const Effect& effect : one.effects)
    out += paragraph("      ", "             ",
                     fmt::format("{} ({}) {}", print_utilization(effect.use), change_in_words(effect.ratio),
                                 both_in_words(effect.assumption, effect.first, effect.other, sides)), sides.width());
  return out;
}

std::string explained_text(const Explained& one, const SideBySide& sides) {
  const Pair& pair = one.pair;
  std::string out = sides.row(fmt::format("{}, {}", pair.rule, printable(pair.subject)), use_of_side(pair.first),
                              use_of_side(pair.other), pair.ratios ? change_in_words(pair.ratios->use) : "");
  if (pair.first && pair.other) {
    out += split_rows(pair, sides);
    out += together_in_words(pair, sides) + largest_in_words(pair, sides);
  }
  return out + effect_rows(one, sides);
}

std::string joined_names(const std::vector<std::string>& names) { return fmt::format("{}", fmt::join(names, ", ")); }

std::string said(const std::optional<Result>& result, const std::string& text) {
  if (!result) return "nothing";
  return text.empty() ? std::string(checks::word_for(*result)) : fmt::format("{} ({})", checks::word_for(*result), text);
}

std::string differences_text(const StageContrast& stage, const SideBySide& sides) {
  std::string out;
  for (const comparison::Difference& d : stage.differences) {
    out += paragraph("  - ", "    ",
                     fmt::format("{}, {}: {} by {}; {} by {}.", d.rule, printable(joined_names(d.subjects)),
                                 printable(said(d.first, d.first_text)), sides.first_name(),
                                 printable(said(d.other, d.other_text)), sides.other_name()), sides.width());
    out += paragraph("    > ", "      ",
                     d.turned_by.empty() ? std::string("no single assumption makes this difference")
                                         : "made by: " + joined_names(d.turned_by), sides.width());
  }
  return out.empty() ? out : "  Told by one rule set only, or told otherwise\n" + out;
}

std::string turned_text(const StageContrast& stage, const SideBySide& sides) {
  std::string out;
  for (const comparison::Turned& t : stage.turned)
    out += paragraph("  - ", "    ",
                     fmt::format("{} with {}", checks::word_for(t.verdict), both_in_words(t.assumption, t.first, t.other, sides)),
                     sides.width());
  if (out.empty())
    return stage.first == stage.other
               ? std::string()
               : paragraph("  ", "  ", fmt::format("No single assumption of {} gives this stage another verdict by {}.",
                                                   sides.other_name(), sides.first_name()), sides.width());
  return paragraph("  ", "  ",
                   fmt::format("{} by {} would be another verdict with one assumption of {}. A mixture is no code: this tells "
                               "what matters, not what may be done.", checks::word_for(stage.first), sides.first_name(),
                               sides.other_name()), sides.width()) + out;
}

std::string stage_section(const StageContrast& stage, const StageReport& one, const StageReport& two, const SideBySide& sides,
                          bool colour) {
  std::string out = "\n" + paragraph("", "  ", fmt::format("{}  {} by {}, {} by {}", checks::word_for(stage.kind),
                                                           verdict_words(stage.first, colour), sides.first_name(),
                                                           verdict_words(stage.other, colour), sides.other_name()),
                                     sides.width());
  out += loads_of(one, two, sides) + uses_of(stage, sides);
  if (stage.explained.empty())
    out += paragraph("  ", "  ", "What governs is used alike by both.", sides.width());
  else out += sides.header("what makes the difference");
  for (const Explained& explained : stage.explained) out += explained_text(explained, sides);
  return out + turned_text(stage, sides) + differences_text(stage, sides);
}

std::string contrast_text(const Comparison& all, const Contrast& contrast, const TerminalStyle& style) {
  const Report &first = all.reports.front(), &other = all.reports.at(contrast.other);
  const SideBySide sides(first, other, style);
  std::string out;
  if (all.contrasts.size() > 1) out += fmt::format("\n{} against {}\n", sides.other_name(), sides.first_name());
  for (std::size_t i = 0; i < contrast.stages.size(); ++i)
    out += stage_section(contrast.stages[i], first.stages.at(i), other.stages.at(i), sides, style.colour);
  return out;
}

// --- what each rests on

// What all rule sets say once, then what only some say, by rule set.
template <class ItemsOf>
std::string shared_list(std::string_view title, const Comparison& all, const TerminalStyle& style, ItemsOf items_of) {
  std::vector<std::vector<std::string>> items;
  for (const Report& report : all.reports) items.push_back(items_of(report));
  const auto is_in_all = [&](const std::string& item) {
    return std::ranges::all_of(items, [&](const auto& some) { return std::ranges::find(some, item) != some.end(); });
  };
  std::string out;
  const auto add = [&](const std::string& item) { out += paragraph("  - ", "    ", printable(item), style.width); };
  for (const std::string& item : items.front())
    if (is_in_all(item)) add(item);
  for (std::size_t i = 0; i < items.size(); ++i) {
    const bool has_own = !std::ranges::all_of(items[i], is_in_all);
    if (has_own) out += paragraph("  ", "  ", fmt::format("by {}:", printable(all.reports[i].rules)), style.width);
    for (const std::string& item : items[i])
      if (!is_in_all(item)) add(item);
  }
  return out.empty() ? out : fmt::format("\n{}\n{}", title, out);
}

std::vector<std::string> what_it_rests_on(const Report& report) {
  std::vector<std::string> items = {
      fmt::format("piece: {}, {} at nominal density", firstpick::print(report.volume, report.units),
                  firstpick::print(report.mass, report.units)),
      fmt::format("strength: {}", report.strength_basis.empty() ? "none shown" : report.strength_basis)};
  items.insert(items.end(), report.choices.begin(), report.choices.end());
  for (const std::string& id : report.overridden) items.push_back("the plant's own table replaces " + id);
  return items;
}

std::vector<std::string> from_memory(const Report& report) {
  std::vector<std::string> items;
  for (const Source& s : report.unconfirmed)
    items.push_back(fmt::format("{} = {}: {} ({})", s.id, s.value_text, s.what, citation(s)));
  return items;
}

}  // namespace

std::string comparison_text(const Comparison& comparison, const TerminalStyle& style) {
  std::string out = compared_heading(comparison, style);
  for (const Contrast& contrast : comparison.contrasts) out += contrast_text(comparison, contrast, style);
  out += shared_list("Rests on", comparison, style, what_it_rests_on);
  out += shared_list("From memory, to be confirmed by the engineer of record", comparison, style, from_memory);
  out += shared_list("Not checked by this version", comparison, style, [](const Report& report) { return report.not_checked; });
  out += shared_list("Cautions", comparison, style, [](const Report& report) { return report.cautions; });
  return out;
}

}  // namespace firstpick::output
