// Style and script of the page of an audit. Constant: everything that changes stands in the elements. Without the script
// every plan is shown; on paper too.
#pragma once

#include <string_view>

namespace firstpick::output {

inline constexpr std::string_view audit_style = R"css(
*{box-sizing:border-box}
body{margin:1.2em;background:#fff;color:#14181c;font-family:"DejaVu Sans",Arial,sans-serif;font-size:14px;line-height:1.35}
h1{font-size:1.5em;margin:0;overflow-wrap:anywhere}
h2{font-size:1.1em;margin:1em 0 .3em}
p{margin:.3em 0}
.sum{font-weight:bold;font-size:1.2em}
table{border-collapse:collapse;width:100%}
th,td{border:1px solid #59636b;padding:.35em .5em;text-align:left;vertical-align:top;overflow-wrap:anywhere}
th:nth-last-child(-n+2),td:nth-last-child(-n+2){overflow-wrap:break-word}
th button{all:unset;cursor:pointer;font-weight:bold}
th button:focus-visible{outline:2px solid #14181c}
th[aria-sort=ascending] button::after{content:" (up)"}
th[aria-sort=descending] button::after{content:" (down)"}
.verdict{font-weight:bold;white-space:nowrap;padding:.1em .3em;border:2px solid #14181c}
.no-go .verdict{background:#14181c;color:#fff}
.broken .verdict{border-style:double;border-width:4px}
.hold .verdict{border-style:dashed}
.file,.rule{font-size:.85em;color:#3a434a}
td:nth-child(3){white-space:nowrap}
th:nth-child(3){white-space:nowrap}
input{font:inherit;padding:.2em .4em;width:20em;max-width:100%}
ul{margin:0;padding-left:1.3em}
@media (max-width:800px){
table,tbody,tr,td{display:block}
tr[hidden]{display:none}
thead tr{display:flex;flex-wrap:wrap;gap:.3em}
th{border-width:1px;white-space:nowrap}
tbody tr{border:2px solid #14181c;margin:.6em 0}
td{border:0;padding:.2em .5em}
td:empty{display:none}
td:nth-child(n+3)::before{content:attr(data-head) ": ";font-weight:bold}
}
@media print{body{margin:0;font-size:9pt}.find{display:none}tr{break-inside:avoid}thead{display:table-header-group}}
)css";

inline constexpr std::string_view audit_script = R"js(
(function () {
  var body = document.querySelector("tbody");
  var rows = Array.prototype.slice.call(body.rows);
  var heads = Array.prototype.slice.call(document.querySelectorAll("th"));
  var find = document.getElementById("find");
  function look() {
    var words = find.value.toLowerCase().split(" ").filter(Boolean), shown = 0;
    rows.forEach(function (row) {
      var text = row.textContent.toLowerCase();
      row.hidden = !words.every(function (word) { return text.indexOf(word) >= 0; });
      if (!row.hidden) shown++;
    });
    document.getElementById("shown").textContent = shown + " of " + rows.length;
  }
  function sort(at, down) {
    rows.sort(function (a, b) {
      var x = a.cells[at].getAttribute("data-sort"), y = b.cells[at].getAttribute("data-sort");
      return (x < y ? -1 : x > y ? 1 : 0) * (down ? -1 : 1);
    });
    rows.forEach(function (row) { body.appendChild(row); });
    heads.forEach(function (head, i) {
      if (i === at) head.setAttribute("aria-sort", down ? "descending" : "ascending");
      else head.removeAttribute("aria-sort");
    });
  }
  heads.forEach(function (head, i) {
    head.firstChild.addEventListener("click", function () {
      sort(i, head.getAttribute("aria-sort") === "ascending");
    });
  });
  find.addEventListener("input", look);
  sort(0, false);
  look();
})();
)js";

}  // namespace firstpick::output
