// Hostile text in every name and every text that a plan can hold, from the file to every output. Two of each
// plan are compared, one with hostile strings and one with harmless ones in the same places: no output has a
// tag, a quote, a cell or a mark of Markdown more for it.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <functional>
#include <set>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "board_pipeline.hpp"
#include "card/lift_card.hpp"
#include "card/paint.hpp"
#include "need_pipeline.hpp"
#include "output/board_html.hpp"
#include "output/board_text.hpp"
#include "output/json.hpp"
#include "output/need.hpp"
#include "output/terminal.hpp"
#include "plan/keys.hpp"
#include "plan/words.hpp"
#include "record/utf8.hpp"
#include "sheet/write.hpp"
#include "support/plan_files.hpp"
#include "support/shift_boards.hpp"
#include "support/toml_json.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using plan::Kind;

namespace {

// A formula of a spreadsheet, markup, the marks of Markdown, a quote and a separator of CSV.
const std::string hostile = "=cmd|'/C x'!A0;,<script>alert(\"x\")</script>&lt;**b**`c`[l](j:u)<b>(+) GO</b> ";
const std::string harmless = "acmd x harmless";
const std::string overriding = "\xE2\x80\xAE";  // right to left

const std::vector<std::string> bases = {"docs/demo/manhole-base.toml",
                                        "docs/demo/panel-turned.toml",
                                        "docs/demo/stair.toml",
                                        "docs/demo/wall-panel.toml",
                                        "docs/demo/round-lid.toml",
                                        "tests/plans/ok/panel-turned-between-two-hooks.toml",
                                        "tests/plans/hold/second-hook-without-a-crane.toml",
                                        "tests/plans/nogo/sheave-too-weak.toml",
                                        "tests/plans/ok/slab-on-two-rings.toml",
                                        "tests/plans/ok/beam-with-strands.toml",
                                        "tests/plans/ok/plank-that-may-crack.toml",
                                        "docs/demo/layout/wall-panel.toml"};

bool is_string_of_a_person(const plan::Key& key) { return key.kind == Kind::text || key.kind == Kind::name; }

using Seen = std::set<std::string>;  // "section.key"

std::string toml_string(const std::string& text) {
  std::string quoted = "\"";
  for (const char c : text) quoted += c == '"' || c == '\\' ? std::string("\\") + c : std::string(1, c);
  return quoted + "\"";
}

bool is_direction(const std::string& name) {
  return std::ranges::find(plan::direction_words, name) != plan::direction_words.end();
}

// `node` as TOML, `spoil` before each string of `key`.
std::string value_of(const toml::node& node, const plan::Key& key, const std::string& spoil) {
  if (const auto* list = node.as_array()) {
    std::string all;
    for (const toml::node& each : *list) all += (all.empty() ? "" : ", ") + value_of(each, key, spoil);
    return "[" + all + "]";
  }
  if (node.is_date() || node.is_date_time()) return json_of(node).get<std::string>();
  const auto* text = node.as_string();
  if (!text) return json_of(node).dump();
  const bool spoiled = is_string_of_a_person(key) && !is_direction(text->get());
  return toml_string(spoiled ? spoil + text->get() : text->get());
}

std::string table_of(const toml::table& table, const plan::Section& section, const std::string& spoil,
                     Seen& seen) {
  std::string all;
  const bool top = section.path.empty();
  const auto put = [&](std::string_view name, const std::string& value) {
    all += fmt::format("{}{} = {}{}", top || all.empty() ? "" : ", ", name, value, top ? "\n" : "");
  };
  for (const plan::Key& key : section.keys) {
    const toml::node* node = table.get(key.name);
    const bool may_be_put_in = key.kind == Kind::text;
    if (!node && !may_be_put_in) continue;
    const std::string value = node ? value_of(*node, key, spoil) : toml_string(spoil + "x");
    if (!node || value != value_of(*node, key, "")) seen.insert(fmt::format("{}.{}", section.path, key.name));
    put(key.name, value);
  }
  for (const plan::Section* inner : plan::sections_inside(section)) {
    const toml::node* node = table.get(plan::last_part(inner->path));
    if (!node) continue;
    if (const auto* one = node->as_table()) {
      put(plan::last_part(inner->path), "{ " + table_of(*one, *inner, spoil, seen) + " }");
      continue;
    }
    std::string list;
    for (const toml::node& each : *node->as_array())
      list += fmt::format("{}{{ {} }}", list.empty() ? "" : ", ",
                          table_of(*each.as_table(), *inner, spoil, seen));
    put(plan::last_part(inner->path), "[" + list + "]");
  }
  return all;
}

// The plan in `file` with `spoil` before every name and every text, absent texts put in.
std::string spoilt(const std::string& file, const std::string& spoil, Seen& seen) {
  std::string text = contents_of(file);
  if (const auto at = text.find("[form]");
      at != std::string::npos)  // no plan of the repository writes this one
    text.insert(at + 6, "\nproduct = \"demo product\"\n#");
  if (file == "docs/demo/wall-panel.toml")  // the same face, chosen by what it is not
    text = changed(text, "faces = \"-z\"", R"(all_but = ["+z", "-x", "+x", "-y", "+y", "window"])");
  const auto parsed = tables::parse_toml(file, text);
  REQUIRE(std::holds_alternative<toml::table>(parsed));
  return table_of(std::get<toml::table>(parsed), plan::section(""), spoil, seen);
}

std::string spoilt(const std::string& file, const std::string& spoil) {
  Seen seen;
  return spoilt(file, spoil, seen);
}

CheckedPlan checked(const std::string& text) {
  auto answer = check_plan_whole("plan.toml", text, "", real_tables());
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&answer)) FAIL(show(faults->front(), text));
  return std::move(std::get<CheckedPlan>(answer));
}

