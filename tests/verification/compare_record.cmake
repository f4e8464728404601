# As tests/verification/update.sh writes it.
# docs/verification.md is what the tests write today: run with -D PROGRAM=..., at the top of the source tree.
execute_process(COMMAND "${PROGRAM}" --reporter record "~[calculix]" OUTPUT_VARIABLE fresh RESULT_VARIABLE status)
file(READ docs/verification.md kept)
if(NOT status EQUAL 0)
  message(FATAL_ERROR "the verification tests fail (${status})")
endif()
if(NOT fresh STREQUAL kept)
  message(FATAL_ERROR "docs/verification.md is not what the tests write: run sh tests/verification/update.sh, read the difference")
endif()
