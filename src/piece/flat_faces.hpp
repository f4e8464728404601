// A solid that has flat faces alone, as polygons: a line crosses it without the kernel, which takes a hundred times as long.
// Of this folder alone: it shows types of the kernel.
#pragma once

#include <optional>
#include <vector>

#include <Bnd_Box.hxx>
#include <gp_Dir.hxx>
#include <gp_Pnt.hxx>
#include <gp_XYZ.hxx>

#include "piece/body.hpp"

namespace firstpick::piece {

class FlatFaces {
 public:
  // Nothing: some face is curved.
  static std::optional<FlatFaces> of(const Body& body);

  // Where the line crosses them, in metres along it, in no order. Nothing: it lies in a face, or passes so near an edge that
  // the kernel must say.
  std::optional<std::vector<double>> crossings(const gp_Pnt& point, const gp_Dir& along) const;

 private:
  struct Polygon {
    gp_XYZ normal;
    std::vector<std::vector<gp_XYZ>> rings;
    Bnd_Box around;
  };
  static std::optional<bool> is_inside(const Polygon& polygon, const gp_XYZ& at);

  std::vector<Polygon> polygons_;
};

}  // namespace firstpick::piece
