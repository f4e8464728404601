#include <algorithm>

#include <fmt/format.h>

#include "editor/completion.hpp"

namespace firstpick::editor {
namespace {

// Inside a specification of _arguments: brackets and colons mean something there.
std::string escaped(std::string_view text) {
  std::string all;
  for (const char c : text)
    all += (c == '[' || c == ']' || c == ':' || c == '\\') ? std::string("\\") + c : std::string(1, c);
  return all;
}

std::string action(const Value& value) {
  switch (value.from) {
    case Value::From::words: {
      std::string words;
      for (const std::string& word : value.words) words += (words.empty() ? "" : " ") + escaped(word);
      return value.several ? "{_values -s , value " + words + "}" : "(" + words + ")";
    }
    case Value::From::folders: return "_files -/";
    case Value::From::files:
      return value.suffix.empty() ? "_files" : fmt::format("_files -g \"*{}(-.)\"", value.suffix);
  }
  return {};
}

std::string specification(const OptionWords& option, const std::string& name) {
  std::string others;
  for (const std::string& each : option.names) others += (others.empty() ? "" : " ") + each;
  std::string all = fmt::format("({}){}[{}]", others, name, escaped(option.description));
  if (option.value) all += ":value:" + action(*option.value);
  return all;
}

std::string arguments_of(const CommandWords& command, std::string_view indent) {
  std::string all;
  const auto add = [&](const std::string& text) {
    all += fmt::format(" \\\n{}  {}", indent, in_shell_quotes(text));
  };
  for (const OptionWords& option : command.options)
    for (const std::string& name : option.names) add(specification(option, name));
  for (const Argument& argument : command.arguments)
    add(fmt::format("{}:{}:{}", argument.many ? "*" : "", escaped(argument.name), action(argument.value)));
  return all;
}

std::string function_of(const std::string& name, const CommandWords& command) {
  if (command.commands.empty())
    return fmt::format("{}() {{\n  _arguments -s{}\n}}\n\n", name, arguments_of(command, "  "));
  std::string choices, branches, inner;
  for (const CommandWords& each : command.commands) {
    choices += fmt::format("        {}\n", in_shell_quotes(escaped(each.name) + ":" + each.description));
    branches += fmt::format("        ({0}) {1}_{0} ;;\n", each.name, name);
    inner += function_of(name + "_" + each.name, each);
  }
  return inner + fmt::format(
                     "{0}() {{\n"
                     "  local curcontext=\"$curcontext\" state line\n"
                     "  local -a commands\n"
                     "  typeset -A opt_args\n"
                     "  _arguments -C{1} \\\n    '1:command:->command' \\\n    '*::argument:->argument'\n"
                     "  case $state in\n"
                     "    (command)\n      commands=(\n{2}      )\n      _describe command commands ;;\n"
                     "    (argument)\n      case $line[1] in\n{3}      esac ;;\n"
                     "  esac\n}}\n\n",
                     name, arguments_of(command, "  "), choices, branches);
}

}  // namespace

std::string zsh_completion(const CommandWords& program) {
  return fmt::format(
      "#compdef {0}\n# Completion of {0} for zsh, written by: {0} completion zsh\n\n{1}_{0} \"$@\"\n",
      program.name, function_of("_" + program.name, program));
}

}  // namespace firstpick::editor
