#include "unit/plan/plan_text.hpp"

#include <algorithm>
#include <variant>

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include "support/hand_made_rules.hpp"

namespace firstpick::tests {

const tables::Tables& plan_words() {
  static const tables::Tables tables = [] {
    tables::Tables made_tables = hand_made_tables();
    made_tables.rule_sets.emplace("us", hand_made_rules());
    for (const std::string kind : {"normalweight", "sand-lightweight"})
      made_tables.concretes.emplace(kind, tables::ConcreteKind{kind, made_ratio("lambda", 1.0),
                                                               made("low", Density{1000.0 * kg_per_m3}),
                                                               made("high", Density{3000.0 * kg_per_m3})});
    for (const std::string steel : {"grade 36", "grade 55"})
      made_tables.steels.emplace(
          steel, tables::Steel{steel, made("futa", Stress{400.0 * MPa}), made("fya", Stress{250.0 * MPa})});
    for (const std::string kind : {"chain", "wire-rope"})
      made_tables.slings.emplace(kind, tables::SlingKind{kind, made_ratio("design_factor", 4.0)});
    return made_tables;
  }();
  return tables;
}

const std::string& whole_plan() {
  static const std::string text = R"(format = 1
rules = "us"

[piece]
mark = "B-1"
title = "Block"
engineer = "somebody"

[[piece.solid]]
name = "block"
shape = "box"
size = ["2 m", "1 m", "0.5 m"]
at = ["0 m", "0 m", "0 m"]

[concrete]
kind = "normalweight"
density = "2400 kg/m3"
density_tolerance = "3 %"

[concrete.evidence]
specimen = "cube 150 mm"
cast = 2026-03-02T16:30:00
tested = 2026-03-03T07:10:00
results = ["20 MPa", "21 MPa"]

[form]
[[form.contact]]
all_but = "+z"
finish = "smooth"
[[form.attached]]
what = "pallet"
weight = "100 kg"

[[insert]]
id = "A1"
kind = "headed"
at = ["0.5 m", "0.5 m", "0.5 m"]
shank = "20 mm"
rating = { load = "2 t" }

[[insert]]
id = "A2"
kind = "headed"
at = ["1.5 m", "0.5 m", "0.5 m"]

[[sling]]
id = "chain"
kind = "chain"

[[crane]]
id = "bay-2"
rated = "10 t"

[[rigging]]
id = "two-leg"
legs = [
  { to = "A1", length = "1 m", gear = "chain" },
  { to = "A2", length = "1.1 m", gear = "chain" },
]

[[stage]]
kind = "strip"
rigging = "two-leg"
crane = "bay-2"
at = 2026-03-03T08:00:00

[[stage]]
kind = "yard"
rigging = "two-leg"
)";
  return text;
}

std::string with(std::string text, std::string_view from, std::string_view to) {
  const std::size_t at = text.find(from);
  INFO(from);
  REQUIRE(at != std::string::npos);
  REQUIRE(text.find(from, at + 1) == std::string::npos);
  return text.replace(at, from.size(), to);
}

plan::Plan plan_of(std::string_view text) {
  auto read = plan::read_plan("plan.toml", text, plan_words());
  std::string shown;
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&read))
    for (const Diagnostic& fault : *faults) shown += show(fault, text);
  INFO(shown);
  REQUIRE(std::holds_alternative<plan::Plan>(read));
  return std::get<plan::Plan>(read);
}

std::vector<std::string> faults_of(std::string_view text) {
  const auto read = plan::read_plan("plan.toml", text, plan_words());
  std::vector<std::string> all;
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&read))
    for (const Diagnostic& fault : *faults)
      all.push_back(fmt::format("{}:{} {}{}{}", fault.place.line, fault.place.column, fault.what,
                                fault.help.empty() ? "" : " | ", fault.help));
  return all;
}

std::string place_of(std::string_view text, std::string_view found) {
  const std::size_t at = text.find(found);
  INFO(found);
  REQUIRE(at != std::string_view::npos);
  const std::string_view before = text.substr(0, at);
  const std::size_t line_break = before.rfind('\n');
  return fmt::format("{}:{}", std::count(before.begin(), before.end(), '\n') + 1,
                     line_break == std::string_view::npos ? at + 1 : at - line_break);
}

}  // namespace firstpick::tests
