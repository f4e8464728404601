#!/bin/sh
# From a fresh copy of the source to the verdicts on the demo plans. Usage: sh docs/try.sh
set -eu
cd "$(dirname "$0")/.."
. docs/prepare.sh

install_packages program
configure build -DBUILD_TESTING=OFF
cmake --build build --parallel "$(processors)" --target firstpick

firstpick=build/bin/firstpick
checked=0
for plan in docs/demo/*.toml; do
  grep -q '^\[piece\]' "$plan" || continue  # the shift file beside them is no plan
  printf '\n==== firstpick check %s\n\n' "$plan"
  status=0
  "$firstpick" check "$plan" || status=$?
  case $status in
    0) answer="GO" ;;
    1) answer="NO-GO" ;;
    3) answer="HOLD" ;;
    *)
      echo "try.sh: $plan could not be checked (exit status $status)" >&2
      exit 2
      ;;
  esac
  printf '\nexit status %s: %s\n' "$status" "$answer"
  checked=$((checked + 1))
done
if [ "$checked" -eq 0 ]; then
  echo "try.sh: there is no plan in docs/demo" >&2
  exit 2
fi

printf '\n==== firstpick board docs/demo/shift.toml\n\n'
"$firstpick" board docs/demo/shift.toml --now 2026-03-03T07:45:00 || [ $? -le 3 ]

cat <<END

$checked demo plans checked. Next:
  $firstpick --help   the commands
  README.md                    what it does, and what it does not
  docs/demo/                   the plans above: copy one and change it
  sh tests/run.sh              every test
END
