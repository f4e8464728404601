// A plan and its body made for tests of loads: a box culvert section, 8 x 6 ft inside, 8 in walls, 6 ft long,
// 128 ft3, at 150 lb/ft3: 19,200 lb. No geometry engine takes part.
#pragma once

#include "piece/body.hpp"
#include "plan/plan.hpp"

namespace firstpick::tests {

inline plan::Plan culvert_plan() {
  plan::Plan plan;
  plan.piece.mark = "BC-0806";
  plan.concrete.kind = "normalweight";
  plan.concrete.density = 150.0 * lb_per_ft3;
  plan.concrete.density_tolerance = Ratio::from_value(0.03);
  plan::Contact barrel;
  barrel.faces.names = {{"barrel", {}}};
  barrel.finish = "smooth";
  plan.form = plan::Form{};
  plan.form->contacts = {barrel};
  plan::Crane bay;
  bay.id = "bay-2";
  plan.cranes = {bay};
  return plan;
}

// The barrel: 2 x (8 ft + 6 ft) x 6 ft of form, a tenth of it facing down for the test.
inline piece::Body culvert_body() {
  piece::Body body;
  body.volume = 128.0 * ft3;
  body.centroid = {4.0 * ft + 8.0 * inch, 3.0 * ft, 3.0 * ft + 8.0 * inch};
  piece::ContactArea barrel;
  barrel.area = 168.0 * ft2;
  barrel.on_pull = 16.8 * ft2;
  barrel.centroid = {4.0 * ft + 8.0 * inch, 3.0 * ft, 3.0 * ft};
  body.contacts = {barrel};
  return body;
}

inline plan::Stage stage_of(plan::StageKind kind) {
  plan::Stage stage;
  stage.kind = kind;
  stage.crane = "bay-2";
  return stage;
}

}  // namespace firstpick::tests
