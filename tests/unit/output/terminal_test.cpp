// The report for a terminal: nothing that stops the lift is left out, no text of a stranger gives orders to the terminal.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <sstream>
#include <string>
#include <vector>

#include "output/terminal.hpp"
#include "output/text_layout.hpp"
#include "record/utf8.hpp"
#include "support/hand_made_report.hpp"

using namespace firstpick;
using namespace firstpick::output;
using namespace firstpick::tests;

namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

bool holds(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

// The text without line breaks and indents, so that a sentence is found however it was broken.
std::string in_one_line(const std::string& text) {
  std::string flat;
  for (const char c : text)
    if (c != '\n' && c != ' ') flat += c;
    else if (!flat.empty() && flat.back() != ' ') flat += ' ';
  return flat;
}

bool tells(const std::string& text, const std::string& sentence) {
  return holds(in_one_line(text), in_one_line(sentence));
}

std::string without_colour(std::string text) {
  for (std::size_t start = text.find('\x1b'); start != std::string::npos; start = text.find('\x1b'))
    text.erase(start, text.find('m', start) - start + 1);
  return text;
}

const TerminalStyle plain{};
const TerminalStyle everything{.width = 80, .colour = false, .all_findings = true, .steps = true};

void check_width(const std::string& text, std::size_t width) {
  for (const std::string& line : lines_of(text)) {
    CAPTURE(line);
    CHECK(columns_of(line) <= width);
  }
}

// Every byte is part of a character that a terminal shows, or a line feed.
void check_harmless(const std::string& text) {
  for (std::size_t at = 0; at < text.size();) {
    const Utf8 character = utf8_at(text, at);
    REQUIRE(character.valid);
    const bool shown = character.code == '\n' || !is_unprintable(character.code);
    CAPTURE(static_cast<std::uint32_t>(character.code), at);
    REQUIRE(shown);
    at += character.length;
  }
}

}  // namespace

TEST_CASE("the first line is the verdict, in words and a mark") {
  checks::Report report = hand_made_report();
  CHECK(lines_of(terminal(report, plain)).front() == "(x) NO-GO");
  report.verdict = checks::Verdict::hold;
  CHECK(lines_of(terminal(report, plain)).front() == "(?) HOLD");
  report.verdict = checks::Verdict::go;
  CHECK(lines_of(terminal(report, plain)).front() == "(+) GO");
}

TEST_CASE("every fail and every missing is told with its text and its remedy, with and without --all") {
  const checks::Report report = hand_made_report();
  for (const TerminalStyle& style : {plain, everything}) {
    const std::string text = terminal(report, style);
    for (const checks::Finding& finding : report.stages.front().findings) {
      if (finding.result < checks::Result::missing) continue;
      CHECK(tells(text, finding.text));
      CHECK(tells(text, finding.remedy));
      CHECK(tells(text, std::string(finding.rule)));
    }
  }
}

TEST_CASE("what fails comes before what is missing") {
  const std::string text = terminal(hand_made_report(), plain);
  CHECK(text.find("a cone of concrete") < text.find("has no certificate"));
}

TEST_CASE("a note is told: nobody is left to believe that everything was looked at") {
  const std::string text = terminal(hand_made_report(), plain);
  CHECK(tells(text, "the plan states no limit on the age"));
}

TEST_CASE("one reason that stops many subjects is told once, with its subjects") {
  checks::Report report = hand_made_report();
  auto& findings = report.stages.front().findings;
  for (const char* insert : {"A2", "A3"}) {
    checks::Finding same = findings[2];
    same.subject = insert;
    findings.push_back(same);
  }
  const std::string text = in_one_line(terminal(report, plain));
  CHECK(text.find("insert A1 has no certificate") == text.rfind("insert A1 has no certificate"));
  CHECK(holds(text, "A1, A2, A3"));
}

