#include "checks/loaded_inserts.hpp"

#include <algorithm>

namespace firstpick::checks {

const resistances::HeadedInsert& headed(const StageFacts& facts, std::size_t insert) {
  const auto& all = facts.as_cracked.empty() ? facts.anchorage.headed : facts.as_cracked;
  return std::get<resistances::HeadedInsert>(all.at(insert));
}

void LoadedInserts::reserve(std::size_t count) {
  indices.reserve(count);
  inserts.reserve(count);
  forces.reserve(count);
}

void LoadedInserts::add(const StageFacts& facts, std::size_t insert, Force force) {
  if (!(force > Force{})) return;
  indices.push_back(insert);
  inserts.push_back(&headed(facts, insert));
  forces.push_back(force);
  sum += force;
}

bool LoadedInserts::hold(std::size_t insert) const {
  return std::ranges::find(indices, insert) != indices.end();
}

Outcome<resistances::Eccentricity> eccentricity(const LoadedInserts& loaded, const StageFacts& facts) {
  const auto& layout = facts.anchorage.areas.layout(loaded.inserts);
  if (const auto* gap = std::get_if<NotAssessed>(&layout)) return *gap;
  const auto& from_centroid = std::get<resistances::GroupLayout>(layout).from_centroid;
  Moment about_u{}, about_v{};
  for (std::size_t i = 0; i < loaded.forces.size(); ++i) {
    about_u += loaded.forces[i] * from_centroid.at(i).x;
    about_v += loaded.forces[i] * from_centroid.at(i).y;
  }
  return resistances::Eccentricity(about_u / loaded.sum, about_v / loaded.sum);
}

bool held_by_bars(const LoadedInserts& loaded) {
  return !loaded.inserts.empty() &&
         std::ranges::all_of(loaded.inserts, [](const resistances::HeadedInsert* one) { return one->bars.has_value(); });
}

}  // namespace firstpick::checks
