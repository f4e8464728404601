// firstpick schema, completion and new: what helps to write plans.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "tables/tables.hpp"

namespace CLI {
class App;
}

namespace firstpick {

class EditorCommands {
 public:
  // Adds the three commands to `app`, which must outlive this; `add_tables_options` to those that read
  // tables.
  EditorCommands(CLI::App& app, const std::function<void(CLI::App&)>& add_tables_options);

  bool chosen() const;
  int run(const std::function<std::optional<tables::Tables>()>& read_tables) const;  // exit status

 private:
  int write_schema(const tables::Tables& tables) const;
  int write_completion(const tables::Tables& tables) const;
  int write_new() const;

  CLI::App& app_;
  CLI::App *schema_, *completion_, *new_;
  std::string file_kind_ = "plan", shell_, kind_, units_ = "si", output_;
};

}  // namespace firstpick
