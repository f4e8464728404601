#include <catch2/catch.hpp>

#include "record/program_module.hpp"

using namespace firstpick;

TEST_CASE("a module or a function of it that is not there is null, and drawing without it is an error that names it") {
  CHECK(module_function("firstpick_nothing.so", "firstpick_paint") == nullptr);
  CHECK(module_function(pictures_module, "firstpick_nothing") == nullptr);
  CHECK(module_function(pictures_module, "firstpick_paint") != nullptr);
  CHECK_THROWS_WITH(pictures_function("firstpick_nothing"),
                    Catch::Contains("draws is missing") && Catch::Contains(pictures_module));
}
