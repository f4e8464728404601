// Sign-off and audit on plans in memory: what has changed since, a broken plan, hostile text, threads, an earlier audit.

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <vector>

#include "audit/earlier.hpp"
#include "audit_pipeline.hpp"
#include "output/audit.hpp"
#include "support/plan_files.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

using Kind = checks::SignOffState::Kind;

const std::string beam_file = "tests/plans/ok/beam-on-two-picks.toml";

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

// A signature by "R. Example" under `text` as it is.
plan::SignOff signature_under(const std::string& text) {
  return new_sign_off("R. Example", {.seconds = 1772438400, .has_offset = true, .text = "2026-03-02T08:00:00Z"}, "GO",
                      text, "us", real_tables());
}

checks::Report checked(const std::string& text, const std::optional<SignOffText>& sign_off) {
  auto answer = check_plan("beam.toml", text, "", real_tables(), sign_off);
  REQUIRE(std::holds_alternative<checks::Report>(answer));
  return std::get<checks::Report>(std::move(answer));
}

std::string reason_for_hold(const checks::Report& report) {
  for (const checks::StageReport& stage : report.stages)
    for (const checks::Finding& finding : stage.findings)
      if (finding.rule == "changed-since-sign-off" && finding.result == checks::Result::missing) return finding.text;
  return {};
}

AuditQuestion question_on(std::vector<AuditFile> files, std::size_t threads = 1) {
  return {.folder = "plans", .rules = {}, .made = "2026-03-04 08:00 +00:00", .now_s = 1772611200, .offset_s = 0,
          .threads = threads, .files = std::move(files), .unread = {}};
}

audit::Audit audit_of(std::vector<AuditFile> files, std::size_t threads = 1) {
  return make_audit(question_on(std::move(files), threads), real_tables(), [](std::size_t, std::size_t) {});
}

std::vector<AuditFile> some_plans() {
  std::vector<AuditFile> files;
  for (const char* name : {"ok/beam-on-two-picks", "ok/slab-with-one-sheave", "hold/no-certificate"})
    files.push_back({"plans/" + std::string(name) + ".toml", std::string(name) + ".toml",
                     contents_of("tests/plans/" + std::string(name) + ".toml")});
  return files;
}

}  // namespace

TEST_CASE("a sign-off reads back as it was written, whatever the name") {
  plan::SignOff sign_off = signature_under("any");
  sign_off.engineer = "R. \"Q\" \\ Example";
  const auto read = plan::read_sign_off("a.signed.toml", plan::text_of(sign_off), real_tables());
  REQUIRE(std::holds_alternative<plan::SignOff>(read));
  const auto& back = std::get<plan::SignOff>(read);
  CHECK(back.engineer == sign_off.engineer);
  CHECK(back.fingerprint == sign_off.fingerprint);
  CHECK(back.signed_at.seconds == sign_off.signed_at.seconds);
}

TEST_CASE("a signed plan is GO until plan, tables, rule set or program change, then it is HOLD and says which") {
  const std::string text = contents_of(beam_file);
  const plan::SignOff good = signature_under(text);
  const auto state_with = [&](const plan::SignOff& sign_off) {
    return checked(text, SignOffText{"beam.signed.toml", plan::text_of(sign_off)});
  };
  CHECK(checked(text, {}).sign_off.kind == Kind::none);
  CHECK(checked(text, {}).verdict == checks::Verdict::go);
  CHECK(state_with(good).sign_off.kind == Kind::valid);
  CHECK(state_with(good).verdict == checks::Verdict::go);

  const std::string other(64, 'a');
  const auto told = [&](auto change) {
    plan::SignOff changed = good;
    change(changed);
    const checks::Report report = state_with(changed);
    CHECK(report.verdict == checks::Verdict::hold);
    return reason_for_hold(report);
  };
  CHECK_THAT(told([&](auto& s) { s.plan = other; }), Catch::Contains("sign-off: the plan"));
  CHECK_THAT(told([&](auto& s) { s.tables = other; }), Catch::Contains("the tables"));
  CHECK_THAT(told([&](auto& s) { s.rules = "none"; }), Catch::Contains("the rule set (none then, us now)"));
  CHECK_THAT(told([&](auto& s) { s.program = "0"; }), Catch::Contains("the program (0 then"));
  CHECK_THAT(told([&](auto& s) { s.fingerprint = other; }), Catch::Contains("the sign-off file itself"));
  CHECK_THAT(told([&](auto& s) { s.verdict = "NO-GO"; }), Catch::Contains("the sign-off file itself"));
  CHECK_THAT(told([&](auto& s) { s.engineer = "somebody else"; }), Catch::Contains("the sign-off file itself"));
  CHECK_THAT(told([&](auto& s) { s.signed_at.text = "2026-03-01T08:00:00Z"; }), Catch::Contains("the sign-off file itself"));
  CHECK(checked(text + "\n", SignOffText{"beam.signed.toml", plan::text_of(good)}).verdict == checks::Verdict::hold);
}

