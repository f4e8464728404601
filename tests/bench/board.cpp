// How long the board of a shift takes: 120 pieces of 30 different plans with 30 different pours, waiting for their strength,
// so that each is judged and its prediction sought; and the peak of memory.
//
//   bench_board     at the top of the source tree. Exit status 1 where it takes 3 s or 300 MiB, or judges less than all.

#include <chrono>
#include <cstdio>
#include <fstream>
#include <map>
#include <sstream>
#include <string>

#include <sys/resource.h>

#include "board_pipeline.hpp"
#include "output/board_html.hpp"

using namespace firstpick;

namespace {

std::string contents(const std::string& file) {
  std::ifstream in(file);
  std::ostringstream text;
  text << in.rdbuf();
  return std::move(text).str();
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  return at == std::string::npos ? text : text.replace(at, from.size(), to);
}

// Thirty plans that differ, all without their own specimens, and thirty pours without any.
std::map<std::string, std::string> thirty_of_each() {
  const char* plans[] = {"wall-panel", "manhole-base", "stair", "box-culvert", "round-lid"};
  std::map<std::string, std::string> files{{"bay-2.csv", contents("docs/demo/strength/bay-2.csv")}};
  const std::string pour = contents("docs/demo/strength/wall-panel-bed-2.toml");
  for (int i = 0; i < 30; ++i) {
    const std::string number = std::to_string(i);
    std::string plan = replaced(contents("docs/demo/" + std::string(plans[i % 5]) + ".toml"), "title = \"",
                                "title = \"" + number + " ");
    if (const std::size_t at = plan.find("\n[concrete.evidence]"); at != std::string::npos)
      plan.erase(at, plan.find("\n[", at + 1) - at);
    files["plan-" + number + ".toml"] = plan;
    files["pour-" + number + ".toml"] =
        replaced(replaced(pour, "50 MPa", std::to_string(50 + i % 7) + " MPa"), "mark = \"",
                 "mark = \"" + number + " ");
  }
  return files;
}

}  // namespace

int main() {
  const auto read = tables::read_tables("tables");
  const auto* tables = std::get_if<tables::Tables>(&read);
  if (!tables) {
    std::puts("run this at the top of the source tree");
    return 2;
  }
  const auto files = thirty_of_each();
  std::string shift =
      "format = 1\nplant = \"Bench\"\nzone = \"America/New_York\"\nstarts = 2026-03-03T06:00:00\n"
      "ends = 2026-03-03T18:00:00\n";
  for (int i = 0; i < 120; ++i)
    shift += "[[piece]]\nplan = \"plan-" + std::to_string(i % 30) + ".toml\"\npour = \"pour-" +
             std::to_string(i % 30) + ".toml\"\ncast = 2026-03-02T16:30:00\nserials = \"S-" + std::to_string(i) + "\"\n";
  const auto start = std::chrono::steady_clock::now();
  const auto answer =
      make_board({"shift.toml", shift, "", {.seconds = 1772541900, .has_offset = true, .text = {}}}, *tables,
                 [&](const std::string& path) -> std::optional<std::string> {
                   const auto found = files.find(path);
                   if (found == files.end()) return {};
                   return found->second;
                 });
  const auto* board = std::get_if<board::Board>(&answer.board);
  if (!board) return 2;
  const std::size_t page_bytes = output::board_html(*board).size();
  const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
  std::size_t predicted = 0, checked = 0;
  for (const board::Line& line : board->lines) {
    predicted += line.judged.expected.kind == board::Expected::Kind::none ? 0U : 1U;
    checked += line.judged.checked ? 1U : 0U;
  }
  rusage used{};
  getrusage(RUSAGE_SELF, &used);
  std::printf("%zu lines, %zu checked, %zu with a prediction, page of %zu bytes: %.2f s, %ld MiB at most\n",
              board->lines.size(), checked, predicted, page_bytes, taken.count(), used.ru_maxrss / 1024);
  const bool all_judged = board->lines.size() == 120 && checked == 120 && predicted > 0;
  const bool within = taken.count() < 3.0 && used.ru_maxrss / 1024 < 300;
  if (!all_judged || !within) std::puts("not within 3 s and 300 MiB, or not all judged");
  return all_judged && within ? 0 : 1;
}
