#include "command_sheet.hpp"

#include <fstream>
#include <iostream>

#include "checks/report.hpp"
#include "checks/stage_figures.hpp"
#include "pipeline.hpp"
#include "record/diagnostic.hpp"
#include "sign_off_beside.hpp"
#include "sheet/write.hpp"

namespace firstpick {

int sheet_command(const SheetCommand& command, const tables::Tables& tables, const std::string& text) {
  constexpr int exit_go = 0, exit_no_go = 1, exit_wrong_input = 2, exit_hold = 3;
  const bool as_html = command.output.ends_with(".html");
  if (!as_html && !command.output.ends_with(".md")) {
    std::cerr << printable(command.output) << ": error: the name of the sheet must end in .html or .md\n";
    return exit_wrong_input;
  }
  const auto checked = check_plan_whole(command.file, text, command.rules, tables, sign_off_beside(command.file));
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&checked)) {
    for (const Diagnostic& fault : *faults) std::cerr << show(fault, text);
    return exit_wrong_input;
  }
  const auto& [plan, body, report] = std::get<CheckedPlan>(checked);
  const auto drawn = checks::stage_figures(plan, body, report, tables.rule_sets.at(report.rules), tables);
  const sheet::Sheet sheet = sheet::sheet_of(plan, body, report, command.all, drawn);
  std::ofstream out(command.output, std::ios::binary);
  out << (as_html ? sheet::html(sheet) : sheet::markdown(sheet));
  out.close();
  if (!out) {
    std::cerr << printable(command.output) << ": error: the sheet cannot be written\n";
    return exit_wrong_input;
  }
  std::cout << checks::word_for(report.verdict) << ", sheet in " << printable(command.output) << '\n';
  std::cout.flush();
  switch (report.verdict) {
    case checks::Verdict::go: return exit_go;
    case checks::Verdict::no_go: return exit_no_go;
    case checks::Verdict::hold: return exit_hold;
  }
  return exit_hold;
}

}  // namespace firstpick
