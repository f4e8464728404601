// What each section says rightly and the plan as a whole cannot mean: names, legs, groups, dates.

#include "plan/contradictions.hpp"

#include <catch2/catch.hpp>

#include "unit/plan/plan_text.hpp"

using namespace firstpick;
using namespace firstpick::plan;
using namespace firstpick::tests;

namespace {

using List = std::vector<std::string>;

const std::string leg_1 = R"({ to = "A1", length = "1 m", gear = "chain" })";
const std::string leg_2 = R"({ to = "A2", length = "1.1 m", gear = "chain" })";

std::string plan_with_legs(const std::string& second) { return with(whole_plan(), leg_2, second); }
std::string plan_with_groups(const std::string& groups) {
  return with(whole_plan(), "id = \"two-leg\"", "id = \"two-leg\"\nequalised = " + groups);
}

}  // namespace

TEST_CASE("a name given twice shows both places") {
  const std::string text = with(whole_plan(), "id = \"A2\"", "id = \"A1\"");
  CHECK(faults_of(text) ==
        List{place_of(text, "\"A1\"\nkind = \"headed\"\nat = [\"1.5 m\"") +
                 " a second insert is named 'A1'; the first is in line 35",
             place_of(text, "\"A2\"") + " there is no insert 'A2' | the only one is 'A1'"});
}

TEST_CASE("names that nothing has, with what there is") {
  CHECK(faults_of(with(whole_plan(), "crane = \"bay-2\"", "crane = \"bay-3\""))
            .at(0)
            .ends_with("there is no crane 'bay-3' | the only one is 'bay-2'"));
  CHECK(faults_of(with(whole_plan(), "rigging = \"two-leg\"\ncrane", "rigging = \"twoleg\"\ncrane"))
            .at(0)
            .ends_with("there is no rigging 'twoleg' | the only one is 'two-leg'"));
  CHECK(faults_of(with(whole_plan(), "all_but = \"+z\"", "all_but = [\"blok\", \"+z\"]"))
            .at(0)
            .ends_with("there is no solid 'blok' | did you mean 'block'?"));
  CHECK(faults_of(with(whole_plan(), "[[sling]]\nid = \"chain\"\nkind = \"chain\"\n", ""))
            .at(0)
            .ends_with("there is no sling 'chain' | the plan has no [[sling]]"));
}

TEST_CASE("where a section or a name cannot be read, its uses are not called unknown") {
  CHECK(faults_of(with(whole_plan(), "id = \"bay-2\"", "id = 2")).size() == 1);
  CHECK(faults_of(with(whole_plan(), "id = \"bay-2\"\n", "")).size() == 1);
  CHECK(faults_of(with(whole_plan(), "[[crane]]", "[crane]")).size() == 1);
  CHECK(faults_of(with(whole_plan(), "id = \"two-leg\"", "id = \"\"")).size() == 1);
  const std::string no_legs = with(whole_plan(), "legs = [\n  " + leg_1 + ",\n  " + leg_2 + ",\n]\n", "");
  CHECK(faults_of(no_legs) == List{place_of(no_legs, "[[rigging]]") + " [[rigging]] needs [[rigging.legs]]"});
}

TEST_CASE("an insert that no leg reaches is a fault, and a leg to nowhere is one message") {
  const std::string unreached = with(whole_plan(), ",\n  " + leg_2 + ",\n", "\n");
  CHECK(faults_of(unreached) == List{place_of(unreached, "[[insert]]\nid = \"A2\"") +
                                     " no leg of rigging 'two-leg' reaches insert 'A2'"});
  const std::string nowhere = plan_with_legs(R"({ to = "A3" })");
  CHECK(faults_of(nowhere) ==
        List{place_of(nowhere, "\"A3\"") + " there is no insert 'A3' | there are: 'A1', 'A2'"});
  const std::string two =
      with(unreached, "[[stage]]\nkind = \"strip\"",
           "[[rigging]]\nid = \"other\"\nlegs = [{ to = \"A1\" }]\n[[stage]]\nkind = \"strip\"");
  CHECK(faults_of(two).at(0).ends_with("no leg of any rigging reaches insert 'A2'"));
  const std::string by_the_other = with(two, "legs = [{ to = \"A1\" }]", "legs = [{ to = \"A2\" }]");
  CHECK(faults_of(by_the_other).empty());
}

TEST_CASE("a second leg to one insert is a fault") {
  const std::string text = with(whole_plan(), leg_2 + ",", leg_2 + ",\n  { to = \"A1\" },");
  CHECK(faults_of(text) ==
        List{place_of(text, "{ to = \"A1\" }") + " a second leg to insert 'A1'; the first is in line 57"});
}

TEST_CASE("two legs meet only if together they are longer than the inserts are apart: at, below, above") {
  const auto faults = [](const std::string& length) {
    return faults_of(plan_with_legs("{ to = \"A2\", length = \"" + length + "\" }"));
  };
  const std::string short_legs = with(whole_plan(), leg_1, R"({ to = "A1", length = "0.5 m" })");
  CHECK(faults_of(with(short_legs, leg_2, R"({ to = "A2", length = "0.5 m" })"))
            .at(0)
            .ends_with("the legs to 'A1' and 'A2' are too short to meet: 500 mm and 500 mm for inserts 1000 "
                       "mm apart"));
  CHECK(faults_of(with(short_legs, leg_2, R"({ to = "A2", length = "0.499 m" })")).size() == 1);
  CHECK(faults_of(with(short_legs, leg_2, R"({ to = "A2", length = "0.501 m" })")).empty());
  const std::string unplaced =
      with(short_legs, "at = [\"0.5 m\", \"0.5 m\", \"0.5 m\"]", "at = [\"0.5\", \"0 m\", \"0 m\"]");
  CHECK(faults_of(with(unplaced, leg_2, R"({ to = "A2", length = "0.1 m" })")).size() ==
        1);                          // that of the place
  CHECK(faults("0.001 m").empty());  // the other leg is 1 m
}

