// The lift card of every plan of the repository, every stage, on every paper: boxes apart, words inside,
// nothing of a GO on a card that is not. Then plans that no repository holds: hostile names, twelve picks,
// more reasons than fit.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <string>

#include "card/lift_card.hpp"
#include "support/card_pages.hpp"
#include "support/hand_made_report.hpp"
#include "support/plan_files.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

constexpr card::Paper both_papers[] = {card::Paper::a4, card::Paper::letter};

bool is_hatched(const card::Page& page) { return has_box(page, "hatching above"); }

// The slab of the repository, with as many picks as asked, in two rows.
CheckedPlan with_picks(std::size_t count) {
  CheckedPlan checked = checked_plan("tests/plans/ok/slab-with-one-sheave.toml");
  checks::StageReport& stage = checked.report.stages.front();
  const plan::Insert insert = checked.plan.inserts.front();
  plan::Rigging& rigging = checked.plan.riggings.front();
  const plan::Leg leg = rigging.legs.front();
  demands::Hanging& hanging = stage.hanging.value();
  const demands::LegForce force = hanging.legs.front();
  const checks::LegReport told = stage.legs.front();
  checked.plan.inserts.clear(), rigging.legs.clear(), hanging.legs.clear(), hanging.spans.clear(),
      stage.legs.clear();
  for (std::size_t i = 0; i < count; ++i) {
    plan::Insert one = insert;
    one.id = "insert of the row " + std::to_string(i + 1) + " " + std::string(30, 'n');
    one.at = {(0.3 + 0.5 * static_cast<double>(i / 2)) * m, (i % 2 == 0 ? 0.4 : 1.4) * m, insert.at.z};
    plan::Leg to = leg;
    to.to = one.id;
    checks::LegReport leg_told = told;
    leg_told.to = one.id;
    hanging.legs.push_back(force);
    hanging.spans.push_back({hanging.hook, one.at});
    checked.plan.inserts.push_back(one);
    rigging.legs.push_back(to);
    stage.legs.push_back(leg_told);
  }
  return checked;
}

void spoil(std::string& text) { text += hostile_text; }

void spoil_names(CheckedPlan& checked) {
  checks::Report& report = checked.report;
  for (std::string* text : {&report.file, &report.mark, &report.title, &report.revision, &report.prepared_by,
                            &report.engineer, &report.strength_basis, &report.rules})
    spoil(*text);
  for (auto* list : {&report.cautions, &report.not_checked})
    for (std::string& text : *list) spoil(text);
  for (Source& source : report.unconfirmed) spoil(source.what), spoil(source.value_text);
  plan::Plan& plan = checked.plan;
  for (plan::Insert& insert : plan.inserts) spoil(insert.kind), spoil(insert.certificate);
  if (plan.form)
    for (plan::Attached& part : plan.form->attached) spoil(part.what);
  for (plan::Sling& sling : plan.slings) spoil(sling.kind);
  if (plan.concrete.evidence) spoil(plan.concrete.evidence->report);
  for (checks::Finding& finding : report.stages.front().findings)
    for (std::string* text : {&finding.subject, &finding.text, &finding.remedy}) spoil(*text);
}

bool is_inert(const std::string& text) {
  return text.find('\x1b') == std::string::npos && text.find("\xE2\x80\xAE") == std::string::npos &&
         text.find('\0') == std::string::npos && text.find('\a') == std::string::npos &&
         text.find("\xFF") == std::string::npos;
}

}  // namespace

TEST_CASE(
    "every plan of the repository has a card in each stage: boxes apart, on the paper, words in their "
    "place") {
  std::size_t go = 0, other = 0;
  for (const std::string& file : all_plans()) {
    const CheckedPlan checked = checked_plan(file);
    for (std::size_t stage = 0; stage < checked.report.stages.size(); ++stage)
      for (const card::Paper paper : both_papers) {
        CAPTURE(file, stage, paper == card::Paper::a4);
        const card::Page page = card::lift_card(checked.plan, checked.body, checked.report, stage, paper);
        check_boxes(page);
        check_words_apart(page, true);
        const bool may_lift = checked.report.stages[stage].verdict == checks::Verdict::go;
        ++(may_lift ? go : other);
        CHECK(is_hatched(page) != may_lift);
        // A piece on its edge, or between two hooks, does not hang: the turn is told in words.
        CHECK(has_box(page, "as it hangs") == (may_lift && checked.report.stages[stage].hanging.has_value()));
        const bool turns = checked.report.stages[stage].turn.has_value();
        CHECK(has_box(page, "the turn") == (may_lift && turns && !checked.report.stages[stage].hanging));
        CHECK(has_box(page, "picks from above") == may_lift);
        CHECK(has_box(page, "steps") == may_lift);
        CHECK(has_box(page, "legs") == may_lift);
        CHECK(has_box(page, "fact: DO NOT PULL BEYOND") == may_lift);
        CHECK(has_box(page, "reasons") != may_lift);
        const std::string words = words_of(page);
        CHECK(words.find("and local codes govern") != std::string::npos);
        CHECK(words.find("more: see firstpick check") == std::string::npos);  // all of it fits
      }
  }
  CHECK(go >= 10);
  CHECK(other >= 50);
}

