#include "checks/stage_tick.hpp"

#include <array>
#include <utility>

#include <fmt/format.h>

namespace firstpick::checks {

namespace {

struct Open {
  std::string words, line;
};

Open not_ticked(const plan::Stage& stage) {
  const std::array<std::pair<std::string_view, const std::optional<bool>*>, 4> ticks = {
      {{"hook_latch", &stage.hook_latch},
       {"exclusion_zone", &stage.exclusion_zone},
       {"tag_line", &stage.tag_line},
       {"signaller", &stage.signaller}}};
  Open open;
  for (const auto& [key, tick] : ticks) {
    if (tick->has_value()) continue;
    std::string word(key);
    if (const auto at = word.find('_'); at != std::string::npos) word[at] = ' ';
    open.words += (open.words.empty() ? "" : ", ") + word;
    open.line += fmt::format("{}{} = true", open.line.empty() ? "" : ", ", key);
  }
  return open;
}

}  // namespace

Finding ticked(std::string_view rule, const StageFacts& facts, const std::optional<bool>& tick,
               std::string wrong, std::string mend) {
  const std::string& mark = facts.plan.piece.mark;
  if (!tick) {
    const Open open = not_ticked(facts.stage);
    return missing(rule, mark, fmt::format("nobody has ticked off: {}", open.words),
                   fmt::format("look, then write in [[stage]]: {}", open.line));
  }
  if (*tick) return passed(rule, mark);
  Finding finding = missing(rule, mark, std::move(wrong), std::move(mend));
  finding.result = Result::fail;
  return finding;
}

}  // namespace firstpick::checks
