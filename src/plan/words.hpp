// The words that a key may take: of the plan format itself, or the keys of a table.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "plan/keys.hpp"
#include "plan/plan.hpp"
#include "tables/tables.hpp"

namespace firstpick::plan {

// In the order of the enums of plan.hpp.
constexpr std::array<std::string_view, 7> shape_words = {"box",   "cylinder", "cone", "pipe",
                                                         "prism", "wedge",    "mesh"};
constexpr std::array<std::string_view, 3> axis_words = {"x", "y", "z"};
constexpr std::array<std::string_view, 3> cure_words = {"field", "match", "standard"};
constexpr std::array<std::string_view, 6> stage_words = {
    word_for(StageKind::strip), word_for(StageKind::turn), word_for(StageKind::yard),
    word_for(StageKind::store), word_for(StageKind::haul), word_for(StageKind::set)};
constexpr std::array<std::string_view, 3> turn_method_words = {"edge", "table", "two-hooks"};
constexpr std::array<std::string_view, 2> landing_words = {"flat", "bearers"};
constexpr std::array<std::string_view, 3> restraint_words = {"rack", "brace", "none"};
constexpr std::array<std::string_view, 2> scale_state_words = {"hanging", "breaking-free"};
constexpr std::array<std::string_view, 2> unit_system_words = {"us", "si"};
constexpr std::array<std::string_view, 3> piece_model_words = {"line", "panel", "block"};
constexpr std::array<std::string_view, 2> shank_type_words = {"bolt", "stud"};
constexpr std::array<std::string_view, 9> insert_kind_words = {
    "headed", "rated", "plate", "loop-strand", "loop-bar", "loop-rope", "threaded", "bent-bar", "toggle"};
constexpr std::array<std::string_view, 2> purpose_words = {"lifting", "connection"};
constexpr std::array<std::string_view, 2> bar_end_words = {"straight", "hook"};
constexpr std::array<std::string_view, 4> hardware_kind_words = {"clutch", "screw-in", "shackle", "hook"};
constexpr std::array<std::string_view, 4> maturity_function_words = {
    "nurse-saul", "arrhenius", "freiesleben-hansen-pedersen", "en-1992-1-1"};
constexpr std::array<std::string_view, 3> strength_curve_words = {"hyperbolic", "exponential", "logarithmic"};
constexpr std::array<std::string_view, 2> leg_length_words = {"keep-length", "keep-angle"};
constexpr std::array<std::string_view, 6> direction_words = {"+x", "-x", "+y", "-y", "+z", "-z"};

// The value of an enum whose words are `words`.
template <class Enum, std::size_t n>
std::optional<Enum> value_of(std::string_view word, const std::array<std::string_view, n>& words) {
  for (std::size_t i = 0; i < n; ++i)
    if (words[i] == word) return static_cast<Enum>(i);
  return {};
}

inline std::string_view word_for(Shape shape) { return shape_words[static_cast<std::size_t>(shape)]; }
inline std::string_view word_for(HardwareKind kind) { return hardware_kind_words[static_cast<std::size_t>(kind)]; }

// Every word that may stand there, for messages and for the comparison.
std::vector<std::string_view> words_of(Words words, const tables::Tables& tables);

// The fixed words, without those of tables.
std::vector<std::string_view> fixed_words(Words words);

// "tables/steels.toml"; empty where the words are fixed.
std::string_view table_of(Words words);

}  // namespace firstpick::plan
