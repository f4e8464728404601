#include "tables/specimen_size.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace firstpick;
using namespace firstpick::tables;

TEST_CASE("a specimen is read with its shape and size") {
  struct Row {
    std::string words, shape;
    Length width, height;
  };
  for (const Row& row : {Row{"cylinder 4x8 in", "cylinder", 4.0 * inch, 8.0 * inch},
                         Row{"cylinder 150x300 mm", "cylinder", 150.0 * mm, 300.0 * mm},
                         Row{"cube 150 mm", "cube", 150.0 * mm, 150.0 * mm},
                         Row{"cube 4.5 in", "cube", 4.5 * inch, 4.5 * inch}}) {
    CAPTURE(row.words);
    const auto read = specimen_size(row.words);
    REQUIRE(std::holds_alternative<SpecimenSize>(read));
    const auto& size = std::get<SpecimenSize>(read);
    CHECK(size.shape == row.shape);
    CHECK(in(mm, size.width) == Approx(in(mm, row.width)).epsilon(1e-12));
    CHECK(in(mm, size.height) == Approx(in(mm, row.height)).epsilon(1e-12));
  }
}

TEST_CASE("what is not a specimen is refused with the place in the words") {
  struct Row {
    std::string words;
    std::size_t at;
    std::string what;
  };
  for (const Row& row :
       {Row{"", 0, "'' is neither a cylinder nor a cube"},
        Row{"prism 4x8 in", 0, "'prism' is neither a cylinder nor a cube"}, Row{"cube", 4, "no size"},
        Row{"cube 150", 4, "no size"}, Row{"cylinder 4 in", 9, "a cylinder has a diameter and a height"},
        Row{"cube 4x8 in", 5, "a cube has one side"}, Row{"cube 0 mm", 5, "a size is above zero"},
        Row{"cylinder 4x-8 in", 11, "a size is above zero"}}) {
    CAPTURE(row.words);
    const auto read = specimen_size(row.words);
    REQUIRE(std::holds_alternative<QuantityFault>(read));
    CHECK(std::get<QuantityFault>(read).at == row.at);
    CHECK(std::get<QuantityFault>(read).what == row.what);
    CHECK(std::get<QuantityFault>(read).help == "write \"cylinder 4x8 in\" or \"cube 150 mm\"");
  }
  CHECK(std::holds_alternative<QuantityFault>(specimen_size("cube 150 kN")));
  CHECK(std::holds_alternative<QuantityFault>(specimen_size("cylinder x8 in")));
}
