#include "demands/base_plane.hpp"

#include <algorithm>
#include <cmath>

namespace firstpick::demands {

namespace {

constexpr Length same_level = 0.1 * mm;
constexpr double straight_down = 1.0 - 1e-9;  // of the cosine: 0.003 degrees

std::vector<Position> box_corners(const piece::Body& body) {
  std::vector<Position> corners;
  for (const Length& x : {body.lowest.x, body.highest.x})
    for (const Length& y : {body.lowest.y, body.highest.y})
      for (const Length& z : {body.lowest.z, body.highest.z}) corners.push_back({x, y, z});
  return corners;
}

std::vector<Position> face_corners(const piece::Body& body, std::size_t room_for = 0) {
  std::size_t count = room_for;
  for (const piece::Face& face : body.faces)
    for (const auto& ring : face.rings) count += ring.size();
  std::vector<Position> corners;
  corners.reserve(count);
  for (const piece::Face& face : body.faces)
    for (const auto& ring : face.rings) corners.insert(corners.end(), ring.begin(), ring.end());
  return corners;
}

bool has_curved_faces(const piece::Body& body) {
  return !std::ranges::all_of(body.faces, &piece::Face::planar);
}

Length lowest(const std::vector<Position>& points, const Direction& up) {
  Length low = Length::from_value(INFINITY);
  for (const Position& p : points) low = std::min(low, Length{dot(up, p)});
  return low;
}

}  // namespace

plan::PlanarPoint BasePlane::foot(const Position& p) const { return {dot(u, p), dot(v, p)}; }

std::vector<Position> corners_of(const piece::Body& body) {
  constexpr std::size_t of_box = 8;
  std::vector<Position> corners = face_corners(body, of_box);
  if (!has_curved_faces(body)) return corners;
  const std::vector<Position> box = box_corners(body);
  corners.insert(corners.end(), box.begin(), box.end());
  return corners;
}

Outcome<BasePlane> base_plane(const piece::Body& body, const Direction& up) {
  const Direction aside = std::abs(up.x) < 0.5 ? Direction{1.0, 0.0, 0.0} : Direction{0.0, 1.0, 0.0};
  Direction u = cross(aside, up);
  u = (1.0 / norm(u)) * u;
  BasePlane base{u, cross(up, u), up, lowest(face_corners(body), up), {}};
  const NotAssessed no_face{"no flat face of the piece looks straight down: it does not stand by itself",
                            "[stage.landing] restrained = \"rack\", or another side down"};
  if (!is_finite(base.level)) return no_face;
  // The box bounds curved faces from below; where it reaches lower than the corners one of them may.
  if (has_curved_faces(body) && !(lowest(box_corners(body), up) >= base.level - same_level))
    return NotAssessed{"a curved face of the piece may reach below the face it stands on: how it stands is not known",
                       "[stage.landing] restrained = \"rack\", or another side down"};
  for (const piece::Face& face : body.faces) {
    if (!face.planar || face.rings.empty() || face.rings.front().empty()) continue;
    if (!(dot(face.normal, up) <= -straight_down)) continue;
    if (!(dot(up, face.rings.front().front()) <= base.level + same_level)) continue;
    for (const auto& ring : face.rings) {
      std::vector<plan::PlanarPoint> flat;
      for (const Position& p : ring) flat.push_back(base.foot(p));
      base.rings.push_back(std::move(flat));
    }
  }
  if (base.rings.empty()) return no_face;
  return base;
}

}  // namespace firstpick::demands