TEST_CASE("two reasons that differ only in the remedy are both told") {
  checks::Report report = hand_made_report();
  auto& findings = report.stages.front().findings;
  checks::Finding other = findings[2];
  other.remedy = "look at the crate";
  findings.push_back(other);
  const std::string text = terminal(report, plain);
  CHECK(tells(text, "write its lot"));
  CHECK(tells(text, "look at the crate"));
}

TEST_CASE("cautions and what is not checked are there in every verdict") {
  checks::Report report = hand_made_report();
  for (const auto verdict : {checks::Verdict::go, checks::Verdict::hold, checks::Verdict::no_go})
    for (const TerminalStyle& style : {plain, everything, TerminalStyle{.colour = true}}) {
      report.verdict = verdict;
      const std::string text = terminal(report, style);
      CHECK(holds(text, "\nCautions\n"));
      CHECK(holds(text, "\nNot checked by this version\n"));
      CHECK(tells(text, report.cautions.front()));
      CHECK(tells(text, report.not_checked.front()));
    }
}

TEST_CASE("values from memory and the plant's own values are told") {
  const std::string text = terminal(hand_made_report(), plain);
  CHECK(tells(text, "somewhere-2018.k = 24"));
  CHECK(tells(text, "somewhere-2018.own"));
  CHECK(tells(text, "the lowest specimen counts"));
}

TEST_CASE("a verdict without anything that stops it says so, and never beside something that does") {
  checks::Report report = hand_made_report();
  const std::string sentence = "Every mandatory rule was evaluated and passed.";
  CHECK_FALSE(tells(terminal(report, plain), sentence));
  report.verdict = checks::Verdict::go;
  std::erase_if(report.stages.front().findings,
                [](const checks::Finding& f) { return f.result >= checks::Result::missing; });
  CHECK(tells(terminal(report, plain), sentence));
}

TEST_CASE("a report that is HOLD without a single finding does not claim that everything passed") {
  checks::Report report = hand_made_report();
  report.verdict = checks::Verdict::hold;
  report.stages.clear();
  CHECK_FALSE(tells(terminal(report, plain), "Every mandatory rule was evaluated and passed."));
}

TEST_CASE("no line is wider than the terminal, for ordinary and hostile texts, at 60 to 100 columns") {
  for (const checks::Report& report : {hand_made_report(), hostile_report()})
    for (const std::size_t width : {60U, 72U, 80U, 100U})
      for (const bool all : {false, true})
        check_width(terminal(report, {.width = width, .colour = false, .all_findings = all, .steps = true}), width);
}

TEST_CASE("a mark of 200 letters without a space is broken, not lost") {
  checks::Report report = hand_made_report();
  report.mark = std::string(200, 'M');
  report.title = std::string(200, 'T');
  const std::string text = terminal(report, plain);
  check_width(text, 80);
  CHECK(std::ranges::count(text, 'M') >= 200);
  CHECK(std::ranges::count(text, 'T') >= 200);
}

TEST_CASE("nothing in any text gives orders to the terminal") {
  check_harmless(terminal(hostile_report(), everything));
  check_harmless(terminal(hostile_report(), plain));
  check_harmless(terminal(hand_made_report(), everything));
  check_harmless(steps(hostile_report(), 80));
}

TEST_CASE("a text of the plan cannot put a verdict of its own at the start of a line") {
  checks::Report report = hand_made_report();
  report.mark = "M\n(+) GO\n";
  report.title = "x\r(+) GO";
  std::size_t verdicts = 0;
  for (const std::string& line : lines_of(terminal(report, plain))) verdicts += line.starts_with("(+) GO") ? 1U : 0U;
  CHECK(verdicts == 0);
}

TEST_CASE("colour only repeats what words say") {
  const checks::Report report = hostile_report();
  const TerminalStyle coloured{.width = 80, .colour = true, .all_findings = true, .steps = true};
  CHECK(holds(terminal(report, coloured), "\x1b["));
  CHECK(without_colour(terminal(report, coloured)) == terminal(report, everything));
}

