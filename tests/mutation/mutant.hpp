// What tests/mutation/mutate.py writes into its copy of src: every change is compiled in, and the environment variable
// FIRSTPICK_MUTANT switches one of them on. FIRSTPICK_MUTANTS_REACHED names a file for the numbers of those passed by.
//
//   a + b          a + mutant::at<17>() + b             the same precedence; `-` where 17 is on
//   a && b         ((bool(a) != m) && (bool(b) != m)) != m      m = mutant::on(17): then it is a || b, lazy as before
//   1.5            mutant::number<17>(1.5)
//
// Where the changed operator does not exist for the types, or gives another type, the compiler would have stopped it: the
// types caught it. FIRSTPICK_MUTANTS_STOPPED names a file for the numbers of those.
#pragma once

#include <algorithm>
#include <atomic>
#include <concepts>
#include <cstdio>
#include <cstdlib>
#include <iterator>
#include <type_traits>

#include <boost/units/quantity.hpp>

namespace mutant {

inline constexpr int most = 10000;

struct State {
  int active = std::getenv("FIRSTPICK_MUTANT") ? std::atoi(std::getenv("FIRSTPICK_MUTANT")) : 0;
  const char* reached_file = std::getenv("FIRSTPICK_MUTANTS_REACHED");
  const char* stopped_file = std::getenv("FIRSTPICK_MUTANTS_STOPPED");
  std::atomic<unsigned char> reached[most] = {}, stopped[most] = {};

  ~State() {
    write(reached_file, reached);
    write(stopped_file, stopped);
  }
  static void write(const char* name, const std::atomic<unsigned char>* marks) {
    std::FILE* file = name ? std::fopen(name, "w") : nullptr;
    if (!file) return;
    for (int number = 0; number < most; ++number)
      if (marks[number].load(std::memory_order_relaxed)) std::fprintf(file, "%d\n", number);
    std::fclose(file);
  }
};

inline State& state() {
  static State one;
  return one;
}

inline bool on(int number) {
  State& now = state();
  if (now.reached_file) now.reached[number].store(1, std::memory_order_relaxed);
  return now.active == number;
}

template <int number>
struct At {};
template <int number>
At<number> at() {
  return {};
}

// The left side of an operator that is waiting for its right side.
template <int number, char op, class A>
struct Left {
  const A& value;
};

// An iterator may be compared, but is not moved the other way.
template <class T, class = void>
struct IsPlace : std::is_pointer<std::decay_t<T>> {};
template <class T>
struct IsPlace<T, std::void_t<typename std::iterator_traits<std::decay_t<T>>::iterator_category>> : std::true_type {};

// Where an operator is taken for types that the other one does not serve alike, the compiler would stop the change: the
// source stays as it is and the number is told when the program starts.
template <int number>
inline const bool stopped_by_types = [] {
  if (number < most) state().stopped[number].store(1, std::memory_order_relaxed);
  return true;
}();

#define MUTANT_RESULT(number, op, other)                                            \
  using As = decltype(left.value op right);                                         \
  if constexpr (requires {                                                          \
                  { left.value other right } -> std::same_as<As>;                   \
                } && !IsPlace<A>::value) {                                          \
    if (on(number)) return As(left.value other right);                              \
  } else {                                                                          \
    (void)stopped_by_types<number>;                                                 \
  }                                                                                 \
  return As(left.value op right)

#define MUTANT_COMPARED(number, op, other) \
  return on(number) ? bool(left.value other right) : bool(left.value op right)

// `same` names the operator: one of + - * / < > l (<=) g (>=) = (==) ! (!=).
#define MUTANT_OPERATOR(op, same, other, RESULT)                                                \
  template <int number, class A>                                                                \
  Left<number, same, A> operator op(const A& value, At<number>) {                               \
    return {value};                                                                             \
  }                                                                                             \
  template <int number, class A, class B>                                                       \
  auto operator op(const Left<number, same, A>& left, const B& right) {                         \
    RESULT(number, op, other);                                                                  \
  }

MUTANT_OPERATOR(+, '+', -, MUTANT_RESULT)
MUTANT_OPERATOR(-, '-', +, MUTANT_RESULT)
MUTANT_OPERATOR(*, '*', /, MUTANT_RESULT)
MUTANT_OPERATOR(/, '/', *, MUTANT_RESULT)
MUTANT_OPERATOR(<, '<', >=, MUTANT_COMPARED)
MUTANT_OPERATOR(>, '>', <=, MUTANT_COMPARED)
MUTANT_OPERATOR(<=, 'l', <, MUTANT_COMPARED)
MUTANT_OPERATOR(>=, 'g', >, MUTANT_COMPARED)
MUTANT_OPERATOR(==, '=', !=, MUTANT_COMPARED)
MUTANT_OPERATOR(!=, '!', ==, MUTANT_COMPARED)

// Quantities multiply by anything; these are more special than that.
#define MUTANT_QUANTITY(op, same, other)                                                                    \
  template <int number, class Unit, class Y>                                                                \
  Left<number, same, boost::units::quantity<Unit, Y>> operator op(const boost::units::quantity<Unit, Y>& value, \
                                                                  At<number>) {                             \
    return {value};                                                                                         \
  }                                                                                                         \
  template <int number, class A, class Unit, class Y>                                                       \
  auto operator op(const Left<number, same, A>& left, const boost::units::quantity<Unit, Y>& right) {       \
    MUTANT_RESULT(number, op, other);                                                                       \
  }
MUTANT_QUANTITY(*, '*', /)
MUTANT_QUANTITY(/, '/', *)

template <int number, class T>
T flipped(const T& value) {  // of += and -=
  if constexpr (requires { T(-value); }) {
    if (on(number)) return T(-value);
  } else {
    (void)stopped_by_types<number>;
  }
  return value;
}
template <int number, class T>
T inverse(const T& value) {  // of *= and /=
  if constexpr (requires {
                  { 1.0 / value } -> std::same_as<T>;
                }) {
    if (on(number)) return T(1.0 / value);
  } else {
    (void)stopped_by_types<number>;
  }
  return value;
}
template <int number>
double tenth_more(double value) {
  return on(number) ? value * 1.1 : value;
}
template <int number, class T>
T one_more(T value) {
  return on(number) ? static_cast<T>(value + 1) : value;
}
template <int number, class T, class... Less>
T least(const T& a, const T& b, Less... less) {
  return on(number) ? std::max(a, b, less...) : std::min(a, b, less...);
}
template <int number, class T>
T least(std::initializer_list<T> all) {
  return on(number) ? std::max(all) : std::min(all);
}
template <int number, class T, class... Less>
T greatest(const T& a, const T& b, Less... less) {
  return on(number) ? std::min(a, b, less...) : std::max(a, b, less...);
}
template <int number, class T>
T greatest(std::initializer_list<T> all) {
  return on(number) ? std::min(all) : std::max(all);
}

}  // namespace mutant
