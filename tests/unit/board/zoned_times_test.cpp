// Times of plans and pours: local ones by the zone, those with an offset untouched; which stage is asked when.

#include "board/zoned_times.hpp"

#include <catch2/catch.hpp>

using namespace firstpick;

namespace {

const clock::Zone chicago = *clock::zone_named("America/Chicago");

plan::Timestamp local(long long seconds) { return {.seconds = seconds, .has_offset = false, .text = "local"}; }
plan::Timestamp zoned(long long seconds) { return {.seconds = seconds, .has_offset = true, .text = "zoned"}; }

plan::Stage stage(plan::StageKind kind, std::optional<plan::Timestamp> at) {
  return {.kind = kind, .rigging = {}, .crane = {}, .at = std::move(at)};
}

constexpr long long morning = 1772522400;        // 2026-03-03T07:20:00 as the wall shows it, less its text
constexpr long long skipped = 1772937000;        // 2026-03-08T02:30:00
constexpr long long twice = 1793496600;          // 2026-11-01T01:30:00

}  // namespace

TEST_CASE("a local time gets the offset of its zone, on its day and in words") {
  plan::Timestamp moment = local(morning);
  REQUIRE_FALSE(plan::put_into_zone(moment, chicago));
  CHECK(moment.has_offset);
  CHECK(moment.seconds == morning + 6 * 3600);
  CHECK(moment.offset_seconds == -6 * 3600);
  CHECK(moment.text.ends_with(" -06:00"));
  CHECK(plan::day_of(moment) == plan::day_of(local(morning)));
}

TEST_CASE("a time with an offset stays as it is") {
  plan::Timestamp moment = zoned(skipped);
  CHECK_FALSE(plan::put_into_zone(moment, chicago));
  CHECK(moment.seconds == skipped);
  CHECK(moment.text == "zoned");
}

TEST_CASE("a time that is skipped or comes twice is told wherever it stands in a plan or pour") {
  for (const long long bad : {skipped, twice}) {
    plan::Plan of_stage;
    of_stage.stages = {stage(plan::StageKind::strip, local(morning)), stage(plan::StageKind::yard, local(bad))};
    CHECK(board::put_into_zone(of_stage, chicago));
    for (const bool cast : {true, false}) {
      plan::Evidence evidence{.cast = local(cast ? bad : morning), .tested = local(cast ? morning : bad)};
      plan::Plan plan;
      plan.concrete.evidence = evidence;
      CHECK(board::put_into_zone(plan, chicago));
      checks::StrengthQuestion pour;
      pour.concrete.evidence = evidence;
      CHECK(board::put_into_zone(pour, chicago));
    }
    checks::StrengthQuestion log;
    log.log_file = plan::TemperatureLogFile{.cast = local(bad)};
    CHECK(board::put_into_zone(log, chicago));
    checks::StrengthQuestion companions;
    companions.calibration = plan::Calibration{.companions = {plan::Companion{.tested = local(bad)}}};
    CHECK(board::put_into_zone(companions, chicago));
  }
}

TEST_CASE("the strip is asked now, a later stage at its time, one whose time has passed now, one without a time not") {
  plan::Plan plan;
  plan.stages = {stage(plan::StageKind::strip, zoned(5000)), stage(plan::StageKind::strip, {}),
                 stage(plan::StageKind::yard, zoned(5000)), stage(plan::StageKind::yard, zoned(999)),
                 stage(plan::StageKind::haul, {})};
  board::ask_at(plan, zoned(1000));
  CHECK(plan.stages[0].at->seconds == 1000);
  CHECK(plan.stages[1].at->seconds == 1000);
  CHECK(plan.stages[2].at->seconds == 5000);
  CHECK(plan.stages[3].at->seconds == 1000);
  CHECK_FALSE(plan.stages[4].at);
}
