#include "command_layout.hpp"

#include <chrono>
#include <filesystem>
#include <iostream>
#include <optional>

#include "layout_pipeline.hpp"
#include "output/layout.hpp"
#include "record/diagnostic.hpp"
#include "whole_file.hpp"

namespace firstpick {

namespace {

// On stderr, from the second second on, and wiped off at the end. The time decides nothing else.
class Progress {
 public:
  explicit Progress(bool wanted) : wanted_(wanted) {}
  ~Progress() {
    if (shown_) std::cerr << "\r\x1b[K" << std::flush;
  }
  void tell(std::size_t judged) {
    const auto now = std::chrono::steady_clock::now();
    if (!wanted_ || now - last_ < std::chrono::milliseconds(shown_ ? 200 : 1000)) return;
    last_ = now, shown_ = true;
    std::cerr << "\rlayouts judged: " << judged << std::flush;
  }

 private:
  bool wanted_, shown_ = false;
  std::chrono::steady_clock::time_point last_ = std::chrono::steady_clock::now();
};

}  // namespace

int layout_command(const LayoutCommand& command, const tables::Tables& tables, const std::string& text) {
  constexpr int exit_go = 0, exit_no_go = 1, exit_wrong_input = 2, exit_hold = 3;
  std::error_code ignored;
  if (!command.output.empty() && !command.replace && std::filesystem::exists(command.output, ignored)) {
    std::cerr << printable(command.output) << ": error: this file is there already; --replace writes over it\n";
    return exit_wrong_input;
  }
  std::optional<Progress> progress(std::in_place, command.tells_progress);
  const auto answer =
      layout_of_plan(command.file, text, command.rules, tables, [&](std::size_t judged) { progress->tell(judged); });
  progress.reset();  // wipes its line
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&answer)) {
    for (const Diagnostic& fault : *faults) std::cerr << show(fault, text);
    return exit_wrong_input;
  }
  const auto& report = std::get<layout::LayoutReport>(answer);
  if (!command.output.empty() && !replace_file(command.output, report.text)) {
    std::cerr << printable(command.output) << ": error: the plan cannot be written\n";
    return exit_wrong_input;
  }
  std::cout << (command.json ? output::layout_json(report, command.output)
                             : output::layout_text(report, command.output, command.width));
  std::cout.flush();
  if (!std::cout) {
    std::cerr << "error: the answer could not be written\n";
    return exit_wrong_input;
  }
  switch (report.verdict_after) {
    case checks::Verdict::go: return exit_go;
    case checks::Verdict::no_go: return exit_no_go;
    case checks::Verdict::hold: return exit_hold;
  }
  return exit_hold;
}

}  // namespace firstpick
