// What a plan allows `firstpick layout` to move; and the text of a plan with its picks elsewhere.

#include <catch2/catch.hpp>

#include "plan/rewrite_picks.hpp"
#include "unit/plan/plan_text.hpp"

using namespace firstpick;
using namespace firstpick::plan;
using namespace firstpick::tests;

namespace {

const std::string allowed = R"(
[layout]
step = "2 in"
legs = "keep-angle"
edge_distance = "6 in"

[[layout.move]]
inserts = ["A1", "A2"]
along = "x"
mirror = true
about = "1 m"
from = "0.1 m"
to = "0.9 m"

[[layout.move]]
inserts = "A1"
along = "y"

[[layout.keep_out]]
corners = [["2 m", "0 m", "1 m"], ["1 m", "3 m", "0 m"]]
)";

std::vector<std::string> faults_with(std::string_view from, std::string_view to) {
  return faults_of(with(whole_plan() + allowed, from, to));
}

Plan moved(Plan plan) {
  plan.inserts[0].at.x += 25.4 * mm;
  plan.inserts[1].at.y = 1.2345 * m;
  *plan.riggings[0].legs[1].length += 1.0 * ft;
  return plan;
}

}  // namespace

TEST_CASE("layout: every key is read, and a keep-out box may be written from any corner") {
  const std::string text = whole_plan() + allowed;
  const auto read = read_plan_with_layout("plan.toml", text, plan_words());
  REQUIRE(std::holds_alternative<PlanWithLayout>(read));
  const auto& layout = std::get<PlanWithLayout>(read).layout;
  REQUIRE(layout);
  CHECK(in(mm, layout->step) == Approx(50.8));
  CHECK(layout->legs == LegLengths::keep_angle);
  CHECK(in(mm, layout->edge_distance.value()) == Approx(152.4));
  REQUIRE(layout->moves.size() == 2);
  CHECK(layout->moves[0].inserts.size() == 2);
  CHECK(layout->moves[0].mirror);
  CHECK(in(m, layout->moves[0].about.value()) == 1.0);
  CHECK(in(m, layout->moves[0].from.value()) == 0.1);
  CHECK(in(m, layout->moves[0].to.value()) == 0.9);
  CHECK(layout->moves[1].along == Axis::y);
  CHECK_FALSE(layout->moves[1].mirror);
  REQUIRE(layout->keep_outs.size() == 1);
  CHECK(in(m, layout->keep_outs[0].corners[0].x) == 1.0);
  CHECK(in(m, layout->keep_outs[0].corners[1].z) == 1.0);
}

TEST_CASE("layout: the plan itself is the same with and without it") {
  CHECK(faults_of(whole_plan() + allowed).empty());
  CHECK(plan_of(whole_plan() + allowed).inserts.size() == plan_of(whole_plan()).inserts.size());
}

TEST_CASE("layout: an insert twice on one axis, a plane of no mirror, a mirror of one, a range without room") {
  const auto twice = faults_with("inserts = \"A1\"\nalong = \"y\"", "inserts = \"A1\"\nalong = \"x\"");
  REQUIRE(twice.size() == 1);
  CHECK(twice.front().find("insert 'A1' moves along x already, in line") != std::string::npos);
  const auto no_mirror = faults_with("mirror = true", "mirror = false");
  REQUIRE(no_mirror.size() == 1);
  CHECK(no_mirror.front().find("'about' is the plane of 'mirror'") != std::string::npos);
  const auto alone = faults_with("[\"A1\", \"A2\"]", "[\"A2\"]");
  REQUIRE(alone.size() == 1);
  CHECK(alone.front().find("one insert alone has no mirror image") != std::string::npos);
  const auto no_room = faults_with("to = \"0.9 m\"", "to = \"0.1 m\"");
  REQUIRE(no_room.size() == 1);
  CHECK(no_room.front().find("'to' is not more than 'from'") != std::string::npos);
}

