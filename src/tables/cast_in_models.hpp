// What is known of loops, of bolts through the concrete and of threads: loops.toml, plates.toml.
#pragma once

#include <map>
#include <vector>

#include "record/source.hpp"
#include "units/quantity.hpp"

namespace firstpick::tables {

struct LoopModel {  // loops.toml. Where a value is a list, sources disagree and the lowest counts
  std::vector<Sourced<Stress>> strand_bond;  // safe uniform bond of strand
  Sourced<Ratio> bond_factor;                // on failure, that the safe bond holds
  Sourced<Stress> bond_strength;             // of the concrete of the tests
  Sourced<Length> strand_diameter;           // largest tested
  std::map<long long, Sourced<Ratio>> strands;  // what so many strands in one loop hold, over one
  Sourced<Ratio> offset_factor;              // where strands stand higher than others by up to offset_tested
  Sourced<Length> offset_tested;
  Sourced<Ratio> hook_factor;                // over a hook, over a pin of pin_tested
  Sourced<Length> pin_tested;
  Sourced<Length> member_depth;              // no guidance for strand in less
  std::vector<Sourced<RootStress>> bar_bond; // f_bu = beta sqrt(f)
  Sourced<Ratio> bar_bend;                   // least inside radius of a bend, over the diameter
  std::vector<Sourced<Angle>> maximum_angle; // of the pull from the axis of the loop
};

struct PlateModel {  // plates.toml
  Sourced<Ratio> bearing;            // B_n = 0.85 f_c A_1
  Sourced<RootStress> punching;      // V_n = 2.66 lambda sqrt(f_c) b_o h, plain concrete
  Sourced<Ratio> thread_engagement;  // least engaged length over the diameter of the thread
};

}  // namespace firstpick::tables
