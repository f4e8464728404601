// What a rule answered: its value, or why there is none. The wrong one of the two fails the test and prints
// the other.
#pragma once

#include <string>

#include <catch2/catch.hpp>

#include "record/outcome.hpp"

namespace firstpick::tests {

template <class T>
T assessed(const Outcome<T>& outcome) {
  if (const auto* missing = std::get_if<NotAssessed>(&outcome)) FAIL("not assessed: " << missing->why);
  return std::get<T>(outcome);
}

template <class T>
std::string why_not(const Outcome<T>& outcome) {
  if (is_assessed(outcome)) FAIL("assessed, and should not have been");
  return std::get<NotAssessed>(outcome).why;
}

template <class T>
std::string remedy_for(const Outcome<T>& outcome) {
  if (is_assessed(outcome)) FAIL("assessed, and should not have been");
  return std::get<NotAssessed>(outcome).remedy;
}

}  // namespace firstpick::tests
