// A validator for the part of JSON Schema (draft-07) that our schemas use. A keyword that it does not know is
// an error of the test, never passed over.
#pragma once

#include <string>
#include <vector>

#include <nlohmann/json.hpp>

namespace firstpick::tests {

// "/piece/solid/0/size: what", one for each fault; none where `value` is valid.
std::vector<std::string> schema_faults(const nlohmann::json& schema, const nlohmann::json& value,
                                       const std::string& at = "");

}  // namespace firstpick::tests