TEST_CASE("twelve picks with long names fit on one page, each in the table and in both drawings") {
  for (const std::size_t count : {3U, 8U, 12U})
    for (const card::Paper paper : both_papers) {
      CAPTURE(count, paper == card::Paper::a4);
      const CheckedPlan checked = with_picks(count);
      const card::Page page = card::lift_card(checked.plan, checked.body, checked.report, 0, paper);
      check_boxes(page);
      check_words_apart(page, false);
      CHECK((words_of(page).find("lengths and angles of the legs are in the table") != std::string::npos) ==
            (count > 6));
      for (const card::Box& box : page.boxes) {
        if (!is_drawing(box) && box.name != "legs") continue;
        for (std::size_t number = 1; number <= count; ++number) {
          CAPTURE(box.name, number);
          CHECK(std::ranges::any_of(box.texts, [&](const card::TextMark& text) {
            return text.words.text == std::to_string(number);
          }));
        }
      }
    }
}

TEST_CASE("more picks than a page holds are told as more, never left out in silence") {
  const CheckedPlan checked = with_picks(200);
  const card::Page page = card::lift_card(checked.plan, checked.body, checked.report, 0, card::Paper::letter);
  check_boxes(page);
  CHECK(words_of(page).find(" more: see firstpick check") != std::string::npos);
}

TEST_CASE("hostile names are inert on a card, and break no box") {
  for (const char* file : {"docs/demo/manhole-base.toml", "docs/demo/stair.toml", "docs/demo/round-lid.toml",
                           "docs/demo/wall-panel.toml"})
    for (const card::Paper paper : both_papers) {
      CAPTURE(file);
      CheckedPlan checked = checked_plan(file);
      spoil_names(checked);
      const card::Page page = card::lift_card(checked.plan, checked.body, checked.report, 0, paper);
      check_boxes(page);
      check_words_apart(page, false);
      CHECK(is_inert(words_of(page)));
      CHECK(words_of(page).find("\\x1B[32m(+) GO") != std::string::npos);  // shown, not obeyed
    }
}

TEST_CASE("markup in a name is text") {
  CheckedPlan checked = checked_plan("docs/demo/round-lid.toml");
  checked.report.mark = "<b>(+) GO</b> & <span size='1'>";
  const card::Page page = card::lift_card(checked.plan, checked.body, checked.report, 0, card::Paper::a4);
  CHECK(words_of(page).find("<b>(+) GO</b> & <span size='1'>") != std::string::npos);
}

TEST_CASE("more reasons than a page holds end with how many more there are, the first of them first") {
  CheckedPlan checked = checked_plan("docs/demo/wall-panel.toml");
  auto& findings = checked.report.stages.front().findings;
  const std::size_t before = findings.size();
  for (int i = 0; i < 80; ++i)
    findings.insert(findings.begin(), checks::missing("insert-certificate", "A" + std::to_string(i),
                                                      "reason made for the test number " + std::to_string(i) +
                                                          " " + std::string(200, 'r'),
                                                      "mend it"));
  REQUIRE(findings.size() == before + 80);
  const card::Page page = card::lift_card(checked.plan, checked.body, checked.report, 0, card::Paper::a4);
  check_boxes(page);
  CHECK(words_of(page).find("number 79 ") != std::string::npos);
  CHECK(words_of(page).find(" more: see firstpick check") != std::string::npos);
}

TEST_CASE("a stage whose numbers are not known has a card that says so") {
  CheckedPlan checked = checked_plan("docs/demo/manhole-base.toml");
  checks::StageReport& stage = checked.report.stages.front();
  stage.hook.reset(), stage.load.reset(), stage.hanging.reset(), stage.legs.clear(),
      stage.required_strength.reset();
  stage.cranes.clear(), stage.tilt.reset();
  checked.report.usable_strength.reset();
  checked.report.evidence_until.reset();
  const card::Page page = card::lift_card(checked.plan, checked.body, checked.report, 0, card::Paper::a4);
  check_boxes(page);
  const std::string words = words_of(page);
  CHECK(words.find("not known needed\nnone shown") != std::string::npos);
  CHECK(words.find("the scale reaches not known") == std::string::npos);
}

