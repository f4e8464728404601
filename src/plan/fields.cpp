#include "plan/fields.hpp"

#include <algorithm>
#include <cassert>

#include <fmt/format.h>

#include "plan/values.hpp"

namespace firstpick::plan {
namespace {

constexpr std::size_t longest_list = 1000;  // so that no plan can keep the program busy for hours

bool is_used_by(const Key& key, std::string_view shape) {
  return key.shapes.empty() || std::ranges::find(key.shapes, shape) != key.shapes.end();
}

bool is_inside(const Section& outer, std::string_view name, const SectionList& list) {
  return std::ranges::any_of(sections_inside(outer, list),
                             [&](const Section* each) { return last_part(each->path) == name; });
}

// Where in the plan this very word has its place, for the hint; empty if nowhere.
std::string place_of_word(std::string_view name, const SectionList& sections) {
  std::string list;
  for (const Section& each : sections) {
    if (!each.path.empty() && last_part(each.path) == name) return "it is written " + heading(each);
    if (find_key(each, name)) list += (list.empty() ? "it is a key of " : ", ") + heading(each);
  }
  return list;
}

}  // namespace

Fields::Fields(const toml::table& table, const Section& section, Reading& reading)
    : table_(table), section_(section), reading_(reading) {
  for (const auto& [name, value] : table_)
    if (!find_key(section_, name.str()) && !is_inside(section_, name.str(), reading_.sections)) report_unknown(name);
  for (const Key& key : section_.keys)
    if (key.required && key.shapes.empty() && !has(key.name)) report_missing(key);
}

void Fields::report_missing(const Key& key) {
  if (key.defines != Names::none) reading_.names.give_unreadable(key.defines);
  const bool top = section_.path.empty();
  const std::string what = fmt::format("{} needs the key '{}'", heading(section_), key.name);
  if (top)
    reading_.faults.add({}, what, example_of(key));
  else
    reading_.faults.at(where(), what, example_of(key));
}

void Fields::report_unknown(const toml::key& name) {
  std::vector<std::string_view> known;
  for (const Key& key : section_.keys) known.push_back(key.name);
  for (const Section* inner : sections_inside(section_, reading_.sections)) known.push_back(last_part(inner->path));

  const std::string elsewhere = place_of_word(name.str(), reading_.sections);
  reading_.faults.at(name.source(), fmt::format("{} has no key {}", heading(section_), in_quotes(name.str())),
                     elsewhere.empty() ? suggestion(name.str(), known) : elsewhere);
}

void Fields::check_shape(std::string_view shape) {
  std::string needs;
  for (const Key& key : section_.keys)
    if (!key.shapes.empty() && is_used_by(key, shape))
      needs += fmt::format("{}'{}'", needs.empty() ? "" : ", ", key.name);
  for (const Key& key : section_.keys) {
    if (key.shapes.empty()) continue;
    if (is_used_by(key, shape)) {
      if (key.required && !has(key.name))
        reading_.faults.at(where("shape"), fmt::format("a {} needs the key '{}'", shape, key.name),
                           example_of(key));
    } else if (has(key.name)) {
      const toml::key& name = table_.find(key.name)->first;
      reading_.faults.at(name.source(), fmt::format("a {} has no '{}'", shape, key.name),
                         fmt::format("a {} has: {}", shape, needs));
    }
  }
}

const toml::source_region& Fields::where(std::string_view key) const {
  const toml::node* node = table_.get(key);
  return node ? node->source() : table_.source();
}

Fields::Given Fields::given_for(std::string_view name, Count count) const {
  const Key* key = find_key(section_, name);
  assert(key && key->count == count);  // the reader and the list of keys disagree: a fault of the program
  return {*key, table_.get(name)};
}

const toml::array* Fields::list_in(const toml::node& node, const Key& key, std::string_view needed,
                                   std::size_t least) {
  const toml::array* list = node.as_array();
  if (!list) {
    report_wrong_type(node, key, needed, reading_.faults);
    return nullptr;
  }
  if (list->size() < least || list->size() > longest_list) {
    reading_.faults.at(node.source(),
                       list->size() < least
                           ? fmt::format("'{}' needs {}; given: {}", key.name, needed, list->size())
                           : fmt::format("'{}' has more than {} entries", key.name, longest_list),
                       list->size() < least ? example_of(key) : "");
    return nullptr;
  }
  return list;
}

std::optional<double> Fields::in_si(std::string_view name, Dimension dimension) {
  const auto [key, node] = given_for(name, Count::one);
  assert(is_quantity(key.kind) && dimension_for(key.kind) == dimension);
  return node ? read_in_si(*node, key, reading_.faults) : std::nullopt;
}

std::vector<double> Fields::list_in_si(std::string_view name, Dimension dimension) {
  const auto [key, node] = given_for(name, Count::list);
  assert(is_quantity(key.kind) && dimension_for(key.kind) == dimension);
  std::vector<double> all;
  if (!node) return all;
  if (const toml::array* list = list_in(*node, key, "a list of at least one", 1))
    for (const toml::node& each : *list)
      if (const auto si = read_in_si(each, key, reading_.faults)) all.push_back(*si);
  return all;
}

// As many as there must be, or none.
std::vector<double> Fields::numbers_in(const toml::node& node, const Key& key, std::size_t count) {
  const std::string needed = fmt::format("a list of {}", count);
  const toml::array* list = list_in(node, key, needed, count);
  if (!list) return {};
  if (list->size() > count) {
    reading_.faults.at(node.source(), fmt::format("'{}' needs {}; given: {}", key.name, needed, list->size()),
                       example_of(key));
    return {};
  }
  std::vector<double> numbers;
  for (const toml::node& each : *list)
    if (const auto si = read_in_si(each, key, reading_.faults)) numbers.push_back(*si);
  return numbers.size() == count ? numbers : std::vector<double>{};
}

std::optional<std::array<Length, 2>> Fields::xy(std::string_view name) {
  const auto [key, node] = given_for(name, Count::two);
  const std::vector<double> si_m = node ? numbers_in(*node, key, 2) : std::vector<double>{};
  if (si_m.empty()) return {};
  return std::array{si_m[0] * m, si_m[1] * m};
}

std::optional<Position> Fields::xyz(std::string_view name) {
  const auto [key, node] = given_for(name, Count::three);
  const std::vector<double> si_m = node ? numbers_in(*node, key, 3) : std::vector<double>{};
  if (si_m.empty()) return {};
  return Position{si_m[0] * m, si_m[1] * m, si_m[2] * m};
}

std::optional<std::array<Position, 2>> Fields::two_points(std::string_view name) {
  const auto [key, node] = given_for(name, Count::two_points);
  if (!node) return {};
  const toml::array* list = list_in(*node, key, "two points", 2);
  if (!list) return {};
  if (list->size() > 2) {
    reading_.faults.at(node->source(), fmt::format("'{}' needs two points; given: {}", key.name, list->size()),
                       example_of(key));
    return {};
  }
  std::array<Position, 2> points;
  for (std::size_t i = 0; i < 2; ++i) {
    const std::vector<double> si_m = numbers_in(*list->get(i), key, 3);
    if (si_m.empty()) return {};
    points[i] = {si_m[0] * m, si_m[1] * m, si_m[2] * m};
  }
  return points;
}

std::vector<Position> Fields::path(std::string_view name) {
  const auto [key, node] = given_for(name, Count::path);
  const toml::array* list = node ? list_in(*node, key, "at least 2 points", 2) : nullptr;
  std::vector<Position> places;
  if (!list) return places;
  for (const toml::node& each : *list)
    if (const auto si_m = numbers_in(each, key, 3); !si_m.empty())
      places.push_back({si_m[0] * m, si_m[1] * m, si_m[2] * m});
  return places.size() == list->size() ? places : std::vector<Position>{};
}

std::vector<PlanarPoint> Fields::points_in(const toml::node& node, const Key& key) {
  const toml::array* list = list_in(node, key, "at least 3 points", 3);
  if (!list) return {};
  std::vector<PlanarPoint> points;
  for (const toml::node& each : *list)
    if (const auto si_m = numbers_in(each, key, 2); !si_m.empty())
      points.push_back({si_m[0] * m, si_m[1] * m});
  return points.size() == list->size() ? points : std::vector<PlanarPoint>{};
}

std::vector<PlanarPoint> Fields::points(std::string_view name) {
  const auto [key, node] = given_for(name, Count::points);
  return node ? points_in(*node, key) : std::vector<PlanarPoint>{};
}

std::vector<std::vector<PlanarPoint>> Fields::point_lists(std::string_view name) {
  const auto [key, node] = given_for(name, Count::point_lists);
  std::vector<std::vector<PlanarPoint>> all;
  if (!node) return all;
  if (const toml::array* list = list_in(*node, key, "a list of outlines", 0))
    for (const toml::node& each : *list) all.push_back(points_in(each, key));
  return all;
}

std::optional<double> Fields::number(std::string_view name) {
  const auto [key, node] = given_for(name, Count::one);
  assert(key.kind == Kind::number);
  return node ? read_in_si(*node, key, reading_.faults) : std::nullopt;
}

std::optional<long long> Fields::format(std::string_view name) {
  const auto [key, node] = given_for(name, Count::one);
  assert(key.kind == Kind::format);
  return node ? read_format(*node, key, reading_.faults) : std::nullopt;
}

std::optional<long long> Fields::whole(std::string_view name) {
  const auto [key, node] = given_for(name, Count::one);
  assert(key.kind == Kind::whole);
  return node ? read_whole(*node, key, reading_.faults) : std::nullopt;
}

std::optional<bool> Fields::yes_no(std::string_view name) {
  const auto [key, node] = given_for(name, Count::one);
  assert(key.kind == Kind::yes_no);
  return node ? read_yes_no(*node, key, reading_.faults) : std::nullopt;
}

std::optional<Timestamp> Fields::moment(std::string_view name) {
  const auto [key, node] = given_for(name, Count::one);
  assert(key.kind == Kind::moment);
  const auto moment = node ? read_moment(*node, key, reading_.faults) : std::nullopt;
  if (moment) reading_.moments.push_back({key.name, *moment, node->source()});
  return moment;
}

std::optional<Day> Fields::date(std::string_view name) {
  const auto [key, node] = given_for(name, Count::one);
  assert(key.kind == Kind::date);
  return node ? read_date(*node, key, reading_.faults) : std::nullopt;
}

std::optional<MarkedSize> Fields::marked_size(std::string_view name) {
  const std::optional<Force> value = quantity<Force>(name);
  if (!value) return {};
  return MarkedSize{*value, table_.get(name)->as_string()->get()};  // a quantity is always a string
}

std::optional<Specimen> Fields::specimen(std::string_view name) {
  const auto [key, node] = given_for(name, Count::one);
  assert(key.kind == Kind::specimen);
  return node ? read_specimen(*node, key, reading_.tables, reading_.faults) : std::nullopt;
}

std::string Fields::word(std::string_view name) {
  const auto [key, node] = given_for(name, Count::one);
  assert(key.kind == Kind::word);
  if (!node) return {};
  return read_word(*node, key, reading_.tables, reading_.faults).value_or("");
}

std::optional<Placed<std::string>> Fields::name_in(const toml::node& node, const Key& key) {
  const std::optional<std::string> line = read_line(node, key, reading_.faults);
  if (!line) {
    if (key.defines != Names::none) reading_.names.give_unreadable(key.defines);
    return {};
  }
  if (key.defines != Names::none) reading_.names.give(key.defines, *line, node.source());
  if (key.refers_to != Names::none) reading_.names.use(key.refers_to, *line, node.source());
  return Placed<std::string>{*line, reading_.faults.place_of(node.source())};
}

std::string Fields::line(std::string_view name) {
  const auto [key, node] = given_for(name, Count::one);
  assert(key.kind == Kind::name || key.kind == Kind::text || key.kind == Kind::path);
  const auto read = node ? name_in(*node, key) : std::nullopt;
  return read ? read->value : std::string{};
}

std::vector<Placed<std::string>> Fields::names(std::string_view name) {
  const auto [key, node] = given_for(name, Count::one_or_list);
  assert(key.kind == Kind::name);
  std::vector<Placed<std::string>> all;
  if (!node) return all;
  const auto add = [&, &named = key](const toml::node& each) {
    if (auto read = name_in(each, named)) all.push_back(std::move(*read));
  };
  if (node->is_string())
    add(*node);
  else if (const toml::array* list = list_in(*node, key, "a name, or a list of at least one", 1))
    for (const toml::node& each : *list) add(each);
  return all;
}

std::vector<std::vector<Placed<std::string>>> Fields::groups(std::string_view name) {
  const auto [key, node] = given_for(name, Count::groups);
  assert(key.kind == Kind::name);
  std::vector<std::vector<Placed<std::string>>> all;
  if (!node) return all;
  const toml::array* list = list_in(*node, key, "a list of groups", 0);
  if (!list) return all;
  for (const toml::node& each : *list) {
    const toml::array* group = list_in(each, key, "groups of at least 2", 2);
    if (!group) continue;
    all.emplace_back();
    for (const toml::node& member : *group)
      if (auto read = name_in(member, key)) all.back().push_back(std::move(*read));
  }
  return all;
}

const toml::node* Fields::node_of(const Section& inner) {
  const toml::node* node = table_.get(last_part(inner.path));
  if (!node && inner.required) {
    const std::string what = fmt::format("{} needs {}", heading(section_), heading(inner));
    if (section_.path.empty())
      reading_.faults.add({}, what);
    else
      reading_.faults.at(where(), what);
  }
  return node;
}

bool Fields::is_empty_list(std::string_view name) const {
  const toml::node* node = table_.get(name);
  return node && node->is_array() && node->as_array()->empty();
}

const toml::table* Fields::inside(std::string_view path) {
  const Section& inner = section(path, reading_.sections);
  assert(!inner.repeated);
  const toml::node* node = node_of(inner);
  if (!node) return nullptr;
  if (const toml::table* table = node->as_table()) return table;
  reading_.faults.at(node->source(), fmt::format("{} is one table; given: {}", heading(inner), given(*node)),
                     fmt::format("write {} once", heading(inner)));
  return nullptr;
}

// A section that cannot be read takes the names with it that it would have given.
void Fields::report_section(const toml::node& node, const Section& inner, std::string what,
                            std::string help) {
  reading_.faults.at(node.source(), std::move(what), std::move(help));
  for (const Key& key : inner.keys)
    if (key.defines != Names::none) reading_.names.give_unreadable(key.defines);
}

std::vector<const toml::table*> Fields::each(std::string_view path) {
  const Section& inner = section(path, reading_.sections);
  assert(inner.repeated);
  const toml::node* node = node_of(inner);
  if (!node) return {};
  const std::string name = heading(inner);
  const toml::array* list = node->as_array();
  if (!list) {
    report_section(*node, inner, fmt::format("{} is a list; given: {}", name, given(*node)),
                   fmt::format("write {} above each", name));
    return {};
  }
  if (list->empty() && inner.required)
    report_section(*node, inner, fmt::format("{} needs {}", heading(section_), name));
  if (list->size() > longest_list) {
    report_section(*node, inner, fmt::format("{} stands there more than {} times", name, longest_list));
    return {};
  }
  std::vector<const toml::table*> all;
  for (const toml::node& one : *list) {
    if (const toml::table* table = one.as_table())
      all.push_back(table);
    else
      report_section(one, inner, fmt::format("{} is a list of tables; given: {}", name, given(one)));
  }
  return all;
}

}  // namespace firstpick::plan
