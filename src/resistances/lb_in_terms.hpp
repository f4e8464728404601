// Terms of a step in pounds and inches: the coefficients of ACI 318 are printed in these units, and a
// formula that is tied to them must be shown with all its numbers in them.
#pragma once

#include <string>
#include <utility>

#include "record/trace.hpp"
#include "units/quantity.hpp"
#include "units/vector.hpp"

namespace firstpick::resistances {

Term lb_in(std::string symbol, Ratio number);
Term lb_in(std::string symbol, Length length);
Term lb_in(std::string symbol, Area area);
Term lb_in(std::string symbol, Force force);
Term lb_in(std::string symbol, Stress stress);
Term lb_in(std::string symbol, RootStress coefficient);
Term lb_in(std::string symbol, BreakoutCoefficient coefficient);
Term lb_in(std::string symbol, DeepBreakoutCoefficient coefficient);

// "+x", or "(0.707, 0.707, 0)" where a direction is not along an axis of the piece.
std::string direction_in_words(const Direction& direction);

}  // namespace firstpick::resistances
