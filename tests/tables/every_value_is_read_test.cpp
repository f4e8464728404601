// A value in a table that no rule reads misleads the plant that changes it.

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

#include "tables/toml_file.hpp"

using namespace firstpick::tables;

namespace {

namespace fs = std::filesystem;

// Values that this version keeps and no rule reads yet, each with the reason.
const std::map<std::string, std::string> not_read_yet = {
};

std::string text_of(const fs::path& file) {
  std::ifstream stream(file, std::ios::binary);
  REQUIRE(stream.good());
  return {std::istreambuf_iterator<char>(stream), {}};
}

// The names by which the shipped entries are read: "k_c" for "headed.k_c".
std::set<std::string> names_given() {
  std::set<std::string> names;
  for (const auto& file : fs::recursive_directory_iterator("tables")) {
    if (file.path().extension() != ".toml") continue;
    const std::string text = text_of(file.path());
    const auto parsed = parse_toml(file.path().string(), text);
    REQUIRE(std::holds_alternative<toml::table>(parsed));
    const toml::node* entries = std::get<toml::table>(parsed).get("entry");
    if (!entries) continue;
    for (const toml::node& entry : *entries->as_array()) {
      const std::string gives = entry.as_table()->get("gives")->value<std::string>().value();
      names.insert(gives.substr(gives.find('.') + 1));
    }
  }
  return names;
}

// Our own code outside src/tables, without comments.
std::string code() {
  static const std::regex comment("//[^\n]*");
  std::string all;
  for (const auto& file : fs::recursive_directory_iterator("src")) {
    const std::string extension = file.path().extension().string();
    if (extension != ".cpp" && extension != ".hpp") continue;
    if (file.path().generic_string().starts_with("src/tables/")) continue;
    all += std::regex_replace(text_of(file.path()), comment, "");
  }
  return all;
}

// As a member (model.k_c) or in a structured binding (auto& [key, phi_min, beta] = ...).
bool is_read(const std::string& name, const std::string& code) {
  return std::regex_search(code, std::regex("(\\.|->|::)" + name + "\\b")) ||
         std::regex_search(code, std::regex("auto&?&? \\[[^\\]]*\\b" + name + "\\b[^\\]]*\\] ="));
}

}  // namespace

TEST_CASE("every value of the tables is read by some rule, or listed with the reason why not") {
  const std::string text = code();
  const std::set<std::string> names = names_given();
  REQUIRE(names.size() > 50);
  for (const std::string& name : names) {
    CAPTURE(name);
    CHECK(is_read(name, text) != not_read_yet.contains(name));
  }
  for (const auto& [name, why] : not_read_yet) CHECK(names.contains(name));
}

TEST_CASE("a name in a comment, or as part of another, is not read") {
  CHECK(is_read("k_c", "model.k_c.value"));
  CHECK(is_read("beta", "const auto& [key, phi_min, beta] = hoist;"));
  CHECK_FALSE(is_read("k_c", "model.k_cp"));
  CHECK_FALSE(is_read("beta", "double beta = 1.0;"));
}
