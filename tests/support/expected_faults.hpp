// The faults that a file says of itself it must get, as comment lines in it, and those it got, as the same
// text.
//
//   #: 14:1 [[rigging]] has no key 'sling_angel'   line, column, what is wrong; 0:0 is the file as a whole
//   #: help did you mean 'sling_angle'?            belongs to the line above; without help there is no such line
#pragma once

#include <algorithm>
#include <sstream>
#include <string>
#include <vector>

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "record/diagnostic.hpp"

namespace firstpick::tests {

// "14:1 what" and, where there is help, "14:1 what\n  help ...".
inline std::vector<std::string> expected(const std::string& text) {
  std::vector<std::string> all;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    if (!line.starts_with("#: ")) continue;
    line.erase(0, 3);
    if (!line.starts_with("help ")) {
      all.push_back(line);
      continue;
    }
    REQUIRE_FALSE(all.empty());
    all.back() += "\n  " + line;
  }
  std::ranges::sort(all);
  return all;
}

inline std::vector<std::string> written(const std::vector<Diagnostic>& faults) {
  std::vector<std::string> all;
  for (const Diagnostic& fault : faults)
    all.push_back(fmt::format("{}:{} {}{}{}", fault.place.line, fault.place.column, printable(fault.what),
                              fault.help.empty() ? "" : "\n  help ", printable(fault.help)));
  std::ranges::sort(all);
  return all;
}

}  // namespace firstpick::tests
