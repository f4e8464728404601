// Runs inside a copy of the page of an audit, uses it as a person would, and writes what is not as wanted.
(function () {
  var faults = [];
  function rows() { return Array.from(document.querySelectorAll("tbody tr")); }
  function keys(at) { return rows().map(function (row) { return row.cells[at].getAttribute("data-sort"); }); }
  function rising(list) { return list.every(function (key, i) { return i === 0 || list[i - 1] <= key; }); }
  var all = rows().length;
  if (all < 5) faults.push("too few rows");
  if (!rising(keys(0)) || rows()[0].className !== "no-go") faults.push("not worst first");
  document.querySelectorAll("th button").forEach(function (button, at) {
    button.click();
    if (at === 0) button.click();  // sorted by it already: a click turned it round
    if (!rising(keys(at))) faults.push("column " + at + " does not rise");
    if (button.parentElement.getAttribute("aria-sort") !== "ascending") faults.push("column " + at + " does not say so");
    button.click();
    if (!rising(keys(at).reverse())) faults.push("column " + at + " does not fall");
    if (document.querySelectorAll("th[aria-sort]").length !== 1) faults.push("two columns say that they sort");
    if (rows().length !== all) faults.push("a row was lost");
  });
  var find = document.getElementById("find");
  function shown_for(words) {
    find.value = words;
    find.dispatchEvent(new Event("input"));
    return rows().filter(function (row) { return !row.hidden; });
  }
  var no_go = shown_for("no-go");
  if (!no_go.length || no_go.length === all) faults.push("the filter keeps all or none");
  if (!no_go.every(function (row) { return row.textContent.toLowerCase().indexOf("no-go") >= 0; })) faults.push("it keeps others");
  if (shown_for("CERTIFICATE hold").length !== 1) faults.push("two words in any letters are not found");
  if (document.getElementById("shown").textContent !== "1 of " + all) faults.push("the count is wrong");
  if (shown_for("no such words at all").length !== 0) faults.push("it keeps what has not the words");
  if (shown_for("").length !== all) faults.push("an empty field hides rows");
  document.getElementById("told").textContent = faults.length ? faults.join("; ") : "all as wanted";
})();
