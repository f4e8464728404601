#include "board/governing.hpp"

#include <limits>
#include <set>

namespace firstpick::board {

namespace {

using checks::Finding;
using checks::Result;

constexpr double above_any_number = std::numeric_limits<double>::infinity();

}  // namespace

void tell_governing(const checks::Report& report, Judged& judged) {
  if (report.verdict == Verdict::go) return;
  const Result sought = report.verdict == Verdict::no_go ? Result::fail : Result::missing;
  const Finding* governs = nullptr;
  std::set<std::string_view> rules;
  const auto weight = [&](const Finding& f) {
    return f.result == Result::fail ? f.utilization.value_or(above_any_number) : 0.0;
  };
  for (const checks::StageReport& stage : report.stages)
    for (const Finding& finding : stage.findings) {
      if (finding.result != Result::fail && finding.result != Result::missing) continue;
      rules.insert(finding.rule);
      if (finding.result == sought && (!governs || weight(finding) > weight(*governs))) governs = &finding;
    }
  if (!governs) {
    judged.reason = "the plan has no stage that could be evaluated";
    return;
  }
  judged.rule = governs->rule;
  judged.subject = governs->subject;
  judged.reason = governs->text;
  judged.remedy = governs->remedy;
  judged.more = rules.size() - 1;
}

}  // namespace firstpick::board
