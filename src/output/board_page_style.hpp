// Style and script of the page at the crane. Constant: everything that changes stands in the elements.
#pragma once

#include <string_view>

namespace firstpick::output {

// Sizes grow with the screen: on 1920 pixels marks and verdicts are 46 pixels high, on a screen of 1.2 m
// width 29 mm. Contrast of every text with what is behind it is at least 7 to 1.
inline constexpr std::string_view page_style = R"css(
*{box-sizing:border-box}
body{margin:0;padding:1vw;background:#10151a;color:#f4f6f8;font-family:"DejaVu Sans",Arial,sans-serif;font-size:clamp(16px,1.25vw,26px)}
header{display:flex;flex-wrap:wrap;gap:0 2em;align-items:baseline;margin-bottom:.6em}
h1{margin:0;font-size:clamp(22px,2vw,44px);overflow-wrap:anywhere}
header p{margin:0}
#made{font-size:clamp(18px,1.7vw,36px);font-weight:bold}
#old{display:none;margin:0 0 .6em;padding:.5em;background:#fff;color:#8a0000;border:.3em solid #8a0000;font-size:clamp(22px,2.6vw,56px);font-weight:bold}
body.old #old{display:block}
.sum{font-weight:bold}
#more{margin:0 0 .4em;padding:.3em .6em;background:#ffd24a;color:#101010;font-size:clamp(18px,1.7vw,36px);font-weight:bold}
#more[hidden],ol>li[hidden]{display:none}
.note{font-weight:bold}
ol{list-style:none;margin:0;padding:0;display:grid;grid-template-columns:1fr;gap:.5em}
ol>li{display:grid;grid-template-columns:auto 1fr;grid-template-rows:auto auto 1fr;gap:0 .6em;background:#fff;color:#101010;padding:.4em .6em;border-left:.9em solid}
ol>li.go{border-color:#0a5c24}
ol>li.hold{border-color:#8a5a00}
ol>li.no-go{border-color:#8a0000}
.verdict{grid-row:1 / span 3;align-self:start;padding:.25em .4em;text-align:center;font-weight:bold;font-size:clamp(24px,2.4vw,52px);min-width:5.4em;white-space:nowrap}
.go .verdict{background:#0a5c24;color:#fff;border-radius:2em}
.hold .verdict{background:#ffd24a;color:#101010;border:.12em dashed #101010}
.no-go .verdict{background:#8a0000;color:#fff;border:.2em double #fff}
.word-old{display:none}
body.old .verdict{background:#fff;color:#101010;border:.12em solid #101010;border-radius:0}
body.old .word{display:none}
body.old .word-old{display:inline}
.name{font-weight:bold;font-size:clamp(22px,2.4vw,52px);line-height:1.1;overflow-wrap:anywhere}
.pieces,.why{overflow-wrap:anywhere}
.until{font-weight:bold;font-size:clamp(18px,1.7vw,36px)}
body.old .until,body.old .sum{display:none}
body.old ol>li{border-color:#555}
small{font-size:.8em}
footer{margin-top:1em;font-size:clamp(14px,.9vw,20px)}
footer h2{font-size:1.1em;margin:.6em 0 .2em}
footer ul{margin:0;padding-left:1.2em}
@media (min-width:1200px){ol{grid-template-columns:1fr 1fr}}
@media (max-width:600px){ol>li{grid-template-columns:1fr;grid-template-rows:none}.verdict{grid-row:auto;justify-self:start}}
@media print{
body{background:#fff;color:#000;font-size:10pt;padding:0}
body.old #old{display:none}
#printed{display:block}
body.old .word{display:inline}
body.old .word-old{display:none}
body.old .until,body.old .sum{display:block}
.go .verdict,.hold .verdict,.no-go .verdict,body.old .verdict{background:#fff;color:#000;border:1pt solid #000;font-size:14pt}
.name{font-size:14pt}
#more{display:none}
ol>li[hidden]{display:grid}
ol>li{break-inside:avoid;border:1pt solid #000}
ol{grid-template-columns:1fr}
}
@media screen{#printed{display:none}}
)css";

// The page is old until this has found it fresh, so that without it no verdict is shown.
inline constexpr std::string_view page_script = R"js(
(function () {
  var body = document.body;
  var made = Number(body.getAttribute("data-made-s")) * 1000;
  var limit = Number(body.getAttribute("data-stale-after-s")) * 1000;
  function look() {
    var age = Date.now() - made;
    var fresh = age >= -60000 && age <= limit;
    body.className = fresh ? "" : "old";
    var minutes = Math.floor(Math.abs(age) / 60000);
    var ago = minutes < 120 ? minutes + " min ago" : Math.floor(minutes / 60) + " h ago";
    var text = age < 0 ? "in the future by the clock of this screen" : ago;
    document.getElementById("age").textContent = text;
    document.getElementById("old-age").textContent = text;
  }
  look();
  setInterval(look, 1000);

  // A screen that nobody scrolls shows the list in turns, and always says what it does not show.
  var lines = Array.prototype.slice.call(document.querySelectorAll("ol>li"));
  var more = document.getElementById("more"), pages = [], touched = 0;
  var turnAfter = 8000, touchedFor = 60000, wide = 1200;
  function showAll() {
    lines.forEach(function (line) { line.hidden = false; });
    if (more) more.hidden = true;
  }
  function inPages() {
    showAll();
    pages = [];
    if (!more || lines.length < 2 || window.innerWidth < wide) return;
    if (lines[lines.length - 1].getBoundingClientRect().bottom + window.scrollY <= window.innerHeight) return;
    more.hidden = false;
    more.textContent = "Lines 00 to 00 of 00, page 0 of 0. 00 more in turn, with 00 NO-GO, 00 HOLD, 00 GO";
    var room = window.innerHeight - (lines[0].getBoundingClientRect().top + window.scrollY) - more.offsetHeight;
    var from = 0, top = lines[0].getBoundingClientRect().top;
    for (var i = 1; i < lines.length; ++i) {
      var box = lines[i].getBoundingClientRect(), rowStarts = box.top > lines[i - 1].getBoundingClientRect().top + 1;
      var last = i;
      while (last + 1 < lines.length && lines[last + 1].getBoundingClientRect().top <= box.top + 1) ++last;
      var bottom = box.bottom;
      for (var j = i; j <= last; ++j) bottom = Math.max(bottom, lines[j].getBoundingClientRect().bottom);
      if (rowStarts && bottom - top > room) {
        pages.push([from, i]);
        from = i;
        top = box.top;
      }
    }
    pages.push([from, lines.length]);
  }
  function turn() {
    if (!more || pages.length < 2) return;
    if (Date.now() - touched < touchedFor) return showAll();
    var page = Math.floor(Date.now() / turnAfter) % pages.length, rest = {"go": 0, "hold": 0, "no-go": 0};
    lines.forEach(function (line, i) {
      line.hidden = i < pages[page][0] || i >= pages[page][1];
      if (line.hidden) rest[line.className] += Number(line.getAttribute("data-pieces"));
    });
    more.hidden = false;
    var hidden = lines.length - (pages[page][1] - pages[page][0]);
    more.textContent = "Lines " + (pages[page][0] + 1) + " to " + pages[page][1] + " of " + lines.length + ", page " +
      (page + 1) + " of " + pages.length + ". " + hidden + " more in turn" +
      (body.className === "old" ? "" : ", with " + rest["no-go"] + " NO-GO, " + rest.hold + " HOLD, " + rest.go + " GO");
  }
  function touch() { touched = Date.now(); turn(); }
  inPages();
  turn();
  setInterval(turn, 1000);
  window.addEventListener("resize", function () { inPages(); turn(); });
  ["wheel", "touchstart", "keydown", "pointerdown"].forEach(function (what) { window.addEventListener(what, touch); });
})();
)js";

}  // namespace firstpick::output
