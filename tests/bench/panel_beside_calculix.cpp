// A panel with three openings from its plan to the stress that is judged, and CalculiX (`ccx`), a general finite element
// program, on the same panel, to the same accuracy. Both are timed as whole programs, in seconds of the processor, so that
// other work on the machine counts little; the seconds of the clock are told beside them.
//
//   panel_beside_calculix PROGRAM [RUNS]     at the top of the source tree; PROGRAM: build/bin/firstpick
//
// Accuracy: the program refines until no moment changes by more than 2 %, after a change of no more than 4 %
// (docs/rules/piece-cracking.md), so that whoever reads the stress knows how good it is. CalculiX is timed for the same
// answer: three meshes of a series one after the other, each finer by the same step, whose moments stand still in the same
// sense and are within 2 % of the finest mesh of the series; of all such three the cheapest. Told beside it: the one run of
// the coarsest mesh that is within 2 % of the finest, which nobody knows beforehand.

#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

#include "checks/evaluate.hpp"
#include "piece/body.hpp"
#include "plan/read_plan.hpp"
#include "support/calculix_plate.hpp"
#include "tables/tables.hpp"

using namespace firstpick;

namespace {

constexpr const char* plan_file = "tests/bench/panel-with-three-openings.toml";
constexpr double target_ms = 60.0, target_ratio = 5.0, accuracy = 0.02;

struct Spent {
  double processor_ms = 0.0, clock_ms = 0.0;
};

double processor_ms_of(int who) {
  rusage used{};
  getrusage(who, &used);
  return 1e3 * static_cast<double>(used.ru_utime.tv_sec + used.ru_stime.tv_sec) +
         1e-3 * static_cast<double>(used.ru_utime.tv_usec + used.ru_stime.tv_usec);
}

// Of `work`, by this program or by those that it calls.
template <class Work>
Spent spent(int who, const Work& work) {
  const double before = processor_ms_of(who);
  const auto start = std::chrono::steady_clock::now();
  work();
  return {processor_ms_of(who) - before,
          std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count()};
}

Spent least(Spent a, const Spent& b) {
  return {std::min(a.processor_ms, b.processor_ms), std::min(a.clock_ms, b.clock_ms)};
}

// Inside one program, tables already read: plan, solid, statics, every rule. Gives the stress of piece-cracking.
double plan_to_stress_MPa(const tables::Tables& tables) {
  std::ifstream file(plan_file);
  std::ostringstream text;
  text << file.rdbuf();
  const auto read = plan::read_plan(plan_file, std::move(text).str(), tables);
  const auto& plan = std::get<plan::Plan>(read);
  const auto made = piece::make_body(plan);
  const auto& body = std::get<piece::Body>(made);
  const auto& rules = tables.rule_sets.at("us");
  Trace silent;
  const checks::Anchorage anchorage = checks::anchorage(plan, body, rules, tables, silent);
  const auto facts = checks::stage_facts(plan, plan.stages.front(), body, anchorage, rules, tables, silent);
  for (const auto& finding : checks::evaluate_stage(facts, silent).findings)
    if (finding.rule == "piece-cracking" && finding.demand) return in(MPa, std::get<Stress>(*finding.demand));
  std::printf("no stress was found\n");
  std::exit(2);
}

// The panel of the plan over its short side: 1 x 2.5, and its picks.
struct Panel {
  demands::PlateShape shape;
  std::vector<demands::PlatePoint> picks, places;
};

demands::PlateRing ring(double low_x, double low_y, double high_x, double high_y) {
  return {{low_x, low_y}, {high_x, low_y}, {high_x, high_y}, {low_x, high_y}};
}

Panel same_panel() {
  constexpr double side_m = 2.4;
  const auto window = [](double x) { return ring(x / side_m, 0.84 / side_m, (x + 0.72) / side_m, 1.56 / side_m); };
  Panel panel{{ring(0.0, 0.0, 2.5, 1.0), {window(0.72), window(2.64), window(4.56)}}, {}, {}};
  for (const double x : {1.80, 4.20})
    for (const double y : {0.50, 1.90}) panel.picks.push_back({x / side_m, y / side_m});
  panel.places = {{1.25, 0.0}, {1.25, 0.2}, {1.25, 1.0}, {1.25, 0.35}, {0.95, 0.5}, {0.45, 0.2}, {0.45, 0.35}};
  return panel;
}

struct Calculix {
  std::vector<double> moments;
  std::size_t triangles = 0;
  Spent spent;
};

Calculix calculix_at(const Panel& panel, double size, int runs) {
  std::vector<demands::PlatePoint> focus = panel.picks;
  focus.insert(focus.end(), panel.places.begin(), panel.places.end());
  const auto mesh = demands::plate_mesh(panel.shape, focus, size);
  if (!mesh) {
    std::printf("the panel could not be divided\n");
    std::exit(2);
  }
  const std::vector<int> held(mesh->focus_nodes.begin(),
                              mesh->focus_nodes.begin() + static_cast<std::ptrdiff_t>(panel.picks.size()));
  Calculix found{{}, mesh->triangles.size(), {1e300, 1e300}};
  for (int run = 0; run < runs; ++run)
    found.spent = least(found.spent, spent(RUSAGE_CHILDREN, [&] {
      const auto plate = tests::calculix_plate(*mesh, held, 0.2, 0.15 / 2.4, panel.places);
      if (!plate) {
        std::printf("ccx gave no result\n");
        std::exit(2);
      }
      found.moments = plate->M_x;
      found.moments.insert(found.moments.end(), plate->M_y.begin(), plate->M_y.end());
    }));
  return found;
}

double apart(const std::vector<double>& moments, const std::vector<double>& of_finest) {
  double most = 0.0, off = 0.0;
  for (std::size_t i = 0; i < moments.size(); ++i) {
    most = std::max(most, std::abs(of_finest[i]));
    off = std::max(off, std::abs(moments[i] - of_finest[i]));
  }
  return off / most;
}

struct Refined {
  std::size_t from = 0, to = 0;  // triangles
  double processor_ms = 0.0;
};

// Three meshes in a row whose moments stand still as the program asks of its own.
std::optional<Refined> cheapest_refined(const std::vector<Calculix>& series, const Calculix& finest) {
  std::optional<Refined> best;
  for (std::size_t i = 2; i < series.size(); ++i) {
    const bool still = apart(series[i - 2].moments, series[i - 1].moments) <= 2.0 * accuracy &&
                       apart(series[i - 1].moments, series[i].moments) <= accuracy;
    if (!still || apart(series[i].moments, finest.moments) > accuracy) continue;
    double sum = 0.0;
    for (std::size_t k = i - 2; k <= i; ++k) sum += series[k].spent.processor_ms;
    if (!best || sum < best->processor_ms) best = {series[i - 2].triangles, series[i].triangles, sum};
  }
  return best;
}

double load_of_machine() {
  double load[1] = {0.0};
  return getloadavg(load, 1) == 1 ? load[0] : -1.0;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 2) {
    std::printf("panel_beside_calculix PROGRAM [RUNS]\n");
    return 2;
  }
  const int runs = argc > 2 ? std::max(1, std::atoi(argv[2])) : 10;
  const auto read = tables::read_tables("tables");
  if (!std::holds_alternative<tables::Tables>(read)) {
    std::printf("the tables cannot be read: call it at the top of the source tree\n");
    return 2;
  }
  std::printf("%s, least of %d runs, load of the machine %.1f\n\n", plan_file, runs, load_of_machine());

