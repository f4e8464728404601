#include "command_sign.hpp"

#include <iostream>

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include "pipeline.hpp"
#include "record/utf8.hpp"
#include "sign_off.hpp"
#include "strength/moment_text.hpp"
#include "whole_file.hpp"

namespace firstpick {

namespace {

constexpr int exit_go = 0, exit_no_go = 1, exit_wrong_input = 2, exit_hold = 3;

bool is_a_name(const std::string& text) {
  if (text.find_first_not_of(' ') == std::string::npos) return false;
  for (std::size_t at = 0; at < text.size();) {
    const Utf8 character = utf8_at(text, at);
    if (!character.valid || is_unprintable(character.code)) return false;
    at += character.length;
  }
  return true;
}

int wrong(const std::string& what, const std::string& help) {
  std::cerr << "error: " << what << "\n      = help: " << help << '\n';
  return exit_wrong_input;
}

// "2026-03-02T08:00:00Z", to the second.
plan::Timestamp moment_in_utc(long long seconds) {
  std::string text = strength::words_for_moment(seconds, 0);  // "2026-03-02 08:00[:05] +00:00"
  text.resize(text.rfind(' '));
  text[text.find(' ')] = 'T';
  if (text.size() == std::string_view("2026-03-02T08:00").size()) text += ":00";
  return {.seconds = seconds, .has_offset = true, .text = text + "Z"};
}

}  // namespace

CLI::App* add_sign_command(CLI::App& app, SignCommand& command) {
  CLI::App* sign_app = app.add_subcommand("sign", "the engineer's signature under a plan, written beside it");
  sign_app->add_option("PLAN", command.file, "plan file")->required();
  sign_app->add_option("--engineer", command.engineer, "who signs")->required();
  sign_app->add_option("--now", command.now, "time of signing, as 2026-03-03T07:30:00-05:00, instead of the clock's");
  sign_app->add_option("--rules", command.rules, "rule set, instead of the one the plan names");
  return sign_app;
}

int sign_command(const SignCommand& command, const tables::Tables& tables, const std::string& text) {
  if (!is_a_name(command.engineer))
    return wrong("--engineer needs the name of who signs, without control characters", "--engineer \"R. Example\"");
  long long now_s = command.clock_seconds;
  if (!command.now.empty()) {
    const auto given = strength::moment_of(command.now);
    if (const auto* fault = std::get_if<QuantityFault>(&given))
      return wrong(fmt::format("--now {}: {}", printable(command.now), fault->what), fault->help);
    now_s = std::get<plan::Timestamp>(given).seconds;
  }
  if (is_sign_off_file(command.file)) return wrong("this is a sign-off, a plan was expected", "firstpick sign PLAN");

  const auto bare = check_plan(command.file, text, command.rules, tables);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&bare)) {
    for (const Diagnostic& fault : *faults) std::cerr << show(fault, text);
    std::cerr << "nothing was signed\n";
    return exit_wrong_input;
  }
  // The verdict is that of the plan as it is signed: the missing signature itself counts no longer.
  const std::string rules = std::get<checks::Report>(bare).rules;
  const std::string file = sign_off_file_of(command.file);
  plan::SignOff sign_off = new_sign_off(command.engineer, moment_in_utc(now_s), "HOLD", text, rules, tables);
  const auto signed_plan =
      check_plan(command.file, text, rules, tables, SignOffText{file, plan::text_of(sign_off)});
  const auto* report = std::get_if<checks::Report>(&signed_plan);
  if (!report) return wrong("the plan could not be checked a second time", "report this fault; nothing was signed");
  sign_off.verdict = checks::word_for(report->verdict);
  sign_off.seal = seal_of(sign_off);
  if (!replace_file(file, plan::text_of(sign_off))) {
    std::cerr << printable(file) << ": error: the sign-off cannot be written\n";
    return exit_wrong_input;
  }
  std::cout << fmt::format("signed by {} as {}: {}\n", printable(command.engineer), sign_off.verdict, printable(file));
  if (report->verdict != checks::Verdict::go)
    std::cout << "The signature does not make it a GO: firstpick check " << printable(command.file) << " says why.\n";
  std::cout.flush();
  switch (report->verdict) {
    case checks::Verdict::go: return exit_go;
    case checks::Verdict::no_go: return exit_no_go;
    case checks::Verdict::hold: return exit_hold;
  }
  return exit_hold;
}

}  // namespace firstpick
