// `firstpick strength` as a function: texts in, report or faults out.
#pragma once

#include <map>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "strength/moment_text.hpp"
#include "strength_pipeline.hpp"
#include "support/us_rules.hpp"

namespace firstpick::tests {

using NamedFiles = std::map<std::string, std::string>;

inline checks::AskedAt asked(const std::string& now) {
  const auto moment = strength::moment_of(now, false);
  REQUIRE(std::holds_alternative<plan::Timestamp>(moment));
  const auto& at = std::get<plan::Timestamp>(moment);
  checks::AskedAt when;
  (at.has_offset ? when.zoned : when.local) = at;
  return when;
}

inline StrengthAnswer answer_to(const std::string& text, const NamedFiles& files, const tables::Tables& tables,
                                const std::string& now = "2026-03-03T07:20:00-05:00",
                                const std::string& name = "pour.toml") {
  return answer_strength(name, text, "", asked(now), tables,
                         [&](const std::string& path) -> std::optional<std::string> {
                           const auto found = files.find(path);
                           if (found == files.end()) return {};
                           return found->second;
                         });
}

inline checks::StrengthReport report_of(const StrengthAnswer& answer) {
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&answer.report)) FAIL(show(faults->front()));
  return std::get<checks::StrengthReport>(answer.report);
}

// "pour.toml:7:8 what", one for each fault.
inline std::vector<std::string> faults_of(const StrengthAnswer& answer) {
  if (!std::holds_alternative<std::vector<Diagnostic>>(answer.report)) FAIL("no fault");
  std::vector<std::string> texts;
  for (const Diagnostic& each : std::get<std::vector<Diagnostic>>(answer.report))
    texts.push_back(each.file + ":" + std::to_string(each.place.line) + ":" + std::to_string(each.place.column) + " " +
                    each.what);
  return texts;
}

}  // namespace firstpick::tests