std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size()))
    ++count;
  return count;
}

std::size_t unescaped(const std::string& text, char mark) {  // not behind a backslash
  std::size_t count = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '\\') {
      ++i;
      continue;
    }
    count += text[i] == mark ? 1U : 0U;
  }
  return count;
}

bool is_printable(const std::string& text) {
  for (std::size_t at = 0; at < text.size();) {
    const Utf8 character = utf8_at(text, at);
    if (!character.valid || (is_unprintable(character.code) && character.code != '\n')) return false;
    at += character.length;
  }
  return true;
}

// Nothing outside ASCII, no control character: no reader of a log is misled.
bool is_plain(const std::string& json) {
  return std::ranges::all_of(json, [](char c) { return c == '\n' || (c >= 0x20 && c < 0x7F); });
}

struct Pair {
  std::string file;
  CheckedPlan bad, good;
};

const std::vector<Pair>& pairs() {
  static const std::vector<Pair> all = [] {
    std::vector<Pair> list;
    for (const std::string& file : bases)
      list.push_back({file, checked(spoilt(file, hostile)), checked(spoilt(file, harmless))});
    return list;
  }();
  return all;
}

}  // namespace

TEST_CASE("the plans of this file hold every name and every text of the list of keys") {
  Seen seen;
  for (const std::string& file : bases) spoilt(file, hostile, seen);
  for (const plan::Section& section : plan::sections())
    for (const plan::Key& key : section.keys)
      if (is_string_of_a_person(key)) {
        const std::string name = fmt::format("{}.{}", section.path, key.name);
        CAPTURE(name);
        CHECK(seen.contains(name));
      }
}

TEST_CASE("hostile text of a plan on the terminal is text on lines of its width") {
  for (const auto& [file, bad, good] : pairs()) {
    CAPTURE(file);
    CHECK(bad.report.verdict == good.report.verdict);
    for (const bool steps : {false, true}) {
      const std::string shown = output::terminal(bad.report, {.all_findings = true, .steps = steps});
      CHECK(is_printable(shown));
      std::istringstream lines(shown);
      std::size_t widest = 0;
      for (std::string line; std::getline(lines, line);) widest = std::max(widest, line.size());
      CHECK(widest <= 100);  // bytes, of 80 columns
    }
  }
}

TEST_CASE("hostile text of a plan in JSON is a string") {
  for (const auto& [file, bad, good] : pairs()) {
    CAPTURE(file);
    const std::string text = output::json({{file, &bad.report, nullptr}});
    CHECK(is_plain(text));
    const auto read = nlohmann::json::parse(text),
               plain = nlohmann::json::parse(output::json({{file, &good.report, nullptr}}));
    CHECK(read["plan"]["mark"] == bad.plan.piece.mark);
    CHECK(read["plan"]["mark"].get<std::string>().starts_with(hostile));
    CHECK(read["stages"].size() == plain["stages"].size());
  }
}

