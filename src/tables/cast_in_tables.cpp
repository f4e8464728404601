#include "tables/cast_in_tables.hpp"

#include <charconv>

#include <fmt/format.h>

namespace firstpick::tables {
namespace {

// Every entry that gives this; at least one, so that a lowest value exists.
template <class Q>
std::vector<Sourced<Q>> each(EntryReader& read, std::string_view gives, Limit limit) {
  std::vector<Sourced<Q>> all;
  for (const std::string& of : read.words_of(gives)) all.push_back(read.quantity<Q>(gives, limit, of));
  if (all.empty()) all.push_back(read.quantity<Q>(gives, limit));  // tells that it is missing
  return all;
}

std::map<long long, Sourced<Ratio>> strands(EntryReader& read) {
  constexpr std::string_view gives = "strands";
  std::map<long long, Sourced<Ratio>> all;
  for (const std::string& of : read.words_of(gives)) {
    long long count = 0;
    const auto [end, fault] = std::from_chars(of.data(), of.data() + of.size(), count);
    if (fault != std::errc{} || end != of.data() + of.size() || count < 2)
      read.fault(gives, of, fmt::format("'{}' is not a number of strands, 2 or more", of));
    Sourced<Ratio> times = read.quantity<Ratio>(gives, Limit::at_least_one, of);
    if (times.value.value() > static_cast<double>(count))
      read.fault(gives, of, fmt::format("{} strands cannot hold more than {} times what one holds", of, of));
    all.emplace(count, std::move(times));
  }
  return all;
}

}  // namespace

LoopModel loop_model(EntryReader& read) {
  LoopModel model{.strand_bond = each<Stress>(read, "strand_bond", Limit::positive),
                  .bond_factor = read.quantity<Ratio>("bond_factor", Limit::at_least_one),
                  .bond_strength = read.quantity<Stress>("bond_strength", Limit::positive),
                  .strand_diameter = read.quantity<Length>("strand_diameter", Limit::positive),
                  .strands = strands(read),
                  .offset_factor = read.quantity<Ratio>("offset_factor", Limit::at_most_one),
                  .offset_tested = read.quantity<Length>("offset_tested", Limit::positive),
                  .hook_factor = read.quantity<Ratio>("hook_factor", Limit::at_most_one),
                  .pin_tested = read.quantity<Length>("pin_tested", Limit::positive),
                  .member_depth = read.quantity<Length>("member_depth", Limit::positive),
                  .bar_bond = each<RootStress>(read, "bar_bond", Limit::positive),
                  .bar_bend = read.quantity<Ratio>("bar_bend", Limit::positive),
                  .maximum_angle = each<Angle>(read, "maximum_angle", Limit::acute)};
  read.refuse_others();
  return model;
}

PlateModel plate_model(EntryReader& read) {
  PlateModel model{.bearing = read.quantity<Ratio>("bearing", Limit::at_most_one),
                   .punching = read.quantity<RootStress>("punching", Limit::positive),
                   .thread_engagement = read.quantity<Ratio>("thread_engagement", Limit::at_least_one)};
  read.refuse_others();
  return model;
}

}  // namespace firstpick::tables
