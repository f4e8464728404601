// Arguments, files, clock, terminal, exit status. Everything else is in the library.

#include <malloc.h>
#include <unistd.h>

#include <ctime>
#include <iostream>
#include <string>
#include <vector>

#include <CLI/CLI.hpp>

#include "command_audit.hpp"
#include "command_board.hpp"
#include "command_listings.hpp"
#include "command_record.hpp"
#include "command_card.hpp"
#include "command_compare.hpp"
#include "command_editor.hpp"
#include "command_layout.hpp"
#include "command_sheet.hpp"
#include "command_sign.hpp"
#include "command_strength.hpp"
#include "main_surroundings.hpp"
#include "need_pipeline.hpp"
#include "output/json.hpp"
#include "output/need.hpp"
#include "output/terminal.hpp"
#include "pipeline.hpp"
#include "sign_off_beside.hpp"
#include "tables/tables.hpp"
#include "version.hpp"

namespace {

using namespace firstpick;

constexpr const char* description =
    "firstpick tells whether a freshly cast precast piece may be lifted out of its form, and why.\n"
    "It informs; it does not authorise: the engineer of record and local codes govern.";

constexpr const char* footer =
    "Start here:\n"
    "  firstpick check piece.toml          the verdict, why, and what governs\n"
    "  firstpick check piece.toml --steps  the calculation behind it, line by line\n"
    "  firstpick check piece.toml --rules us,eu  the same piece by two codes, and what parts them\n"
    "  firstpick need piece.toml           the strength that each stage needs, and what decides it\n"
    "  firstpick layout piece.toml -o moved.toml  where to pick: the least used layout that the plan allows\n"
    "  firstpick card piece.toml -o card.pdf   one page for the crane operator\n"
    "  firstpick sheet piece.toml -o sheet.html  the calculation, line by line, to check by hand\n"
    "  firstpick sign piece.toml --engineer \"R. Example\"  sign the plan: a later change is HOLD\n"
    "  firstpick strength pour.toml        has the concrete its strength, and what says so\n"
    "  firstpick board shift.toml          which piece the crane may take next, of a whole shift\n"
    "  firstpick audit plans/              every plan of a folder: which are sound, what is missing\n"
    "  firstpick new wall-panel -o wp.toml  a commented plan to start from\n"
    "  firstpick tables                    every number with its source; --unconfirmed: those to confirm\n"
    "  firstpick rules                     every rule and what it guards against\n"
    "\n"
    "The plan file (TOML) is described in docs/plan-file.md; docs/demo holds plans to copy.\n"
    "Exit status: 0 GO, 1 NO-GO, 3 HOLD, 2 the input or the call is wrong.\n"
    "FIRSTPICK_TABLES and FIRSTPICK_PLANT stand in for --tables and --plant; NO_COLOR switches colour off.";

int check(const Options& options, bool names_rules) {
  const auto tables = read_all_tables(options);
  if (!tables) return exit_wrong_input;
  const output::TerminalStyle style{.width = terminal_width(), .colour = wants_colour(options),
                                    .all_findings = options.all, .steps = options.steps};
  if (names_rules && (options.rules.empty() || options.rules.find(',') != std::string::npos))
    return compare_command({options.plans, options.rules, options.json, style}, *tables);
  checks::Verdict worst = checks::Verdict::go;
  bool wrong = false;
  std::vector<std::variant<checks::Report, std::vector<Diagnostic>>> results;
  results.reserve(options.plans.size());
  for (const std::string& file : options.plans) {
    const auto text = contents(file);
    if (!text) {
      results.emplace_back(std::vector{Diagnostic{.file = file, .what = "the file cannot be read"}});
      wrong = true;
      continue;
    }
    results.push_back(check_plan(file, *text, options.rules, *tables, sign_off_beside(file)));
    if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&results.back())) {
      for (const Diagnostic& fault : *faults) std::cerr << show(fault, *text);
      wrong = true;
      continue;
    }
    const auto& report = std::get<checks::Report>(results.back());
    worst = std::max(worst, report.verdict);
    if (!options.json) std::cout << (&file == options.plans.data() ? "" : "\n") << output::terminal(report, style);
  }
  if (options.json) {
    std::vector<output::Answer> answers;
    for (std::size_t i = 0; i < results.size(); ++i)
      answers.push_back({options.plans[i], std::get_if<checks::Report>(&results[i]),
                         std::get_if<std::vector<Diagnostic>>(&results[i])});
    std::cout << output::json(answers);
  }
  std::cout.flush();
  if (!std::cout) {
    std::cerr << "error: the answer could not be written\n";
    return exit_wrong_input;
  }
  return wrong ? exit_wrong_input : exit_status(worst);
}

