// The board on its way out: the same verdicts in every form, nothing of a stranger's text obeyed by terminal, spreadsheet,
// browser or program, nothing loaded by the page.

#include <algorithm>
#include <sstream>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "checks/standing_texts.hpp"
#include "output/board_html.hpp"
#include "output/board_page_style.hpp"
#include "output/board_text.hpp"
#include "output/csv_cell.hpp"
#include "output/decision_text.hpp"
#include "output/text_layout.hpp"
#include "unit/output/page_reader.hpp"

using namespace firstpick;
using namespace firstpick::tests;
using board::Board;
using checks::Verdict;

namespace {

// Markup, script, attributes, entities, formulas, terminal orders, a bidirectional override, bytes that are no UTF-8.
const std::vector<std::string> hostile = {"<script>alert(1)</script>",
                                          "\"><img src=x onerror=alert(1)>",
                                          "' onmouseover='alert(1)",
                                          "</style></li></ol>&lt;&amp;",
                                          "=cmd|' /C calc'!A0",
                                          "+1+1",
                                          "-2+3",
                                          "@SUM(A1)",
                                          "\x1b[31mred\x1b]0;t\x07",
                                          "abc\xE2\x80\xAEtxt.exe",
                                          "\xFF\xFE\x80",
                                          "a\r\nSet-Cookie: x",
                                          "tab\there, \"quoted\"",
                                          "\xEF\xBC\x9D"
                                          "1+1"};

Board board_with(const std::string& text) {
  Board board{.file = text,
              .plant = text,
              .zone = *clock::zone_named("-05:00"),
              .made_utc_s = 1772541900,
              .stale_after_s = 300};
  board.starts_utc_s = board.made_utc_s - 3600;
  board.ends_utc_s = board.made_utc_s + 3600;
  for (const Verdict verdict : {Verdict::go, Verdict::hold, Verdict::no_go}) {
    board::Line line{.position = board.lines.size() + 1,
                     .plan_file = text,
                     .pour_file = text,
                     .mark = text,
                     .title = text,
                     .revision = text,
                     .form = text,
                     .serials = {text},
                     .count = 1,
                     .priority = 1};
    line.judged = {.verdict = verdict,
                   .checked = true,
                   .rule = text,
                   .subject = text,
                   .reason = text,
                   .remedy = text,
                   .more = 2,
                   .evidence = text,
                   .pour_report = text};
    line.judged.sign_off = {.kind = checks::SignOffState::Kind::changed, .file = text, .engineer = text, .signed_at = text,
                            .verdict_then = text, .changed = {text}, .fault = text};
    line.judged.expected = {
        .kind = board::Expected::Kind::at, .utc_s = board.made_utc_s + 600, .has_band = false, .curve = text};
    line.judged.notes = {text};
    board.lines.push_back(line);
  }
  board.cautions = board.choices = board.not_checked = board.overridden = {text};
  board.unconfirmed = {Source{.id = text, .what = text, .value_text = text}};
  return board;
}

bool has_raw_control(const std::string& text, const std::string& allowed) {
  return std::ranges::any_of(text, [&](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return (byte < 0x20 || byte == 0x7F) && allowed.find(c) == std::string::npos;
  });
}

// The cells of a CSV text (RFC 4180), read without mercy.
std::vector<std::vector<std::string>> cells_of(const std::string& csv) {
  std::vector<std::vector<std::string>> rows(1);
  std::string cell;
  bool quoted = false;
  for (std::size_t i = 0; i < csv.size(); ++i) {
    const char c = csv[i];
    if (quoted && c == '"' && i + 1 < csv.size() && csv[i + 1] == '"') {
      cell += '"';
      ++i;
    } else if (c == '"') {
      quoted = !quoted;
    } else if (!quoted && (c == ',' || c == '\n')) {
      rows.back().push_back(cell);
      cell.clear();
      if (c == '\n') rows.emplace_back();
    } else if (quoted || c != '\r') {
      cell += c;
    }
  }
  REQUIRE_FALSE(quoted);
  REQUIRE(rows.back().empty());
  rows.pop_back();
  return rows;
}

}  // namespace

