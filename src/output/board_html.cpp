#include "output/board_html.hpp"

#include <array>
#include <cstdint>

#include <fmt/format.h>
#include <nettle/base64.h>
#include <nettle/sha2.h>

#include "output/board_page_style.hpp"
#include "output/board_text.hpp"
#include "output/verdict_words.hpp"

namespace firstpick::output {

namespace {

using board::Board;
using board::Line;
using checks::Verdict;

constexpr int reload_after_s = 10;

std::string head(const std::string& title) {
  return fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n"
      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src {}; script-src "
      "{}\"/>\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n"
      "<meta http-equiv=\"refresh\" content=\"{}\"/>\n<title>{}</title>\n<style>{}</style>\n</head>\n",
      policy_hash(page_style), policy_hash(page_script), reload_after_s, html_text(title), page_style);
}

std::string_view class_of(Verdict verdict) {
  switch (verdict) {
    case Verdict::go: return "go";
    case Verdict::hold: return "hold";
    case Verdict::no_go: return "no-go";
  }
  return "hold";
}

std::string why_of(const Line& line) {
  const board::Judged& judged = line.judged;
  if (judged.verdict == Verdict::go) return judged.evidence;
  std::string text = judged.reason;
  std::string where = judged.rule;
  if (judged.more > 0) where += fmt::format("; and {} more rule{}", judged.more, judged.more == 1 ? "" : "s");
  return text + " [" + where + "]";
}

std::string item(const Board& board, const Line& line, std::size_t number) {
  const board::Judged& judged = line.judged;
  std::string name = line.mark.empty() ? line.plan_file : line.mark;
  std::string pieces = pieces_in_words(line);
  if (!line.form.empty()) pieces += ", " + line.form;
  std::string out = fmt::format(
      "<li class=\"{}\" data-pieces=\"{}\">\n<div class=\"verdict\"><span class=\"word\">{}</span><span class=\"word-old\">(?) "
      "OLD</span></div>\n"
      "<div class=\"name\">{}. {}</div>\n<div class=\"pieces\">{}</div>\n",
      class_of(judged.verdict), line.count, html_text(verdict_words(judged.verdict)), number, html_text(name),
      html_text(pieces));
  const std::string expected = words_for(judged.expected, board.zone, board.made_utc_s);
  const std::string slow = slow_words_for(judged.expected, board.zone, board.made_utc_s);
  out += "<div class=\"why\">";
  if (!expected.empty())
    out += fmt::format("<div class=\"until\">{} <small>({}prediction, never a reason to lift)</small></div>",
                       html_text(expected), html_text(slow.empty() ? slow : slow + "; "));
  out += html_text(why_of(line));
  for (const std::string& note : judged.notes) out += "<div class=\"note\">! " + html_text(note) + "</div>";
  if (const std::string signature = signature_of(judged); !signature.empty())
    out += "<div class=\"signed\">" + html_text(signature) + "</div>";
  return out + "</div>\n</li>\n";
}

std::string list(std::string_view title, const std::vector<std::string>& items) {
  if (items.empty()) return {};
  std::string out = fmt::format("<h2>{}</h2>\n<ul>\n", title);
  for (const std::string& each : items) out += "<li>" + html_text(each) + "</li>\n";
  return out + "</ul>\n";
}

std::string foot(const Board& board) {
  std::vector<std::string> unconfirmed, replaced;
  for (const Source& s : board.unconfirmed)
    unconfirmed.push_back(fmt::format("{} = {}: {}", s.id, s.value_text, s.what));
  for (const std::string& id : board.overridden) replaced.push_back("the plant's own table replaces " + id);
  return "<footer>\n" + list("Cautions", board.cautions) +
         list("From memory, to be confirmed by the engineer of record", unconfirmed) +
         list("The plant's own tables", replaced) + list("Rests on", board.choices) +
         list("Not checked", board.not_checked) + "</footer>\n";
}

std::string body(long long made_s, long long stale_after_s, const std::string& made, const std::string& title,
                 const std::string& content) {
  return fmt::format(
      "<body class=\"old\" data-made-s=\"{}\" data-stale-after-s=\"{}\">\n"
      "<div id=\"old\" role=\"alert\">(?) OLD BOARD, made <span id=\"old-age\">at {}</span>: do not lift by "
      "it. Ask for a new "
      "one.</div>\n<header>\n<h1>{}</h1>\n<p id=\"made\">Made {} (<span id=\"age\">age not "
      "known</span>)</p>\n{}"
      "<script>{}</script>\n</body>\n</html>\n",
      made_s, stale_after_s, html_text(made), html_text(title), html_text(made), content, page_script);
}

}  // namespace

std::string policy_hash(std::string_view text) {
  sha256_ctx hash;
  sha256_init(&hash);
  sha256_update(&hash, text.size(), reinterpret_cast<const std::uint8_t*>(text.data()));
  std::array<std::uint8_t, SHA256_DIGEST_SIZE> digest{};
  sha256_digest(&hash, digest.size(), digest.data());
  std::string encoded(BASE64_ENCODE_RAW_LENGTH(SHA256_DIGEST_SIZE), '\0');
  base64_encode_raw(encoded.data(), digest.size(), digest.data());
  return "'sha256-" + encoded + "'";
}

std::string html_text(std::string_view text) {
  std::string out;
  for (const char c : printable(text)) switch (c) {
      case '&': out += "&amp;"; break;
      case '<': out += "&lt;"; break;
      case '>': out += "&gt;"; break;
      case '"': out += "&quot;"; break;
      case '\'': out += "&#39;"; break;
      default: out += c;
    }
  return out;
}

std::string board_html(const Board& board) {
  std::string content = fmt::format(
      "<p class=\"sum\">{} GO, {} HOLD, {} NO-GO</p>\n<p>Shift {} to {}</p>\n</header>\n"
      "<p id=\"printed\">On paper this board does not know its age: it is true only for the time it was "
      "made.</p>\n<p id=\"more\" hidden=\"\"></p>\n<ol>\n",
      pieces_with(board, Verdict::go), pieces_with(board, Verdict::hold), pieces_with(board, Verdict::no_go),
      clock::words_for_moment(board.zone, board.starts_utc_s),
      clock::words_for_moment(board.zone, board.ends_utc_s));
  std::size_t number = 0;
  for (const Line& line : board.lines) content += item(board, line, ++number);
  content += "</ol>\n" + foot(board);
  return head("Board of " + board.plant) + body(board.made_utc_s, board.stale_after_s,
                                                clock::words_for_moment(board.zone, board.made_utc_s),
                                                board.plant, content);
}

std::string board_faults_html(const std::string& file, long long made_utc_s, const std::string& made,
                              const std::vector<Diagnostic>& faults) {
  std::string content =
      "</header>\n<ol>\n<li class=\"hold\">\n<div class=\"verdict\">(?) HOLD</div>\n"
      "<div class=\"name\">Nothing is checked</div>\n<div class=\"why\">" +
      html_text(file) + " cannot be read:</div>\n</li>\n</ol>\n<footer>\n<ul>\n";
  for (const Diagnostic& fault : faults)
    content += fmt::format("<li>{}:{}:{}: {}</li>\n", html_text(fault.file), fault.place.line,
                           fault.place.column, html_text(fault.what));
  // Old at once: there is nothing to show that could be fresh.
  return head("Nothing is checked") +
         body(made_utc_s, 0, made, "Nothing is checked", content + "</ul>\n</footer>\n");
}

}  // namespace firstpick::output
