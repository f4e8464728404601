#include "card/qr_code.hpp"

#include <algorithm>
#include <cmath>
#include <memory>

#include <qrencode.h>

namespace firstpick::card {

namespace {
constexpr double dot = 1.0 / dots_per_point;
}

std::vector<LineMark> qr_code(const std::string& text, const Rect& square) {
  const std::unique_ptr<QRcode, void (*)(QRcode*)> code(
      QRcode_encodeString8bit(text.c_str(), 0, QR_ECLEVEL_M), &QRcode_free);
  std::vector<LineMark> modules;
  if (!code) return modules;
  constexpr int quiet = 4;
  // On the dots of a PNG: half-grey edges of modules keep readers from finding it.
  const double dots = std::floor(square.width / (dot * (code->width + 2 * quiet)));
  const double side = dot * std::max(dots, 1.0);
  const double left =
      dot * std::ceil(square.x / dot + 0.5 * (square.width / dot - (code->width + 2 * quiet) * dots) - 0.5);
  const double top =
      dot * std::ceil(square.y / dot + 0.5 * (square.height / dot - (code->width + 2 * quiet) * dots) - 0.5);
  for (int row = 0; row < code->width; ++row)
    for (int column = 0; column < code->width;) {  // dark modules side by side as one bar: no seams between
      int end = column;
      while (end < code->width && (code->data[row * code->width + end] & 1) != 0) ++end;
      if (end > column)
        modules.push_back({.points = outline({left + side * (column + quiet), top + side * (row + quiet),
                                              side * (end - column), side}),
                           .thick = 0.0,
                           .fill = 0.0});
      column = end + 1;
    }
  return modules;
}

}  // namespace firstpick::card
