#include "plan/read_plan.hpp"

#include "plan/contradictions.hpp"
#include "plan/read_sections.hpp"
#include "plan/values.hpp"

namespace firstpick::plan {
namespace {

PlanWithLayout read_sections(const std::string& file, const toml::table& table, Reading& reading) {
  Fields in(table, section(""), reading);
  PlanWithLayout read;
  Plan& plan = read.plan;
  plan.file = file;
  in.format("format");
  plan.rules = in.word("rules");
  if (const toml::table* piece = in.inside("piece")) plan.piece = read_piece(*piece, reading);
  if (const toml::table* concrete = in.inside("concrete")) plan.concrete = read_concrete(*concrete, reading);
  if (const toml::table* form = in.inside("form")) plan.form = read_form(*form, reading);
  for (const toml::table* each : in.each("insert")) plan.inserts.push_back(read_insert(*each, reading));
  for (const toml::table* each : in.each("sling")) plan.slings.push_back(read_sling(*each, reading));
  for (const toml::table* each : in.each("hardware")) plan.hardware.push_back(read_hardware(*each, reading));
  for (const toml::table* each : in.each("crane")) plan.cranes.push_back(read_crane(*each, reading));
  for (const toml::table* each : in.each("rigging")) plan.riggings.push_back(read_rigging(*each, reading));
  for (const toml::table* each : in.each("stage")) plan.stages.push_back(read_stage(*each, reading));
  if (const toml::table* layout = in.inside("layout")) read.layout = read_layout(*layout, reading);
  return read;
}

// Of a plan in another format nothing else can be said.
bool is_of_another_format(const toml::table& table) {
  const toml::value<std::int64_t>* format = table.get("format") ? table.get("format")->as_integer() : nullptr;
  return format && format->get() != format_read;
}

}  // namespace

std::variant<PlanWithLayout, std::vector<Diagnostic>> read_plan_with_layout(const std::string& file, std::string_view text,
                                                                            const tables::Tables& tables) {
  const auto parsed = tables::parse_toml(file, text);
  if (const auto* fault = std::get_if<Diagnostic>(&parsed)) return std::vector{*fault};

  const auto& table = std::get<toml::table>(parsed);
  Faults faults(file, text);
  Reading reading{.faults = faults, .tables = tables};
  if (is_of_another_format(table)) {
    read_format(*table.get("format"), *find_key(section(""), "format"), faults);
    return faults.in_order_of_place();
  }
  PlanWithLayout read = read_sections(file, table, reading);
  reading.names.report(faults);
  check_riggings(read.plan, reading);
  check_form(read.plan, reading);
  check_order_of_stages(read.plan, faults);
  check_moments(reading);
  if (!faults.none()) return faults.in_order_of_place();
  return read;
}

std::variant<Plan, std::vector<Diagnostic>> read_plan(const std::string& file, std::string_view text,
                                                      const tables::Tables& tables) {
  auto read = read_plan_with_layout(file, text, tables);
  if (auto* faults = std::get_if<std::vector<Diagnostic>>(&read)) return std::move(*faults);
  return std::move(std::get<PlanWithLayout>(read).plan);
}

}  // namespace firstpick::plan
