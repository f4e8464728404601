#include "editor/completion.hpp"

namespace firstpick::editor {
namespace {

void add(std::vector<PathTo>& list, const CommandWords& command, const std::string& path) {
  list.push_back({path, &command});
  for (const CommandWords& inner : command.commands)
    add(list, inner, path + (path.empty() ? "" : " ") + inner.name);
}

}  // namespace

std::vector<PathTo> all_commands(const CommandWords& program) {
  std::vector<PathTo> list;
  add(list, program, "");
  return list;
}

std::string in_shell_quotes(std::string_view text) {
  std::string quoted = "'";
  for (const char c : text) quoted += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return quoted + "'";
}

}  // namespace firstpick::editor
