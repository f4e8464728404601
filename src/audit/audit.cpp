#include "audit/audit.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <utility>

#include <fmt/format.h>

namespace firstpick::audit {

namespace {

using checks::Finding;
using checks::Result;

constexpr double seconds_in_a_day = 86400.0;

// Under each reason the rules that miss it: one test that was not made is missing for many of them.
class Missing {
 public:
  void add(const Finding& finding) {
    auto known = std::ranges::find(all_, finding.text, &std::pair<std::string, std::vector<std::string>>::first);
    if (known == all_.end()) known = all_.insert(all_.end(), {finding.text, {}});
    std::string rule(finding.rule);
    if (std::ranges::find(known->second, rule) == known->second.end()) known->second.push_back(std::move(rule));
  }
  std::vector<std::string> in_words() const {
    std::vector<std::string> words;
    for (const auto& [text, rules] : all_) words.push_back(fmt::format("{}: {}", fmt::join(rules, ", "), text));
    return words;
  }

 private:
  std::vector<std::pair<std::string, std::vector<std::string>>> all_;
};

// A fail without a number outranks one with; among what passes the highest utilization governs, and no note: its number
// is held against nothing.
double weight(const Finding& f) {
  if (f.result == Result::note) return -1.0;
  return f.utilization.value_or(f.result == Result::fail ? std::numeric_limits<double>::infinity() : -1.0);
}

bool outranks(const Finding& a, const Finding& b) {
  const auto rank = [](const Finding& f) { return f.result == Result::note ? Result::pass : f.result; };
  if (rank(a) != rank(b)) return rank(a) > rank(b);
  return weight(a) > weight(b);
}

}  // namespace

std::string_view word_for(Standing standing) {
  switch (standing) {
    case Standing::go: return "GO";
    case Standing::hold: return "HOLD";
    case Standing::no_go: return "NO-GO";
    case Standing::broken: return "BROKEN";
  }
  return "BROKEN";
}

std::string_view word_for(Change::Kind kind) {
  switch (kind) {
    case Change::Kind::better: return "better";
    case Change::Kind::worse: return "worse";
    case Change::Kind::added: return "new";
    case Change::Kind::gone: return "gone";
    case Change::Kind::changed: return "changed";
  }
  return "worse";
}

std::size_t count_of(const Audit& audit, Standing standing) {
  return static_cast<std::size_t>(std::ranges::count(audit.entries, standing, &Entry::standing));
}

Entry entry_of(const checks::Report& report, const std::optional<plan::Timestamp>& tested, long long now_s,
               long long offset_s) {
  Entry entry{.mark = report.mark, .title = report.title, .revision = report.revision, .engineer = report.engineer,
              .rules = report.rules, .fingerprint = report.fingerprint, .overridden = report.overridden,
              .sign_off = report.sign_off};
  switch (report.verdict) {
    case checks::Verdict::go: entry.standing = Standing::go; break;
    case checks::Verdict::hold: entry.standing = Standing::hold; break;
    case checks::Verdict::no_go: entry.standing = Standing::no_go; break;
  }
  const Finding* governs = nullptr;
  Missing missing;
  for (const checks::StageReport& stage : report.stages)
    for (const Finding& finding : stage.findings) {
      if (!governs || outranks(finding, *governs)) governs = &finding;
      if (finding.result == Result::missing) missing.add(finding);
    }
  entry.missing = missing.in_words();
  if (governs) {
    entry.rule = governs->rule;
    entry.subject = governs->subject;
    entry.reason = governs->text;
    entry.remedy = governs->remedy;
    entry.utilization = governs->utilization;
  } else {
    entry.reason = "the plan has no stage that could be evaluated";
  }
  for (const Source& source : report.unconfirmed) entry.unconfirmed.push_back(source.id);
  if (tested) {
    entry.tested = tested->text;
    const long long tested_s = tested->seconds - (tested->has_offset ? 0 : offset_s);
    if (tested_s <= now_s) entry.evidence_age_days = static_cast<double>(now_s - tested_s) / seconds_in_a_day;
  }
  if (const auto& until = report.evidence_until) {
    entry.evidence_until = until->text;
    entry.evidence_run_out = until->seconds - (until->has_offset ? 0 : offset_s) < now_s;
  }
  return entry;
}

void tell_same_pieces(std::vector<Entry>& entries) {
  std::map<std::pair<std::string, std::string>, std::vector<std::size_t>> of;
  for (std::size_t i = 0; i < entries.size(); ++i)
    if (entries[i].standing != Standing::broken) of[{entries[i].mark, entries[i].revision}].push_back(i);
  for (const auto& [piece, places] : of)
    for (const std::size_t a : places)
      for (const std::size_t b : places)
        if (entries[a].text_hash != entries[b].text_hash) entries[a].same_piece.push_back(entries[b].file);
}

}  // namespace firstpick::audit
