#include <algorithm>
#include <limits>

#include "layout/find_layout.hpp"
#include "piece/moved_inserts.hpp"

namespace firstpick::layout {

namespace {

constexpr double elsewhere = 100.0;  // off the concrete: farther than any lack of distance in metres
constexpr double on_the_border_m = 1e-7;

// How far inside the box, to its nearest side, more than zero on the border too; negative: outside.
double depth_m(const plan::KeepOut& box, const Position& p) {
  const auto& [low, high] = box.corners;
  double depth = std::numeric_limits<double>::infinity();
  for (const Length& each : {std::min(p.x - low.x, high.x - p.x), std::min(p.y - low.y, high.y - p.y),
                            std::min(p.z - low.z, high.z - p.z)}) {
    const double inside = in(m, each);
    if (inside < -on_the_border_m) return inside;
    depth = std::min(depth, inside);
  }
  return std::max(depth, on_the_border_m);
}

}  // namespace

std::variant<piece::Body, double> allowed_body(const Placement& placement, const piece::Body& body, const plan::Plan& moved) {
  double lack = 0.0;
  for (const std::size_t insert : placement.moving())
    for (const plan::KeepOut& box : placement.layout().keep_outs)
      lack = std::max(lack, depth_m(box, moved.inserts.at(insert).at));
  if (lack > 0.0) return lack;

  auto made = piece::with_inserts_of(body, moved);
  if (!std::holds_alternative<piece::Body>(made)) return elsewhere;
  for (const std::size_t insert : placement.moving()) {
    const piece::InsertSite& site = std::get<piece::Body>(made).sites.at(insert);
    if (site.face != body.sites.at(insert).face) return elsewhere;
    if (const auto& least = placement.layout().edge_distance; least && !site.edges.empty())
      lack = std::max(lack, in(m, *least - site.edges.front().distance) - on_the_border_m);
  }
  if (lack > 0.0) return lack;
  return std::get<piece::Body>(std::move(made));
}

}  // namespace firstpick::layout
