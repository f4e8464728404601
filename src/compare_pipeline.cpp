#include "compare_pipeline.hpp"

#include <algorithm>
#include <stdexcept>

#include <fmt/format.h>

#include "checks/evaluate.hpp"
#include "comparison/contrast.hpp"
#include "comparison/one_at_a_time.hpp"
#include "fingerprint.hpp"
#include "pipeline.hpp"

namespace firstpick {

std::variant<std::vector<std::string>, Diagnostic> rule_sets_in(std::string_view list, const tables::Tables& tables) {
  const auto wrong = [&](std::string what, std::string help) {
    return Diagnostic{.file = fmt::format("--rules {}", list), .what = std::move(what), .help = std::move(help)};
  };
  std::vector<std::string_view> known;
  for (const auto& [id, set] : tables.rule_sets) known.push_back(id);
  std::vector<std::string> asked;
  for (std::size_t from = 0; from <= list.size();) {
    const std::size_t to = std::min(list.find(',', from), list.size());
    const std::string one(list.substr(from, to - from));
    from = to + 1;
    if (one.empty())
      return wrong("a rule set without a name", "names with one comma between each two: --rules us,eu");
    if (!tables.rule_sets.contains(one)) return wrong(fmt::format("there is no rule set '{}'", one), suggestion(one, known));
    if (std::ranges::find(asked, one) != asked.end())
      return wrong(fmt::format("'{}' is named twice", one), "a rule set against itself says nothing: name another");
    asked.push_back(one);
  }
  return asked;
}

std::variant<comparison::Comparison, std::vector<Diagnostic>> compare_plan(const std::string& file, std::string_view text,
                                                                           const std::vector<std::string>& rules,
                                                                           const tables::Tables& tables,
                                                                           const std::optional<SignOffText>& sign_off) {
  if (rules.size() < 2) throw std::invalid_argument("fewer than two rule sets to compare");
  const auto prepared = prepare_plan(file, text, rules.front(), tables);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&prepared)) return *faults;
  const auto& [plan, body, first] = std::get<PreparedPlan>(prepared);

  comparison::Comparison answer{.reports = {}, .named_by_plan = plan.rules, .worst = checks::Verdict::go, .contrasts = {}};
  for (const std::string& id : rules) {
    answer.reports.push_back(checks::evaluate_plan(plan, body, tables.rule_sets.at(id), tables, fingerprint_of(text, id, tables),
                                                   sign_off_state(sign_off, text, id, tables)));
    answer.worst = std::max(answer.worst, answer.reports.back().verdict);
  }
  for (std::size_t i = 1; i < rules.size(); ++i) {
    const auto swapped = comparison::one_at_a_time(plan, body, first, tables.rule_sets.at(rules[i]), tables,
                                                   answer.reports.front().sign_off);
    answer.contrasts.push_back({i, comparison::contrast(answer.reports.front(), answer.reports[i], swapped)});
  }
  return answer;
}

}  // namespace firstpick
