#!/bin/sh
# firstpick check with several rule sets, with the program itself: exit status, faults of the call, what a single rule set gives.
# Usage: sh tests/commands/compare_commands.sh PROGRAM
set -u
program=$1
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
failures=0
culvert=docs/demo/box-culvert.toml

wrong() {
  echo "compare_commands.sh: $*" >&2
  failures=$((failures + 1))
}

# status EXPECTED ARGUMENT... : runs the program; its output in $folder/out and $folder/err.
status() {
  expected=$1
  shift
  "$program" "$@" >"$folder/out" 2>"$folder/err"
  given=$?
  [ $given -eq "$expected" ] || wrong "status $given, not $expected: $*"
}
told() { grep -qF -- "$1" "$folder/err" || wrong "not told: $1"; }
shown() { grep -qF -- "$1" "$folder/out" || wrong "not shown: $1"; }

# verdict_of PLAN RULES : the exit status of a single check
verdict_of() {
  "$program" check "$1" --rules "$2" >/dev/null 2>&1
  echo $?
}

# Worse of two exit statuses: NO-GO (1) outranks HOLD (3) outranks GO (0).
worse() {
  if [ "$1" -eq 1 ] || [ "$2" -eq 1 ]; then echo 1
  elif [ "$1" -eq 3 ] || [ "$2" -eq 3 ]; then echo 3
  else echo 0; fi
}

# --- the worst verdict is the exit status, in either order
apart=0
for plan in docs/demo/box-culvert.toml docs/demo/wall-panel.toml docs/demo/round-lid.toml docs/demo/stair.toml; do
  us=$(verdict_of $plan us)
  eu=$(verdict_of $plan eu)
  [ "$us" -eq "$eu" ] || apart=$((apart + 1))
  worst=$(worse "$us" "$eu")
  status "$worst" check $plan --rules us,eu
  shown "Cautions"
  shown "engineer of record"
  status "$worst" check $plan --rules eu,us
done
[ $apart -ge 1 ] || wrong "on no demo plan do the two rule sets part: nothing of that was tried"
status 1 check docs/demo/stair.toml $culvert --rules us,eu

# --- faults of the call
for list in us, ,us us,,eu , ''; do
  status 2 check $culvert --rules "$list"
  told "a rule set without a name"
  [ -s "$folder/out" ] && wrong "an answer besides the fault: '$list'"
done
status 2 check $culvert --rules us,us
told "'us' is named twice"
status 2 check $culvert --rules us,eux
told "there is no rule set 'eux'"
told "did you mean 'eu'?"
status 2 check $culvert --rules us,eu --steps
told "the steps are those of one rule set"
status 2 check $culvert --rules eux
told "did you mean 'eu'?"
for command in need sheet; do
  status 2 $command $culvert --rules us,eu $([ $command = sheet ] && echo "-o $folder/sheet.html")
  told "only firstpick check"
done
status 2 check docs/demo/no-such-plan.toml $culvert --rules us,eu
told "no-such-plan.toml"
shown "by eu" # the plan that reads is answered all the same

# --- JSON: one object for one plan, an array for several; a single rule set is as without the list
status 1 check $culvert --rules us,eu --json
shown '"compared": ['
grep -q '^\[' "$folder/out" && wrong "one plan is an array"
status 1 check $culvert $culvert --rules us,eu --json
grep -q '^\[' "$folder/out" || wrong "two plans are no array"
status 1 check $culvert --rules us --json
cp "$folder/out" "$folder/single"
status 1 check $culvert --json
cmp -s "$folder/out" "$folder/single" || wrong "a single rule set that the plan names changes the answer"
grep -q '"compared"' "$folder/out" && wrong "a single rule set is told as a comparison"

# --- a terminal of 80 columns
status 1 check $culvert --rules us,eu
awk 'length($0) > 80 { exit 1 }' "$folder/out" || wrong "a line is wider than 80 columns"
cp "$folder/out" "$folder/short"
status 1 check $culvert --rules us,eu --all
[ "$(wc -l <"$folder/out")" -gt "$(wc -l <"$folder/short")" ] || wrong "--all tells no more"

[ $failures -eq 0 ] && echo "compare_commands.sh: all as it should be"
[ $failures -eq 0 ]
