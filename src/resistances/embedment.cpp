// The head of an insert must lie inside the concrete: its embedment against the concrete behind it.
//
//   h_ef < thickness
//
// Source   geometry. Nothing is assumed about the cover behind the head: that is for the drawing. An
//          embedment that is equal to the thickness passes the comparison, and every headed_insert formula
//          still refuses it.
// Inputs   thickness of the real solid behind the insert, to the first opening or face.

#include "resistances/embedment.hpp"

#include <cmath>

#include <fmt/format.h>

#include "resistances/mm_n_terms.hpp"
#include "resistances/usable.hpp"

namespace firstpick::resistances {

Outcome<Resistance<Length>> embedment_room(const plan::Insert& insert, const piece::InsertSite& site,
                                           const tables::HeadedInsertModel& model, Trace& trace) {
  if (!is_usable(site.thickness))
    return NotAssessed{fmt::format("the concrete behind insert {} has no usable thickness", insert.id), {}};
  trace.add([&] {
    return Step{.words = fmt::format("concrete behind insert {}", insert.id),
                .result = term_of(model, "t", site.thickness),
                .formula = {},
                .given = {},
                .clause = "geometry",
                .sources = {}};
  });
  return Resistance<Length>{site.thickness};
}

Outcome<Demand<Length>> embedment(const plan::Insert& insert) {
  if (!insert.embedment)
    return NotAssessed{fmt::format("insert {} has no embedment", insert.id),
                       "[[insert]] embedment = \"... in\""};
  if (!is_usable(*insert.embedment))
    return NotAssessed{fmt::format("the embedment of insert {} is not a number above zero", insert.id), {}};
  return Demand<Length>{*insert.embedment};
}

std::optional<NotAssessed> not_whole_below(const piece::InsertSite& site) {
  constexpr const char* elsewhere = "another place, where the concrete goes straight down from the edges of the face";
  if (!site.not_concrete)
    return NotAssessed{fmt::format("the concrete below the face of insert {} was not measured", site.insert), elsewhere};
  if (*site.not_concrete <= piece::whole_below) return {};
  return NotAssessed{fmt::format("the concrete below the face of insert {} is not whole: {:.0f} % of the body that would break "
                                 "out is void, or lies beyond sides that draw in",
                                 site.insert, std::ceil(100.0 * site.not_concrete->value())),
                     elsewhere};
}

}  // namespace firstpick::resistances
