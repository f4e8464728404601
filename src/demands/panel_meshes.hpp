// The meshes of a panel, each finer than the one before, with their equations: what its loads do not change.
//
// The panels met last are kept. A stage that is asked again with another weight, strength or leg, as a search for a
// strength, a board or a comparison of rule sets does, needs no new mesh. What is found is the same to the last bit: a
// panel that is kept was made of the same numbers.
#pragma once

#include <array>
#include <cstddef>
#include <future>
#include <memory>
#include <mutex>
#include <optional>
#include <vector>

#include "demands/panel_bending.hpp"
#include "demands/panel_flat.hpp"
#include "demands/panel_readings.hpp"
#include "demands/panel_supports.hpp"
#include "demands/plate_membrane.hpp"
#include "demands/plate_solve.hpp"

namespace firstpick::demands {

// On one mesh, and forces along the panel on one twice as coarse, whose triangles have twice the nodes to a side.
// The loads of `panel` are not looked at; panel and flat must outlive this.
class MeshedPanel {
 public:
  MeshedPanel(const Panel& panel, const FlatPanel& flat, PlateMesh mesh, double size_m);

  const PlateMesh& mesh() const { return mesh_; }
  bool rests_on_edge(const PanelLoad& load) const { return shares(load, mesh_) && shares(load, coarse_); }

  // Nothing where it could not be solved. The load must rest on the edge.
  std::optional<PanelFound> found(const PanelLoad& load) const;

 private:
  // What each node of the edge on the ground carries; nothing where it cannot be carried so.
  std::optional<std::vector<EdgeShare>> shares(const PanelLoad& load, const PlateMesh& mesh) const;

  const Panel& panel_;
  const FlatPanel& flat_;
  PlateMesh mesh_, coarse_;
  PlateSolver plate_;
  PanelReadings of_plate_, of_membrane_;
  std::optional<MembraneSolver> membrane_;
};

class PanelMeshes {
 public:
  static constexpr std::size_t count = 6;
  static constexpr double finer = 0.7;  // each mesh from the one before

  // Of this outline, held and read so, with forces at these places; one of those kept, or a new one. From any thread.
  static std::shared_ptr<const PanelMeshes> of(const Panel& panel);

  explicit PanelMeshes(const Panel& panel);
  PanelMeshes(const PanelMeshes&) = delete;
  PanelMeshes& operator=(const PanelMeshes&) = delete;
  ~PanelMeshes() = default;

  const FlatPanel& flat() const { return flat_; }

  // Made when it is first asked for. Null: the panel could not be divided so. From any thread.
  const MeshedPanel* mesh(std::size_t i) const;

 private:
  using Made = std::unique_ptr<const MeshedPanel>;
  Made made(std::size_t i) const;
  void begin() const;

  Panel panel_;  // without its loads
  FlatPanel flat_;
  mutable std::once_flag begun_;
  mutable std::array<std::shared_future<Made>, count>
      meshes_;  // last: they are waited for before the rest goes
};

}  // namespace firstpick::demands
