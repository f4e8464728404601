#include "checks/modes_alone.hpp"

#include <array>

#include "checks/loaded_inserts.hpp"
#include "resistances/anchor_bars.hpp"
#include "resistances/breakout.hpp"
#include "resistances/edge_breakout.hpp"
#include "resistances/en_1992_4.hpp"
#include "resistances/pryout.hpp"
#include "resistances/pullout.hpp"
#include "resistances/side_blowout.hpp"
#include "resistances/steel_shear.hpp"
#include "resistances/steel_tension.hpp"

namespace firstpick::checks {

const NotAssessed* gap_in(Mode mode, const StageFacts& facts, std::size_t insert) {
  if (const auto* gap = std::get_if<NotAssessed>(&facts.anchorage.headed.at(insert))) return gap;
  if (mode == Mode::steel_tension || mode == Mode::steel_shear) return nullptr;
  return std::get_if<NotAssessed>(&facts.formula_strength);
}

NominalForce strength_alone(Mode mode, const StageFacts& facts, const InsertSituation& situation,
                            std::size_t insert, Trace& trace) {
  const std::array one{&headed(facts, insert)};
  const auto& model = facts.rules.headed;
  const auto f_c = [&] { return std::get<Stress>(facts.formula_strength); };  // which steel does not ask for
  const auto breakout = [&] {
    return resistances::breakout(one, facts.anchorage.areas, resistances::Eccentricity::none(), f_c(), model,
                                 trace);
  };
  switch (mode) {
    case Mode::steel_tension:
      return where_it_occurs(model.en ? resistances::en_steel_tension(*one.front(), trace)
                                      : resistances::steel_tension(*one.front(), trace));
    case Mode::steel_shear: return where_it_occurs(resistances::steel_shear(*one.front(), model, trace));
    case Mode::breakout:
      return where_it_occurs(one.front()->bars ? resistances::anchor_bars(*one.front(), f_c(), facts.rules, trace)
                                               : breakout());
    case Mode::pullout: return where_it_occurs(resistances::pullout(*one.front(), f_c(), model, trace));
    case Mode::side_blowout: return resistances::side_blowout(*one.front(), f_c(), model, trace);
    case Mode::pryout:
      return where_it_occurs(resistances::pryout_beside_bars(one, resistances::pryout(one, breakout(), model, trace),
                                                             facts.rules, trace));
    case Mode::edge_breakout: {
      const Direction shear = shear_direction(situation.forces.at(insert), *one.front()->site);
      return where_it_occurs(resistances::edge_breakout(*one.front(), shear, f_c(), model, trace));
    }
  }
  return NotAssessed{"this way to fail is not evaluated", {}};
}

std::vector<NominalForce> strengths_alone(Mode mode, const StageFacts& facts,
                                          const std::vector<InsertSituation>& situations,
                                          std::size_t insert) {
  if (situations.empty()) return {};
  Trace silent;
  if (mode != Mode::edge_breakout)
    return std::vector(situations.size(), strength_alone(mode, facts, situations.front(), insert, silent));

  const resistances::HeadedInsert& one = headed(facts, insert);
  const auto edges =
      resistances::edge_strengths(one, std::get<Stress>(facts.formula_strength), facts.rules.headed);
  if (const auto* gap = std::get_if<NotAssessed>(&edges))
    return std::vector<NominalForce>(situations.size(), *gap);
  std::vector<NominalForce> strengths;
  strengths.reserve(situations.size());
  for (const InsertSituation& situation : situations)
    strengths.push_back(
        where_it_occurs(resistances::edge_breakout(one, std::get<resistances::EdgeStrengths>(edges),
                                                   shear_direction(situation.forces.at(insert), *one.site))));
  return strengths;
}

Force demand_alone(Mode mode, const InsertSituation& situation, std::size_t insert) {
  const demands::InsertForce& force = situation.forces.at(insert);
  return in_tension(mode) ? force.tension : force.shear;
}

Direction shear_direction(const demands::InsertForce& force, const piece::InsertSite& site) {
  if (!(force.shear > Force{})) return site.u;
  return (force.shear_u / force.shear).value() * site.u + (force.shear_v / force.shear).value() * site.v;
}

}  // namespace firstpick::checks
