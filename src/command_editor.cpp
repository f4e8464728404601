#include "command_editor.hpp"

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <iostream>
#include <set>

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include "checks/rule.hpp"
#include "editor/completion.hpp"
#include "editor/new_plan.hpp"
#include "editor/schema.hpp"
#include "plan/words.hpp"
#include "record/diagnostic.hpp"

namespace firstpick {
namespace {

constexpr int exit_done = 0, exit_wrong_input = 2;

template <class Words>
std::vector<std::string> as_strings(const Words& words) {
  return {words.begin(), words.end()};
}

std::vector<std::string> names_of_kinds() {
  std::vector<std::string> names;
  for (const editor::NewKind& kind : editor::new_kinds()) names.emplace_back(kind.name);
  return names;
}

std::string list_of_kinds() {
  std::string list = "Kinds:\n";
  for (const editor::NewKind& kind : editor::new_kinds())
    list += fmt::format("  {:<14}{}\n", kind.name, kind.what);
  return list + "Every number in the plan is an example to be replaced; as written it is HOLD, never GO.";
}

// "TEXT:{auto,always,never}" of an option that takes one of some words.
std::vector<std::string> choices_of(const CLI::Option& option) {
  const std::string type = option.get_type_name();
  const std::size_t from = type.find('{'), to = type.rfind('}');
  std::vector<std::string> words;
  if (from == std::string::npos || to == std::string::npos || to < from) return words;
  for (std::size_t at = from + 1; at < to;) {
    const std::size_t end = std::min(type.find(',', at), to);
    words.push_back(type.substr(at, end - at));
    at = end + 1;
  }
  return words;
}

std::vector<std::string> words_in_tables(const tables::Tables& tables) {
  std::set<std::string> files;  // "us" of "rules/us.toml": the filter of `firstpick tables` finds it
  for (const Source& entry : tables.entries) files.insert(entry.table);
  return as_strings(files);
}

std::vector<std::string> rule_ids() {
  std::vector<std::string> ids;
  for (const checks::Rule& rule : checks::all_rules()) ids.emplace_back(rule.id);
  return ids;
}

// The one place that knows what may stand where; an option or argument that is not named here takes any file.
editor::Value value_for(const CLI::Option& option, const std::string& name, const std::string& command,
                        const tables::Tables& tables) {
  using From = editor::Value::From;
  const auto words = [](std::vector<std::string> list) {
    return editor::Value{From::words, std::move(list)};
  };
  if (auto choices = choices_of(option); !choices.empty()) return words(std::move(choices));
  if (name == "--rules")
    return {.from = From::words,
            .words = as_strings(plan::words_of(plan::Words::rule_sets, tables)),
            .several = command == "check"};
  if (name == "--stage") return words(as_strings(plan::stage_words));
  if (name == "WORD") return words(command == "rules" ? rule_ids() : words_in_tables(tables));
  if (name == "--now" || name == "--by" || name == "--head" || name == "--engineer") return words({});
  if (name == "--tables" || name == "--plant" || name == "DIR") return {.from = From::folders};
  const bool is_toml = name == "PLAN" || name == "SHIFT" || (name == "FILE" && command == "strength");
  return {.from = From::files, .words = {}, .suffix = is_toml ? ".toml" : ""};
}

editor::CommandWords words_of(const CLI::App& app, const tables::Tables& tables) {
  editor::CommandWords command{.name = app.get_name(), .description = app.get_description()};
  for (const CLI::Option* option : app.get_options()) {
    if (option->get_positional()) {
      command.arguments.push_back({.name = option->get_name(true),
                                   .description = option->get_description(),
                                   .value = value_for(*option, option->get_name(true), command.name, tables),
                                   .many = option->get_items_expected_max() > 1});
      continue;
    }
    editor::OptionWords words{.names = {}, .description = option->get_description()};
    for (const std::string& name : option->get_snames()) words.names.push_back("-" + name);
    for (const std::string& name : option->get_lnames()) words.names.push_back("--" + name);
    if (option->get_items_expected_max() > 0)
      words.value = value_for(*option, words.names.back(), command.name, tables);
    command.options.push_back(std::move(words));
  }
  for (const CLI::App* inner : app.get_subcommands([](const CLI::App*) { return true; }))
    command.commands.push_back(words_of(*inner, tables));
  return command;
}

int written(std::string_view text) {
  std::cout << text;
  std::cout.flush();
  if (std::cout) return exit_done;
  std::cerr << "error: the answer could not be written\n";
  return exit_wrong_input;
}

// Never over a file that is there.
int written_new(const std::string& file, const std::string& text) {
  std::FILE* out = std::fopen(file.c_str(), "wx");
  if (!out) {
    const bool exists = errno == EEXIST;
    std::cerr << printable(file)
              << ": error: " << (exists ? "this file exists, and is not overwritten" : std::strerror(errno))
              << '\n';
    return exit_wrong_input;
  }
  const bool whole = std::fwrite(text.data(), 1, text.size(), out) == text.size();
  if (std::fclose(out) == 0 && whole) return exit_done;
  std::cerr << printable(file) << ": error: the plan could not be written\n";
  return exit_wrong_input;
}

}  // namespace

EditorCommands::EditorCommands(CLI::App& app, const std::function<void(CLI::App&)>& add_tables_options)
    : app_(app) {
  new_ = app.add_subcommand("new", "a commented plan to start from, for a common piece");
  new_->footer(list_of_kinds());
  new_->add_option("KIND", kind_, "the piece")->required()->check(CLI::IsMember(names_of_kinds()));
  new_->add_option("--units", units_, "si or us")->check(CLI::IsMember({"si", "us"}));
  new_->add_option("-o,--output", output_,
                   "write it to this file, which must not exist, instead of the terminal");

  schema_ = app.add_subcommand("schema", "the JSON Schema of a file, for the language server of an editor");
  schema_->add_option("FILE", file_kind_, "plan, strength or shift; plan unless named")
      ->check(CLI::IsMember({"plan", "strength", "shift"}));
  add_tables_options(*schema_);

  completion_ =
      app.add_subcommand("completion", "the script by which a shell completes commands and options");
  completion_->add_option("SHELL", shell_, "bash, zsh or fish")
      ->required()
      ->check(CLI::IsMember({"bash", "zsh", "fish"}));
  add_tables_options(*completion_);
}

bool EditorCommands::chosen() const { return schema_->parsed() || completion_->parsed() || new_->parsed(); }

int EditorCommands::write_new() const {
  const std::string text = editor::new_plan(kind_, units_ == "us" ? UnitSystem::us : UnitSystem::si);
  return output_.empty() ? written(text) : written_new(output_, text);
}

int EditorCommands::run(const std::function<std::optional<tables::Tables>()>& read_tables) const {
  if (new_->parsed()) return write_new();
  const auto tables = read_tables();
  if (!tables) return exit_wrong_input;
  return schema_->parsed() ? write_schema(*tables) : write_completion(*tables);
}

int EditorCommands::write_schema(const tables::Tables& tables) const {
  return written(editor::schema_of(file_kind_, tables));
}

int EditorCommands::write_completion(const tables::Tables& tables) const {
  editor::CommandWords program = words_of(app_, tables);
  program.name = "firstpick";
  if (shell_ == "bash") return written(editor::bash_completion(program));
  return written(shell_ == "zsh" ? editor::zsh_completion(program) : editor::fish_completion(program));
}

}  // namespace firstpick
