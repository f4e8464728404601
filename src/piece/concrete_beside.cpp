#include "piece/concrete_beside.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <exception>
#include <vector>

#include <BRepBndLib.hxx>
#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepClass3d_SolidClassifier.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <Bnd_Box.hxx>
#include <IntCurvesFace_ShapeIntersector.hxx>
#include <Standard_Failure.hxx>
#include <gp_Lin.hxx>

#include "piece/shape.hpp"

namespace firstpick::piece {

namespace {

constexpr double rounding_m = 1e-6;  // of places; the kernel's own is a tenth of it

using Numbers = std::array<double, 3>;

Numbers numbers_m(const Position& p) { return {in(m, p.x), in(m, p.y), in(m, p.z)}; }

// Where the line from a to b, as shares of it, is within the box.
std::optional<std::array<double, 2>> within_box(const Numbers& a, const Numbers& b, const Numbers& low,
                                                const Numbers& high) {
  double from = 0.0, to = 1.0;
  for (std::size_t i = 0; i < 3; ++i) {
    const double along = b[i] - a[i];
    if (along == 0.0) {
      if (a[i] < low[i] || a[i] > high[i]) return {};
      continue;
    }
    const double one = (low[i] - a[i]) / along, other = (high[i] - a[i]) / along;
    from = std::max(from, std::min(one, other));
    to = std::min(to, std::max(one, other));
  }
  if (!(from <= to)) return {};
  return std::array<double, 2>{from, to};
}

// How far the corner of the box that is farthest along `normal` lies before the plane through `at`.
double before_plane_m(const Numbers& low, const Numbers& high, const Direction& normal, const Numbers& at) {
  const Numbers n{normal.x, normal.y, normal.z};
  double most = 0.0;
  for (std::size_t i = 0; i < 3; ++i) most += n[i] * ((n[i] > 0.0 ? high[i] : low[i]) - at[i]);
  return most;
}

struct BoxedFace {
  TopoDS_Face face;
  Numbers low, high;
};

std::vector<BoxedFace> boxed(const Assembly& assembly) {
  std::vector<BoxedFace> faces;
  for (const JoinedFace& joined : assembly.faces) {
    Bnd_Box box;
    BRepBndLib::Add(joined.face, box, false);
    box.SetGap(0.0);
    const gp_Pnt low = box.CornerMin(), high = box.CornerMax();
    faces.push_back({joined.face, {low.X(), low.Y(), low.Z()}, {high.X(), high.Y(), high.Z()}});
  }
  return faces;
}

}  // namespace

struct ConcreteBeside::Kernel {
  explicit Kernel(const Assembly& assembly) : faces(boxed(assembly)), classifier(assembly.solid) {
    crossings.Load(assembly.solid, 1e-7);
  }

  // Places where the line crosses a face, in metres from its start, rising; its two ends among them. Nothing: not known.
  std::optional<std::vector<double>> crossed_m(const gp_Lin& line, double length_m) {
    crossings.Perform(line, 0.0, length_m);
    if (!crossings.IsDone()) return {};
    std::vector<double> at{0.0, length_m};
    for (int i = 1; i <= crossings.NbPnt(); ++i)
      at.push_back(std::clamp(crossings.WParameter(i), 0.0, length_m));
    std::ranges::sort(at);
    return at;
  }

  bool is_inside(const gp_Pnt& point) {
    classifier.Perform(point, 1e-7);
    return classifier.State() == TopAbs_IN;
  }

