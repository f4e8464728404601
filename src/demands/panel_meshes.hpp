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

// Forces along the panel, on a mesh twice as coarse, whose triangles have twice the nodes to a side. `flat` must outlive this.
struct PanelMembrane {
  PanelMembrane(const Panel& panel, const FlatPanel& of_panel, PlateMesh coarse);

  const FlatPanel& flat;
  PlateMesh mesh;
  MembraneSolver solver;
  PanelReadings readings;
};

// Moments on one mesh. Of `panel` its loads, its edge and whether it is turned are not looked at; panel and flat must
// outlive this. The panel that is asked about is of the same outline.
class MeshedPanel {
 public:
  MeshedPanel(const Panel& panel, const FlatPanel& flat, PlateMesh mesh);

  const PlateMesh& mesh() const { return mesh_; }
  // `along`: null where forces along the panel do not count.
  bool rests_on_edge(const Panel& panel, const PanelLoad& load, const PanelMembrane* along) const;

  // Nothing where it could not be solved. The load must rest on the edge.
  std::optional<PanelFound> found(const Panel& panel, const PanelLoad& load,
                                  const PanelMembrane* along) const;

 private:
  // What each node of the edge on the ground carries; nothing where it cannot be carried so.
  std::optional<std::vector<EdgeShare>> shares(const Panel& panel, const PanelLoad& load,
                                               const PlateMesh& mesh) const;

  const FlatPanel& flat_;
  PlateMesh mesh_;
  PlateSolver plate_;
  PanelReadings of_plate_;
};

class PanelMeshes {
 public:
  static constexpr std::size_t count = 6;
  static constexpr double finer = 0.7;  // each mesh from the one before

  // Of this outline, read so, with forces at these places or fewer, level and turned; one of those kept, or a new one. From
  // any thread.
  static std::shared_ptr<const PanelMeshes> of(const Panel& panel);

  explicit PanelMeshes(const Panel& panel);
  PanelMeshes(const PanelMeshes&) = delete;
  PanelMeshes& operator=(const PanelMeshes&) = delete;
  ~PanelMeshes() = default;

  const FlatPanel& flat() const { return flat_; }

  // Made when it is first asked for. Null: the panel could not be divided so. From any thread.
  const MeshedPanel* mesh(std::size_t i) const {
    return meshes_.at(i, [this](std::size_t k) { return meshed(k); });
  }
  // The same for forces along it. Null: there is no such mesh.
  const PanelMembrane* membrane(std::size_t i) const {
    return membranes_.at(i, [this](std::size_t k) { return stretched(k); });
  }

 private:
  // Each is made when it is first asked for. Three are always needed, and the third takes as long as the two before: it is
  // made beside them on another core. What is found does not depend on that.
  template <class T>
  class Finer {
   public:
    using Made = std::unique_ptr<const T>;
    template <class Make>
    const T* at(std::size_t i, const Make& make) const {
      std::call_once(begun_, [&] {
        for (std::size_t k = 0; k < count; ++k)
          made_[k] =
              std::async(k == 2 ? std::launch::async : std::launch::deferred, [make, k] { return make(k); });
      });
      const std::shared_future<Made> asked = made_.at(i);
      return asked.get().get();
    }

   private:
    mutable std::once_flag begun_;
    mutable std::array<std::shared_future<Made>, count> made_;
  };

  double size_m(std::size_t i) const;
  std::unique_ptr<const MeshedPanel> meshed(std::size_t i) const;
  std::unique_ptr<const PanelMembrane> stretched(std::size_t i) const;

  Panel panel_;  // without its loads
  FlatPanel flat_;
  Finer<MeshedPanel> meshes_;  // last: they are waited for before the rest goes
  Finer<PanelMembrane> membranes_;
};

}  // namespace firstpick::demands
