// The plan as its author wrote it: quantities typed, places kept for messages, nothing assumed.
//
// An optional that is empty means "the plan does not say". What absence means is decided by the rule that
// needs the value (a table look-up that says so, or HOLD), never here.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/insert.hpp"
#include "plan/stage_kind.hpp"
#include "record/diagnostic.hpp"
#include "units/print.hpp"
#include "units/vector.hpp"

namespace firstpick::plan {

template <class T>
struct Placed {  // a value and where the file says it
  T value;
  Place place;
};

// Date and time as written: seconds since 1970-01-01T00:00 of the writer's own clock; with an offset, of UTC.
struct Timestamp {
  long long seconds = 0;
  bool has_offset = false;  // two moments compare only if both or neither have one: read_plan refuses a mix
  std::string text;         // "2026-03-03 07:10", with seconds and offset where they are given
  long long offset_seconds = 0;  // of the writer's clock from UTC; zero where none is given
};

// A date as written: days since 1970-01-01.
struct Day {
  long long number = 0;
  std::string text;  // "2026-01-15"
};

// The day of that moment on the writer's own clock.
constexpr long long day_of(const Timestamp& moment) {
  constexpr long long seconds_in_a_day = 86400;
  const long long local = moment.seconds + moment.offset_seconds;
  return local >= 0 ? local / seconds_in_a_day : -((-local + seconds_in_a_day - 1) / seconds_in_a_day);
}

enum class Shape { box, cylinder, cone, pipe, prism, wedge, mesh };

struct PlanarPoint { Length x, y; };

struct Solid {
  std::string name;
  Shape shape = Shape::box;
  bool cut = false;               // taken away from what stands before it; else added
  Position at;                    // box, wedge: lowest corner; round: centre of the base; prism, mesh: origin
  Axis axis = Axis::z;            // of cylinder, cone, pipe and prism
  Vector<Length> size;            // box, wedge: extent along x, y, z
  Length diameter{};              // cylinder; pipe: outside
  Length inside_diameter{};       // pipe
  Length bottom_diameter{}, top_diameter{};  // cone
  Length length{};                // cylinder, cone, pipe, prism: along the axis
  std::array<Length, 2> top_size{};          // wedge: extent of the top face along x, y
  std::array<Length, 2> top_at{};            // wedge: corner of the top face from that of the bottom face
  std::vector<PlanarPoint> outline;          // prism, across the axis. Axis z: x, y; x: y, z; y: z, x
  std::vector<std::vector<PlanarPoint>> holes;
  std::string file;               // mesh: STEP or STL, below the plan's folder
  Length file_unit = mm;          // mesh from STL: one unit of the file
  std::optional<Axis> turned_about;          // turned about this axis through `at`
  Angle turned_by{};
  Place place;
};

// How the bending of the piece is computed. line: a beam. panel: a flat plate. block: not at all.
enum class PieceModel { line, panel, block };

struct Strand {                     // one row of strands stretched before the piece was cast
  std::string name;
  std::optional<Force> force;       // of the row, after the losses up to the lift
  std::vector<Position> line;       // where it is bonded, straight between these places
  std::optional<Length> transfer_length;
  Place place;
};

struct Bar {                        // one layer of bars
  std::string name;
  std::optional<Area> area;         // of the layer
  std::optional<Stress> yield_strength;
  std::vector<Position> line;       // their middle, where they are anchored for their full stress
  std::optional<Length> spacing;    // from bar to bar, middle to middle
  Place place;
};

struct Piece {
  std::string mark, title, revision, prepared_by, engineer;
  UnitSystem units = UnitSystem::si;
  std::optional<Force> stated_weight;
  std::optional<PieceModel> model;  // absent: derived from the shape, and printed
  std::string bending_check;        // the engineer's own check, named; counts where none is computed
  bool may_crack = false;           // stated by the engineer: bars carry the piece, its cracks are accepted
  std::vector<Strand> strands;
  std::vector<Bar> bars;            // count where it may crack
  std::vector<Solid> solids;
  Place place;
};

enum class SpecimenShape { cylinder, cube };
enum class Cure { field, match, standard };

struct Specimen {
  SpecimenShape shape = SpecimenShape::cylinder;
  Length width{};   // diameter, or side of the cube
  Length height{};
};

struct Evidence {
  std::optional<Specimen> specimen;
  std::optional<Cure> cure;
  std::optional<Timestamp> cast, tested;
  std::optional<Duration> valid_for;  // how long after the test it may carry a lift
  std::vector<Stress> results;
  std::string report;                 // number of the test report
  Place place;
  std::string_view section = "[concrete.evidence]";  // as its file calls it, for remedies
};

struct Concrete {
  std::string kind;                   // key in tables/concretes.toml: "normalweight", ...
  Density density{};
  std::optional<Ratio> density_tolerance;
  std::optional<Stress> design_strength;
  std::optional<bool> cracked;
  std::optional<Stress> form_stripping_strength;   // required on the drawing (IFC: FormStrippingStrength)
  std::optional<Stress> lifting_strength;          //                         (IFC: LiftingStrength)
  std::optional<Stress> transportation_strength;   //                         (IFC: TransportationStrength)
  std::optional<Stress> release_strength;          // before strands are released (IFC: ReleaseStrength)
  std::optional<Evidence> evidence;
  Place place;
};

// Which faces of the piece touch the form: made by a solid, facing a direction, or all but these.
struct FaceChoice {
  bool all_but = false;
  std::vector<Placed<std::string>> names;  // a solid's name, or "+x" "-x" "+y" "-y" "+z" "-z"
};

struct Contact {
  FaceChoice faces;
  std::string finish;                 // key in tables/form-faces.toml
  std::optional<Angle> draft;
  std::optional<Stress> adhesion;     // stated by the engineer instead of the table's
  Place place;
};

struct Attached {
  std::string what;
  Force weight{};
  std::optional<Position> at;         // absent: taken at the centre of gravity of the piece, and HOLD
  std::optional<StageKind> until;     // taken off after the last stage of this kind; absent: judged with and without
  Place place;
};

struct Form {
  std::vector<Contact> contacts;
  bool nothing_grips = false;         // written as contact = []; no contact at all and this false is HOLD
  std::vector<Attached> attached;
  bool nothing_attached = false;      // written as attached = []; no part at all and this false is HOLD
  bool released = false;              // the piece is out of its form before the first stage of the plan
  std::string product;                // "flat.smooth-mould": which bending multiplier of the rule set counts
  Place place;
};

enum class HardwareKind { clutch, screw_in, shackle, hook };

struct Hardware {                     // what takes hold of an insert, at the end of a leg
  std::string id;
  HardwareKind kind = HardwareKind::clutch;
  std::optional<MarkedSize> size;
  std::optional<Force> rated;         // marked on it
  std::optional<double> design_factor;          // breaking load over rated load, from mark or certificate
  std::optional<Day> inspected;
  Place place;
};

struct Sling {
  std::string id;
  std::string kind;                   // key in tables/slings.toml: "chain", "wire-rope", ...
  std::optional<Force> rated;         // one leg, vertical, from the tag
  std::optional<double> design_factor;          // from the tag or certificate; else the table's for the kind
  std::optional<Angle> minimum_angle;           // from horizontal, from the tag
  std::optional<Force> axial_stiffness;         // E A of one leg; absent: by size and table, or nearly rigid
  std::optional<Length> size;                   // diameter of the rope, or of the bar of a chain
  std::optional<Day> inspected;
  Place place;
};

struct Crane {
  std::string id;
  std::optional<Force> rated;
  std::optional<Force> block;         // hook block and fixed gear that count against the rating
  std::optional<Speed> hoist_speed;
  std::string hoist_class;            // key in tables/hoists.toml
  std::optional<Day> inspected;
  Place place;
};

struct Leg {
  std::string to;                     // insert, point of a beam, or sheave
  std::string from;                   // hook, point of a beam, or sheave; empty: the hook
  std::optional<Length> length;       // bearing to bearing
  std::string gear;                   // sling id
  std::string hardware;               // id of what takes hold of the insert
  Place place;
};

struct BeamPoint {
  std::string id;
  Position at;                        // in the axes of the beam
  Place place;
};

struct Beam {                         // or frame: rigid; its axes are drawn along those of the piece
  std::string id;
  std::optional<Force> weight;
  Position centre;                    // of gravity
  std::optional<Force> rated;         // from the plate: the most that may hang below it
  std::optional<Day> inspected;
  std::vector<BeamPoint> points;
  Place place;
};

struct Sheave {
  std::string id;
  bool rolls = true;                  // the legs from it are one rope; false: a link, each leg is a rope of its own
  std::optional<Force> weight, rated;  // rated: the most that it may pull where it hangs
  std::optional<Day> inspected;
  Place place;
};

struct Hook {
  std::string id;
  Position at;                        // in space, as the piece hangs level: x and y along those of the piece
  std::string crane;                  // empty: the crane of the stage
  Place place;
};

struct Rigging {
  std::string id;
  std::vector<Hook> hooks;            // empty: one hook, without a name
  std::vector<Beam> beams;
  std::vector<Sheave> sheaves;
  std::vector<Leg> legs;
  // Groups of inserts whose legs are one rope over a sheave at the hook.
  std::vector<std::vector<Placed<std::string>>> equalised;
  std::optional<Ratio> length_tolerance;
  std::optional<Force> weight, equaliser_rated;  // slings, shackles, rings below the hook; sheaves at the hook
  std::optional<Day> equaliser_inspected;
  Place place;
};

enum class TurnMethod { edge, table, two_hooks };

// How a turn stage turns the piece. Angles are those of the face that looks down as cast, from horizontal.
struct Turn {
  std::optional<TurnMethod> method;
  std::optional<std::array<Position, 2>> about;  // two points of the edge it turns about, in piece axes
  Angle from{}, to{};
  std::optional<Angle> table_angle;              // up to there the piece lies on the tilting table
  std::string tail_rigging, tail_crane;          // of the second hook
  std::optional<Ratio> friction;                 // at the edge, stated instead of the table's
  std::string ground;                            // key in tables/grounds.toml
  std::string procedure;                         // number of the written turning procedure
  Place place;
};

struct Bearer {                                  // one piece of dunnage under the piece
  std::optional<std::array<Position, 2>> along;  // the ends of its centre line, in piece axes
  Length width{};
  Place place;
};

enum class LandingOn { flat, bearers };
enum class Restraint { rack, brace, none };

// What the piece is set down on at the end of a stage.
struct Landing {
  std::optional<LandingOn> on;
  std::vector<Bearer> bearers;
  std::optional<bool> level;
  std::optional<Restraint> restrained;
  std::optional<bool> legs_off;   // somebody checks that every leg is off before the hook moves
  Place place;
};

enum class ScaleState { hanging, breaking_free };

// What the scale of the crane showed, and what was on it.
struct ScaleReading {
  std::optional<Force> shows;
  std::optional<ScaleState> state;
  std::optional<bool> attached, rigging, block;  // counted in what it showed
  Place place;
};

struct Stage {
  StageKind kind = StageKind::strip;
  std::string rigging, crane;
  std::optional<Timestamp> at;              // when the lift is to be made
  std::optional<Ratio> dynamic_factor;      // stated by the engineer instead of the table's
  // What somebody saw before the lift; not looked at is not the same as not there.
  std::optional<bool> hook_latch, exclusion_zone, tag_line, signaller;
  // What makes a lift critical where it is false.
  std::optional<bool> load_in_view, clear_of_power_lines, operator_agrees;
  std::string critical_lift_plan;           // number of the written plan of a critical lift
  std::optional<Speed> wind_speed;          // of a gust where the piece hangs; absent: still air, and told
  std::optional<Ratio> wind_coefficient;    // stated by the engineer instead of the table's
  std::optional<ScaleReading> scale_reading;
  std::optional<Turn> turn;
  std::optional<Landing> landing;
  Place place;
};

struct Plan {
  std::string file;                   // as named on the command line
  std::string rules;                  // rule set named by the plan; may be empty
  Piece piece;
  Concrete concrete;
  std::optional<Form> form;
  std::vector<Insert> inserts;
  std::vector<Sling> slings;
  std::vector<Hardware> hardware;
  std::vector<Crane> cranes;
  std::vector<Rigging> riggings;
  std::vector<Stage> stages;
};

}  // namespace firstpick::plan
