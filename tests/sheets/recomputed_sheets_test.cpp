// The calculation sheet of every plan, read back: each printed line is computed again from the numbers printed in it, by
// the evaluator of tests/support (Markdown) and by a reader of MathML that is here (HTML). Neither knows the code that
// wrote the sheet.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "sheet/write.hpp"
#include "support/formula.hpp"
#include "support/hand_made_report.hpp"
#include "support/plan_files.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

// Six figures of each input: a product of ten of them, or a power of 5/3, is good to a few units of the fifth.
constexpr double relative_tolerance = 5e-5;

bool agree(double again, double printed) {
  return std::abs(again - printed) <=
         relative_tolerance * std::max(std::abs(printed), std::abs(again)) + 1e-300;
}

// The value of MathML as this program's sheets use it.
class MathReader {
 public:
  explicit MathReader(std::string text) : text_(std::move(text)) {}
  double whole() {
    const double value = row("");
    if (at_ != text_.size()) fault("more than one value");
    return value;
  }

 private:
  [[noreturn]] void fault(const std::string& what) const {
    throw std::invalid_argument(what + " in " + text_);
  }
  bool peek(const std::string& wanted) const { return text_.compare(at_, wanted.size(), wanted) == 0; }
  bool take(const std::string& wanted) {
    if (!peek(wanted)) return false;
    at_ += wanted.size();
    return true;
  }
  void need(const std::string& wanted) {
    if (!take(wanted)) fault("expected " + wanted + " at " + std::to_string(at_));
  }
  bool op(const std::string& sign) { return take("<mo>" + sign + "</mo>"); }
  // A row up to its closing tag: sums of products of atoms.
  double row(const std::string& end) {
    const double value = sum();
    if (!end.empty()) need(end);
    return value;
  }
  double sum() {
    double value = product();
    while (true) {
      if (op("+"))
        value += product();
      else if (op("&#8722;"))
        value -= product();
      else
        return value;
    }
  }
  double product() {
    double value = signed_atom();
    while (op("&#183;") || op("&#215;")) value *= signed_atom();
    return value;
  }
  double signed_atom() { return op("&#8722;") ? -signed_atom() : atom(); }
  double atom() {
    if (take("<mrow>")) return row("</mrow>");
    if (op("(")) {
      const double value = sum();
      need("<mo>)</mo>");
      return value;
    }
    if (take("<mn>")) {
      const std::size_t end = text_.find('<', at_);
      const double value = std::stod(text_.substr(at_, end - at_));
      at_ = end;
      need("</mn>");
      return value;
    }
    if (take("<mfrac>")) {
      const double above = signed_atom(), below = signed_atom();
      need("</mfrac>");
      return above / below;
    }
    if (take("<msup>")) {
      const double base = signed_atom(), power = signed_atom();
      need("</msup>");
      return std::pow(base, power);
    }
    if (take("<msqrt>")) return std::sqrt(row("</msqrt>"));
    if (take("<mi>")) return named();
    fault("no value at " + std::to_string(at_));
  }
  double named() {
    const std::size_t end = text_.find('<', at_);
    const std::string name = text_.substr(at_, end - at_);
    at_ = end;
    need("</mi>");
    if (name == "&#960;") return 3.14159265358979323846;
    need("<mo>(</mo>");
    std::vector<double> of{sum()};
    while (op(",")) of.push_back(sum());
    need("<mo>)</mo>");
    if (name == "min") return *std::ranges::min_element(of);
    if (name == "max") return *std::ranges::max_element(of);
    if (name == "ln") return std::log(of[0]);
    if (name == "abs") return std::abs(of[0]);
    if (name == "sin") return std::sin(of[0]);
    if (name == "cos") return std::cos(of[0]);
    if (name == "tan") return std::tan(of[0]);
    fault("no function " + name);
  }
  std::string text_;
  std::size_t at_ = 0;
};

struct Counted {
  std::size_t computed = 0, as_given = 0;
  std::vector<std::string> faults;
};