// 0: every stage goes at the strength told; 1: something fails that no strength mends; 3: something is missing.
int need(const Options& options) {
  const auto tables = read_all_tables(options);
  if (!tables) return exit_wrong_input;
  const auto text = contents(options.plans.front());
  if (!text) return exit_wrong_input;
  const auto answer = need_of_plan(options.plans.front(), *text, options.rules, *tables);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&answer)) {
    for (const Diagnostic& fault : *faults) std::cerr << show(fault, *text);
    return exit_wrong_input;
  }
  const auto& report = std::get<checks::NeedReport>(answer);
  std::cout << (options.json ? output::need_json(report) : output::need_text(report, terminal_width()));
  std::cout.flush();
  if (!std::cout) {
    std::cerr << "error: the answer could not be written\n";
    return exit_wrong_input;
  }
  checks::Verdict worst = report.stages.empty() ? checks::Verdict::hold : checks::Verdict::go;
  for (const checks::StageNeedReport& stage : report.stages)
    worst = std::max(worst, stage.need.to_print ? stage.need.verdict : checks::Verdict::hold);
  return exit_status(worst);
}

int layout(const Options& options) {
  const auto tables = read_all_tables(options);
  if (!tables) return exit_wrong_input;
  const auto text = contents(options.plans.front());
  if (!text) return exit_wrong_input;
  return layout_command({.file = options.plans.front(), .rules = options.rules, .output = options.picture,
                         .json = options.json, .replace = options.replace,
                         .tells_progress = isatty(STDERR_FILENO) != 0, .width = terminal_width()}, *tables, *text);
}

// This, sign(), audit() and board() are the places that read the clock.
int strength(const Options& options) {
  const auto tables = read_all_tables(options);
  if (!tables) return exit_wrong_input;
  const auto text = contents(options.plans.front());
  if (!text) return exit_wrong_input;
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  const StrengthCommand command{.file = options.plans.front(), .rules = options.rules, .now = options.now,
                                .picture = options.picture, .json = options.json, .steps = options.steps,
                                .colour = wants_colour(options), .interactive = isatty(STDOUT_FILENO) != 0,
                                .width = terminal_width()};
  return strength_command(command, *tables, *text, now, static_cast<int>(local.tm_gmtoff / 60));
}

int board(const Options& options) {
  const BoardSurroundings surroundings{.clock_seconds = [] { return static_cast<long long>(std::time(nullptr)); },
                                       .read_tables = [&] { return read_all_tables(options); },
                                       .table_folders = {tables_directory(options), plant_directory(options)}};
  return board_command({.file = options.plans.front(), .rules = options.rules, .now = options.now, .html = options.html,
                        .record = options.record, .by = options.by, .json = options.json, .csv = options.csv,
                        .watch = options.watch, .colour = wants_colour(options), .width = terminal_width()},
                       surroundings);
}

int card(const Options& options) {
  const auto tables = read_all_tables(options);
  if (!tables) return exit_wrong_input;
  const auto text = contents(options.plans.front());
  if (!text) return exit_wrong_input;
  return card_command({.file = options.plans.front(), .rules = options.rules, .stage = options.stage,
                       .paper = options.paper, .output = options.picture}, *tables, *text);
}

int sheet(const Options& options) {
  const auto tables = read_all_tables(options);
  if (!tables) return exit_wrong_input;
  const auto text = contents(options.plans.front());
  if (!text) return exit_wrong_input;
  return sheet_command({.file = options.plans.front(), .rules = options.rules, .output = options.picture,
                        .all = options.all}, *tables, *text);
}

int audit(const Options& options, AuditCommand asked) {
  const auto tables = read_all_tables(options);
  if (!tables) return exit_wrong_input;
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  asked.clock_seconds = static_cast<long long>(now);
  asked.offset_seconds = local.tm_gmtoff;
  asked.progress = isatty(STDERR_FILENO) != 0;
  asked.colour = wants_colour(options);
  asked.width = terminal_width();
  return audit_command(asked, *tables);
}

int sign(const Options& options, SignCommand asked) {
  const auto tables = read_all_tables(options);
  if (!tables) return exit_wrong_input;
  const auto text = contents(asked.file);
  if (!text) return exit_wrong_input;
  asked.clock_seconds = static_cast<long long>(std::time(nullptr));
  return sign_command(asked, *tables, *text);
}

