#include "board/zoned_times.hpp"

namespace firstpick::board {

namespace {

struct Zoning {
  const clock::Zone& zone;
  std::optional<plan::ZoneFault> fault{};

  void operator()(std::optional<plan::Timestamp>& moment) {
    if (moment && !fault) fault = plan::put_into_zone(*moment, zone);
  }
  void operator()(std::optional<plan::Evidence>& evidence) {
    if (!evidence) return;
    (*this)(evidence->cast);
    (*this)(evidence->tested);
  }
};

}  // namespace

std::optional<plan::ZoneFault> put_into_zone(plan::Plan& plan, const clock::Zone& zone) {
  Zoning put{zone};
  put(plan.concrete.evidence);
  for (plan::Stage& stage : plan.stages) put(stage.at);
  return put.fault;
}

std::optional<plan::ZoneFault> put_into_zone(checks::StrengthQuestion& pour, const clock::Zone& zone) {
  Zoning put{zone};
  put(pour.concrete.evidence);
  if (pour.log_file) put(pour.log_file->cast);
  if (pour.calibration)
    for (plan::Companion& companion : pour.calibration->companions) put(companion.tested);
  for (auto& lift : pour.lifts) put(lift.stage.at);
  return put.fault;
}

void ask_at(plan::Plan& plan, const plan::Timestamp& now) {
  for (plan::Stage& stage : plan.stages)
    if (stage.kind == plan::StageKind::strip || (stage.at && stage.at->seconds < now.seconds)) stage.at = now;
}

}  // namespace firstpick::board
