// Writes a plan to start from, section by section, with the words and examples of the list of keys.
//
// A key that is given stands there, its number marked EXAMPLE. A key that is a fact of this piece (measured,
// read off a tag, seen by somebody) is a comment with the example of the list: the plan is HOLD until it is
// written.
#pragma once

#include <set>
#include <string>
#include <string_view>

#include "plan/keys.hpp"
#include "units/print.hpp"

namespace firstpick::editor {

class PlanWriter {
 public:
  explicit PlanWriter(UnitSystem units) : units_(units) {}

  void note(std::string_view words);          // a line of comment
  void open(std::string_view path);           // "[[piece.solid]]"
  void open_to_write(std::string_view path);  // "# [concrete.evidence]": all its keys are facts
  void given(std::string_view key, std::string_view value);
  void to_write(std::string_view key);  // with the example of the list
  void to_write(std::string_view key, std::string_view value);
  void to_write_inside(std::string_view path);  // "# rating = { load = ... }", or rating.load and so on where that is too wide
  void rest_to_write();                         // what is left of the section whose absence is HOLD
  void line(std::string_view text) { text_.append(text).append("\n"); }

  const std::string& text() const { return text_; }

 private:
  const plan::Key& key_named(std::string_view name) const;
  std::string example_of(const plan::Key& key) const;
  void put(std::string written, const plan::Key& key, std::string_view mark);

  UnitSystem units_;
  const plan::Section* section_ = nullptr;
  std::set<std::string> done_{},
      told_{};  // keys of this section; "section.key" whose words stand there already
  std::string text_{};
};

// `example` of the list in units of one system: "\"11250 lb\"" as "\"5100 kg\"". Two figures are enough of
// it.
std::string example_in(UnitSystem units, const plan::Key& key);

}  // namespace firstpick::editor