TEST_CASE("a sign-off that is malformed or cannot be read is HOLD with its place, never none") {
  const std::string text = contents_of(beam_file);
  const auto reason = [&](std::optional<std::string> sign_off) {
    const checks::Report report = checked(text, SignOffText{"beam.signed.toml", std::move(sign_off)});
    CHECK(report.verdict == checks::Verdict::hold);
    CHECK(report.sign_off.kind == Kind::faulty);
    return reason_for_hold(report);
  };
  CHECK_THAT(reason({}), Catch::Contains("cannot be read"));
  CHECK_THAT(reason(""), Catch::Contains("beam.signed.toml:"));
  CHECK_THAT(reason("format = "), Catch::Contains("beam.signed.toml:1:"));
  const std::string good = plan::text_of(signature_under(text));
  CHECK_THAT(reason(replaced(good, "\"GO\"", "\"YES\"")), Catch::Contains("beam.signed.toml:5:"));
  CHECK_THAT(reason(replaced(good, "fingerprint = \"", "fingerprint = \"z")), Catch::Contains("fingerprint"));
  CHECK_THAT(reason(good + "more = 1\n"), Catch::Contains("beam.signed.toml:12:"));
}

TEST_CASE("a signature under a plan that is HOLD or NO-GO does not make it GO") {
  const std::string text = contents_of("tests/plans/hold/no-certificate.toml");
  CHECK(checked(text, SignOffText{"a.signed.toml", plan::text_of(signature_under(text))}).verdict ==
        checks::Verdict::hold);
}

TEST_CASE("an audit tells verdicts, what is missing, and the age of the test, a broken plan is told and the rest goes on") {
  auto files = some_plans();
  files.push_back({"plans/broken.toml", "broken.toml", "[piece\n"});
  files.push_back({"plans/gone.toml", "gone.toml", {}});
  const audit::Audit audit = audit_of(files);
  REQUIRE(audit.entries.size() == 5);
  CHECK(count_of(audit, audit::Standing::go) == 2);
  CHECK(count_of(audit, audit::Standing::hold) == 1);
  CHECK(count_of(audit, audit::Standing::broken) == 2);
  CHECK(audit.entries[0].file == "broken.toml");
  CHECK_FALSE(audit.entries[0].faults.empty());
  CHECK(audit.entries[2].rule == "insert-certificate");
  REQUIRE(audit.entries[3].evidence_age_days);
  CHECK(*audit.entries[3].evidence_age_days == Approx(1.0 + 1.0 / 24.0));  // tested on 3 March, 07:00
  for (const std::string& view : {output::audit_text(audit, {}), output::audit_csv(audit), output::audit_html(audit)})
    CHECK_THAT(view, Catch::Contains("broken.toml:1:"));
}

TEST_CASE("an audit is the same on one thread and on two, and in any order of its files") {
  auto files = some_plans();
  auto turned = files;
  std::ranges::reverse(turned);
  const std::string one = output::audit_json(audit_of(files, 1));
  CHECK(one == output::audit_json(audit_of(files, 2)));
  CHECK(one == output::audit_json(audit_of(turned, 2)));
}

TEST_CASE("an audit finds the same piece and revision in another plan, and not in a copy") {
  const std::string text = contents_of(beam_file);
  const audit::Audit audit = audit_of(
      {{"p/a.toml", "a.toml", text}, {"p/b.toml", "b.toml", text + "# other\n"}, {"p/c.toml", "c.toml", text}});
  CHECK(audit.entries[0].same_piece == std::vector<std::string>{"b.toml"});
  CHECK(audit.entries[1].same_piece == std::vector<std::string>{"a.toml", "c.toml"});
}

