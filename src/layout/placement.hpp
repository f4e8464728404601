// The plan with its picks elsewhere: one place on an axis for each [[layout.move]] of the plan, that of its first insert.
//
//   shift     at = at as drawn + (place - place as drawn)
//   mirror    at = plane -+ |place - plane|, each insert on the side where it is drawn
//
// keep-angle   L = L as drawn x r / r as drawn, rounded up to the step; r: level distance from the centre of gravity of the
//              concrete, below which the hook stands; only of a leg straight from the one hook
//
// What a drawing can state: the first insert of a move comes to lie on a whole number of steps; the others, and leg lengths,
// on 1 mm or 1/16 in by the units of the plan.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "piece/body.hpp"
#include "plan/layout.hpp"
#include "record/diagnostic.hpp"

namespace firstpick::layout {

// A place on the axis for each move, in metres.
using Places = std::vector<double>;

class Placement {
 public:
  // Faults: an insert on the plane of its mirror, on the wrong side of a range, or no whole step within a range.
  static std::variant<Placement, std::vector<Diagnostic>> of(const plan::Plan& plan, const plan::Layout& layout,
                                                             const piece::Body& body);

  std::size_t size() const { return freedoms_.size(); }
  const Places& low() const { return low_; }
  const Places& high() const { return high_; }
  const Places& as_drawn() const { return drawn_; }
  bool drawn_in_range() const;
  double step_m() const;

  // Each to the nearest whole step within its range.
  Places rounded(const Places& places) const;
  // Inserts and legs there. Followers are rounded to what a drawing can state where `to_draw`.
  plan::Plan placed(const Places& places, bool to_draw) const;

  const plan::Plan& plan() const { return plan_; }
  const plan::Layout& layout() const { return layout_; }
  // Ids of the inserts that move, in the plan's order.
  const std::vector<std::size_t>& moving() const { return moving_; }

 private:
  struct Freedom {
    std::size_t axis = 0;              // 0, 1, 2
    bool mirror = false;
    double plane_m = 0.0;
    std::vector<std::size_t> inserts;  // of the plan; the first leads
  };

  Placement(const plan::Plan& plan, const plan::Layout& layout, const piece::Body& body);
  void follow_with_legs(plan::Plan& moved) const;

  plan::Plan plan_;
  plan::Layout layout_;
  Position centre_;
  std::vector<Freedom> freedoms_;
  std::vector<std::size_t> moving_;
  Places low_, high_, drawn_;
};

}  // namespace firstpick::layout
