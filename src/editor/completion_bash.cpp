#include <fmt/format.h>

#include "editor/completion.hpp"

namespace firstpick::editor {
namespace {

// What to offer for one value. Names of ours hold no space and no character of the shell; a test says so.
std::string offered(const Value& value) {
  switch (value.from) {
    case Value::From::words:
      return fmt::format("{} {}", value.several ? "_firstpick_list" : "_firstpick_words",
                         in_shell_quotes(fmt::format("{}", fmt::join(value.words, "\n"))));
    case Value::From::folders: return "_firstpick_folders";
    case Value::From::files:
      return value.suffix.empty() ? "_firstpick_files" : "_firstpick_files " + value.suffix;
  }
  return {};
}

std::string pattern(const std::string& path, const std::string& option) {
  return in_shell_quotes(path + ":" + option);
}

constexpr std::string_view functions = R"(_firstpick_words() {
  local IFS=$'\n'
  mapfile -t COMPREPLY < <(compgen -W "$1" -- "$cur")
}

# Words with commas between them; none twice.
_firstpick_list() {
  local head= word
  if [[ $cur == *,* ]]; then head=${cur%,*},; fi
  while IFS= read -r word; do
    if [[ ,$head != *,"$word",* ]]; then COMPREPLY+=("$head$word"); fi
  done < <(IFS=$'\n'; compgen -W "$1" -- "${cur##*,}")
}

_firstpick_folders() {
  compopt -o filenames 2>/dev/null
  mapfile -t COMPREPLY < <(compgen -d -- "$cur")
}

# Files that end in $1, and folders to go into.
_firstpick_files() {
  compopt -o filenames 2>/dev/null
  if [[ -n $1 ]]; then
    mapfile -t COMPREPLY < <(compgen -d -- "$cur"; compgen -f -X "!*$1" -- "$cur")
  else
    mapfile -t COMPREPLY < <(compgen -f -- "$cur")
  fi
}

)";

}  // namespace

std::string bash_completion(const CommandWords& program) {
  std::string steps, values, options, arguments;
  for (const auto& [path, command] : all_commands(program)) {
    for (const CommandWords& inner : command->commands)
      steps += fmt::format("      {}) path={} ;;\n", pattern(path, inner.name),
                           in_shell_quotes(path + (path.empty() ? "" : " ") + inner.name));
    std::string names;
    for (const OptionWords& option : command->options) {
      for (const std::string& name : option.names) {
        names += (names.empty() ? "" : "\n") + name;
        if (option.value)
          values += fmt::format("    {}) {}; return ;;\n", pattern(path, name), offered(*option.value));
      }
    }
    options +=
        fmt::format("      {}) _firstpick_words {} ;;\n", in_shell_quotes(path), in_shell_quotes(names));
    std::string offer = ":";
    if (!command->arguments.empty()) offer = offered(command->arguments.front().value);
    if (!command->commands.empty()) {
      Value inner{.from = Value::From::words};
      for (const CommandWords& each : command->commands) inner.words.push_back(each.name);
      offer = offered(inner);
    }
    arguments += fmt::format("    {}) {} ;;\n", in_shell_quotes(path), offer);
  }
  return fmt::format(
      "# Completion of {0} for bash 4 or newer, written by: {0} completion bash\n\n"
      "{1}"
      "_firstpick() {{\n"
      "  local cur=${{COMP_WORDS[COMP_CWORD]}} before=${{COMP_WORDS[COMP_CWORD-1]}} path= i\n"
      "  COMPREPLY=()\n"
      "  # bash takes \"--rules=us\" apart at the sign\n"
      "  if [[ $cur == '=' ]]; then cur=; fi\n"
      "  if [[ $before == '=' ]]; then before=${{COMP_WORDS[COMP_CWORD-2]}}; fi\n"
      "  for ((i = 1; i < COMP_CWORD; i++)); do\n"
      "    case \"$path:${{COMP_WORDS[i]}}\" in\n{2}    esac\n"
      "  done\n"
      "  case \"$path:$before\" in\n{3}  esac\n"
      "  if [[ $cur == -* ]]; then\n"
      "    case \"$path\" in\n{4}    esac\n"
      "    return\n"
      "  fi\n"
      "  case \"$path\" in\n{5}  esac\n"
      "}}\n\n"
      "complete -F _firstpick {0}\n",
      program.name, functions, steps, values, options, arguments);
}

}  // namespace firstpick::editor
