// Kinds of inserts that a gate treats alike.
#pragma once

#include <string_view>

namespace firstpick::checks {

inline bool is_loop(std::string_view kind) {
  return kind == "loop-strand" || kind == "loop-bar" || kind == "loop-rope" || kind == "bent-bar";
}

// Loops that the rules of loops evaluate.
inline bool is_lifting_loop(std::string_view kind) {
  return kind == "loop-strand" || kind == "loop-bar" || kind == "loop-rope";
}

// Reinforcing bar bent to an eye, or a piece of wood or steel behind a hole.
inline bool is_improvised(std::string_view kind) {
  return kind == "bent-bar" || kind == "loop-bar" || kind == "toggle";
}

// What a hook or the bow of a shackle goes through.
inline bool takes_a_hook(std::string_view kind) {
  return is_loop(kind) || kind == "plate" || kind == "rated";
}

}  // namespace firstpick::checks
