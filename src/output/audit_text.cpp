#include <algorithm>

#include <fmt/format.h>

#include "checks/standing_texts.hpp"
#include "output/audit.hpp"
#include "output/csv_cell.hpp"
#include "output/text_layout.hpp"
#include "output/verdict_words.hpp"
#include "record/diagnostic.hpp"

namespace firstpick::output {

namespace {

using audit::Audit;
using audit::Entry;
using audit::Standing;
using checks::SignOffState;

std::string mark_of(Standing standing) {
  switch (standing) {
    case Standing::go: return verdict_words(checks::Verdict::go);
    case Standing::hold: return verdict_words(checks::Verdict::hold);
    case Standing::no_go: return verdict_words(checks::Verdict::no_go);
    case Standing::broken: return "(!) BROKEN";
  }
  return "(!) BROKEN";
}

std::string joined(const std::vector<std::string>& words, std::string_view between) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : std::string(between)) + word;
  return out;
}

const std::string margin(11, ' ');

std::string entry_text(const Entry& entry, const TerminalStyle& style) {
  const auto more = [&](const std::string& text) { return paragraph(margin, margin + "  ", printable(text), style.width); };
  std::string name = entry.file;
  if (!entry.mark.empty()) name += ": " + entry.mark + (entry.revision.empty() ? "" : " rev " + entry.revision);
  std::string out = paragraph(padded(mark_of(entry.standing), 10) + " ", margin, printable(name), style.width);
  std::string governs = entry.rule;
  if (!entry.subject.empty()) governs += ", " + entry.subject;
  if (entry.utilization) governs += ", used " + print_utilization(*entry.utilization);
  const std::string reason = reason_of(entry);
  out += more(reason.empty() ? "governs: " + governs : governs.empty() ? reason : fmt::format("{} [{}]", reason, governs));
  if (entry.standing == Standing::broken) return out;
  if (!entry.bending.empty()) out += more("noted: " + joined(entry.bending, "; "));
  if (entry.missing.size() > 1 || (entry.missing.size() == 1 && entry.standing != Standing::hold))
    out += more(fmt::format("missing: {}", joined(entry.missing, "; ")));
  out += more(fmt::format("{}; {}", age_of(entry), checks::in_words(entry.sign_off)));
  if (!entry.unconfirmed.empty() || !entry.overridden.empty())
    out += more(fmt::format("{} values from memory, unconfirmed; {} table entries replaced by the plant's own",
                            entry.unconfirmed.size(), entry.overridden.size()));
  if (!entry.same_piece.empty()) out += more("same piece and revision, another plan: " + joined(entry.same_piece, ", "));
  return out;
}

std::string list(std::string_view title, const std::vector<std::string>& items, const TerminalStyle& style) {
  if (items.empty()) return {};
  std::string out = fmt::format("\n{}\n", title);
  for (const std::string& item : items) out += paragraph("  - ", "    ", printable(item), style.width);
  return out;
}

// What was signed is the text of the plan: it may go with it under another name.
std::string orphan_in_words(const Audit::Orphan& orphan) {
  if (!orphan.plan.empty())
    return fmt::format("a sign-off without its plan: {}; it is of the text of {}, which counts as not signed: rename the "
                       "sign-off as that plan is named, or sign the plan again",
                       orphan.file, orphan.plan);
  return fmt::format("a sign-off without its plan: {}; if the plan was renamed, rename the sign-off with it; if it was "
                     "changed too, sign it again; if it is gone, delete the sign-off",
                     orphan.file);
}

}  // namespace

std::string reason_of(const Entry& entry) {
  if (entry.standing != Standing::broken || entry.faults.empty()) return entry.reason;
  const Diagnostic& first = entry.faults.front();
  std::string text = first.file;
  if (first.place.line > 0) text += fmt::format(":{}:{}", first.place.line, first.place.column);
  text += ": " + first.what;
  if (entry.faults.size() > 1) text += fmt::format(" (and {} more)", entry.faults.size() - 1);
  return text;
}

std::string age_of(const Entry& entry) {
  if (entry.tested.empty()) return "no strength test";
  if (!entry.evidence_age_days) return fmt::format("tested {}, after this audit", entry.tested);
  return fmt::format("tested {}, {:.1f} days ago{}", entry.tested, *entry.evidence_age_days,
                     entry.evidence_run_out ? ", run out since " + entry.evidence_until : std::string());
}

std::string change_in_words(const audit::Change& change) {
  std::string text = fmt::format("{}: {}", word_for(change.kind), change.file);
  if (change.kind == audit::Change::Kind::changed) return fmt::format("{}, still {}: {}", text, change.now, joined(change.what, "; "));
  if (!change.before.empty()) text += ", was " + change.before;
  if (!change.now.empty()) text += ", is " + change.now;
  return text + (change.what.empty() ? "" : ": " + joined(change.what, "; "));
}

