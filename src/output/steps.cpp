// The calculation, line by line: words, formula, numbers put in, result, clause, table sources.

#include <fmt/format.h>

#include "output/terminal.hpp"
#include "output/text_layout.hpp"
#include "record/diagnostic.hpp"

namespace firstpick::output {

namespace {

std::string number(const Term& term) {
  return term.unit == "1" ? fmt::format("{:.6g}", term.number) : fmt::format("{:.6g} {}", term.number, term.unit);
}

std::string step_text(const Step& step, std::size_t width) {
  std::string out = paragraph("  ", "  ", printable(step.words), width);
  const std::string formula = step.formula.empty() ? "" : step.formula + " = ";
  out += paragraph("    ", "      ", fmt::format("{} = {}{}", step.result.symbol, formula, number(step.result)), width);
  std::string given;
  for (const Term& term : step.given)
    given += fmt::format("{}{} = {}", given.empty() ? "" : ", ", term.symbol, number(term));
  if (!given.empty()) out += paragraph("    with ", "         ", printable(given), width);
  if (!step.clause.empty()) out += paragraph("    by ", "       ", printable(step.clause), width);
  for (const Source& source : step.sources)
    out += paragraph("    from ", "         ",
                     printable(fmt::format("{} = {} ({}; {})", source.id, source.value_text, citation(source),
                                           word_for(source.basis))),
                     width);
  return out;
}

}  // namespace

std::string steps(const checks::Report& report, std::size_t width) { return steps(report.trace, width); }

std::string steps(const Trace& trace, std::size_t width) {
  std::string out = "\nCalculation\n";
  std::string about;
  for (const Trace::Entry& entry : trace.steps()) {
    if (entry.subject != about) {
      about = entry.subject;
      out += "\n" + paragraph("", "", printable(about), width);
    }
    out += step_text(entry.step, width);
  }
  return out;
}

}  // namespace firstpick::output