TEST_CASE("an order to write from right to left, a control character and a broken byte reach no JSON as they are") {
  const std::string hidden = overriding + "\x1b[2J\x7f\xC2\x9B\xFF\xEF\xBB\xBF\xF3\xA0\x80\x81";
  CheckedPlan checked = firstpick::tests::checked_plan(bases.front());
  checks::Report& report = checked.report;
  for (std::string* text : {&report.file, &report.mark, &report.revision, &report.strength_basis, &report.rules,
                            &report.sign_off.engineer, &report.sign_off.fault})
    *text += hidden;
  for (checks::Finding& finding : report.stages.front().findings)
    for (std::string* text : {&finding.subject, &finding.text, &finding.remedy}) *text += hidden;
  const std::string json = output::json({{bases.front(), &report, nullptr}});
  CHECK(is_plain(json));
  CHECK(json.find("\\u202e") != std::string::npos);
  CHECK_NOTHROW(nlohmann::json::parse(json));

  const auto asked = need_of_plan("plan.toml", contents_of(bases.front()), "", real_tables());
  checks::NeedReport need = std::get<checks::NeedReport>(asked);
  for (std::string* text : {&need.file, &need.mark, &need.title, &need.revision}) *text += hidden;
  CHECK(is_plain(output::need_json(need)));
}

TEST_CASE(
    "hostile text of a plan in the calculation sheet adds no element, no attribute, no mark of Markdown") {
  for (const auto& [file, bad, good] : pairs()) {
    CAPTURE(file);
    const auto drawn = [](const CheckedPlan& one) {
      return checks::stage_figures(one.plan, one.body, one.report, real_tables().rule_sets.at(one.report.rules),
                                   real_tables());
    };
    const sheet::Sheet sheets[] = {sheet::sheet_of(bad.plan, bad.body, bad.report, true, drawn(bad)),
                                   sheet::sheet_of(good.plan, good.body, good.report, true, drawn(good))};
    const std::string page = sheet::html(sheets[0]), plain = sheet::html(sheets[1]);
    for (const char* mark : {"<", ">", "\""}) {
      CAPTURE(mark);
      CHECK(count_of(page, mark) == count_of(plain, mark));
    }
    CHECK(page.find("<script>alert") == std::string::npos);
    CHECK(page.find("&lt;script&gt;alert(&quot;x&quot;)") != std::string::npos);
    CHECK(is_printable(page));
    const std::string text = sheet::markdown(sheets[0]), plain_text = sheet::markdown(sheets[1]);
    for (const char mark : {'<', '|', '`', '['}) {
      CAPTURE(mark);
      CHECK(unescaped(text, mark) == unescaped(plain_text, mark));
    }
    CHECK(text.find("\\<script\\>") != std::string::npos);
    CHECK(is_printable(text));
  }
}

TEST_CASE("hostile text of a plan on a lift card is words, in the picture and in the PDF") {
  for (const auto& [file, bad, good] : pairs()) {
    CAPTURE(file);
    const card::Page page = card::lift_card(bad.plan, bad.body, bad.report, 0, card::Paper::a4);
    std::string words;
    for (const card::Box& box : page.boxes)
      for (const card::TextMark& text : box.texts) words += text.words.text + "\n";
    CHECK(is_printable(words));
    CHECK(words.find("=cmd|'/C x'!A0") != std::string::npos);
    const card::Painted svg = card::paint(page, card::Picture::svg, bad.report.mark);
    REQUIRE(svg.fault.empty());
    CHECK(svg.bytes.find("script") == std::string::npos);
  }
}

