#include "command_compare.hpp"

#include <algorithm>
#include <iostream>

#include "compare_pipeline.hpp"
#include "main_surroundings.hpp"
#include "output/comparison.hpp"
#include "sign_off_beside.hpp"

namespace firstpick {

int compare_command(const CompareCommand& command, const tables::Tables& tables) {
  const auto named = rule_sets_in(command.rules, tables);
  if (const auto* fault = std::get_if<Diagnostic>(&named)) {
    std::cerr << show(*fault);
    return exit_wrong_input;
  }
  if (command.style.steps) {
    std::cerr << show(Diagnostic{.file = "--steps",
                                 .what = "the steps are those of one rule set",
                                 .help = "ask for them one rule set at a time: --rules " +
                                         std::get<std::vector<std::string>>(named).front() + " --steps"});
    return exit_wrong_input;
  }
  checks::Verdict worst = checks::Verdict::go;
  bool wrong = false, is_first = true;
  std::vector<std::variant<comparison::Comparison, std::vector<Diagnostic>>> results;
  for (const std::string& file : command.plans) {
    const auto text = contents(file);
    if (!text) results.emplace_back(std::vector{Diagnostic{.file = file, .what = "the file cannot be read"}});
    else
      results.push_back(
          compare_plan(file, *text, std::get<std::vector<std::string>>(named), tables, sign_off_beside(file)));
    if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&results.back())) {
      if (text)
        for (const Diagnostic& fault : *faults) std::cerr << show(fault, *text);
      wrong = true;
      continue;
    }
    const auto& compared = std::get<comparison::Comparison>(results.back());
    worst = std::max(worst, compared.worst);
    if (command.json) continue;
    std::cout << (is_first ? "" : "\n") << output::comparison_text(compared, command.style);
    is_first = false;
  }
  if (command.json) {
    std::vector<output::ComparedAnswer> answers;
    for (std::size_t i = 0; i < results.size(); ++i)
      answers.push_back({command.plans[i], std::get_if<comparison::Comparison>(&results[i]),
                         std::get_if<std::vector<Diagnostic>>(&results[i])});
    std::cout << output::comparison_json(answers);
  }
  std::cout.flush();
  if (!std::cout) {
    std::cerr << "error: the answer could not be written\n";
    return exit_wrong_input;
  }
  return wrong ? exit_wrong_input : exit_status(worst);
}

}  // namespace firstpick
