// How long `firstpick layout` takes, of the demo or of plans named: seconds on the clock and of the processor.
//
//   layout [PLAN...]     at the top of the source tree

#include <chrono>
#include <cstdio>
#include <ctime>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "layout_pipeline.hpp"
#include "tables/tables.hpp"

using namespace firstpick;

int main(int argc, char** argv) {
  const auto read = tables::read_tables("tables");
  const auto* tables = std::get_if<tables::Tables>(&read);
  if (!tables) return 2;
  std::vector<std::string> files(argv + 1, argv + argc);
  if (files.empty()) files = {"docs/demo/layout/wall-panel.toml"};
  for (const std::string& file : files) {
    std::ifstream in(file);
    std::ostringstream text;
    text << in.rdbuf();
    const auto start = std::chrono::steady_clock::now();
    const std::clock_t cpu = std::clock();
    const auto answer = layout_of_plan(file, text.str(), {}, *tables);
    const double clock_s = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    const double cpu_s = static_cast<double>(std::clock() - cpu) / CLOCKS_PER_SEC;
    const auto* report = std::get_if<layout::LayoutReport>(&answer);
    if (!report) return 2;
    std::printf("%-40s %5.2f s, %5.2f s of the processor: %zu layouts judged, %zu in full\n", file.c_str(), clock_s, cpu_s,
                report->layouts_judged, report->layouts_checked_in_full);
  }
  return 0;
}
