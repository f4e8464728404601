// The bending of one panel under loads that move about it, quickly and not to a stated accuracy: for a search, which judges
// what it finds by panel_bending.hpp. Never for a verdict.
//
// One mesh that no load changes, its stiffness factored once: picks are forces on a plate that hangs free, so wherever they
// are only the right-hand side is new. A force is shared among the corners of its triangle, by area coordinates: sum and
// moments are kept. Moments are read where panel_bending.hpp reads them, at fewer points.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "demands/panel_bending.hpp"

namespace firstpick::demands {

class PanelEstimate {
 public:
  // The loads of `panel` are not looked at. Null: the outline cannot be divided.
  static std::shared_ptr<const PanelEstimate> of(const Panel& panel);
  ~PanelEstimate();
  PanelEstimate(const PanelEstimate&) = delete;
  PanelEstimate& operator=(const PanelEstimate&) = delete;

  // Of a panel that stands on an edge (Panel::edge) its bending alone, not what the forces along it bring.
  // Not assessed: a force beside the panel, an edge that would lift at one end, numbers that are not usable.
  Outcome<std::vector<PanelBending>> bending(const std::vector<PanelLoad>& loads) const;

  // For drawings: the principal moments of one load at places, each a mean over a disc of diameter Panel::patch as
  // panel_bending.hpp reads them; nothing outside the panel. `most`: tension at the bottom positive. Not assessed: as above.
  struct Principal {
    PlateMoment most{}, least{};
  };
  Outcome<std::vector<std::optional<Principal>>> moments(const PanelLoad& load,
                                                         const std::vector<plan::PlanarPoint>& places) const;

 private:
  struct Parts;
  explicit PanelEstimate(std::unique_ptr<Parts> parts);
  std::unique_ptr<Parts> parts_;
};

}  // namespace firstpick::demands
