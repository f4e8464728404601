// Steel area of the shank of an insert.
//
//   A_se = pi/4 (d_a - 9/16 sqrt(3) p)^2        thread of pitch p; 9/16 sqrt(3) is 0.9743
//   A_se = pi/4 d_a^2                           no thread
//
// Source   ACI 318-19 R17.6.1.2; the geometry of a 60 degree thread.
// Absent   a bolt is neither said to have a thread of some pitch nor to have none: the area without thread
//          is the larger, and nobody's silent choice. A welded stud has no thread unless the plan says so.

#include "resistances/shank_area.hpp"

#include <cmath>
#include <optional>
#include <utility>

#include <fmt/format.h>

#include "resistances/mm_n_terms.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

namespace {

constexpr double pi = 3.14159265358979323846;

// Why the area is not known; nothing: the plan says what there is of a thread.
std::optional<NotAssessed> thread_not_said(const plan::Insert& insert) {
  const char* const pitch = "[[insert]] thread_pitch = \"... in\"";
  if (insert.thread_pitch && insert.threaded == false)
    return NotAssessed{fmt::format("insert {} is said to have no thread, and a thread_pitch", insert.id),
                       "take out the one that is wrong"};
  if (insert.thread_pitch || insert.threaded == false) return {};
  if (insert.threaded == true)
    return NotAssessed{fmt::format("insert {} is threaded and has no thread_pitch", insert.id), pitch};
  if (insert.welded_stud) return {};
  return NotAssessed{
      fmt::format("the plan does not say whether a thread lies in the stressed shank of insert {}",
                  insert.id),
      fmt::format("{}, or threaded = false where there is no thread", pitch)};
}

}  // namespace

Outcome<Area> shank_area(const plan::Insert& insert, const tables::HeadedInsertModel& model, Trace& trace) {
  if (auto why = thread_not_said(insert)) return *std::move(why);
  const Length d_a = *insert.shank;
  if (!insert.thread_pitch) {
    const Area A_se = pi / 4.0 * d_a * d_a;
    trace.add([&] {
      return Step{.words = "steel area of the shank, which has no thread by the plan",
                  .result = term_of(model, "A_se", A_se),
                  .formula = "pi / 4 * d_a^2",
                  .given = {term_of(model, "d_a", d_a)},
                  .clause = "geometry",
                  .sources = {}};
    });
    return A_se;
  }
  const Length p = *insert.thread_pitch;
  const Length core = d_a - 9.0 / 16.0 * std::sqrt(3.0) * p;
  if (!is_usable(p) || !is_usable(core))
    return NotAssessed{
        fmt::format("what the thread_pitch leaves of the shank of insert {} is not a number above zero",
                    insert.id),
        {}};
  const Area A_se = pi / 4.0 * core * core;
  trace.add([&] {
    return Step{.words = "steel area of the threaded shank",
                .result = term_of(model, "A_se", A_se),
                .formula = "pi / 4 * (d_a - 9 / 16 * sqrt(3) * p)^2",
                .given = {term_of(model, "d_a", d_a), term_of(model, "p", p)},
                .clause = "60 degree thread, as in ACI 318-19 R17.6.1.2",
                .sources = {}};
  });
  return A_se;
}

}  // namespace firstpick::resistances
