#!/bin/sh
# Every test: installs what is missing, builds, runs, and ends with the line "N passed, N failed".
# Usage: sh tests/run.sh
set -u
cd "$(dirname "$0")/.." || exit 2
. docs/prepare.sh

passed=0
failed=0

finish() {
  echo "$passed passed, $failed failed"
  [ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
  exit
}

# A step without which nothing after it can run counts as one failure.
need() {
  "$@" && return
  echo "run.sh: did not succeed: $1"
  failed=$((failed + 1))
  finish
}

# run_tests DIRECTORY CTEST-OPTION... : adds to the two counts. A run that finds no test is a failure.
run_tests() {
  directory=$1
  shift
  rm -f "$directory/tests.log"
  ctest --test-dir "$directory" --parallel "$(processors)" --output-on-failure --no-tests=error \
    --output-log "$directory/tests.log" "$@"
  status=$?
  summary=$(sed -n 's/^.*% tests passed, \([0-9]*\) tests* failed out of \([0-9]*\).*$/\1 \2/p' \
    "$directory/tests.log")
  if [ -z "$summary" ]; then
    failed=$((failed + 1))
    return
  fi
  failed_here=${summary% *}
  # A status without a failed test means that ctest itself met an error.
  if [ "$status" -ne 0 ] && [ "$failed_here" -eq 0 ]; then failed=$((failed + 1)); fi
  failed=$((failed + failed_here))
  passed=$((passed + ${summary#* } - failed_here))
}

need install_packages tests

need configure build -DBUILD_TESTING=ON
need cmake --build build --parallel "$(processors)"
run_tests build

# What reads files of strangers, once more under the sanitizers of the compiler.
need configure build/sanitize -DBUILD_TESTING=ON -DFIRSTPICK_SANITIZE=ON
need cmake --build build/sanitize --parallel "$(processors)" --target fuzz
run_tests build/sanitize --label-regex '^fuzz$'

finish
