// A value in a table that no rule reads misleads the plant that changes it.

#include <catch2/catch.hpp>

#include <cctype>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <string_view>
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

bool is_of_a_name(char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_'; }

void add_names(std::string_view text, std::set<std::string>& names, bool only_members) {
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (!is_of_a_name(text[at])) continue;
    std::size_t end = at;
    while (end < text.size() && is_of_a_name(text[end])) ++end;
    const std::string_view before = text.substr(0, at);
    if (!only_members || before.ends_with('.') || before.ends_with("->") || before.ends_with("::"))
      names.insert(std::string(text.substr(at, end - at)));
    at = end;
  }
}

// As a member (model.k_c) or in a structured binding (auto& [key, phi_min, beta] = ...).
std::set<std::string> names_read(const std::string& code) {
  std::set<std::string> names;
  add_names(code, names, true);
  static const std::regex binding("auto&?&? \\[([^\\]]*)\\] =");
  for (auto each = std::sregex_iterator(code.begin(), code.end(), binding); each != std::sregex_iterator(); ++each)
    add_names((*each)[1].str(), names, false);
  return names;
}

}  // namespace

TEST_CASE("every value of the tables is read by some rule, or listed with the reason why not") {
  const std::set<std::string> read = names_read(code());
  const std::set<std::string> names = names_given();
  REQUIRE(names.size() > 50);
  for (const std::string& name : names) {
    CAPTURE(name);
    CHECK(read.contains(name) != not_read_yet.contains(name));
  }
  for (const auto& [name, why] : not_read_yet) CHECK(names.contains(name));
}

TEST_CASE("a name in a comment, or as part of another, is not read") {
  CHECK(names_read("model.k_c.value").contains("k_c"));
  CHECK(names_read("model->k_c").contains("k_c"));
  CHECK(names_read("const auto& [key, phi_min, beta] = hoist;").contains("beta"));
  CHECK_FALSE(names_read("model.k_cp").contains("k_c"));
  CHECK_FALSE(names_read("double beta = 1.0;").contains("beta"));
}
