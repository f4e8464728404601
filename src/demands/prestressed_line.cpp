#include "demands/prestressed_line.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "demands/beam_pieces.hpp"

namespace firstpick::demands {

namespace {

constexpr double strand_places_within = 1e-9;   // of the length: places that are one
constexpr double parabola_flat_within = 1e-12;  // of a parabola: its vertex counts where it is curved at all

std::optional<NotAssessed> strand_refusal(const PrestressRange& range) {
  const bool usable = range.least > Ratio{} && range.least <= range.most && is_finite(range.most) &&
                      range.transfer_least > Ratio{} && range.transfer_least <= range.transfer_most &&
                      is_finite(range.transfer_most) && range.load_least >= Ratio{} &&
                      range.load_least <= range.load_most && is_finite(range.load_most);
  if (!usable) return NotAssessed{"the range of the prestress or of the load is not a usable one", {}};
  return {};
}

std::optional<NotAssessed> strand_refusal(const StrandRow& row, const BeamLine& beam) {
  if (!(row.force > Force{}) || !is_finite(row.force) || !(row.transfer > Length{}) ||
      !is_finite(row.transfer))
    return NotAssessed{"force or transfer length of a row of strands is not a usable number", {}};
  if (row.points.size() < 2) return NotAssessed{"a row of strands has no line", {}};
  const Length first = beam.steps.front().from, last = beam.steps.back().to,
               same = strand_places_within * (last - first);
  for (std::size_t i = 0; i < row.points.size(); ++i) {
    const StrandPoint& point = row.points[i];
    if (!is_finite(point.at) || !is_finite(point.height))
      return NotAssessed{"a place of a row of strands is not a usable number", {}};
    if (!(point.at >= first - same && point.at <= last + same))
      return NotAssessed{"a row of strands runs beyond the ends of the piece", {}};
    if (i > 0 && !(point.at > row.points[i - 1].at + same))
      return NotAssessed{"a row of strands does not run along the piece from place to place", {}};
  }
  return {};
}

// Between its two points or more.
Length strand_height(const StrandRow& row, Length at) {
  std::size_t i = 1;
  while (i + 1 < row.points.size() && at > row.points[i].at) ++i;
  const StrandPoint &a = row.points[i - 1], &b = row.points[i];
  return a.height + (b.height - a.height) * ((at - a.at) / (b.at - a.at));
}

// Share of the whole force that has come into the concrete.
Ratio transferred(const StrandRow& row, Length at, Length transfer) {
  const Ratio here =
      std::min(Ratio{(at - row.points.front().at) / transfer}, Ratio{(row.points.back().at - at) / transfer});
  return std::clamp(here, Ratio::from_value(0.0), Ratio::from_value(1.0));
}

// Where the share of a row that has come in, or its slope, changes.
void add_strand_places(std::vector<Length>& places, const StrandRow& row, const PrestressRange& range) {
  const Length first = row.points.front().at, last = row.points.back().at;
  places.push_back(0.5 * (first + last));  // where two transfers meet, on a short row
  for (const StrandPoint& point : row.points) places.push_back(point.at);
  for (const Ratio& share : {range.transfer_least, range.transfer_most}) {
    places.push_back(first + share * row.transfer);
    places.push_back(last - share * row.transfer);
  }
}

struct LineFibre {  // of one step
  bool top = false;
  Length from_centroid{};  // up positive
  double sign = 1.0;       // of the search: 1 tension, -1 compression
};

class FibreSearch {
 public:
  FibreSearch(const BeamLine& beam, const std::vector<StrandRow>& rows, const PrestressRange& range)
      : beam_(beam), rows_(rows), range_(range) {}

  // Inside one piece of the line, between two neighbouring places.
  void between(const BeamPiece& piece, Length from, Length to, const LineFibre& fibre,
               FibreStress& worst) const {
    std::vector<bool> at_most(rows_.size());
    const Length half = 0.5 * (from + to);
    for (std::size_t r = 0; r < rows_.size(); ++r) {
      const auto hurts = [&](bool most) { return fibre.sign * row_stress(piece, half, fibre, r, most); };
      at_most[r] = hurts(true) >= hurts(false);
    }
    for (const Ratio& load : {range_.load_least, range_.load_most}) {
      const auto stress = [&](Length at) { return stress_at(piece, at, fibre, load, at_most); };
      const FibreStress a = stress(from), b = stress(half), c = stress(to);
      for (const FibreStress& one : {a, b, c}) take(one, fibre, worst);
      // The parabola through the three: its vertex, in halves of the stretch from the middle.
      const double bend = (a.stress - 2.0 * b.stress + c.stress).value(),
                   slope = 0.5 * (c.stress - a.stress).value();
      if (std::abs(bend) > parabola_flat_within * (std::abs(b.stress.value()) + std::abs(slope)))
        if (const double vertex = -slope / bend; std::abs(vertex) < 1.0)
          take(stress(half + vertex * 0.5 * (to - from)), fibre, worst);
    }
  }

