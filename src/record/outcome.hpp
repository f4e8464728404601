// A value or the reason why there is none; and the two kinds of value that the verdict compares.
#pragma once

#include <string>
#include <utility>
#include <variant>

namespace firstpick {

struct NotAssessed {
  std::string why;
  std::string remedy;  // what to write in the plan, or to change, so that it can be assessed
};

template <class T>
using Outcome = std::variant<T, NotAssessed>;

template <class T>
bool is_assessed(const Outcome<T>& outcome) {
  return std::holds_alternative<T>(outcome);
}

// Two types, no default value: a demand cannot be passed for a resistance, nor silently be zero.
template <class Q>
struct Demand {
  explicit Demand(Q q) : value(std::move(q)) {}
  Q value;
};

template <class Q>
struct Resistance {
  explicit Resistance(Q q) : value(std::move(q)) {}
  Q value;
};

}  // namespace firstpick