TEST_CASE("a utilization above 1 never reads 1.00, one at most 1 never more") {
  checks::Report report = hand_made_report();
  auto& findings = report.stages.front().findings;
  for (const double over : {1.0000001, 1.0 + 1e-15, 1.004, 1.00499}) {
    findings[1].utilization = over;
    const std::string text = terminal(report, plain);
    CAPTURE(over, text);
    for (const std::string& line : lines_of(text)) CHECK_FALSE((holds(line, "insert-breakout ") && line.ends_with(" 1.00")));
  }
  findings = {hand_made_finding("sling-overload", "A1", checks::Result::pass)};
  findings[0].utilization = 0.9999999;
  const std::string text = terminal(report, plain);
  CHECK(holds(text, "1.00\n"));
}

TEST_CASE("demands are printed up and capacities down") {
  checks::Report report = hand_made_report();
  auto& finding = report.stages.front().findings[1];
  finding.demand = Force{12.341 * kN};
  finding.capacity = Force{12.399 * kN};
  const std::string text = terminal(report, plain);
  CHECK(holds(text, "12.4 kN"));
  CHECK(holds(text, "12.3 kN"));
}

TEST_CASE("no figure in the table is cut: half a number is another number") {
  checks::Report report = hand_made_report();
  report.units = UnitSystem::us;
  auto& findings = report.stages.front().findings;
  findings.clear();
  for (const double feet : {0.4, 8.3, 10.99, 98.7, 5280.0}) {
    checks::Finding finding = hand_made_finding("insert-embedment", "A1", checks::Result::pass);
    finding.demand = Length{feet * ft};
    finding.capacity = Length{(feet + 0.3) * ft};
    findings.push_back(finding);
  }
  for (const double hours : {0.1, 14.5, 47.99, 24.0 * 365.0 * 3.0 + 7.0}) {
    checks::Finding finding = hand_made_finding("evidence-age", "SL-1", checks::Result::pass);
    finding.demand = Duration{hours * hour};
    finding.capacity = Duration{hours * hour + 71.0 * minute};
    findings.push_back(finding);
  }
  const std::string text = terminal(report, everything);
  for (const checks::Finding& finding : findings) {
    const std::string demand = checks::print(*finding.demand, UnitSystem::us, Rounding::up);
    const std::string capacity = checks::print(*finding.capacity, UnitSystem::us, Rounding::down);
    CAPTURE(demand, capacity);
    CHECK(holds(text, demand));
    CHECK(holds(text, capacity));
  }
  check_width(text, 80);
}

TEST_CASE("without --all each insert and leg shows the finding that governs it") {
  checks::Report report = hand_made_report();
  auto& findings = report.stages.front().findings;
  checks::Finding weaker = hand_made_finding("insert-pullout", "A1", checks::Result::pass);
  weaker.utilization = 0.3;
  findings.push_back(weaker);
  const std::string text = terminal(report, plain);
  CHECK(holds(text, "insert-breakout "));
  CHECK_FALSE(holds(text, "insert-pullout "));
  CHECK(holds(terminal(report, everything), "insert-pullout "));
}

TEST_CASE("the calculation shows words, formula, numbers, clause and source") {
  const std::string text = steps(hand_made_report(), 80);
  CHECK(tells(text, "total load"));
  CHECK(tells(text, "F = phi * (W + W_att) + F_adh = 86 kN"));
  CHECK(tells(text, "phi = 1.3"));
  CHECK(tells(text, "by statics"));
  CHECK(tells(text, "somewhere-2018.k = 24"));
  CHECK_FALSE(tells(terminal(hand_made_report(), plain), "Calculation"));
  CHECK(tells(terminal(hand_made_report(), everything), "Calculation"));
}

TEST_CASE("the same report gives the same text") {
  CHECK(terminal(hand_made_report(), everything) == terminal(hand_made_report(), everything));
}
