// The fields of one table of the plan, read as the list of keys (keys.hpp) says.
//
// Every read gives the value, or nothing where the key is absent or its value faulty; each fault is reported
// once. Keys that are not in the list, and required ones that are missing, are reported on opening the table.
#pragma once

#include <array>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "plan/faults.hpp"
#include "plan/keys.hpp"
#include "plan/name_book.hpp"
#include "plan/plan.hpp"
#include "plan/words.hpp"
#include "tables/tables.hpp"
#include "units/dimension.hpp"

namespace firstpick::plan {

struct Moment {  // a date and time of the plan, for the comparison with the others
  std::string_view key;
  Timestamp value;
  toml::source_region where;
};

// What is open while one plan is read.
struct Reading {
  Faults& faults;
  const tables::Tables& tables;
  const SectionList& sections = plan::sections();
  NameBook names{};
  std::vector<Moment> moments{};
  std::set<std::string> unplaced{};  // inserts without a usable place: nothing is measured from them
};

class Fields {
 public:
  Fields(const toml::table& table, const Section& section, Reading& reading);

  // Keys that only other shapes use are faults; those that this one needs must be there.
  void check_shape(std::string_view shape);

  bool has(std::string_view key) const { return table_.contains(key); }
  const toml::source_region& where() const { return table_.source(); }
  const toml::source_region& where(std::string_view key) const;  // of the value; of the table if it is absent
  Place place() const { return reading_.faults.place_of(where()); }

  template <class Q>
  std::optional<Q> quantity(std::string_view key) {
    const std::optional<double> si = in_si(key, dimension_of<Q>());
    if (!si) return {};
    return Q::from_value(*si);
  }
  template <class Q>
  std::vector<Q> quantities(std::string_view key) {
    std::vector<Q> all;
    for (const double si : list_in_si(key, dimension_of<Q>())) all.push_back(Q::from_value(si));
    return all;
  }
  std::optional<std::array<Length, 2>> xy(std::string_view key);
  std::optional<Position> xyz(std::string_view key);
  std::optional<std::array<Position, 2>> two_points(std::string_view key);
  std::vector<Position> path(std::string_view key);
  std::vector<PlanarPoint> points(std::string_view key);
  std::vector<std::vector<PlanarPoint>> point_lists(std::string_view key);

  std::optional<double> number(std::string_view key);
  std::optional<long long> format(std::string_view key);
  std::optional<long long> whole(std::string_view key);
  std::optional<bool> yes_no(std::string_view key);
  std::optional<Timestamp> moment(std::string_view key);
  std::optional<Day> date(std::string_view key);
  std::optional<MarkedSize> marked_size(std::string_view key);
  std::optional<Specimen> specimen(std::string_view key);
  std::string line(std::string_view key);  // a name, a text or a path; empty if absent
  std::string word(std::string_view key);
  template <class Enum, std::size_t n>
  std::optional<Enum> choice(std::string_view key, const std::array<std::string_view, n>& words) {
    return value_of<Enum>(word(key), words);
  }
  std::vector<Placed<std::string>> names(std::string_view key);
  std::vector<std::vector<Placed<std::string>>> groups(std::string_view key);

  bool is_empty_list(std::string_view name) const;  // written as name = []

  // The tables inside this one, by the path of their section.
  std::vector<const toml::table*> each(std::string_view path);
  const toml::table* inside(std::string_view path);

 private:
  struct Given {
    const Key& key;
    const toml::node* node;  // null if absent
  };
  Given given_for(std::string_view key, Count count) const;
  std::optional<double> in_si(std::string_view key, Dimension dimension);
  std::vector<double> list_in_si(std::string_view key, Dimension dimension);
  std::vector<double> numbers_in(const toml::node& node, const Key& key, std::size_t count);
  std::vector<PlanarPoint> points_in(const toml::node& node, const Key& key);
  std::optional<Placed<std::string>> name_in(const toml::node& node, const Key& key);
  const toml::array* list_in(const toml::node& node, const Key& key, std::string_view needed,
                             std::size_t least);
  const toml::node* node_of(const Section& inner);
  void report_section(const toml::node& node, const Section& inner, std::string what, std::string help = {});
  void report_missing(const Key& key);
  void report_unknown(const toml::key& name);

  const toml::table& table_;
  const Section& section_;
  Reading& reading_;
};

}  // namespace firstpick::plan
