// Which table entry converts the strength of a specimen to that of a standard cylinder.
//
//   f_c = c f_specimen          used by usable_strength; c is found here
//
// Source   tables/specimens.toml: one entry for each shape and size, each with its own source.
// Match    same shape, width and height within 1 mm each; of a cube the side alone. Nominal sizes in inches
//          and in millimetres (4x8 in, 100x200 mm) differ by more than that and stay apart.
// Range    no entry, no value: sizes in between are not interpolated. Where two entries match, the lower one.

#include "strength/specimen.hpp"

#include <cmath>
#include <optional>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace firstpick::strength {

namespace {

constexpr Length same_size = 1.0 * mm;

bool is_near(Length a, Length b) { return std::abs(in(mm, a - b)) <= in(mm, same_size); }

bool is_for(const tables::SpecimenKind& kind, const plan::Specimen& specimen) {
  if (!is_near(kind.width, specimen.width)) return false;
  if (specimen.shape == plan::SpecimenShape::cube) return kind.shape == "cube";
  return kind.shape == "cylinder" && is_near(kind.height, specimen.height);
}

std::string size_in_words(const plan::Specimen& specimen) {
  const double width_in = in(inch, specimen.width);
  const bool whole_inches = width_in >= 1.0 && std::abs(width_in - std::round(width_in)) < 1e-6;
  const Length unit = whole_inches ? inch : mm;
  const std::string name = whole_inches ? "in" : "mm";
  if (specimen.shape == plan::SpecimenShape::cube)
    return fmt::format("{:.6g} {}", in(unit, specimen.width), name);
  return fmt::format("{:.6g}x{:.6g} {}", in(unit, specimen.width), in(unit, specimen.height), name);
}

std::string shape_in_words(const plan::Specimen& specimen) {
  return specimen.shape == plan::SpecimenShape::cube ? "cube" : "cylinder";
}

}  // namespace

std::string words_for(const plan::Specimen& specimen) {
  return shape_in_words(specimen) + " " + size_in_words(specimen);
}

std::string plural_words_for(const plan::Specimen& specimen) {
  return shape_in_words(specimen) + "s " + size_in_words(specimen);
}

const tables::SpecimenKind* kind_of(const plan::Specimen& specimen, const tables::Tables& tables) {
  const tables::SpecimenKind* found = nullptr;
  for (const auto& [key, kind] : tables.specimens)
    if (is_for(kind, specimen) && (!found || kind.to_cylinder.value < found->to_cylinder.value)) found = &kind;
  return found;
}

Outcome<Sourced<Ratio>> to_cylinder(const plan::Specimen& specimen, const tables::Tables& tables) {
  std::optional<Sourced<Ratio>> found;
  std::vector<std::string> known;
  for (const auto& [key, kind] : tables.specimens) {
    known.push_back(key);
    if (!is_for(kind, specimen)) continue;
    const Ratio factor = kind.to_cylinder.value;
    if (!(factor > Ratio{}) || !is_finite(factor))
      return NotAssessed{
          fmt::format("the conversion of the specimen '{}' in the tables is not a usable number", key), {}};
    if (!found || factor < found->value) found = kind.to_cylinder;
  }
  if (found) return *found;
  return NotAssessed{
      fmt::format("the tables do not say what a {} is worth as a cylinder", words_for(specimen)),
      fmt::format("test one of: {}; or add an entry to tables/specimens.toml with its source",
                  fmt::join(known, ", "))};
}

}  // namespace firstpick::strength
