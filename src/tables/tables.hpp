// Every table of the program, read once at start-up.
#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "record/diagnostic.hpp"
#include "record/source.hpp"
#include "tables/cast_in_models.hpp"
#include "tables/rule_set.hpp"
#include "units/quantity.hpp"

namespace firstpick::tables {

struct FormFace {  // form-faces.toml: what grips the piece
  std::string key;
  Sourced<Stress> adhesion;
};
struct Steel {  // steels.toml
  std::string key;
  Sourced<Stress> futa;  // specified tensile strength
  Sourced<Stress> fya;   // specified yield strength
};
struct ConcreteKind {  // concretes.toml
  std::string key;
  Sourced<Ratio> lambda_a;  // factor on sqrt(f_c) for lightweight concrete, cast-in inserts
  Sourced<Density> density_low, density_high;  // a density outside is questioned
};
struct SlingKind {  // slings.toml
  std::string key;
  Sourced<Ratio> design_factor;  // breaking load over rated load
  std::optional<Sourced<Stress>> axial_modulus{};  // E A of a leg over the square of its size. Not known for every kind
};
struct HoistClass {  // hoists.toml: phi = phi_min + beta * v
  std::string key;
  Sourced<Ratio> phi_min;
  Sourced<decltype(Ratio{} / Speed{})> beta;
};
struct Ground {  // grounds.toml: what the edge stands on while a piece is turned about it
  std::string key;
  Sourced<Ratio> friction;
};
struct Wind {  // wind.toml: on a piece that hangs
  Sourced<Density> air_density;
  Sourced<Ratio> coefficient;  // pressure on the side area over that of the free wind
};
struct LegLimits {  // legs.toml
  Sourced<Length> longest_leg;  // a longer one is a slip of the pen
};
struct SpecimenKind {  // specimens.toml: to the strength of a standard cylinder
  std::string key;     // "cylinder 4x8 in", "cube 150 mm": shape and size as a plan writes them
  std::string shape;   // "cylinder" | "cube"
  Length width{}, height{};
  Sourced<Ratio> to_cylinder;
  // How far apart results of one sample may lie, over their mean. Not known for every kind.
  std::optional<Sourced<Ratio>> range_of_two{}, range_of_three{};
};

struct MaturityConstants {  // maturity.toml
  Sourced<Temperature> reference;                // of equivalent ages
  Sourced<Temperature> datum_low, datum_high;    // of the temperature-time factor, the range of practice
  Sourced<Ratio> activation_warm, activation_slope, gas_constant;  // in J, mol and K
  Sourced<Temperature> activation_threshold;
  Sourced<Ratio> en_constant, en_activation, en_zero;  // exp(c - B / (Z + T)), T in degC
  Sourced<Duration> longest_gap, frozen_after;   // of a temperature log
  Sourced<Temperature> coldest, hottest, peak;
  Sourced<Temperature> colder_by;                // degrees: sensors this near each other read the same
  Sourced<Temperature> cured_low, cured_high;    // at which specimens of a calibration may have cured
  Sourced<Temperature> activation_low, activation_high;  // activation energy over the gas constant
};
struct GrowthCurve {  // growth-curves.toml: either the two of ACI 209 or the one of EN 1992-1-1
  std::string key;
  std::optional<Sourced<Duration>> aci_a{};
  std::optional<Sourced<Ratio>> aci_beta{}, en_s{};
};
struct GrowthBand {  // growth-curves.toml: measured strength over that of 28 days
  std::string key;
  Sourced<Duration> band_age;
  Sourced<Ratio> band_low, band_middle, band_high;
};
struct AcceptanceLimits {  // acceptance.toml
  Sourced<Ratio> run_length;
  Sourced<Ratio> least_results;  // of one test
  Sourced<Stress> single_drop, drop_up_to;
  Sourced<Ratio> share_above, d2_of_two, d2_of_three;
};

struct Tables {
  std::map<std::string, RuleSet> rule_sets;
  std::map<std::string, FormFace> form_faces;
  std::map<std::string, Steel> steels;
  std::map<std::string, ConcreteKind> concretes;
  std::map<std::string, SlingKind> slings;
  std::map<std::string, HoistClass> hoists;
  std::map<std::string, Ground> grounds;
  std::map<std::string, SpecimenKind> specimens;
  std::optional<Wind> wind;                     // absent only in tables made by hand
  std::optional<LegLimits> legs;                // the same
  std::optional<MaturityConstants> maturity;    // absent only in tables made by hand
  std::map<std::string, GrowthCurve> growth_curves;
  std::vector<GrowthBand> growth_bands;         // youngest first
  std::optional<AcceptanceLimits> acceptance;   // absent only in tables made by hand
  std::optional<LoopModel> loops;               // the same
  std::optional<PlateModel> plates;             // the same
  std::vector<Source> entries;          // every entry of every table, in file order: for `firstpick tables`
  std::string content;                  // every byte read, in reading order: for the fingerprint
  std::vector<std::string> overridden;  // ids of entries that the plant's directory replaced
};

// Reads every table below `directory`; entries and files of `plant_directory` (may be empty) replace those of
// the same id. A missing or unknown field, a unit of the wrong dimension or an incomplete provenance is a
// diagnostic, and then there are no tables at all: the program does not start.
std::variant<Tables, std::vector<Diagnostic>> read_tables(const std::filesystem::path& directory,
                                                          const std::filesystem::path& plant_directory = {});

}  // namespace firstpick::tables
