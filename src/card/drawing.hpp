// A drawing in metres, before it has a place on the page: lines, marks, and labels that look for room.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "card/page.hpp"
#include "card/picks.hpp"
#include "checks/report.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"

namespace firstpick::card {

enum class Pen { edge, hidden, leg, beam, measure };

struct Stroke {
  std::vector<plan::PlanarPoint> points;
  Pen pen = Pen::edge;
};

enum class Sign { none, pick, hook, sheave, centre_of_gravity, unused_insert };

struct Label {
  plan::PlanarPoint at;
  std::string text;
  Sign sign = Sign::none;  // drawn at the place itself
  bool needed = true;      // false: left out where there is no room, because a table says it too
  // Written on the line itself, at the first of these with room; else beside `at`. A measure's label.
  std::vector<plan::PlanarPoint> on_line{};
};

struct Drawing {
  std::string title;
  std::vector<Stroke> strokes;
  std::vector<Label> labels;
};

// The piece on its legs, from the side and a little above, to scale. Absent: how it hangs is not assessed.
std::optional<Drawing> as_it_hangs(const plan::Plan& plan, const piece::Body& body,
                                   const checks::Report& report, std::size_t stage);

// The side that is up, with the places of the picks from the outermost edges and from each other. As cast, where how it
// hangs is not assessed; absent where the stage names no rigging.
std::optional<Drawing> from_above(const plan::Plan& plan, const piece::Body& body,
                                  const checks::Report& report, std::size_t stage);

// Drawn into `room`, as large as it goes. Labels do not cross each other, and stay in the room.
Box drawing_box(const Drawing& drawing, const std::string& name, const Rect& room, double text_size);

}  // namespace firstpick::card
