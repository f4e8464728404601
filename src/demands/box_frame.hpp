// A box (culvert, vault without ends) hung from two lines of inserts in its top slab: the frame of its cross-section,
// of one unit of length of the barrel.
//
//   [B/It + 2H/(3 Is)] m1 + [H/(3 Is)] m2 = -[P c (B - c) - wt B^3/12 - S (B - 2c)]/It
//   [H/(3 Is)] m1 + [B/Ib + 2H/(3 Is)] m2 = -[wb B^3/12]/Ib
//
//   top at mid-span  m1 + P c - wt B^2/8 - S        at a pick  m1 + P c - wt c (B - c)/2
//   bottom at mid-span  m2 + wb B^2/8
//
// B, H     between the middles of the walls and of the slabs; It, Ib, Is second moments; c picks from the middle of the walls;
//          m1, m2 moments of the top and bottom corners, positive: tension outside
// P        of one line of picks, (wt + wb) B/2 + ws H; S: thrust of its legs x its height over the middle of the top slab
// Walls    m1 to m2, with tension wb B/2 + ws H at the top and wb B/2 at the bottom
//
// Source   least energy of a frame of prismatic members, derived; axial strain and the compression by thrust left out.
#pragma once

#include "record/outcome.hpp"
#include "units/beam_quantities.hpp"
#include "units/quantity.hpp"

namespace firstpick::demands {

struct BoxFrame {
  Length width{}, height{};                       // B, H
  Length top{}, bottom{}, side{};                 // thicknesses
  Stress top_load{}, bottom_load{}, side_load{};  // wt, wb, ws: per length of member and of barrel
  Length pick{};                                  // c
  PlateMoment thrust{};                           // S
};

struct BoxMoments {  // per length of the barrel
  PlateMoment top_corner{}, bottom_corner{}, top_middle{}, top_pick{}, bottom_middle{};
  LineLoad line_of_picks{};             // P
  LineLoad wall_top{}, wall_bottom{};   // tension of each wall
};

// Not assessed: numbers that are not usable, picks beyond the middle of the slab.
Outcome<BoxMoments> box_moments(const BoxFrame& box);

}  // namespace firstpick::demands
