// Every constant of a model of a rule set with its source, in the order of the model: to see what two sets have differently.
#pragma once

#include <optional>
#include <vector>

#include "record/source.hpp"
#include "tables/rule_set.hpp"

namespace firstpick::comparison {

using Sources = std::vector<const Source*>;  // into the model, which must outlive them

// Of a model of EN 1992-4 only what that model reads.
Sources sources_of(const tables::HeadedInsertModel& model);
Sources sources_of(const tables::CrackingModel& model);
Sources sources_of(const tables::PrestressModel& model);
Sources sources_of(const tables::BarModel& model);
Sources sources_of(const std::optional<tables::AnchorBarModel>& model);  // none where there is none

}  // namespace firstpick::comparison
