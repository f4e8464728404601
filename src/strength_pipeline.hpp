// One strength question on one page: file text -> what it names -> log, calibration, season -> StrengthReport.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "checks/evaluate_strength.hpp"
#include "record/diagnostic.hpp"
#include "tables/tables.hpp"

namespace firstpick {

// The whole text of a file that `file` names, by its path below the folder of `file`; nothing if it cannot be read.
using ReadNamedFile = std::function<std::optional<std::string>(const std::string& path)>;

struct NamedText {  // for the excerpt under a fault
  std::string file, text;
};

struct StrengthAnswer {
  std::variant<checks::StrengthReport, std::vector<Diagnostic>> report;
  std::vector<NamedText> texts;
};

// What a strength file and the files that it names ask, before the time of the question is set.
struct StrengthQuestionRead {
  checks::StrengthQuestion question;
  std::string rules;
  std::vector<Diagnostic> faults;  // empty, or the question is not whole
  std::vector<NamedText> texts;
};

StrengthQuestionRead read_strength_question(const std::string& file, std::string_view text, const std::string& rules,
                                            const tables::Tables& tables, const ReadNamedFile& read_named);

// `file` is a strength file, or a plan: then its [concrete.evidence] is asked for each of its stages.
// Same texts, rules, tables and time: same report.
StrengthAnswer answer_strength(const std::string& file, std::string_view text, const std::string& rules,
                               const checks::AskedAt& asked_at, const tables::Tables& tables,
                               const ReadNamedFile& read_named);

}  // namespace firstpick
