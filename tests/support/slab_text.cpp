#include "support/slab_text.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace firstpick::tests {

namespace {

// Exact by definition: inch, pound, standard gravity.
constexpr double mm_in_inch = 25.4;
constexpr double pound_in_N = 0.45359237 * 9.80665;
constexpr double psi_in_MPa = pound_in_N / (mm_in_inch * mm_in_inch);
constexpr double lb_per_ft3_in_kg_per_m3 = 0.45359237 / (0.3048 * 0.3048 * 0.3048);

struct Writer {
  Written written;

  std::string in(double number, double us, const char* si_unit, const char* us_unit) const {
    return written == Written::si ? fmt::format("\"{:.17g} {}\"", number, si_unit)
                                  : fmt::format("\"{:.17g} {}\"", number / us, us_unit);
  }
  std::string length(double mm) const { return in(mm, mm_in_inch, "mm", "in"); }
  std::string area(double mm2) const { return in(mm2, mm_in_inch * mm_in_inch, "mm2", "in2"); }
  std::string force(double kN) const { return in(kN, pound_in_N / 1000.0, "kN", "lb"); }
  std::string stress(double MPa) const { return in(MPa, psi_in_MPa, "MPa", "psi"); }
  std::string density(double kg_per_m3) const { return in(kg_per_m3, lb_per_ft3_in_kg_per_m3, "kg/m3", "lb/ft3"); }
  std::string point(const Point& mm) const {
    return fmt::format("[{}, {}, {}]", length(mm[0]), length(mm[1]), length(mm[2]));
  }
};

std::string insert_text(const SlabText::Insert& insert, const Writer& w) {
  std::string text = fmt::format("\n[[insert]]\nid = \"{}\"\nkind = \"{}\"\nat = {}\ncertificate = \"lot 1\"\n"
                                 "position_confirmed = true\nsize = \"5 t\"\nhanger_bar = true\n",
                                 insert.id, insert.rated ? "rated" : "headed", w.point(insert.at_mm));
  if (insert.rated)
    return text + fmt::format("rating = {{ load = {}, at_strength = {}, includes_factor = 4, "
                              "maximum_angle = \"75 deg\", minimum_edge = \"20 mm\", minimum_spacing = \"50 mm\" }}\n",
                              w.force(insert.rating_kN), w.stress(20.0));
  return text + fmt::format("embedment = {}\nshank = {}\nthreaded = false\nhead_bearing_area = {}\nsteel = \"F1554-55\"\n",
                            w.length(insert.embedment_mm), w.length(insert.shank_mm), w.area(insert.head_mm2));
}

double rounded_to_mm(double mm) { return std::round(mm); }

// Legs from each insert to one hook, to the millimetre.
void reach_hook(SlabText& slab, const Point& hook_mm) {
  for (const SlabText::Insert& insert : slab.inserts)
    slab.legs_mm.push_back(rounded_to_mm(std::hypot(hook_mm[0] - insert.at_mm[0], hook_mm[1] - insert.at_mm[1],
                                                    hook_mm[2] - insert.at_mm[2])));
}

SlabText::Insert random_insert(Chance& chance, const std::string& id, const Point& at_mm, double thickness_mm) {
  SlabText::Insert insert{.id = id, .at_mm = at_mm};
  insert.rated = chance.one_in(5);
  insert.embedment_mm = rounded_to_mm(thickness_mm * chance.between(0.4, 0.8));
  insert.shank_mm = chance.whole_between(16.0, 30.0);
  insert.head_mm2 = chance.whole_between(500.0, 1500.0);
  insert.rating_kN = chance.whole_between(15.0, 60.0);
  return insert;
}

}  // namespace

