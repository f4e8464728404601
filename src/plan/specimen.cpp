// A specimen that tables/specimens.toml holds, by shape and size: "cylinder 4 x 8 in" is "cylinder 4x8 in".
#include <cmath>

#include <fmt/format.h>

#include "plan/values.hpp"
#include "tables/specimen_size.hpp"

namespace firstpick::plan {
namespace {

bool same(Length a, Length b) { return std::abs(in(mm, a) - in(mm, b)) < 1e-6; }  // rounding between units

}  // namespace

std::optional<Specimen> read_specimen(const toml::node& node, const Key& key, const tables::Tables& tables,
                                      Faults& faults) {
  const toml::value<std::string>* text = read_string(node, key, faults);
  if (!text) return {};
  const auto read = tables::specimen_size(text->get());
  if (const auto* fault = std::get_if<QuantityFault>(&read)) {
    faults.inside(*text, fault->at, fmt::format("'{}': {}", key.name, fault->what), fault->help);
    return {};
  }
  const auto& given = std::get<tables::SpecimenSize>(read);
  std::vector<std::string_view> known;
  for (const auto& [name, entry] : tables.specimens) {
    known.push_back(name);
    if (given.shape == entry.shape && same(given.width, entry.width) && same(given.height, entry.height))
      return Specimen{entry.shape == "cube" ? SpecimenShape::cube : SpecimenShape::cylinder, entry.width,
                      entry.height};
  }
  faults.at(node.source(), fmt::format("'{}' cannot be {}", key.name, in_quotes(text->get())),
            suggestion(text->get(), known));
  return {};
}

}  // namespace firstpick::plan
