#include "demands/panel_readings.hpp"

#include <algorithm>
#include <cmath>

#include "demands/panel_supports.hpp"

namespace firstpick::demands {

namespace {

// Largest principal moments of both signs.
void look_at(PanelFound& found, const PlateMoments& moments, const PlatePoint& p, bool top_counts) {
  const double middle = 0.5 * (moments[0] + moments[1]);
  const double reach = std::hypot(0.5 * (moments[0] - moments[1]), moments[2]);
  found.bottom.look(middle + reach, p);
  if (top_counts) found.top.look(reach - middle, p);
}

double radius_m(const Panel& panel) { return 0.5 * in(m, panel.patch); }
double across_x_m(const Panel& panel, const FlatPanel& flat) {
  return std::min(in(m, panel.strip), 0.5 * (flat.high_x_m - flat.low_x_m));
}
double across_y_m(const Panel& panel, const FlatPanel& flat) {
  return std::min(in(m, panel.strip), 0.5 * (flat.high_y_m - flat.low_y_m));
}

std::vector<PlatePoint> picks_of(const PanelLoad& load) {
  std::vector<PlatePoint> picks;
  for (const PanelForce& force : load.forces)
    if (force.is_pick) picks.push_back(plate_point(force.at));
  return picks;
}

bool is_at_pick(const std::vector<PlatePoint>& picks, const PlatePoint& p, const Panel& panel) {
  return std::ranges::any_of(
      picks, [&](const PlatePoint& pick) { return distance_m(pick, p) < 2.0 * radius_m(panel); });
}

}  // namespace

void PanelMost::look(double moment, const PlatePoint& p) {
  if (moment > value || std::isnan(moment)) value = moment, at = p;
}

PanelReadings force_readings(const Panel& panel, const FlatPanel& flat, const PlateGrid& grid) {
  PanelReadings made;
  for (const PlatePoint& p : flat.reading) made.discs.push_back(grid.disc_mean(p, radius_m(panel)));
  return made;
}

PanelReadings moment_readings(const Panel& panel, const FlatPanel& flat, const PlateGrid& grid) {
  PanelReadings made = force_readings(panel, flat, grid);
  for (const PlatePoint& p : flat.focus) {
    auto& strips = made.strips.emplace_back();
    for (std::size_t i = 0; i < PanelReadings::beside.size(); ++i) {
      const double off = PanelReadings::beside[i] * radius_m(panel);
      strips[0][i] = grid.line_mean({p.x_m + off, p.y_m}, false, across_y_m(panel, flat));
      strips[1][i] = grid.line_mean({p.x_m, p.y_m + off}, true, across_x_m(panel, flat));
    }
  }
  return made;
}

PanelMost read_membrane(const Panel& panel, const PanelLoad& load, const FlatPanel& flat,
                        const PanelReadings& readings, const MembraneSolution& solution) {
  const auto picks = picks_of(load);
  PanelMost most;
  for (std::size_t i = 0; i < flat.reading.size(); ++i) {
    if (is_at_pick(picks, flat.reading[i], panel)) continue;
    if (const auto n = solution.mean(readings.discs[i]))
      most.look(0.5 * ((*n)[0] + (*n)[1]) + std::hypot(0.5 * ((*n)[0] - (*n)[1]), (*n)[2]), flat.reading[i]);
  }
  return most;
}

PanelFound read_moments(const Panel& panel, const PanelLoad& load, const FlatPanel& flat,
                        const PanelReadings& readings, const PlateSolution& solution) {
  const double half_x_m = 0.5 * across_x_m(panel, flat), half_y_m = 0.5 * across_y_m(panel, flat);
  const auto picks = picks_of(load);
  PanelFound found;
  for (std::size_t i = 0; i < flat.reading.size(); ++i) {
    const PlatePoint& p = flat.reading[i];
    if (is_at_pick(picks, p, panel)) continue;
    const bool near_pick = std::ranges::any_of(picks, [&](const PlatePoint& pick) {
      return std::abs(p.x_m - pick.x_m) <= half_x_m && std::abs(p.y_m - pick.y_m) <= half_y_m;
    });
    if (const auto moments = solution.mean(readings.discs[i])) look_at(found, *moments, p, !near_pick);
  }
  for (const PlatePoint& pick : picks)
    for (std::size_t axis = 0; axis < 2; ++axis)
      for (const PlateMean& strip : readings.strips[flat.focus_of(pick)][axis])
        if (const auto moments = solution.mean(strip)) {
          found.top.look(-(*moments)[axis], pick);
          found.bottom.look((*moments)[axis], pick);
        }
  return found;
}

}  // namespace firstpick::demands