TEST_CASE("hostile text: the page is well formed, has no element or attribute of it, and loads nothing") {
  const PageRead plain = read_page(output::board_html(board_with("x")));
  REQUIRE(plain.fault == "");
  for (const std::string& text : hostile) {
    const std::string page = output::board_html(board_with(text));
    const PageRead read = read_page(page);
    CAPTURE(text, read.fault);
    CHECK(read.fault == "");
    CHECK(read.elements == plain.elements);
    CHECK(read.text.find(printable(text)) != std::string::npos);
    CHECK_FALSE(has_raw_control(page, "\n"));
    CHECK(page.find("\xE2\x80\xAE") == std::string::npos);
    REQUIRE(read.attributes.size() == plain.attributes.size());
    for (std::size_t i = 0; i < read.attributes.size(); ++i) CHECK(read.attributes[i] == plain.attributes[i]);
  }
}

TEST_CASE("the page names no other file, and only its own style and script may run") {
  const std::string page = output::board_html(board_with("x"));
  const PageRead read = read_page(page);
  for (const auto& [name, value] : read.attributes) {
    CAPTURE(name, value);
    CHECK((name != "src" && name != "href" && name != "srcset" && name != "action" && name != "data" &&
           name != "style"));
    CHECK_FALSE(name.starts_with("on"));
    CHECK(value.find("//") == std::string::npos);
  }
  for (const char* element : {"link", "img", "iframe", "object", "embed", "base", "form", "svg"})
    CHECK(std::ranges::count(read.elements, element) == 0);
  CHECK(std::ranges::count(read.elements, "script") == 1);
  CHECK(std::ranges::count(read.elements, "style") == 1);
  for (const std::string_view part : {output::page_style, output::page_script})
    for (const char* word : {"url(", "@import", "http", "fetch", "XMLHttp", "import(", "</"})
      CHECK(part.find(word) == std::string_view::npos);
  // By another program (Python's hashlib and base64); to be made anew when style or script change.
  CHECK(page.find("default-src 'none'; style-src 'sha256-bJgSSdT/Z1xOMIQK4puX20y+/BDckfykYSUZeUKB0B0='; "
                  "script-src 'sha256-w7KC+uYiUs6cDp3cbLvM8nM0NWVdg2m7eIFvxyl46a0='") != std::string::npos);
}

TEST_CASE("the page says when it was made, is old until its script finds it fresh, and reloads") {
  const std::string page = output::board_html(board_with("x"));
  CHECK(page.find("<body class=\"old\" data-made-s=\"1772541900\" data-stale-after-s=\"300\">") !=
        std::string::npos);
  CHECK(page.find("Made 2026-03-03 07:45 -05:00") != std::string::npos);
  CHECK(page.find("http-equiv=\"refresh\" content=\"10\"") != std::string::npos);
}

TEST_CASE("a page of faults shows them escaped and no verdict but HOLD") {
  for (const std::string& text : hostile) {
    const std::string page = output::board_faults_html(text, 1772541900, "now", {{text, {3, 4}, text, text}});
    const PageRead read = read_page(page);
    CAPTURE(text);
    CHECK(read.fault == "");
    CHECK(read.text.find("GO") == std::string::npos);
    CHECK(read.text.find("(?) HOLD") != std::string::npos);
    CHECK(page.find("data-stale-after-s=\"0\"") != std::string::npos);
  }
}

TEST_CASE("the reader of pages finds what it must") {
  const std::string head = "<!DOCTYPE html>\n";
  CHECK(read_page(head + "<p>a &amp; b</p>").fault == "");
  for (const char* bad : {"<p>a & b</p>", "<p>a", "<p><b></p></b>", "<p class=x></p>", "<p>a > b</p>",
                          "<p>a < b</p>", "<P></P>", "<p id=\"x></p>"})
    CHECK(read_page(head + bad).fault != "");
}

