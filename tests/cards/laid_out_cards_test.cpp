// The lift card of every plan of the repository, every stage, on every paper: boxes apart, words inside,
// nothing of a GO on a card that is not. Then plans that no repository holds: hostile names, twelve picks,
// more reasons than fit.

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "card/content.hpp"
#include "card/lift_card.hpp"
#include "checks/pulls_on_scale.hpp"
#include "support/card_pages.hpp"
#include "support/hand_made_report.hpp"
#include "support/plan_files.hpp"
#include "units/print.hpp"

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

checks::PullsOnScale pulls_in(const CheckedPlan& checked, std::size_t stage) {
  return checks::pulls_on_scale(checked.plan, checked.body, stage, real_tables().rule_sets.at(checked.report.rules),
                                real_tables());
}

CheckedPlan checked_text(const std::string& text) {
  auto answer = check_plan_whole("plan.toml", text, "", real_tables());
  REQUIRE(std::holds_alternative<CheckedPlan>(answer));
  return std::get<CheckedPlan>(std::move(answer));
}

void check_letters(const card::Page& page) {
  for (const card::Box& box : page.boxes)
    for (const card::TextMark& text : box.texts) {
      CAPTURE(box.name, text.words.text);
      CHECK(text.words.size >= card::smallest_letters - 1e-9);
    }
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

namespace {

// Steps, stops and ticks are read at arm's length.
void check_sizes_of_letters(const card::Page& page) {
  for (const card::Box& box : page.boxes) {
    const bool at_arms_length = box.name == "steps" || box.name == "ticks" || box.name.starts_with("signal");
    for (const card::TextMark& text : box.texts) {
      CAPTURE(box.name, text.words.text);
      CHECK(text.words.size >= (at_arms_length ? card::legible_at_arms_length - 1e-9 : card::smallest_letters - 1e-9));
    }
  }
}

}  // namespace

TEST_CASE("every plan of the repository has a card in each stage: boxes apart, on the paper, words in their place and size") {
  std::size_t go = 0, other = 0;
  for (const std::string& file : all_plans()) {
    const CheckedPlan checked = checked_plan(file);
    for (std::size_t stage = 0; stage < checked.report.stages.size(); ++stage)
      for (const card::Paper paper : both_papers) {
        CAPTURE(file, stage, paper == card::Paper::a4);
        const card::Page page = card::lift_card(checked.plan, checked.body, checked.report, stage, paper,
                                                pulls_in(checked, stage));
        check_boxes(page);
        check_words_apart(page, true);
        check_words_off_lines(page);
        check_letters(page);
        const bool may_lift = checked.report.stages[stage].verdict == checks::Verdict::go;
        ++(may_lift ? go : other);
        CHECK(is_hatched(page) != may_lift);
        if (may_lift) check_sizes_of_letters(page);
        // A piece that is turned is drawn three times from the side, and told in words.
        const bool turns = checked.report.stages[stage].turn.has_value();
        CHECK(has_box(page, "as it hangs") == (may_lift && !turns));
        CHECK(has_box(page, "as it turns") == (may_lift && turns));
        CHECK(has_box(page, "the turn") == (may_lift && turns));
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
      check_letters(page);
      CHECK(words_of(page).find("more: see firstpick check") == std::string::npos);
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
  CHECK(words.find("the scale shows more than not known") == std::string::npos);
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
        "the scale shows more than 9.60 kN on bay-3, 10.5 kN on bay-4", "Both cranes move together", "hook north",
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
      words_of(card::lift_card(about_edge.plan, about_edge.body, about_edge.report, 1, card::Paper::a4, pulls_in(about_edge, 1)));
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
      words_of(card::lift_card(two_hooks.plan, two_hooks.body, two_hooks.report, 0, card::Paper::letter, pulls_in(two_hooks, 0)));
  for (const char* told : {"Turned between two hooks", "the second hook at", "second hook to", "Both cranes",
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

TEST_CASE("no GO card allows a pull that overloads a leg or an insert") {
  std::size_t turned = 0, hung = 0;
  for (const std::string& file : all_plans()) {
    const CheckedPlan checked = checked_plan(file);
    for (std::size_t at = 0; at < checked.report.stages.size(); ++at) {
      const checks::StageReport& stage = checked.report.stages[at];
      if (stage.verdict != checks::Verdict::go) continue;
      CAPTURE(file, at);
      const auto rigging = card::rigging_of(checked.plan, checked.plan.stages[at]);
      REQUIRE(rigging);
      const checks::PullsOnScale pulls = pulls_in(checked, at);
      if (stage.kind != plan::StageKind::turn) {  // the whole load: legs and inserts were checked for no less
        CHECK(pulls.cranes.empty());
        Force on_inserts{};
        for (const auto& set : stage.load->insert_loads) on_inserts = std::max(on_inserts, set.total);
        CHECK(stage.load->crane_load <= (1.0 + 1e-9) * std::max(stage.load->total, stage.load->floor));
        CHECK(stage.load->crane_load <= (1.0 + 1e-9) * on_inserts);
        ++hung;
        continue;
      }
      REQUIRE(pulls.cranes.size() == stage.cranes.size());
      for (std::size_t crane = 0; crane < pulls.cranes.size(); ++crane) {
        const auto& pull = pulls.cranes[crane];
        REQUIRE_FALSE(pull.limits.empty());
        CHECK(pull.limits.front().from == checked.plan.stages[at].turn->from);
        CHECK(pull.limits.back().to == checked.plan.stages[at].turn->to);
        for (const checks::PullBand& band : pull.limits) CHECK(band.most <= *stage.cranes[crane].hook);
        REQUIRE(pull.reading);
        CHECK(*pull.reading <= *stage.cranes[crane].hook);
      }
      // What every leg gets of its hook's pull, from where hook and insert are: the pull at the limit, plumb.
      for (const checks::TurnMoment& moment : pulls.moments) {
        if (!moment.held) continue;
        for (std::size_t crane = 0; crane < pulls.cranes.size(); ++crane) {
          const bool second = crane == 1;
          std::vector<const plan::Leg*> legs;
          for (const plan::Leg& leg : rigging->legs)
            if ((leg.from == "second hook") == second) legs.push_back(&leg);
          const plan::Crane& on = *std::ranges::find(checked.plan.cranes, pulls.cranes[crane].id, &plan::Crane::id);
          Force most = pulls.cranes[crane].limits.front().most;
          for (const checks::PullBand& band : pulls.cranes[crane].limits)
            if (moment.angle >= std::min(band.from, band.to) && moment.angle <= std::max(band.from, band.to))
              most = std::min(most, band.most);
          const Force pull = most - *on.block;  // and the rigging: a little too much is on the safe side
          if (legs.size() != 2) continue;
          for (const plan::Leg* leg : legs) {
            const auto insert = std::ranges::find(checked.plan.inserts, leg->to, &plan::Insert::id);
            const Position along = (second ? moment.tail_hook : moment.hook) - insert->at;
            const double upward = (moment.up.x * along.x + moment.up.y * along.y + moment.up.z * along.z) / norm(along);
            const Force tension = (0.5 / upward) * pull;  // two legs that mirror each other
            CAPTURE(insert->id, in(kN, tension), in(deg, moment.angle));
            const auto sling = std::ranges::find(checked.plan.slings, leg->gear, &plan::Sling::id);
            if (sling != checked.plan.slings.end() && sling->rated) CHECK(tension <= 1.02 * *sling->rated);
            if (insert->rating) CHECK(tension <= 1.02 * insert->rating->load);
          }
        }
      }
      ++turned;
    }
  }
  CHECK(turned >= 4);
  CHECK(hung >= 10);
}

TEST_CASE("a turn about an edge is limited by what the hook pulls there, not by the weight of the piece") {
  const std::string text = contents_of("docs/demo/panel-turned.toml");
  for (const std::string rating : {"20 kN", "10 kN"}) {  // the edge inserts
    std::string own = text;
    for (const char* id : {"E1", "E2"}) {
      const std::size_t at = own.find("rating = { load = \"20 kN\"", own.find("id = \"" + std::string(id) + "\""));
      REQUIRE(at != std::string::npos);
      own.replace(at, 25, "rating = { load = \"" + rating + "\"");
    }
    const CheckedPlan checked = checked_text(own);
    REQUIRE(checked.report.stages.at(1).verdict == checks::Verdict::go);
    const checks::PullsOnScale pulls = pulls_in(checked, 1);
    REQUIRE(pulls.cranes.size() == 1);
    REQUIRE(pulls.cranes.front().limits.size() == 1);
    const Force limit = pulls.cranes.front().limits.front().most;
    CAPTURE(rating, in(kN, limit));
    // Half of the piece at the flat start, 0.3 kN of legs and a block of 1.2 kN: hook at 3.0 m, centre of gravity at 1.5 m.
    const Force half = 0.5 * checked.report.stages[1].load->weight;
    CHECK(limit >= half + 1.5 * kN - 0.01 * kN);
    CHECK(limit <= 1.02 * (half + 1.5 * kN));
    const std::string words = words_of(
        card::lift_card(checked.plan, checked.body, checked.report, 1, card::Paper::a4, pulls));
    CHECK(words.find("DO NOT PULL BEYOND\n" + print(limit, UnitSystem::si, Rounding::down) + "\n") != std::string::npos);
  }
}

TEST_CASE("two hooks: the scale readings that are told at rest are below the limits of the card") {
  const CheckedPlan checked = checked_plan("tests/plans/ok/panel-turned-between-two-hooks.toml");
  const checks::PullsOnScale pulls = pulls_in(checked, 0);
  REQUIRE(pulls.cranes.size() == 2);
  for (const checks::CranePull& crane : pulls.cranes)
    CHECK(*crane.reading <= (1.0 + 1e-9) * std::ranges::max(crane.limits, {}, &checks::PullBand::most).most);
  const std::string words = words_of(card::lift_card(checked.plan, checked.body, checked.report, 0, card::Paper::a4, pulls));
  CHECK(words.find("At rest the scale shows at most ") != std::string::npos);
  CHECK(words.find("with the dynamic factor") == std::string::npos);
}

TEST_CASE("without the pulls of a turn a card knows no limit, and says that nobody lifts by it") {
  const CheckedPlan checked = checked_plan("docs/demo/panel-turned.toml");
  const std::string words = words_of(card::lift_card(checked.plan, checked.body, checked.report, 1, card::Paper::a4));
  CHECK(words.find("DO NOT PULL BEYOND\nnot known\n") != std::string::npos);
  CHECK(words.find("do not lift, ask the engineer") != std::string::npos);
}

TEST_CASE("a limit that changes over a turn is told band by band") {
  const CheckedPlan checked = checked_plan("docs/demo/panel-turned.toml");
  checks::PullsOnScale pulls = pulls_in(checked, 1);
  pulls.cranes.front().limits = {{0.0 * deg, 40.0 * deg, 14.0 * kN}, {40.0 * deg, 90.0 * deg, 9.0 * kN}};
  const std::string words = words_of(card::lift_card(checked.plan, checked.body, checked.report, 1, card::Paper::a4, pulls));
  CHECK(words.find("DO NOT PULL BEYOND\n14.0 kN to 40.0 deg\n9.00 kN to 90.0 deg\n") != std::string::npos);
  CHECK(words.find("the scale shows more than 14.0 kN to 40.0 deg, 9.00 kN to 90.0 deg") != std::string::npos);
}

TEST_CASE("two marks that differ at their end only are told apart on their cards, and so are long names of picks") {
  const std::string mark = "NORTH-ELEVATION-LEVEL-03-PANEL-0204-ALTERNATE-";
  CheckedPlan checked = with_picks(12);
  for (std::size_t i = 0; i < 12; ++i) {
    const std::string id = "long-insert-name-north-elevation-level-03-" + std::to_string(i + 1);
    checked.plan.inserts[i].id = id;
    checked.plan.riggings.front().legs[i].to = id;
    checked.report.stages.front().legs[i].to = id;
  }
  plan::Rigging& rigging = checked.plan.riggings.front();
  rigging.equalised = {{{rigging.legs[2].to, {}}, {rigging.legs[4].to, {}}}};
  for (const std::string end : {"A", "B"}) {
    checked.report.mark = mark + end;
    const card::Page page = card::lift_card(checked.plan, checked.body, checked.report, 0, card::Paper::a4);
    check_boxes(page);
    const std::string words = words_of(page);
    CHECK(words.find(mark + end) != std::string::npos);
    CHECK(words.find("at the hook: pick 3, pick 5\n") != std::string::npos);
    for (std::size_t i = 0; i < 12; ++i) CHECK(words.find("03-" + std::to_string(i + 1) + "\n") != std::string::npos);
    // Standing cautions are never cut, whatever else gives way.
    for (const std::string& caution : checked.report.cautions) {
      CAPTURE(caution);
      CHECK(words.find(caution) != std::string::npos);
    }
  }
}

TEST_CASE("a piece that may crack is not stopped for cracks that the engineer accepted") {
  const CheckedPlan checked = checked_plan("tests/plans/ok/plank-that-may-crack.toml");
  REQUIRE(checked.report.stages.front().verdict == checks::Verdict::go);
  const std::string words = words_of(card::lift_card(checked.plan, checked.body, checked.report, 0, card::Paper::a4));
  CHECK(words.find("no new cracks") == std::string::npos);
  CHECK(words.find("cracks only where the engineer accepted them") != std::string::npos);
  for (const checks::Finding& finding : checked.report.stages.front().findings)
    if (finding.rule == "piece-cracking" && finding.result == checks::Result::note)
      CHECK(words.find(finding.text) != std::string::npos);  // to its end
}

TEST_CASE("values from memory are told whole, by the names of their entries, or counted with the part of the sheet, as there is room") {
  const CheckedPlan checked = checked_plan("docs/demo/manhole-base.toml");
  REQUIRE(checked.report.unconfirmed.size() > 1);
  const card::Card told = card::card_of(checked.plan, checked.body, checked.report, 0, pulls_in(checked, 0));
  const auto memory = std::ranges::find_if(told.small_print, [](const auto& print) { return print.title.starts_with("From memory"); });
  REQUIRE(memory != told.small_print.end());
  CHECK(memory->texts.size() == checked.report.unconfirmed.size());
  for (const Source& source : checked.report.unconfirmed) CHECK(memory->names.find(source.id) != std::string::npos);
  CHECK(memory->in_short == std::to_string(checked.report.unconfirmed.size()) +
                                " values from memory, to be confirmed by the engineer of record: see the calculation sheet, "
                                "part \"From memory\".");
}

TEST_CASE("a card tells each test result and their mean, what the other stages need, and what the piece is set down on") {
  const CheckedPlan strip = checked_plan("docs/demo/panel-turned.toml");
  const std::string words = words_of(card::lift_card(strip.plan, strip.body, strip.report, 0, card::Paper::a4));
  CHECK(words.find("each 25.4 MPa, 26.1 MPa; mean 25.7 MPa") != std::string::npos);
  CHECK(words.find("turn GO, needs 22.0 MPa") != std::string::npos);
  CHECK(words.find("At the talk: names") != std::string::npos);
  CHECK(words.find("size and maker's mark read") != std::string::npos);
  CHECK(words.find("flat on the ground or a bed") != std::string::npos);

  CheckedPlan bearers = checked_plan("docs/demo/manhole-base.toml");
  bearers.plan.stages.front().landing = plan::Landing{};
  plan::Landing& landing = *bearers.plan.stages.front().landing;
  landing.on = plan::LandingOn::bearers;
  for (const Length& x : {0.3 * m, 1.1 * m}) {
    plan::Bearer bearer;
    bearer.along = std::array<Position, 2>{Position{x, 0.0 * m, 0.0 * m}, Position{x, 1.0 * m, 0.0 * m}};
    bearer.width = 0.1 * m;
    landing.bearers.push_back(bearer);
  }
  landing.restrained = plan::Restraint::rack;
  bearers.plan.piece.units = UnitSystem::si;
  const std::string set_down =
      words_of(card::lift_card(bearers.plan, bearers.body, bearers.report, 0, card::Paper::a4));
  CHECK(set_down.find("2 bearers, in the axes of the piece as cast: across at x 300 mm, 100 mm wide; across at x 1100 mm") !=
        std::string::npos);
  CHECK(set_down.find("held by a rack before the legs come off") != std::string::npos);
}
