// The layout with the lowest governing use of all that the plan allows.
//
//   merit     barred first: how many findings are missing, or fail without a number; then the greatest utilization over its
//             limit of the findings that change with the place of the picks, over all stages; where that is about the same,
//             the next rule's counts, with a hundredth of the weight, and so on: u_1 + u_2/100 + u_3/10000 + ...
//
// Searched with panels estimated (demands/panel_estimate.hpp), in places between the steps; then on whole steps until no move
// of one or two of the freedoms by a step is better; then judged as `firstpick check` judges, the estimate of cracking
// corrected by what that gave, and once more.
#pragma once

#include <functional>
#include <optional>
#include <set>
#include <tuple>
#include <variant>

#include "layout/judged_layout.hpp"
#include "layout/placement.hpp"

namespace firstpick::layout {

struct Merit {  // less is better
  std::size_t barred = 0;
  double use = 0.0;                 // u_1
  double all = 0.0;                 // u_1 + u_2/100 + ..., each of another rule
  const Judged* governs = nullptr;  // of `use`; null where nothing has a number
  bool operator<(const Merit& other) const { return barred != other.barred ? barred < other.barred : all < other.all; }
  // And its governing use is no higher: no gain elsewhere buys that.
  bool improves(const Merit& other) const { return *this < other && (barred < other.barred || use <= other.use); }
};

// Which findings change with the place of the picks: learned from layouts that were judged.
class PositionRules {
 public:
  void learn(const JudgedLayout& drawn, const JudgedLayout& other);
  bool depends(const Judged& finding) const;
  Merit merit(const JudgedLayout& layout) const;

 private:
  std::set<std::tuple<std::size_t, std::string_view, std::string>> depending_;
};

struct LayoutSearch {
  std::optional<Places> places;  // on whole steps; absent: no layout is better than the plan as drawn
  bool drawn_is_allowed = true;  // else the best allowed layout is told, better or not
  PositionRules rules_of_position;
  std::size_t judged = 0, checked_in_full = 0;
};

// `tell`: called with the number of layouts judged so far. `drawn`: the plan as drawn, judged in full.
LayoutSearch find_layout(const Placement& placement, const piece::Body& body, const JudgedLayout& drawn,
                         const tables::RuleSet& rules, const tables::Tables& tables,
                         const std::function<void(std::size_t)>& tell);

// The body with the inserts of `moved`, or how far this layout is from being allowed (more than zero): off the concrete or on
// another face, in a box to be kept free, too near an edge.
std::variant<piece::Body, double> allowed_body(const Placement& placement, const piece::Body& body, const plan::Plan& moved);

}  // namespace firstpick::layout
