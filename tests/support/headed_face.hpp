// A flat face with headed inserts made for tests: x, y in the face, z out of the concrete. No geometry
// engine takes part.
#pragma once

#include <deque>
#include <string>
#include <utility>
#include <vector>

#include "resistances/edge_distance.hpp"
#include "resistances/headed_insert.hpp"
#include "resistances/insert_group.hpp"
#include "support/assessed.hpp"

namespace firstpick::tests {

using Points = std::vector<plan::PlanarPoint>;

inline Points rectangle(Length x, Length y, Length width, Length height) {  // counter-clockwise
  return {{x, y}, {x + width, y}, {x + width, y + height}, {x, y + height}};
}
inline Points opening(Length x, Length y, Length width, Length height) {  // clockwise
  return {{x, y}, {x, y + height}, {x + width, y + height}, {x + width, y}};
}
// `count` chords, counter-clockwise, corners on the circle.
inline Points circle(Length x, Length y, Length radius, int count) {
  Points points;
  for (int i = 0; i < count; ++i) {
    const Angle a = 360.0 * i / count * deg;
    points.push_back({x + radius * cosine(a), y + radius * sine(a)});
  }
  return points;
}

struct HeadedFace {
  Points outline;
  std::vector<Points> openings;
  Length thickness;
  std::deque<piece::InsertSite> sites{};  // addresses stay
  std::deque<resistances::HeadedInsert> inserts{};

  explicit HeadedFace(Points outer, Length thick = 1e3 * inch, std::vector<Points> holes = {})
      : outline(std::move(outer)), openings(std::move(holes)), thickness(thick) {}

  piece::InsertSite site_at(const std::string& id, Length x, Length y, Angle turned) const {
    piece::InsertSite site;
    site.insert = id;
    site.planar = true;
    site.normal = {0.0, 0.0, 1.0};
    site.u = {cosine(turned), sine(turned), 0.0};
    site.v = {-sine(turned), cosine(turned), 0.0};
    site.thickness = thickness;
    site.not_concrete = Ratio{};
    const auto seen_from_insert = [&](const Points& points) {
      Points seen;
      for (const auto& p : points) {
        const Position apart{p.x - x, p.y - y, Length{}};
        seen.push_back({dot(site.u, apart), dot(site.v, apart)});
      }
      return seen;
    };
    site.outline.outer = seen_from_insert(outline);
    for (const Points& hole : openings) site.outline.holes.push_back(seen_from_insert(hole));
    return site;
  }

  // An insert with h_ef in cracked normalweight concrete: 3/4 in bolt, 0.911 in2 head, 58 ksi. Change it as
  // needed.
  resistances::HeadedInsert& add(const std::string& id, Length x, Length y, Length h_ef = 6.0 * inch,
                                 Angle turned = Angle{}) {
    const piece::InsertSite& site = sites.emplace_back(site_at(id, x, y, turned));
    return inserts.emplace_back(
        resistances::HeadedInsert{.id = id,
                                  .h_ef = h_ef,
                                  .d_a = 0.75 * inch,
                                  .A_brg = 0.911 * in2,
                                  .A_se = 0.334 * in2,
                                  .f_uta = 58.0 * ksi,
                                  .stud = false,
                                  .cracked = true,
                                  .lambda_a = 1.0,
                                  .site = &site,
                                  .at = {x, y, Length{}},
                                  .edges = assessed(resistances::edge_distances(site, site.u, site.v))});
  }

  std::vector<const resistances::HeadedInsert*> group() const {
    std::vector<const resistances::HeadedInsert*> all;
    for (const auto& insert : inserts) all.push_back(&insert);
    return all;
  }
  std::vector<Outcome<resistances::HeadedInsert>> outcomes() const {
    return {inserts.begin(), inserts.end()};
  }
};

// Far from every edge for every depth in these tests.
inline HeadedFace wide_face() {
  return HeadedFace(rectangle(-5e3 * inch, -5e3 * inch, 1e4 * inch, 1e4 * inch));
}

}  // namespace firstpick::tests
