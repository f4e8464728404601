#include "command_listings.hpp"

#include <iostream>

#include "output/listings.hpp"

namespace firstpick {

void list_tables(const ListCommand& command, const tables::Tables& tables) {
  std::cout << (command.json
                    ? output::tables_json(tables.entries, command.filter, command.unconfirmed)
                    : output::tables_text(tables.entries, command.filter, command.unconfirmed, command.width));
}

void list_rules(const ListCommand& command, const tables::Tables& tables) {
  std::vector<output::RuleSetLine> sets;
  for (const auto& [id, set] : tables.rule_sets) {
    output::RuleSetLine line{id, set.title, {}};
    for (const auto& mandatory : set.mandatory) line.mandatory.push_back(mandatory.rule);
    sets.push_back(std::move(line));
  }
  std::cout << (command.json ? output::rules_json(sets, command.filter)
                             : output::rules_text(sets, command.filter, command.width));
}

}  // namespace firstpick