std::vector<std::string> lines_of(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

// "    N_b = k_c * ...", "       = 24 * ...", "       = 19135.2 lb": the second is computed, the third is what it says.
Counted recomputed_markdown(const std::string& sheet) {
  Counted counted;
  const std::vector<std::string> lines = lines_of(sheet);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (!lines[i].starts_with("    ") || lines[i].starts_with("     ")) continue;
    std::size_t last = i;
    while (last + 1 < lines.size() && lines[last + 1].starts_with("       = ")) ++last;
    const std::string result = lines[last].substr(lines[last].rfind(" = ") + 3);
    if (last == i) {
      ++counted.as_given;
      continue;
    }
    const std::string numbers =
        last == i + 1 ? lines[i].substr(lines[i].find(" = ") + 3) : lines[i + 1].substr(9);
    try {
      const double again = value_of(numbers, {});
      ++counted.computed;
      if (!agree(again, std::stod(result)))
        counted.faults.push_back(lines[i] + " | " + numbers + " gives " + std::to_string(again) +
                                 ", printed " + result);
    } catch (const std::exception& fault) {
      counted.faults.push_back(lines[i] + " | " + numbers + ": " + fault.what());
    }
    i = last;
  }
  return counted;
}

std::string part_of(const std::string& step, const std::string& cls) {
  const std::string open = "<math class=\"" + cls + "\">";
  const std::size_t start = step.find(open);
  if (start == std::string::npos) return {};
  const std::size_t from = start + open.size();
  return step.substr(from, step.find("</math>", from) - from);
}

Counted recomputed_html(const std::string& sheet) {
  Counted counted;
  const std::string open = "<div class=\"step\">";
  for (std::size_t at = sheet.find(open); at != std::string::npos; at = sheet.find(open, at + 1)) {
    const std::string step = sheet.substr(at, sheet.find("</div>", at) - at);
    const std::string formula = part_of(step, "formula"), result = part_of(step, "result");
    if (formula.empty()) {
      ++counted.as_given;
      continue;
    }
    const std::string numbers = part_of(step, "numbers");
    try {
      const double again = MathReader(numbers.empty() ? formula : numbers).whole(),
                   printed = MathReader(result).whole();
      ++counted.computed;
      if (!agree(again, printed)) counted.faults.push_back(step + " gives " + std::to_string(again));
    } catch (const std::exception& fault) {
      counted.faults.push_back(step + ": " + fault.what());
    }
  }
  return counted;
}

sheet::Sheet sheet_for(const CheckedPlan& checked, bool all) {
  const auto drawn = checks::stage_figures(checked.plan, checked.body, checked.report,
                                           real_tables().rule_sets.at(checked.report.rules), real_tables());
  return sheet::sheet_of(checked.plan, checked.body, checked.report, all, drawn);
}

std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size()))
    ++count;
  return count;
}

}  // namespace

TEST_CASE("every line of every sheet gives its printed result from its printed numbers") {
  std::size_t computed = 0;
  for (const std::string& file : all_plans()) {
    CAPTURE(file);
    const CheckedPlan checked = checked_plan(file);
    const sheet::Sheet whole = sheet_for(checked, true);
    for (const Counted& counted :
         {recomputed_markdown(sheet::markdown(whole)), recomputed_html(sheet::html(whole))}) {
      CHECK(counted.faults == std::vector<std::string>{});
      CHECK(counted.computed + counted.as_given == checked.report.trace.steps().size());
      computed += counted.computed;
    }
  }
  CHECK(computed > 5000);
}

TEST_CASE("the recomputation finds a wrong result, and a wrong number put in") {
  const std::string right = "    a = b * c\n       = 2 * 3\n       = 6 m\n";
  CHECK(recomputed_markdown(right).faults.empty());
  CHECK(recomputed_markdown(right).computed == 1);
  CHECK(recomputed_markdown("    a = b * c\n       = 2 * 3\n       = 6.001 m\n").faults.size() == 1);
  CHECK(recomputed_markdown("    a = b * c\n       = 2 * x\n       = 6 m\n").faults.size() == 1);
  const auto step = [](const std::string& numbers) {
    return "<div class=\"step\"><math class=\"formula\"><mi>b</mi></math><math class=\"numbers\">" + numbers +
           "</math><math class=\"result\"><mn>6</mn></math></div>";
  };
  CHECK(recomputed_html(step("<mrow><mn>2</mn><mo>&#183;</mo><mn>3</mn></mrow>")).faults.empty());
  CHECK(recomputed_html(step("<mrow><mn>2</mn><mo>&#183;</mo><mn>3.1</mn></mrow>")).faults.size() == 1);
  CHECK(recomputed_html(step("<mrow><mn>2</mn><mo>&#183;</mo><mi>x</mi></mrow>")).faults.size() == 1);
}

