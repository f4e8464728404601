// Inputs that a fuzzer once found or that a person thought of, and good plans with bytes changed by fixed seed, through the
// functions that the open-ended fuzzers call. A crash, an abort or a sanitizer's complaint ends the program.
//
// tests/CMakeLists.txt compiles each fuzz_*.cpp once more for this program, its entry point under the name of its file.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <vector>

extern "C" int fuzz_quantity(const std::uint8_t* data, std::size_t size);
extern "C" int fuzz_plan(const std::uint8_t* data, std::size_t size);
extern "C" int fuzz_temperature_log(const std::uint8_t* data, std::size_t size);
extern "C" int fuzz_strength_file(const std::uint8_t* data, std::size_t size);
extern "C" int fuzz_shift_file(const std::uint8_t* data, std::size_t size);

namespace {

namespace fs = std::filesystem;
using Target = int (*)(const std::uint8_t*, std::size_t);

std::vector<std::string> files_in(const fs::path& folder) {
  std::vector<std::string> files;
  for (const fs::directory_entry& entry : fs::directory_iterator(folder))
    if (entry.is_regular_file()) files.push_back(entry.path().generic_string());
  std::ranges::sort(files);
  return files;
}

std::string contents_of(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  REQUIRE(in);
  return text.str();
}

int run(Target target, const std::string& input) {
  return target(reinterpret_cast<const std::uint8_t*>(input.data()), input.size());
}

void replay(Target target, const std::string& folder) {
  const auto files = files_in(folder);
  REQUIRE_FALSE(files.empty());
  for (const std::string& file : files) {
    CAPTURE(file);
    CHECK(run(target, contents_of(file)) == 0);
  }
}

// One to four places of `text` changed: a byte replaced, left out or doubled, a bit turned, a piece moved.
std::string spoilt(std::string text, std::mt19937_64& random) {
  const auto below = [&](std::size_t n) { return static_cast<std::size_t>(random() % std::max<std::size_t>(n, 1)); };
  for (std::size_t change = 0, changes = 1 + below(4); change < changes && !text.empty(); ++change) {
    const std::size_t at = below(text.size());
    switch (below(5)) {
      case 0: text[at] = static_cast<char>(random()); break;
      case 1: text.erase(at, 1 + below(12)); break;
      case 2: text.insert(at, text.substr(below(text.size()), 1 + below(40))); break;
      case 3: text[at] = static_cast<char>(text[at] ^ (1 << below(8))); break;
      default: text.insert(at, 1 + below(3), "\"[]{}=.,'\\\n#0-e"[below(15)]); break;
    }
  }
  return text;
}

}  // namespace

TEST_CASE("the collected quantities") { replay(fuzz_quantity, "tests/fuzz/corpus/quantity"); }

TEST_CASE("the collected plans") { replay(fuzz_plan, "tests/fuzz/corpus/plan"); }

TEST_CASE("the collected temperature logs") { replay(fuzz_temperature_log, "tests/fuzz/corpus/temperature_log"); }

TEST_CASE("the collected strength files") { replay(fuzz_strength_file, "tests/fuzz/corpus/strength_file"); }

TEST_CASE("good logs and strength files with bytes changed") {
  std::mt19937_64 random(20260303);
  for (const std::string& file : files_in("docs/demo/strength")) {
    const Target target = file.ends_with(".csv") ? fuzz_temperature_log : fuzz_strength_file;
    const std::string good = contents_of(file);
    REQUIRE(run(target, good) == 0);
    for (int i = 0; i < 600; ++i) {
      const std::string input = spoilt(good, random);
      CAPTURE(file, i);
      CHECK(run(target, input) == 0);
    }
  }
}

TEST_CASE("good plans with bytes changed") {
  std::mt19937_64 random(20260303);  // fixed seed: the same plans on every run
  for (const std::string& file : files_in("docs/demo")) {
    if (!file.ends_with(".toml")) continue;
    const std::string plan = contents_of(file);
    REQUIRE(run(fuzz_plan, plan) == 0);
    for (int i = 0; i < 400; ++i) {
      const std::string input = spoilt(plan, random);
      CAPTURE(file, i);
      CHECK(run(fuzz_plan, input) == 0);
    }
  }
}

TEST_CASE("a good shift file with bytes changed") {
  std::mt19937_64 random(20260303);
  const std::string good = contents_of("docs/demo/shift.toml");
  REQUIRE(run(fuzz_shift_file, good) == 0);
  for (int i = 0; i < 600; ++i) {
    const std::string input = spoilt(good, random);
    CAPTURE(i);
    CHECK(run(fuzz_shift_file, input) == 0);
  }
}

TEST_CASE("good quantities with bytes changed") {
  std::mt19937_64 random(20260303);
  for (const char* good : {"8 ft 4 1/2 in", "2.1 m", "2500 psi", "19.2 kip", "150 lb/ft3", "3 %", "60 deg", "14 h 30 min"})
    for (int i = 0; i < 500; ++i) {
      const std::string input = spoilt(good, random);
      CAPTURE(input);
      CHECK(run(fuzz_quantity, input) == 0);
    }
}