  double stress_MPa = 0.0;
  Spent inside{1e300, 1e300}, whole{1e300, 1e300};
  const std::string command = std::string(argv[1]) + " check " + plan_file + " >/dev/null 2>&1";
  for (int run = 0; run < runs; ++run) {
    inside = least(inside, spent(RUSAGE_SELF, [&] { stress_MPa = plan_to_stress_MPa(std::get<tables::Tables>(read)); }));
    whole = least(whole, spent(RUSAGE_CHILDREN, [&] {
      if (const int status = std::system(command.c_str()); status < 0) std::exit(2);
    }));
  }
  std::printf("plan to stress (%.3f MPa), in the program  %7.1f ms of the processor %8.1f ms of the clock   %s\n", stress_MPa,
              inside.processor_ms, inside.clock_ms, inside.processor_ms < target_ms ? "under 60 ms" : "NOT under 60 ms");
  std::printf("the whole program, %s check   %7.1f ms of the processor %8.1f ms of the clock\n\n", argv[1],
              whole.processor_ms, whole.clock_ms);

  if (!tests::calculix_is_installed()) {
    std::printf("ccx is not installed: nothing to compare with\n");
    return 0;
  }
  const Panel panel = same_panel();
  const Calculix finest = calculix_at(panel, 0.02, 1);
  const Calculix* enough = nullptr;
  std::vector<Calculix> series;
  for (const double size : {0.9, 0.64, 0.452, 0.32, 0.226, 0.16, 0.113, 0.08, 0.057, 0.04}) series.push_back(calculix_at(panel, size, runs));
  for (const Calculix& one : series) {
    const double off = apart(one.moments, finest.moments);
    std::printf("ccx, %6zu triangles of six nodes: %5.1f %% off   %7.1f ms of the processor %8.1f ms of the clock\n",
                one.triangles, 100.0 * off, one.spent.processor_ms, one.spent.clock_ms);
    if (off > accuracy) enough = nullptr;
    else if (!enough) enough = &one;
  }
  if (!enough) {
    std::printf("no mesh of the series is within 2 %%\n");
    return 1;
  }
  const auto refined = cheapest_refined(series, finest);
  if (!refined) {
    std::printf("no three meshes of the series stand still to 2 %%\n");
    return 1;
  }
  const double ratio = refined->processor_ms / whole.processor_ms;
  std::printf("\nccx refined to the same accuracy, %zu to %zu triangles, %.1f ms: %.1f times as long as the whole program   %s\n",
              refined->from, refined->to, refined->processor_ms, ratio, ratio >= target_ratio ? "at least 5" : "NOT 5");
  std::printf("one run of ccx at %zu triangles, if one knew that it is enough: %.1f times as long\n", enough->triangles,
              enough->spent.processor_ms / whole.processor_ms);
  return 0;
}
