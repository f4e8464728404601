// What the breakout formulas of both standards have in common.
#pragma once

#include <optional>
#include <string>

#include "resistances/breakout.hpp"

namespace firstpick::resistances {

std::string inserts_in_words(Group group);  // "insert A", "inserts A, B"

// Why this group is outside the range of the formulas; nothing: it is inside.
std::optional<NotAssessed> outside_range(Group group, const GroupLayout& layout, Stress f_c,
                                         const tables::HeadedInsertModel& model);

// The formula of the area of the body on the face, where it is a rectangle; empty where it is cut in another shape.
struct AreaFormula {
  std::string formula;
  std::array<Length, 4> c;
};
std::optional<AreaFormula> area_formula(Group group, const GroupLayout& layout, Length reach, Area area);

}  // namespace firstpick::resistances
