// What the form grips: the faces that each [[form.contact]] chooses, their area and projection on the pull.
//
// By name       every face that this solid made; where two surfaces fall together the earlier solid made it.
// By direction  every flat face whose outward normal is nearest to the direction (halfway between two: z
//               before x before y), unless another contact names the solid that made it. A curved face
//               faces several directions: it is chosen only where all of them are named together ("+x",
//               "-x", "+y", "-y" choose an upright round wall).
// All but       every face of the piece except those of the named solids, and except those that face the
//               named directions and were made by an added solid: what a cut made is left out by its name.
//
// So a face is in doubt gripped: one too many shows as an area counted twice, or as a heavier load.

#include <algorithm>
#include <array>
#include <set>

#include <fmt/format.h>

#include "piece/shape.hpp"

namespace firstpick::piece {
namespace {

constexpr std::array<const char*, 6> directions = {"-z", "+z", "-x", "+x", "-y", "+y"};
using Facing = std::set<std::string>;

std::string nearest_direction(const gp_Dir& normal) {
  constexpr double halfway = 1e-6;  // two components this near to each other count as equal
  const std::array<double, 6> share = {-normal.Z(), normal.Z(),  -normal.X(),
                                       normal.X(),  -normal.Y(), normal.Y()};
  std::size_t best = 0;
  for (std::size_t i = 1; i < share.size(); ++i)
    if (share[i] > share[best] + halfway) best = i;
  return directions[best];
}

Facing facing(const TopoDS_Face& face) {
  if (is_planar(face)) return {nearest_direction(middle_normal(face))};
  Facing found;
  for (const gp_Dir& normal : normals_all_over(face)) found.insert(nearest_direction(normal));
  return found;
}

bool is_direction(const std::string& name) {
  return std::find(directions.begin(), directions.end(), name) != directions.end();
}

class Chooser {
 public:
  Chooser(const plan::Plan& plan, const Assembly& assembly) : plan_(plan), assembly_(assembly) {}

  // Patches that the names of this choice choose, before `all_but` turns them round.
  std::set<std::size_t> named(const plan::FaceChoice& choice) {
    Facing wanted;
    for (const auto& name : choice.names)
      if (is_direction(name.value)) wanted.insert(name.value);
    std::set<std::size_t> chosen;
    for (std::size_t i = 0; i < assembly_.patches.size(); ++i)
      if (is_made_by_one_of(i, choice) || (faces_only(i, wanted) && may_be_chosen_by_direction(i, choice)))
        chosen.insert(i);
    return chosen;
  }

  bool contributes(const std::string& name, const std::set<std::size_t>& chosen) {
    return std::any_of(chosen.begin(), chosen.end(), [&](std::size_t i) {
      return is_direction(name) ? facing_of(i).contains(name) : maker(i) == name;
    });
  }

  const std::string& maker(std::size_t patch) const {
    return plan_.piece.solids[assembly_.patches[patch].maker].name;
  }

 private:
  bool is_made_by_one_of(std::size_t patch, const plan::FaceChoice& choice) const {
    return std::any_of(choice.names.begin(), choice.names.end(),
                       [&](const auto& name) { return name.value == maker(patch); });
  }
  bool faces_only(std::size_t patch, const Facing& wanted) {
    const Facing& facing = facing_of(patch);
    return std::includes(wanted.begin(), wanted.end(), facing.begin(), facing.end());
  }
  bool may_be_chosen_by_direction(std::size_t patch, const plan::FaceChoice& choice) const {
    if (choice.all_but) return !plan_.piece.solids[assembly_.patches[patch].maker].cut;
    return std::none_of(plan_.form->contacts.begin(), plan_.form->contacts.end(),
                        [&](const plan::Contact& contact) {
                          return !contact.faces.all_but && is_made_by_one_of(patch, contact.faces);
                        });
  }
  const Facing& facing_of(std::size_t patch) {
    facing_.resize(assembly_.patches.size());
    if (facing_[patch].empty()) facing_[patch] = facing(assembly_.patches[patch].face);
    return facing_[patch];
  }

  const plan::Plan& plan_;
  const Assembly& assembly_;
  std::vector<Facing> facing_;
};

std::set<std::size_t> all_but(const std::set<std::size_t>& left_out, std::size_t count) {
  std::set<std::size_t> rest;
  for (std::size_t i = 0; i < count; ++i)
    if (!left_out.contains(i)) rest.insert(i);
  return rest;
}

Diagnostic idle_name(const plan::Plan& plan, const plan::Placed<std::string>& name) {
  if (is_direction(name.value))
    return {plan.file, name.place, fmt::format("no face of the piece is chosen by '{}'", name.value),
            "a curved face is chosen by the name of its solid, or when all directions it faces are named "
            "together",
            name.value.size() + 2};
  return {plan.file, name.place, fmt::format("no face of the piece is made by solid '{}'", name.value),
          "a face where two solids meet flush belongs to the earlier one", name.value.size() + 2};
}

ContactArea measured(const Assembly& assembly, const std::vector<SurfaceMeasure>& measures,
                     const std::set<std::size_t>& chosen) {
  ContactArea sum;
  Vector<Volume> moment;
  for (const std::size_t patch : chosen) {
    const auto& [area, centroid] = measures[patch];
    sum.area += area;
    sum.on_pull += downward_projection(assembly.patches[patch].face, area);
    moment = moment + Vector<Volume>{area * centroid.x, area * centroid.y, area * centroid.z};
  }
  sum.centroid = {moment.x / sum.area, moment.y / sum.area, moment.z / sum.area};
  for (std::size_t face = 0; face < assembly.faces.size(); ++face)
    for (const std::size_t patch : assembly.faces[face].patches)
      if (chosen.contains(patch)) {
        sum.faces.push_back(face);
        break;
      }
  return sum;
}

}  // namespace

std::vector<ContactArea> contact_areas(const plan::Plan& plan, const Assembly& assembly,
                                       const std::vector<SurfaceMeasure>& measures,
                                       std::vector<Diagnostic>& faults) {
  std::vector<ContactArea> areas;
  if (!plan.form) return areas;
  Chooser chooser(plan, assembly);
  std::vector<const plan::Contact*> holder(assembly.patches.size(), nullptr);
  for (const plan::Contact& contact : plan.form->contacts) {
    const std::size_t faults_before = faults.size();
    std::set<std::size_t> chosen = chooser.named(contact.faces);
    for (const auto& name : contact.faces.names)
      if (!chooser.contributes(name.value, chosen)) faults.push_back(idle_name(plan, name));
    if (contact.faces.all_but) chosen = all_but(chosen, assembly.patches.size());
    if (chosen.empty() && faults.size() == faults_before)
      faults.push_back({plan.file, contact.place, "this contact chooses no face of the piece", ""});

    const plan::Contact* other = nullptr;
    for (const std::size_t patch : chosen)
      if (holder[patch] != nullptr && other == nullptr) {
        other = holder[patch];
        faults.push_back(
            {plan.file, contact.place,
             fmt::format("a face made by solid '{}' is in this contact and in the one at line {}",
                         chooser.maker(patch), other->place.line),
             "its area would count twice: name each face in one contact"});
      } else if (holder[patch] == nullptr) {
        holder[patch] = &contact;
      }
    if (!chosen.empty()) areas.push_back(measured(assembly, measures, chosen));
  }
  return areas;
}

}  // namespace firstpick::piece
