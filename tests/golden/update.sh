#!/bin/sh
# Writes the golden files anew from the built program. Read the difference before you commit it.
# Usage: sh tests/golden/update.sh [PROGRAM]
set -eu
cd "$(dirname "$0")/../.."
program=${1:-build/bin/firstpick}

# answer FILE ARGUMENT... : the program's answer, with the fingerprints as zeros (see demo_plans_test.cpp).
answer() {
  file=$1
  shift
  status=0
  "$program" "$@" >"$file.new" || status=$?
  case $status in
    0 | 1 | 3) ;;
    *)
      rm -f "$file.new"
      echo "update.sh: $program $* ended with status $status" >&2
      exit 2
      ;;
  esac
  sed -e 's/\(fingerprint "*\)[0-9a-f]\{16\}$/\10000000000000000/' \
    -e 's/\("[a-z_]*sha256": "\)[0-9a-f]\{64\}"/\10000000000000000000000000000000000000000000000000000000000000000"/' \
    -e 's/,[0-9a-f]\{64\}\(.\{0,1\}\)$/,0000000000000000000000000000000000000000000000000000000000000000\1/' \
    -e 's/\(fingerprint \)[0-9a-f]\{16\};/\10000000000000000;/' \
    -e 's/\("fingerprint": "\)[0-9a-f]\{64\}"/\10000000000000000000000000000000000000000000000000000000000000000"/' \
    "$file.new" >"$file"
  rm -f "$file.new"
}

# card FILE PLAN PAPER : the words and boxes of the lift card, with the fingerprint as zeros.
card() {
  status=0
  "$program" card "$2" --stage strip --paper "$3" -o "$1.new.txt" >/dev/null || status=$?
  case $status in
    0 | 1 | 3) ;;
    *)
      rm -f "$1.new.txt"
      echo "update.sh: the card of $2 ended with status $status" >&2
      exit 2
      ;;
  esac
  sed -e 's/fingerprint [0-9a-f]\{64\}$/fingerprint 0000000000000000000000000000000000000000000000000000000000000000/' \
    "$1.new.txt" >"$1"
  rm -f "$1.new.txt"
}

for kind in plan strength shift; do
  "$program" schema "$kind" >"docs/schema/$kind.schema.json"
done

for pour in docs/demo/strength/*.toml; do
  name=tests/golden/$(basename "$pour" .toml)
  answer "$name.strength.txt" strength "$pour" --now 2026-03-03T07:20:00-05:00 --color never
  answer "$name.strength.json" strength "$pour" --now 2026-03-03T07:20:00-05:00 --json
done

answer tests/golden/box-culvert.us-eu.txt check docs/demo/box-culvert.toml --rules us,eu --color never
answer tests/golden/box-culvert.us-eu.json check docs/demo/box-culvert.toml --rules us,eu --json

answer tests/golden/wall-panel.layout.txt layout docs/demo/layout/wall-panel.toml
answer tests/golden/wall-panel.layout.json layout docs/demo/layout/wall-panel.toml --json

answer tests/golden/shift.board.txt board docs/demo/shift.toml --now 2026-03-03T07:45:00 --color never
answer tests/golden/shift.board.json board docs/demo/shift.toml --now 2026-03-03T07:45:00 --json
answer tests/golden/shift.board.csv board docs/demo/shift.toml --now 2026-03-03T07:45:00 --csv
"$program" board docs/demo/shift.toml --now 2026-03-03T07:45:00 --html tests/golden/shift.board.html >/dev/null || [ $? -eq 1 ]

for plan in docs/demo/*.toml; do
  grep -q '^\[piece\]' "$plan" || continue  # the shift file beside them is no plan
  name=tests/golden/$(basename "$plan" .toml)
  answer "$name.txt" check "$plan" --color never
  answer "$name.json" check "$plan" --json
  card "$name.card.txt" "$plan" a4
  card "$name.card-letter.txt" "$plan" letter
done

# The example in the README: the same answer, up to what it rests on.
{
  sed '/^\$ build\/bin\/firstpick check docs\/demo\/wall-panel.toml$/q' README.md
  { "$program" check docs/demo/wall-panel.toml --color never || true; } | sed '/^Rests on$/,$d' | sed '$d'
  sed '1,/^\$ build\/bin\/firstpick check docs\/demo\/wall-panel.toml$/d' README.md | sed -n '/^\.\.\.$/,$p'
} >README.md.new
mv README.md.new README.md
