// The shapes of the plans to start from: sizes invented, in round numbers of either system of units.
#pragma once

#include <span>
#include <string_view>
#include <vector>

namespace firstpick::editor {

struct Written {  // a key and its value as TOML; `us` empty: the same in both systems
  std::string_view key, si, us{};
};

struct NewPiece {
  std::string_view name, what, mark;
  std::string_view cast;  // how it lies in its form, and where the axes are
  std::vector<std::vector<Written>> solids;
  Written contact;             // of [[form.contact]]: faces or all_but
  std::vector<Written> picks;  // `at` of each insert
  Written leg;                 // its length
  bool headed = false;         // inserts by ACI 318-19 chapter 17; else a supplier's rating
};

std::span<const NewPiece> new_pieces();

}  // namespace firstpick::editor
