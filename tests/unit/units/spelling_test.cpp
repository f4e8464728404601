#include "units/spelling.hpp"

#include <catch2/catch.hpp>

using namespace firstpick;

TEST_CASE("edits between words") {
  CHECK(edit_distance("", "") == 0);
  CHECK(edit_distance("kip", "kip") == 0);
  CHECK(edit_distance("", "kip") == 3);
  CHECK(edit_distance("kip", "") == 3);
  CHECK(edit_distance("kip", "kips") == 1);
  CHECK(edit_distance("fot", "ft") == 1);
  CHECK(edit_distance("kpi", "kip") == 1);
  CHECK(edit_distance("angel", "angle") == 1);
  CHECK(edit_distance("kN", "psi") == 3);
  CHECK(edit_distance("kitten", "sitting") == 3);
}

TEST_CASE("edits between words whose capitals do not count") {
  CHECK(edit_distance("MPA", "mpa") == 3);
  CHECK(edit_distance("MPA", "mpa", Capitals::do_not_count) == 0);
  CHECK(edit_distance("Sling_Angel", "sling_angle", Capitals::do_not_count) == 1);
}

TEST_CASE("words that differ only in capitals") {
  CHECK(same_but_for_case("mpa", "MPa"));
  CHECK(same_but_for_case("", ""));
  CHECK_FALSE(same_but_for_case("MP", "MPa"));
  CHECK_FALSE(same_but_for_case("MPa", "GPa"));
  CHECK_FALSE(same_but_for_case("@", "`"));  // 32 apart, like a letter and its capital
}
