// A piece set down: what it stands on, and how far it may lean before it tips.
//
//   alpha = atan(d / h)     d: centre of gravity's foot to the nearest side of the hull of what it stands on
//                           h: centre of gravity above it
//
// On flat ground that is the face that looks down; on bearers, where they meet it. Source: statics. Negative where the
// centre of gravity stands outside: it tips over by itself.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "piece/body.hpp"
#include "plan/plan.hpp"
#include "record/outcome.hpp"
#include "units/vector.hpp"

namespace firstpick::demands {

struct Standing {
  Length margin{};          // d; negative outside
  Length height{};          // h
  Angle tipping{};          // alpha
  // Shares of the weight on two parallel bearers, in the order of the plan; nothing for others.
  std::optional<std::array<double, 2>> shares;
};

// `bearers` empty: flat ground. `up` is the vertical in piece axes, a unit vector, `centre` the centre of gravity.
// Not assessed: no flat face below; a curved face that may reach lower; a bearer beside the piece or without its ends.
Outcome<Standing> set_down(const piece::Body& body, const std::vector<plan::Bearer>& bearers,
                           const Position& centre, const Direction& up);

}  // namespace firstpick::demands
