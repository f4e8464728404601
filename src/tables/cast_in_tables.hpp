#pragma once

#include "tables/cast_in_models.hpp"
#include "tables/entry_reader.hpp"

namespace firstpick::tables {

LoopModel loop_model(EntryReader& read);
PlateModel plate_model(EntryReader& read);

}  // namespace firstpick::tables
