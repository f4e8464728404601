#include "command_audit.hpp"

#include <algorithm>
#include <chrono>
#include <filesystem>
#include <iostream>
#include <thread>

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include "audit/earlier.hpp"
#include "audit_pipeline.hpp"
#include "output/audit.hpp"
#include "record/diagnostic.hpp"
#include "strength/moment_text.hpp"
#include "whole_file.hpp"

namespace firstpick {

namespace {

namespace fs = std::filesystem;

constexpr int all_go = 0, some_no_go = 1, wrong_input = 2, some_hold = 3;
constexpr auto silent_for = std::chrono::seconds(1);  // a short audit needs no progress

int wrong(const std::string& what, const std::string& help) {
  std::cerr << "error: " << what << "\n      = help: " << help << '\n';
  return wrong_input;
}

enum class View { text, csv, json, html };

std::optional<View> view_of(const AuditCommand& command) {
  if (command.json) return View::json;
  if (command.csv) return View::csv;
  if (command.html) return View::html;
  if (command.output.empty() || command.output.ends_with(".txt")) return View::text;
  if (command.output.ends_with(".csv")) return View::csv;
  if (command.output.ends_with(".json")) return View::json;
  if (command.output.ends_with(".html")) return View::html;
  return {};
}

void add_file(const fs::path& path, const fs::path& folder, AuditQuestion& question) {
  if (path.extension() != ".toml") return;
  question.files.push_back({path.generic_string(), path.lexically_relative(folder).generic_string(),
                            whole_file(path.string())});
}

// Every *.toml below the folder. Links to folders are not followed: they may go round.
void look_into(const fs::path& folder, const fs::path& top, AuditQuestion& question) {
  std::error_code error;
  fs::directory_iterator each(folder, error);
  for (const fs::directory_iterator end; !error && each != end; each.increment(error)) {
    std::error_code ignored;
    if (each->is_directory(ignored) && !each->is_symlink(ignored)) look_into(each->path(), top, question);
    else add_file(each->path(), top, question);
  }
  if (error) question.unread.push_back(folder.lexically_relative(top).generic_string());
}

std::string written(const audit::Audit& audit, View view, const AuditCommand& command) {
  switch (view) {
    case View::text: return output::audit_text(audit, {.width = command.width, .colour = command.colour});
    case View::csv: return output::audit_csv(audit);
    case View::json: return output::audit_json(audit);
    case View::html: return output::audit_html(audit);
  }
  return {};
}

int status_of(const audit::Audit& audit) {
  using audit::Standing;
  if (count_of(audit, Standing::broken) > 0 || !audit.unread.empty()) return wrong_input;
  if (count_of(audit, Standing::no_go) > 0) return some_no_go;
  return count_of(audit, Standing::hold) > 0 ? some_hold : all_go;
}

}  // namespace

CLI::App* add_audit_command(CLI::App& app, AuditCommand& command) {
  CLI::App* audit_app = app.add_subcommand("audit", "every plan of a folder: which are sound, what is missing");
  audit_app->add_option("FOLDER", command.folder, "folder of plans")->required();
  audit_app->add_option("-o,--output", command.output, "write to this file: .txt, .csv, .json or .html");
  audit_app->add_flag("--json", command.json, "for programs, and for --since of a later audit");
  audit_app->add_flag("--csv", command.csv, "for spreadsheets: a row for each plan");
  audit_app->add_flag("--html", command.html, "a page that sorts and filters");
  audit_app->add_option("--since", command.since, "an earlier audit (--json): what is better, worse, new, gone");
  audit_app->add_option("--now", command.now, "time of the audit, as 2026-03-03T07:30:00-05:00, instead of the clock's");
  audit_app->add_option("--threads", command.threads, "as many as the machine has cores, unless given")
      ->check(CLI::Range(1, 64));
  audit_app->add_option("--rules", command.rules, "rule set, instead of those that the plans name");
  return audit_app;
}

int audit_command(const AuditCommand& command, const tables::Tables& tables) {
  if (command.json + command.csv + command.html > 1)
    return wrong("--json, --csv and --html are different answers", "ask for one of them");
  const auto view = view_of(command);
  if (!view) return wrong(printable(command.output) + ": no such form", "a name that ends in .txt, .csv, .json or .html");
  std::error_code error;
  if (!fs::is_directory(command.folder, error))
    return wrong(printable(command.folder) + ": this is no folder", "firstpick audit FOLDER");

  AuditQuestion question{.folder = command.folder, .rules = command.rules, .made = {}, .now_s = command.clock_seconds,
                         .offset_s = command.offset_seconds, .files = {}, .unread = {}};
  question.made = strength::words_for_moment(question.now_s, static_cast<int>(question.offset_s / 60));
  if (!command.now.empty()) {
    const auto given = strength::moment_of(command.now);
    if (const auto* fault = std::get_if<QuantityFault>(&given))
      return wrong(fmt::format("--now {}: {}", printable(command.now), fault->what), fault->help);
    const auto& now = std::get<plan::Timestamp>(given);
    question.now_s = now.seconds;
    question.offset_s = now.offset_seconds;
    question.made = now.text;
  }
  question.threads = command.threads > 0 ? command.threads : std::max(1U, std::thread::hardware_concurrency());
  look_into(command.folder, command.folder, question);

  const auto began = std::chrono::steady_clock::now();
  bool told = false;
  audit::Audit audit = make_audit(question, tables, [&](std::size_t done, std::size_t all) {
    if (!command.progress || std::chrono::steady_clock::now() - began < silent_for) return;
    std::cerr << fmt::format("\r{} of {} distinct plans", done, all) << std::flush;
    told = true;
  });
  if (told) std::cerr << "\r\x1b[K" << std::flush;
  if (audit.entries.empty() && audit.unread.empty())
    return wrong(printable(command.folder) + ": there is no plan in this folder", "plans are files that end in .toml");

  if (!command.since.empty()) {
    const auto earlier = whole_file(command.since);
    if (!earlier) return wrong(printable(command.since) + ": the file cannot be read", "--since audit.json");
    if (const auto fault = audit::compare_with_earlier(command.since, *earlier, audit)) {
      std::cerr << show(*fault);
      return wrong_input;
    }
  }
  const std::string answer = written(audit, *view, command);
  if (command.output.empty()) {
    std::cout << answer << std::flush;
    if (!std::cout) return wrong("the answer could not be written", "look at the disk");
  } else {
    if (!replace_file(command.output, answer))
      return wrong(printable(command.output) + ": the audit cannot be written", "-o audit.html");
    std::cout << output::summary_of(audit) << ", audit in " << printable(command.output) << '\n';
  }
  return status_of(audit);
}

}  // namespace firstpick
