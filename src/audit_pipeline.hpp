// The audit of a folder on one page: files -> texts -> each distinct plan judged once, on several threads -> Audit.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "audit/audit.hpp"
#include "sign_off.hpp"
#include "tables/tables.hpp"

namespace firstpick {

struct AuditFile {
  std::string path;                  // as it is opened
  std::string name;                  // below the folder, as it is told
  std::optional<std::string> text;   // absent: it cannot be read
};

struct AuditQuestion {
  std::string folder, rules, made;   // `made`: time of the audit, in words
  long long now_s = 0, offset_s = 0;
  std::size_t threads = 1;
  std::vector<AuditFile> files;      // every *.toml of the folder, in any order
  std::vector<std::string> unread;   // folders that could not be looked into
};

// `told` hears how many of how many are done, from one thread at a time.
// Same files, rules, tables and time: same audit, on any number of threads. A broken plan is an entry, never an end.
audit::Audit make_audit(const AuditQuestion& question, const tables::Tables& tables,
                        const std::function<void(std::size_t, std::size_t)>& told);

}  // namespace firstpick