  std::vector<BoxedFace> faces;
  IntCurvesFace_ShapeIntersector crossings;
  BRepClass3d_SolidClassifier classifier;
};

ConcreteBeside::ConcreteBeside(const Body& body) : body_(body) {}
ConcreteBeside::~ConcreteBeside() = default;

Outcome<LineInConcrete> ConcreteBeside::line(const Position& from, const Position& to, Length within,
                                             Length end, const InsertSite* site) {
  const NotAssessed unknown{"whether a leg meets the concrete is not known: the solid cannot be asked", {}};
  const Numbers a = numbers_m(from), b = numbers_m(to);
  const double length_m = in(m, norm(to - from)), within_m = in(m, within), end_m = in(m, end);
  if (!(length_m > rounding_m) || !std::isfinite(length_m) || !std::isfinite(a[0] + a[1] + a[2]))
    return unknown;
  const Direction along{(b[0] - a[0]) / length_m, (b[1] - a[1]) / length_m, (b[2] - a[2]) / length_m};

  Numbers low = numbers_m(body_.lowest), high = numbers_m(body_.highest);
  const bool leaves = site && site->planar && dot(along, site->normal) >= -1e-9;
  if (leaves && before_plane_m(low, high, site->normal, a) <= rounding_m) return LineInConcrete{};
  for (std::size_t i = 0; i < 3; ++i) {
    low[i] -= within_m;
    high[i] += within_m;
  }
  const auto part = within_box(a, b, low, high);
  if (!part) return LineInConcrete{};
  if (!body_.assembly) return unknown;

  try {
    if (!kernel_) kernel_ = std::make_unique<Kernel>(*body_.assembly);
    LineInConcrete found;
    const gp_Lin line(gp_Pnt(a[0], a[1], a[2]), gp_Dir(along.x, along.y, along.z));
    const auto point = [&](double at_m) {
      return line.Location().Translated(gp_Vec(line.Direction()) * at_m);
    };
    // Beyond the box nothing is crossed: the line is asked a little past it only.
    const double asked_m = std::min(length_m, (*part)[1] * length_m + 1e-3);
    auto crossed = kernel_->crossed_m(line, asked_m);
    if (!crossed) return unknown;
    std::vector<double> places = *std::move(crossed);
    if (end_m > 0.0 && end_m < asked_m) {
      places.push_back(end_m);
      std::ranges::sort(places);
    }
    bool entered = false;
    for (std::size_t i = 0; i + 1 < places.size(); ++i) {
      const double piece_m = places[i + 1] - places[i];
      if (!(piece_m > rounding_m) || !kernel_->is_inside(point(0.5 * (places[i] + places[i + 1])))) continue;
      (places[i + 1] <= end_m ? found.inside_end : found.inside) += piece_m * m;
      if (!entered) found.at = position(point(places[i]));
      entered = true;
    }
    if (found.inside > Length{}) return found;

    const double begins_m = std::max(end_m, (*part)[0] * length_m);
    if (!(asked_m - begins_m > rounding_m)) return found;
    const gp_Pnt first = point(begins_m), last = point(asked_m);
    const TopoDS_Edge edge = BRepBuilderAPI_MakeEdge(first, last).Edge();
    const Numbers one{first.X(), first.Y(), first.Z()}, other{last.X(), last.Y(), last.Z()};
    for (std::size_t face = 0; face < kernel_->faces.size(); ++face) {
      if (site && site->face == face) continue;
      BoxedFace near = kernel_->faces[face];
      if (leaves && before_plane_m(near.low, near.high, site->normal, a) <= rounding_m) continue;
      for (std::size_t i = 0; i < 3; ++i) {
        near.low[i] -= within_m;
        near.high[i] += within_m;
      }
      if (!within_box(one, other, near.low, near.high)) continue;
      const BRepExtrema_DistShapeShape distance(edge, near.face);
      if (!distance.IsDone() || distance.NbSolution() < 1) return unknown;
      const Length apart = distance.Value() * m;
      if (!(apart < within) || (found.nearest && apart >= *found.nearest)) continue;
      found.nearest = apart;
      if (!entered) found.at = position(distance.PointOnShape2(1));
    }
    return found;
  } catch (const Standard_Failure&) {
    return unknown;
  } catch (const std::exception&) {
    return unknown;
  }
}

}  // namespace firstpick::piece
