#include "editor/plan_writer.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "units/parse.hpp"

namespace firstpick::editor {
namespace {

using plan::Key;
using plan::Kind;

constexpr std::size_t column_of_comments = 44, widest = 110;
constexpr std::array<std::string_view, 11> us_units = {"in",  "ft",  "yd",  "lb",  "lbf",  "kip",
                                                       "psi", "ksi", "psf", "pcf", "short"};

std::string_view unit_of(Kind kind, UnitSystem units) {
  const bool us = units == UnitSystem::us;
  switch (kind) {
    case Kind::length: return us ? "ft" : "m";
    case Kind::area: return us ? "in2" : "mm2";
    case Kind::force: return us ? "lb" : "kg";
    case Kind::stress: return us ? "psi" : "MPa";
    case Kind::density: return us ? "lb/ft3" : "kg/m3";
    case Kind::speed: return us ? "ft/min" : "m/min";
    default: return {};
  }
}

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

bool is_in_us_units(std::string_view text) {
  while (!text.empty()) {
    const auto begin = std::ranges::find_if(text, is_letter);
    const auto end = std::find_if_not(begin, text.end(), is_letter);
    if (std::ranges::find(us_units, std::string_view(begin, end)) != us_units.end()) return true;
    text = std::string_view(end, text.end());
  }
  return false;
}

std::string in_two_figures(double number) {
  const double step = std::pow(10.0, std::floor(std::log10(number)) - 1.0);
  const double rounded = std::round(number / step) * step;
  return rounded >= 10.0 ? fmt::format("{:.0f}", rounded) : fmt::format("{:.2g}", rounded);
}

std::string in_system(std::string_view quantity, Kind kind, UnitSystem units) {
  const std::string_view unit = unit_of(kind, units);
  if (unit.empty() || is_in_us_units(quantity) == (units == UnitSystem::us)) return std::string(quantity);
  const auto si = parse_in_si(quantity, plan::dimension_for(kind));
  const auto one = number_in_si(1.0, unit, plan::dimension_for(kind));
  const double* value = std::get_if<double>(&si);
  return value && one && *value > 0.0 ? fmt::format("{} {}", in_two_figures(*value / *one), unit)
                                      : std::string(quantity);
}

bool is_number(const Key& key) { return plan::is_quantity(key.kind) || key.kind == Kind::number; }

std::string plain(std::string_view text) {
  std::string all(text);
  std::erase(all, '`');
  return all;
}

}  // namespace

std::string example_in(UnitSystem units, const Key& key) {
  if (!plan::is_quantity(key.kind)) return std::string(key.example);
  std::string written;
  std::string_view left = key.example;
  while (true) {
    const auto from = left.find('"');
    const auto to = from == std::string_view::npos ? from : left.find('"', from + 1);
    if (to == std::string_view::npos) return written.append(left);
    written.append(left.substr(0, from + 1))
        .append(in_system(left.substr(from + 1, to - from - 1), key.kind, units));
    written += '"';
    left.remove_prefix(to + 1);
  }
}

const Key& PlanWriter::key_named(std::string_view name) const {
  assert(section_);
  const Key* key = plan::find_key(*section_, name);
  assert(key);  // the list of keys has changed: a test writes every plan
  return *key;
}

void PlanWriter::note(std::string_view words) {
  while (words.size() > widest - 2) {
    const std::size_t end = words.rfind(' ', widest - 2);
    if (end == std::string_view::npos) break;
    line(fmt::format("# {}", words.substr(0, end)));
    words.remove_prefix(end + 1);
  }
  line(words.empty() ? "#" : fmt::format("# {}", words));
}

void PlanWriter::open(std::string_view path) {
  section_ = &plan::section(path);
  done_.clear();
  line("");
  if (told_.insert(std::string(path)).second && !section_->doc.empty()) note(plain(section_->doc));
  line(plan::heading(*section_));
}

void PlanWriter::open_to_write(std::string_view path) {
  section_ = &plan::section(path);
  done_.clear();
  line("");
  note(fmt::format("{} {} without it.", plain(section_->doc), plain(section_->absent)));
  note(plan::heading(*section_));
}

void PlanWriter::put(std::string written, const Key& key, std::string_view mark) {
  done_.emplace(key.name);
  const bool is_new = told_.insert(fmt::format("{}.{}", section_->path, key.name)).second;
  std::string comment(mark);
  if (is_new) comment += (comment.empty() ? "" : ": ") + plain(key.doc);
  if (comment.empty()) return line(written);
  if (std::max(written.size() + 2, column_of_comments) + 2 + comment.size() > widest) {
    note(comment);
    return line(written);
  }
  written.resize(std::max(written.size() + 2, column_of_comments), ' ');
  line(written + "# " + comment);
}

void PlanWriter::given(std::string_view name, std::string_view value) {
  const Key& key = key_named(name);
  put(fmt::format("{} = {}", name, value), key, is_number(key) ? "EXAMPLE" : "");
}

void PlanWriter::to_write(std::string_view name) { to_write(name, example_in(units_, key_named(name))); }

void PlanWriter::to_write(std::string_view name, std::string_view value) {
  const Key& key = key_named(name);
  put(fmt::format("# {} = {}", name, value), key, key.absent.starts_with("HOLD") ? "HOLD without it" : "");
}

void PlanWriter::to_write_inside(std::string_view path) {
  const plan::Section& inner = plan::section(path);
  std::string table, words;
  std::vector<std::string> alone;
  for (const Key& key : inner.keys) {
    if (!key.required && key.absent != "HOLD") continue;  // what only some have
    table += fmt::format("{}{} = {}", table.empty() ? "" : ", ", key.name, example_in(units_, key));
    alone.push_back(fmt::format("# {}.{} = {}", plan::last_part(path), key.name, example_in(units_, key)));
    words += fmt::format("{}{}", words.empty() ? "" : "; ", plain(key.doc));
  }
  const bool is_new = told_.insert(std::string(path)).second;
  if (is_new) note(fmt::format("{} HOLD without it: {}.", inner.doc, words));
  const std::string together = fmt::format("# {} = {{ {} }}", plan::last_part(path), table);
  if (together.size() <= widest) return line(together);
  for (const std::string& each : alone) line(each);
}

void PlanWriter::rest_to_write() {
  for (const Key& key : section_->keys)
    if (key.absent == "HOLD" && !done_.contains(std::string(key.name))) to_write(key.name);
}

}  // namespace firstpick::editor
