#include "plan/words.hpp"

#include <map>
#include <string>

namespace firstpick::plan {
namespace {

template <std::size_t n>
std::vector<std::string_view> list(const std::array<std::string_view, n>& words) {
  return {words.begin(), words.end()};
}

template <class Entry>
std::vector<std::string_view> keys(const std::map<std::string, Entry>& table) {
  std::vector<std::string_view> all;
  for (const auto& [key, entry] : table) all.push_back(key);
  return all;
}

}  // namespace

std::vector<std::string_view> fixed_words(Words words) {
  switch (words) {
    case Words::unit_systems: return list(unit_system_words);
    case Words::shapes: return list(shape_words);
    case Words::axes: return list(axis_words);
    case Words::cures: return list(cure_words);
    case Words::insert_kinds: return list(insert_kind_words);
    case Words::piece_models: return list(piece_model_words);
    case Words::shank_types: return list(shank_type_words);
    case Words::purposes: return list(purpose_words);
    case Words::bar_ends: return list(bar_end_words);
    case Words::hardware_kinds: return list(hardware_kind_words);
    case Words::stage_kinds: return list(stage_words);
    case Words::maturity_functions: return list(maturity_function_words);
    case Words::strength_curves: return list(strength_curve_words);
    case Words::turn_methods: return list(turn_method_words);
    case Words::landings: return list(landing_words);
    case Words::restraints: return list(restraint_words);
    case Words::scale_states: return list(scale_state_words);
    case Words::leg_lengths: return list(leg_length_words);
    default: return {};
  }
}

std::vector<std::string_view> words_of(Words words, const tables::Tables& tables) {
  switch (words) {
    case Words::rule_sets: return keys(tables.rule_sets);
    case Words::concretes: return keys(tables.concretes);
    case Words::finishes: return keys(tables.form_faces);
    case Words::steels: return keys(tables.steels);
    case Words::sling_kinds: return keys(tables.slings);
    case Words::hoist_classes: return keys(tables.hoists);
    case Words::growth_curves: return keys(tables.growth_curves);
    case Words::grounds: return keys(tables.grounds);
    default: return fixed_words(words);
  }
}

std::string_view table_of(Words words) {
  switch (words) {
    case Words::rule_sets: return "tables/rules";
    case Words::concretes: return "tables/concretes.toml";
    case Words::finishes: return "tables/form-faces.toml";
    case Words::steels: return "tables/steels.toml";
    case Words::sling_kinds: return "tables/slings.toml";
    case Words::hoist_classes: return "tables/hoists.toml";
    case Words::growth_curves: return "tables/growth-curves.toml";
    case Words::grounds: return "tables/grounds.toml";
    default: return {};
  }
}

}  // namespace firstpick::plan
