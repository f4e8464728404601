// Damaged tables are told or read, never a crash and never half read. Bytes are changed by a fixed seed.

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <random>
#include <string>
#include <vector>

#include "tables/toml_file.hpp"
#include "unit/tables/written_tables.hpp"

using namespace firstpick;
using namespace firstpick::tables;

namespace {

// Bytes that mean something to a reader of TOML or of UTF-8, as often as any other.
std::string damaged(std::string text, std::mt19937& random) {
  static const std::string pointed = "[]{}\"'=.,#\n\r\t\\ -_0x\xC3\xA9\xEF\xBB\xBE\x80\xFF";
  const auto below = [&](std::size_t n) { return static_cast<std::size_t>(random() % n); };
  const std::size_t changes = 1 + below(4);
  for (std::size_t i = 0; i < changes && !text.empty(); ++i) {
    const char c = below(2) == 0 ? pointed[below(pointed.size())] : static_cast<char>(below(256));
    const std::size_t at = below(text.size());
    switch (below(5)) {
      case 0: text[at] = c; break;
      case 1: text.insert(at, 1 + below(3), c); break;
      case 2: text.erase(at, 1 + below(40)); break;
      case 3: text.resize(at); break;
      default: text[at] = static_cast<char>(text[at] ^ static_cast<char>(1u << below(8))); break;
    }
  }
  return text;
}

std::size_t lines_in(const std::string& text) {
  return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')) + 1;
}

}  // namespace

TEST_CASE("damaged text is read or refused at a place inside it") {
  const WrittenTables tables;
  std::mt19937 random(20260131);
  std::size_t refused = 0, read = 0;
  for (const std::string name : {"steels.toml", "rules/us.toml", "sources.toml"}) {
    const std::string good = tables.text_of(name).substr(0, 4000);
    for (int i = 0; i < 1500; ++i) {
      const std::string text = damaged(good, random);
      CAPTURE(name, i, text);
      const auto result = parse_toml(name, text);
      if (const auto* fault = std::get_if<Diagnostic>(&result)) {
        ++refused;
        REQUIRE(fault->place.line >= 1);
        REQUIRE(fault->place.line <= lines_in(text));
        REQUIRE_FALSE(fault->what.empty());
        REQUIRE(show(*fault, text).ends_with('\n'));
      } else {
        ++read;
      }
    }
  }
  CHECK(refused > 1000);
  CHECK(read > 100);
}

TEST_CASE("damaged tables give faults, or whole tables of numbers that can be") {
  const WrittenTables tables;
  std::mt19937 random(4471);
  std::size_t refused = 0;
  for (const std::string name :
       {"form-faces.toml", "steels.toml", "specimens.toml", "sources.toml", "rules/us.toml"}) {
    const std::string good = tables.text_of(name);
    for (int i = 0; i < 60; ++i) {
      const std::string text = damaged(good, random);
      CAPTURE(name, i);
      tables.write(name, text);
      const auto result = tables.read();
      if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&result)) {
        ++refused;
        REQUIRE_FALSE(faults->empty());
        for (const Diagnostic& fault : *faults) REQUIRE_FALSE(fault.what.empty());
        continue;
      }
      const Tables& read = std::get<Tables>(result);
      for (const auto& [word, face] : read.form_faces) REQUIRE(face.adhesion.value > Stress{});
      for (const auto& [word, steel] : read.steels) REQUIRE(std::isfinite(steel.futa.value.value()));
      REQUIRE(read.rule_sets.at("us").insert_factor.value.value() >= 1.0);
    }
    tables.write(name, good);
  }
  CHECK(refused > 100);
}
