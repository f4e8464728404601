#!/bin/sh
# The commands themselves, as a plant runs them: exit status, faults of the call, the watch, a record by many programs.
# Run by CTest from the top of the source tree. Usage: sh tests/commands/board_commands.sh PROGRAM
set -u
program=$1
folder=$(mktemp -d)
watcher=
trap '[ -z "$watcher" ] || kill "$watcher" 2>/dev/null; rm -rf "$folder"' EXIT
failures=0

# is WHAT EXPECTED ACTUAL
is() {
  if [ "$2" = "$3" ]; then return; fi
  echo "FAILED: $1: expected '$2', got '$3'"
  failures=$((failures + 1))
}
# status_of ARGUMENT... : output in $folder/out and $folder/err
status_of() {
  status=0
  "$program" "$@" >"$folder/out" 2>"$folder/err" || status=$?
  echo "$status"
}
# until COMMAND... holds, at most 20 s
until_true() {
  tries=0
  until "$@"; do
    tries=$((tries + 1))
    [ "$tries" -lt 100 ] || return 1
    sleep 0.2
  done
}
contains() { grep -qF -- "$2" "$1" 2>/dev/null; }
lacks() { ! grep -qF -- "$2" "$1" 2>/dev/null; }
yes_if() { if "$@"; then echo yes; else echo no; fi; }

demo=docs/demo/shift.toml
now=2026-03-03T07:45:00
cp -r docs/demo "$folder/demo"

is "the demo has a NO-GO" 1 "$(status_of board $demo --now $now)"
sed -n '1,/^form = /p' "$folder/demo/shift.toml" >"$folder/demo/hold.toml"
is "its first line alone is a HOLD" 3 "$(status_of board "$folder/demo/hold.toml" --now $now)"
sed -n '1,/^\[\[piece/p' "$folder/demo/shift.toml" | sed '$d' >"$folder/demo/go.toml"
printf '[[piece]]\nplan = "stair.toml"\ncount = 1\ncast = 2026-03-02T15:00:00\n' >>"$folder/demo/go.toml"
is "a stair alone is GO" 0 "$(status_of board "$folder/demo/go.toml" --now $now)"
is "before the shift it is HOLD" 3 "$(status_of board "$folder/demo/go.toml" --now 2026-03-03T05:00:00)"
is "no such file" 2 "$(status_of board "$folder/absent.toml")"
is "a time that is none" 2 "$(status_of board $demo --now soon)"
is "two answers" 2 "$(status_of board $demo --json --csv --now $now)"
is "a record without a name" 2 "$(status_of board $demo --now $now --record "$folder/r.sqlite")"
is "a name of spaces" 2 "$(status_of board $demo --now $now --record "$folder/r.sqlite" --by '  ')"
is "a name that moves the cursor" 2 "$(status_of board $demo --now $now --record "$folder/r.sqlite" --by "$(printf 'a\033[A')")"
is "a name without a record" 2 "$(status_of board $demo --now $now --by "A")"
is "a watch without a page" 2 "$(status_of board $demo --watch)"
is "a watch at a fixed time" 2 "$(status_of board $demo --watch --html "$folder/b.html" --now $now)"
is "a watch that records" 2 "$(status_of board $demo --watch --html "$folder/b.html" --record "$folder/r.sqlite" --by A)"
is "a page that cannot be written" 2 "$(status_of board $demo --now $now --html "$folder/no/such/folder/b.html")"
is "nothing was recorded by any of them" no "$(yes_if test -e "$folder/r.sqlite")"

# the record: several programs at once
for writer in 1 2 3 4; do
  "$program" board $demo --now $now --record "$folder/r.sqlite" --by "Writer $writer (invented)" >"$folder/out$writer" 2>&1 &
done
wait
# A board of another time than the clock's is recorded, and told: 3.
is "every piece of every board is recorded" 3 "$(status_of record verify "$folder/r.sqlite")"
is "its time is not that of the clock" yes "$(yes_if contains "$folder/out" "its board is of 2026-03-03T07:45:00-05:00, and it was")"
is "80 decisions" yes "$(yes_if contains "$folder/out" "80 decisions")"
head_hash=$(sed -n 's/^hash of the last one, to be kept elsewhere: //p' "$folder/out1")
is "a hash that was printed is kept" 3 "$(status_of record verify "$folder/r.sqlite" --head "$head_hash")"
is "in capitals too" 3 "$(status_of record verify "$folder/r.sqlite" --head "$(echo "$head_hash" | tr a-f A-F)")"
is "another is not" 1 "$(status_of record verify "$folder/r.sqlite" --head "$(printf 'a%.0s' 1 2 3 4 5 6 7 8)$(printf 'b%.0s' 1 2 3 4 5 6 7 8)$(echo "$head_hash" | cut -c17-)")"
for wrong in 00 "" "$(echo "$head_hash" | cut -c1-16)" "g$(echo "$head_hash" | cut -c2-)"; do
  is "'$wrong' is no hash" 2 "$(status_of record verify "$folder/r.sqlite" --head "$wrong")"
