// One value of one key: what stands in the file as what the key needs, or one fault that says both.
#pragma once

#include <optional>
#include <string>

#include "plan/faults.hpp"
#include "plan/keys.hpp"
#include "plan/plan.hpp"
#include "tables/tables.hpp"

namespace firstpick::plan {

constexpr std::size_t longest_line = 200;  // characters of a name or a text
constexpr long long format_read = 1;       // the one format this program reads
constexpr long long largest_whole = 1000;  // of a count: so that no file can keep the program busy for hours

// Any string of a plan: one line that can be seen and is not too long to print. Null where it is not.
const toml::value<std::string>* read_string(const toml::node& node, const Key& key, Faults& faults);

// Quantities and plain numbers, inside the limit of the key.
std::optional<double> read_in_si(const toml::node& node, const Key& key, Faults& faults);
std::optional<long long> read_format(const toml::node& node, const Key& key, Faults& faults);
std::optional<long long> read_whole(const toml::node& node, const Key& key, Faults& faults);
std::optional<bool> read_yes_no(const toml::node& node, const Key& key, Faults& faults);
std::optional<Timestamp> read_moment(const toml::node& node, const Key& key, Faults& faults);
std::optional<Day> read_date(const toml::node& node, const Key& key, Faults& faults);
// Names, texts and paths.
std::optional<std::string> read_line(const toml::node& node, const Key& key, Faults& faults);
std::optional<std::string> read_word(const toml::node& node, const Key& key, const tables::Tables& tables,
                                     Faults& faults);
std::optional<Specimen> read_specimen(const toml::node& node, const Key& key, const tables::Tables& tables,
                                      Faults& faults);

// "'shank' needs a length with its unit; given: a bare number", with an example of the key.
void report_wrong_type(const toml::node& node, const Key& key, std::string_view needed, Faults& faults);

// "a length with its unit"
std::string_view noun_for(Kind kind);

// "for example: shank = "0.75 in"": any key, as a plan writes it.
std::string example_of(const Key& key);

}  // namespace firstpick::plan