std::string summary_of(const Audit& audit) {
  return fmt::format("{} plans: {} NO-GO, {} broken, {} HOLD, {} GO", audit.entries.size(),
                     count_of(audit, Standing::no_go), count_of(audit, Standing::broken),
                     count_of(audit, Standing::hold), count_of(audit, Standing::go));
}

std::string beside_of(const Audit& audit) {
  const auto counted = [](std::size_t count, std::string_view word) {
    return fmt::format("{} {}{}", count, word, count == 1 ? "" : "s");
  };
  return fmt::format("{}, {}, {}", counted(audit.shift_files, "shift file"), counted(audit.strength_files, "strength file"),
                     counted(audit.sign_offs, "sign-off"));
}

std::vector<std::string> warnings_of(const Audit& audit) {
  std::vector<std::string> all;
  const auto tell = [&](std::size_t count, std::string_view words) {
    if (count > 0) all.push_back(fmt::format("{} {}", count, words));
  };
  const auto of = [&](auto&& predicate) {
    return static_cast<std::size_t>(std::ranges::count_if(audit.entries, predicate));
  };
  const auto in_state = [&](SignOffState::Kind kind) {
    return of([=](const Entry& e) { return e.standing != Standing::broken && e.sign_off.kind == kind; });
  };
  tell(in_state(SignOffState::Kind::changed), "changed since sign-off");
  tell(in_state(SignOffState::Kind::faulty), "with a sign-off that cannot be read");
  tell(in_state(SignOffState::Kind::none), "not signed");
  tell(of([](const Entry& e) { return !e.missing.empty(); }), "with evidence missing");
  tell(of([](const Entry& e) { return !e.bending.empty(); }), "that may crack, or whose bending is checked elsewhere");
  tell(of([](const Entry& e) { return e.evidence_run_out; }), "with a strength test that has run out by now: GO was for the lift of its plan");
  tell(of([](const Entry& e) { return !e.unconfirmed.empty(); }), "on values from memory that nobody has confirmed");
  tell(of([](const Entry& e) { return !e.overridden.empty(); }), "with table entries of the plant's own");
  tell(of([](const Entry& e) { return !e.same_piece.empty(); }), "with another plan of the same piece and revision");
  for (const audit::Audit::Orphan& orphan : audit.orphans) all.push_back(orphan_in_words(orphan));
  for (const std::string& folder : audit.unread) all.push_back("not looked into: " + folder);
  return all;
}

std::string audit_text(const Audit& audit, const TerminalStyle& style) {
  std::string out = paragraph("", "    ", "Audit of " + printable(audit.folder), style.width);
  out += paragraph("    ", "    ", printable("made " + audit.made + "; " + summary_of(audit)), style.width);
  out += paragraph("    ", "    ", "beside them, not judged here: " + beside_of(audit), style.width);
  out += list("Look at", warnings_of(audit), style);
  if (!audit.since.empty()) {
    std::vector<std::string> changes;
    for (const audit::Change& change : audit.changes)
      changes.push_back(change_in_words(change));
    if (changes.empty()) changes.emplace_back("nothing");
    out += list("Changed since " + printable(audit.since), changes, style);
  }
  std::vector<const Entry*> worst_first;
  for (const Entry& entry : audit.entries) worst_first.push_back(&entry);
  const auto rank = [](const Entry* e) {
    switch (e->standing) {
      case Standing::no_go: return 0;
      case Standing::broken: return 1;
      case Standing::hold: return 2;
      case Standing::go: return 3;
    }
    return 0;
  };
  std::ranges::stable_sort(worst_first, {}, rank);
  out += "\nPlans, worst first\n";
  for (const Entry* entry : worst_first) out += entry_text(*entry, style);
  out += list("Not checked by this version", audit.not_checked, style);
  return out + list("Cautions", audit.cautions, style);
}

std::string audit_csv(const Audit& audit) {
  std::string out = csv_row({"file", "verdict", "mark", "revision", "title", "engineer", "rules", "rule", "subject",
                             "utilization", "reason", "remedy", "bending", "missing", "unconfirmed", "replaced", "tested",
                             "evidence age days", "sign-off", "same piece", "fingerprint", "caution"});
  for (const Entry& e : audit.entries)
    out += csv_row({e.file, std::string(word_for(e.standing)), e.mark, e.revision, e.title, e.engineer, e.rules, e.rule,
                    e.subject, e.utilization ? fmt::format("{:.4f}", *e.utilization) : "", reason_of(e), e.remedy,
                    joined(e.bending, "; "), joined(e.missing, "; "), joined(e.unconfirmed, "; "), joined(e.overridden, "; "), e.tested,
                    e.evidence_age_days ? fmt::format("{:.2f}", *e.evidence_age_days) : "",
                    e.standing == Standing::broken ? "" : checks::in_words(e.sign_off), joined(e.same_piece, "; "),
                    e.fingerprint, std::string(checks::not_permission)});
  return out;
}

}  // namespace firstpick::output
