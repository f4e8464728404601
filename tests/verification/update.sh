#!/bin/sh
# Writes docs/verification.md anew from the tests. Usage: sh tests/verification/update.sh [BUILD-DIRECTORY]
set -eu
cd "$(dirname "$0")/../.."
"${1:-build}"/tests/verification --reporter record > docs/verification.md.new
mv docs/verification.md.new docs/verification.md
