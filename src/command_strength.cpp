#include "command_strength.hpp"

#include <algorithm>
#include <filesystem>
#include <iostream>

#include "output/strength_json.hpp"
#include "output/strength_plot.hpp"
#include "output/strength_text.hpp"
#include "record/diagnostic.hpp"
#include "strength/moment_text.hpp"
#include "strength_pipeline.hpp"
#include "whole_file.hpp"

namespace firstpick {

namespace {

namespace fs = std::filesystem;

constexpr int reached = 0, below = 1, wrong_input = 2, hold = 3;

// A file below the folder of `beside`; the names are checked by the reader of the strength file.
std::optional<std::string> contents_beside(const std::string& beside, const std::string& path) {
  return whole_file((fs::path(beside).parent_path() / path).string());
}

// A moment without its zone: what the clock on the wall shows.
plan::Timestamp on_the_wall(long long seconds_utc, int offset_minutes) {
  plan::Timestamp local{.seconds = seconds_utc + offset_minutes * 60LL};
  local.text = strength::words_for_moment(local.seconds, 0);
  local.text.resize(local.text.size() - 7);
  return local;
}

std::optional<checks::AskedAt> asked_at(const StrengthCommand& command, long long clock_seconds, int offset_minutes) {
  if (command.now.empty()) {
    const plan::Timestamp zoned{clock_seconds, true, strength::words_for_moment(clock_seconds, offset_minutes)};
    return checks::AskedAt{.local = on_the_wall(clock_seconds, offset_minutes), .zoned = zoned};
  }
  const auto given = strength::moment_of(command.now, false);
  if (const auto* fault = std::get_if<QuantityFault>(&given)) {
    std::cerr << "--now " << printable(command.now) << ": error: " << fault->what << "\n      = help: " << fault->help
              << '\n';
    return {};
  }
  const auto& moment = std::get<plan::Timestamp>(given);
  checks::AskedAt asked;
  (moment.has_offset ? asked.zoned : asked.local) = moment;
  return asked;
}

void show_faults(const std::vector<Diagnostic>& faults, const std::vector<NamedText>& texts) {
  for (const Diagnostic& fault : faults) {
    const auto text = std::ranges::find(texts, fault.file, &NamedText::file);
    std::cerr << show(fault, text == texts.end() ? std::string_view{} : std::string_view(text->text));
  }
}

}  // namespace

int strength_command(const StrengthCommand& command, const tables::Tables& tables, const std::string& text,
                     long long clock_seconds, int clock_offset_minutes) {
  const auto asked = asked_at(command, clock_seconds, clock_offset_minutes);
  if (!asked) return wrong_input;
  const StrengthAnswer answer =
      answer_strength(command.file, text, command.rules, *asked, tables,
                      [&](const std::string& path) { return contents_beside(command.file, path); });
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&answer.report)) {
    show_faults(*faults, answer.texts);
    if (command.json) std::cout << output::strength_faults_json(command.file, *faults);
    return wrong_input;
  }
  const auto& report = std::get<checks::StrengthReport>(answer.report);
  if (command.json) {
    std::cout << output::strength_json(report);
  } else {
    const output::TerminalStyle style{.width = command.width, .colour = command.colour, .steps = command.steps};
    std::cout << output::strength_text(report, style, command.interactive);
  }
  std::cout.flush();
  if (!std::cout) {
    std::cerr << "error: the answer could not be written\n";
    return wrong_input;
  }
  if (!command.picture.empty())
    if (const std::string why = output::draw_strength_plot(report, command.picture); !why.empty()) {
      std::cerr << printable(command.picture) << ": error: " << why << '\n';
      return wrong_input;
    }
  switch (report.verdict) {
    case checks::Verdict::go: return reached;
    case checks::Verdict::no_go: return below;
    case checks::Verdict::hold: return hold;
  }
  return hold;
}

}  // namespace firstpick
