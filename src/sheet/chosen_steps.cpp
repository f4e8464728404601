#include "sheet/chosen_steps.hpp"

#include <set>
#include <string_view>

#include <fmt/format.h>

namespace firstpick::sheet {

namespace {

using checks::Finding;

bool worse(const Finding& a, const Finding& b) {
  if (a.result != b.result) return a.result > b.result;
  constexpr double more = 1.0 + 1e-9;  // of equals the first, whatever their last bits
  return a.utilization.value_or(0.0) > more * b.utilization.value_or(0.0);
}

// "strip: insert-breakout, insert A1" of each finding that another insert is worse for. The first of equals stays.
std::set<std::string> dominated(const checks::Report& report) {
  std::set<std::string> heads;
  for (const checks::StageReport& stage : report.stages)
    for (const Finding& f : stage.findings)
      for (const Finding& other : stage.findings) {
        if (other.rule != f.rule || other.subject == f.subject) continue;
        const bool earlier = &other < &f;
        if (worse(other, f) || (earlier && !worse(f, other)))
          heads.insert(fmt::format("{}: {}, insert {}", checks::word_for(stage.kind), f.rule, f.subject));
      }
  return heads;
}

bool is_about(std::string_view about, const std::string& head) {
  return about.starts_with(head) && (about.size() == head.size() || about[head.size()] == ',');
}

}  // namespace

ChosenSteps chosen_steps(const checks::Report& report, bool all) {
  const std::set<std::string> heads = all ? std::set<std::string>{} : dominated(report);
  ChosenSteps chosen;
  std::vector<StepGroup> groups;
  for (const Trace::Entry& entry : report.trace.steps()) {
    if (groups.empty() || groups.back().about != entry.subject) groups.push_back({entry.subject, {}});
    groups.back().steps.push_back(&entry.step);
  }
  for (StepGroup& group : groups) {
    bool leave = false;
    for (const std::string& head : heads) leave = leave || is_about(group.about, head);
    if (leave)
      ++chosen.left_out;
    else
      chosen.groups.push_back(std::move(group));
  }
  return chosen;
}

}  // namespace firstpick::sheet
