// Terms of a step in millimetres, newtons and MPa: the units to which the coefficients of EN 1992-4 are tied.
#pragma once

#include <string>

#include "record/trace.hpp"
#include "tables/rule_set.hpp"
#include "units/quantity.hpp"

namespace firstpick::resistances {

Term mm_n(std::string symbol, Ratio number);
Term mm_n(std::string symbol, Length length);
Term mm_n(std::string symbol, Area area);
Term mm_n(std::string symbol, Force force);
Term mm_n(std::string symbol, Stress stress);
Term mm_n(std::string symbol, RootStress coefficient);
Term mm_n(std::string symbol, BreakoutCoefficient coefficient);

// In the units of the model's own standard, for steps that both have: mm and N of EN 1992-4, in and lb of ACI 318.
Term term_of(const tables::HeadedInsertModel& model, std::string symbol, Ratio number);
Term term_of(const tables::HeadedInsertModel& model, std::string symbol, Length length);
Term term_of(const tables::HeadedInsertModel& model, std::string symbol, Area area);
Term term_of(const tables::HeadedInsertModel& model, std::string symbol, Force force);
Term term_of(const tables::HeadedInsertModel& model, std::string symbol, Stress stress);

}  // namespace firstpick::resistances
