// Every key a plan may have, once: the reader, its hints and the tables of docs/plan-file.md come from
// this list.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "units/dimension.hpp"

namespace firstpick::plan {

// What one value of a key is. The quantities are strings with their unit.
enum class Kind {
  length, area, force, stress, density, angle, speed, duration, temperature, share,  // share: "3 %"
  number,    // a plain number, or the same in quotes
  format,    // the whole number of a format this program reads
  whole,     // a whole number, at least 1
  name,      // one line of text, not empty: ids
  text,      // one line of text, may be empty
  word,      // one of Key::words
  specimen,  // "cylinder 4x8 in", "cube 150 mm"
  path,      // of a file below the plan's folder
  yes_no,
  moment,    // date and time
  date       // a day
};

// How many of them.
enum class Count {
  one,
  two,          // [a, b]
  three,        // along x, y, z
  two_points,   // [[x, y, z], [x, y, z]]
  path,         // [[x, y, z], [x, y, z], ...]: at least two places
  list,         // [a, b, ...], at least one
  one_or_list,  // a, or [a, b, ...]
  points,       // [[x, y], [x, y], [x, y], ...]: at least three corners
  point_lists,  // [points, points, ...]
  groups        // [[a, b], [c, d, e], ...]: each of at least two
};

enum class Limit {
  none, more_than_zero, not_negative, below_100_percent, at_least_one, up_to_90_deg, up_to_180_deg,
  factor_of_safety,  // from 1 to 12: what gear is rated with; more is a slip of the pen
  friction           // above 0 to 1: more is no friction of concrete
};

// Where the words of a key of Kind::word stand: in words.hpp, or in a table.
enum class Words {
  none, unit_systems, shapes, axes, cures, insert_kinds, shank_types, purposes, bar_ends, hardware_kinds, stage_kinds,
  piece_models, turn_methods, landings, restraints, scale_states, maturity_functions, strength_curves, leg_lengths,
  rule_sets, concretes, finishes, steels, sling_kinds, hoist_classes, grounds, growth_curves
};

// What a key of Kind::name names: itself defined by it, or to be found elsewhere in the plan.
enum class Names {
  none, insert, sling, hardware, crane, rigging, solid, solid_or_direction,
  rigging_part,          // a hook, a point of a beam, a sheave
  beam,
  insert_or_rigging_part,
  serial                 // of one piece, in a shift file
};

struct Key {
  std::string_view name;
  Kind kind = Kind::text;
  Count count = Count::one;
  Limit limit = Limit::none;
  Words words = Words::none;
  bool required = false;
  Names defines = Names::none;
  Names refers_to = Names::none;
  std::vector<std::string_view> shapes{};  // of the solids that use it; empty: all
  std::string_view doc{};      // one line
  std::string_view absent{};   // what absence means; empty only where required
  std::string_view example{};  // as a plan writes it
};

struct Section {
  std::string_view path;  // "" is the top of the file, "piece.solid" is [[piece.solid]]
  bool repeated = false;  // [[path]], a list of tables
  bool required = false;  // at least once in each table it belongs to
  std::string_view doc{};
  std::string_view absent{};
  std::vector<Key> keys{};
  std::string_view called = "the plan";  // the top of the file, in messages
};

using SectionList = std::vector<Section>;

// In the order in which a plan is written.
const SectionList& sections();
// Those of a strength file (strength_file.hpp): key_list_strength.cpp.
const SectionList& strength_file_sections();
// Those of a shift file (shift_file.hpp): key_list_shift.cpp.
const SectionList& shift_file_sections();
std::vector<Section> piece_sections();    // its first part: key_list_piece.cpp
std::vector<Section> lifting_sections();  // its second part: key_list_lifting.cpp
Section rated_range_section();             // two of an insert: key_list_insert.cpp
Section anchor_bars_section();
std::vector<Section> stage_sections();    // what a stage holds: key_list_stage.cpp
std::vector<Section> layout_sections();   // how `firstpick layout` may move the picks: key_list_layout.cpp

const Section& section(std::string_view path, const SectionList& list = sections());  // which must exist
const Key* find_key(const Section& section, std::string_view name);

// The sections directly inside: of "piece" the section "piece.solid".
std::vector<const Section*> sections_inside(const Section& outer, const SectionList& list = sections());
std::string_view last_part(std::string_view path);  // "solid" of "piece.solid"
std::string heading(const Section& section);        // "[[piece.solid]]"; Section::called for the top

bool is_quantity(Kind kind);
Dimension dimension_for(Kind kind);  // of a quantity, a number (none) or a share (none)

}  // namespace firstpick::plan
