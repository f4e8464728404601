// Characteristic resistances of headed fasteners by EN 1992-4:2018, the second model of HeadedInsertModel: called by the
// rules' own functions (breakout, pullout, ...) where the rule set names it. One file a resistance.
//
// `model.en` is there in every call. f_ck: cylinder strength for the formulas. The standard is written for fasteners in
// structures and leaves lifting inserts to a technical report; its range, cracks and edges as in the files.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "resistances/breakout.hpp"
#include "resistances/headed_insert.hpp"
#include "resistances/shear_breakout.hpp"

namespace firstpick::resistances {

Outcome<Resistance<Force>> en_steel_tension(const HeadedInsert& insert, Trace& trace);           // N_Rk,s
Outcome<Resistance<Force>> en_steel_shear(const HeadedInsert& insert, const tables::En1992HeadedModel& en,
                                          Trace& trace);                                         // V_Rk,s
Outcome<Resistance<Force>> en_breakout(Group group, ProjectedAreas& areas, const Eccentricity& eccentricity,
                                       Stress f_ck, const tables::HeadedInsertModel& model,
                                       Trace& trace);                                            // N_Rk,c
Outcome<Resistance<Force>> en_pullout(const HeadedInsert& insert, Stress f_ck,
                                      const tables::En1992HeadedModel& en, Trace& trace);        // N_Rk,p
Outcome<Resistance<Force>> en_pryout(Group group, Force N_Rk_c, const tables::En1992HeadedModel& en,
                                     Trace& trace);                                              // V_Rk,cp
EdgeStrength en_shear_breakout(const ShearEdge& edge, Stress f_ck, const tables::HeadedInsertModel& model,
                               Trace& trace);                                                    // V_Rk,c

// N0_Rk,c: one fastener far from edges.
Force en_basic_cone(Length h_ef, bool cracked, Stress f_ck, const tables::En1992HeadedModel& en, Trace& trace);

// N_Rk,cb: empty where c_1 > 0.5 h_ef, so that the side does not blow out. Of one insert the least of its edges.
Outcome<std::optional<Resistance<Force>>> en_side_blowout(const HeadedInsert& insert, Stress f_ck,
                                                          const tables::HeadedInsertModel& model, Trace& trace);
// `eccentricity`: along the edge, from the middle of the row to the resultant of its tensions.
Outcome<std::optional<Resistance<Force>>> en_side_blowout(Group row, const Direction& towards,
                                                          Length eccentricity, Stress f_ck,
                                                          const tables::HeadedInsertModel& model, Trace& trace);

// Tension and shear at once, each number a share of a design resistance.
Ratio en_steel_interaction(Ratio tension, Ratio shear, const tables::En1992HeadedModel& en, Trace& trace);
Ratio en_concrete_interaction(Ratio tension, Ratio shear, const tables::HeadedInsertModel& model, Trace& trace);
// Where bars hold the tension alone.
Ratio en_interaction_beside_bars(Ratio tension, Ratio shear, const Sourced<Ratio>& power, Trace& trace);

// The factor between a characteristic and a design resistance.
struct PartialFactor {
  Ratio value{};
  std::string symbol, clause;
  std::vector<Source> sources;
};
PartialFactor partial_factor_of_concrete(const tables::En1992HeadedModel& en, Trace& trace);  // gamma_Mc
PartialFactor partial_factor_of_steel_tension(const HeadedInsert& insert, const tables::En1992HeadedModel& en,
                                              Trace& trace);                                  // gamma_Ms
PartialFactor partial_factor_of_steel_shear(const HeadedInsert& insert, const tables::En1992HeadedModel& en,
                                            Trace& trace);

}  // namespace firstpick::resistances
