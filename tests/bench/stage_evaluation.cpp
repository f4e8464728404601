// How many stages a second one core evaluates once the solid is built; without the sentences of what fails, which nobody
// reads here. Seconds are those of the processor, so that other work on the machine counts little.
//
//   anew             loads, statics, resistances, every rule, verdict; of a panel its finite elements too
//   another strength the question of `need` and of the board: the same stage in stronger or weaker concrete, every
//                    resistance and verdict again; what no strength changes (loads, statics, bending) is kept
//
//   stage_evaluation [SECONDS] [PLAN...]     at the top of the source tree; default 2 seconds each, the demo plans

#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "checks/evaluate.hpp"
#include "checks/needed_strength.hpp"
#include "piece/body.hpp"
#include "plan/read_plan.hpp"
#include "tables/tables.hpp"

using namespace firstpick;

namespace {

std::string contents(const std::string& file) {
  std::ifstream in(file);
  std::ostringstream text;
  text << in.rdbuf();
  return std::move(text).str();
}

// How often a second `evaluate` runs; it tells how many findings it had.
template <class Evaluate>
double a_second(double seconds, const Evaluate& evaluate) {
  const std::clock_t start = std::clock();
  std::size_t findings = 0;
  int count = 0;
  double elapsed_s = 0.0;
  while (elapsed_s < seconds) {
    for (int i = 0; i < 100; ++i) findings += evaluate(count++);
    elapsed_s = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
  }
  if (findings == 0) std::exit(2);
  return count / elapsed_s;
}

void run(const std::string& file, double seconds, const tables::Tables& tables) {
  const auto read = plan::read_plan(file, contents(file), tables);
  const auto* plan = std::get_if<plan::Plan>(&read);
  if (!plan) {
    std::printf("%-28s cannot be read\n", file.c_str());
    std::exit(2);
  }
  const auto made = piece::make_body(*plan);
  const auto& body = std::get<piece::Body>(made);
  const auto& rules = tables.rule_sets.at("us");
  Trace silent;
  const checks::Anchorage anchorage = checks::anchorage(*plan, body, rules, tables, silent);

  const auto facts_of = [&] {
    auto facts = checks::stage_facts(*plan, plan->stages.front(), body, anchorage, rules, tables, silent);
    facts.in_words = false;
    return facts;
  };
  const double anew = a_second(seconds, [&](int) { return checks::evaluate_stage(facts_of(), silent).findings.size(); });
  checks::StageFacts changed = facts_of();
  checks::KeptFindings kept;
  std::size_t findings = 0;
  const double again = a_second(seconds, [&](int i) {
    checks::set_strength(changed, (10.0 + i % 50) * MPa);
    return findings = checks::evaluate_stage(changed, silent, &kept).findings.size();
  });
  std::printf("%-28s anew %8.0f stages/s  %7.1f us each   another strength %8.0f stages/s  %5.1f us each   %zu findings\n",
              file.c_str(), anew, 1e6 / anew, again, 1e6 / again, findings);
}

}  // namespace

int main(int argc, char** argv) {
  const double seconds = argc > 1 ? std::atof(argv[1]) : 2.0;
  std::vector<std::string> plans(argv + std::min(argc, 2), argv + argc);
  if (plans.empty()) plans = {"docs/demo/manhole-base.toml", "docs/demo/wall-panel.toml", "docs/demo/box-culvert.toml"};
  const auto read = tables::read_tables("tables");
  const auto* tables = std::get_if<tables::Tables>(&read);
  if (!tables) {
    std::puts("run this at the top of the source tree");
    return 2;
  }
  for (const std::string& file : plans) run(file, seconds, *tables);
}
