#include "output/board_text.hpp"

#include <fmt/format.h>

#include "checks/standing_texts.hpp"
#include "output/csv_cell.hpp"
#include "output/text_layout.hpp"
#include "output/verdict_words.hpp"

namespace firstpick::output {

namespace {

using board::Board;
using board::Line;
using checks::Verdict;

constexpr std::size_t number_columns = 3, verdict_columns = 10;
const std::string margin(number_columns + 1 + verdict_columns + 1, ' ');

std::string heading(const Board& board, const TerminalStyle& style) {
  std::string out = paragraph("", "    ", "Board of " + printable(board.plant), style.width);
  out += paragraph(
      "    ", "    ",
      fmt::format("made {}; shift {} to {}, {}", clock::words_for_moment(board.zone, board.made_utc_s),
                  clock::words_for_moment(board.zone, board.starts_utc_s),
                  clock::words_for_moment(board.zone, board.ends_utc_s), printable(board.zone.name)),
      style.width);
  out += paragraph("    ", "    ",
                   fmt::format("{}; pieces: {} GO, {} HOLD, {} NO-GO", printable(board.file),
                               pieces_with(board, Verdict::go), pieces_with(board, Verdict::hold),
                               pieces_with(board, Verdict::no_go)),
                   style.width);
  return out;
}

std::string name_of(const Line& line) {
  std::string name = line.mark.empty() ? line.plan_file : line.mark;
  if (!line.revision.empty()) name += " rev " + line.revision;
  return name;
}

}  // namespace

std::string signature_of(const board::Judged& judged) {
  const bool told_already = judged.rule == "changed-since-sign-off";
  if (!judged.checked || told_already || judged.sign_off.kind == checks::SignOffState::Kind::none) return {};
  return checks::in_words(judged.sign_off);
}

namespace {

std::string slow_of(const Board& board, const board::Judged& judged) {
  const std::string slow = slow_words_for(judged.expected, board.zone, board.made_utc_s);
  return slow.empty() ? slow : "; " + slow;
}

std::string line_text(const Board& board, const Line& line, std::size_t number, const TerminalStyle& style) {
  const board::Judged& judged = line.judged;
  const std::string plain = verdict_words(line.judged.verdict);
  std::string first =
      padded_left(std::to_string(number), number_columns) + " " + padded(plain, verdict_columns) + " ";
  std::string text = printable(name_of(line)) + ": " + printable(pieces_in_words(line));
  if (!line.form.empty()) text += ", " + printable(line.form);
  if (line.priority) text += fmt::format(", priority {}", *line.priority);
  std::string out = paragraph(first, margin, text, style.width);
  if (style.colour) out.replace(out.find(plain), plain.size(), verdict_words(line.judged.verdict, true));
  const std::string expected = words_for(judged.expected, board.zone, board.made_utc_s);
  if (!expected.empty())
    out += paragraph(margin, margin,
                     fmt::format("{}{}: a prediction by '{}'; never a reason to lift", expected, slow_of(board, judged),
                                 printable(judged.expected.curve)),
                     style.width);
  if (!judged.reason.empty()) {
    std::string where = judged.rule;
    if (!judged.subject.empty()) where += "; " + judged.subject;
    if (judged.more > 0)
      where += fmt::format("; and {} more rule{}", judged.more, judged.more == 1 ? "" : "s");
    out += paragraph(margin, margin, fmt::format("{} [{}]", printable(judged.reason), printable(where)),
                     style.width);
  }
  if (!judged.remedy.empty())
    out += paragraph(margin + "> ", margin + "  ", printable(judged.remedy), style.width);
  if (judged.verdict == Verdict::go)
    out += paragraph(margin, margin, printable(judged.evidence), style.width);
  for (const std::string& note : judged.notes)
    out += paragraph(margin + "! ", margin + "  ", printable(note), style.width);
  if (const std::string signature = signature_of(judged); !signature.empty())
    out += paragraph(margin, margin, printable(signature), style.width);
  return out;
}

std::string list(std::string_view title, const std::vector<std::string>& items, const TerminalStyle& style) {
  if (items.empty()) return {};
  std::string out = fmt::format("\n{}\n", title);
  for (const std::string& each : items) out += paragraph("  - ", "    ", printable(each), style.width);
  return out;
}

std::string number_text(const std::optional<Stress>& stress) {
  return stress ? fmt::format("{:.3f}", in(MPa, *stress)) : "";
}

}  // namespace

std::string board_text(const Board& board, const TerminalStyle& style) {
  std::string out = heading(board, style) + "\n";
  std::size_t number = 0;
  for (const Line& line : board.lines) out += line_text(board, line, ++number, style);
  std::vector<std::string> unconfirmed, replaced;
  for (const Source& s : board.unconfirmed)
    unconfirmed.push_back(fmt::format("{} = {}: {} ({})", s.id, s.value_text, s.what, citation(s)));
  for (const std::string& id : board.overridden) replaced.push_back("the plant's own table replaces " + id);
  out += list("Rests on", board.choices, style) + list("Replaced", replaced, style);
  out += list("From memory, to be confirmed by the engineer of record", unconfirmed, style);
  return out + list("Not checked", board.not_checked, style) + list("Cautions", board.cautions, style);
}

std::string board_csv(const Board& board) {
  std::string out = csv_row({"order",       "verdict",  "mark",       "revision",
                             "serial",      "form",     "priority",   "expected (prediction)",
                             "rule",        "subject",  "reason",     "remedy",
                             "other rules", "evidence", "usable MPa", "required MPa",
                             "plan",        "pour",     "made",       "plant",
                             "sign-off",    "slow mix (prediction)", "notes",
                             "fingerprint", "caution"});
  std::size_t number = 0;
  for (const Line& line : board.lines) {
    ++number;
    const board::Judged& judged = line.judged;
    for (std::size_t piece = 0; piece < line.count; ++piece)
      out += csv_row({std::to_string(number),
                      std::string(checks::word_for(judged.verdict)),
                      line.mark,
                      line.revision,
                      serial_of(line, piece),
                      line.form,
                      line.priority ? std::to_string(*line.priority) : "",
                      words_for(judged.expected, board.zone, board.made_utc_s),
                      judged.rule,
                      judged.subject,
                      judged.reason,
                      judged.remedy,
                      std::to_string(judged.more),
                      judged.evidence,
                      number_text(judged.usable),
                      number_text(judged.required),
                      line.plan_file,
                      line.pour_file,
                      clock::iso_text(board.zone, board.made_utc_s),
                      board.plant,
                      judged.checked ? checks::in_words(judged.sign_off) : "",
                      slow_words_for(judged.expected, board.zone, board.made_utc_s),
                      fmt::format("{}", fmt::join(judged.notes, "; ")),
                      line.rests_on.answer,
                      std::string(checks::not_permission)});
  }
  return out;
}

}  // namespace firstpick::output
