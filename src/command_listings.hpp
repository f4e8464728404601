// firstpick tables and firstpick rules: what there is, to standard output.
#pragma once

#include <cstddef>
#include <string>

#include "tables/tables.hpp"

namespace firstpick {

struct ListCommand {
  std::string filter;
  bool json = false, unconfirmed = false;
  std::size_t width = 80;
};

void list_tables(const ListCommand& command, const tables::Tables& tables);
void list_rules(const ListCommand& command, const tables::Tables& tables);

}  // namespace firstpick
