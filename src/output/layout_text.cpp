#include <fmt/format.h>

#include "output/layout.hpp"
#include "output/text_layout.hpp"
#include "record/diagnostic.hpp"
#include "units/print.hpp"

namespace firstpick::output {

namespace {

using layout::LayoutReport;
using layout::Use;

constexpr std::size_t most_rules = 8;  // of a stage; the others are in --json

std::string shown(const std::optional<double>& use) { return use ? print_utilization(*use) : "-"; }

// "strip: insert-breakout, P1".
std::string name_of(const Use& use, const LayoutReport& report) {
  return fmt::format("{}: {}, {}", checks::word_for(report.stages.at(use.stage).kind), use.rule, printable(use.subject));
}

std::string governing_of(const LayoutReport& report, std::size_t width) {
  const auto line = [&](std::string_view when, const std::optional<Use>& use) {
    if (!use) return paragraph(fmt::format("  {}", padded(when, 18)), std::string(24, ' '), "no number: see below", width);
    return paragraph(fmt::format("  {}{}  ", padded(when, 18), padded_left(shown(use->value), 5)), std::string(25, ' '),
                     name_of(*use, report), width);
  };
  std::string out = "\n  governing use of all stages\n";
  out += line("as given", report.before);
  out += line(report.moved ? "with picks moved" : "nothing better", report.after);
  if (report.barred_before != 0 || report.barred_after != 0)
    out += paragraph("  ", "  ",
                     fmt::format("Findings that are missing, or fail without a number: {} as given, {} after.",
                                 report.barred_before, report.barred_after), width);
  if (report.not_of_position)
    out += paragraph("  ", "  ", fmt::format("No move changes {}: {}.", name_of(*report.not_of_position, report),
                                             shown(report.not_of_position->value)), width);
  return out;
}

std::string places_of(const LayoutReport& report) {
  std::string out = fmt::format("\n  {}{}{}{}{}\n", padded("insert", 12), padded_left("x", 18), padded_left("y", 18),
                                padded_left("z", 13), padded_left("moves", 17));
  const auto column = [&](Length length) { return print(length, report.units); };
  for (const layout::MovedInsert& insert : report.inserts) {
    const auto row = [&](std::string_view first, std::string_view when, const Position& p, const std::string& by) {
      out += fmt::format("  {}{}{}{}{}{}\n", padded(first, 6), padded(when, 6), padded_left(column(p.x), 18),
                         padded_left(column(p.y), 18), padded_left(column(p.z), 13), padded_left(by, 17));
      while (out.ends_with(" \n")) out.erase(out.size() - 2, 1);
    };
    row(printable(insert.id), "from", insert.before, "");
    row("", "to", insert.after, column(insert.by));
  }
  return out;
}

std::string legs_of(const LayoutReport& report, std::size_t width) {
  std::string out = "\n  legs\n";
  for (const layout::ChangedLeg& leg : report.legs)
    out += paragraph("  ", "      ", fmt::format("{}, leg to {}: {}, was {}", printable(leg.rigging), printable(leg.to),
                                                 print(leg.after, report.units), print(leg.before, report.units)), width);
  return out;
}

std::string strength_of(const layout::StageLine& line, UnitSystem units) {
  const std::string value = print(line.strength.value, units, Rounding::down);
  if (line.strength.shown) return fmt::format("with the {} that the plan's test shows", value);
  return fmt::format("no test in the plan: with the {} that {}", value,
                     line.strength.stated ? "this stage requires" : "the rule set requires at least, as the plan states none");
}

std::string stage_of(const layout::StageLine& line, const LayoutReport& report, std::size_t width) {
  std::string out = paragraph("\n", "  ", fmt::format("{}, rigging {}; {}", checks::word_for(line.kind),
                                                      printable(line.rigging), strength_of(line, report.units)), width);
  if (!line.rules.empty()) {
    out += fmt::format("  {}{}  {}{}  {}\n", padded("rule", 26), padded_left("before", 8), padded("", 14),
                       padded_left("after", 7), "");
    while (out.ends_with(" \n")) out.erase(out.size() - 2, 1);
    for (std::size_t i = 0; i < line.rules.size() && i < most_rules; ++i) {
      const auto& [before, after] = line.rules[i];
      std::string row = fmt::format("  {}{}  {}{}  {}", padded(after.rule, 26), padded_left(shown(before.value), 8),
                                    padded(printable(before.subject), 14), padded_left(shown(after.value), 7),
                                    printable(after.subject));
      out += row + "\n";
    }
    if (line.rules.size() > most_rules)
      out += fmt::format("  and {} more, less used\n", line.rules.size() - most_rules);
  }
  for (const layout::Judged& finding : line.not_mended)
    out += paragraph(finding.result == checks::Result::fail ? "  x " : "  ? ", "    ",
                     fmt::format("{}, {}{}{}", finding.rule, printable(finding.subject), finding.text.empty() ? "" : ": ",
                                 printable(finding.text)), width);
  return out;
}

}  // namespace

std::string layout_text(const LayoutReport& report, const std::string& written, std::size_t width) {
  std::string out = paragraph("", "    ",
                              fmt::format("{}{}: where to pick; rules {}; fingerprint {}", printable(report.mark),
                                          report.revision.empty() ? "" : " rev " + printable(report.revision), report.rules,
                                          report.fingerprint.substr(0, 16)), width);
  if (!report.drawn_is_allowed)
    out += paragraph("  ", "  ", "The plan as given is not within what its [layout] allows.", width);
  if (!report.moved)
    out += paragraph("  ", "  ", fmt::format("The picks stay where they are: of {} layouts judged none is better{}.",
                                             report.layouts_judged,
                                             report.drawn_is_allowed ? "" : " that can be written"), width);
  out += governing_of(report, width);
  if (!report.inserts.empty()) out += places_of(report);
  if (!report.legs.empty()) out += legs_of(report, width);
  for (const layout::StageLine& line : report.stages) out += stage_of(line, report, width);
  out += "\n" + paragraph("", "  ", fmt::format("firstpick check says {} of the plan as given{}{}.",
                                                checks::word_for(report.verdict_before),
                                                report.moved ? ", and of the plan with the picks moved " : "",
                                                report.moved ? checks::word_for(report.verdict_after) : ""), width);
  if (!written.empty()) out += paragraph("", "  ", fmt::format("Written to {}.", printable(written)), width);
  else if (report.moved) out += paragraph("", "  ", "Nothing is written: -o FILE writes the plan.", width);
  out += paragraph("", "", layout_caution, width);
  return out;
}

}  // namespace firstpick::output