TEST_CASE("without --all a sheet keeps the worst insert of each rule, and tells what it leaves out") {
  const CheckedPlan checked = checked_plan("docs/demo/box-culvert.toml");
  const sheet::Sheet whole = sheet_for(checked, true), brief = sheet_for(checked, false);
  const std::string all = sheet::markdown(whole), some = sheet::markdown(brief);
  CHECK(count_of(all, "Calculation, strip: insert-breakout, insert") ==
        2 * 4);  // in the contents and above it
  CHECK(count_of(some, "Calculation, strip: insert-breakout, insert A1") == 2);
  CHECK(count_of(some, "Calculation, strip: insert-breakout, insert") == 2);
  CHECK(count_of(all, "Left out") == 0);
  CHECK(count_of(some, "Left out") == 2);
  CHECK(count_of(some, "Calculation, ") < count_of(all, "Calculation, "));
}

TEST_CASE(
    "a sheet names verdict, reasons, sources, assumptions, unconfirmed values, cautions and what is not "
    "checked") {
  const CheckedPlan checked = checked_plan("docs/demo/box-culvert.toml");
  const sheet::Sheet sheet = sheet_for(checked, false);
  const std::string page = sheet::html(sheet);
  for (const char* words :
       {"NO-GO", "BC-0604-31", "Fails: a cone of concrete breaks out at A1", "Cautions", "Assumptions",
        "From memory, to be confirmed by the engineer of record", "Not checked by this version",
        "Table entries used", "ACI 318-19 17.6.2.1(a)", "aci-318-19.cone_extent", "quoted",
        "the engineer of record and local codes govern", "data:image/svg+xml;base64,", "<math class"}) {
    CAPTURE(words);
    CHECK(page.find(words) != std::string::npos);
  }
  CHECK(page.find(checked.report.fingerprint) != std::string::npos);
  CHECK(page.find("<td>A3</td><td>strip 3</td>") != std::string::npos);  // which is which in the figure
  CHECK(page.find("http://") == std::string::npos);  // self-contained
  CHECK(page.find("https://") == std::string::npos);
  CHECK(page ==
        sheet::html(sheet_for(checked_plan("docs/demo/box-culvert.toml"), false)));  // same plan, same bytes
}

TEST_CASE("every section of the contents is there, every tag closed") {
  for (const std::string& file : demo_plans()) {
    CAPTURE(file);
    const sheet::Sheet sheet = sheet_for(checked_plan(file), true);
    const std::string page = sheet::html(sheet);
    for (std::size_t i = 1; i <= sheet.sections.size(); ++i) {
      CHECK(count_of(page, "href=\"#s" + std::to_string(i) + "\"") == 1);
      CHECK(count_of(page, "id=\"s" + std::to_string(i) + "\"") == 1);
    }
    for (const std::string tag :
         {"div",  "p",  "table", "tr", "td",   "th",   "ul",    "ol",    "li",   "h1",   "h2",  "math",
          "mrow", "mi", "mn",    "mo", "msup", "msub", "mfrac", "msqrt", "html", "body", "head"}) {
      CAPTURE(tag);
      CHECK(count_of(page, "<" + tag + ">") + count_of(page, "<" + tag + " ") == count_of(page, "</" + tag + ">"));
    }
  }
}

TEST_CASE("hostile names are text in a sheet") {
  CheckedPlan checked = checked_plan("docs/demo/round-lid.toml");
  const std::string hostile =
      "<script>alert(1)</script>\" onload='x' | **bold** `code` [link](x)\n# title" + hostile_text;
  checks::Report& report = checked.report;
  for (std::string* text :
       {&report.mark, &report.title, &report.file, &report.engineer, &report.strength_basis})
    *text += hostile;
  for (plan::Insert& insert : checked.plan.inserts) insert.kind += hostile;
  for (checks::Finding& finding : report.stages.front().findings)
    finding.subject += hostile, finding.text += hostile;
  const sheet::Sheet sheet = sheet_for(checked, true);
  const std::string page = sheet::html(sheet), text = sheet::markdown(sheet);
  CHECK(page.find("<script") == std::string::npos);
  CHECK(page.find("&lt;script&gt;alert(1)&lt;/script&gt;&quot; onload=&#39;x&#39;") != std::string::npos);
  CHECK(text.find("\\<script\\>alert(1)\\</script\\>") != std::string::npos);
  CHECK(text.find("\n# title") == std::string::npos);
  CHECK(text.find("**bold**") == std::string::npos);
  for (const std::string* each : {&page, &text}) {
    CHECK(each->find('\x1b') == std::string::npos);
    CHECK(each->find("\xE2\x80\xAE") == std::string::npos);
  }
}

