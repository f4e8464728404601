// How long an audit takes: 1,000 plans of 100 distinct pieces, on two threads; and the peak of memory.
//
//   bench_audit     at the top of the source tree. Wanted: under 20 s and 400 MiB.

#include <chrono>
#include <cstdio>
#include <fstream>
#include <sstream>
#include <string>

#include <sys/resource.h>

#include "audit_pipeline.hpp"
#include "output/audit.hpp"

using namespace firstpick;

namespace {

std::string contents(const std::string& file) {
  std::ifstream in(file);
  std::ostringstream text;
  text << in.rdbuf();
  return std::move(text).str();
}

std::vector<AuditFile> thousand_plans() {
  const char* plans[] = {"wall-panel", "manhole-base", "stair", "box-culvert", "round-lid"};
  std::vector<AuditFile> files;
  for (int i = 0; i < 1000; ++i) {
    std::string text = contents("docs/demo/" + std::string(plans[i % 5]) + ".toml");
    const std::string mark = "mark = \"";
    text.insert(text.find(mark) + mark.size(), std::to_string(i % 100) + "-");
    const std::string name = std::to_string(i) + ".toml";
    files.push_back({"plans/" + name, name, std::move(text)});
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
  const AuditQuestion question{.folder = "plans", .rules = {}, .made = "2026-03-04 08:00 +00:00", .now_s = 1772611200,
                               .offset_s = 0, .threads = 2, .files = thousand_plans(), .unread = {}};
  const auto began = std::chrono::steady_clock::now();
  const audit::Audit audit = make_audit(question, *tables, [](std::size_t, std::size_t) {});
  const std::size_t bytes = output::audit_html(audit).size();
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - began;
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  std::printf("%zu plans, page of %zu bytes: %.1f s, %ld MiB\n", audit.entries.size(), bytes, took.count(),
              usage.ru_maxrss / 1024);
  return 0;
}
