// Where a value comes from, and who has confirmed it: the fields basis, source, locator, note and the plant's
// confirmed_by, edition, confirmed_on of an [[entry]]. Incomplete provenance is a fault. Rules: docs/tables.md.
#pragma once

#include "record/source.hpp"
#include "tables/fields.hpp"
#include "tables/source_list.hpp"

namespace firstpick::tables {

// Fills in `source`, whose id is already read. `sources` may be nullptr: then no source is looked up.
void read_provenance(Fields& fields, Source& source, const SourceList* sources, bool of_plant);

}  // namespace firstpick::tables