TEST_CASE("hostile text of a plan in a PDF is read back as it was written") {
  const Pair& pair = pairs().front();
  const card::Page page = card::lift_card(pair.bad.plan, pair.bad.body, pair.bad.report, 0, card::Paper::a4);
  const card::Painted pdf = card::paint(page, card::Picture::pdf, pair.bad.report.mark);
  REQUIRE(pdf.fault.empty());
  const std::string file = (std::filesystem::temp_directory_path() / "firstpick-hostile.pdf").string();
  std::ofstream(file, std::ios::binary) << pdf.bytes;
  std::FILE* reader = popen(("pdftotext -raw " + file + " -").c_str(), "r");
  REQUIRE(reader);
  std::string text;
  for (int c = std::fgetc(reader); c != EOF; c = std::fgetc(reader)) text += static_cast<char>(c);
  REQUIRE(pclose(reader) == 0);
  std::filesystem::remove(file);
  std::erase_if(text, [](char c) { return c == '\n' || c == ' '; });
  CHECK(text.find("=cmd|'/Cx'!A0") != std::string::npos);
  CHECK(text.find("<script>alert(\"x\")</script>&lt;") != std::string::npos);
}

TEST_CASE("hostile text of plans and of the shift on the board adds no element and no cell") {
  const auto board_with = [](const std::string& spoil) {
    FileTexts files;
    std::string pieces;
    for (std::size_t i = 0; i < bases.size(); ++i) {
      const std::string name = fmt::format("p{}.toml", i);
      files[name] = spoilt(bases[i], spoil);
      pieces += fmt::format("[[piece]]\nplan = \"{}\"\ncast = 2026-03-02T14:00:00\nserials = {}\nform = {}\n", name,
                            toml_string(fmt::format("{}{}", spoil, i)), toml_string(spoil + "f"));
    }
    const std::string shift = changed(shift_text(pieces), "\"Yard\"", toml_string(spoil + "Yard"));
    return board_of(shift, files, "2026-03-03T07:45:00");
  };
  const board::Board bad = board_with(hostile), good = board_with(harmless);
  const std::string page = output::board_html(bad), plain = output::board_html(good);
  for (const char* mark : {"<", ">", "\""}) {
    CAPTURE(mark);
    CHECK(count_of(page, mark) == count_of(plain, mark));
  }
  CHECK(page.find("&lt;script&gt;alert(&quot;x&quot;)") != std::string::npos);
  CHECK(is_printable(page));
  const std::string csv = output::board_csv(bad);
  CHECK(count_of(csv, "\r\n") == count_of(output::board_csv(good), "\r\n"));
  CHECK(count_of(csv, "\"=") == 0);  // no cell begins as a formula: an apostrophe stands in front
  CHECK(count_of(csv, ",=") == 0);
  CHECK(count_of(csv, "\"'=cmd|") > 0);
  CHECK(is_printable(output::board_text(bad, {})));
  CHECK(nlohmann::json::parse(output::board_json(bad))["lines"].size() == bases.size());
}

TEST_CASE("hostile text of a plan in the answer to what strength it needs") {
  const std::string text = spoilt(bases.front(), hostile);
  const auto answer = need_of_plan("plan.toml", text, "", real_tables());
  REQUIRE(std::holds_alternative<checks::NeedReport>(answer));
  const auto& report = std::get<checks::NeedReport>(answer);
  CHECK(is_printable(output::need_text(report, 80)));
  CHECK_NOTHROW(nlohmann::json::parse(output::need_json(report)));
}

TEST_CASE("a character that cannot be seen is refused in every name and text, and shown escaped") {
  for (const std::string& file : bases) {
    Seen seen;
    const std::string text = spoilt(file, "\\u202E", seen);  // an escape of TOML: the file itself can be seen
    std::string escaped = text;
    for (auto at = escaped.find("\\\\u202E"); at != std::string::npos; at = escaped.find("\\\\u202E", at))
      escaped.replace(at, 7, "\\u202E");
    auto answer = answer_to(escaped);
    CAPTURE(file);
    REQUIRE(std::holds_alternative<std::vector<Diagnostic>>(answer));
    const auto& faults = std::get<std::vector<Diagnostic>>(answer);
    std::set<std::string> refused;
    for (const Diagnostic& fault : faults) {
      CHECK(is_printable(show(fault, escaped)));
      if (fault.what.find("U+202E, which cannot be seen") != std::string::npos)
        refused.insert(fault.what.substr(1, fault.what.find('\'', 1) - 1));
    }
    for (const std::string& each : seen) {
      CAPTURE(each);
      CHECK(refused.contains(each.substr(each.rfind('.') + 1)));
    }
  }
}
