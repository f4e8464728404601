#!/bin/sh
# Writes docs/verification.md anew from the tests. Usage: sh tests/verification/update.sh [BUILD-DIRECTORY]
# Comparisons with CalculiX take their time and stand in no row of it: their digits are those of the machine.
set -eu
cd "$(dirname "$0")/../.."
"${1:-build}"/tests/verification --reporter record "~[calculix]" > docs/verification.md.new
mv docs/verification.md.new docs/verification.md