TEST_CASE("the check of boxes sees a box across another, one off the paper and words that do not fit") {
  const card::Rect one{50, 50, 100, 100}, beside{150, 50, 100, 100}, across{149, 149, 10, 10};
  CHECK_FALSE(card::overlap(one, beside));
  CHECK(card::overlap(one, across));
  CHECK(card::inside({60, 60, 10, 10}, one));
  CHECK_FALSE(card::inside({145, 60, 10, 10}, one));
  const card::Words words{.text = std::string(100, 'w'), .size = 9.0};
  CHECK(card::extent_of(words, 60.0).height > 3 * card::extent_of(words, 6000.0).height);
  CHECK(card::extent_of(words, 60.0).width <= 60.5);
}

TEST_CASE("the card tells the other stages of the plan and their verdicts") {
  const CheckedPlan checked = checked_plan("tests/plans/ok/stripped-and-lifted-again.toml");
  const card::Page page = card::lift_card(checked.plan, checked.body, checked.report, 0, card::Paper::a4);
  CHECK(words_of(page).find("Other stages of this plan: this card is not for them: yard GO") !=
        std::string::npos);
}

TEST_CASE("two cranes: each is told its own load and limit, and both move together") {
  std::string text = contents_of("tests/plans/hold/second-hook-without-a-crane.toml");
  const std::string hook = "at = [\"1187 mm\", \"742 mm\", \"0 mm\"]\n";
  REQUIRE(text.find(hook) != std::string::npos);
  text.insert(text.find(hook) + hook.size(), "crane = \"bay-4\"\n");
  const std::size_t crane = text.find("[[crane]]"), rigging = text.find("[[rigging]]");
  std::string second = text.substr(crane, rigging - crane);
  second.replace(second.find("bay-3"), 5, "bay-4");
  text.insert(rigging, second);
  const auto answer = check_plan_whole("two-cranes.toml", text, "", real_tables());
  REQUIRE(std::holds_alternative<CheckedPlan>(answer));
  const auto& checked = std::get<CheckedPlan>(answer);
  REQUIRE(checked.report.verdict == checks::Verdict::go);
  const card::Page page = card::lift_card(checked.plan, checked.body, checked.report, 0, card::Paper::a4);
  check_boxes(page);
  check_words_apart(page, true);
  const std::string words = words_of(page);
  for (const char* each :
       {"9.60 kN on bay-3\n10.5 kN on bay-4\n",
        "the scale reaches 9.60 kN on bay-3, 10.5 kN on bay-4", "Both cranes move together", "hook north",
        "hook south", "crane bay-4: rated 49.0 kN, 22 % of it used"}) {
    CAPTURE(each);
    CHECK(words.find(each) != std::string::npos);
  }
}

TEST_CASE(
    "the steps are those of the stage: suction only where a form holds, turning only where the piece is "
    "turned") {
  CheckedPlan checked = checked_plan("docs/demo/stair.toml");
  const auto words_for_kind = [&](plan::StageKind kind) {
    checked.report.stages.front().kind = kind;
    checked.plan.stages.front().kind = kind;
    return words_of(card::lift_card(checked.plan, checked.body, checked.report, 0, card::Paper::a4));
  };
  const std::string strip = words_for_kind(plan::StageKind::strip),
                    yard = words_for_kind(plan::StageKind::yard),
                    turn = words_for_kind(plan::StageKind::turn);
  CHECK(strip.find("Break the suction") != std::string::npos);
  CHECK(strip.find("If it sticks, stop") != std::string::npos);
  CHECK(yard.find("Break the suction") == std::string::npos);
  CHECK(yard.find("Turn slowly") == std::string::npos);
  CHECK(turn.find("Turn slowly, by the written procedure") != std::string::npos);
}

