#include "piece/body.hpp"

#include <algorithm>
#include <cmath>
#include <exception>
#include <utility>

#include <fmt/format.h>
#include <BRepBndLib.hxx>
#include <BRepGProp.hxx>
#include <Bnd_Box.hxx>
#include <GProp_GProps.hxx>
#include <Standard_Failure.hxx>
#include <gp_Mat.hxx>

#include "piece/shape.hpp"

namespace firstpick::piece {
namespace {

constexpr double least_accuracy =
    1e-7;  // of the volume, as the kernel estimates it afterwards; worse is refused

struct MassProperties {
  Volume volume{};
  Position centroid;
  std::array<std::array<double, 3>, 3> inertia_per_density_m5{};
};

std::optional<MassProperties> mass_properties(const Assembly& assembly) {
  GProp_GProps measured;
  double error = 0.0;
  const bool plain = std::all_of(assembly.faces.begin(), assembly.faces.end(),
                                 [](const JoinedFace& joined) { return is_plain(joined.face); });
  if (plain)
    BRepGProp::VolumeProperties(assembly.solid, measured);
  else
    error = BRepGProp::VolumeProperties(assembly.solid, measured, relative_accuracy);
  MassProperties found{measured.Mass() * m3, position(measured.CentreOfMass()), {}};
  const gp_Mat inertia_m5 = measured.MatrixOfInertia();
  bool finite = is_finite(found.centroid.x) && is_finite(found.centroid.y) && is_finite(found.centroid.z);
  for (int row = 0; row < 3; ++row)
    for (int column = 0; column < 3; ++column) {
      const double number = inertia_m5.Value(row + 1, column + 1);
      finite = finite && std::isfinite(number);
      found.inertia_per_density_m5[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)] = number;
    }
  if (!finite || !is_finite(found.volume) || !(found.volume > Volume{}) || !(error <= least_accuracy))
    return {};
  return found;
}

std::vector<Face> faces(const plan::Plan& plan, const Assembly& assembly,
                        const std::vector<SurfaceMeasure>& measures) {
  std::vector<Face> made;
  for (const JoinedFace& joined : assembly.faces) {
    Face face;
    Vector<Volume> moment;
    for (const std::size_t i : joined.patches) {
      const auto& [area, centroid] = measures[i];
      face.area += area;
      moment = moment + Vector<Volume>{area * centroid.x, area * centroid.y, area * centroid.z};
      const std::string& maker = plan.piece.solids[assembly.patches[i].maker].name;
      if (std::find(face.made_by.begin(), face.made_by.end(), maker) == face.made_by.end())
        face.made_by.push_back(maker);
    }
    face.planar = is_planar(joined.face);
    face.normal = direction(middle_normal(joined.face));
    face.centroid = {moment.x / face.area, moment.y / face.area, moment.z / face.area};
    if (face.planar) face.rings = face_rings(joined.face);
    made.push_back(std::move(face));
  }
  return made;
}

// Joining may not have lost or covered anything: where patches were joined, their areas must add up.
bool areas_agree(const Assembly& assembly, const std::vector<Face>& faces) {
  for (std::size_t i = 0; i < faces.size(); ++i) {
    if (assembly.faces[i].patches.size() == 1) continue;
    const Area whole = surface_measure(assembly.faces[i].face).area;
    if (!(abs(whole - faces[i].area) <= 1e-7 * whole)) return false;
  }
  return true;
}

std::variant<Body, std::vector<Diagnostic>> measured(const plan::Plan& plan, Assembly assembly) {
  const auto fault_of_the_piece = [&](const char* what) {
    return std::vector<Diagnostic>{{plan.file, plan.piece.place, what, ""}};
  };
  const auto mass = mass_properties(assembly);
  if (!mass)
    return fault_of_the_piece(
        "the volume of the piece cannot be computed: its surface is not closed or not valid");

  std::vector<SurfaceMeasure> measures;
  for (const Patch& patch : assembly.patches) measures.push_back(surface_measure(patch.face));

  Body body;
  body.volume = mass->volume;
  body.centroid = mass->centroid;
  body.inertia_per_density_m5 = mass->inertia_per_density_m5;
  Bnd_Box box;
  BRepBndLib::AddOptimal(assembly.solid, box, false, false);
  box.SetGap(0.0);
  body.lowest = position(box.CornerMin());
  body.highest = position(box.CornerMax());
  body.faces = faces(plan, assembly, measures);
  if (!areas_agree(assembly, body.faces)) return fault_of_the_piece("faces of the piece could not be joined");

  assembly.flat = FlatFaces::of(body.faces);

  std::vector<Diagnostic> faults;
  body.contacts = contact_areas(plan, assembly, measures, faults);
  body.sites = insert_sites(plan, assembly, faults);
  if (faults.empty()) {
    body.assembly = std::make_shared<const Assembly>(std::move(assembly));
    return body;
  }
  std::stable_sort(faults.begin(), faults.end(), [](const Diagnostic& a, const Diagnostic& b) {
    return std::pair(a.place.line, a.place.column) < std::pair(b.place.line, b.place.column);
  });
  return faults;
}

}  // namespace

std::variant<Body, std::vector<Diagnostic>> make_body(const plan::Plan& plan) {
  const auto gave_up = [&](const char* why) {
    return std::vector<Diagnostic>{
        {plan.file, plan.piece.place, fmt::format("the geometry kernel gave up on the piece: {}", why), ""}};
  };
  try {
    auto assembled = assemble(plan);
    if (auto* faults = std::get_if<std::vector<Diagnostic>>(&assembled)) return std::move(*faults);
    return measured(plan, std::move(std::get<Assembly>(assembled)));
  } catch (const Standard_Failure& failure) {
    return gave_up(failure.GetMessageString());
  } catch (const std::exception& failure) {
    return gave_up(failure.what());
  }
}

}  // namespace firstpick::piece