void add_tables_options(CLI::App& command, Options& options) {
  command.add_option("--tables", options.tables, "folder of the tables, instead of the installed ones");
  command.add_option("--plant", options.plant, "the plant's own folder of tables: its entries replace ours");
}

int run(int argc, char** argv) {
  Options options;
  CLI::App app{description, "firstpick"};
  app.footer(footer);
  app.set_version_flag("--version", std::string("firstpick ") + std::string(program_version));
  app.require_subcommand(1);

  CLI::App* check_command = app.add_subcommand("check", "the verdict on each plan, and why");
  check_command->add_option("PLAN", options.plans, "plan files")->required();
  const CLI::Option* check_rules = check_command->add_option(
      "--rules", options.rules, "rule set, instead of the one the plan names; several, as us,eu, side by side");
  check_command->add_flag("--json", options.json, "for programs: SI, the unit in the key");
  check_command->add_flag("--all", options.all, "every finding, not only those that govern");
  check_command->add_flag("--steps", options.steps, "the calculation, step by step");
  check_command->add_option("--color", options.color, "auto, always or never")
      ->check(CLI::IsMember({"auto", "always", "never"}));
  add_tables_options(*check_command, options);

  CLI::App* card_app = app.add_subcommand("card", "the lift card of one stage: one page for the crane operator");
  card_app->add_option("PLAN", options.plans, "plan file")->required()->expected(1);
  card_app->add_option("--stage", options.stage, "strip, turn, yard, store, haul or set; turn-2 for the second turn; not needed where the plan has one stage");
  card_app->add_option("-o,--output", options.picture, "the card: .pdf, .svg, .png, or .txt for its words")->required();
  card_app->add_option("--paper", options.paper, "a4 or letter")->check(CLI::IsMember({"a4", "letter"}));
  card_app->add_option("--rules", options.rules, "rule set, instead of the one the plan names");
  add_tables_options(*card_app, options);

  CLI::App* sheet_app = app.add_subcommand("sheet", "the calculation, line by line, with every source");
  sheet_app->add_option("PLAN", options.plans, "plan file")->required()->expected(1);
  sheet_app->add_option("-o,--output", options.picture, "the sheet: .html or .md")->required();
  sheet_app->add_flag("--all", options.all, "every insert, not only the one that each rule is worst for");
  sheet_app->add_option("--rules", options.rules, "rule set, instead of the one the plan names");
  add_tables_options(*sheet_app, options);

  AuditCommand audit_asked;
  CLI::App* audit_app = add_audit_command(app, audit_asked);
  add_tables_options(*audit_app, options);

  SignCommand sign_asked;
  CLI::App* sign_app = add_sign_command(app, sign_asked);
  add_tables_options(*sign_app, options);

  CLI::App* need_command = app.add_subcommand("need", "the strength that each stage needs, and what decides it");
  need_command->add_option("PLAN", options.plans, "plan file")->required()->expected(1);
  need_command->add_option("--rules", options.rules, "rule set, instead of the one the plan names");
  need_command->add_flag("--json", options.json, "for programs: SI, the unit in the key");
  add_tables_options(*need_command, options);

  CLI::App* layout_app = app.add_subcommand("layout", "where to pick: the least used layout that the plan allows");
  layout_app->add_option("PLAN", options.plans, "plan file, with [layout]")->required()->expected(1);
  layout_app->add_option("-o,--output", options.picture, "write the plan with the picks there, comments kept");
  layout_app->add_flag("--replace", options.replace, "the output may be a file that is there, PLAN itself too");
  layout_app->add_option("--rules", options.rules, "rule set, instead of the one the plan names");
  layout_app->add_flag("--json", options.json, "for programs: SI, the unit in the key");
  add_tables_options(*layout_app, options);

  CLI::App* strength_app = app.add_subcommand("strength", "has the concrete its strength, and what says so");
  strength_app->add_option("FILE", options.plans, "strength file or plan")->required()->expected(1);
  strength_app->add_option("--rules", options.rules, "rule set, instead of the one the file names");
  strength_app->add_option("--now", options.now, "time of the question, as 2026-03-03T07:30:00-05:00, instead of the clock's");
  strength_app->add_option("-o,--output", options.picture, "draw the maturity to this file, .svg or .png");
  strength_app->add_flag("--json", options.json, "for programs: SI, the unit in the key");
  strength_app->add_flag("--steps", options.steps, "the calculation, step by step");
  strength_app->add_option("--color", options.color, "auto, always or never")
      ->check(CLI::IsMember({"auto", "always", "never"}));
  add_tables_options(*strength_app, options);

  CLI::App* board_app = app.add_subcommand("board", "every piece of a shift, in the order for the crane");
  board_app->add_option("SHIFT", options.plans, "shift file")->required()->expected(1);
  board_app->add_option("--rules", options.rules, "rule set, instead of those that the plans name");
  board_app->add_option("--now", options.now, "time of the board, as 2026-03-03T07:30:00-05:00, instead of the clock's");
  board_app->add_flag("--json", options.json, "for programs: SI, the unit in the key");
  board_app->add_flag("--csv", options.csv, "for spreadsheets: a row for each piece");
  board_app->add_option("--html", options.html, "also write this page, for a screen at the crane");
  board_app->add_flag("--watch", options.watch, "write the page again whenever a file changes, until interrupted");
  board_app->add_option("--record", options.record, "add a decision for each piece to this record (SQLite)");
  board_app->add_option("--by", options.by, "who decides, for --record");
  board_app->add_option("--color", options.color, "auto, always or never")
      ->check(CLI::IsMember({"auto", "always", "never"}));
  add_tables_options(*board_app, options);

  CLI::App* record_app = app.add_subcommand("record", "the record of decisions");
  record_app->require_subcommand(1);
  CLI::App* show_app = record_app->add_subcommand("show", "lists every decision");
  show_app->add_option("FILE", options.record, "the record")->required();
  show_app->add_flag("--json", options.json, "for programs");
  show_app->add_flag("--csv", options.csv, "for spreadsheets");
  CLI::App* verify_app = record_app->add_subcommand("verify", "is the record as it was written");
  verify_app->add_option("FILE", options.record, "the record")->required();
  verify_app->add_option("--head", options.head, "hash that was printed once and kept elsewhere");
  verify_app->add_flag("--json", options.json, "for programs");

  CLI::App* tables_command = app.add_subcommand("tables", "every number of the tables with its source");
  tables_command->add_option("WORD", options.filter, "only entries that hold this word");
  tables_command->add_flag("--unconfirmed", options.unconfirmed, "only values from memory that nobody has confirmed");
  tables_command->add_flag("--json", options.json, "for programs");
  add_tables_options(*tables_command, options);

  CLI::App* rules_command = app.add_subcommand("rules", "every rule, what it guards against, its source");
  rules_command->add_option("WORD", options.filter, "only rules whose id holds this word");
  rules_command->add_flag("--json", options.json, "for programs");
  add_tables_options(*rules_command, options);

  const EditorCommands editor_commands(app, [&](CLI::App& command) { add_tables_options(command, options); });

  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? exit_go : exit_wrong_input;
  }
  if (*check_command) return check(options, check_rules->count() > 0);
  if (*need_command) return need(options);
  if (*layout_app) return layout(options);
  if (*strength_app) return strength(options);
  if (*board_app) return board(options);
  const RecordCommand record{.file = options.record, .head = options.head, .head_given = verify_app->count("--head") > 0,
                             .json = options.json, .csv = options.csv, .width = terminal_width()};
  if (*show_app) return show_record_command(record);
  if (*verify_app) return verify_record_command(record);
  if (*card_app) return card(options);
  if (*sheet_app) return sheet(options);
  if (editor_commands.chosen()) return editor_commands.run([&] { return read_all_tables(options); });
  if (*audit_app) return audit(options, audit_asked);
  if (*sign_app) return sign(options, sign_asked);
  const ListCommand list{.filter = options.filter, .json = options.json, .unconfirmed = options.unconfirmed,
                         .width = terminal_width()};
  const auto tables = read_all_tables(options);
  if (!tables) return exit_wrong_input;
  *tables_command ? list_tables(list, *tables) : list_rules(list, *tables);
  return exit_go;
}

}  // namespace

int main(int argc, char** argv) {
#ifdef __GLIBC__
  // Memory that meshes give back is kept for the next: a third of the time of a panel went into asking the system anew.
  mallopt(M_MMAP_THRESHOLD, 1 << 30);
  mallopt(M_TRIM_THRESHOLD, 1 << 30);
#endif
  try {
    return run(argc, argv);
  } catch (const std::exception& fault) {
    std::cerr << "firstpick: internal fault, no verdict: " << fault.what() << '\n';
    return exit_wrong_input;
  }
}
