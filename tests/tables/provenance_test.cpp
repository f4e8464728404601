// Every shipped value says where it comes from and how sure that is.

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <set>
#include <string>
#include <vector>

#include "tables/tables.hpp"
#include "tables/toml_file.hpp"

using namespace firstpick;
using namespace firstpick::tables;

namespace {

std::vector<Source> shipped_entries() {
  auto read = read_tables("tables");
  REQUIRE(std::holds_alternative<Tables>(read));
  return std::get<Tables>(read).entries;
}

std::string text_of(const std::string& file) {
  std::ifstream stream(file, std::ios::binary);
  REQUIRE(stream.good());
  return {std::istreambuf_iterator<char>(stream), {}};
}

}  // namespace

TEST_CASE("every entry is told with symbol, sentence, value, document, table and reason") {
  const std::vector<Source> entries = shipped_entries();
  REQUIRE(entries.size() > 100);
  for (const Source& entry : entries) {
    CAPTURE(entry.id);
    CHECK_FALSE(entry.symbol.empty());
    CHECK(entry.what.size() > 10);
    CHECK_FALSE(entry.value_text.empty());
    CHECK_FALSE(entry.title.empty());
    CHECK(entry.table.ends_with(".toml"));
    const bool was_read = entry.basis == Basis::published || entry.basis == Basis::quoted;
    CHECK((was_read ? entry.locator : entry.note).size() > 2);
    CHECK((entry.title == "choice of this table") == (entry.basis == Basis::choice));
    CHECK(entry.confirmed_by.empty());
    CHECK(entry.unconfirmed() == (entry.basis == Basis::from_memory));
  }
}

// A value gets a better basis only by reading the text; then this list changes with it.
TEST_CASE("the values whose text was read are these and no others") {
  std::set<std::string> published;
  for (const Source& entry : shipped_entries())
    if (entry.basis == Basis::published) published.insert(entry.id);
  CHECK(published ==
        std::set<std::string>{"0027-nd-11.daf_onshore", "0027-nd-11.skew", "0027-nd-11.wire_rope_stiffness",
                              "vicroads-620.above", "vicroads-620.heavy", "vicroads-620.light",
                               "29-cfr-1910-180.weight_disagreement", "29-cfr-1926-704.hardware_factor",
                              "29-cfr-1926-704.insert_factor", "bc-ohsr.critical_above", "dguv-101-001.insert_factor",
                              "dguv-101-001.rating_basis", "dguv-101-001.thread_engagement", "e4-m-01-82.loop_angle",
                              "pci-j-66-2.bond_strength", "pci-j-66-2.safe_bond", "pci-j-66-2.strand_diameter",
                              "pci-j-69-3.four_strands", "pci-j-69-3.hook_factor", "pci-j-69-3.offset_factor",
                              "pci-j-69-3.offset_tested", "pci-j-69-3.pin_tested", "pci-j-69-3.safe_bond",
                              "pci-j-69-3.three_strands", "pci-j-69-3.two_strands",
                              "e4-m-01-82.minimum_sling_angle", "e4-m-01-82.sharing",
                              "loler-1998.inspection_interval", "en-1992-1-1.s_N", "en-1992-1-1.s_R",
                              "en-1992-1-1.s_S", "nyc-bc-3305.maturity_margin", "yeh-1998.band_age_3_d",
                              "yeh-1998.band_age_7_d", "yeh-1998.band_high_3_d", "yeh-1998.band_high_7_d",
                              "yeh-1998.band_low_3_d", "yeh-1998.band_low_7_d", "yeh-1998.band_middle_3_d",
                              "yeh-1998.band_middle_7_d"});
}

TEST_CASE("every document of sources.toml stands behind a value, and no title is told twice") {
  const std::string text = text_of("tables/sources.toml");
  const auto parsed = parse_toml("sources.toml", text);
  REQUIRE(std::holds_alternative<toml::table>(parsed));
  const toml::array* documents = std::get<toml::table>(parsed).get("source")->as_array();
  const std::vector<Source> entries = shipped_entries();
  std::set<std::string> titles;
  for (const toml::node& document : *documents) {
    const std::string key = document.as_table()->get("key")->value<std::string>().value();
    const std::string title = document.as_table()->get("title")->value<std::string>().value();
    CAPTURE(key, title);
    CHECK(titles.insert(title).second);
    CHECK(std::any_of(entries.begin(), entries.end(),
                      [&](const Source& entry) { return entry.id.starts_with(key + "."); }));
  }
  CHECK(titles.size() > 5);
}

TEST_CASE("the value told is the value in the file") {
  for (const Source& entry : shipped_entries()) {
    const std::string text = text_of("tables/" + entry.table);
    const std::size_t at = text.find("id = \"" + entry.id + "\"");
    CAPTURE(entry.id, entry.value_text);
    REQUIRE(at != std::string::npos);
    const auto field = [&](const std::string& key) {
      const std::size_t end = std::min(text.find("[[entry]]", at), text.size());
      const std::size_t from = text.find("\n" + key + " = ", at);
      if (from >= end) return std::string();
      const std::size_t value = from + key.size() + 4;
      return text.substr(value, text.find('\n', value) - value);
    };
    if (field("unit").empty()) {
      CHECK(field("value") == "\"" + entry.value_text + "\"");
    } else {
      const double number = std::stod(field("value"));
      CHECK(std::stod(entry.value_text) == number);
      const std::size_t space = entry.value_text.find(' ');
      CHECK(field("unit") ==
            (space == std::string::npos ? "\"1\"" : "\"" + entry.value_text.substr(space + 1) + "\""));
    }
  }
}
