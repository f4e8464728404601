// Every shift file in tests/plans/bad_shifts carries the diagnostics it must get: none missing, none more.

#include "plan/shift_file.hpp"
#include "support/expected_faults.hpp"
#include "support/plan_files.hpp"

using namespace firstpick;
using namespace firstpick::tests;

TEST_CASE("every broken shift file gets exactly the faults that it says") {
  const auto files = test_plans("bad_shifts");
  REQUIRE(files.size() >= 10);
  for (const std::string& file : files) {
    const std::string text = contents_of(file);
    const auto read = plan::read_shift_file(file, text, real_tables());
    CAPTURE(file);
    REQUIRE(std::holds_alternative<std::vector<Diagnostic>>(read));
    CHECK(written(std::get<std::vector<Diagnostic>>(read)) == expected(text));
  }
}

TEST_CASE("the example of docs/shift-file.md, and the demo, can be read") {
  const std::string page = contents_of("docs/shift-file.md"), begin = "<!-- example -->\n```toml\n";
  const std::size_t at = page.find(begin);
  REQUIRE(at != std::string::npos);
  const std::size_t from = at + begin.size();
  for (const std::string& text : {page.substr(from, page.find("```", from) - from), contents_of("docs/demo/shift.toml")}) {
    const auto read = plan::read_shift_file("shift.toml", text, real_tables());
    if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&read)) FAIL(show(faults->front(), text));
    CHECK(std::get<plan::Shift>(read).pieces.size() >= 2);
  }
}

TEST_CASE("a shift across the night of a change is as long as it is") {
  const auto hours = [](const std::string& starts, const std::string& ends) {
    const auto read =
        plan::read_shift_file("shift.toml",
                              "format = 1\nplant = \"P\"\nzone = \"America/Chicago\"\nstarts = " + starts +
                                  "\nends = " + ends + "\n[[piece]]\nplan = \"a.toml\"\ncount = 1\n",
                              real_tables());
    REQUIRE(std::holds_alternative<plan::Shift>(read));
    const auto& shift = std::get<plan::Shift>(read);
    return static_cast<double>(shift.ends.seconds - shift.starts.seconds) / 3600.0;
  };
  CHECK(hours("2026-03-07T22:00:00", "2026-03-08T06:00:00") == 7.0);
  CHECK(hours("2026-10-31T22:00:00", "2026-11-01T06:00:00") == 9.0);
  CHECK(hours("2026-03-03T22:00:00", "2026-03-04T06:00:00") == 8.0);
  CHECK(hours("2026-11-01T01:30:00-05:00", "2026-11-01T01:30:00-06:00") == 1.0);
}
