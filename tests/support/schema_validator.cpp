#include "support/schema_validator.hpp"

#include <map>
#include <regex>
#include <set>
#include <stdexcept>

#include <catch2/catch.hpp>

namespace firstpick::tests {
namespace {

using Json = nlohmann::json;

bool matches(const std::string& text, const std::string& pattern) {
  static std::map<std::string, std::regex> compiled;
  const auto found = compiled.try_emplace(pattern, pattern, std::regex::ECMAScript).first;
  return std::regex_search(text, found->second);
}

bool is_of_type(const Json& value, const std::string& type) {
  if (type == "object") return value.is_object();
  if (type == "array") return value.is_array();
  if (type == "string") return value.is_string();
  if (type == "boolean") return value.is_boolean();
  if (type == "integer") return value.is_number_integer();
  if (type == "number") return value.is_number();
  throw std::runtime_error("no type " + type);
}

std::size_t characters(const std::string& text) {
  std::size_t count = 0;
  for (const char c : text) count += (c & 0xC0) != 0x80 ? 1 : 0;
  return count;
}

void add(std::vector<std::string>& all, std::vector<std::string> more) {
  for (std::string& each : more) all.push_back(std::move(each));
}

std::vector<std::string> faults_of(const std::string& keyword, const Json& said, const Json& schema,
                                   const Json& value, const std::string& at) {
  const auto unless = [&](bool right, const std::string& what) {
    return right ? std::vector<std::string>{} : std::vector{at + ": " + what};
  };
  std::vector<std::string> all;
  if (keyword == "type") return unless(is_of_type(value, said), "not of type " + said.dump());
  if (keyword == "enum") {
    for (const Json& each : said)
      if (each == value) return {};
    return unless(false, value.dump() + " is none of " + said.dump());
  }
  if (keyword == "pattern")
    return unless(!value.is_string() || matches(value, said),
                  value.dump() + " does not match " + said.dump());
  if (keyword == "maxLength") return unless(!value.is_string() || characters(value) <= said, "too long");
  if (keyword == "minimum") return unless(!value.is_number() || value >= said, "less than " + said.dump());
  if (keyword == "maximum") return unless(!value.is_number() || value <= said, "more than " + said.dump());
  if (keyword == "minItems")
    return unless(!value.is_array() || value.size() >= said, "fewer than " + said.dump());
  if (keyword == "maxItems")
    return unless(!value.is_array() || value.size() <= said, "more than " + said.dump());
  if (keyword == "items") {
    if (value.is_array())
      for (std::size_t i = 0; i < value.size(); ++i)
        add(all, schema_faults(said, value[i], at + "/" + std::to_string(i)));
    return all;
  }
  if (keyword == "properties") {
    for (const auto& [name, inner] : said.items())
      if (value.is_object() && value.contains(name))
        add(all, schema_faults(inner, value[name], at + "/" + name));
    return all;
  }
  if (keyword == "required") {
    for (const std::string name : said)
      add(all, unless(!value.is_object() || value.contains(name), "needs " + name));
    return all;
  }
  if (keyword == "additionalProperties") {
    if (said != false) throw std::runtime_error("additionalProperties can only be false here");
    if (value.is_object())
      for (const auto& [name, inner] : value.items())
        add(all, unless(schema.at("properties").contains(name), "has no " + name));
    return all;
  }
  if (keyword == "allOf") {
    for (const Json& each : said) add(all, schema_faults(each, value, at));
    return all;
  }
  if (keyword == "anyOf") {
    for (const Json& each : said) {
      auto faults = schema_faults(each, value, at);
      if (faults.empty()) return {};
      add(all, std::move(faults));
    }
    return all;
  }
  if (keyword == "not") return unless(!schema_faults(said, value, at).empty(), "is what it must not be");
  static const std::set<std::string> words_alone = {"$schema", "title", "description", "examples"};
  if (!words_alone.contains(keyword)) throw std::runtime_error("the validator does not know " + keyword);
  return {};
}

}  // namespace

std::vector<std::string> schema_faults(const Json& schema, const Json& value, const std::string& at) {
  std::vector<std::string> all;
  for (const auto& [keyword, said] : schema.items()) add(all, faults_of(keyword, said, schema, value, at));
  return all;
}

}  // namespace firstpick::tests
