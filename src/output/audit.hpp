// An audit in the four ways it is read: terminal, CSV, JSON, a page with sorting and a filter that needs no network.
#pragma once

#include <string>

#include "audit/audit.hpp"
#include "output/terminal.hpp"

namespace firstpick::output {

std::string audit_text(const audit::Audit& audit, const TerminalStyle& style);
std::string audit_csv(const audit::Audit& audit);
std::string audit_json(const audit::Audit& audit);
std::string audit_html(const audit::Audit& audit);

// Words that every view shares.
std::string summary_of(const audit::Audit& audit);               // "12 plans: 3 NO-GO, 2 broken, 4 HOLD, 3 GO"
std::string beside_of(const audit::Audit& audit);                // "1 shift file, 2 strength files, 1 sign-off"
std::vector<std::string> warnings_of(const audit::Audit& audit);  // what a safety officer looks at first
std::string reason_of(const audit::Entry& entry);                // of a broken plan its first fault, with its place
std::string age_of(const audit::Entry& entry);                   // "tested 2026-03-03 07:10, 2.1 days ago"
std::string change_in_words(const audit::Change& change);        // "worse: a.toml, was GO, is HOLD: the plan is another"

}  // namespace firstpick::output
