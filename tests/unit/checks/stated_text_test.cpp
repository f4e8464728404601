// A text of the plan that names something: an engineer, a certificate, a written plan.

#include <catch2/catch.hpp>

#include "checks/stated_text.hpp"

using firstpick::checks::is_stated;

TEST_CASE("names, numbers and words of any script say something") {
  for (const char* text : {"R. Engineer", "24-117", "7", "lot 5", "\u5c0f\u6797", "No. 12", "no 12",
                           "Nolan", "~7~", "{a}", "X-0", "x. z."})
    CHECK(is_stated(text));
}

TEST_CASE("blanks, marks and words for nothing say nothing, however they are written") {
  for (const char* text : {"",
                           " ",
                           "-",
                           "?",
                           "...",
                           "{}~|",
                           "@[\\]^_`",
                           "none",
                           "None",
                           " NONE ",
                           "no",
                           "n/a",
                           "N.A.",
                           "TBD",
                           "t.b.d.",
                           "to be confirmed",
                           "unknown",
                           "missing",
                           "pending",
                           "not yet",
                           "yes",
                           "OK",
                           "xxx",
                           "no certificate",
                           "not issued",
                           "No lot known",
                           "- none so far",
                           "without a number",
                           "(awaiting it)"}) {
    CAPTURE(text);
    CHECK_FALSE(is_stated(text));
  }
}
