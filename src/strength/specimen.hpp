// Test specimens: their names in words, and what their strength is worth as cylinder strength.
#pragma once

#include <string>

#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/source.hpp"
#include "tables/tables.hpp"

namespace firstpick::strength {

// "cylinder 4x8 in", "cylinder 150x300 mm", "cube 150 mm": inches where the width is a whole number of them.
std::string words_for(const plan::Specimen& specimen);
std::string plural_words_for(const plan::Specimen& specimen);  // "cylinders 4x8 in"

// The entry of the tables for this shape and size; the one with the lowest conversion where several match;
// null where there is none.
const tables::SpecimenKind* kind_of(const plan::Specimen& specimen, const tables::Tables& tables);

// Strength of a standard cylinder over strength of this specimen, from tables/specimens.toml.
// Not assessed: a shape and size that no entry is for; a factor that is not positive and finite.
Outcome<Sourced<Ratio>> to_cylinder(const plan::Specimen& specimen, const tables::Tables& tables);

}  // namespace firstpick::strength
