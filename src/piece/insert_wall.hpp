// The wall or slab that an insert sits in, as a pull across it finds it: measured in the solid by lines through it.
//
//   across    of the normal of its face, and the two ways along the face, that along which least concrete lies in line: the
//             wall's normal. The face's own: the insert sits in the face of a slab or wall. Else in the end of one
//   ways      four ways in the middle of the wall, in steps of a quarter of its thickness: each ends where another member
//             holds the wall (concrete across it `support` times as thick), or at a free edge. thickness: the least found
//   round     where the two surfaces are cylinders or cones about one axis: what is solid above and below, all round
#pragma once

#include <array>
#include <optional>

#include "piece/body.hpp"
#include "record/outcome.hpp"

namespace firstpick::piece {

struct WallWay {
  Direction towards{};
  Length reach{};      // from the insert
  bool held = false;   // by another member; else a free edge
};

struct RoundWall {
  Position axis_at{};        // the point of the axis nearest to the insert
  Direction axis{};          // from `below` to `above`
  Length inside{}, outside{};  // radii
  Length above{}, below{};   // solid all round from the insert
};

struct InsertWall {
  Direction across{};    // out of the face, or to one side
  bool in_face = false;  // the insert sits in the face of the wall
  Length thickness{};
  Length off_middle{};   // the insert from the middle plane of the wall, to either side
  std::array<WallWay, 4> ways{};  // two pairs of opposite ways
  std::optional<RoundWall> round{};
};

// Not assessed: a body whose solid was not kept, a curved wall that is not round, a round one with an opening at the insert, one
// that turns away on both sides of the insert, as those of an octagon do.
Outcome<InsertWall> insert_wall(const Body& body, std::size_t insert, const Position& at, double support);

}  // namespace firstpick::piece