TEST_CASE("an audit against an earlier one: better, worse, new and gone, what is no audit is a fault") {
  auto files = some_plans();
  const std::string before =
      R"({"format":1,"plans":[{"file":"hold/no-certificate.toml","verdict":"GO"},)"
      R"({"file":"ok/beam-on-two-picks.toml","verdict":"NO-GO"},{"file":"gone.toml","verdict":"HOLD"}]})";
  audit::Audit audit = audit_of(files);
  REQUIRE_FALSE(audit::compare_with_earlier("before.json", before, audit));
  std::vector<std::string> told;
  for (const audit::Change& change : audit.changes)
    told.push_back(std::string(word_for(change.kind)) + " " + change.file);
  CHECK(told == std::vector<std::string>{"worse hold/no-certificate.toml", "gone gone.toml",
                                         "new ok/slab-with-one-sheave.toml", "better ok/beam-on-two-picks.toml"});
  audit::Audit same = audit_of(files);
  REQUIRE_FALSE(audit::compare_with_earlier("same.json", output::audit_json(same), same));
  CHECK(same.changes.empty());
  for (const char* wrong : {"", "[]", "{}", R"({"format":2,"plans":[]})", R"({"format":1,"plans":[1]})",
                            R"({"format":1,"plans":[{"file":"a","verdict":"PERHAPS"}]})"})
    CHECK(audit::compare_with_earlier("wrong.json", wrong, same));
}

TEST_CASE("hostile text in any field reaches no view of an audit unescaped") {
  const std::string hostile = "=cmd()<script>alert(1)</script><img src=x>\x1b[2J\x07\xE2\x80\xAE\r\n\"'&";
  audit::Entry entry{.file = hostile,
                     .standing = audit::Standing::hold,
                     .mark = hostile,
                     .title = hostile,
                     .revision = hostile,
                     .engineer = hostile,
                     .rules = hostile,
                     .fingerprint = hostile,
                     .text_hash = hostile,
                     .rule = hostile,
                     .subject = hostile,
                     .reason = hostile,
                     .remedy = hostile,
                     .bending = {hostile},
                     .missing = {hostile, hostile + "2"},
                     .unconfirmed = {hostile},
                     .overridden = {hostile},
                     .tested = hostile,
                     .sign_off = {.kind = Kind::changed, .file = hostile, .engineer = hostile, .signed_at = hostile,
                                  .verdict_then = hostile, .changed = {hostile}, .fault = hostile},
                     .same_piece = {hostile}};
  audit::Entry broken{.file = hostile, .faults = {{.file = hostile, .what = hostile, .help = hostile}}};
  const audit::Audit audit{.folder = hostile, .made = hostile, .entries = {entry, broken}, .orphans = {{hostile, hostile}},
                           .unread = {hostile}, .since = hostile,
                           .changes = {{audit::Change::Kind::worse, hostile, hostile, hostile}},
                           .cautions = {hostile}, .not_checked = {hostile}};
  const std::string page = output::audit_html(audit), csv = output::audit_csv(audit);
  for (const std::string& view : {output::audit_text(audit, {}), csv, page}) {
    CHECK(view.find('\x1b') == std::string::npos);
    CHECK(view.find('\x07') == std::string::npos);
    CHECK(view.find("\xE2\x80\xAE") == std::string::npos);
  }
  CHECK(page.find("<script>alert") == std::string::npos);
  CHECK(page.find("<img") == std::string::npos);
  for (const char* start : {"\r\n=", "\r\n\"=", ",=", ",\"="}) CHECK(csv.find(start) == std::string::npos);
  CHECK(std::ranges::count(csv, '\n') == 3);  // no field begins a row of its own
  for (const char* row : {"caution\r\n", "govern.\"\r\n"}) CHECK(csv.find(row) != std::string::npos);
  const std::string json = output::audit_json(audit);
  CHECK(json.find('\x1b') == std::string::npos);
  CHECK(json.find('\x07') == std::string::npos);
  CHECK(std::ranges::all_of(json, [](char c) { return c == '\n' || (c >= 0x20 && c < 0x7F); }));
}