TEST_CASE("hostile text: no cell of the CSV is a formula, an order or two cells") {
  for (const std::string& text : hostile) {
    const std::string csv = output::board_csv(board_with(text));
    CAPTURE(text, csv);
    CHECK_FALSE(has_raw_control(csv, "\r\n"));
    const auto rows = cells_of(csv);
    REQUIRE(rows.size() == 4);
    for (const auto& row : rows) {
      CHECK(row.size() == rows.front().size());
      for (const std::string& cell : row) {
        if (cell.empty()) continue;
        CHECK(std::string("=+-@").find(cell.front()) == std::string::npos);
        CHECK_FALSE(cell.starts_with("\xEF\xBC\x9D"));
      }
    }
  }
  CHECK(output::csv_cell("=1+1") == "\"'=1+1\"");
  CHECK(output::csv_cell("  =1+1") == "\"'  =1+1\"");
  CHECK(output::csv_cell("\xEF\xBC\x9D"
                         "1") ==
        "\"'\xEF\xBC\x9D"
        "1\"");
  CHECK(output::csv_cell("a,b") == "\"a,b\"");
  CHECK(output::csv_cell("say \"no\"") == "\"say \"\"no\"\"\"");
  CHECK(output::csv_cell("WP-112") == "WP-112");
  CHECK(output::csv_cell("") == "");
  CHECK(output::csv_row({"a", "b"}) == "a,b\r\n");
}

TEST_CASE("hostile text: the terminal gets no order and no line wider than it is") {
  for (const std::string& text : hostile)
    for (const std::size_t width : {60U, 80U, 100U}) {
      const std::string shown =
          output::board_text(board_with(text + std::string(120, 'x')), {.width = width});
      CAPTURE(text, width);
      CHECK_FALSE(has_raw_control(shown, "\n"));
      CHECK(shown.find("\xE2\x80\xAE") == std::string::npos);
      std::istringstream lines(shown);
      for (std::string line; std::getline(lines, line);) CHECK(output::columns_of(line) <= width);
    }
}

TEST_CASE("hostile text: JSON is ASCII, and gives back what is valid") {
  for (const std::string& text : hostile) {
    const std::string json = output::board_json(board_with(text));
    CAPTURE(text);
    CHECK(std::ranges::all_of(json, [](char c) { return c == '\n' || (c >= 0x20 && c < 0x7F); }));
    const auto read = nlohmann::json::parse(json);
    if (text != "\xFF\xFE\x80") CHECK(read["lines"][0]["mark"] == text);
  }
}

TEST_CASE("hostile text in a record: terminal, CSV and JSON as above") {
  for (const std::string& text : hostile) {
    decision_log::Row row{.number = 1, .decision = {}, .previous = text, .hash = text};
    for (const auto& field : decision_log::fields) row.decision.*field.text = text;
    CAPTURE(text);
    const std::string shown = output::decisions_text({row}, {});
    CHECK_FALSE(has_raw_control(shown, "\n"));
    std::istringstream lines(shown);
    for (std::string line; std::getline(lines, line);) CHECK(output::columns_of(line) <= 80);
    const auto rows = cells_of(output::decisions_csv({row}));
    REQUIRE(rows.size() == 2);
    CHECK(rows[1].size() == rows[0].size());
    const std::string json = output::decisions_json({row});
    CHECK(std::ranges::all_of(json, [](char c) { return c == '\n' || (c >= 0x20 && c < 0x7F); }));
    CHECK_FALSE(has_raw_control(
        output::verified_text(text, {.rows = 1, .head = text, .problems = {{1, text}}}, {}), "\n"));
  }
}

