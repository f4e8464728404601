// `firstpick board` as a function: texts in, board or faults out.
#pragma once

#include <map>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "board_pipeline.hpp"
#include "strength/moment_text.hpp"
#include "support/plan_files.hpp"

namespace firstpick::tests {

using FileTexts = std::map<std::string, std::string>;

inline BoardAnswer board_answer(const std::string& shift, const FileTexts& files, const std::string& now,
                                const tables::Tables& tables = real_tables(),
                                const std::string& name = "shift.toml") {
  const auto moment = strength::moment_of(now, false);
  REQUIRE(std::holds_alternative<plan::Timestamp>(moment));
  return make_board({name, shift, "", std::get<plan::Timestamp>(moment)}, tables,
                    [&](const std::string& path) -> std::optional<std::string> {
                      const auto found = files.find(path);
                      if (found == files.end()) return {};
                      return found->second;
                    });
}

inline board::Board board_of(const std::string& shift, const FileTexts& files, const std::string& now,
                             const tables::Tables& tables = real_tables()) {
  auto answer = board_answer(shift, files, now, tables);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&answer.board)) FAIL(show(faults->front()));
  return std::move(std::get<board::Board>(answer.board));
}

inline board::Board demo_board(const std::string& now = "2026-03-03T07:45:00") {
  const std::string file = "docs/demo/shift.toml";
  FileTexts files;
  for (const char* name :
       {"wall-panel.toml", "manhole-base.toml", "stair.toml", "box-culvert.toml", "round-lid.toml",
        "strength/wall-panel-bed-1.toml", "strength/wall-panel-bed-2.toml", "strength/bay-2.csv",
        "strength/box-culvert-breaks.toml"})
    files["docs/demo/" + std::string(name)] = contents_of("docs/demo/" + std::string(name));
  auto answer = board_answer(contents_of(file), files, now, real_tables(), file);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&answer.board)) FAIL(show(faults->front()));
  return std::move(std::get<board::Board>(answer.board));
}

// The text with the first `from` in it as `to`; a text without it is a failure.
inline std::string changed(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  if (at == std::string::npos) FAIL("not in the text: " << from);
  return text.replace(at, from.size(), to);
}

inline std::string shift_text(const std::string& pieces, const std::string& zone = "America/New_York") {
  return "format = 1\nplant = \"Yard\"\nzone = \"" + zone +
         "\"\nstarts = 2026-03-03T06:00:00\nends = 2026-03-03T18:00:00\n" + pieces;
}

// Of the pours that tests write, and of the specimens in the demo plans.
inline const std::string cast_of_pour = "2026-03-02T14:00:00", cast_of_own_test = "2026-03-02T16:30:00";

inline std::string piece_text(const std::string& plan, const std::string& pour = {},
                              const std::string& more = "count = 1\n", const std::string& cast = {}) {
  const std::string when = !cast.empty() ? cast : pour.empty() ? cast_of_own_test : cast_of_pour;
  return "[[piece]]\nplan = \"" + plan + "\"\n" + (pour.empty() ? "" : "pour = \"" + pour + "\"\n") + "cast = " + when +
         "\n" + more;
}

}  // namespace firstpick::tests
