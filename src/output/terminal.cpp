#include "output/terminal.hpp"

#include <algorithm>
#include <map>
#include <vector>

#include <fmt/format.h>

#include "checks/lost_points.hpp"
#include "checks/reasons.hpp"
#include "checks/rule.hpp"
#include "checks/standing_texts.hpp"
#include "output/text_layout.hpp"
#include "output/verdict_words.hpp"
#include "record/diagnostic.hpp"
#include "version.hpp"

namespace firstpick::output {

namespace {

using checks::Finding;
using checks::Report;
using checks::Result;
using checks::StageReport;
using checks::Verdict;

std::string_view mark_of(Result result) {
  switch (result) {
    case Result::pass: return "+";
    case Result::note: return ".";
    case Result::missing: return "?";
    case Result::fail: return "x";
  }
  return "?";
}

std::string heading(const Report& report, const TerminalStyle& style) {
  std::string out = verdict_words(report.verdict, style.colour) + "\n";
  const std::string piece = report.mark + (report.revision.empty() ? "" : " rev " + report.revision) +
                            (report.title.empty() ? "" : ", " + report.title);
  out += paragraph("    ", "    ", printable(piece), style.width);
  out += paragraph("    ", "    ",
                   fmt::format("{}; rules {}; fingerprint {}", printable(report.file), printable(report.rules),
                               report.fingerprint.substr(0, 16)),
                   style.width);
  return out + paragraph("    ", "    ", printable(checks::in_words(report.sign_off)), style.width);
}

std::string joined(const std::vector<std::string>& words, std::size_t most) {
  std::string out;
  for (std::size_t i = 0; i < words.size() && i < most; ++i) out += (i == 0 ? "" : ", ") + words[i];
  if (words.size() > most) out += fmt::format(" and {} more", words.size() - most);
  return out;
}

std::string reason_lines(const Report& report, Result result, const TerminalStyle& style) {
  std::string out;
  for (const checks::Reason& reason : checks::reasons(report.stages, result)) {
    out += paragraph(fmt::format("  {} ", mark_of(result)), "    ",
                     fmt::format("{}: {}.", joined(reason.stages, 6), printable(reason.text)), style.width);
    if (!reason.remedy.empty()) out += paragraph("    > ", "      ", printable(reason.remedy), style.width);
    out += paragraph("      ", "      ",
                     fmt::format("[{}; {}]", joined(reason.rules, 3), printable(joined(reason.subjects, 6))),
                     style.width);
  }
  return out;
}

std::string why(const Report& report, const TerminalStyle& style) {
  const std::string stops = reason_lines(report, Result::fail, style) + reason_lines(report, Result::missing, style);
  const std::string notes = reason_lines(report, Result::note, style);
  std::string out = !stops.empty()                     ? "\nWhy\n" + stops
                    : report.verdict == Verdict::go ? "\nEvery mandatory rule was evaluated and passed.\n"
                                                    : "\nNothing was evaluated.\n";
  if (!notes.empty()) out += "\nNoted\n" + notes;
  return out;
}

std::string cranes_in_words(const StageReport& stage) {
  if (stage.cranes.size() < 2) return "crane " + printable(stage.crane);
  std::string words = "cranes";
  for (const auto& crane : stage.cranes) words += (words == "cranes" ? " " : " and ") + printable(crane.id);
  return words;
}

std::string load_lines(const StageReport& stage, const Report& report, const TerminalStyle& style) {
  if (!stage.load) return {};
  const auto up = [&](const auto& q) { return firstpick::print(q, report.units, Rounding::up); };
  const auto& load = *stage.load;
  std::string text = fmt::format("weight {}", up(load.weight));
  if (load.attached > Force{}) text += fmt::format(" + form parts {}", up(load.attached));
  text += fmt::format(", x {} dynamic", print_number(load.dynamic_factor.value(), 3, Rounding::up));
  if (load.adhesion > Force{}) text += fmt::format(", + grip of the form {}", up(load.adhesion));
  text += fmt::format(": {} on the legs", up(load.total));
  // Of a strip the load on the hook is the pull not to exceed, below: one number, not one rounded up and one down.
  const bool told_below = stage.kind == plan::StageKind::strip;
  if (stage.hook && !told_below) text += fmt::format("; {} on the crane", up(*stage.hook));
  if (!stage.hook && !told_below)
    for (const auto& crane : stage.cranes)
      if (crane.hook) text += fmt::format("; {} on crane {}", up(*crane.hook), printable(crane.id));
  if (stage.tilt) text += fmt::format("; hangs {} out of level", up(*stage.tilt));
  std::string out = paragraph("  ", "  ", text + ".", style.width);
  if (stage.pull_not_to_exceed)
    out += paragraph("  ", "  ",
                     fmt::format("Load on the hook, and pull not to exceed: {} on the crane's scale, block included. {}",
                                 firstpick::print(*stage.pull_not_to_exceed, report.units, Rounding::down),
                                 checks::when_it_sticks),
                     style.width);
  if (!stage.hook && stage.kind == plan::StageKind::strip) {
    std::string pulls;
    for (const auto& crane : stage.cranes)
      if (crane.hook)
        pulls += fmt::format("{}{} on crane {}", pulls.empty() ? "" : ", ",
                             firstpick::print(*crane.hook, report.units, Rounding::down), printable(crane.id));
    if (!pulls.empty())
      out += paragraph("  ", "  ",
                       fmt::format("Load on each hook, and pull not to exceed on its scale: {}, block included. {}", pulls,
                                   checks::when_it_sticks),
                       style.width);
  }
  return out;
}

std::string turn_lines(const StageReport& stage, const Report& report, const TerminalStyle& style) {
  if (!stage.turn) return {};
  const auto& turn = *stage.turn;
  const auto angle = [&](Angle a) { return firstpick::print(a, report.units); };
  std::string text = fmt::format("turned {} from {} to {}: the hook pulls most, {}, at {}", turn.how, angle(turn.from),
                                 angle(turn.to), firstpick::print(turn.pull, report.units, Rounding::up),
                                 angle(turn.pull_at));
  if (turn.tail_pull)
    text += fmt::format(", the second hook {} at {}", firstpick::print(*turn.tail_pull, report.units, Rounding::up),
                        angle(turn.tail_at));
  if (turn.balance) text += fmt::format("; past {} the hook is slack and it turns by itself", angle(*turn.balance));
  return paragraph("  ", "  ", text + ".", style.width);
}

// The worst of them; all of them where every finding is asked for.
std::string loss_lines(const StageReport& stage, UnitSystem units, const TerminalStyle& style) {
  std::string out;
  for (const checks::PointLoss& loss : stage.losses) {
    const bool holds = loss.use && *loss.use <= 1.0;
    out += paragraph("  ", "  ",
                     fmt::format("{}{}{}.", out.empty() ? "If one point lets go: " : "", printable(checks::in_words(loss, units)),
                                 holds ? "" : loss.use ? ": it does not hold" : ""),
                     style.width);
    if (!style.all_findings) break;
  }
  return out;
}

constexpr std::size_t subject_columns = 14, rule_columns = 23, figure_columns = 12, use_columns = 8;
constexpr std::size_t row_columns = 4 + subject_columns + 1 + rule_columns + 2 * (1 + figure_columns) + 1 + use_columns;

std::string row_header(std::string_view subject, const TerminalStyle& style) {
  if (style.width < row_columns) return {};
  return fmt::format("    {} {} {} {} {}\n", padded(subject, subject_columns), padded("rule", rule_columns),
                     padded_left("demand", figure_columns), padded_left("capacity", figure_columns),
                     padded_left("used", use_columns));
}

// In columns where everything fits, else as a sentence: a number or a name cut short would be another one.
std::string row(const Finding& f, const Report& report, const TerminalStyle& style) {
  const auto cell = [&](const std::optional<checks::Figure>& figure, Rounding rounding) {
    return figure ? checks::print(*figure, report.units, rounding) : std::string("-");
  };
  const std::string subject = printable(f.subject);
  const std::string demand = cell(f.demand, Rounding::up), capacity = cell(f.capacity, Rounding::down);
  const std::string use = f.utilization ? print_utilization(*f.utilization) : "-";
  const bool fits = style.width >= row_columns && columns_of(subject) <= subject_columns &&
                    columns_of(demand) <= figure_columns && columns_of(capacity) <= figure_columns &&
                    columns_of(use) <= use_columns;
  if (!fits)
    return paragraph(fmt::format("  {} ", mark_of(f.result)), "      ",
                     fmt::format("{} {}: demand {}, capacity {}, used {}", subject, f.rule, demand, capacity, use),
                     style.width);
  return fmt::format("  {} {} {} {} {} {}\n", mark_of(f.result), padded(subject, subject_columns),
                     padded(f.rule, rule_columns), padded_left(demand, figure_columns),
                     padded_left(capacity, figure_columns), padded_left(use, use_columns));
}

// Worse first: result, then utilization.
bool governs(const Finding& a, const Finding& b) {
  if (a.result != b.result) return a.result > b.result;
  return a.utilization.value_or(-1.0) > b.utilization.value_or(-1.0);
}

// For each subject of each kind (insert, leg, crane, piece) the finding that governs it.
std::vector<const Finding*> governing(const StageReport& stage) {
  std::vector<std::pair<std::string, const Finding*>> best;  // in order of first appearance
  for (const Finding& f : stage.findings) {
    const checks::Rule* rule = checks::rule_named(f.rule);
    if (!f.utilization && f.result <= Result::note) continue;
    const bool gate = rule && (rule->scope == checks::Scope::piece || rule->scope == checks::Scope::gear);
    if (gate && !f.demand && !f.capacity) continue;  // "Why" has said it, and there is no number to show
    const bool insert = rule && (rule->scope == checks::Scope::insert || rule->scope == checks::Scope::headed_insert ||
                                 rule->scope == checks::Scope::rated_insert ||
                                 rule->scope == checks::Scope::loop_insert || rule->scope == checks::Scope::plate_insert);
    const bool leg = rule && (rule->scope == checks::Scope::leg || rule->scope == checks::Scope::beam ||
                              rule->scope == checks::Scope::sheave);
    const std::string key = (insert ? "insert " : leg ? "leg " : std::string(f.rule) + " ") + f.subject;
    const auto known = std::ranges::find(best, key, &std::pair<std::string, const Finding*>::first);
    if (known == best.end()) best.emplace_back(key, &f);
    else if (governs(f, *known->second)) known->second = &f;
  }
  std::vector<const Finding*> rows;
  for (const auto& [key, finding] : best) rows.push_back(finding);
  return rows;
}

// Each row has its own worst load set and sharing, in a turn its own angle.
std::string situations_of(const std::vector<const Finding*>& rows, const TerminalStyle& style) {
  std::vector<std::pair<std::string, std::string>> at;  // situation, subjects with their rules
  for (const Finding* f : rows) {
    if (f->situation.empty() || !(f->utilization.value_or(0.0) > 0.0)) continue;
    auto known = std::ranges::find(at, f->situation, &std::pair<std::string, std::string>::first);
    if (known == at.end()) known = at.insert(at.end(), {f->situation, ""});
    known->second += fmt::format("{}{} {}", known->second.empty() ? "" : ", ", f->subject, f->rule);
  }
  std::string out;
  for (const auto& [situation, who] : at)
    out += paragraph("  worst ", "    ", fmt::format("{}: {}", printable(situation), printable(who)), style.width);
  return out;
}

std::string stage_text(const StageReport& stage, const Report& report, const TerminalStyle& style) {
  std::string out = fmt::format("\n{}  {}\n", checks::word_for(stage.kind), verdict_words(stage.verdict, style.colour));
  out += paragraph("  ", "  ",
                   fmt::format("rigging {}, {}", printable(stage.rigging), cranes_in_words(stage)), style.width);
  out += load_lines(stage, report, style);
  out += turn_lines(stage, report, style);
  out += loss_lines(stage, report.units, style);
  out += row_header(style.all_findings ? "on" : "governs", style);
  if (style.all_findings)
    for (const Finding& f : stage.findings) out += row(f, report, style);
  else
    for (const Finding* f : governing(stage)) out += row(*f, report, style);
  out += situations_of(governing(stage), style);
  return out;
}

std::string list(std::string_view title, const std::vector<std::string>& items, const TerminalStyle& style) {
  if (items.empty()) return {};
  std::string out = fmt::format("\n{}\n", title);
  for (const std::string& item : items) out += paragraph("  - ", "    ", printable(item), style.width);
  return out;
}

std::string rests_on(const Report& report, const TerminalStyle& style) {
  std::vector<std::string> items = {
      fmt::format("piece: {}, {} at nominal density", firstpick::print(report.volume, report.units),
                  firstpick::print(report.mass, report.units)),
      fmt::format("strength: {}", report.strength_basis.empty() ? "none shown" : report.strength_basis)};
  for (const std::string& choice : report.choices) items.push_back(choice);
  for (const std::string& id : report.overridden) items.push_back("the plant's own table replaces " + id);
  std::string out = list("Rests on", items, style);

  std::vector<std::string> unconfirmed;
  for (const Source& s : report.unconfirmed)
    unconfirmed.push_back(fmt::format("{} = {}: {} ({})", s.id, s.value_text, s.what, citation(s)));
  return out + list("From memory, to be confirmed by the engineer of record", unconfirmed, style);
}

}  // namespace

std::string terminal(const Report& report, const TerminalStyle& style) {
  std::string out = heading(report, style) + why(report, style);
  for (const StageReport& stage : report.stages) out += stage_text(stage, report, style);
  if (style.steps) out += steps(report, style.width);
  out += rests_on(report, style);
  out += list("Not checked by this version", report.not_checked, style);
  out += list("Cautions", report.cautions, style);
  return out;
}

}  // namespace firstpick::output