  // Where a row passes the edge of the kern of this fibre, its pull turns into a push.
  void add_kern(std::vector<Length>& places, const BeamPiece& piece, const LineFibre& fibre, Length from,
                Length to) const {
    for (const StrandRow& row : rows_) {
      const double a = lever(piece, from, fibre, row), b = lever(piece, to, fibre, row);
      if (a * b < 0.0) places.push_back(from + (to - from) * (a / (a - b)));
    }
  }

 private:
  // 1 - (z_c - z_p) (z - z_c) A/I: below zero the row pulls at the fibre.
  double lever(const BeamPiece& piece, Length at, const LineFibre& fibre, const StrandRow& row) const {
    const BeamStep& step = beam_.steps[piece.step];
    return 1.0 -
           ((step.centroid - strand_height(row, at)) * fibre.from_centroid * step.area / step.second_moment)
               .value();
  }

  Force row_force(std::size_t r, Length at, bool most) const {
    const StrandRow& row = rows_[r];
    const Ratio transfer = most ? range_.transfer_least : range_.transfer_most;
    return (most ? range_.most : range_.least) * row.force * transferred(row, at, transfer * row.transfer);
  }

  Stress row_stress(const BeamPiece& piece, Length at, const LineFibre& fibre, std::size_t r,
                    bool most) const {
    return -row_force(r, at, most) / beam_.steps[piece.step].area * lever(piece, at, fibre, rows_[r]);
  }

  FibreStress stress_at(const BeamPiece& piece, Length at, const LineFibre& fibre, Ratio load,
                        const std::vector<bool>& at_most) const {
    const BeamStep& step = beam_.steps[piece.step];
    const Cut cut = piece.cut_at(at - piece.from);
    FibreStress found{.at = at, .top = fibre.top, .load = load};
    found.area = step.area;
    found.second_moment = step.second_moment;
    found.from_centroid = abs(fibre.from_centroid);
    found.of_load = cut.axial / step.area - cut.moment * fibre.from_centroid / step.second_moment;
    found.stress = load * found.of_load;
    found.at_most = at_most;
    for (std::size_t r = 0; r < rows_.size(); ++r) {
      found.of_rows.push_back(row_stress(piece, at, fibre, r, at_most[r]));
      found.rows.push_back(row_force(r, at, at_most[r]));
      found.below_centroid.push_back(step.centroid - strand_height(rows_[r], at));
      found.stress += found.of_rows.back();
    }
    return found;
  }

  static void take(const FibreStress& one, const LineFibre& fibre, FibreStress& worst) {
    if (worst.area == Area{} || fibre.sign * one.stress > fibre.sign * worst.stress ||
        std::isnan(one.stress.value()))  // kept: nothing is larger
      worst = one;
  }

  const BeamLine& beam_;
  const std::vector<StrandRow>& rows_;
  const PrestressRange& range_;
};

std::optional<NotAssessed> outside_depth(const BeamLine& beam, const StrandRow& row) {
  for (const BeamStep& step : beam.steps)
    for (Length at : {step.from, step.to}) {
      if (step.to <= row.points.front().at || step.from >= row.points.back().at) continue;
      at = std::clamp(at, row.points.front().at, row.points.back().at);
      if (const Length z = strand_height(row, at); !(z > step.bottom && z < step.top))
        return NotAssessed{"a row of strands leaves the depth of the piece", {}};
    }
  return {};
}

}  // namespace

Outcome<PrestressedState> prestressed_state(const BeamLine& beam, const std::vector<StrandRow>& rows,
                                            const PrestressRange& range) {
  const auto balanced = beam_state(beam);
  if (const auto* gap = std::get_if<NotAssessed>(&balanced)) return *gap;
  if (auto gap = strand_refusal(range)) return *std::move(gap);
  if (rows.empty()) return NotAssessed{"the piece has no row of strands", {}};
  std::vector<Length> places;
  for (const StrandRow& row : rows) {
    if (auto gap = strand_refusal(row, beam)) return *std::move(gap);
    if (auto gap = outside_depth(beam, row)) return *std::move(gap);
    add_strand_places(places, row, range);
  }
  const FibreSearch search(beam, rows, range);
  PrestressedState state;
  for (const BeamPiece& piece : beam_pieces(beam, places)) {
    const BeamStep& step = beam.steps[piece.step];
    const std::array fibres{LineFibre{true, step.top - step.centroid, 1.0},
                            LineFibre{false, step.bottom - step.centroid, 1.0}};
    for (LineFibre fibre : fibres) {
      std::vector<Length> cuts{piece.from, piece.to};
      search.add_kern(cuts, piece, fibre, piece.from, piece.to);
      std::ranges::sort(cuts);
      for (const double sign : {1.0, -1.0})
        for (std::size_t i = 1; i < cuts.size(); ++i) {
          fibre.sign = sign;
          search.between(piece, cuts[i - 1], cuts[i], fibre, sign > 0.0 ? state.tension : state.compression);
        }
    }
  }
  if (!is_finite(state.tension.stress) || !is_finite(state.compression.stress))
    return NotAssessed{"a stress of the piece is not a usable number", {}};
  return state;
}

}  // namespace firstpick::demands
