// The faults of one plan, collected while it is read, each at its place in the plan's text.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "record/diagnostic.hpp"
#include "tables/toml_file.hpp"

namespace firstpick::plan {

class Faults {
 public:
  Faults(std::string file, std::string_view text);

  Place place_of(const toml::source_region& region) const;

  void add(Place place, std::string what, std::string help = {}, std::size_t length = 1);

  // With the caret under the whole key or value, as far as it stands on one line.
  void at(const toml::source_region& region, std::string what, std::string help = {});

  // With the caret under byte `offset` of a string, where the file writes the string without escapes.
  void inside(const toml::value<std::string>& string, std::size_t offset, std::string what,
              std::string help = {});

  bool none() const { return all_.empty(); }
  std::vector<Diagnostic> in_order_of_place() const;

 private:
  struct Line {
    std::string_view text;
    bool ascii = true;  // columns of characters are columns of bytes
  };

  std::string file_;
  std::vector<Line> lines_;
  std::vector<Diagnostic> all_;
};

// A name out of the plan for a message: quoted, cut where it is long, safe to print.
std::string in_quotes(std::string_view text);

// What stands in the file: "a number", "a string", "a list", ...
std::string_view given(const toml::node& node);

}  // namespace firstpick::plan
