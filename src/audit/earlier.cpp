#include "audit/earlier.hpp"

#include <algorithm>
#include <map>

#include <nlohmann/json.hpp>

namespace firstpick::audit {

namespace {

using Json = nlohmann::json;

std::optional<Standing> standing_named(std::string_view word) {
  for (const Standing standing : {Standing::go, Standing::hold, Standing::no_go, Standing::broken})
    if (word_for(standing) == word) return standing;
  return {};
}

}  // namespace

std::optional<Diagnostic> compare_with_earlier(const std::string& file, std::string_view text, Audit& audit) {
  const auto fault = [&](std::string what) {
    return Diagnostic{.file = file, .what = std::move(what), .help = "a file that firstpick audit --json has written"};
  };
  const Json earlier = Json::parse(text, nullptr, false);
  if (earlier.is_discarded() || !earlier.is_object()) return fault("this is no JSON of an audit");
  const auto format = earlier.find("format");
  if (format == earlier.end() || !format->is_number_integer() || *format != 1)
    return fault("this is no audit of format 1");
  const auto plans = earlier.find("plans");
  if (plans == earlier.end() || !plans->is_array()) return fault("the audit has no list of plans");
  std::map<std::string, Standing> before;
  for (const Json& plan : *plans) {
    const auto name = plan.find("file"), verdict = plan.find("verdict");
    if (!plan.is_object() || name == plan.end() || verdict == plan.end() || !name->is_string() || !verdict->is_string())
      return fault("a plan of the audit has no 'file' and 'verdict'");
    const auto standing = standing_named(verdict->get<std::string>());
    if (!standing) return fault("a plan of the audit has a verdict that is none");
    before[name->get<std::string>()] = *standing;
  }
  audit.since = file;
  const auto add = [&](Change::Kind kind, const std::string& name, std::string was, std::string is) {
    audit.changes.push_back({kind, name, std::move(was), std::move(is)});
  };
  for (const Entry& entry : audit.entries) {
    const std::string now(word_for(entry.standing));
    const auto known = before.find(entry.file);
    if (known == before.end()) {
      add(Change::Kind::added, entry.file, "", now);
      continue;
    }
    if (known->second != entry.standing)
      add(entry.standing > known->second ? Change::Kind::worse : Change::Kind::better, entry.file,
          std::string(word_for(known->second)), now);
    before.erase(known);
  }
  for (const auto& [name, standing] : before) add(Change::Kind::gone, name, std::string(word_for(standing)), "");
  const auto rank = [](const Change& c) {  // what is worse, then gone, new, better
    switch (c.kind) {
      case Change::Kind::worse: return 0;
      case Change::Kind::gone: return 1;
      case Change::Kind::added: return 2;
      case Change::Kind::better: return 3;
    }
    return 0;
  };
  std::ranges::stable_sort(audit.changes, {}, rank);
  return {};
}

}  // namespace firstpick::audit
