// The rule sets "us" and "eu" as they stand in tables/, for tests that hold the tables against published numbers.
#pragma once

#include <catch2/catch.hpp>

#include "record/diagnostic.hpp"
#include "tables/tables.hpp"

namespace firstpick::tests {

inline const tables::Tables& us_tables() {
  static const auto read = tables::read_tables("tables");
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&read))
    FAIL("tables/ cannot be read: " << show(faults->front()));
  return std::get<tables::Tables>(read);
}

inline const tables::RuleSet& us_rules() { return us_tables().rule_sets.at("us"); }
inline const tables::RuleSet& eu_rules() { return us_tables().rule_sets.at("eu"); }

}  // namespace firstpick::tests
