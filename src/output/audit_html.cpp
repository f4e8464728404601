#include <array>

#include <fmt/format.h>

#include "output/audit.hpp"
#include "output/audit_page.hpp"
#include "output/board_html.hpp"
#include "output/verdict_words.hpp"

namespace firstpick::output {

namespace {

using audit::Audit;
using audit::Entry;
using audit::Standing;

std::string list(std::string_view title, const std::vector<std::string>& items) {
  if (items.empty()) return {};
  std::string out = fmt::format("<h2>{}</h2>\n<ul>\n", html_text(title));
  for (const std::string& each : items) out += "<li>" + html_text(each) + "</li>\n";
  return out + "</ul>\n";
}

std::string lines(const std::vector<std::string>& items) {
  std::string out;
  for (const std::string& each : items) out += "<div>" + html_text(each) + "</div>";
  return out;
}

struct Look {
  std::string_view css, words;
  int rank;  // worst first
};

Look look_of(Standing standing) {
  switch (standing) {
    case Standing::no_go: return {"no-go", "(x) NO-GO", 0};
    case Standing::broken: return {"broken", "(!) BROKEN", 1};
    case Standing::hold: return {"hold", "(?) HOLD", 2};
    case Standing::go: return {"go", "(+) GO", 3};
  }
  return {"broken", "(!) BROKEN", 1};
}

constexpr std::array<std::string_view, 7> heads = {"Verdict", "Piece", "Used", "What governs", "Evidence", "Sign-off", "Rests on"};

// A cell with what it is sorted by, and its head for a narrow screen, where the rows stand as blocks.
std::string cell(std::size_t column, const std::string& sort, const std::string& content) {
  return fmt::format("<td data-head=\"{}\" data-sort=\"{}\">{}</td>", heads.at(column), html_text(sort), content);
}

std::string row(const Entry& e) {
  const Look look = look_of(e.standing);
  std::string name = html_text(e.file);
  if (!e.mark.empty())
    name = fmt::format("<b>{}</b>{}<div>{}</div><div class=\"file\">{}</div>", html_text(e.mark),
                       e.revision.empty() ? "" : " rev " + html_text(e.revision), html_text(e.title), html_text(e.file));
  std::string governs = html_text(reason_of(e));
  if (!e.rule.empty()) governs += fmt::format("<div class=\"rule\">{}, {}</div>", html_text(e.rule), html_text(e.subject));
  if (!e.remedy.empty()) governs += "<div>&gt; " + html_text(e.remedy) + "</div>";
  governs += lines(e.bending);
  std::string rests;
  if (e.standing != Standing::broken) rests = fmt::format("<div>{}</div>", html_text(age_of(e)));
  rests += lines(e.missing);
  std::string provenance;
  if (!e.unconfirmed.empty()) provenance += fmt::format("<div>{} from memory, unconfirmed</div>", e.unconfirmed.size());
  if (!e.overridden.empty()) provenance += fmt::format("<div>{} of the plant's own</div>", e.overridden.size());
  if (!e.same_piece.empty()) provenance += "<div>same piece, another plan:</div>" + lines(e.same_piece);
  const std::string signature = e.standing == Standing::broken ? "" : checks::in_words(e.sign_off);
  return fmt::format("<tr class=\"{}\">", look.css) +
         cell(0, std::to_string(look.rank), "<span class=\"verdict\">" + std::string(look.words) + "</span>") +
         cell(1, e.mark.empty() ? e.file : e.mark, name) +
         cell(2, e.utilization ? fmt::format("{:012.6f}", *e.utilization) : "", e.utilization ? print_utilization(*e.utilization) : "-") +
         cell(3, e.rule, governs) +
         cell(4, e.evidence_age_days ? fmt::format("{:012.4f}", *e.evidence_age_days) : "", rests) +
         cell(5, signature, html_text(signature)) + cell(6, fmt::format("{:06}", e.unconfirmed.size()), provenance) + "</tr>\n";
}

}  // namespace

std::string audit_html(const Audit& audit) {
  std::string out = fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n"
      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src {}; script-src {}\"/>\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n<title>{}</title>\n<style>{}</style>\n"
      "</head>\n<body>\n",
      policy_hash(audit_style), policy_hash(audit_script), html_text("Audit of " + audit.folder), audit_style);
  out += fmt::format("<h1>{}</h1>\n<p>Made {}</p>\n<p class=\"sum\">{}</p>\n", html_text("Audit of " + audit.folder),
                     html_text(audit.made), html_text(summary_of(audit)));
  out += fmt::format("<p>Beside them, not judged here: {}.</p>\n", beside_of(audit));
  out += list("Look at", warnings_of(audit));
  if (!audit.since.empty()) {
    std::vector<std::string> changes;
    for (const audit::Change& c : audit.changes)
      changes.push_back(change_in_words(c));
    if (changes.empty()) changes.emplace_back("nothing");
    out += list("Changed since " + audit.since, changes);
  }
  out += "<h2>Plans</h2>\n<p class=\"find\"><label>Show rows with <input id=\"find\" type=\"search\"/></label> "
         "<span id=\"shown\"></span></p>\n<table>\n<thead><tr>";
  for (const std::string_view title : heads)
    out += fmt::format("<th scope=\"col\"><button type=\"button\">{}</button></th>", title);
  out += "</tr></thead>\n<tbody>\n";
  for (const Entry& e : audit.entries) out += row(e);
  out += "</tbody>\n</table>\n" + list("Cautions", audit.cautions) +
         list("Not checked by this version", audit.not_checked);
  return out + fmt::format("<script>{}</script>\n</body>\n</html>\n", audit_script);
}

}  // namespace firstpick::output
