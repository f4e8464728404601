# Mistakes that the types must refuse. Each file is compiled twice with the same command: as it stands,
# which must fail, and with FIRSTPICK_CONTROL, which must succeed and so shows that the first failed for the
# right reason.
file(GLOB mistakes CONFIGURE_DEPENDS does_not_compile/*.cpp)
get_target_property(boost_folders Boost::headers INTERFACE_INCLUDE_DIRECTORIES)
list(TRANSFORM boost_folders PREPEND -I)
foreach(source ${mistakes})
  get_filename_component(mistake ${source} NAME_WE)
  set(compile "${CMAKE_CXX_COMPILER}" -std=c++20 -fsyntax-only "-I${PROJECT_SOURCE_DIR}/src" ${boost_folders})
  add_test(NAME "does_not_compile:${mistake}" COMMAND ${compile} "${source}")
  set_tests_properties("does_not_compile:${mistake}" PROPERTIES WILL_FAIL TRUE LABELS does_not_compile)
  add_test(NAME "does_not_compile:${mistake}, control"
           COMMAND ${compile} -DFIRSTPICK_CONTROL "${source}")
  set_tests_properties("does_not_compile:${mistake}, control" PROPERTIES LABELS does_not_compile)
endforeach()