std::string plan_text(const SlabText& slab, Written written) {
  const Writer w{written};
  std::string text = fmt::format("format = 1\nrules = \"{}\"\n\n[piece]\nmark = \"SL-1\"\nunits = \"{}\"\n"
                                 "stated_weight = {}\nengineer = \"engineer made for the test\"\nmodel = \"block\"\n"
                                 "bending_check = \"made for the test\"\n",
                                 slab.rules, written == Written::si ? "si" : "us", w.force(slab.stated_kN));
  for (const SlabText::Box& box : slab.boxes)
    text += fmt::format("\n[[piece.solid]]\nname = \"{}\"\nshape = \"box\"\n{}size = {}\nat = {}\n", box.name,
                        box.cut ? "cut = true\n" : "", w.point(box.size_mm), w.point(box.at_mm));
  text += fmt::format("\n[concrete]\nkind = \"normalweight\"\ndensity = {}\ndensity_tolerance = \"3 %\"\ncracked = true\n"
                      "form_stripping_strength = {}\nlifting_strength = {}\n",
                      w.density(slab.density_kg_per_m3), w.stress(slab.required_MPa), w.stress(slab.required_MPa));
  text += "\n[concrete.evidence]\nspecimen = \"cylinder 150x300 mm\"\ncure = \"field\"\ncast = 2026-03-02T16:30:00\n"
          "tested = 2026-03-03T07:10:00\nvalid_for = \"12 h\"\nresults = [";
  for (std::size_t i = 0; i < slab.results_MPa.size(); ++i)
    text += (i == 0 ? "" : ", ") + w.stress(slab.results_MPa[i]);
  text += "]\n";
  if (slab.strip) {
    text += fmt::format("\n[form]\n{}[[form.contact]]\nfaces = \"-z\"\nadhesion = {}\n",
                        slab.former_kN > 0.0 ? "" : "attached = []\n",
                        w.in(slab.grip_kPa, psi_in_MPa * 1000.0, "kPa", "psi"));
    if (slab.former_kN > 0.0)
      text += fmt::format("[[form.attached]]\nwhat = \"former\"\nweight = {}\nat = {}\n", w.force(slab.former_kN),
                          w.point(centre_of_gravity_mm(slab)));
  } else {
    text += "\n[form]\nreleased = true\n";
  }
  for (const SlabText::Insert& insert : slab.inserts) text += insert_text(insert, w);
  text += fmt::format("\n[[sling]]\nid = \"chain\"\nkind = \"chain\"\nrated = {}\ninspected = 2026-01-15\n",
                      w.force(slab.sling_kN));
  text += fmt::format("\n[[hardware]]\nid = \"clutch\"\nkind = \"clutch\"\nsize = \"5 t\"\nrated = {}\n"
                      "design_factor = 5\ninspected = 2026-01-15\n",
                      w.force(slab.sling_kN));
  text += fmt::format("\n[[crane]]\nid = \"bay\"\nrated = {}\nblock = {}\ninspected = 2026-01-15\n",
                      w.force(slab.crane_kN), w.force(1.0));
  text += fmt::format("\n[[rigging]]\nid = \"legs\"\nweight = {}\nlegs = [\n", w.force(1.0));
  for (std::size_t i = 0; i < slab.inserts.size(); ++i)
    text += fmt::format("  {{ to = \"{}\", length = {}, gear = \"chain\", hardware = \"clutch\" }},\n", slab.inserts[i].id,
                        w.length(slab.legs_mm[i]));
  text += "]\n";
  if (slab.equalised)
    text += fmt::format("equalised = [[\"{}\", \"{}\"]]\nequaliser_rated = \"100 t\"\nequaliser_inspected = 2026-01-15\n",
                        slab.inserts[0].id, slab.inserts[1].id);
  return text + fmt::format("\n[[stage]]\nkind = \"{}\"\nlanding = {{ on = \"flat\", level = true, "
                            "restrained = \"rack\", legs_off = true }}\nrigging = \"legs\"\ncrane = \"bay\"\nat = 2026-03-03T08:00:00\n"
                            "hook_latch = true\nexclusion_zone = true\ntag_line = true\nsignaller = true\n"
                            "load_in_view = true\nclear_of_power_lines = true\noperator_agrees = true\n"
                            "critical_lift_plan = \"plan made for the test\"\n",
                            slab.strip ? "strip" : "yard");
}

double volume_m3(const SlabText& slab) {
  double volume = 0.0;
  for (const SlabText::Box& box : slab.boxes)
    volume += (box.cut ? -1e-9 : 1e-9) * box.size_mm[0] * box.size_mm[1] * box.size_mm[2];
  return volume;
}

Point centre_of_gravity_mm(const SlabText& slab) {
  Point moment{};
  for (const SlabText::Box& box : slab.boxes)
    for (std::size_t i = 0; i < 3; ++i)
      moment[i] += (box.cut ? -1e-9 : 1e-9) * box.size_mm[0] * box.size_mm[1] * box.size_mm[2] *
                   (box.at_mm[i] + 0.5 * box.size_mm[i]);
  const double volume = volume_m3(slab);
  return {moment[0] / volume, moment[1] / volume, moment[2] / volume};
}

double nominal_weight_kN(const SlabText& slab) {
  return volume_m3(slab) * slab.density_kg_per_m3 * 9.80665 / 1000.0;
}

double Chance::between(double low, double high) {
  return low + (high - low) * static_cast<double>(engine_() >> 11) * 0x1p-53;
}
double Chance::whole_between(double low, double high) { return std::round(between(low, high)); }