namespace {

sheet::Section section_named(const sheet::Sheet& sheet, const std::string& title) {
  const auto found = std::ranges::find(sheet.sections, title, &sheet::Section::title);
  REQUIRE(found != sheet.sections.end());
  return *found;
}

// The words of a figure, joined; every word inside its page.
std::string words_in(const sheet::Figure& figure) {
  std::string words;
  for (const card::Box& box : figure.page.boxes)
    for (const card::TextMark& text : box.texts) {
      CAPTURE(figure.caption, text.words.text, text.at.x, text.at.y, text.at.width);
      CHECK(card::inside(text.at, {0.0, 0.0, figure.page.width, figure.page.height}));
      words += text.words.text + "|";
    }
  return words;
}

}  // namespace

TEST_CASE("the breakout areas of the inserts are drawn with the areas that the calculation has") {
  const CheckedPlan checked = checked_plan("docs/demo/box-culvert.toml");
  const sheet::Sheet sheet = sheet_for(checked, false);
  const auto section = section_named(sheet, "Breakout areas");
  REQUIRE(section.figures.size() == 1);
  const std::string words = words_in(section.figures.front());
  for (const plan::Insert& insert : checked.plan.inserts) CHECK(words.find(insert.id + "|") != std::string::npos);
  CHECK(section.figures.front().caption.find("top as cast, seen from above") != std::string::npos);
  std::optional<double> A_Nc_m2;
  for (const auto& entry : checked.report.trace.steps())
    if (entry.step.result.symbol == "A_Nc" && !A_Nc_m2)
      A_Nc_m2 = entry.step.result.number * (entry.step.result.unit == "in2" ? in2.value() : 1.0);
  REQUIRE(A_Nc_m2);
  const auto drawn = checks::stage_figures(checked.plan, checked.body, checked.report, real_tables().rule_sets.at("us"),
                                           real_tables());
  REQUIRE(drawn.front().breakouts.size() == 1);
  const auto& face = drawn.front().breakouts.front();
  CHECK(std::ranges::any_of(face.areas, [&](const auto& area) {
    return area.second.value() == Approx(*A_Nc_m2).epsilon(1e-9);
  }));
}

TEST_CASE("the tension over a panel is drawn, and is largest where the calculation has it") {
  const CheckedPlan checked = checked_plan("docs/demo/wall-panel.toml");
  const auto section = section_named(sheet_for(checked, false), "Tension over the piece");
  REQUIRE_FALSE(section.figures.empty());
  CHECK(words_in(section.figures.front()).find("top as cast, seen from above: at most ") != std::string::npos);
  const auto drawn = checks::stage_figures(checked.plan, checked.body, checked.report, real_tables().rule_sets.at("us"),
                                           real_tables());
  const auto& picture = drawn.front().tension;
  REQUIRE(picture);
  REQUIRE(picture->map);
  CHECK(picture->map->cells.size() > 200);
  CHECK(picture->map->picks.size() >= 2);
  Stress most{};
  for (const auto& cell : picture->map->cells) most = std::max({most, cell.bottom, cell.top});
  const auto& findings = checked.report.stages.front().findings;
  const auto cracking = std::ranges::find(findings, std::string_view("piece-cracking"), &checks::Finding::rule);
  REQUIRE(cracking != findings.end());
  REQUIRE(cracking->demand);
  const Stress asked = std::get<Stress>(*cracking->demand);
  CHECK(most <= 1.05 * asked);  // the picture is of a coarse mesh, and leaves the picks out
  CHECK(most > 0.3 * asked);
}

