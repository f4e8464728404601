# A test program that dies while it lists its cases would leave no trace in CTest. This test is the trace.
execute_process(COMMAND "${PROGRAM}" --list-test-names-only RESULT_VARIABLE number_of_cases OUTPUT_QUIET)
if(NOT number_of_cases MATCHES "^[1-9][0-9]*$")
  message(FATAL_ERROR "${PROGRAM} lists no case: ${number_of_cases}")
endif()
