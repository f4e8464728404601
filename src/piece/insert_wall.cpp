#include "piece/insert_wall.hpp"

#include <algorithm>
#include <cmath>
#include <exception>
#include <vector>

#include <BRepAdaptor_Surface.hxx>
#include <IntCurvesFace_ShapeIntersector.hxx>
#include <Standard_Failure.hxx>
#include <gp_Cone.hxx>
#include <gp_Cylinder.hxx>
#include <gp_Lin.hxx>

#include "piece/flat_faces.hpp"
#include "piece/shape.hpp"

namespace firstpick::piece {

namespace {

constexpr double no_end_m = 1e4, same_m = 1e-6, coaxial_within_m = 1e-3;
constexpr double beside_plane_m = 1e-6, end_within_m = 1e-9;
constexpr double thinner_within = 1e-3;   // of the thickness: not worth a word
constexpr double upright_within = 0.7;  // upright component of the normal of a wall, of a way along it
constexpr int steps_most = 4000, round_parts = 120;

struct Crossing {
  double at_m;
  TopoDS_Face face;  // null: a flat one
};

// The concrete on both sides of a point along a line: from -behind to +ahead.
struct Chord {
  double behind_m, ahead_m;
  TopoDS_Face face_behind, face_ahead;
  double length_m() const { return behind_m + ahead_m; }
  double nearer_m() const { return std::min(behind_m, ahead_m); }
};

class Lines {
 public:
  explicit Lines(const Assembly& assembly) : assembly_(assembly) {}

  // Nothing: the point is not in the concrete.
  std::optional<Chord> chord(const gp_Pnt& point, const gp_Dir& along) {
    for (const double aside : {0.0, 1.3e-5, -1.3e-5}) {  // where a line meets an edge, its neighbour does not
      const gp_Ax2 axes(point, along);
      const gp_Pnt from = point.Translated(gp_Vec(axes.XDirection()) * aside).Translated(gp_Vec(axes.YDirection()) * 0.7 * aside);
      const auto crossings = crossings_of(from, along);
      if (crossings.size() % 2 != 0) continue;
      for (std::size_t i = 0; i + 1 < crossings.size(); i += 2)
        if (crossings[i].at_m < 0.0 && crossings[i + 1].at_m > 0.0)
          return Chord{-crossings[i].at_m, crossings[i + 1].at_m, crossings[i].face, crossings[i + 1].face};
      return {};
    }
    return {};
  }

  // Concrete anywhere along the line, no farther away than this.
  bool is_near(const gp_Pnt& point, const gp_Dir& along, double within_m) {
    return std::ranges::any_of(crossings_of(point, along), [&](const Crossing& c) { return std::abs(c.at_m) <= within_m; });
  }

  // Of a solid that has flat faces alone: where the line crosses their planes. A wall of even thickness ends at one of them.
  std::vector<double> planes(const gp_Pnt& point, const gp_Dir& along, double from_m, double to_m) const {
    return assembly_.flat ? assembly_.flat->plane_crossings(point, along, from_m, to_m) : std::vector<double>{};
  }

 private:
  std::vector<Crossing> crossings_of(const gp_Pnt& point, const gp_Dir& along) {
    std::vector<Crossing> all;
    if (const auto flat = assembly_.flat ? assembly_.flat->crossings(point, along) : std::nullopt) {
      for (const double at_m : *flat) all.push_back({at_m, {}});
      std::ranges::sort(all, {}, &Crossing::at_m);
      return all;
    }
    if (!ray_) ray_.emplace().Load(assembly_.solid, 1e-7);
    ray_->Perform(gp_Lin(point, along), -no_end_m, no_end_m);
    if (!ray_->IsDone()) return all;
    for (int i = 1; i <= ray_->NbPnt(); ++i) all.push_back({ray_->WParameter(i), ray_->Face(i)});
    std::ranges::sort(all, {}, &Crossing::at_m);
    const auto twice = std::ranges::unique(all, [](const auto& a, const auto& b) { return b.at_m - a.at_m < same_m; });
    all.erase(twice.begin(), twice.end());
    return all;
  }

