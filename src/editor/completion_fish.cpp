#include <fmt/format.h>

#include "editor/completion.hpp"

namespace firstpick::editor {
namespace {

// In single quotes fish takes a backslash before a quote or a backslash.
std::string in_fish_quotes(std::string_view text) {
  std::string all = "'";
  for (const char c : text) all += (c == '\'' || c == '\\') ? std::string("\\") + c : std::string(1, c);
  return all + "'";
}

// Each word, and each two of them: more at once are rare.
std::vector<std::string> words_and_pairs(const std::vector<std::string>& words) {
  std::vector<std::string> all = words;
  for (const std::string& first : words)
    for (const std::string& second : words)
      if (first != second) all.push_back(first + "," + second);
  return all;
}

std::string offered(const Value& value) {
  switch (value.from) {
    case Value::From::words:
      return "-x -a " + in_fish_quotes(fmt::format(
                            "{}", fmt::join(value.several ? words_and_pairs(value.words) : value.words, " ")));
    case Value::From::folders: return "-x -a '(__fish_complete_directories)'";
    case Value::From::files:
      return value.suffix.empty() ? "-r -F"
                                  : fmt::format("-x -a '(__fish_complete_suffix {})'", value.suffix);
  }
  return {};
}

std::string condition(const std::string& path, const CommandWords& command) {
  std::string all = path.empty() ? "__fish_use_subcommand" : "";
  for (std::size_t from = 0; from < path.size();) {
    const std::size_t to = std::min(path.find(' ', from), path.size());
    all += (all.empty() ? "" : "; and ") + std::string("__fish_seen_subcommand_from ") +
           path.substr(from, to - from);
    from = to + 1;
  }
  if (!path.empty() && !command.commands.empty()) {
    all += "; and not __fish_seen_subcommand_from";
    for (const CommandWords& inner : command.commands) all += " " + inner.name;
  }
  return in_fish_quotes(all);
}

}  // namespace

std::string fish_completion(const CommandWords& program) {
  std::string all = fmt::format(
      "# Completion of {0} for fish, written by: {0} completion fish\n\ncomplete -c {0} -f\n", program.name);
  for (const auto& [path, command] : all_commands(program)) {
    const std::string start = fmt::format("complete -c {} -n {}", program.name, condition(path, *command));
    for (const CommandWords& inner : command->commands)
      all += fmt::format("{} -a {} -d {}\n", start, inner.name, in_fish_quotes(inner.description));
    for (const OptionWords& option : command->options) {
      std::string line = start;
      for (const std::string& name : option.names)
        line += name.starts_with("--") ? " -l " + name.substr(2) : " -s " + name.substr(1);
      if (option.value) line += " " + offered(*option.value);
      all += line + " -d " + in_fish_quotes(option.description) + "\n";
    }
    for (const Argument& argument : command->arguments) {
      const bool any_file = argument.value.from == Value::From::files && argument.value.suffix.empty();
      all += any_file ? start + " -F\n" : start + " " + offered(argument.value) + "\n";
    }
  }
  return all;
}

}  // namespace firstpick::editor
