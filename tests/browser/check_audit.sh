#!/bin/sh
# The pages of audit and calculation sheet in a real browser, wide and 390 pixels: nothing on the console, nothing asked of a
# network, sorting and filter work, every text has its contrast and stays inside; pictures to look at.
# tests/run.sh runs it where Chromium is installed, and does not install it: it is a large package.
# Usage: apt-get install --no-install-recommends chromium fonts-dejavu-core
#        sh tests/browser/check_audit.sh PROGRAM [FOLDER FOR PICTURES]
set -eu
cd "$(dirname "$0")/../.."
program=$1
pictures=${2:-}
browser=$(command -v chromium || command -v chromium-browser || command -v google-chrome) || {
  echo "check_audit.sh: needs chromium" >&2
  exit 2
}
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
failures=0

say() {
  if [ "$2" = yes ]; then echo "passed: $1"; else
    echo "FAILED: $1"
    failures=$((failures + 1))
  fi
}
# open_page ARGUMENT... : what the browser prints; the console in $folder/console, what it asked for in $folder/net.json
open_page() {
  rm -f "$folder/net.json"
  "$browser" --headless --no-sandbox --disable-gpu --hide-scrollbars --user-data-dir="$folder/profile" --no-first-run \
    --disable-background-networking --disable-component-update --disable-sync --log-net-log="$folder/net.json" \
    --virtual-time-budget=3000 --enable-logging=stderr --log-level=0 "$@" 2>"$folder/log"
  grep CONSOLE "$folder/log" >"$folder/console" || true
}
# How often a page asked a network for something; what the browser wants for itself has no origin.
asked() { grep -o '"initiator":"[^"]*"' "$folder/net.json" | grep -vc '"not an origin"' || true; }
holds() { if grep -qF -- "$2" "$1"; then echo yes; else echo no; fi; }

mkdir "$folder/plans"
cp docs/demo/*.toml tests/plans/hold/no-certificate.toml tests/plans/hold/changed-since-it-was-signed*.toml "$folder/plans"
printf '[piece\n' >"$folder/plans/broken.toml"
"$program" audit "$folder/plans" --now 2026-03-04T08:00:00-05:00 -o "$folder/audit.html" >/dev/null || true
sed 's/verdict": "GO"/verdict": "HOLD"/' >"$folder/before.json" <<END
{"format": 1, "plans": [{"file": "stair.toml", "verdict": "HOLD"}, {"file": "round-lid.toml", "verdict": "HOLD"},
 {"file": "gone.toml", "verdict": "HOLD"}]}
END
"$program" audit "$folder/plans" --now 2026-03-04T08:00:00-05:00 --since "$folder/before.json" -o "$folder/since.html" >/dev/null || true
"$program" sheet docs/demo/wall-panel.toml -o "$folder/sheet.html" >/dev/null || true
"$program" sheet docs/demo/panel-turned.toml -o "$folder/turned.html" >/dev/null || true

echo '<!DOCTYPE html><html><body><img src="http://127.0.0.1:9/x"></body></html>' >"$folder/asks.html"
open_page --dump-dom "file://$folder/asks.html" >"$folder/dom"
say "a page that asks a network is found" "$([ "$(asked)" -gt 0 ] && echo yes || echo no)"

for page in audit since sheet turned; do
  open_page --window-size=1920,1080 --dump-dom "file://$folder/$page.html" >"$folder/dom"
  say "$page: nothing on the console" "$([ -s "$folder/console" ] && echo no || echo yes)"
  say "$page: asks nothing of a network" "$([ "$(asked)" = 0 ] && echo yes || echo no)"
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
    echo "  $page $size: $seen" | cut -c 1-400
    say "$page $size: no problem" "$(case $seen in *'"problems":[]'*) echo yes ;; *) echo no ;; esac)"
  done
done

# Sorting and filter, by hand of a script: each heading twice, then words into the field.
{ sed -e '/Content-Security-Policy/d' -e '/<\/body>/,$d' "$folder/audit.html"
  echo '<pre id="told"></pre><script>'; cat tests/browser/use_audit.js; echo '</script></body></html>'; } >"$folder/used.html"
open_page --window-size=1920,1080 --dump-dom "file://$folder/used.html" >"$folder/dom"
sed -n 's/.*<pre id="told">\(.*\)<\/pre>.*/  \1/p' "$folder/dom"
say "sorting and filter work" "$(holds "$folder/dom" '<pre id="told">all as wanted</pre>')"

if [ -n "$pictures" ]; then
  mkdir -p "$pictures"
  for page in audit since sheet turned; do
    open_page --window-size=1920,1400 --screenshot="$pictures/$page-1920.png" "file://$folder/$page.html"
    sed "s/width=\"[0-9]*\" height=\"[0-9]*\"/width=\"390\" height=\"1800\"/; s/probed/$page/" "$folder/frame.html" >"$folder/narrow.html"
    open_page --window-size=500,1800 --screenshot="$pictures/$page-390.png" "file://$folder/narrow.html"
    open_page --no-pdf-header-footer --print-to-pdf="$pictures/$page.pdf" "file://$folder/$page.html"
  done
fi
echo "$failures failed"
[ "$failures" -eq 0 ]
