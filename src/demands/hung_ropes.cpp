#include "demands/hung_ropes.hpp"

namespace firstpick::demands {

std::vector<std::vector<std::size_t>> ropes_of(const HungPiece& piece) {
  std::vector<std::vector<std::size_t>> ropes;
  std::vector<bool> in_group(piece.legs.size(), false);
  for (const auto& group : piece.equalised) {
    if (group.empty()) continue;
    ropes.push_back(group);
    for (const std::size_t leg : group) in_group[leg] = true;
  }
  for (std::size_t leg = 0; leg < piece.legs.size(); ++leg)
    if (!in_group[leg]) ropes.push_back({leg});
  return ropes;
}

}  // namespace firstpick::demands
