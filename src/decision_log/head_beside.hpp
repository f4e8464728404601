// The hash of the last row, kept in a file beside the record, so that rows cut off at its end are missed.
#pragma once

#include <optional>
#include <string>

#include "decision_log/decision.hpp"

namespace firstpick::decision_log {

// "decisions.sqlite.head"
std::string head_file_of(const std::string& record);

// Replaces it as a whole. Whether it was written.
bool keep_head(const std::string& record, const Row& last);

// The hash that stands there; empty text: the file is there and holds no hash; nothing: there is no such file.
std::optional<std::string> kept_head(const std::string& record);

// 64 hexadecimal digits, small ones.
bool is_hash(const std::string& text);

}  // namespace firstpick::decision_log