TEST_CASE("an audit tells which plans may crack and whose bending is checked elsewhere, and of the others nothing") {
  using Texts = std::vector<std::string>;
  auto files = some_plans();
  files.push_back({"plans/plank.toml", "plank.toml", contents_of("tests/plans/ok/plank-that-may-crack.toml")});
  files.push_back({"plans/block.toml", "block.toml", contents_of("tests/plans/hold/legs-crossed-under-a-beam.toml")});
  const audit::Audit audit = audit_of(files);
  for (const audit::Entry& entry : audit.entries) {
    CAPTURE(entry.file);
    if (entry.file == "plank.toml") CHECK(entry.bending == Texts{"may crack, as the engineer states"});
    else if (entry.file == "block.toml")
      CHECK(entry.bending == Texts{"bending checked elsewhere, as the plan states: calculation made for the test"});
    else CHECK(entry.bending.empty());
  }
  const std::string text = output::audit_text(audit, {});
  CHECK(text.find("noted: may crack, as the engineer states") != std::string::npos);
  CHECK(text.find("2 that may crack, or whose bending is checked elsewhere") != std::string::npos);
  CHECK(output::audit_html(audit).find("<div>bending checked elsewhere, as the plan states: calculation made for the test</div>") !=
        std::string::npos);
  CHECK(output::audit_json(audit).find("\"bending\": [\n        \"may crack, as the engineer states\"") != std::string::npos);
}

TEST_CASE("what lies beside the plans is counted in its number") {
  audit::Audit audit;
  audit.shift_files = 1, audit.strength_files = 2, audit.sign_offs = 1;
  CHECK(output::beside_of(audit) == "1 shift file, 2 strength files, 1 sign-off");
}

TEST_CASE("an audit against an earlier one tells another use, plan, test or sign-off under the same verdict") {
  const auto files = some_plans();
  audit::Audit before = audit_of(files);
  auto& was = before.entries.at(1);
  REQUIRE(was.file == "ok/beam-on-two-picks.toml");
  const auto told_after = [&](auto change) {
    audit::Audit earlier = before;
    change(earlier.entries[1]);
    audit::Audit now = audit_of(files);
    REQUIRE_FALSE(audit::compare_with_earlier("before.json", output::audit_json(earlier), now));
    REQUIRE(now.changes.size() == 1);
    CHECK(now.changes.front().kind == audit::Change::Kind::changed);
    CHECK_THAT(output::audit_text(now, {}), Catch::Contains("changed: ok/beam-on-two-picks.toml, still GO"));
    return output::change_in_words(now.changes.front());
  };
  CHECK_THAT(told_after([](audit::Entry& e) { e.utilization = 0.123; }), Catch::Contains("used was 0.123, is 0."));
  CHECK_THAT(told_after([](audit::Entry& e) { e.rule = "sling-angle"; }), Catch::Contains("what governs was sling-angle, is "));
  CHECK_THAT(told_after([](audit::Entry& e) { e.text_hash = std::string(64, '0'); }), Catch::Contains("the plan is another"));
  CHECK_THAT(told_after([](audit::Entry& e) { e.tested = "2026-03-01 07:00"; }), Catch::Contains("the strength test was 2026-03-01"));
  CHECK_THAT(told_after([](audit::Entry& e) {
               e.sign_off.kind = Kind::valid, e.sign_off.engineer = "R. Example", e.sign_off.signed_at = "then";
             }),
             Catch::Contains("the sign-off was valid (R. Example, then), is none"));
  CHECK_THAT(told_after([](audit::Entry& e) { e.fingerprint = std::string(64, '0'); }),
             Catch::Contains("tables, rule set or program are others"));
}

TEST_CASE("a test that has run out by the time of the audit is told and counted, the GO was for the lift of its plan") {
  const std::string text = contents_of("docs/demo/manhole-base.toml");  // tested 3 March, 07:10, valid for 12 h
  const std::vector<AuditFile> files{{"p/a.toml", "a.toml", text}};
  auto question = question_on(files);  // 4 March, 08:00
  const auto told = [&] { return make_audit(question, real_tables(), [](std::size_t, std::size_t) {}); };
  const audit::Audit late = told();
  CHECK(late.entries.front().standing == audit::Standing::go);
  CHECK(late.entries.front().evidence_run_out);
  CHECK_THAT(output::audit_text(late, {}), Catch::Contains("1 with a strength test that has run out by now"));
  CHECK_THAT(output::age_of(late.entries.front()), Catch::Contains("run out since 2026-03-03 19:10"));
  question.now_s -= 86400;
  CHECK_FALSE(told().entries.front().evidence_run_out);
}

TEST_CASE("strength files of the repository are counted as such, and none of them is told as broken") {
  std::vector<AuditFile> files;
  for (const char* name : {"box-culvert-breaks", "box-culvert-pour", "wall-panel-bed-1", "wall-panel-bed-2"}) {
    const std::string file = "docs/demo/strength/" + std::string(name) + ".toml";
    files.push_back({file, file, contents_of(file)});
  }
  const audit::Audit audit = audit_of(files);
  CHECK(audit.strength_files == 4);
  CHECK(audit.entries.empty());
}
