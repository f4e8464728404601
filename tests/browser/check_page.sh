#!/bin/sh
# The page at the crane in a real browser, at 1920 x 1080 and 390 pixels: its script runs under its own policy, says nothing
# on the console, every text has its contrast and stays inside, every verdict has word and mark; fresh and old.
# tests/run.sh runs it where Chromium is installed, and does not install it: it is a large package.
# Usage: apt-get install --no-install-recommends chromium fonts-dejavu-core; sh tests/browser/check_page.sh [FOLDER FOR PICTURES]
set -eu
cd "$(dirname "$0")/../.."
browser=$(command -v chromium || command -v chromium-browser || command -v google-chrome) || {
  echo "check_page.sh: needs chromium" >&2
  exit 2
}
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
pictures=${1:-}
failures=0

# open ARGUMENT... : what the browser prints; the console in $folder/console.
open_page() {
  "$browser" --headless --no-sandbox --disable-gpu --hide-scrollbars --user-data-dir="$folder/profile" \
    --virtual-time-budget=3000 --enable-logging=stderr --log-level=0 "$@" 2>"$folder/log"
  grep CONSOLE "$folder/log" >"$folder/console" || true
}

say() {
  if [ "$2" = yes ]; then echo "passed: $1"; else
    echo "FAILED: $1"
    failures=$((failures + 1))
  fi
}

golden=tests/golden/shift.board.html
# The page reloads itself; here once is enough. Its time is put to now, so that it is fresh.
sed -e "s/data-made-s=\"[0-9]*\"/data-made-s=\"$(date +%s)\"/" -e '/http-equiv="refresh"/d' "$golden" >"$folder/fresh.html"
sed -e '/http-equiv="refresh"/d' "$golden" >"$folder/old.html"

for page in fresh old; do
  open_page --window-size=1920,1080 --dump-dom "file://$folder/$page.html" >"$folder/dom"
  say "$page: nothing on the console" "$([ -s "$folder/console" ] && echo no || echo yes)"
  class=$(sed -n 's/^<body class="\([a-z]*\)".*/\1/p' "$folder/dom")
  wanted=$([ $page = old ] && echo old || true)
  say "$page: the script ran under the policy and found the page $page" "$([ "$class" = "$wanted" ] && echo yes || echo no)"

  # For the probe: a copy without the policy, in a frame of the width to look at.
  { sed -e '/Content-Security-Policy/d' -e '/<\/body>/,$d' "$folder/$page.html"
    echo '<script>'; cat tests/browser/probe.js; echo '</script></body></html>'; } >"$folder/probed.html"
  for size in 1920x1080 390x844; do
    cat >"$folder/frame.html" <<END
<!DOCTYPE html><html><body style="margin:0"><pre id="seen"></pre><script>
addEventListener("message", function (e) { document.getElementById("seen").textContent = JSON.stringify(e.data); });
</script><iframe src="probed.html" width="${size%x*}" height="${size#*x}" style="border:0"></iframe></body></html>
END
    open_page --window-size=2000,1300 --dump-dom "file://$folder/frame.html" >"$folder/dom"
    seen=$(sed -n 's/.*<pre id="seen">\(.*\)<\/pre>.*/\1/p' "$folder/dom")
    echo "  $page $size: $seen"
    say "$page $size: no problem" "$(case $seen in *'"problems":[]'*) echo yes ;; *) echo no ;; esac)"
    if [ $page = fresh ]; then
      words='(+) GO (+) GO (+) GO (?) HOLD (?) HOLD (x) NO-GO (x) NO-GO'
      say "$page $size: the verdicts" "$(case $seen in *"\"verdicts\":\"$words\""*) echo yes ;; *) echo no ;; esac)"
    else  # the bar of an old page takes room, so that its list may be shown in turns
      verdicts=$(echo "$seen" | sed 's/.*"verdicts":"\([^"]*\)".*/\1/; s/(?) OLD//g; s/ //g')
      say "$page $size: no verdict but OLD" "$([ -z "$verdicts" ] && echo yes || echo no)"
    fi
  done
done

# A list longer than the screen: 35 lines, in turns at 1920 pixels, whole on a narrow screen.
awk '/^<ol>$/ { print; inside = 1; next }
     /^<\/ol>$/ { for (i = 0; i < 5; ++i) printf "%s", list; inside = 0 }
     inside { list = list $0 "\n"; next }
     { print }' "$folder/fresh.html" >"$folder/long.html"
{ sed -e '/Content-Security-Policy/d' -e '/<\/body>/,$d' "$folder/long.html"
  echo '<script>'; cat tests/browser/probe.js; echo '</script></body></html>'; } >"$folder/probed.html"
for size in 1920x1080 390x844; do
  sed "s/width=\"[0-9]*\" height=\"[0-9]*\"/width=\"${size%x*}\" height=\"${size#*x}\"/" "$folder/frame.html" >"$folder/framed.html"
  open_page --window-size=2000,1300 --dump-dom "file://$folder/framed.html" >"$folder/dom"
  seen=$(sed -n 's/.*<pre id="seen">\(.*\)<\/pre>.*/\1/p' "$folder/dom")
  echo "  long $size: $seen"
  say "long $size: no problem" "$(case $seen in *'"problems":[]'*) echo yes ;; *) echo no ;; esac)"
  if [ $size = 1920x1080 ]; then
    say "long: no line is cut off, and a bar tells what is not shown" \
      "$(case $seen in *'"cut":0,"more":"Lines '*' of 35, page '*' more in turn, with '*' NO-GO, '*) echo yes ;; *) echo no ;; esac)"
  else
    say "long, narrow: the whole list, and no bar" "$(case $seen in *'"more":""'*) echo yes ;; *) echo no ;; esac)"
  fi
done

if [ -n "$pictures" ]; then
  mkdir -p "$pictures"
  open_page --window-size=1920,1080 --screenshot="$pictures/fresh-1920.png" "file://$folder/fresh.html"
  open_page --window-size=1920,1080 --screenshot="$pictures/old-1920.png" "file://$folder/old.html"
  open_page --window-size=1920,1080 --screenshot="$pictures/long-1920.png" "file://$folder/long.html"
  sed 's/width="[0-9]*" height="[0-9]*"/width="390" height="1800"/; s/probed/fresh/' "$folder/frame.html" >"$folder/narrow.html"
  open_page --window-size=500,1800 --screenshot="$pictures/fresh-390.png" "file://$folder/narrow.html"
  open_page --no-pdf-header-footer --print-to-pdf="$pictures/fresh.pdf" "file://$folder/fresh.html"
fi
echo "$failures failed"
[ "$failures" -eq 0 ]
