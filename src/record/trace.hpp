// The calculation as it was done: each computed number leaves a step where it is computed.
//
// A step's formula is written in the step's own symbols (+ - * / ^ sqrt ln min max sin cos tan, numbers, parentheses) so
// that a reader with a calculator, and the trace test, can re-compute the result from the printed numbers.
// Steps cost nothing when nobody asks for them: `add` takes a function that makes the step, called only when recording.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "record/source.hpp"

namespace firstpick {

// A symbol with its number in the printed unit: {"h_ef", 152.4, "mm"}. unit "1" is a plain number.
struct Term {
  std::string symbol;
  double number = 0.0;
  std::string unit;
};

struct Step {
  std::string words;            // "basic concrete breakout strength of one insert"
  Term result;                  // symbol = formula
  std::string formula{};        // "k_c * sqrt(f_c) * h_ef^1.5"; empty: the result is taken as given
  std::vector<Term> given{};    // every symbol of the formula
  std::string clause{};         // "ACI 318-19 17.6.2.2.1"
  std::vector<Source> sources{};  // table entries that took part
};

class Trace {
 public:
  Trace() = default;                                 // records nothing
  static Trace recording() { Trace t; t.recording_ = true; return t; }

  bool is_recording() const { return recording_; }

  template <class MakeStep>
  void add(MakeStep&& make_step) {
    if (recording_) steps_.push_back({subject_, std::forward<MakeStep>(make_step)()});
  }
  // What the steps that follow are about: "strip / insert A1 / breakout".
  template <class MakeText>
  void about(MakeText&& make_text) {
    if (recording_) subject_ = std::forward<MakeText>(make_text)();
  }

  struct Entry {
    std::string subject;
    Step step;
  };
  const std::vector<Entry>& steps() const { return steps_; }

 private:
  bool recording_ = false;
  std::string subject_;
  std::vector<Entry> steps_;
};

}  // namespace firstpick