SlabText random_slab(Chance& chance) {
  SlabText slab;
  const double length = chance.whole_between(2000.0, 7000.0), width = chance.whole_between(1500.0, 4000.0);
  const double thickness = chance.whole_between(150.0, 400.0);
  slab.boxes.push_back({"slab", {0.0, 0.0, 0.0}, {length, width, thickness}});
  const double rib = chance.whole_between(150.0, 600.0);
  slab.boxes.push_back({"rib", {chance.whole_between(0.0, length - rib), 0.0, -rib}, {rib, width, rib}});
  if (chance.one_in(3)) {
    const double wide = chance.whole_between(0.1, 0.3) * length, deep = std::round(0.3 * width);
    const double side = std::max(200.0, std::round(wide));
    slab.boxes.push_back({"window", {std::round(0.5 * length - 0.5 * side), std::round(0.35 * width), 0.0},
                          {side, deep, thickness}, true});
  }

  const auto at = [&](double x, double y) {
    return Point{std::round(length * (x + chance.between(-0.07, 0.07))),
                 std::round(width * (y + chance.between(-0.07, 0.07))), thickness};
  };
  std::vector<Point> picks{at(0.2, 0.2), at(0.8, 0.2)};
  if (chance.one_in(2)) picks.push_back(at(0.5, 0.85));
  else picks.insert(picks.end(), {at(0.8, 0.8), at(0.2, 0.8)});
  for (std::size_t i = 0; i < picks.size(); ++i)
    slab.inserts.push_back(random_insert(chance, fmt::format("A{}", i + 1), picks[i], thickness));

  const Point centre = centre_of_gravity_mm(slab);
  reach_hook(slab, {centre[0] + chance.between(-100.0, 100.0), centre[1] + chance.between(-100.0, 100.0),
                    thickness + chance.between(0.3, 0.9) * length});
  slab.equalised = picks.size() == 4 && chance.one_in(2);
  slab.density_kg_per_m3 = chance.whole_between(2300.0, 2500.0);
  slab.stated_kN = nominal_weight_kN(slab) * chance.between(0.95, 1.05);
  const double strength = chance.between(12.0, 45.0);
  slab.results_MPa = {strength, strength * chance.between(1.0, 1.2)};
  slab.required_MPa = chance.between(12.0, 25.0);
  slab.grip_kPa = chance.between(0.3, 2.0);
  slab.former_kN = chance.one_in(2) ? chance.between(0.2, 3.0) : 0.0;
  slab.sling_kN = nominal_weight_kN(slab) * chance.between(0.3, 1.5);
  slab.crane_kN = nominal_weight_kN(slab) * chance.between(1.1, 3.0);
  slab.strip = !chance.one_in(4);
  return slab;
}

SlabText with_hook_at(const SlabText& level, double height_mm) {
  SlabText slab = level;
  for (std::size_t i = 0; i < slab.inserts.size(); ++i)
    slab.legs_mm[i] = std::hypot(slab.inserts[i].at_mm[0], slab.inserts[i].at_mm[1], height_mm);
  return slab;
}

SlabText level_slab(Chance& chance, double height_mm) {
  SlabText slab;
  const double half_length = chance.whole_between(1000.0, 3500.0), half_width = chance.whole_between(750.0, 2000.0);
  const double thickness = chance.whole_between(150.0, 400.0);
  slab.boxes.push_back({"slab", {-half_length, -half_width, 0.0}, {2.0 * half_length, 2.0 * half_width, thickness}});
  const double x = std::round(half_length * chance.between(0.4, 0.8)), y = std::round(half_width * chance.between(0.2, 0.4));
  const SlabText::Insert one = random_insert(chance, "A1", {-x, -y, thickness}, thickness);
  for (const auto& [id, at] : {std::pair{"A1", Point{-x, -y, thickness}}, std::pair{"A2", Point{x, -y, thickness}},
                               std::pair{"A3", Point{0.0, 2.0 * y, thickness}}}) {
    slab.inserts.push_back(one);
    slab.inserts.back().id = id;
    slab.inserts.back().at_mm = at;
  }
  slab.legs_mm.assign(3, 0.0);
  slab.stated_kN = nominal_weight_kN(slab);
  const double strength = chance.between(12.0, 45.0);
  slab.results_MPa = {strength, strength};
  slab.required_MPa = chance.between(12.0, 20.0);
  slab.grip_kPa = chance.between(0.3, 2.0);
  slab.sling_kN = nominal_weight_kN(slab) * chance.between(0.3, 1.5);
  slab.crane_kN = nominal_weight_kN(slab) * chance.between(1.1, 3.0);
  return with_hook_at(slab, height_mm);
}

SlabText level_slab(Chance& chance) { return level_slab(chance, chance.between(1000.0, 4000.0)); }

}  // namespace firstpick::tests
