// Derived from the shape, the first that fits:
//
//   ring    round, of one rectangular section (round_and_box.hpp), its wall narrower than n_panel times its height
//   panel   top face x thickness is the volume, inserts in its faces or edges; its lesser side at least n_panel thicknesses.
//           Or one face flush and the other in level steps (stepped_panel.hpp)
//   line    the longer level extent at least n_line times the other and the height
//   box     slabs and walls round a barrel right through (round_and_box.hpp); ring and box are blocks of which more is known
//   block   none of them: bending is not computed. Passes with a note where it is small and stocky:
//
//           L <= n_block * t  and  L <= L_block       L: greater level side; t = 2 volume / surface, the mean thickness
//
// Limits   n_panel, n_line, n_block, L_block: "cracking.*" of the rule set, choices. A model that the plan states
//          must fit the shape as well: a stated line is as slender, a stated block is no panel or line, and stocky.

#include "checks/piece_model.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "checks/panel_face.hpp"
#include "checks/round_and_box.hpp"
#include "checks/stepped_panel.hpp"

namespace firstpick::checks {

Stockiness stockiness(const piece::Body& body, const tables::CrackingModel& limits) {
  const Vector<Length> extent = body.highest - body.lowest;
  Area surface{};
  for (const piece::Face& face : body.faces) surface += face.area;
  Stockiness found{.size = std::max(extent.x, extent.y), .mean_thickness = 2.0 * body.volume / surface};
  found.slenderness = (found.size / found.mean_thickness).value();
  // What is not a number is not stocky.
  found.is_stocky = found.mean_thickness > Length{} && is_finite(found.mean_thickness) &&
                    found.slenderness <= limits.block_slenderness.value.value() && found.size <= limits.block_size.value;
  return found;
}

ModelChoice piece_model(const plan::Plan& plan, const piece::Body& body, const tables::CrackingModel& limits) {
  const Vector<Length> extent = body.highest - body.lowest;
  const Length longer = std::max(extent.x, extent.y), shorter = std::min(extent.x, extent.y);
  ModelChoice choice{.axis = extent.x >= extent.y ? plan::Axis::x : plan::Axis::y,
                     .flat = panel_face(plan, body).has_value()};
  const double n_panel = limits.panel_slenderness.value.value(), n_line = limits.line_slenderness.value.value();
  choice.stepped = !choice.flat && shorter >= n_panel * extent.z && stepped_face(plan, body, limits);
  const bool is_line = longer >= n_line * shorter && longer >= n_line * extent.z;
  // A round wall is no plate, however wide the ring: its wall is narrow against its height.
  const auto ring = ring_shape(body);
  if (ring && is_slender(*ring, limits) && ring->outside - ring->inside < n_panel * ring->depth) choice.known = Known::ring;
  else if ((choice.flat || choice.stepped) && shorter >= n_panel * extent.z) choice.model = plan::PieceModel::panel;
  else if (is_line) choice.model = plan::PieceModel::line;
  else if (const auto box = box_shape(body); box && is_slender(*box, limits)) choice.known = Known::box;
  if (!plan.piece.model) return choice;
  choice.stated = true;
  // A panel that is none is refused where it is computed (panel_tension.cpp).
  choice.fits = *plan.piece.model == plan::PieceModel::panel || *plan.piece.model == choice.model ||
                (*plan.piece.model == plan::PieceModel::line && is_line);
  choice.model = *plan.piece.model;
  if (choice.model != plan::PieceModel::block) choice.known = Known::no;
  return choice;
}

std::string told(const Stockiness& stocky, const tables::CrackingModel& limits, UnitSystem units) {
  return fmt::format("{} long, {} mean thicknesses of {}; passes up to {} and {} thicknesses",
                     print(stocky.size, units), print_number(stocky.slenderness, 3, Rounding::up),
                     print(stocky.mean_thickness, units), print(limits.block_size.value, units),
                     print_number(limits.block_slenderness.value.value(), 3, Rounding::down));
}

std::string told(const ModelChoice& choice, const piece::Body& body, const tables::CrackingModel& limits,
                 UnitSystem units) {
  const std::string_view how = choice.stated ? "as the plan states" : "derived from its shape";
  switch (choice.model) {
    case plan::PieceModel::line: return fmt::format("bending of the piece: computed as a line, {}", how);
    case plan::PieceModel::panel: return fmt::format("bending of the piece: computed as a panel, {}", how);
    case plan::PieceModel::block: break;
  }
  if (choice.known != Known::no)
    return fmt::format("bending of the piece: computed as a {}, derived from its shape",
                       choice.known == Known::ring ? "ring" : "box");
  return fmt::format("bending of the piece: not computed, it is a block, {}: {}", how,
                     told(stockiness(body, limits), limits, units));
}

}  // namespace firstpick::checks
