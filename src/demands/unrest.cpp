// A body on one pick or on picks in one line turns about that line, and comes back only if its load centre is
// below it.

#include "demands/unrest.hpp"

#include <fmt/format.h>

#include "demands/imbalance.hpp"

namespace firstpick::demands {

namespace {

constexpr double in_line_within = 1e-6;  // of the size

double along(const Position& p, const Direction& d, Length size) {
  return (d.x * p.x + d.y * p.y + d.z * p.z) / size;
}

// Height of the taut picks above the load centre over the size, `up` being up: of one pick its own, of more
// that of the line through the two farthest apart where it passes the load centre.
double height_of_picks(const HungPiece& piece, const Hanging& hanging, const Direction& up) {
  const LoadCentre centre = load_centre(piece);
  std::vector<Position> taut;
  for (std::size_t i = 0; i < piece.legs.size(); ++i)
    if (!piece.legs[i].to_carrier && hanging.legs[i].tension > 1e-9 * centre.total)
      taut.push_back(piece.legs[i].at - centre.at);
  if (taut.empty()) return 0.0;

  Position one = taut.front(), line;
  for (const Position& a : taut)
    for (const Position& b : taut)
      if (norm(b - a) > norm(line)) one = a, line = b - a;
  const Position level = line - up * (along(line, up, centre.size) * centre.size);
  if (!(norm(level) > in_line_within * centre.size)) return along(one + 0.5 * line, up, centre.size);
  const double to_centre = -dot(one, level) / dot(level, level);
  return along(one + to_centre * line, up, centre.size);
}

bool hangs_on_a_sheave(const HungPiece& piece, const Hanging& hanging) {
  for (const auto& group : piece.equalised)
    if (group.size() > 1 && hanging.legs[group.front()].tension > Force{}) return true;
  return false;
}

}  // namespace

NotAssessed would_move(const HungPiece& piece, const Hanging& hanging) {
  if (hangs_on_a_sheave(piece, hanging))
    return {
        "the piece would tip: the equalised legs run over their sheave, and the centre of gravity is not low "
        "enough below the picks to stop them",
        "legs that are not equalised, or longer ones"};
  const double height = height_of_picks(piece, hanging, hanging.up);
  if (height < -in_line_within)
    return {"the piece would roll: its centre of gravity is above the picks",
            "inserts well above the centre of gravity, or a third leg off the line of the others"};
  if (height < in_line_within)
    return {"the piece would roll: its centre of gravity is level with the picks, and nothing brings it back",
            "inserts well above the centre of gravity, or a third leg off the line of the others"};
  return {"the piece would not hang still: it can move without lifting its weight",
          "a third leg off the line of the others; fewer sheaves"};
}

NotAssessed would_turn(const Carrier& beam) {
  return {fmt::format("{} would not hang still: it can turn or swing without lifting its load", beam.id),
          "its upper holes well above its lower ones; legs at both its ends that pull"};
}

NotAssessed would_stir(const HungPiece& piece, const Hanging& hanging, std::size_t loosest) {
  if (loosest > 0 && !piece.carriers[loosest - 1].is_sheave) return would_turn(piece.carriers[loosest - 1]);
  return would_move(piece, hanging);
}

NotAssessed hangs_idle(const Carrier& carrier) {
  return {fmt::format("{} carries next to nothing: its legs hang slack, and it finds no rest", carrier.id),
          "legs of the right lengths, or leave it out"};
}

NotAssessed rolled_over(const HungPiece& piece, const Hanging& hanging) {
  const char* remedy = "inserts above the centre of gravity; or state which side is up at this lift";
  const Direction upright = (1.0 / norm(piece.upright)) * piece.upright;
  if (height_of_picks(piece, hanging, upright) < 0.0)
    return {"the piece would roll over: its centre of gravity is above the picks", remedy};
  return {"the piece would turn by more than a right angle before it hangs", remedy};
}

}  // namespace firstpick::demands
