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
  // Nothing: some face is curved. Face by face in the order given, which is that of Assembly::faces.
  static std::optional<FlatFaces> of(const std::vector<Face>& faces);

  // Where the line crosses them, in metres along it, in no order. Nothing: it lies in a face, or passes so near an edge that
  // the kernel must say.
  std::optional<std::vector<double>> crossings(const gp_Pnt& point, const gp_Dir& along) const;

  // Where it crosses the planes that they lie in, whether within them or not, between these two: in order.
  std::vector<double> plane_crossings(const gp_Pnt& point, const gp_Dir& along, double from_m, double to_m) const;

  // No point of the face can be nearer than this where it is not: a quick answer, by its plane and the box about it.
  bool may_be_within(std::size_t face, const gp_Pnt& point, double within_m) const;
  // The point of the face below the point. Nothing: it lies beside the face, or so near an edge that the kernel must say.
  std::optional<gp_Pnt> foot(std::size_t face, const gp_Pnt& point) const;

 private:
  struct Polygon {
    gp_XYZ normal;
    std::vector<std::vector<gp_XYZ>> rings;
    Bnd_Box around;  // and a little more
  };
  static std::optional<bool> is_inside(const Polygon& polygon, const gp_XYZ& at);

  std::vector<Polygon> polygons_;
};

}  // namespace firstpick::piece
