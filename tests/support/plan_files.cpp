#include "support/plan_files.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>

#include <catch2/catch.hpp>

#include "sign_off_beside.hpp"

namespace firstpick::tests {

namespace {

namespace fs = std::filesystem;

std::vector<std::string> plans_in(const fs::path& folder) {
  std::vector<std::string> files;
  for (const fs::directory_entry& entry : fs::directory_iterator(folder))
    if (entry.path().extension() == ".toml" && !is_sign_off_file(entry.path().generic_string()))
      files.push_back(entry.path().generic_string());
  std::ranges::sort(files);
  return files;
}

std::string shown(const std::vector<Diagnostic>& faults, std::string_view text) {
  std::string all;
  for (const Diagnostic& fault : faults) all += show(fault, text);
  return all;
}

}  // namespace

const tables::Tables& real_tables() {
  static const tables::Tables tables = [] {
    auto read = tables::read_tables("tables");
    if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&read))
      throw std::runtime_error("the tables of the repository are faulty:\n" + shown(*faults, {}));
    return std::move(std::get<tables::Tables>(read));
  }();
  return tables;
}

std::string contents_of(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  if (!in) FAIL("cannot read " << file);
  return text.str();
}

std::vector<std::string> demo_plans() {
  std::vector<std::string> plans = plans_in("docs/demo");
  std::erase(plans, "docs/demo/shift.toml");  // names plans, and is none
  return plans;
}
std::vector<std::string> test_plans(const std::string& folder) { return plans_in(fs::path("tests/plans") / folder); }

std::vector<std::string> all_plans() {
  std::vector<std::string> all = demo_plans();
  for (const char* folder : {"ok", "hold", "nogo"})
    for (std::string& file : test_plans(folder)) all.push_back(std::move(file));
  return all;
}

checks::Report report_on(const std::string& file, std::string_view text) {
  auto answer = check_plan(file, text, "", real_tables(), sign_off_beside(file));
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&answer)) FAIL(shown(*faults, text));
  return std::move(std::get<checks::Report>(answer));
}

checks::Report report_on(const std::string& file) { return report_on(file, contents_of(file)); }

CheckedPlan checked_plan(const std::string& file) {
  const std::string text = contents_of(file);
  auto answer = check_plan_whole(file, text, "", real_tables(), sign_off_beside(file));
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&answer)) FAIL(shown(*faults, text));
  return std::move(std::get<CheckedPlan>(answer));
}

Answered answer_to(std::string_view text) { return check_plan("plan.toml", text, "", real_tables()); }

}  // namespace firstpick::tests
