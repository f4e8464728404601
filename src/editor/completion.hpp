// Completion scripts of shells, from the commands as the program defines them (command_editor.cpp walks
// those).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace firstpick::editor {

struct Value {  // what may stand behind an option, or as an argument
  enum class From { words, files, folders };
  From from = From::files;
  std::vector<std::string> words{};
  std::string suffix{};  // of the files: ".toml"; empty: any
  bool several = false;  // words, with a comma between each two
};

struct OptionWords {
  std::vector<std::string> names;  // "-o", "--output"
  std::string description;
  std::optional<Value> value{};  // a flag has none
};

struct Argument {
  std::string name;  // "PLAN"
  std::string description;
  Value value{};
  bool many = false;
};

struct CommandWords {
  std::string name;  // "check"; of the program itself "firstpick"
  std::string description;
  std::vector<OptionWords> options{};
  std::vector<Argument> arguments{};
  std::vector<CommandWords> commands{};
};

std::string bash_completion(const CommandWords& program);  // bash 4 or newer
std::string zsh_completion(const CommandWords& program);
std::string fish_completion(const CommandWords& program);

// A command with the names that lead to it: "record show". The program itself has none.
struct PathTo {
  std::string path;
  const CommandWords* command;
};
std::vector<PathTo> all_commands(const CommandWords& program);  // the program first

// `text` in single quotes of a shell, whatever it holds.
std::string in_shell_quotes(std::string_view text);

}  // namespace firstpick::editor
