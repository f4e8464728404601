#include "editor/schema.hpp"

#include <algorithm>
#include <cassert>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "editor/quantity_pattern.hpp"
#include "plan/values.hpp"
#include "plan/words.hpp"
#include "tables/toml_file.hpp"

namespace firstpick::editor {
namespace {

using Json = nlohmann::ordered_json;
using plan::Count;
using plan::Key;
using plan::Kind;
using plan::Limit;
using plan::Section;
using plan::SectionList;

constexpr int longest_list = 1000;  // as in the reader
constexpr std::string_view zone = "([Zz]|[+-][0-9]{2}:[0-9]{2})?";

Json json_of(const toml::node& node) {
  if (const auto* text = node.as_string()) return text->get();
  if (const auto* whole = node.as_integer()) return whole->get();
  if (const auto* number = node.as_floating_point()) return number->get();
  if (const auto* yes = node.as_boolean()) return yes->get();
  Json list = Json::array();
  if (const auto* array = node.as_array())
    for (const toml::node& each : *array) list.push_back(json_of(each));
  return list;
}

// As a plan writes it; a date or time as text. A word that the list leaves open ("...") is the first of its
// table.
Json example_as_json(const Key& key, const tables::Tables& tables) {
  if (key.kind == Kind::word && key.example == "\"...\"") return plan::words_of(key.words, tables).at(0);
  if (key.kind == Kind::moment || key.kind == Kind::date) return std::string(key.example);
  const auto parsed = tables::parse_toml("", fmt::format("x = {}", key.example));
  const auto* table = std::get_if<toml::table>(&parsed);
  assert(table);  // a test reads every example of the list
  return json_of(*table->get("x"));
}

Json number_of(const Key& key) {
  Json number = {{"type", "number"}};
  if (key.limit == Limit::at_least_one || key.limit == Limit::factor_of_safety) number["minimum"] = 1;
  if (key.limit == Limit::factor_of_safety) number["maximum"] = 12;
  if (key.limit == Limit::friction) number["maximum"] = 1;
  if (key.limit == Limit::more_than_zero || key.limit == Limit::not_negative || key.limit == Limit::friction)
    number["minimum"] = 0;
  if (key.limit == Limit::more_than_zero || key.limit == Limit::friction) number["not"] = {{"enum", Json::array({0})}};
  Json text = {{"type", "string"}, {"pattern", quantity_pattern(key.kind, key.limit)}};
  return {{"anyOf", {number, text}}};
}

Json text_like(std::string_view pattern) {
  return {{"type", "string"}, {"maxLength", plan::longest_line}, {"pattern", pattern}};
}

Json specimen_of(const tables::Tables& tables) {
  Json known = Json::array();
  for (const auto& [name, entry] : tables.specimens) known.push_back(name);
  return {{"anyOf", {Json{{"enum", known}}, text_like("^ *(cylinder|cube) .*$")}}};
}

// Of one value.
Json value_of(const Key& key, const tables::Tables& tables) {
  if (plan::is_quantity(key.kind))
    return {{"type", "string"}, {"pattern", quantity_pattern(key.kind, key.limit)}};
  switch (key.kind) {
    case Kind::number: return number_of(key);
    case Kind::format: return {{"type", "integer"}, {"enum", Json::array({plan::format_read})}};
    case Kind::whole: return {{"type", "integer"}, {"minimum", 1}, {"maximum", plan::largest_whole}};
    case Kind::name: return text_like("^[^ ](.*[^ ])?$");
    case Kind::path: return text_like(R"(^[^ /~\\:]([^\\:]*[^ \\:])?$)");
    case Kind::word: return {{"type", "string"}, {"enum", plan::words_of(key.words, tables)}};
    case Kind::specimen: return specimen_of(tables);
    case Kind::yes_no: return {{"type", "boolean"}};
    case Kind::moment:
      return text_like(fmt::format(
          "^[0-9]{{4}}-[0-9]{{2}}-[0-9]{{2}}[Tt ][0-9]{{2}}:[0-9]{{2}}(:[0-9]{{2}}(\\.[0-9]+)?)?{}$", zone));
    case Kind::date: return text_like("^[0-9]{4}-[0-9]{2}-[0-9]{2}$");
    default: return text_like("^.*$");
  }
}

Json list_of(Json items, int least, int most = longest_list) {
  return {{"type", "array"}, {"items", std::move(items)}, {"minItems", least}, {"maxItems", most}};
}

Json values_of(const Key& key, const tables::Tables& tables) {
  const Json one = value_of(key, tables);
  switch (key.count) {
    case Count::one: return one;
    case Count::two: return list_of(one, 2, 2);
    case Count::three: return list_of(one, 3, 3);
    case Count::two_points: return list_of(list_of(one, 3, 3), 2, 2);
    case Count::path: return list_of(list_of(one, 3, 3), 2);
    case Count::list: return list_of(one, 1);
    case Count::one_or_list: return {{"anyOf", {one, list_of(one, 1)}}};
    case Count::points: return list_of(list_of(one, 2, 2), 3);
    case Count::point_lists: return list_of(list_of(list_of(one, 2, 2), 3), 0);
    case Count::groups: return list_of(list_of(one, 2), 0);
  }
  return one;
}

std::string plain(std::string_view text) {  // the marks of Markdown that the list has around names of keys
  std::string all(text);
  std::erase(all, '`');
  return all;
}

std::string sentence(std::string_view text) {
  std::string all = plain(text);
  if (!all.empty() && !all.ends_with('.')) all += '.';
  return all;
}

std::string description_of(const Key& key) {
  std::string all = sentence(key.doc);
  if (!key.shapes.empty()) all += fmt::format(" Shapes: {}.", fmt::join(key.shapes, ", "));
  if (key.limit == Limit::factor_of_safety) all += " From 1 to 12.";
  if (key.limit == Limit::friction) all += " Above 0, at most 1.";
  if (key.limit == Limit::up_to_90_deg) all += " From 0 to 90 deg.";
  if (key.limit == Limit::up_to_180_deg) all += " From 0 to 180 deg.";
  if (const auto table = plan::table_of(key.words); !table.empty()) all += fmt::format(" Words: {}.", table);
  all += key.required ? std::string(" Required.") : " Without it: " + sentence(key.absent);
  return all + fmt::format(" Example: {} = {}", key.name, key.example);
}

Json property_of(const Key& key, const tables::Tables& tables) {
  Json property = {{"description", description_of(key)}, {"examples", Json::array({example_as_json(key, tables)})}};
  property.update(values_of(key, tables));
  return property;
}

// "a box needs `size`, and has no `diameter`": for each word of the key `shape`.
Json shapes_of(const Section& section) {
  Json all = Json::array();
  for (const std::string_view shape : plan::shape_words) {
    Json needed = Json::array(), others = Json::object();
    for (const Key& key : section.keys) {
      if (key.shapes.empty()) continue;
      const bool used = std::ranges::find(key.shapes, shape) != key.shapes.end();
      if (used && key.required) needed.push_back(key.name);
      if (!used) others[std::string(key.name)] = {{"not", Json::object()}};
    }
    const Json another = {
        {"not", {{"properties", {{"shape", {{"enum", {shape}}}}}}, {"required", {"shape"}}}}};
    Json as_needed = {{"properties", others}};
    if (!needed.empty()) as_needed["required"] = needed;
    all.push_back({{"anyOf", {another, as_needed}}});
  }
  return all;
}

Json object_of(const Section& section, const SectionList& sections, const tables::Tables& tables) {
  Json properties = Json::object(), needed = Json::array();
  bool has_shapes = false;
  for (const Key& key : section.keys) {
    properties[std::string(key.name)] = property_of(key, tables);
    if (key.required && key.shapes.empty()) needed.push_back(key.name);
    has_shapes = has_shapes || !key.shapes.empty();
  }
  for (const Section* inner : plan::sections_inside(section, sections)) {
    const std::string name(plan::last_part(inner->path));
    std::string description = plan::heading(*inner) + " " + sentence(inner->doc);
    description += inner->required ? std::string(" Required.") : " Without it: " + sentence(inner->absent);
    Json property = {{"description", description}};
    Json object = object_of(*inner, sections, tables);
    property.update(inner->repeated ? list_of(std::move(object), inner->required ? 1 : 0)
                                    : std::move(object));
    properties[name] = std::move(property);
    if (inner->required) needed.push_back(name);
  }
  Json object = {{"type", "object"}, {"properties", std::move(properties)}, {"additionalProperties", false}};
  if (!needed.empty()) object["required"] = std::move(needed);
  if (has_shapes) object["allOf"] = shapes_of(section);
  return object;
}

}  // namespace

const SectionList* sections_of(std::string_view file_kind) {
  if (file_kind == "plan") return &plan::sections();
  if (file_kind == "strength") return &plan::strength_file_sections();
  if (file_kind == "shift") return &plan::shift_file_sections();
  return nullptr;
}

std::string schema(const SectionList& sections, std::string_view title, const tables::Tables& tables) {
  const Section& top = plan::section("", sections);
  Json all = {{"$schema", "http://json-schema.org/draft-07/schema#"},
              {"title", title},
              {"description", sentence(top.doc) +
                                  " Written by `firstpick schema` from the list of keys that the program "
                                  "reads by; not all that the program refuses is refused here."}};
  all.update(object_of(top, sections, tables));
  return all.dump(1) + "\n";
}

std::string schema_of(std::string_view file_kind, const tables::Tables& tables) {
  const SectionList* sections = sections_of(file_kind);
  assert(sections);
  return schema(*sections, fmt::format("firstpick {} file", file_kind), tables);
}

}  // namespace firstpick::editor
