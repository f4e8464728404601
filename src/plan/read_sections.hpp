// One function for each section of a plan: its table as the struct of plan.hpp. Faults go to the reading.
#pragma once

#include "plan/fields.hpp"
#include "plan/layout.hpp"

namespace firstpick::plan {

Piece read_piece(const toml::table& table, Reading& reading);
Evidence read_evidence(const toml::table& table, const Section& section, Reading& reading);
Concrete read_concrete(const toml::table& table, Reading& reading);
Form read_form(const toml::table& table, Reading& reading);
Insert read_insert(const toml::table& table, Reading& reading);
Sling read_sling(const toml::table& table, Reading& reading);
Hardware read_hardware(const toml::table& table, Reading& reading);
Crane read_crane(const toml::table& table, Reading& reading);
Rigging read_rigging(const toml::table& table, Reading& reading);
Turn read_turn(const toml::table& table, const Stage& stage, Reading& reading);
Landing read_landing(const toml::table& table, Reading& reading);
ScaleReading read_scale_reading(const toml::table& table, Reading& reading);
Stage read_stage(const toml::table& table, Reading& reading);
Layout read_layout(const toml::table& table, Reading& reading);

}  // namespace firstpick::plan
