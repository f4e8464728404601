// A strength file as its author wrote it: what shows the strength of one pour, without the piece it is for.
// docs/strength-file.md describes it. As in a plan, an optional that is empty means "the file does not say".
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "plan/plan.hpp"
#include "record/diagnostic.hpp"
#include "tables/tables.hpp"

namespace firstpick::plan {

struct RequiredStrength {
  Stress strength{};
  std::optional<Timestamp> at;  // when the lift is to be made
  Place place;
};

struct TemperatureLogFile {
  std::string file;    // CSV, below the folder of the strength file
  std::string sensor;  // name of a column; empty: the only one
  std::optional<Timestamp> cast;
  Place place;
};

enum class MaturityFunction { nurse_saul, arrhenius, freiesleben_hansen_pedersen, en_1992_1_1 };
enum class StrengthCurve { hyperbolic, exponential, logarithmic };

struct Companion {  // specimens of this pour, tested to see whether the calibration is that of this concrete
  std::optional<Timestamp> tested;
  std::vector<Stress> results;
  std::optional<Specimen> specimen;
  std::optional<Cure> cure;
  Place place;
};

struct Calibration {
  std::string mix;
  std::string file;  // CSV of ages and strengths, below the folder of the strength file
  std::optional<MaturityFunction> function;
  std::optional<StrengthCurve> curve;
  std::optional<Temperature> datum;                  // nurse-saul
  std::optional<Temperature> activation_temperature; // arrhenius: activation energy over the gas constant
  std::optional<Temperature> cured_at;               // temperature of the calibration specimens
  std::optional<Specimen> specimen;
  std::vector<Companion> companions;
  Place place;
};

struct Growth {  // planning only
  std::string curve;  // key in tables/growth-curves.toml
  std::optional<Stress> strength_at_28_days;
  std::optional<Temperature> temperature;  // of the concrete after the last reading
  Place place;
};

struct Season {
  std::string file;  // CSV of strength tests, below the folder of the strength file
  std::optional<Stress> specified;
  Place place;
};

struct StrengthFile {
  std::string file;  // as named on the command line
  std::string rules, mark;
  UnitSystem units = UnitSystem::si;
  std::optional<Evidence> evidence;
  std::optional<RequiredStrength> required;
  std::optional<TemperatureLogFile> temperature_log;
  std::optional<Calibration> calibration;
  std::optional<Growth> growth;
  std::optional<Season> season;
};

// The strength file, or every fault of it in the order of the text.
std::variant<StrengthFile, std::vector<Diagnostic>> read_strength_file(const std::string& file,
                                                                       std::string_view text,
                                                                       const tables::Tables& tables);

// Whether the text has a [piece], so that it is a plan and no strength file. False for text that is no TOML.
bool is_plan(std::string_view text);

}  // namespace firstpick::plan