TEST_CASE("layout: what it needs, and names that nothing has") {
  CHECK(faults_with("step = \"2 in\"\n", "").size() == 1);
  CHECK(faults_with("step = \"2 in\"", "step = \"0 in\"").size() == 1);
  CHECK(faults_with("legs = \"keep-angle\"", "legs = \"longer\"").size() == 1);
  CHECK(faults_with("inserts = \"A1\"", "inserts = \"A9\"").size() == 1);
  CHECK(faults_of(whole_plan() + "[layout]\nstep = \"1 in\"\nlegs = \"keep-length\"\n").size() == 1);  // nothing moves
}

TEST_CASE("a length is written in the units and with the decimals of the one that stood there") {
  const Length length = 1.2345 * m;
  CHECK(written_like("0.83 m", 1.2 * m) == "1.20 m");
  CHECK(written_like("0.83 m", length) == "1.234 m");  // to the millimetre
  CHECK(written_like("2 m", 3.0 * m) == "3 m");
  CHECK(written_like("830 mm", length) == "1234 mm");
  CHECK(written_like("83 cm", 1.235 * m) == "123.5 cm");
  CHECK(written_like("10 in", 12.5 * inch) == "12 1/2 in");
  CHECK(written_like("10 in", 0.0625 * inch) == "1/16 in");
  CHECK(written_like("10 in", -3.25 * inch) == "-3 1/4 in");
  CHECK(written_like("1 ft 4 in", 8.0 * ft + 4.5 * inch) == "8 ft 4 1/2 in");
}

TEST_CASE("only the places that changed are written anew, every other byte stays") {
  const std::string text = with(whole_plan(), R"(at = ["0.5 m", "0.5 m", "0.5 m"]
shank)", R"(at = [ '20 in',  "0.5 m", "0.5 m"] # where the \u00e9 drawing says, "0.5 m" from the end
shank)");
  const Plan before = plan_of(text), after = moved(before);
  const auto made = with_picks_of("plan.toml", text, before, after);
  REQUIRE(std::holds_alternative<std::string>(made));
  std::string expected = with(text, "'20 in'", "'21 in'");
  expected = with(expected, R"(at = ["1.5 m", "0.5 m", "0.5 m"])", R"(at = ["1.5 m", "1.234 m", "0.5 m"])");
  expected = with(expected, "\"1.1 m\"", "\"1.405 m\"");
  CHECK(std::get<std::string>(made) == expected);
  const auto same = with_picks_of("plan.toml", text, before, before);
  REQUIRE(std::holds_alternative<std::string>(same));
  CHECK(std::get<std::string>(same) == text);
}

TEST_CASE("letters beyond ASCII before a value do not shift where it is written") {
  const std::string text = with(whole_plan(), "title = \"Block\"", "title = \"B\xC3\xB6tte \xE2\x80\x93\"");
  const std::string one_line = with(text, R"(legs = [
  { to = "A1", length = "1 m", gear = "chain" },
  { to = "A2", length = "1.1 m", gear = "chain" },
])", "legs = [ { to = \"A1\", length = \"1 m\" }, { gear = \"chain\", to = \"A2\", length = \"1.1 m\" } ] # \xC3\xB6");
  const Plan before = plan_of(one_line);
  const auto made = with_picks_of("plan.toml", one_line, before, moved(before));
  REQUIRE(std::holds_alternative<std::string>(made));
  CHECK(std::get<std::string>(made).find("length = \"1.405 m\" } ] # \xC3\xB6") != std::string::npos);
}

TEST_CASE("a value that is not written as one plain string is refused, with its place") {
  const std::string text = with(whole_plan(), R"(at = ["0.5 m", "0.5 m", "0.5 m"]
shank)", "at = [\"\"\"0.5 m\"\"\", \"0.5 m\", \"0.5 m\"]\nshank");
  const Plan before = plan_of(text);
  const auto made = with_picks_of("plan.toml", text, before, moved(before));
  REQUIRE(std::holds_alternative<Diagnostic>(made));
  CHECK(std::get<Diagnostic>(made).place.line > 0);
}
