// Runs inside a copy of the page, in a frame of the width to look at, and tells the page around it what it sees: text that
// sticks out, too little contrast (WCAG 2: 4.5 to 1, large text 3 to 1), verdicts without word and mark.
(function () {
  function luminance(c) {
    var v = c.map(function (x) { x /= 255; return x <= 0.03928 ? x / 12.92 : Math.pow((x + 0.055) / 1.055, 2.4); });
    return 0.2126 * v[0] + 0.7152 * v[1] + 0.0722 * v[2];
  }
  function colour(text) { return text.match(/[\d.]+/g).map(Number); }
  function background(element) {
    for (var e = element; e; e = e.parentElement) {
      var c = colour(getComputedStyle(e).backgroundColor);
      if (c.length < 4 || c[3] > 0) return c.slice(0, 3);
    }
    return [255, 255, 255];
  }
  function shown(element) { return element.getClientRects().length > 0; }

  var problems = [], least = 99, texts = 0;
  var walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (var node = walker.nextNode(); node; node = walker.nextNode()) {
    var element = node.parentElement;
    if (!node.textContent.trim() || element.tagName === "SCRIPT" || !shown(element)) continue;
    ++texts;
    var style = getComputedStyle(element);
    var a = luminance(colour(style.color).slice(0, 3)), b = luminance(background(element));
    var contrast = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    least = Math.min(least, contrast);
    var large = parseFloat(style.fontSize) >= 24 || (parseFloat(style.fontSize) >= 18.66 && Number(style.fontWeight) >= 700);
    if (contrast < (large ? 3 : 4.5)) problems.push("contrast " + contrast.toFixed(2) + ": " + node.textContent.trim());
    var box = element.getBoundingClientRect();
    if (box.right > document.documentElement.clientWidth + 0.5) problems.push("sticks out: " + node.textContent.trim());
  }
  if (document.documentElement.scrollWidth > document.documentElement.clientWidth) problems.push("the page scrolls sideways");
  var verdicts = Array.from(document.querySelectorAll(".verdict")).filter(shown).map(function (e) { return e.innerText.trim(); });
  verdicts.forEach(function (v) {
    if (["(+) GO", "(?) HOLD", "(x) NO-GO", "(?) OLD", "(!) BROKEN", "GO", "HOLD", "NO-GO"].indexOf(v) < 0) problems.push("a verdict reads '" + v + "'");
  });
  // Lines that are shown and end below the window: in turns there is none.
  var cut = Array.from(document.querySelectorAll("ol>li")).filter(function (line) {
    return shown(line) && line.getBoundingClientRect().bottom > window.innerHeight;
  }).length;
  var more = document.getElementById("more");
  var first = document.querySelector(".verdict");
  parent.postMessage({ texts: texts, least: least.toFixed(2), verdicts: verdicts.join(" "), problems: problems,
                       cut: cut, more: more && shown(more) ? more.textContent : "",
                       size: first ? parseFloat(getComputedStyle(first).fontSize) : 0 }, "*");
})();
