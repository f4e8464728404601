// A drawing in metres, before it has a place on the page: lines, marks, and labels that look for room.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "card/page.hpp"
#include "card/picks.hpp"
#include "checks/pulls_on_scale.hpp"
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

// Where a label is written: anywhere about its place; across the line that it measures; beside the stroke that it is of,
// and nearer to it than to any other leg; left of or below a chain of measures.
enum class Write { about, across, beside, left, below };

struct Label {
  plan::PlanarPoint at;
  std::string text;
  Sign sign = Sign::none;  // drawn at the place itself
  bool needed = true;      // false: left out where there is no room, because a table says it too
  Write write = Write::about;
  std::vector<plan::PlanarPoint> places{};  // other places of it, tried in this order after `at`
  std::size_t stroke = 0;                   // Write::beside: that stroke of the drawing
};

struct Drawing {
  std::string title;
  std::vector<Stroke> strokes;
  std::vector<Label> labels;
  std::string name = "as it hangs";  // of its box
};

// The piece on its legs, from the side and a little above, to scale. Absent: how it hangs is not assessed.
std::optional<Drawing> as_it_hangs(const plan::Plan& plan, const piece::Body& body,
                                   const checks::Report& report, std::size_t stage);

// A turn from the side: as it starts, on the way and as it ends, on the ground where it stands on it, with the legs that
// hold it and what the scale shows at rest. Absent: the turn is not assessed.
std::optional<Drawing> as_it_turns(const plan::Plan& plan, const piece::Body& body,
                                   const checks::Report& report, std::size_t stage,
                                   const checks::PullsOnScale& pulls);

// The side that is up, with the places of the picks from the outermost edges and from each other. As cast, where how it
// hangs is not assessed; absent where the stage names no rigging.
std::optional<Drawing> from_above(const plan::Plan& plan, const piece::Body& body,
                                  const checks::Report& report, std::size_t stage);

// Drawn into `room`, as large as it goes. Labels do not cross each other, and stay in the room.
Box drawing_box(const Drawing& drawing, const Rect& room, double text_size);

}  // namespace firstpick::card
