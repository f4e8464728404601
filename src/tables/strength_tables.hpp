// The tables of strength over time: maturity.toml, growth-curves.toml, acceptance.toml.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "tables/entry_reader.hpp"
#include "tables/tables.hpp"

namespace firstpick::tables {

MaturityConstants maturity_constants(EntryReader& read);  // reads the whole table
AcceptanceLimits acceptance_limits(EntryReader& read);    // reads the whole table

// Two of one table: the caller refuses what neither has asked for.
std::map<std::string, GrowthCurve> growth_curves(EntryReader& read);
std::vector<GrowthBand> growth_bands(EntryReader& read);

}  // namespace firstpick::tables
