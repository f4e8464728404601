// The piece as a real solid: volume, centre of gravity, inertia, faces, contact with the form, and what
// surrounds each insert. The geometry kernel (Open CASCADE) stays behind this folder; nothing of it shows
// here.
#pragma once

#include <array>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "plan/plan.hpp"
#include "record/diagnostic.hpp"
#include "units/vector.hpp"

namespace firstpick::piece {

struct Face {
  std::vector<std::string> made_by;  // solids of the plan, several where their surfaces continue each other
  bool planar = false;
  Direction normal{};  // out of the concrete, at the middle of the face
  Area area{};
  Position centroid;
  // Of a planar face: its outline first, then its openings; rings are not closed, curves are chords on the side of
  // the concrete.
  std::vector<std::vector<Position>> rings{};
};

// What the form grips: one entry for each [[form.contact]], in the plan's order.
struct ContactArea {
  Area area{};        // all faces chosen
  Area on_pull{};     // integral of max(0, -n.z): what faces down and must be pulled straight off
  Position centroid;  // of the area
  std::vector<std::size_t> faces;  // indices into Body::faces, each chosen wholly or in part
};

// The face an insert sits in, flat, in axes u, v of that face with the insert at the origin. Rings are not
// closed (the last point joins the first); curves are chords on the side of the concrete.
struct Outline {
  std::vector<plan::PlanarPoint> outer;               // counter-clockwise
  std::vector<std::vector<plan::PlanarPoint>> holes;  // clockwise: openings
};

struct EdgeDistance {
  Length distance{};     // in the plane of the face, from the insert to the nearest point of this edge
  Direction towards{};   // unit vector in piece axes
  bool opening = false;  // edge of an opening, not of the outline
};

// So little of a body may be missing: sides that draw in by a few in a hundred, as they do in forms.
inline const Ratio whole_below = Ratio::from_value(0.01);

struct InsertSite {
  std::string insert;    // id
  std::size_t face = 0;  // index into Body::faces
  bool planar = false;   // false: a curved face; edges and outline are then empty, u and v any two axes or those of `within`
  Direction normal{};    // out of the concrete at the insert
  Direction u{}, v{};    // axes of the outline; u points to the nearest edge; u, v, normal right-handed
  Outline outline;
  std::vector<EdgeDistance> edges;  // every edge of the face, nearest first
  Length thickness{};               // concrete behind the insert along -normal, to the first void or face
  // Of the body about the insert that its formulas or its supplier count on, under a flat face: the share that is not concrete.
  std::optional<Ratio> not_concrete{};  // empty: not measured, or nothing counts on it
  Length sunk{};                    // how far this face lies below the insert: zero but in `within`
  // Of a curved face with a headed insert: flat faces inside the concrete, each the top of a body (contained_faces.hpp) that
  // lies wholly in it. Not faces of the piece: `face` is a number of each curved site's own, behind those of Body::faces.
  std::vector<InsertSite> within{};
};

struct Assembly;  // the kernel's solid: seen by this folder only

struct Body {
  Volume volume{};
  Position centroid;  // centre of gravity of the concrete
  // About the centroid in piece axes, for density 1: on the diagonal the integral of y2 + z2 and so on,
  // beside it that of -x y and so on.
  std::array<std::array<double, 3>, 3> inertia_per_density_m5{};
  Position lowest, highest;  // bounding box
  std::vector<Face> faces;
  std::vector<ContactArea> contacts;
  std::vector<InsertSite> sites;  // in the order of the plan's inserts
  std::shared_ptr<const Assembly> assembly;  // for drawings; null in a body that nobody built
};

// Builds the solid and everything above. Faults of geometry (a solid that cuts or adds nothing, a contact
// that chooses no face, an insert that does not lie on the concrete, an unreadable mesh file) come back
// together, each with its place.
std::variant<Body, std::vector<Diagnostic>> make_body(const plan::Plan& plan);

}  // namespace firstpick::piece
