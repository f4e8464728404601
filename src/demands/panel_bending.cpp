#include "demands/panel_bending.hpp"

#include <algorithm>
#include <cmath>
#include <future>
#include <memory>
#include <numeric>
#include <optional>

#include "demands/panel_flat.hpp"
#include "demands/panel_meshes.hpp"
#include "demands/panel_readings.hpp"
#include "demands/panel_sums.hpp"

namespace firstpick::demands {

namespace {

std::optional<NotAssessed> refusal(const Panel& panel, const FlatPanel& flat) {
  if (panel.in_plane && (!(panel.thickness > Length{}) || !is_finite(panel.thickness)))
    return NotAssessed{"the thickness of the panel is not a usable number", {}};
  const auto has_forces = [](const PanelLoad& load) { return !load.forces.empty(); };
  if (panel.outer.size() < 3 || flat.focus.empty() || std::ranges::none_of(panel.loads, has_forces))
    return NotAssessed{"the panel has no outline or no pick", {}};
  if (!(panel.poisson.value() >= 0.0 && panel.poisson.value() < 0.5) || !(panel.patch > Length{}) ||
      !(panel.strip > Length{}) || !is_finite(panel.patch) || !is_finite(panel.strip))
    return NotAssessed{"a number of the panel is not usable", {}};
  for (const PanelLoad& load : panel.loads) {
    const PanelSums sum = panel_sums(load, flat, panel.in_plane);
    if (!std::isfinite(sum.level)) return NotAssessed{"a force on the panel is not a usable number", {}};
    // About the first pick: the pick's own force has no part in it, and no far origin blurs it.
    const double most_turning = panel_turning_within * sum.size * flat.length_m();
    const double off_x = sum.about_x - sum.down * flat.focus.front().x_m;
    const double off_y = sum.about_y - sum.down * flat.focus.front().y_m;
    if (panel.in_plane && !(std::hypot(sum.along_x, sum.along_y) <= panel_turning_within * sum.size))
      return NotAssessed{"the forces along the panel do not balance", {}};
    if (!(std::abs(sum.down) <= panel_loads_within * sum.size && std::abs(off_x) <= most_turning &&
          std::abs(off_y) <= most_turning))
      return NotAssessed{"the forces on the panel do not balance", {}};
  }
  for (const PlatePoint& p : flat.focus)
    if (!is_on_panel(flat.shape, p)) return NotAssessed{"a force acts beside the panel or in an opening", {}};
  return {};
}

// Of the moments from one mesh to the next, relative to the larger one.
double change(const PanelFound& a, const PanelFound& b) {
  const double scale = std::max(b.bottom.value, b.top.value);
  return std::max(std::abs(a.bottom.value - b.bottom.value), std::abs(a.top.value - b.top.value)) / scale;
}

// With what is left to come if each further mesh changed the moments by `PanelMeshes::finer` of the change before.
PanelBending bending_of(const PanelFound& found, double changed, const PlateMesh& mesh) {
  const double left = left_after(changed, PanelMeshes::finer);
  const auto with_error = [&](const PanelMost& most) {
    return PanelMoment{
        PlateMoment::from_value(most.value + left * std::max(found.bottom.value, found.top.value)),
        {most.at.x_m * m, most.at.y_m * m}};
  };
  return {with_error(found.bottom), with_error(found.top), left, static_cast<int>(mesh.nodes.size())};
}

// Each of these loads on its own; nothing where one could not be solved. Half of them on another core.
std::optional<std::vector<PanelFound>> found_of(const MeshedPanel& meshed, const PanelMembrane* along,
                                                const Panel& panel, const std::vector<std::size_t>& which) {
  std::vector<std::optional<PanelFound>> each(which.size());
  const auto find = [&](std::size_t from, std::size_t to) {
    for (std::size_t k = from; k < to; ++k) each[k] = meshed.found(panel, panel.loads[which[k]], along);
  };
  const std::size_t half = which.size() / 2;
  std::future<void> beside;
  if (half > 0) beside = std::async(std::launch::async, [&] { find(0, half); });
  find(half, which.size());
  if (beside.valid()) beside.get();
  std::vector<PanelFound> all;
  for (const auto& one : each) {
    if (!one) return {};
    all.push_back(*one);
  }
  return all;
}

double larger(const PanelFound& found) { return std::max(found.bottom.value, found.top.value); }

// Which loads are worth a finer mesh: all, or of a turn the worst.
std::vector<std::size_t> worth_refining(const Panel& panel, const std::vector<PanelFound>& rough) {
  std::vector<std::size_t> order(rough.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  if (!panel.in_plane || rough.size() <= most_refined) return order;
  std::ranges::stable_sort(order,
                           [&](std::size_t a, std::size_t b) { return larger(rough[a]) > larger(rough[b]); });
  order.resize(most_refined);
  return order;
}

// Of every load: as refined, or as on the first mesh, raised as much as the worst of the refined ones was.
std::vector<PanelBending> of_all(const std::vector<PanelFound>& rough,
                                 const std::vector<std::size_t>& refined,
                                 const std::vector<PanelBending>& bent) {
  double raised = 1.0;
  for (std::size_t k = 0; k < refined.size(); ++k)
    raised = std::max(raised, std::max(bent[k].bottom_tension.moment, bent[k].top_tension.moment).value() /
                                  larger(rough[refined[k]]));
  std::vector<PanelBending> all;
  for (std::size_t i = 0; i < rough.size(); ++i) {
    const auto place = std::ranges::find(refined, i);
    if (place != refined.end()) {
      all.push_back(bent[static_cast<std::size_t>(place - refined.begin())]);
      continue;
    }
    const auto moment = [&](const PanelMost& most) {
      return PanelMoment{PlateMoment::from_value(raised * most.value), {most.at.x_m * m, most.at.y_m * m}};
    };
    all.push_back({moment(rough[i].bottom), moment(rough[i].top), bent.front().error, bent.front().nodes});
  }
  return all;
}

}  // namespace

Outcome<std::vector<PanelBending>> panel_bending(const Panel& panel) {
  const std::shared_ptr<const PanelMeshes> meshes = PanelMeshes::of(panel);
  std::shared_ptr<const PanelMeshes> along_it;  // meshed at the places of its own forces alone
  if (panel.in_plane) {
    Panel own = panel;
    own.meshed_at.clear();
    along_it = PanelMeshes::of(own);
  }
  if (auto refused = refusal(panel, meshes->flat())) return *std::move(refused);

  // Two changes in a row must be small, so that no chance agreement of coarse meshes is taken for accuracy.
  std::vector<PanelFound> rough, before;
  std::vector<std::size_t> refined(panel.loads.size());
  std::iota(refined.begin(), refined.end(), std::size_t{0});
  bool calm_before = false;
  for (std::size_t i = 0; i < PanelMeshes::count; ++i) {
    const MeshedPanel* const mesh = meshes->mesh(i);
    if (!mesh) continue;
    const MeshedPanel& meshed = *mesh;
    const PanelMembrane* const along = along_it ? along_it->membrane(i) : nullptr;
    if (along_it && !along) continue;
    if (!std::ranges::all_of(panel.loads,
                             [&](const PanelLoad& load) { return meshed.rests_on_edge(panel, load, along); }))
      return NotAssessed{"the panel would not rest on its edge all along",
                         "legs that bring the hook over the middle of the edge"};
    auto all_found = found_of(meshed, along, panel, refined);
    if (!all_found) continue;
    std::vector<PanelFound>& found = *all_found;
    if (rough.empty()) {
      rough = found;
      refined = worth_refining(panel, rough);
      found.clear();
      for (const std::size_t load : refined) found.push_back(rough[load]);
    }

    std::vector<double> changed(found.size(), 1.0);
    if (!before.empty())
      for (std::size_t k = 0; k < found.size(); ++k) changed[k] = change(before[k], found[k]);
    const auto all_within = [&](double share) {  // what is not a number is not
      return std::ranges::all_of(changed, [&](double each) { return each <= share; });
    };
    if (calm_before && all_within(panel_accuracy)) {
      std::vector<PanelBending> bent;
      for (std::size_t k = 0; k < found.size(); ++k)
        bent.push_back(bending_of(found[k], changed[k], meshed.mesh()));
      return of_all(rough, refined, bent);
    }
    before = std::move(found);
    calm_before = all_within(2.0 * panel_accuracy);
  }
  return NotAssessed{"the bending of the panel could not be computed to 2 %",
                     "check the outline for corners or openings that nearly touch"};
}

}  // namespace firstpick::demands
