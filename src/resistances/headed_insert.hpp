// A headed cast-in insert with everything its formulas need, present and usable: no formula has to ask again.
#pragma once

#include <array>
#include <optional>
#include <string>

#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "record/trace.hpp"
#include "tables/tables.hpp"
#include "units/vector.hpp"

namespace firstpick::resistances {

// The directions +u, -u, +v, -v of a face, in this order wherever four numbers stand for them.
struct EdgeDistances {
  std::array<Length, 4> c;  // to the edge in each direction, see edge_distances()
  Length nearest;           // to the nearest point of any edge: c_a,min
};

struct HeadedInsert {
  std::string id;
  Length h_ef, d_a;               // effective embedment below `site`, shank diameter
  Area A_brg, A_se;               // bearing area of the head, steel area of the shank
  Stress f_uta;                   // steel strength the formulas credit: min(futa, 1.9 fya, cap) of ACI 318, else futa
  bool stud;                      // welded headed stud; else a bolt: steel shear differs
  bool cracked;                   // concrete counted as cracked at the insert
  Ratio lambda_a;                 // lightweight concrete
  const piece::InsertSite* site;  // of the Body, which must outlive this; flat, with an outline; perhaps inside a curved face
  Position at;                    // in piece axes
  EdgeDistances edges;            // in the axes of `site`
  Stress f_ya{};                  // yield strength of the steel: partial factors of EN 1992-4
  std::optional<plan::AnchorBars> bars{};  // that hold the body of concrete; as the plan has them, perhaps not whole
};

// Not assessed, with the line to write: a key of the insert or [concrete] cracked that the plan does not
// give, a bolt of which it does not say whether it has a thread, a value that is not finite and above zero, a steel or concrete that the tables do not hold, a
// curved face without a flat one inside the concrete (round_face.cpp), a head that is not inside the concrete (rule insert-embedment), another kind of insert.
Outcome<HeadedInsert> headed_insert(const plan::Insert& insert, const piece::InsertSite& site,
                                    const plan::Concrete& concrete, const tables::RuleSet& rules,
                                    const tables::Tables& tables, Trace& trace);

}  // namespace firstpick::resistances