done
is "show" 0 "$(status_of record show "$folder/r.sqlite" --csv)"
is "81 lines" 81 "$(wc -l <"$folder/out" | tr -d ' ')"
is "no record" 2 "$(status_of record verify $demo)"

# by the clock itself; a head beside the record misses what is cut off, and nothing is added to what is damaged
{
  sed -n '1,/^zone/p' "$folder/demo/go.toml"
  date -u -d '-1 hour' '+starts = %Y-%m-%dT%H:%M:%SZ' 2>/dev/null
  date -u -d '+8 hours' '+ends = %Y-%m-%dT%H:%M:%SZ' 2>/dev/null
  sed -n '/^\[\[piece/,$p' "$folder/demo/go.toml"
} | sed 's|^zone.*|zone = "Z"|' >"$folder/demo/today.toml"
for writer in 1 2; do "$program" board "$folder/demo/today.toml" --record "$folder/c.sqlite" --by A >"$folder/out" 2>&1; done
is "recorded by the clock, there is nothing to look at" 0 "$(status_of record verify "$folder/c.sqlite")"
is "the hash beside it is that of the last row" yes "$(yes_if contains "$folder/out" "the hash beside the record is that of row 2")"
cp "$folder/c.sqlite" "$folder/cut.sqlite"
cp "$folder/r.sqlite.head" "$folder/cut.sqlite.head"
is "a record without the row whose hash is beside it" 1 "$(status_of record verify "$folder/cut.sqlite")"
is "nothing is added to it" 2 "$(status_of board "$folder/demo/today.toml" --record "$folder/cut.sqlite" --by A)"
is "and it says why" yes "$(yes_if contains "$folder/err" "nothing is added to a record that is damaged")"
rm "$folder/cut.sqlite"
is "nor begun anew beside it" 2 "$(status_of board "$folder/demo/today.toml" --record "$folder/cut.sqlite" --by A)"
is "a record that cannot be written" 2 "$(status_of board $demo --now $now --record "$folder/no/such/r.sqlite" --by A)"

# the watch: its shift begins an hour ago, in UTC, so that it runs now
page=$folder/page.html
{
  printf 'format = 1\nplant = "Watched yard"\nzone = "Z"\n'
  date -u -d '-1 hour' '+starts = %Y-%m-%dT%H:%M:%S' 2>/dev/null
  date -u -d '+8 hours' '+ends = %Y-%m-%dT%H:%M:%S' 2>/dev/null
  printf '[[piece]]\nplan = "stair.toml"\ncount = 1\ncast = 2026-03-02T15:00:00\n'
} >"$folder/demo/watched.toml"
"$program" board "$folder/demo/watched.toml" --watch --html "$page" >"$folder/watch" 2>&1 &
watcher=$!
is "the watch writes its page" yes "$(yes_if until_true contains "$page" "Watched yard")"
sed 's/Watched yard/Changed yard/' "$folder/demo/watched.toml" >"$folder/new" && cp "$folder/new" "$folder/demo/watched.toml"
is "a changed shift file" yes "$(yes_if until_true contains "$page" "Changed yard")"
sed 's/ST-08-031/ST-99/' "$folder/demo/stair.toml" >"$folder/new" && cp "$folder/new" "$folder/demo/stair.toml"
is "a changed plan" yes "$(yes_if until_true contains "$page" "ST-99")"
rm "$folder/demo/stair.toml"
is "a plan that is gone" yes "$(yes_if until_true contains "$page" "the file cannot be read")"
printf 'format = ' >"$folder/demo/watched.toml"
is "a shift file half written" yes "$(yes_if until_true contains "$page" "Nothing is checked")"
is "no verdict is left" yes "$(yes_if lacks "$page" ") GO")"
cp "$folder/demo/go.toml" "$folder/demo/watched.toml"
is "and whole again" yes "$(yes_if until_true lacks "$page" "Nothing is checked")"
kill -INT "$watcher"
status=0
wait "$watcher" || status=$?
watcher=
is "an interrupted watch ends well" 0 "$status"
is "no half of a page is left behind" no "$(yes_if test -e "$page.part")"

echo "$failures failed"
[ "$failures" -eq 0 ]
