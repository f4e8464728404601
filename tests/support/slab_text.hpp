// Plans made by a fixed seed, as text: a slab with a rib below it, perhaps a window, on three or four inserts. Numbers are in
// mm, kN, MPa and kg/m3 and are written in SI or US units, so that the same plan can be read twice.
#pragma once

#include <array>
#include <cstdint>
#include <random>
#include <string>
#include <vector>

namespace firstpick::tests {

using Point = std::array<double, 3>;

struct SlabText {
  std::string rules = "us";
  struct Box {
    std::string name;
    Point at_mm, size_mm;
    bool cut = false;
  };
  struct Insert {
    std::string id;
    Point at_mm;
    bool rated = false;
    double embedment_mm = 150.0, shank_mm = 20.0, head_mm2 = 900.0;  // of a headed one
    double rating_kN = 30.0;                                         // of a rated one
  };
  std::vector<Box> boxes;
  std::vector<Insert> inserts;
  std::vector<double> legs_mm;   // one to each insert
  bool equalised = false;        // the first two legs are one rope over a sheave at the hook
  double density_kg_per_m3 = 2400.0, stated_kN = 0.0;
  std::vector<double> results_MPa{25.0, 26.0};
  double required_MPa = 15.0;
  double grip_kPa = 1.0;         // of the form on faces that look down; strip only
  double former_kN = 0.0;        // a form part that leaves with the piece, at its centre of gravity
  double sling_kN = 60.0, crane_kN = 250.0;
  // Its bending is not computed (model = "block", with a stated check): the laws of plates and beams are tested on the kernels.
  bool strip = true;             // else a yard lift: nothing grips
};

enum class Written { si, us };

std::string plan_text(const SlabText& slab, Written written = Written::si);

double volume_m3(const SlabText& slab);
Point centre_of_gravity_mm(const SlabText& slab);
double nominal_weight_kN(const SlabText& slab);

// The same numbers on every machine, unlike those of the standard distributions.
class Chance {
 public:
  explicit Chance(std::uint64_t seed) : engine_(seed) {}
  double between(double low, double high);
  double whole_between(double low, double high);  // a whole number
  bool one_in(int n) { return engine_() % static_cast<std::uint64_t>(n) == 0; }

 private:
  std::mt19937_64 engine_;
};

// Any slab that can be lifted by its legs: the hook stands above the centre of gravity, or some way beside it.
SlabText random_slab(Chance& chance);

// A slab on three inserts with its centre of gravity in the middle of them, below a hook `height_mm` above their face: it
// hangs level, and statics leaves nothing open.
SlabText level_slab(Chance& chance, double height_mm);
SlabText level_slab(Chance& chance);

// The same slab with its hook at another height: the legs are steeper or flatter.
SlabText with_hook_at(const SlabText& level, double height_mm);

}  // namespace firstpick::tests
