// Inserts that fail together: a group breaks out or is pried out, a row blows a side out or breaks an edge.
#pragma once

#include <span>

#include "checks/loaded_inserts.hpp"
#include "checks/mode_check.hpp"

namespace firstpick::checks {

// The groups or rows in which inserts fail together in this mode; none where each fails alone.
std::size_t number_of_sets(Mode mode, const StageFacts& facts);
std::span<const std::size_t> inserts_of_set(Mode mode, const StageFacts& facts, std::size_t set);

// Those of the set that take part in this situation: they carry tension or shear, and not away from the edge
// of their row.
LoadedInserts taking_part(Mode mode, const StageFacts& facts, const InsertSituation& situation,
                          std::size_t set);

// Their resultant against what they hold together. `together` acts together, of this set in this situation.
ModeCheck check_together(Mode mode, const StageFacts& facts, const InsertSituation& situation,
                         std::size_t set, const LoadedInserts& together, Trace& trace);

// Of a row against a shear towards its edge and along it.
ModeCheck check_edge_row(const StageFacts& facts, const InsertSituation& situation,
                         const resistances::EdgeRow& row, const LoadedInserts& together, Stress f_c,
                         Trace& trace);

}  // namespace firstpick::checks
