#include "plan/rigging_tree.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace firstpick::plan {
namespace {

struct Part {
  std::string_view kind;
  std::string id;
  Place place;
};

Part part(const Rigging& rigging, std::size_t carrier) {
  if (carrier < rigging.beams.size()) {
    const Beam& beam = rigging.beams[carrier];
    return {"beam", beam.id, beam.place};
  }
  const Sheave& sheave = rigging.sheaves[carrier - rigging.beams.size()];
  return {kind_of(sheave), sheave.id, sheave.place};
}

bool is_insert(const Reading& reading, const std::string& name) {
  return reading.names.is_given(Names::insert, name);
}

// A name that no part of the plan has is reported with the other names.
void check_ends(const Rigging& rigging, Reading& reading) {
  const auto elsewhere = [&](const Leg& leg, const std::string& name) {
    if (reading.names.is_given(Names::rigging_part, name))
      reading.faults.add(leg.place, fmt::format("{} is not a part of rigging {}", in_quotes(name),
                                                in_quotes(rigging.id)),
                         "a leg hangs on the parts of its own rigging");
  };
  for (const Leg& leg : rigging.legs) {
    if (hook_named(rigging, leg.to))
      reading.faults.add(leg.place, fmt::format("the leg to hook {} hangs a hook", in_quotes(leg.to)),
                         "a leg hangs from a hook: from = \"...\"");
    else if (!is_insert(reading, leg.to) && !carrier_end(rigging, leg.to))
      elsewhere(leg, leg.to);
    if (leg.from.empty()) {
      if (!rigging.hooks.empty())
        reading.faults.add(leg.place,
                           fmt::format("the leg to {} does not say on which hook it hangs", in_quotes(leg.to)),
                           fmt::format("from = \"{}\"", rigging.hooks.front().id));
    } else if (!hook_named(rigging, leg.from) && !carrier_end(rigging, leg.from)) {
      elsewhere(leg, leg.from);
    }
  }
}

void check_carriers(const Rigging& rigging, Reading& reading) {
  const std::size_t carriers = rigging.beams.size() + rigging.sheaves.size();
  const auto hangs_on = [&](const std::string& name, std::size_t carrier) {
    const auto end = carrier_end(rigging, name);
    return end && end->carrier == carrier;
  };
  std::vector<bool> held(carriers, false);  // by way of its legs, from a hook
  for (std::size_t pass = 0; pass < carriers; ++pass)
    for (const Leg& leg : rigging.legs) {
      const auto lower = carrier_end(rigging, leg.to), upper = carrier_end(rigging, leg.from);
      if (lower && (!upper || held[upper->carrier])) held[lower->carrier] = true;
    }
  for (std::size_t carrier = 0; carrier < carriers; ++carrier) {
    const auto [kind, id, place] = part(rigging, carrier);
    const auto to = std::ranges::count_if(rigging.legs, [&](const Leg& leg) { return hangs_on(leg.to, carrier); });
    const auto from =
        std::ranges::count_if(rigging.legs, [&](const Leg& leg) { return hangs_on(leg.from, carrier); });
    const auto fault = [&, &kind = kind, &id = id, &place = place](std::string_view what, std::string help) {
      reading.faults.add(place, fmt::format("{} {} {}", kind, in_quotes(id), what), std::move(help));
    };
    if (to == 0)
      fault("hangs on nothing", "legs = [ { to = \"...\", length = \"1.2 m\", gear = \"...\" } ]");
    else if (!held[carrier])
      fault("hangs in a circle", "some leg above it must hang on a hook");
    if (from == 0) fault("carries nothing", "legs = [ { from = \"...\", to = \"...\" } ]");
    if (kind == "sheave" && to > 1) fault("hangs on more than one leg", "one leg to a sheave");
    if (kind == "sheave" && from == 1) fault("has one leg", "the rope over a sheave has at least two legs");
  }
}

}  // namespace

std::optional<CarrierEnd> carrier_end(const Rigging& rigging, std::string_view name) {
  for (std::size_t i = 0; i < rigging.beams.size(); ++i)
    for (const BeamPoint& point : rigging.beams[i].points)
      if (point.id == name) return CarrierEnd{i, point.at};
  for (std::size_t i = 0; i < rigging.sheaves.size(); ++i)
    if (rigging.sheaves[i].id == name) return CarrierEnd{rigging.beams.size() + i, {}};
  return {};
}

const Hook* hook_named(const Rigging& rigging, std::string_view name) {
  const auto found = std::ranges::find(rigging.hooks, name, &Hook::id);
  return found == rigging.hooks.end() ? nullptr : &*found;
}

bool has_parts(const Rigging& rigging) {
  return !rigging.hooks.empty() || !rigging.beams.empty() || !rigging.sheaves.empty();
}

void check_tree(const Rigging& rigging, Reading& reading) {
  check_ends(rigging, reading);
  check_carriers(rigging, reading);
}

}  // namespace firstpick::plan
