#include "loads/wind.hpp"

#include <cmath>

#include "loads/weight.hpp"
#include "piece/side_area.hpp"

namespace firstpick::loads {

namespace {

struct Terms {
  Density air{};
  Speed speed{};
  Ratio coefficient{};
  Stress pressure{};
  Area side{};
  Force least{};
};

void record(const WindLoad& wind, const Terms& terms, const plan::Stage& stage, const tables::Wind& table, Trace& trace) {
  const double phi = wind.lean.value();
  trace.add([&] {
    return Step{.words = "pressure of the wind", .result = {"q_w", in(kPa, terms.pressure), "kPa"},
                .formula = "rho_air * v_w * v_w / 2000",
                .given = {{"rho_air", in(kg_per_m3, terms.air), "kg/m3"}, {"v_w", in(m_per_s, terms.speed), "m/s"}},
                .sources = {table.air_density.source}};
  });
  trace.add([&] {
    Step step{.words = "force of the wind on the side of the piece", .result = {"F_w", in(kN, wind.force), "kN"},
              .formula = "c_w * q_w * A_w",
              .given = {{"c_w", terms.coefficient.value(), "1"},
                        {"q_w", in(kPa, terms.pressure), "kPa"},
                        {"A_w", in(m2, terms.side), "m2"}}};
    if (stage.wind_coefficient) step.clause = "c_w of the plan";
    else step.sources = {table.coefficient.source};
    return step;
  });
  trace.add([&] {
    return Step{.words = "lean of the hook line in a steady wind", .result = {"tan_theta_wind", std::tan(phi), "1"},
                .formula = "F_w / W_least",
                .given = {{"F_w", in(kN, wind.force), "kN"}, {"W_least", in(kN, terms.least), "kN"}},
                .clause = "statics"};
  });
  trace.add([&] {
    return Step{.words = "pull of the piece in a gust, over its weight", .result = {"k_w", wind.factor.value(), "1"},
                .formula = "(3 - 2 * cos(theta_wind)) / cos(theta_wind)",
                .given = {{"theta_wind", phi, "rad"}},
                .clause = "energy of a pendulum"};
  });
}

}  // namespace

Outcome<WindLoad> wind_load(const plan::Plan& plan, const plan::Stage& stage, const piece::Body& body,
                            const Direction& up, const tables::Tables& tables, Trace& trace) {
  if (!stage.wind_speed || !tables.wind) return NotAssessed{"no wind is known", "[[stage]] wind_speed = \"9 m/s\""};
  Terms terms{.air = tables.wind->air_density.value,
              .speed = *stage.wind_speed,
              .coefficient = stage.wind_coefficient.value_or(tables.wind->coefficient.value)};
  if (!(terms.speed >= Speed{}) || !is_finite(terms.speed) || !(terms.coefficient > Ratio{}) ||
      !is_finite(terms.coefficient) || !(terms.air > Density{}))
    return NotAssessed{"the speed of the wind or its coefficient is not a usable number", "wind_speed, zero or more"};
  const auto side = piece::side_area(body, up);
  if (const auto* gap = std::get_if<NotAssessed>(&side)) return *gap;
  const auto least = least_weight(plan, body);
  if (const auto* gap = std::get_if<NotAssessed>(&least)) return *gap;
  terms.side = std::get<piece::SideArea>(side).area;
  terms.least = std::get<Force>(least);
  if (!(terms.least > Force{}) || !is_finite(terms.least)) return NotAssessed{"the piece has no least weight", {}};
  terms.pressure = Stress{terms.air * terms.speed * terms.speed / 2.0};

  WindLoad wind;
  wind.force = terms.coefficient * terms.pressure * terms.side;
  const double phi = std::atan((wind.force / terms.least).value());
  wind.lean = phi * radian;
  wind.swing = 2.0 * phi * radian;
  wind.factor = Ratio{(3.0 - 2.0 * std::cos(phi)) / std::cos(phi)};
  wind.above = dot(up, std::get<piece::SideArea>(side).centre - body.centroid);
  if (!is_finite(wind.force) || !is_finite(wind.factor) || !is_finite(wind.above))
    return NotAssessed{"the force of the wind is not a usable number", {}};
  record(wind, terms, stage, *tables.wind, trace);
  return wind;
}

LoadSet in_wind(const LoadSet& set, const WindLoad& wind, const Direction& up) {
  LoadSet blown{set.name + " in wind", set.loads, wind.factor * set.total};
  for (AppliedLoad& load : blown.loads) {
    load.at = load.at + up * wind.above;
    load.force = wind.factor * load.force;
  }
  return blown;
}

}  // namespace firstpick::loads
