// The stages of a piece's life, as plans and rule sets name them.
#pragma once

#include <string_view>

namespace firstpick::plan {

enum class StageKind { strip, turn, yard, store, haul, set };

// The word that plans and rule sets use for a stage.
constexpr std::string_view word_for(StageKind kind) {
  switch (kind) {
    case StageKind::strip: return "strip";
    case StageKind::turn: return "turn";
    case StageKind::yard: return "yard";
    case StageKind::store: return "store";
    case StageKind::haul: return "haul";
    case StageKind::set: return "set";
  }
  return "";
}

}  // namespace firstpick::plan
