#include "checks/words_on_bending.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace firstpick::checks {

std::vector<std::string> words_on_bending(const plan::Plan& plan, std::span<const StageReport> stages) {
  constexpr std::array<std::pair<std::string_view, const char*>, 3> rules = {
      {{"piece-cracking", "bending"}, {"piece-shear", "shear"}, {"insert-wall-bending", "bending of the wall at inserts"}}};
  const std::string& named = plan.piece.bending_check;
  const auto noted_by = [&](std::string_view rule, bool names_the_check) {
    return std::ranges::any_of(stages, [&](const StageReport& stage) {
      return std::ranges::any_of(stage.findings, [&](const Finding& finding) {
        return finding.rule == rule && finding.result == Result::note &&
               (!names_the_check || (!named.empty() && finding.text.ends_with(named)));
      });
    });
  };
  std::vector<std::string> words;
  if (plan.piece.may_crack && noted_by("piece-cracking", false)) words.emplace_back("may crack, as the engineer states");
  std::string elsewhere;
  for (const auto& [rule, what] : rules)
    if (noted_by(rule, true)) elsewhere += (elsewhere.empty() ? "" : ", ") + std::string(what);
  if (!elsewhere.empty()) words.push_back(elsewhere + " checked elsewhere, as the plan states: " + named);
  return words;
}

}  // namespace firstpick::checks
