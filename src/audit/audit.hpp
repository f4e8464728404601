// Every plan of a folder, judged: what an audit has to tell, before anyone lays it out.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "checks/report.hpp"
#include "record/diagnostic.hpp"

namespace firstpick::audit {

enum class Standing { go, hold, no_go, broken };  // broken: the plan does not read, so nothing is known of it

std::string_view word_for(Standing standing);     // "GO", "HOLD", "NO-GO", "BROKEN"

struct Entry {
  std::string file;                       // below the folder
  std::vector<Diagnostic> faults;         // of a broken one
  Standing standing = Standing::broken;
  std::string mark, title, revision, engineer, rules, fingerprint;
  std::string text_hash;                  // of the plan's text alone

  std::string rule, subject, reason, remedy;  // what governs: the worst that fails, else is missing, else comes nearest
  std::optional<double> utilization;          // of it
  std::vector<std::string> bending;           // "may crack, as the engineer states", ...: checks/words_on_bending.hpp
  std::vector<std::string> missing;           // "rules: why", each reason once
  std::vector<std::string> unconfirmed;       // ids of values from memory
  std::vector<std::string> overridden;        // table entries replaced by the plant's own
  std::string tested;                         // when the specimens were broken; empty: no test
  std::optional<double> evidence_age_days;    // at the time of the audit; absent: no test, or one of the future
  std::string evidence_until;                 // the plan's own limit on the age of the test; empty: none
  bool evidence_run_out = false;              // that limit has passed at the time of the audit
  checks::SignOffState sign_off;
  std::vector<std::string> same_piece;        // files with this mark and revision and another text
};

struct Change {
  enum class Kind { better, worse, added, gone, changed };  // changed: another lift under the same verdict
  Kind kind;
  std::string file, before, now;          // words of the standings; empty where there is none
  std::vector<std::string> what{};        // else than the standing: "used 0.67, is 0.83", "the plan", ...
};

struct Audit {
  std::string folder, made;               // time of the audit, in words
  std::vector<Entry> entries;             // in the order of their files
  std::size_t shift_files = 0, strength_files = 0, sign_offs = 0;  // beside the plans, not judged here
  struct Orphan {
    std::string file;                     // a sign-off without a plan of its name
    std::string plan;                     // a plan that nobody signed and whose text it is of: it was renamed; empty: none
  };
  std::vector<Orphan> orphans;
  std::vector<std::string> unread;        // folders that could not be looked into
  std::string since;                      // file of the earlier audit; empty: none was given
  std::vector<Change> changes;
  std::vector<std::string> cautions, not_checked;  // of all plans, each once
};

std::string_view word_for(Change::Kind kind);  // "better", "worse", "new", "gone", "changed"

std::size_t count_of(const Audit& audit, Standing standing);

// What a report says of one plan; `now_s` is the time of the audit in UTC, `offset_s` that of its clock, for tests whose
// time has no offset.
Entry entry_of(const checks::Report& report, const std::optional<plan::Timestamp>& tested, long long now_s,
               long long offset_s);

// Fills Entry::same_piece.
void tell_same_pieces(std::vector<Entry>& entries);

}  // namespace firstpick::audit
