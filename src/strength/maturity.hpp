// Maturity: temperature and time as one number, the equivalent age at a reference temperature.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/strength_file.hpp"
#include "record/outcome.hpp"
#include "record/source.hpp"
#include "strength/temperature_log.hpp"
#include "tables/tables.hpp"
#include "units/quantity.hpp"

namespace firstpick::strength {

// One stretch of curing at its mean temperature.
struct CuringInterval {
  Duration length{};
  Temperature mean{};
};

// A maturity function with its constants.
struct MaturityLaw {
  plan::MaturityFunction function = plan::MaturityFunction::nurse_saul;
  Temperature reference{};   // at which the equivalent age passes as time does; en-1992-1-1 has its own
  Temperature datum{};                   // nurse-saul
  Temperature activation_temperature{};  // arrhenius
  tables::MaturityConstants constants;
};

// The law that a calibration names. Not assessed: a datum or activation temperature that it needs and does not
// state; a reference at or below the datum; an activation temperature outside the range of the tables.
Outcome<MaturityLaw> maturity_law(const plan::Calibration& calibration, const tables::MaturityConstants& constants);

// Temperature-adjusted age of EN 1992-1-1 (B.10), for growth curves.
MaturityLaw en_1992_1_1_law(const tables::MaturityConstants& constants);

// How fast the equivalent age grows: 1 at the reference. Never negative; 0 at and below the datum.
Ratio rate(const MaturityLaw& law, Temperature temperature);

Duration equivalent_age(const MaturityLaw& law, const std::vector<CuringInterval>& intervals);

// The temperature-time factor of Nurse and Saul, in degC h.
double temperature_time_degC_h(Temperature datum, const std::vector<CuringInterval>& intervals);

// The stretches of the log that count, from the pour to `until`, each between two readings with the mean of
// both; cut at the pour and at `until` by straight lines. Nothing before the first or past the last reading.
std::vector<CuringInterval> curing_intervals(const TemperatureLog& log, const plan::Timestamp& cast,
                                             long long until_seconds);

// "Nurse-Saul, datum 0 degC", for every output.
std::string words_for(const MaturityLaw& law);

// The table entries behind the law.
std::vector<Source> sources_of(const MaturityLaw& law);

}  // namespace firstpick::strength
