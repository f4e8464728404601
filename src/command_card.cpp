#include "command_card.hpp"

#include <algorithm>
#include <fstream>
#include <iostream>
#include <optional>

#include <fmt/format.h>

#include "card/content.hpp"
#include "card/lift_card.hpp"
#include "card/paint.hpp"
#include "checks/pulls_on_scale.hpp"
#include "checks/report.hpp"
#include "pipeline.hpp"
#include "record/diagnostic.hpp"
#include "sign_off_beside.hpp"

namespace firstpick {

namespace {

constexpr int exit_go = 0, exit_no_go = 1, exit_wrong_input = 2, exit_hold = 3;

std::optional<card::Picture> picture_for(const std::string& path) {
  if (path.ends_with(".pdf")) return card::Picture::pdf;
  if (path.ends_with(".svg")) return card::Picture::svg;
  if (path.ends_with(".png")) return card::Picture::png;
  return {};
}

// The stage asked for, by its kind; where a plan has two of a kind by its kind and place among them. A card is for one lift:
// which of two is meant is not guessed.
std::optional<std::size_t> chosen_stage(const CardCommand& command, const checks::Report& report) {
  std::optional<std::size_t> found;
  std::string there;
  bool several_of_it = false;
  for (std::size_t i = 0; i < report.stages.size(); ++i) {
    const auto& stage = report.stages[i];
    const std::string name = card::stage_name(report, i);
    const bool one_of_several = name != checks::word_for(stage.kind);
    there += (there.empty() ? "" : ", ") + name;
    if (one_of_several) there += fmt::format(" (rigging {})", printable(stage.rigging));
    if (command.stage == name || (command.stage.empty() && report.stages.size() == 1)) found = i;
    if (one_of_several && command.stage == checks::word_for(stage.kind)) several_of_it = true;
  }
  if (several_of_it) {
    std::cerr << printable(command.file) << ": error: the plan has several stages '"
              << printable(command.stage) << "', a card is for one\n"
              << "      = help: --stage with one of: " << there << '\n';
    return {};
  }
  if (command.stage.empty() && report.stages.size() > 1) {
    std::cerr << printable(command.file) << ": error: the plan has several stages, a card is for one\n"
              << "      = help: --stage with one of: " << there << '\n';
    return {};
  }
  if (!found)
    std::cerr << printable(command.file) << ": error: the plan has no stage '" << printable(command.stage)
              << "'\n"
              << "      = help: " << (there.empty() ? "it has none" : "it has: " + there) << '\n';
  return found;
}

bool write(const std::string& path, const std::string& bytes) {
  std::ofstream out(path, std::ios::binary);
  out << bytes;
  out.close();
  return out.good();
}

}  // namespace

int card_command(const CardCommand& command, const tables::Tables& tables, const std::string& text) {
  const auto wrong = [&](const std::string& what) {
    std::cerr << printable(command.output) << ": error: " << what << '\n';
    return exit_wrong_input;
  };
  const auto picture = picture_for(command.output);
  const bool as_text = command.output.ends_with(".txt");
  if (!picture && !as_text) return wrong("the name of the card must end in .pdf, .svg, .png or .txt");

  const auto checked = check_plan_whole(command.file, text, command.rules, tables, sign_off_beside(command.file));
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&checked)) {
    for (const Diagnostic& fault : *faults) std::cerr << show(fault, text);
    return exit_wrong_input;
  }
  const auto& [plan, body, report] = std::get<CheckedPlan>(checked);
  const auto stage = chosen_stage(command, report);
  if (!stage) return exit_wrong_input;

  const auto pulls = checks::pulls_on_scale(plan, body, *stage, tables.rule_sets.at(report.rules), tables);
  const card::Page page = card::lift_card(plan, body, report, *stage,
                                          command.paper == "letter" ? card::Paper::letter : card::Paper::a4, pulls);
  const checks::Verdict verdict = report.stages[*stage].verdict;
  const std::string title = printable(report.mark) + ": " + std::string(checks::word_for(verdict));
  const card::Painted painted =
      as_text ? card::Painted{card::box_list(page), ""} : card::paint(page, *picture, title);
  if (!painted.fault.empty()) return wrong(painted.fault);
  if (!write(command.output, painted.bytes)) return wrong("the card cannot be written");
  std::cout << card::stage_name(report, *stage) << ": " << checks::word_for(verdict) << ", card in "
            << printable(command.output) << '\n';
  std::cout.flush();
  switch (verdict) {
    case checks::Verdict::go: return exit_go;
    case checks::Verdict::no_go: return exit_no_go;
    case checks::Verdict::hold: return exit_hold;
  }
  return exit_hold;
}

}  // namespace firstpick