TEST_CASE("every form tells the same verdict of each line, by word and mark, and calls a prediction one") {
  const Board board = board_with("x");
  const std::string text = output::board_text(board, {});
  const auto json = nlohmann::json::parse(output::board_json(board));
  const auto rows = cells_of(output::board_csv(board));
  const std::string page = read_page(output::board_html(board)).text;
  const char* words[] = {"(+) GO", "(?) HOLD", "(x) NO-GO"};
  for (std::size_t i = 0; i < 3; ++i) {
    const std::string word = std::string(words[i]).substr(4);
    CHECK(text.find("  " + std::to_string(i + 1) + " " + words[i] + " ") != std::string::npos);
    CHECK(json["lines"][i]["verdict"] == word);
    CHECK(json["lines"][i]["expected"]["prediction_only"] == true);
    CHECK(rows[i + 1][1] == word);
    CHECK(rows[i + 1].back() == checks::not_permission);
    CHECK(page.find(words[i]) != std::string::npos);
  }
  CHECK(json["pieces"]["GO"] == 1);
  CHECK(rows[0][7] == "expected (prediction)");
  CHECK(text.find("until about 07:55: a prediction by 'x'") != std::string::npos);
  CHECK(page.find("until about 07:55 (prediction, never a reason to lift)") != std::string::npos);
  Board banded = board;
  banded.lines[0].judged.expected.has_band = true;
  CHECK(read_page(output::board_html(banded)).text.find("(a slow mix never, at this growth; prediction") != std::string::npos);
  banded.lines[0].judged.expected.slow_utc_s = board.made_utc_s + 1200;
  CHECK(cells_of(output::board_csv(banded))[1][21] == "a slow mix until about 08:05");
  CHECK(cells_of(output::board_csv(banded))[2][21].empty());
  banded.lines[0].judged.expected.slow_utc_s = board.made_utc_s + 8 * 86400;
  CHECK(cells_of(output::board_csv(banded))[1][21] == "a slow mix not within a week");
  const std::string coloured = output::board_text(board, {.width = 80, .colour = true});
  CHECK(coloured.find("\x1b[1;32m(+) GO\x1b[0m") != std::string::npos);
  CHECK(coloured.find("\x1b[1;31m(x) NO-GO\x1b[0m") != std::string::npos);
}

TEST_CASE("the board tells who signed a plan, and that it has changed since, in every form") {
  Board board = board_with("x");
  const auto told = [&](const std::string& words) {
    const std::string text = output::board_text(board, {}), page = read_page(output::board_html(board)).text;
    CHECK((text.find(words) != std::string::npos) == (page.find(words) != std::string::npos));
    return text.find(words) != std::string::npos;
  };
  CHECK(told("changed since sign-off: x"));
  CHECK(nlohmann::json::parse(output::board_json(board))["lines"][0]["sign_off"]["state"] == "changed since sign-off");
  for (board::Line& line : board.lines) line.judged.sign_off = {};
  CHECK_FALSE(told("sign-off"));
  CHECK_FALSE(told("not signed"));  // on a screen at the crane it would stand on every line
  CHECK(output::board_csv(board).find("not signed") != std::string::npos);
  CHECK(nlohmann::json::parse(output::board_json(board))["lines"][0]["sign_off"]["state"] == "none");
  for (board::Line& line : board.lines)
    line.judged.sign_off = {.kind = checks::SignOffState::Kind::valid, .file = "a", .engineer = "R. Example",
                            .signed_at = "then", .verdict_then = "GO", .changed = {}, .fault = {}};
  CHECK(told("signed by R. Example, then, as GO"));
}

TEST_CASE("a predicted time on another day, or past a change of the clock, says its day and offset") {
  const clock::Zone chicago = *clock::zone_named("America/Chicago");
  board::Expected expected{.kind = board::Expected::Kind::at,
                           .utc_s = 1772990400};  // 2026-03-08 12:20 -05:00
  const long long before = 1772948400;            // 2026-03-07 23:40 -06:00
  CHECK(words_for(expected, chicago, before) == "until about 2026-03-08 12:20 -05:00");
  CHECK(words_for(expected, chicago, before + 3600) ==
        "until about 2026-03-08 12:20 -05:00");  // 00:40 -06:00 that day
  CHECK(words_for(expected, chicago, expected.utc_s - 3600) == "until about 12:20");
}
