#include "units/unit_list.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "units/spelling.hpp"

namespace firstpick {
namespace {

using Use = NamedUnit::Use;
using Chain = NamedUnit::Chain;

template <class Q>
constexpr NamedUnit unit(std::string_view name, Q one) {
  return {.name = name, .si = one.value(), .dimension = dimension_of<Q>()};
}
template <class Q>
constexpr NamedUnit link(std::string_view name, Q one, Chain chain, int parts) {
  return {.name = name, .si = one.value(), .dimension = dimension_of<Q>(), .chain = chain, .parts = parts};
}
constexpr NamedUnit scale(std::string_view name, double kelvin, double absolute_zero) {
  return {.name = name,
          .si = kelvin,
          .dimension = dimension_of<Temperature>(),
          .use = Use::alone,
          .absolute_zero = absolute_zero};
}

constexpr NamedUnit units[] = {
    unit("mm", mm),
    unit("cm", cm),
    unit("m", m),
    unit("km", 1e3 * m),
    unit("yd", yard),
    link("ft", ft, Chain::feet, 12),
    link("foot", ft, Chain::feet, 12),
    link("feet", ft, Chain::feet, 12),
    link("'", ft, Chain::feet, 12),
    link("in", inch, Chain::feet, 1),
    link("in.", inch, Chain::feet, 1),
    link("inch", inch, Chain::feet, 1),
    link("inches", inch, Chain::feet, 1),
    link("\"", inch, Chain::feet, 1),
    unit("L", Volume::from_value(1e-3)),
    unit("g", Mass::from_value(1e-3)),
    unit("kg", kg),
    unit("t", tonne),
    unit("tonne", tonne),
    unit("lb", lb_mass),
    unit("lbs", lb_mass),
    unit("short ton", short_ton),
    unit("short tons", short_ton),
    unit("long ton", long_ton),
    unit("long tons", long_ton),
    unit("N", newton),
    unit("daN", Force::from_value(10.0)),
    unit("kN", kN),
    unit("MN", Force::from_value(1e6)),
    unit("lbf", lbf),
    unit("kip", kip),
    unit("kips", kip),
    unit("kgf", kgf),
    unit("tf", tf),
    unit("Pa", Pa),
    unit("kPa", kPa),
    unit("MPa", MPa),
    unit("GPa", Stress::from_value(1e9)),
    unit("psi", psi),
    unit("ksi", ksi),
    unit("psf", psf),
    unit("ksf", 1e3 * psf),
    unit("pcf", lb_per_ft3),
    unit("deg", deg),
    unit("rad", radian),
    link("d", day, Chain::clock, 86400),
    link("h", hour, Chain::clock, 3600),
    link("min", minute, Chain::clock, 60),
    link("s", second, Chain::clock, 1),
    unit("fpm", ft_per_min),
    unit("mph", Speed::from_value(0.44704)),
    unit("K", Temperature::from_value(1.0)),
    scale("degC", 1.0, 273.15),
    scale("degF", 5.0 / 9.0, 459.67),
    {.name = "%", .si = 0.01, .dimension = {}, .use = Use::alone},
};

constexpr QuantityKind kinds[] = {
    {dimension_of<Length>(), "a length", R"("6.0 m" or "8 ft 4 in")", "mm, cm, m, in, ft, yd"},
    {dimension_of<Area>(), "an area", R"("450 mm2" or "0.91 in2")", "mm2, cm2, m2, in2, ft2"},
    {dimension_of<Volume>(), "a volume", R"("3.2 m3" or "4 yd3")", "mm3, m3, L, in3, ft3, yd3"},
    {dimension_of<Mass>(), "a mass", R"("1200 kg" or "350 lb")", "kg, t, lb, short ton, long ton"},
    {dimension_of<Density>(), "a density", R"("2400 kg/m3" or "150 lb/ft3")",
     "kg/m3, t/m3, kN/m3, lb/ft3, pcf"},
    {dimension_of<Force>(), "a force", R"("85 kN" or "19.2 kip")",
     "N, daN, kN, lbf, kip, and kg, t, lb, short ton, long ton as weights"},
    {dimension_of<Stress>(), "a stress", R"("17.5 MPa" or "2500 psi")",
     "MPa, N/mm2, kPa, kN/m2, psi, ksi, psf"},
    {dimension_of<Moment>(), "a moment", R"("12 kN m" or "9 kip ft")", "N m, kN m, lbf ft, kip in, kip ft"},
    {dimension_of<Angle>(), "an angle", R"("30 deg" or "0.5 rad")", "deg, rad"},
    {dimension_of<Duration>(), "a duration", R"("14 h" or "14 h 30 min")", "d, h, min, s"},
    {dimension_of<Speed>(), "a speed", R"("0.2 m/s" or "24 ft/min")", "m/s, m/min, ft/min, km/h, mph"},
    {dimension_of<Acceleration>(), "an acceleration", R"("0.5 m/s2" or "1.6 ft/s2")", "m/s2, ft/s2"},
    {dimension_of<Temperature>(), "a temperature", R"("20 degC" or "68 degF")", "degC, degF, K"},
    {dimension_of<Ratio>(), "a ratio", R"("3 %" or "0.03")", "%, or none"},
    {dimension_of<Stiffness>(), "a stiffness", R"("2.1 kN/mm" or "12 kip/in")",
     "N/mm, kN/mm, kN/m, lbf/in, kip/in"},
};

struct OtherSpelling {
  std::string_view written;  // compared without case
  std::string_view help;
};
constexpr std::string_view which_ton =
    "there are three tons: write \"short ton\" (2000 lb), \"long ton\" (2240 lb) or \"t\" (tonne, 1000 kg)";
constexpr OtherSpelling other_spellings[] = {
    {"ton", which_ton},
    {"tons", which_ton},
    {"tn", which_ton},
    {"tonf", which_ton},
    {"T", which_ton},
    {"k", "write \"kip\""},
    {"short", "write \"short ton\""},
    {"long", "write \"long ton\""},
    {"metric", "write \"t\" for the tonne (1000 kg)"},
    {"tonnes", "write \"t\" for the tonne (1000 kg)"},
    {"pound", "write \"lb\""},
    {"pounds", "write \"lb\""},
    {"klb", "write \"kip\""},
    {"klbf", "write \"kip\""},
    {"sq", "write \"in2\", \"ft2\" or \"m2\""},
    {"cu", "write \"ft3\", \"yd3\" or \"m3\""},
    {"cf", "write \"ft3\""},
    {"cy", "write \"yd3\""},
    {"sf", "write \"ft2\""},
    {"Nm", "write \"N m\""},
    {"kNm", "write \"kN m\""},
    {"Nmm", "write \"N mm\""},
    {"ftlb", "write \"lbf ft\""},
    {"ftkip", "write \"kip ft\""},
    {"kcf", "write \"kip/ft3\""},
    {"meter", "write \"m\""},
    {"meters", "write \"m\""},
    {"metre", "write \"m\""},
    {"metres", "write \"m\""},
    {"hr", "write \"h\""},
    {"hrs", "write \"h\""},
    {"hour", "write \"h\""},
    {"hours", "write \"h\""},
    {"minute", "write \"min\""},
    {"minutes", "write \"min\""},
    {"mins", "write \"min\""},
    {"sec", "write \"s\""},
    {"second", "write \"s\""},
    {"seconds", "write \"s\""},
    {"day", "write \"d\""},
    {"days", "write \"d\""},
    {"degree", "write \"deg\""},
    {"degrees", "write \"deg\""},
    {"degs", "write \"deg\""},
    {"C", "write \"degC\""},
    {"F", "write \"degF\""},
    {"percent", "write \"%\""},
};

struct Nearest {
  bool other_case_only, needed;
  std::size_t edits;
  std::string_view name;
};
bool better(const Nearest& a, const Nearest& b) {
  if (a.other_case_only != b.other_case_only) return a.other_case_only;
  if (a.edits != b.edits) return a.edits < b.edits;
  return a.needed && !b.needed;
}

std::string did_you_mean(std::string_view name, Dimension needed) {
  constexpr std::size_t longest_worth_comparing = 24;
  if (name.size() > longest_worth_comparing) return {};
  Nearest best{false, false, 3, {}};  // three edits or more are another word
  for (const NamedUnit& u : units) {
    const Nearest candidate{same_but_for_case(name, u.name), u.dimension == needed,
                            edit_distance(name, u.name), u.name};
    const bool half_is_right = 2 * candidate.edits <= std::max(name.size(), u.name.size());
    if ((candidate.other_case_only || half_is_right) && better(candidate, best)) best = candidate;
  }
  return best.name.empty() ? std::string{} : fmt::format("did you mean '{}'?", best.name);
}

}  // namespace

std::span<const NamedUnit> all_units() { return units; }
std::span<const QuantityKind> all_kinds() { return kinds; }

const NamedUnit* find_unit(std::string_view name) {
  const auto* found = std::ranges::find(units, name, &NamedUnit::name);
  return found == std::end(units) ? nullptr : found;
}

const QuantityKind* find_kind(Dimension dimension) {
  const auto* found = std::ranges::find(kinds, dimension, &QuantityKind::dimension);
  return found == std::end(kinds) ? nullptr : found;
}

std::string help_for_unknown_unit(std::string_view name, Dimension needed) {
  for (const OtherSpelling& other : other_spellings)
    if (same_but_for_case(name, other.written)) return std::string{other.help};
  if (std::string suggestion = did_you_mean(name, needed); !suggestion.empty()) return suggestion;
  const QuantityKind* kind = find_kind(needed);
  return kind ? fmt::format("units of {}: {}", kind->name, kind->units) : std::string{};
}

}  // namespace firstpick
