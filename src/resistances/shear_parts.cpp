// A shear at an angle a to the way out of an edge has the parts p towards the edge and q along it.
//
//   p = max(0, cos a)        q = abs(sin a)
//   R = 1 / sqrt((p / V_cb)^2 + (q / V_cb_par)^2)
//
// Source   V_cb, V_cb_par: shear_breakout.cpp. ACI 318-19 17.7.2.1 checks the parts one by one; R is never
//          more than that gives, and up to sqrt(2) less.
// Choice   A shear straight away from an edge does not break it.

#include "resistances/shear_parts.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "resistances/lb_in_terms.hpp"
#include "resistances/mm_n_terms.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

bool has_direction(const Direction& shear, const piece::InsertSite& site) {
  const double length = std::hypot(dot(shear, site.u), dot(shear, site.v));
  return std::isfinite(length) && length > 0.0;
}

ShearParts parts_of(const Direction& shear, const Direction& towards, const Direction& along) {
  const double out = dot(shear, towards), beside = dot(shear, along), whole = std::hypot(out, beside);
  return {std::max(0.0, out / whole), std::abs(beside / whole)};
}

bool limits(const ShearParts& parts) {
  constexpr double rounding = 1e-9;  // of a direction: straight away is not so to the last bit
  return parts.towards > 0.0 || parts.along > rounding;
}

Force against_resultant(const ShearParts& parts, const EdgeStrength& strength) {
  const double towards = parts.towards * newton / strength.towards,
               along = parts.along * newton / strength.along;
  return newton / std::sqrt(towards * towards + along * along);
}

void record_resultant(const std::string& whose, const Direction& towards, const ShearParts& parts,
                      const EdgeStrength& strength, Force R, const tables::HeadedInsertModel& model,
                      Trace& trace) {
  trace.add([&] {
    return Step{.words = fmt::format("edge breakout strength of {} against its shear, edge towards {}", whose,
                                     direction_in_words(towards)),
                .result = term_of(model, "R", R),
                .formula = "1 / sqrt((p / V_cb)^2 + (q / V_cb_par)^2)",
                .given = {term_of(model, "p", Ratio{parts.towards}), term_of(model, "V_cb", strength.towards),
                          term_of(model, "q", Ratio{parts.along}), term_of(model, "V_cb_par", strength.along)},
                .clause = model.en ? "EN 1992-4 (7.48)" : "ACI 318-19 17.7.2.1",
                .sources = {}};
  });
}

bool is_described_for_shear(const HeadedInsert& insert, Stress f_c) {
  return is_usable(insert.h_ef) && is_usable(insert.d_a) && is_usable(insert.lambda_a) &&
         is_usable(insert.site->thickness) && std::ranges::all_of(insert.edges.c, is_usable<Length>) &&
         is_usable(f_c);
}

NotAssessed not_described_for_shear(const HeadedInsert& insert) {
  return {fmt::format("insert {}, its edges or the concrete strength are not described by numbers above zero",
                      insert.id),
          {}};
}

ShearEdge edge_of(const HeadedInsert& insert, std::size_t direction) {
  const auto& c = insert.edges.c;
  const std::size_t beside = direction < 2 ? 2 : 0;
  return {.c_a1 = c[direction],
          .c_a2 = {c[beside], c[beside + 1]},
          .s = Length{},
          .s_max = Length{},
          .eccentricity = Length{},
          .h_a = insert.site->thickness,
          .h_ef = insert.h_ef,
          .d_a = insert.d_a,
          .lambda_a = insert.lambda_a,
          .cracked = insert.cracked};
}

}  // namespace firstpick::resistances
