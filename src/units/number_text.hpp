// A number as people write it: 4, 0.75, .75, 1.5e3, 5/8, 1 1/2, 1-1/2.
#pragma once

#include "units/scanner.hpp"

namespace firstpick {

struct WrittenNumber {
  double value = 0.0;
  bool whole = false;  // only digits: may be followed by a smaller unit, "8 ft 4 in"
  std::size_t from = 0, to = 0;
};

// No sign: the sign belongs to the whole quantity. Never NaN or infinite; not zero unless the digits are.
Read<WrittenNumber> read_number(Scanner& text);

}  // namespace firstpick
