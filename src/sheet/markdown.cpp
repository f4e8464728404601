#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "record/diagnostic.hpp"
#include "sheet/clause.hpp"
#include "sheet/formula.hpp"
#include "sheet/own_units.hpp"
#include "sheet/write.hpp"

namespace firstpick::sheet {

namespace {

std::string escaped(std::string_view text) {
  std::string safe;
  for (const char c : printable(text)) {
    if (std::string_view("\\`*_{}[]<>#|~&$!").find(c) != std::string_view::npos) safe += '\\';
    safe += c;
  }
  return safe;
}

std::string unit_of(const Term& term, UnitSystem units) {
  const std::string own = in_own_units(term, units);
  return (term.unit == "1" ? std::string() : " " + term.unit) + (own.empty() ? "" : " (" + own + ")");
}

// Four spaces make it code: nothing in it is markup.
std::string step_text(const Step& step, UnitSystem units) {
  std::string out = escaped(step.words) + "\n\n    " + step.result.symbol;
  if (const auto formula = formula_of(step)) {
    out += " = " + as_text(*formula) + "\n      ";
    if (!step.given.empty()) out += " = " + as_text(with_numbers(*formula, step.given)) + "\n      ";
  }
  out += " = " + figures(step.result.number) + unit_of(step.result, units) + "\n\n";
  std::string given;
  for (const Term& term : step.given)
    given += fmt::format("{}`{} = {}{}`", given.empty() ? "" : ", ", term.symbol, figures(term.number),
                         unit_of(term, units));
  if (!given.empty()) out += "with " + given + "\n\n";
  if (const std::string clause = clause_in_words(step); !clause.empty()) out += "- by " + escaped(clause) + "\n";
  for (const Source& source : step.sources)
    out += fmt::format("- from {} = {}: {} ({})\n", escaped(source.id), escaped(source.value_text),
                       escaped(citation(source)), word_for(source.basis));
  return out + "\n";
}

std::string table_text(const std::vector<std::vector<std::string>>& table) {
  std::string out;
  for (std::size_t i = 0; i < table.size(); ++i) {
    out += "|";
    for (const std::string& cell : table[i]) out += " " + escaped(cell) + " |";
    out += "\n";
    if (i > 0) continue;
    out += "|";
    for (std::size_t column = 0; column < table[i].size(); ++column) out += "---|";
    out += "\n";
  }
  return out.empty() ? out : out + "\n";
}

}  // namespace

std::string markdown(const Sheet& sheet) {
  std::string out = "# " + escaped(sheet.title) + "\n\n**" + escaped(sheet.verdict) + "**\n\n";
  for (const std::string& line : sheet.heading) out += escaped(line) + "\n\n";
  out += "## Contents\n\n";
  for (std::size_t i = 0; i < sheet.sections.size(); ++i)
    out += fmt::format("{}. {}\n", i + 1, escaped(sheet.sections[i].title));
  for (std::size_t i = 0; i < sheet.sections.size(); ++i) {
    const Section& section = sheet.sections[i];
    out += fmt::format("\n## {}. {}\n\n", i + 1, escaped(section.title));
    for (const std::string& text : section.texts) out += escaped(text) + "\n\n";
    for (const Figure& figure : section.figures)
      out += escaped(figure.caption + ": in the HTML sheet; " + figure.in_words) + "\n\n";
    for (const std::string& item : section.items) out += "- " + escaped(item) + "\n";
    if (!section.items.empty()) out += "\n";
    out += table_text(section.table);
    for (const Step& step : section.steps) out += step_text(step, sheet.units);
  }
  return out;
}

}  // namespace firstpick::sheet
