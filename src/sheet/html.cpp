#include <string_view>
#include <vector>

#include <fmt/format.h>
#include <nettle/base64.h>

#include "card/paint.hpp"
#include "record/diagnostic.hpp"
#include "sheet/clause.hpp"
#include "sheet/formula.hpp"
#include "sheet/own_units.hpp"
#include "sheet/write.hpp"

namespace firstpick::sheet {

namespace {

constexpr std::string_view style =
    "body{font-family:sans-serif;font-size:10pt;line-height:1.35;max-width:52em;margin:1.5em auto;padding:0 "
    "1em;color:#000;"
    "background:#fff}h1{font-size:1.5em}h2{font-size:1.15em;border-bottom:1px solid #000;margin-top:1.6em}"
    "table{border-collapse:collapse;width:100%;font-size:.92em}th,td{border:1px solid #777;padding:.15em "
    ".4em;text-align:left;"
    "vertical-align:top;overflow-wrap:break-word}.verdict{font-size:1.6em;font-weight:bold;border:3px solid "
    "#000;"
    "padding:.2em .6em;display:inline-block}.step{margin:.7em 0;break-inside:avoid}.step p{margin:.1em 0}"
    ".step "
    ".from{font-size:.85em;margin-left:2em}math{font-size:1.08em;math-style:normal;font-family:\"DejaVu Math "
    "TeX Gyre\",math}img{max-width:100%;border:0}"
    ".figure{break-inside:avoid}p,li{overflow-wrap:anywhere}@media(max-width:600px){body{padding:0 .5em}table{font-size:.7em}th,td{padding:.1em "
    ".2em;overflow-wrap:anywhere}.step{overflow-x:auto}}"
    "h2{break-after:avoid}tr{break-inside:avoid}thead{display:table-header-group}@media "
    "print{body{margin:0;max-width:none;padding:0}"
    "a{color:#000;text-decoration:none}}";

std::string escaped(std::string_view text) {
  std::string safe;
  for (const char c : printable(text)) {
    if (c == '&')
      safe += "&amp;";
    else if (c == '<')
      safe += "&lt;";
    else if (c == '>')
      safe += "&gt;";
    else if (c == '"')
      safe += "&quot;";
    else if (c == '\'')
      safe += "&#39;";
    else
      safe += c;
  }
  return safe;
}

// A string of a style sheet: whatever could end it stands as its number.
std::string in_style(std::string_view text) {
  std::string safe;
  for (const char c : printable(text)) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == ' ' ||
                       c == '-' || c == ',' || c == '.' || (static_cast<unsigned char>(c) & 0x80U) != 0;
    safe += plain ? std::string(1, c) : fmt::format("\\{:06x}", static_cast<unsigned>(static_cast<unsigned char>(c)));
  }
  return safe;
}

// On every printed page: which piece, which calculation, which page.
std::string page_style(const Sheet& sheet) {
  return fmt::format("@page{{margin:18mm 15mm;font-family:sans-serif;font-size:8pt;@top-left{{content:\"{}\"}}"
                     "@top-right{{content:\"{}\"}}@bottom-left{{content:\"{}\"}}"
                     "@bottom-right{{content:\"page \" counter(page) \" of \" counter(pages)}}}}",
                     in_style(sheet.head), in_style(sheet.verdict), in_style(sheet.foot));
}

std::string unit_of(const Term& term, UnitSystem units) {
  const std::string own = in_own_units(term, units);
  return (term.unit == "1" ? std::string() : " " + escaped(term.unit)) + (own.empty() ? "" : " (" + escaped(own) + ")");
}

std::string number(double value) {
  const auto formula = formula_of(figures(value < 0.0 ? -value : value));
  const std::string digits = formula ? as_mathml(*formula) : "<mn>" + figures(value) + "</mn>";
  return value < 0.0 && formula ? "<mrow><mo>&#8722;</mo>" + digits + "</mrow>" : digits;
}

std::string math(const std::string& cls, const std::string& inner) {
  return fmt::format("<math class=\"{}\">{}</math>", cls, inner);
}

std::string step_html(const Step& step, UnitSystem units) {
  std::string out = "<div class=\"step\"><p>" + escaped(step.words) + "</p>\n<p>";
  out += math("symbol", symbol_as_mathml(step.result.symbol));
  if (const auto formula = formula_of(step)) {
    out += " = " + math("formula", as_mathml(*formula));
    if (!step.given.empty()) out += "<br>= " + math("numbers", as_mathml(with_numbers(*formula, step.given)));
  }
  out += " = " + math("result", number(step.result.number)) + unit_of(step.result, units) + "</p>\n";
  std::string given;
  for (const Term& term : step.given)
    given += (given.empty() ? "" : ", ") + math("given", symbol_as_mathml(term.symbol)) + " = " +
             math("value", number(term.number)) + unit_of(term, units);
  if (!given.empty()) out += "<p>with " + given + "</p>\n";
  if (const std::string clause = clause_in_words(step); !clause.empty())
    out += "<p class=\"from\">by " + escaped(clause) + "</p>\n";
  for (const Source& source : step.sources)
    out += fmt::format("<p class=\"from\">from {} = {}: {} ({})</p>\n", escaped(source.id),
                       escaped(source.value_text), escaped(citation(source)), word_for(source.basis));
  return out + "</div>\n";
}

std::string figure_html(const Figure& figure) {
  const card::Painted painted = card::paint(figure.page, card::Picture::svg, "");
  if (!painted.fault.empty()) return "<p>The figure could not be drawn.</p>\n";
  std::string coded(BASE64_ENCODE_RAW_LENGTH(painted.bytes.size()), '\0');
  base64_encode_raw(coded.data(), painted.bytes.size(),
                    reinterpret_cast<const uint8_t*>(painted.bytes.data()));
  return "<p class=\"figure\"><img alt=\"" + escaped(figure.in_words) + "\" src=\"data:image/svg+xml;base64," + coded +
         "\"><br>" + escaped(figure.caption) + "</p>\n";
}

std::string table_html(const std::vector<std::vector<std::string>>& table) {
  if (table.empty()) return {};
  std::string out = "<table>\n";
  for (std::size_t i = 0; i < table.size(); ++i) {
    const std::string_view cell = i == 0 ? "th" : "td";
    out += i == 0 ? "<thead><tr>" : "<tr>";
    for (const std::string& text : table[i]) out += fmt::format("<{0}>{1}</{0}>", cell, escaped(text));
    out += i == 0 ? "</tr></thead>\n<tbody>\n" : "</tr>\n";
  }
  return out + "</tbody>\n</table>\n";
}

std::string section_html(const Section& section, std::size_t at, UnitSystem units) {
  std::string out = fmt::format("<h2 id=\"s{}\">{}. {}</h2>\n", at, at, escaped(section.title));
  for (const std::string& text : section.texts) out += "<p>" + escaped(text) + "</p>\n";
  for (const Figure& figure : section.figures) out += figure_html(figure);
  if (!section.items.empty()) {
    out += "<ul>\n";
    for (const std::string& item : section.items) out += "<li>" + escaped(item) + "</li>\n";
    out += "</ul>\n";
  }
  out += table_html(section.table);
  for (const Step& step : section.steps) out += step_html(step, units);
  return out;
}

}  // namespace

std::string html(const Sheet& sheet) {
  std::string out =
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; "
      "img-src data:\">\n";
  out += "<title>" + escaped(sheet.title) + "</title>\n<style>" + std::string(style) + page_style(sheet) +
         "</style>\n</head>\n<body>\n";
  out += "<h1>" + escaped(sheet.title) + "</h1>\n<p class=\"verdict\">" + escaped(sheet.verdict) + "</p>\n";
  for (const std::string& line : sheet.heading) out += "<p>" + escaped(line) + "</p>\n";
  out += "<h2>Contents</h2>\n<ol>\n";
  for (std::size_t i = 0; i < sheet.sections.size(); ++i)
    out += fmt::format("<li><a href=\"#s{}\">{}</a></li>\n", i + 1, escaped(sheet.sections[i].title));
  out += "</ol>\n";
  for (std::size_t i = 0; i < sheet.sections.size(); ++i) out += section_html(sheet.sections[i], i + 1, sheet.units);
  return out + "</body>\n</html>\n";
}

}  // namespace firstpick::sheet
