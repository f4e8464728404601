// How many stages a second one core evaluates once the solid is built: loads, statics, resistances, every rule, verdict;
// without the sentences of what fails, which nobody reads here. Seconds are those of the processor, so that other work
// on the machine counts little.
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

  const std::clock_t start = std::clock();
  std::size_t count = 0;
  std::size_t findings = 0;
  double elapsed_s = 0.0;
  while (elapsed_s < seconds) {
    for (int i = 0; i < 100; ++i) {
      auto facts = checks::stage_facts(*plan, plan->stages.front(), body, anchorage, rules, tables, silent);
      facts.in_words = false;
      findings += checks::evaluate_stage(facts, silent).findings.size();
      ++count;
    }
    elapsed_s = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
  }
  std::printf("%-28s %8.0f stages/s  %6.1f us each  %zu findings each\n", file.c_str(),
              static_cast<double>(count) / elapsed_s, 1e6 * elapsed_s / static_cast<double>(count), findings / count);
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
