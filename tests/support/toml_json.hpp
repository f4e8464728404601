// A TOML file as JSON, as the language servers of editors see it: dates and times as text.
#pragma once

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "tables/toml_file.hpp"

namespace firstpick::tests {

inline nlohmann::json json_of(const toml::node& node) {
  const auto day = [](const toml::date& d) {
    return fmt::format("{:04}-{:02}-{:02}", d.year, d.month, d.day);
  };
  if (const auto* text = node.as_string()) return text->get();
  if (const auto* whole = node.as_integer()) return whole->get();
  if (const auto* number = node.as_floating_point()) return number->get();
  if (const auto* yes = node.as_boolean()) return yes->get();
  if (const auto* date = node.as_date()) return day(date->get());
  if (const auto* moment = node.as_date_time()) {
    const toml::date_time& at = moment->get();
    std::string text =
        day(at.date) + fmt::format("T{:02}:{:02}:{:02}", at.time.hour, at.time.minute, at.time.second);
    if (at.offset)
      text += fmt::format("{}{:02}:{:02}", at.offset->minutes < 0 ? '-' : '+',
                          std::abs(at.offset->minutes) / 60, std::abs(at.offset->minutes) % 60);
    return text;
  }
  if (const auto* list = node.as_array()) {
    nlohmann::json all = nlohmann::json::array();
    for (const toml::node& each : *list) all.push_back(json_of(each));
    return all;
  }
  nlohmann::json all = nlohmann::json::object();
  if (const auto* table = node.as_table())
    for (const auto& [key, value] : *table) all[std::string(key.str())] = json_of(value);
  return all;
}

}  // namespace firstpick::tests
