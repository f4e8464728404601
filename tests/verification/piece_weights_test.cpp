// Weights of pieces of the trade, from their dimensions at 150 lb/ft3.
//
// The printed numbers were derived by hand from the dimensions (pipes: pi (R2 - r2) h) before this program
// existed; they are no published weights. Wall thicknesses are the usual ones for the size, and a haunch of a
// box culvert is as long as the wall is thick. Tolerance: half a unit of the last printed digit. Left out:
// the F-shape barrier, whose outline the derivation does not give.
//
// Computed src/piece, stage-load

#include <catch2/catch.hpp>

#include "unit/piece/pieces.hpp"

using namespace firstpick;
using namespace firstpick::pieces;

namespace {

double pounds(const piece::Body& body) { return in(lb_mass, body.volume * (150.0 * lb_per_ft3)); }

// A box culvert along y: span and rise in feet, wall and haunch in inches.
std::vector<Solid> culvert(double span, double rise, double wall, double length) {
  const Length w = wall * inch, b = span * ft, h = rise * ft, l = length * ft;
  std::vector<Solid> solids = {box("outer", {}, {b + 2.0 * w, l, h + 2.0 * w}),
                               cut(box("barrel", {w, Length{}, w}, {b, l, h}))};
  int n = 0;
  for (const bool right : {false, true})
    for (const bool top : {false, true}) {
      const Length x = right ? w + b : w, z = top ? w + h : w;
      const Length dx = right ? -w : w, dz = top ? -w : w;
      solids.push_back(
          prism("haunch " + std::to_string(++n), {}, {{z, x}, {z + dz, x}, {z, x + dx}}, l, Axis::y));
    }
  return solids;
}

std::vector<Solid> open_box(Position inside, Length wall, Length floor) {
  return {box("outer", {}, {inside.x + 2.0 * wall, inside.y + 2.0 * wall, inside.z + floor}),
          cut(box("inside", {wall, wall, floor}, inside))};
}

}  // namespace

TEST_CASE("manhole risers") {
  struct Row {
    double inside_in, wall_in, section_ft2, lb_per_ft;
  };
  for (const auto& [inside, wall, section, weight] :
       {Row{48, 5, 5.7814, 867.2}, Row{60, 6, 8.6394, 1295.9}, Row{72, 7, 12.0646, 1809.7}}) {
    CAPTURE(inside);
    const auto body = body_of({pipe("riser", {}, (inside + 2.0 * wall) * inch, inside * inch, 1.0 * ft)});
    CHECK(in(ft3, body.volume) == Approx(section).margin(0.00005));
    CHECK(pounds(body) == Approx(weight).margin(0.05));
  }
  CHECK(pounds(body_of({pipe("riser", {}, 58.0 * inch, 48.0 * inch, 4.0 * ft)})) == Approx(3469).margin(0.5));
}

TEST_CASE("manhole base: 4 ft of 48 in riser on a 6 in bottom") {
  const auto body =
      body_of({cylinder("bottom", {}, 58.0 * inch, 6.0 * inch),
               pipe("wall", at(0.0 * inch, 0.0 * inch, 6.0 * inch), 58.0 * inch, 48.0 * inch, 4.0 * ft)});
  CHECK(pounds(body) == Approx(4845).margin(0.5));
  CHECK(pounds(body_of({cylinder("bottom", {}, 58.0 * inch, 6.0 * inch)})) == Approx(1376).margin(0.5));
}

TEST_CASE("box culverts with haunches") {
  struct Row {
    double span_ft, rise_ft, wall_in, section_ft2, section_within, lb_per_ft, length_ft, weight_lb;
  };
  for (const auto& row :
       {Row{6, 4, 7, 13.708, 0.0005, 2056, 6, 12338}, Row{8, 6, 8, 21.333, 0.0005, 3200, 6, 19200},
        Row{8, 8, 8, 24.000, 0.0005, 3600, 6, 21600}, Row{10, 10, 10, 37.500, 0.0005, 5625, 6, 33750},
        Row{12, 8, 12, 46.000, 0.0005, 6900, 4, 27600}}) {
    CAPTURE(row.span_ft, row.rise_ft);
    const auto body = body_of(culvert(row.span_ft, row.rise_ft, row.wall_in, row.length_ft));
    CHECK(in(ft3, body.volume) / row.length_ft == Approx(row.section_ft2).margin(row.section_within));
    CHECK(pounds(body) / row.length_ft == Approx(row.lb_per_ft).margin(0.5));
    CHECK(pounds(body) == Approx(row.weight_lb).margin(0.5 + 1e-6));  // 12337.5 was printed as 12338
  }
}

TEST_CASE("open boxes and a cover") {
  const auto vault = body_of(open_box(at(6.0 * ft, 8.0 * ft, 7.0 * ft), 6.0 * inch, 8.0 * inch));
  CHECK(in(ft3, vault.volume) == Approx(147.0).margin(0.05));
  CHECK(pounds(vault) == Approx(22050).margin(0.5));
  CHECK(in(tonne, vault.volume * (150.0 * lb_per_ft3)) == Approx(10.0).margin(0.05));
  const auto cover = body_of({box("cover", {}, at(7.0 * ft, 9.0 * ft, 8.0 * inch))});
  CHECK(in(ft3, cover.volume) == Approx(42.0).margin(0.05));
  CHECK(pounds(cover) == Approx(6300).margin(0.5));
  const auto basin = body_of(open_box(at(2.0 * ft, 3.0 * ft, 4.0 * ft), 6.0 * inch, 6.0 * inch));
  CHECK(in(ft3, basin.volume) == Approx(30.0).margin(0.05));
  CHECK(pounds(basin) == Approx(4500).margin(0.5));
}

TEST_CASE("septic tank: a box around a closed void") {
  struct Row {
    double shell_in, volume_ft3, weight_lb;
  };
  for (const auto& [shell, volume, weight] : {Row{3, 53.4, 8008}, Row{4, 69.2, 10383}}) {
    CAPTURE(shell);
    const Length s = shell * inch;
    const Position outside = at(8.0 * ft, 68.0 * inch, 62.0 * inch);
    const auto body =
        body_of({box("outer", {}, outside), cut(box("void", {s, s, s}, outside - 2.0 * Position{s, s, s}))});
    CHECK(in(ft3, body.volume) == Approx(volume).margin(0.05));
    CHECK(pounds(body) == Approx(weight).margin(0.5));
    CHECK(body.faces.size() == 12);
  }
}

TEST_CASE("wall panels per square metre at 2400 kg/m3") {
  struct Row {
    double thickness_mm, kg_per_m2;
  };
  for (const auto& [thickness, mass] : {Row{125, 300}, Row{150, 360}, Row{175, 420}, Row{200, 480}}) {
    CAPTURE(thickness);
    const auto body = body_of({box("panel", {}, at(1000, 1000, thickness))});
    CHECK(in(kg, body.volume * (2400.0 * kg_per_m3)) == Approx(mass).margin(0.5));
  }
}
