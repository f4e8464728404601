// An insert as the author of the plan wrote it: part of plan.hpp.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "record/diagnostic.hpp"
#include "units/vector.hpp"

namespace firstpick::plan {

enum class Axis { x, y, z };

struct RatedRange {                   // directions of the pull for which a load is declared
  std::optional<Angle> from;          // of the pull from the axis of the insert; empty: from zero
  Angle to{};
  Force load{};
  bool across = false;                // for a pull across the plane of the insert
  Place place;
};

struct Rating {                       // the supplier's declared capacity
  Force load{};
  std::optional<Stress> at_strength;
  std::optional<double> includes_factor;   // the factor on failure that the declared load includes
  std::optional<Angle> maximum_angle;      // of the pull from the axis of the insert
  std::optional<Axis> plane;               // of an insert that is made to be pulled in one plane: along it in the face
  std::optional<Angle> in_plane_within;    // a pull that leaves that plane by more is across it
  std::optional<Length> minimum_edge;      // distance from every edge of the face that it is declared for
  std::optional<Length> minimum_corner;    // the same along the edge of a panel to its ends
  std::optional<Length> minimum_spacing;   // from insert to insert
  std::vector<RatedRange> ranges;          // where the declared load changes with the direction of the pull
  Place place;
};

struct MarkedSize {                   // the load class stamped on an insert or a clutch
  Force value{};
  std::string text;                   // as the plan writes it: "1.3 t"
};

enum class MadeFor { lifting, connection };

struct Loop {                         // of bar, strand or wire rope: both legs go into the concrete
  std::optional<Length> diameter;     // of the bar, of one strand, of the rope
  std::optional<long long> strands;   // that lie side by side in the loop
  std::optional<Length> offset;       // by how much one strand stands higher than another; zero: level
  std::optional<Length> leg_length;   // embedded, of one leg along its line, bends included
  std::optional<Force> breaking_load; // of one strand, of the rope, from its certificate
  std::optional<Length> bend_radius;  // smallest, inside
  std::optional<Angle> opening;       // between the two legs where they meet above the concrete
  std::optional<Length> pin;          // diameter of what goes through the loop, where that is no hook
  std::optional<Length> minimum_edge; // that the engineer's design or test asks for
  std::optional<Stress> bond;         // stated by the engineer instead of the table's
  Place place;
};

enum class BarEnd { straight, hook };

struct AnchorBars {                   // bars that hold the body of concrete which would break out with the insert
  std::optional<long long> count;
  std::optional<Length> diameter;
  std::optional<Stress> yield_strength;
  std::optional<bool> ribbed;
  std::optional<Length> distance;     // of the farthest bar from the axis of the insert
  std::optional<Length> top, bottom;  // depth of their ends below the face
  std::optional<BarEnd> top_end, bottom_end;
  Place place;
};

struct Insert {
  std::string id;
  std::string kind;                   // headed, rated, loops, plate, threaded; other words of the trade are HOLD
  Position at;
  std::optional<Length> embedment;    // effective, to the bearing side of the head
  std::optional<Length> shank;        // diameter
  std::optional<bool> threaded;       // whether a thread lies in the stressed length of the shank
  std::optional<Length> thread_pitch; // of that thread: takes it out of the steel area
  bool welded_stud = false;           // headed stud: shear on the full steel strength; else a bolt
  std::optional<Area> head_bearing_area;
  std::string steel;                  // key in tables/steels.toml
  std::optional<bool> hanger_bar;
  std::optional<Rating> rating;
  std::string certificate;
  std::optional<bool> position_confirmed;
  std::optional<MarkedSize> size;
  std::optional<MadeFor> made_for;
  std::string engineers_document;     // allows an eye of bent bar, or a toggle
  std::optional<Loop> loop;
  std::optional<AnchorBars> bars;
  std::optional<Length> washer;       // side of the square plate on the far face, of a through-bolt
  std::optional<Length> thread, thread_engagement;  // diameter of the thread; how far the screw-in part is in
  Place place;
};

}  // namespace firstpick::plan
