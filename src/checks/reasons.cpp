#include "checks/reasons.hpp"

#include <algorithm>

namespace firstpick::checks {

namespace {

void add_once(std::vector<std::string>& list, std::string_view word) {
  if (std::ranges::find(list, word) == list.end()) list.emplace_back(word);
}

bool same_reason(const Reason& reason, const Finding& f) {
  if (f.result == Result::fail && f.utilization) return reason.rule == f.rule;
  return reason.text == f.text && reason.remedy == f.remedy;
}

}  // namespace

std::vector<Reason> reasons(std::span<const StageReport> stages, Result result) {
  std::vector<Reason> all;
  for (const StageReport& stage : stages)
    for (const Finding& f : stage.findings) {
      if (f.result != result) continue;
      auto same = std::ranges::find_if(all, [&](const Reason& r) { return same_reason(r, f); });
      if (same == all.end()) same = all.insert(all.end(), Reason{.result = f.result, .rule = f.rule});
      constexpr double more = 1.0 + 1e-9;  // of equals the first, whatever their last bits
      if (same->subjects.empty() || f.utilization.value_or(0.0) > more * same->utilization) {
        same->utilization = f.utilization.value_or(0.0);
        same->text = f.text;
        same->remedy = f.remedy;
      }
      add_once(same->stages, word_for(stage.kind));
      add_once(same->rules, f.rule);
      add_once(same->subjects, f.subject);
    }
  return all;
}

}  // namespace firstpick::checks