TEST_CASE("the card of a turn tells the angles and the edge, and nothing of a piece that hangs level") {
  const CheckedPlan about_edge = checked_plan("docs/demo/panel-turned.toml");
  const std::string words =
      words_of(card::lift_card(about_edge.plan, about_edge.body, about_edge.report, 1, card::Paper::a4));
  for (const char* told : {"Turned about its edge, from 0.0 deg to 90.0 deg, by the written procedure demo procedure TP-07",
                           "The edge that stays where it is: from x 0 mm, y 0 mm, z 0 mm to x 0 mm, y 2400 mm, z 0 mm",
                           "The hook pulls most", "A rack holds it before the legs come off", "hook plumb above the picks",
                           "the edge slides or lifts"}) {
    CAPTURE(told, words);
    CHECK(words.find(told) != std::string::npos);
  }
  for (const char* not_told : {"hand's width", "out of level", "above the centre of gravity"}) {
    CAPTURE(not_told);
    CHECK(words.find(not_told) == std::string::npos);
  }

  const CheckedPlan two_hooks = checked_plan("tests/plans/ok/panel-turned-between-two-hooks.toml");
  const std::string both =
      words_of(card::lift_card(two_hooks.plan, two_hooks.body, two_hooks.report, 0, card::Paper::letter));
  for (const char* told : {"Turned between two hooks", "The second hook pulls most", "second hook to", "Both cranes",
                           "leans out of the plane of the hooks"}) {
    CAPTURE(told, both);
    CHECK(both.find(told) != std::string::npos);
  }
  CHECK(both.find("not known") == std::string::npos);
}

TEST_CASE("the table of legs tells the sizes by which an insert is found again: strand, bar, washer, thread") {
  const auto words_on = [](const std::string& file) {
    const CheckedPlan checked = checked_plan(file);
    return words_of(card::lift_card(checked.plan, checked.body, checked.report, 0, card::Paper::a4));
  };
  CHECK(words_on("tests/plans/ok/slab-on-through-bolts.toml").find(", washer ") != std::string::npos);
  CHECK(words_on("tests/plans/ok/beam-on-strand-loops.toml").find(", each ") != std::string::npos);
  CHECK(words_on("tests/plans/ok/slab-on-threaded-inserts.toml").find(", thread ") != std::string::npos);
}

TEST_CASE("a card tells whether the plan is signed, by whom and when, and whether it is still what was signed") {
  CheckedPlan checked = checked_plan("docs/demo/manhole-base.toml");
  checks::SignOffState& state = checked.report.sign_off;
  const auto words = [&] {
    const card::Page page = card::lift_card(checked.plan, checked.body, checked.report, 0, card::Paper::letter);
    check_boxes(page);
    check_words_apart(page, true);
    return words_of(page);
  };
  using Kind = checks::SignOffState::Kind;
  CHECK(words().find("Engineer's signature\nnot signed\n") != std::string::npos);
  state = {.kind = Kind::valid, .file = "a.signed.toml", .engineer = "R. Example" + std::string(60, 'e'),
           .signed_at = "2026-03-02 08:00 +00:00", .verdict_then = "GO", .changed = {}, .fault = {}};
  CHECK(words().find("Engineer's signature\nsigned\nby R. Example") != std::string::npos);
  CHECK(words().find(", 2026-03-02 08:00 +00:00, as GO") != std::string::npos);
  checked.report.stages.front().verdict = checks::Verdict::hold;
  state.kind = Kind::changed;
  CHECK(words().find("Engineer's signature\nchanged since sign-off\n") != std::string::npos);
  state.kind = Kind::faulty, state.fault = "a.signed.toml:3:1: no key 'x'";
  CHECK(words().find("Engineer's signature\ncannot be read\na.signed.toml:3:1") != std::string::npos);
}

TEST_CASE("two legs to one insert have each their own row, and a leg that was not computed says so") {
  CheckedPlan checked = checked_plan("docs/demo/manhole-base.toml");
  checks::StageReport& stage = checked.report.stages.front();
  plan::Rigging& rigging = checked.plan.riggings.front();
  rigging.legs[1].to = rigging.legs[0].to;
  stage.legs[1].to = stage.legs[0].to;
  stage.legs[0].tension = 10.0 * kip, stage.legs[1].tension = 12.0 * kip;
  const auto words = [&] {
    return words_of(card::lift_card(checked.plan, checked.body, checked.report, 0, card::Paper::a4));
  };
  const std::string both = words();
  CHECK(both.find("10.0 kip") != std::string::npos);
  CHECK(both.find("12.0 kip") != std::string::npos);
  CHECK(both.find("12.0 kip on it at most") != std::string::npos);
  stage.legs.pop_back();
  const std::string gap = words();
  CHECK(gap.find("on it at most") == std::string::npos);
  CHECK(gap.find("pull not known") != std::string::npos);
  CHECK(gap.find("10.0 kip") == std::string::npos);  // of which leg would be a guess
}
