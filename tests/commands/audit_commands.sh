#!/bin/sh
# Signing a plan and auditing a folder, as an engineer and a safety officer run them: exit status, files, what has changed.
# Run by CTest from the top of the source tree. Usage: sh tests/commands/audit_commands.sh PROGRAM
set -u
program=$1
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
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
says() { if grep -qF -- "$2" "$folder/$1"; then echo yes; else echo no; fi; }

now=2026-03-03T08:00:00-05:00
plans=$folder/plans
mkdir -p "$plans/sub"
cp docs/demo/manhole-base.toml "$plans/base.toml"
cp docs/demo/stair.toml "$plans/sub/stair.toml"
base=$plans/base.toml
signature=$plans/base.signed.toml

# sign: what cannot be signed leaves no file
is "a name is needed" 2 "$(status_of sign "$base")"
is "a name of spaces" 2 "$(status_of sign "$base" --engineer '  ')"
is "a name that moves the cursor" 2 "$(status_of sign "$base" --engineer "$(printf 'a\033[A')")"
is "a name that turns the line round" 2 "$(status_of sign "$base" --engineer "$(printf 'a\342\200\256b')")"
is "a time that is none" 2 "$(status_of sign "$base" --engineer 'R. Example' --now soon)"
is "no such plan" 2 "$(status_of sign "$plans/absent.toml" --engineer 'R. Example')"
printf '[piece\n' >"$folder/broken.toml"
is "a plan that does not read" 2 "$(status_of sign "$folder/broken.toml" --engineer 'R. Example')"
is "it says that nothing was signed" yes "$(says err 'nothing was signed')"
is "no file was left" no "$(if [ -e "$signature" ] || [ -e "$folder/broken.signed.toml" ]; then echo yes; else echo no; fi)"

# sign, and see it everywhere
is "an unsigned plan is told as such" 0 "$(status_of check "$base")"
is "in check" yes "$(says out 'not signed')"
is "signing a GO" 0 "$(status_of sign "$base" --engineer 'R. Example' --now $now)"
is "it says as what" yes "$(says out 'signed by R. Example as GO')"
is "the time is told in UTC" 1 "$(grep -c '2026-03-03T13:00:00Z' "$signature")"
is "a sign-off is no plan" 2 "$(status_of sign "$signature" --engineer 'R. Example')"
is "the signed plan is GO" 0 "$(status_of check "$base")"
is "check says who" yes "$(says out 'signed by R. Example, 2026-03-03 13:00 +00:00, as GO')"
is "the card of it" 0 "$(status_of card "$base" -o "$folder/card.txt")"
is "says who and when" 1 "$(grep -c 'by R. Example, 2026-03-03 13:00 +00:00, as GO' "$folder/card.txt")"
is "the sheet of it" 0 "$(status_of sheet "$base" -o "$folder/sheet.md")"
is "says who" 1 "$(grep -c 'Sign-off: signed by R. Example' "$folder/sheet.md")"

# an audit before the change
is "two GO are an audit without fault" 0 "$(status_of audit "$plans" --json --now $now)"
cp "$folder/out" "$folder/before.json"
is "the same again is the same bytes" 0 "$(status_of audit "$plans" --json --now $now --threads 1)"
is "on one thread too" yes "$(if cmp -s "$folder/out" "$folder/before.json"; then echo yes; else echo no; fi)"
is "and nothing has changed" 0 "$(status_of audit "$plans" --now $now --since "$folder/before.json")"
is "which it says" yes "$(says out '  - nothing')"

# a test without an offset is on the clock of --now: 07:10 there, twenty minutes before 07:30
is "an audit just after the test" 0 "$(status_of audit "$plans" --json --now 2026-03-03T07:30:00-05:00)"
is "counts minutes, not the offset" yes "$(says out '"evidence_age_days": 0.0138')"