TEST_CASE("groups of equalised legs") {
  CHECK(plan_of(plan_with_groups(R"([["A1", "A2"]])")).riggings.at(0).equalised.at(0).at(1).value == "A2");
  CHECK(faults_of(plan_with_groups(R"([["A1"]])"))
            .at(0)
            .find("'equalised' needs groups of at least 2; given: 1") != std::string::npos);
  CHECK(faults_of(plan_with_groups(R"([["A1", "A9"]])"))
            .at(0)
            .ends_with("there is no insert 'A9' | there are: 'A1', 'A2'"));
  const std::string twice = plan_with_groups(R"([["A1", "A2"], ["A2", "A1"]])");
  CHECK(faults_of(twice) == List{"56:29 insert 'A2' is in two groups; first in line 56 column 21",
                                 "56:35 insert 'A1' is in two groups; first in line 56 column 15"});
  const std::string no_leg = with(plan_with_groups(R"([["A1", "A2"]])"), leg_1 + ",\n", "") +
                             "[[rigging]]\nid = \"o\"\nlegs = [" + leg_1 + "]\n";
  CHECK(faults_of(no_leg) ==
        List{place_of(no_leg, "\"A1\", \"A2\"]]") + " no leg of this rigging reaches insert 'A1'"});
}

TEST_CASE("nothing happens before the piece was cast") {
  const std::string cast = "cast = 2026-03-02T16:30:00";
  CHECK(faults_of(with(whole_plan(), cast, "cast = 2026-03-03T07:10:00")).empty());
  const std::string late = with(whole_plan(), cast, "cast = 2026-03-03T07:10:01");
  CHECK(faults_of(late) == List{"23:10 'tested' is before 'cast' in line 22"});
  const std::string later = with(whole_plan(), cast, "cast = 2026-03-03T09:00:00");
  CHECK(faults_of(later) ==
        List{"23:10 'tested' is before 'cast' in line 22",
             place_of(later, "2026-03-03T08:00:00") + " 'at' is before 'cast' in line 22"});
}

TEST_CASE("offsets from UTC are counted, and a plan has them all or none") {
  std::string text = with(whole_plan(), "cast = 2026-03-02T16:30:00", "cast = 2026-03-02T16:30:00+01:00");
  CHECK(faults_of(text) == List{"23:10 'tested' has no offset from UTC, 'cast' in line 22 has one | write "
                                "all dates and times of a plan "
                                "with an offset (+01:00), or all without"});
  text = with(text, "tested = 2026-03-03T07:10:00", "tested = 2026-03-03T07:10:30-05:00");
  text = with(text, "at = 2026-03-03T08:00:00", "at = 2026-03-03T13:00:00Z");
  const Plan plan = plan_of(text);
  const Evidence& evidence = plan.concrete.evidence.value();
  CHECK(evidence.cast.value().has_offset);
  CHECK(evidence.cast->text == "2026-03-02 16:30 +01:00");
  CHECK(evidence.tested.value().text == "2026-03-03 07:10:30 -05:00");
  CHECK(plan.stages.at(0).at.value().text == "2026-03-03 13:00 +00:00");
  // 15:30 and 12:10:30 UTC
  CHECK(evidence.tested->seconds - evidence.cast->seconds == 20 * 3600 + 40 * 60 + 30);
}

TEST_CASE("seconds count from 1970, leap days included") {
  const auto seconds = [](const std::string& moment) {
    return plan_of(with(whole_plan(), "cast = 2026-03-02T16:30:00", "cast = " + moment))
        .concrete.evidence->cast->seconds;
  };
  CHECK(seconds("1970-01-01T00:00:00") == 0);
  CHECK(seconds("1970-01-02T00:00:01") == 86401);
  CHECK(seconds("2000-03-01T00:00:00") - seconds("2000-02-28T00:00:00") == 2 * 86400);
  CHECK(seconds("1900-03-01T00:00:00") - seconds("1900-02-28T00:00:00") == 86400);
}

TEST_CASE("faces and all_but exclude each other, and one of them must be there") {
  const std::string both = with(whole_plan(), "all_but = \"+z\"", "all_but = \"+z\"\nfaces = \"block\"");
  CHECK(faults_of(both).at(0).starts_with(place_of(both, "\"+z\"") +
                                          " 'faces' and 'all_but' exclude each other"));
  const std::string none = with(whole_plan(), "all_but = \"+z\"\n", "");
  CHECK(faults_of(none).at(0).starts_with(place_of(none, "[[form.contact]]") +
                                          " [[form.contact]] needs the key 'faces' or the key 'all_but'"));
  const FaceChoice all_but = plan_of(whole_plan()).form.value().contacts.at(0).faces;
  CHECK(all_but.all_but);
  CHECK(all_but.names.at(0).value == "+z");
}

TEST_CASE("that nothing grips is written, not left out") {
  const std::string contact = "[[form.contact]]\nall_but = \"+z\"\nfinish = \"smooth\"\n";
  CHECK(plan_of(with(whole_plan(), contact, "contact = []\n")).form.value().nothing_grips);
  const Plan silent = plan_of(with(whole_plan(), contact, ""));
  CHECK_FALSE(silent.form.value().nothing_grips);
  CHECK(silent.form->contacts.empty());
}
