// The record of decisions for the safety officer: terminal, JSON and CSV.
#pragma once

#include <string>
#include <vector>

#include "decision_log/decision_log.hpp"
#include "output/terminal.hpp"

namespace firstpick::output {

std::string decisions_text(const std::vector<decision_log::Row>& rows, const TerminalStyle& style);
std::string decisions_json(const std::vector<decision_log::Row>& rows);
std::string decisions_csv(const std::vector<decision_log::Row>& rows);

std::string verified_text(const std::string& file, const decision_log::Verified& verified,
                          const TerminalStyle& style);
std::string verified_json(const std::string& file, const decision_log::Verified& verified);

}  // namespace firstpick::output
