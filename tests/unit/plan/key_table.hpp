// The list of keys as the tables of docs/plan-file.md.
#pragma once

#include <string>

#include "plan/keys.hpp"

namespace firstpick::tests {

// "| key | value | without it | meaning | example |" and a row for each key of the section.
std::string key_table(const plan::Section& section);

// The text with the lines between "<!-- keys of [[insert]] -->" and "<!-- end -->" written anew, for every
// section.
// A section without such marks is a failure of the test that asks.
std::string with_key_tables(std::string text, const plan::SectionList& list = plan::sections());

}  // namespace firstpick::tests