  const Assembly& assembly_;
  std::optional<IntCurvesFace_ShapeIntersector> ray_;  // loaded when it is first asked
};

gp_Dir dir(const Direction& d) { return {d.x, d.y, d.z}; }
gp_Pnt moved(const gp_Pnt& p, const gp_Dir& d, double by_m) { return p.Translated(gp_Vec(d) * by_m); }

struct Plate {
  gp_Dir across;
  gp_Pnt middle;          // in the middle of the wall
  gp_Pnt insert;          // on the face
  double thickness_m;
};

// Leaving an upright wall on the level through one of its own faces while it goes on beside the line: it turns away. To both
// sides, as those of an octagon do, it may be a ring that nobody computes; to one side it ends there as at a free edge.
bool turns_away(Lines& lines, const Plate& plate, const gp_Dir& towards, double end_m) {
  constexpr double through_a_face = 0.25;  // of the chord just before the end: at a free edge both sides are left
  if (std::abs(plate.across.Z()) > upright_within || std::abs(towards.Z()) > upright_within) return false;
  const auto last = lines.chord(moved(plate.middle, towards, end_m), plate.across);
  return last && last->nearer_m() < through_a_face * last->length_m() &&
         lines.is_near(moved(plate.middle, towards, end_m + plate.thickness_m), plate.across, 1.5 * plate.thickness_m);
}

WallWay way(Lines& lines, const Plate& plate, const gp_Dir& towards, double support, double& least_m,
            bool& turns) {
  const double step = 0.25 * plate.thickness_m, start = gp_Vec(plate.insert, plate.middle).Dot(gp_Vec(towards));
  const auto across_at = [&](double s) -> std::optional<double> {
    const auto chord = lines.chord(moved(plate.middle, towards, s), plate.across);
    if (!chord) return {};
    return chord->length_m();
  };
  const auto is_wall = [&](const std::optional<double>& t) { return t && *t < support * plate.thickness_m; };
  double inside = 0.0, outside = 0.0;
  std::optional<double> end;
  for (int i = 1; i < steps_most; ++i) {
    outside = i * step;
    end = across_at(outside);
    if (!is_wall(end)) break;
    if (*end < (1.0 - thinner_within) * least_m) least_m = *end;
    inside = outside;
  }
  // The end of the wall lies between: at a plane, or wherever it has become too thick.
  const auto planes = lines.planes(plate.middle, towards, inside - beside_plane_m, outside + beside_plane_m);
  const auto ends_at = std::ranges::find_if(planes, [&](double at) {
    return is_wall(across_at(at - beside_plane_m)) && !is_wall(across_at(at + beside_plane_m));
  });
  if (ends_at != planes.end()) {
    end = across_at(*ends_at + beside_plane_m);
    inside = outside = *ends_at;
  }
  while (outside - inside > end_within_m) {
    const double between = 0.5 * (inside + outside);
    const auto t = across_at(between);
    if (is_wall(t)) inside = between;
    else outside = between, end = t;
  }
  const bool held = end.has_value();
  turns = !held && turns_away(lines, plate, towards, inside - beside_plane_m);
  return {direction(towards), (std::max(0.0, start + (held ? outside : inside))) * m, held};
}

// The axis of a round surface.
std::optional<gp_Ax1> axis_of(const TopoDS_Face& face) {
  if (face.IsNull()) return {};
  const BRepAdaptor_Surface surface(face);
  if (surface.GetType() == GeomAbs_Cylinder) return surface.Cylinder().Axis();
  if (surface.GetType() == GeomAbs_Cone) return surface.Cone().Axis();
  return {};
}

bool is_curved(const TopoDS_Face& face) { return !face.IsNull() && !is_planar(face); }

bool same_axis(const gp_Ax1& a, const gp_Ax1& b) {
  return a.IsParallel(b, 1e-4) && gp_Lin(a).Distance(b.Location()) <= coaxial_within_m;
}

Outcome<RoundWall> round_wall(Lines& lines, const Plate& plate, gp_Dir axis, const gp_Pnt& axis_point) {
  const gp_Lin line(axis_point, axis);
  const double z = gp_Vec(axis_point, plate.middle).Dot(gp_Vec(axis));
  const gp_Pnt foot = moved(axis_point, axis, z);
  const double radius = foot.Distance(plate.middle), insert_z = gp_Vec(axis_point, plate.insert).Dot(gp_Vec(axis)) - z;
  RoundWall wall{.axis_at = position(moved(foot, axis, insert_z)), .axis = direction(axis),
                 .inside = (radius - 0.5 * plate.thickness_m) * m, .outside = (radius + 0.5 * plate.thickness_m) * m};
  const gp_Ax2 about(foot, axis);
  const gp_Vec x(about.XDirection()), y(about.YDirection()), out(foot, plate.middle);
  const double start = std::atan2(out.Dot(y), out.Dot(x));
  double above = no_end_m, below = no_end_m;
  for (int i = 0; i < round_parts; ++i) {
    const double a = start + 2.0 * M_PI * i / round_parts;
    const gp_Pnt at = foot.Translated(x * radius * std::cos(a) + y * radius * std::sin(a));
    const auto chord = lines.chord(at, axis);
    if (!chord)
      return NotAssessed{"the round wall is not whole all round at the height of the insert", {}};
    above = std::min(above, chord->ahead_m), below = std::min(below, chord->behind_m);
  }
  wall.above = std::max(0.0, above - insert_z) * m, wall.below = std::max(0.0, below + insert_z) * m;
  return wall;
}

// The concrete in line with the three ways, just as deep in the wall as it is thick by half.
Plate plate_of(Lines& lines, const gp_Pnt& foot, const gp_Dir& normal, double behind_m, const gp_Dir& u, const gp_Dir& v) {
  Plate plate{normal, moved(foot, normal, -0.5 * behind_m), foot, behind_m};
  for (const gp_Dir& aside : {u, v}) {
    auto chord = lines.chord(moved(foot, normal, -0.5 * behind_m), aside);
    if (!chord) continue;
    const double deep = 0.5 * std::min(behind_m, chord->length_m());
    chord = lines.chord(moved(foot, normal, -deep), aside);
    if (!chord || !(chord->length_m() < (1.0 - thinner_within) * plate.thickness_m)) continue;
    plate = {aside, moved(moved(foot, normal, -deep), aside, 0.5 * (chord->ahead_m - chord->behind_m)), foot, chord->length_m()};
  }
  return plate;
}

Outcome<InsertWall> measured(const Body& body, const InsertSite& site, const gp_Pnt& foot, double support) {
  Lines lines(*body.assembly);
  const gp_Dir normal = dir(site.normal);
  gp_Dir u = dir(site.u), v = dir(site.v);
  const double behind = in(m, site.thickness);
  if (!site.planar) {  // along the axis of the curved face and round it
    const auto chord = lines.chord(moved(foot, normal, -0.5 * behind), normal);
    const auto round = chord ? axis_of(chord->face_ahead) : std::nullopt;
    if (!round || std::abs(round->Direction().Dot(normal)) > 0.99)
      return NotAssessed{"the insert sits in a curved face that is not round", {}};
    v = normal.Crossed(round->Direction());
    u = v.Crossed(normal);
  }
  const Plate plate = plate_of(lines, foot, normal, behind, u, v);
  InsertWall wall{.across = direction(plate.across), .in_face = plate.across.IsEqual(normal, 1e-9),
                  .thickness = plate.thickness_m * m};
  wall.off_middle = std::abs(gp_Vec(plate.middle, foot).Dot(gp_Vec(plate.across))) * m;

  const auto chord = lines.chord(plate.middle, plate.across);
  if (!chord) return NotAssessed{"the wall of the insert could not be measured", {}};
  const auto ahead = axis_of(chord->face_ahead), back = axis_of(chord->face_behind);
  if (ahead && back && same_axis(*ahead, *back)) {
    gp_Dir axis = ahead->Direction();
    if (!wall.in_face && axis.Dot(normal) < 0.0) axis.Reverse();
    if (gp_Lin(*ahead).Distance(plate.middle) > 0.5 * plate.thickness_m * (1.0 + thinner_within)) {  // else it is solid
      auto found = round_wall(lines, plate, axis, ahead->Location());
      if (const auto* gap = std::get_if<NotAssessed>(&found)) return *gap;
      wall.round = std::get<RoundWall>(found);
      return wall;
    }
  } else if (is_curved(chord->face_ahead) && is_curved(chord->face_behind)) {
    return NotAssessed{"the wall of the insert is curved, and not round about one axis", {}};
  }
  gp_Dir first = wall.in_face ? u : (plate.across.IsEqual(u, 1e-9) ? v : u);
  const gp_Dir second = wall.in_face ? v : normal;
  double least = plate.thickness_m;
  const std::array<gp_Dir, 4> all{first, first.Reversed(), second, second.Reversed()};
  std::array<bool, 4> turns{};
  for (std::size_t i = 0; i < all.size(); ++i) wall.ways[i] = way(lines, plate, all[i], support, least, turns[i]);
  const bool may_close = wall.in_face || !site.outline.holes.empty();  // the top of a closed wall goes round an opening
  if (may_close && ((turns[0] && turns[1]) || (turns[2] && turns[3])))
    return NotAssessed{"the wall of the insert turns away to both sides: of walls only flat and round ones are computed", {}};
  wall.thickness = least * m;
  return wall;
}

}  // namespace

Outcome<InsertWall> insert_wall(const Body& body, std::size_t insert, const Position& at, double support) {
  if (!body.assembly) return NotAssessed{"the solid of the piece was not kept", {}};
  if (insert >= body.sites.size()) return NotAssessed{"the place of the insert is not known", {}};
  try {
    return measured(body, body.sites[insert], point_m(at), support);
  } catch (const Standard_Failure& failure) {
    return NotAssessed{std::string("the geometry kernel gave up on the wall of the insert: ") + failure.GetMessageString(), {}};
  } catch (const std::exception& failure) {
    return NotAssessed{std::string("the geometry kernel gave up on the wall of the insert: ") + failure.what(), {}};
  }
}

}  // namespace firstpick::piece
