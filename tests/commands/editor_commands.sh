#!/bin/bash
# firstpick schema, completion and new, with the program itself: exit status, files, and completion in a real bash.
# Usage: bash tests/commands/editor_commands.sh PROGRAM
set -u
program=$1
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
failures=0

wrong() {
  echo "editor_commands.sh: $*" >&2
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

# --- schema
status 0 schema
cmp -s "$folder/out" docs/schema/plan.schema.json || wrong "schema: the plan's is not the default"
for kind in plan strength shift; do
  status 0 schema $kind
  cmp -s "$folder/out" docs/schema/$kind.schema.json || wrong "schema $kind is not the committed one"
done
status 2 schema manual

# --- new
for kind in $("$program" new --help | sed -n 's/^  \([a-z-]*\)  *[a-z].*/\1/p' | sort -u); do
  for units in si us; do
    plan="$folder/$kind-$units.toml"
    status 0 new "$kind" --units $units -o "$plan"
    [ -s "$folder/out" ] && wrong "new -o also writes to the terminal"
    [ "$kind $units" = "riser us" ] && status 3 check "$plan" # all of them: tests/editor/new_plans_test.cpp
  done
done
[ "$(ls "$folder"/*.toml | wc -l)" -ge 18 ] || wrong "new: fewer than nine kinds"
cp "$folder/wall-panel-si.toml" "$folder/kept"
status 2 new riser -o "$folder/wall-panel-si.toml"
grep -q 'exists, and is not overwritten' "$folder/err" || wrong "new: no word about the file that exists"
cmp -s "$folder/kept" "$folder/wall-panel-si.toml" || wrong "new wrote over a file"
status 2 new riser -o "$folder/none/riser.toml"
status 2 new spaceship
status 0 new wall-panel
cmp -s "$folder/out" "$folder/kept" || wrong "new: the terminal gets another plan than the file"

# --- completion
for shell in bash zsh fish; do
  status 0 completion $shell
  cp "$folder/out" "$folder/completion.$shell"
  if command -v $shell >/dev/null; then
    $shell -n "$folder/completion.$shell" || wrong "completion $shell: its syntax"
  fi
done
status 2 completion csh

# Every command and option that --help tells stands in each script.
check_help() { # COMMAND...
  "$program" "$@" --help >"$folder/help"
  for option in $(grep -oE '^  (-[a-zA-Z],?)?(--[a-z-]+)?' "$folder/help" | tr ',' ' '); do
    check_offered "$option" "$@" -
    case $option in
      --*) grep -q -- "-l ${option#--}" "$folder/completion.fish" || wrong "fish: no $option" ;;
    esac
    grep -q -- ")$option\\[" "$folder/completion.zsh" || wrong "zsh: no $option of $*"
  done
  for inner in $(sed -n '/^Subcommands:/,/^$/s/^  \([a-z-]*\) .*/\1/p' "$folder/help"); do
    check_offered "$inner" "$@" ""
    grep -q -- "-a $inner -d" "$folder/completion.fish" || wrong "fish: no $inner"
    grep -q "'$inner:" "$folder/completion.zsh" || wrong "zsh: no $inner"
    commands=$((commands + 1))
    check_help "$@" "$inner"
    "$program" "$@" --help >"$folder/help"
  done
}

. "$folder/completion.bash"
compopt() { :; } # outside a completion it has nothing to set

# offered WORD... : what bash offers for the last word.
offered() {
  COMP_WORDS=(firstpick "$@")
  COMP_CWORD=$#
  COMPREPLY=()
  _firstpick
  printf '%s\n' "${COMPREPLY[@]}"
}

check_offered() { # WANTED WORD...
  wanted=$1
  shift
  offered "$@" | grep -qx -- "$wanted" || wrong "bash does not offer $wanted for: $*"
}

commands=0
check_help
[ $commands -ge 12 ] || wrong "only $commands commands were compared with --help"

check_offered us check --rules ''
check_offered us check --rules = u
check_offered us,eu check --rules us,
check_offered us,eu check --rules = us,e
[ -z "$(offered check --rules us,u)" ] || wrong "a rule set is offered beside itself"
[ -z "$(offered card x.toml --rules us,)" ] || wrong "several rule sets are offered to card, which takes one"
grep -q '_values -s , value eu strength-by-mass two-branch-stripping us' "$folder/completion.zsh" || wrong "zsh: rule sets with commas between them"
grep -q "us,eu" "$folder/completion.fish" || wrong "fish: no pair of rule sets"
check_offered never check docs/demo/stair.toml --color n
check_offered insert-breakout rules insert-b
check_offered steels.toml tables st
check_offered strip card x.toml --stage ''
check_offered letter card x.toml --paper l
check_offered docs/demo/wall-panel.toml check docs/demo/w
check_offered docs/demo check docs/d
check_offered tables check --tables t
check_offered verify record v
check_offered box-culvert new b
check_offered zsh completion ''
check_offered shift schema s
[ -z "$(offered check README)" ] || wrong "a file that is no plan is offered to check"
[ -z "$(offered check --now-such-thing)" ] || wrong "an option that there is not is offered"
mkdir "$folder/two words"
: >"$folder/two words/a plan.toml"
[ "$(offered check "$folder/two words/a")" = "$folder/two words/a plan.toml" ] || wrong "a name with a space is broken"

[ $failures -eq 0 ] && echo "editor_commands.sh: all as it should be"
[ $failures -eq 0 ]