# the strength files of the demo are counted, not broken
mkdir "$folder/strength"
cp docs/demo/strength/*.toml docs/demo/stair.toml "$folder/strength"
is "strength files beside a plan" 0 "$(status_of audit "$folder/strength" --now $now)"
is "are counted" yes "$(says out '4 strength files')"

# a verdict written over by hand
cp "$signature" "$folder/kept"
sed 's/verdict = "GO"/verdict = "NO-GO"/' "$folder/kept" >"$signature"
is "a sign-off that was written over holds" 3 "$(status_of check "$base")"
is "and check says why" yes "$(says out 'the sign-off file itself')"
cp "$folder/kept" "$signature"

# one byte of a comment
printf '# another thought\n' >>"$base"
is "check holds" 3 "$(status_of check "$base")"
is "check says why" yes "$(says out 'changed since sign-off: the plan')"
is "the card holds" 3 "$(status_of card "$base" -o "$folder/card.txt")"
is "the card says why" yes "$(if grep -q 'changed since sign-off' "$folder/card.txt"; then echo yes; else echo no; fi)"
is "no load to pull is on it" 0 "$(grep -c 'DO NOT PULL' "$folder/card.txt")"
is "the sheet holds" 3 "$(status_of sheet "$base" -o "$folder/sheet.html")"
is "the sheet says why" yes "$(if grep -q 'changed since sign-off: the plan' "$folder/sheet.html"; then echo yes; else echo no; fi)"
cat >"$plans/shift.toml" <<'END'
format = 1
plant = "Demo yard"
zone = "America/New_York"
starts = 2026-03-03T06:00:00
ends = 2026-03-03T14:30:00
[[piece]]
plan = "base.toml"
count = 1
END
is "the board holds" 3 "$(status_of board "$plans/shift.toml" --now 2026-03-03T08:00:00)"
is "the board says why" yes "$(says out 'changed since sign-off')"
is "in JSON too" 3 "$(status_of board "$plans/shift.toml" --now 2026-03-03T08:00:00 --json)"
is "with its state" yes "$(says out '"state": "changed since sign-off"')"
is "the audit holds" 3 "$(status_of audit "$plans" --now $now --since "$folder/before.json")"
is "it counts what was changed" yes "$(says out '1 changed since sign-off')"
is "what is worse than before" yes "$(says out 'worse: base.toml, was GO, is HOLD')"
is "a shift file is no plan of it" yes "$(says out '1 shift file,')"

# better, new, gone, broken
"$program" audit "$plans" --json --now $now >"$folder/second.json"
is "signed again" 0 "$(status_of sign "$base" --engineer 'R. Example' --now $now)"
cp docs/demo/round-lid.toml "$plans/lid.toml"
mv "$plans/sub/stair.toml" "$folder/stair.toml"
is "a NO-GO among them" 1 "$(status_of audit "$plans" --now $now --since "$folder/second.json")"
is "better" yes "$(says out 'better: base.toml, was HOLD, is GO')"
is "new" yes "$(says out 'new: lid.toml, is NO-GO')"
is "gone" yes "$(says out 'gone: sub/stair.toml, was GO')"
cp "$folder/broken.toml" "$plans/broken.toml"
is "a broken plan outranks it" 2 "$(status_of audit "$plans" --now $now)"
is "it is told with its place" yes "$(says out 'broken.toml:1:')"
is "and the others are judged" yes "$(says out '3 plans: 1 NO-GO, 1 broken, 0 HOLD, 1 GO')"
mv "$plans/base.toml" "$plans/base-b.toml"
status_of audit "$plans" --now $now --json >/dev/null
is "a plan that was renamed has lost its signature, and where it is is told" yes \
   "$(says out 'a sign-off without its plan: base.signed.toml; it is of the text of base-b.toml, which counts as not signed: rename')"
printf '\n# another text\n' >>"$plans/base-b.toml"
status_of audit "$plans" --now $now --json >/dev/null
is "renamed and changed, nobody knows whose it was" yes \
   "$(says out 'a sign-off without its plan: base.signed.toml; if the plan was renamed, rename')"
rm "$plans/base-b.toml"
status_of audit "$plans" --now $now >/dev/null
is "a signature without its plan is told" yes "$(says out 'a sign-off without its plan: base.signed.toml')"

# the call
is "no folder" 2 "$(status_of audit "$plans/absent")"
is "a file is no folder" 2 "$(status_of audit "$plans/lid.toml")"
mkdir "$folder/empty"
is "no plan in it" 2 "$(status_of audit "$folder/empty")"
is "two answers" 2 "$(status_of audit "$plans" --json --csv)"
is "a form that is none" 2 "$(status_of audit "$plans" -o "$folder/a.pdf")"
is "a time that is none" 2 "$(status_of audit "$plans" --now soon)"
is "an earlier audit that is none" 2 "$(status_of audit "$plans" --now $now --since docs/demo/shift.toml)"
is "an earlier audit that is not there" 2 "$(status_of audit "$plans" --now $now --since "$folder/absent.json")"
is "a file that cannot be written" 2 "$(status_of audit "$plans" --now $now -o "$folder/no/such/a.html")"
for form in txt csv json html; do
  is "a file: $form" 2 "$(status_of audit "$plans" --now $now -o "$folder/a.$form")"
  is "it is there: $form" yes "$(if [ -s "$folder/a.$form" ]; then echo yes; else echo no; fi)"
done

echo "$failures failed"
[ "$failures" -eq 0 ]
