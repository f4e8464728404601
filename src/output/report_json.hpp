// The parts that the JSON of one report and that of several share.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "checks/report.hpp"
#include "record/diagnostic.hpp"

namespace firstpick::output {

// Keys in the order they are written, so that the same input gives the same bytes.
using OrderedJson = nlohmann::ordered_json;

OrderedJson report_json(const checks::Report& report);
OrderedJson finding_json(const checks::Finding& finding);
OrderedJson broken_json(const std::string& file, const std::vector<Diagnostic>& faults);  // a plan that could not be read
OrderedJson heading_json(OrderedJson plan);                                               // format, program, plan

OrderedJson finite_json(double value);                       // null where it is not finite
OrderedJson finite_json(const std::optional<double>& value);  // or absent
OrderedJson text_json(const std::string& text);              // null where it is empty

// One element as it is, several as an array.
std::string whole_json(const OrderedJson& elements);

}  // namespace firstpick::output
