#include "plan/strength_file.hpp"

#include "plan/contradictions.hpp"
#include "plan/read_sections.hpp"
#include "plan/values.hpp"

namespace firstpick::plan {
namespace {

const Section& of_strength_file(std::string_view path) { return section(path, strength_file_sections()); }

RequiredStrength read_required(const toml::table& table, Reading& reading) {
  Fields in(table, of_strength_file("required"), reading);
  return {.strength = in.quantity<Stress>("strength").value_or(Stress{}), .at = in.moment("at"),
          .place = in.place()};
}

TemperatureLogFile read_log(const toml::table& table, Reading& reading) {
  Fields in(table, of_strength_file("temperature_log"), reading);
  return {.file = in.line("file"), .sensor = in.line("sensor"), .cast = in.moment("cast"), .place = in.place()};
}

Companion read_companion(const toml::table& table, Reading& reading) {
  Fields in(table, of_strength_file("calibration.companion"), reading);
  return {.tested = in.moment("tested"),
          .results = in.quantities<Stress>("results"),
          .specimen = in.specimen("specimen"),
          .cure = in.choice<Cure>("cure", cure_words),
          .place = in.place()};
}

Calibration read_calibration(const toml::table& table, Reading& reading) {
  Fields in(table, of_strength_file("calibration"), reading);
  Calibration calibration{
      .mix = in.line("mix"),
      .file = in.line("file"),
      .function = in.choice<MaturityFunction>("function", maturity_function_words),
      .curve = in.choice<StrengthCurve>("curve", strength_curve_words),
      .datum = in.quantity<Temperature>("datum"),
      .activation_temperature = in.quantity<Temperature>("activation_temperature"),
      .cured_at = in.quantity<Temperature>("cured_at"),
      .specimen = in.specimen("specimen"),
      .companions = {},
      .place = in.place()};
  for (const toml::table* each : in.each("calibration.companion"))
    calibration.companions.push_back(read_companion(*each, reading));
  return calibration;
}

Growth read_growth(const toml::table& table, Reading& reading) {
  Fields in(table, of_strength_file("growth"), reading);
  return {.curve = in.word("curve"),
          .strength_at_28_days = in.quantity<Stress>("strength_at_28_days"),
          .temperature = in.quantity<Temperature>("temperature"),
          .place = in.place()};
}

Season read_season(const toml::table& table, Reading& reading) {
  Fields in(table, of_strength_file("season"), reading);
  return {.file = in.line("file"), .specified = in.quantity<Stress>("specified"), .place = in.place()};
}

StrengthFile read_parts(const std::string& name, const toml::table& table, Reading& reading) {
  Fields in(table, of_strength_file(""), reading);
  StrengthFile file{.file = name};
  in.format("format");
  file.rules = in.word("rules");
  file.mark = in.line("mark");
  file.units = in.choice<UnitSystem>("units", unit_system_words).value_or(UnitSystem::si);
  if (const toml::table* evidence = in.inside("evidence")) {
    file.evidence = read_evidence(*evidence, of_strength_file("evidence"), reading);
    file.evidence->section = "[evidence]";
  }
  if (const toml::table* required = in.inside("required")) file.required = read_required(*required, reading);
  if (const toml::table* log = in.inside("temperature_log")) file.temperature_log = read_log(*log, reading);
  if (const toml::table* fit = in.inside("calibration")) file.calibration = read_calibration(*fit, reading);
  if (const toml::table* growth = in.inside("growth")) file.growth = read_growth(*growth, reading);
  if (const toml::table* season = in.inside("season")) file.season = read_season(*season, reading);
  return file;
}

}  // namespace

std::variant<StrengthFile, std::vector<Diagnostic>> read_strength_file(const std::string& file,
                                                                       std::string_view text,
                                                                       const tables::Tables& tables) {
  const auto parsed = tables::parse_toml(file, text);
  if (const auto* fault = std::get_if<Diagnostic>(&parsed)) return std::vector{*fault};
  const auto& table = std::get<toml::table>(parsed);
  Faults faults(file, text);
  Reading reading{.faults = faults, .tables = tables, .sections = strength_file_sections()};
  StrengthFile read = read_parts(file, table, reading);
  check_moments(reading);
  if (!faults.none()) return faults.in_order_of_place();
  return read;
}

bool is_plan(std::string_view text) {
  const auto parsed = tables::parse_toml("", text);
  const auto* table = std::get_if<toml::table>(&parsed);
  return table && table->contains("piece");
}

}  // namespace firstpick::plan
