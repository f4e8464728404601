#include "decision_log/schema.hpp"

#include <fmt/format.h>

#include "decision_log/decision.hpp"

namespace firstpick::decision_log {

std::vector<std::pair<std::string, std::string>> schema(int format) {
  std::string table = "CREATE TABLE decision (number INTEGER PRIMARY KEY";
  for (const Field& field : fields)
    if (field.since <= format) table += fmt::format(", \"{}\" TEXT NOT NULL", field.name);
  table += ", previous TEXT NOT NULL, hash TEXT NOT NULL) STRICT";
  return {
      {"decision", table},
      {"decision_is_not_changed",
       "CREATE TRIGGER decision_is_not_changed BEFORE UPDATE ON decision BEGIN "
       "SELECT RAISE(ABORT, 'a decision is never changed'); END"},
      {"decision_is_not_deleted",
       "CREATE TRIGGER decision_is_not_deleted BEFORE DELETE ON decision BEGIN "
       "SELECT RAISE(ABORT, 'a decision is never deleted'); END"},
      {"decision_is_added_last",  // also against INSERT OR REPLACE, which deletes without the trigger above
       fmt::format("CREATE TRIGGER decision_is_added_last BEFORE INSERT ON decision "
                   "WHEN NEW.number IS NOT (SELECT coalesce(max(number), 0) + 1 FROM decision) "
                   "OR NEW.previous IS NOT coalesce((SELECT hash FROM decision ORDER BY number DESC LIMIT "
                   "1), '{}') "
                   "BEGIN SELECT RAISE(ABORT, 'a decision is only added behind the last one'); END",
                   no_row_before)},
  };
}

std::string columns(int format) {
  std::string list = "number";
  for (const Field& field : fields)
    if (field.since <= format) list += fmt::format(", \"{}\"", field.name);
  return list + ", previous, hash";
}

}  // namespace firstpick::decision_log