TEST_CASE("the tension over a panel that is turned is drawn in the attitude that governs, near what the calculation has") {
  for (const char* file : {"docs/demo/panel-turned.toml", "tests/plans/ok/panel-turned-between-two-hooks.toml",
                           "tests/plans/ok/panel-off-a-tilting-table.toml", "tests/plans/ok/panel-laid-down-about-its-edge.toml"}) {
    const CheckedPlan checked = checked_plan(file);
    const auto drawn = checks::stage_figures(checked.plan, checked.body, checked.report,
                                             real_tables().rule_sets.at(checked.report.rules), real_tables());
    for (std::size_t i = 0; i < drawn.size(); ++i) {
      if (checked.report.stages[i].kind != plan::StageKind::turn) continue;
      CAPTURE(file, i);
      const auto& picture = drawn[i].tension;
      REQUIRE(picture);
      REQUIRE(picture->map);
      CHECK(picture->turned);
      Stress most{};
      for (const auto& cell : picture->map->cells) most = std::max({most, cell.bottom, cell.top});
      const auto& findings = checked.report.stages[i].findings;
      const auto cracking = std::ranges::find(findings, std::string_view("piece-cracking"), &checks::Finding::rule);
      REQUIRE(cracking != findings.end());
      CHECK(picture->situation == cracking->situation);
      const Stress asked = std::get<Stress>(*cracking->demand);
      CHECK(most <= 1.05 * asked);  // bending alone, of a coarse mesh, without the picks
      CHECK(most > 0.3 * asked);
    }
  }
}

TEST_CASE("phi is the dynamic factor and nothing else, on no sheet an angle") {
  std::size_t factors = 0;
  for (const std::string& file : all_plans()) {
    CAPTURE(file);
    const CheckedPlan checked = checked_plan(file);
    for (const auto& entry : checked.report.trace.steps()) {
      std::vector<Term> terms = entry.step.given;
      terms.push_back(entry.step.result);
      for (const Term& term : terms)
        if (term.symbol == "phi") {
          ++factors;
          CHECK(term.unit == "1");
        }
    }
  }
  CHECK(factors > 100);
}

TEST_CASE("no line of a sheet is a number twice, and no clause a letter without its rule") {
  for (const std::string& file : demo_plans()) {
    CAPTURE(file);
    const std::string text = sheet::markdown(sheet_for(checked_plan(file), true));
    CHECK(text.find(" = 1\n       = 1\n") == std::string::npos);
    CHECK(text.find("- by (") == std::string::npos);
    CHECK(text.find("- by s. ") == std::string::npos);
  }
}

TEST_CASE("the stress along a piece taken as a line is drawn to the stress that the calculation has") {
  const CheckedPlan checked = checked_plan("tests/plans/ok/beam-on-two-picks.toml");
  const auto drawn = checks::stage_figures(checked.plan, checked.body, checked.report, real_tables().rule_sets.at("us"),
                                           real_tables());
  const auto& picture = drawn.front().tension;
  REQUIRE(picture);
  REQUIRE(picture->line);
  Stress most{};
  for (const auto& section : picture->line->sections) most = std::max({most, section.bottom, section.top});
  const auto& findings = checked.report.stages.front().findings;
  const auto cracking = std::ranges::find(findings, std::string_view("piece-cracking"), &checks::Finding::rule);
  REQUIRE(cracking->demand);
  CHECK(most.value() == Approx(std::get<Stress>(*cracking->demand).value()).epsilon(1e-9));
  CHECK(words_in(section_named(sheet_for(checked, false), "Tension over the piece").figures.front()).find("allowed|") !=
        std::string::npos);
}

TEST_CASE("of a piece with strands, or that may crack, no stress of the loads alone is drawn") {
  for (const char* file : {"tests/plans/nogo/beam-bent-up-by-its-strands.toml", "tests/plans/ok/plank-that-may-crack.toml"}) {
    CAPTURE(file);
    const CheckedPlan checked = checked_plan(file);
    const auto drawn = checks::stage_figures(checked.plan, checked.body, checked.report, real_tables().rule_sets.at("us"),
                                             real_tables());
    CHECK(std::ranges::none_of(drawn, [](const auto& figures) { return figures.tension.has_value(); }));
  }
}

