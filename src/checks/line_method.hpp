// The line method of the precast handbook beside the plate: a check by hand, printed with it. It decides
// nothing.
#pragma once

#include <optional>
#include <string>

#include "checks/piece_model.hpp"
#include "checks/stage_facts.hpp"

namespace firstpick::checks {

struct LineMethod {
  Stress along{}, across{};  // tension of the strips along and across the panel
};

// Nothing where the method does not speak: no rectangle of one thickness, an opening, other than four picks,
// picks that lie unevenly, a panel that is turned, loads that are not known.
std::optional<LineMethod> line_method(const StageFacts& facts, const ModelChoice& model);

void tell_line_method(const StageFacts& facts, const ModelChoice& model, Trace& trace);

// Both answers in one sentence, and why they differ; empty where there are not two.
std::string line_method_told(const StageFacts& facts, const ModelChoice& model);

}  // namespace firstpick::checks
