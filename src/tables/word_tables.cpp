#include "tables/word_tables.hpp"

#include <variant>

#include "tables/specimen_size.hpp"

namespace firstpick::tables {
namespace {

// One value of the table's struct for each word.
template <class MakeRow>
auto rows(EntryReader& read, MakeRow make_row) {
  std::map<std::string, decltype(make_row(std::string{}))> all;
  for (const std::string& word : read.words()) all.emplace(word, make_row(word));
  read.refuse_others();
  return all;
}

}  // namespace

std::map<std::string, FormFace> form_faces(EntryReader& read) {
  return rows(read, [&](const std::string& word) {
    return FormFace{.key = word, .adhesion = read.quantity<Stress>("adhesion", Limit::positive, word)};
  });
}

std::map<std::string, Steel> steels(EntryReader& read) {
  return rows(read, [&](const std::string& word) {
    Steel steel{.key = word,
                .futa = read.quantity<Stress>("futa", Limit::positive, word),
                .fya = read.quantity<Stress>("fya", Limit::positive, word)};
    if (steel.fya.value > steel.futa.value)
      read.fault("fya", word, "the yield strength is above the tensile strength");
    return steel;
  });
}

std::map<std::string, ConcreteKind> concretes(EntryReader& read) {
  return rows(read, [&](const std::string& word) {
    ConcreteKind kind{.key = word,
                      .lambda_a = read.quantity<Ratio>("lambda_a", Limit::at_most_one, word),
                      .density_low = read.quantity<Density>("density_low", Limit::positive, word),
                      .density_high = read.quantity<Density>("density_high", Limit::positive, word)};
    if (kind.density_low.value >= kind.density_high.value)
      read.fault("density_low", word, "'density_low' is not below 'density_high'");
    return kind;
  });
}

std::map<std::string, SlingKind> slings(EntryReader& read) {
  return rows(read, [&](const std::string& word) {
    SlingKind kind{.key = word, .design_factor = read.quantity<Ratio>("design_factor", Limit::at_least_one, word)};
    if (read.has("axial_modulus", word))
      kind.axial_modulus = read.quantity<Stress>("axial_modulus", Limit::positive, word);
    return kind;
  });
}

LegLimits leg_limits(EntryReader& read) {
  LegLimits found{.longest_leg = read.quantity<Length>("longest_leg", Limit::positive, "leg")};
  read.refuse_others();
  return found;
}

Wind wind(EntryReader& read) {
  constexpr std::string_view of = "hanging piece";
  Wind found{.air_density = read.quantity<Density>("air_density", Limit::positive, of),
             .coefficient = read.quantity<Ratio>("coefficient", Limit::positive, of)};
  read.refuse_others();
  return found;
}

std::map<std::string, Ground> grounds(EntryReader& read) {
  return rows(read, [&](const std::string& word) {
    return Ground{.key = word, .friction = read.quantity<Ratio>("friction", Limit::positive, word)};
  });
}

std::map<std::string, HoistClass> hoists(EntryReader& read) {
  using PerSpeed = decltype(HoistClass::beta.value);
  return rows(read, [&](const std::string& word) {
    return HoistClass{.key = word,
                      .phi_min = read.quantity<Ratio>("phi_min", Limit::at_least_one, word),
                      .beta = read.quantity<PerSpeed>("beta", Limit::positive, word)};
  });
}

std::map<std::string, SpecimenKind> specimens(EntryReader& read) {
  const auto range_limit = [&](std::string_view gives, const std::string& word) {
    return read.has(gives, word) ? std::optional(read.quantity<Ratio>(gives, Limit::at_most_one, word))
                                 : std::nullopt;
  };
  return rows(read, [&](const std::string& word) {
    SpecimenKind kind{.key = word,
                      .shape = {},
                      .to_cylinder = read.quantity<Ratio>("to_cylinder", Limit::at_most_one, word),
                      .range_of_two = range_limit("range_of_two", word),
                      .range_of_three = range_limit("range_of_three", word)};
    const auto size = specimen_size(word);
    if (const auto* fault = std::get_if<QuantityFault>(&size)) {
      read.fault("to_cylinder", word, "'of' is not a specimen: " + fault->what, fault->help);
    } else {
      kind.shape = std::get<SpecimenSize>(size).shape;
      kind.width = std::get<SpecimenSize>(size).width;
      kind.height = std::get<SpecimenSize>(size).height;
    }
    return kind;
  });
}

}  // namespace firstpick::tables