TEST_CASE("the sweep of a turn is drawn from its first angle to its last, to the largest pull") {
  for (const char* file : {"docs/demo/panel-turned.toml", "tests/plans/ok/panel-turned-between-two-hooks.toml"}) {
    CAPTURE(file);
    const CheckedPlan checked = checked_plan(file);
    const auto drawn = checks::stage_figures(checked.plan, checked.body, checked.report,
                                             real_tables().rule_sets.at(checked.report.rules), real_tables());
    const auto at = static_cast<std::size_t>(
        std::ranges::find_if(checked.report.stages, [](const auto& stage) { return stage.turn.has_value(); }) -
        checked.report.stages.begin());
    REQUIRE(at < drawn.size());
    const auto& turn = drawn[at].turn;
    REQUIRE(turn.size() > 5);
    const auto& told = *checked.report.stages[at].turn;
    CHECK(in(deg, turn.front().angle) == Approx(in(deg, told.from)).margin(1e-6));
    CHECK(in(deg, turn.back().angle) == Approx(in(deg, told.to)).margin(1e-6));
    Force most{};
    for (const auto& each : turn) most = std::max(most, each.main);
    CHECK(most.value() == Approx(told.pull.value()).epsilon(1e-6));
    const std::string words = words_in(section_named(sheet_for(checked, false), "The turn").figures.front());
    CHECK(words.find("hook|") != std::string::npos);
  }
}

TEST_CASE("a number in other units than the plan's stands with the plan's beside it") {
  const sheet::Sheet si = sheet_for(checked_plan("docs/demo/panel-turned.toml"), true);
  const std::string page = sheet::html(si), text = sheet::markdown(si);
  CHECK(count_of(page, " lb (80.0 kN)") + count_of(page, " lb (20.0 kN)") > 0);
  CHECK(count_of(text, " lb (20.0 kN)") > 0);
  const std::string us = sheet::html(sheet_for(checked_plan("docs/demo/manhole-base.toml"), true));
  CHECK(count_of(us, " kN (") > 0);
  CHECK(count_of(us, " lb (") == 0);  // in the plan's units already
  CHECK(count_of(page, " kN (") == 0);
}

TEST_CASE("findings tell apart what passed without a number and what there was nothing to judge of") {
  const CheckedPlan checked = checked_plan("docs/demo/panel-turned.toml");
  const sheet::Sheet sheet = sheet_for(checked, false);
  const auto strip = section_named(sheet, "Findings, stage strip"), turn = section_named(sheet, "Findings, stage turn");
  REQUIRE(strip.texts.size() == 2);
  CHECK(strip.texts[0].find("insert-certificate (") != std::string::npos);
  for (const char* rule : {"turn-slip (", "haul-restraint (", "wind-side-load (", "scale-reading (", "thread-engagement ("}) {
    CAPTURE(rule);
    CHECK(strip.texts[0].find(rule) == std::string::npos);
    CHECK(strip.texts[1].find(rule) != std::string::npos);
  }
  CHECK(strip.texts[1].starts_with("Not applicable in this stage"));
  CHECK(turn.texts[1].find("turn-slip (") == std::string::npos);
  std::size_t told = 0;  // each finding once: in the table or in one of the two lists
  for (const sheet::Section& section : {strip, turn})
    for (const auto& row : section.table) {
      CHECK((row[2] != "pass" || row[3] != "-" || row[5] != "-"));
      ++told;
    }
  CHECK(told > 10);
}

TEST_CASE("every printed page names piece, fingerprint and page, and the heads of tables come again") {
  CheckedPlan checked = checked_plan("docs/demo/manhole-base.toml");
  const std::string page = sheet::html(sheet_for(checked, false));
  CHECK(page.find("@top-left{content:\"MB-48-207, revision A\"}") != std::string::npos);
  CHECK(page.find("@bottom-left{content:\"fingerprint " + checked.report.fingerprint.substr(0, 16) + "\"}") != std::string::npos);
  CHECK(page.find("counter(page) \" of \" counter(pages)") != std::string::npos);
  CHECK(count_of(page, "<table>") == count_of(page, "<thead>"));
  CHECK(count_of(page, "<thead>") == count_of(page, "</thead>"));
  checked.report.mark = "a\"}body{display:none}</style><script>";
  const std::string hostile = sheet::html(sheet_for(checked, false));
  const std::size_t from = hostile.find("<style>"), to = hostile.find("</style>");
  CHECK(hostile.substr(from, to - from).find("display:none") == std::string::npos);
  CHECK(count_of(hostile, "</style>") == 1);
}

TEST_CASE("the strength that is asked for is told with who asks for it") {
  const CheckedPlan checked = checked_plan("docs/demo/panel-turned.toml");  // 20 MPa on the drawing, 2000 psi by the rules
  for (const checks::Finding& finding : checked.report.stages.front().findings)
    if (finding.rule == "strength-below-required") CHECK(finding.clause == "required on the drawing, in the plan");
}
