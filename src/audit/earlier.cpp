#include "audit/earlier.hpp"

#include <algorithm>
#include <map>

#include <fmt/format.h>

#include <nlohmann/json.hpp>

namespace firstpick::audit {

namespace {

using Json = nlohmann::json;

std::string sign_off_words(const std::string& state, const std::string& engineer, const std::string& signed_at) {
  return state + (engineer.empty() ? "" : fmt::format(" ({}, {})", engineer, signed_at));
}

std::optional<Standing> standing_named(std::string_view word) {
  for (const Standing standing : {Standing::go, Standing::hold, Standing::no_go, Standing::broken})
    if (word_for(standing) == word) return standing;
  return {};
}

// What an earlier audit said of one plan; absent where that version did not say it.
struct Before {
  Standing standing = Standing::broken;
  std::optional<std::string> rule, tested, sign_off, plan, fingerprint;
  std::optional<double> utilization;
  bool has_utilization = false;
};

// Of a text or null; absent where there is neither.
std::optional<std::string> text_in(const Json& in, const char* key) {
  const auto found = in.find(key);
  if (found == in.end()) return {};
  if (found->is_string()) return found->get<std::string>();
  if (found->is_null()) return std::string();
  return {};
}

Before before_of(const Json& plan, Standing standing) {
  Before before{.standing = standing, .rule = text_in(plan, "rule"), .tested = text_in(plan, "tested"), .sign_off = {},
                .plan = text_in(plan, "plan_sha256"), .fingerprint = text_in(plan, "fingerprint"), .utilization = {}};
  if (const auto used = plan.find("utilization"); used != plan.end() && (used->is_number() || used->is_null())) {
    before.has_utilization = true;
    if (used->is_number()) before.utilization = used->get<double>();
  }
  if (const auto sign_off = plan.find("sign_off"); sign_off != plan.end() && sign_off->is_object()) {
    const auto state = text_in(*sign_off, "state");
    if (state) before.sign_off = sign_off_words(*state, text_in(*sign_off, "engineer").value_or(""), text_in(*sign_off, "signed").value_or(""));
  }
  return before;
}

std::string used(const std::optional<double>& use) { return use ? fmt::format("{:.3f}", *use) : "nothing"; }
std::string or_none(const std::string& text) { return text.empty() ? "none" : text; }

// Everything but the verdict that is not as it was.
std::vector<std::string> differences(const Before& before, const Entry& now) {
  std::vector<std::string> all;
  const auto tell = [&](std::string_view of, const std::string& was, const std::string& is) {
    if (was != is) all.push_back(fmt::format("{} was {}, is {}", of, or_none(was), or_none(is)));
  };
  if (before.plan && *before.plan != now.text_hash) all.emplace_back("the plan is another");
  if (before.rule) tell("what governs", *before.rule, now.rule);
  if (before.has_utilization) tell("used", used(before.utilization), used(now.utilization));
  if (before.tested) tell("the strength test", *before.tested, now.tested);
  if (before.sign_off && now.standing != Standing::broken)
    tell("the sign-off", *before.sign_off,
         sign_off_words(std::string(checks::word_for(now.sign_off.kind)), now.sign_off.engineer, now.sign_off.signed_at));
  if (all.empty() && before.fingerprint && *before.fingerprint != now.fingerprint)
    all.emplace_back(before.plan ? "tables, rule set or program are others" : "plan, tables, rule set or program are others");
  return all;
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
  std::map<std::string, Before> before;
  for (const Json& plan : *plans) {
    const auto name = plan.find("file"), verdict = plan.find("verdict");
    if (!plan.is_object() || name == plan.end() || verdict == plan.end() || !name->is_string() || !verdict->is_string())
      return fault("a plan of the audit has no 'file' and 'verdict'");
    const auto standing = standing_named(verdict->get<std::string>());
    if (!standing) return fault("a plan of the audit has a verdict that is none");
    before[name->get<std::string>()] = before_of(plan, *standing);
  }
  audit.since = file;
  const auto add = [&](Change::Kind kind, const std::string& name, std::string was, std::string is,
                       std::vector<std::string> what = {}) {
    audit.changes.push_back({kind, name, std::move(was), std::move(is), std::move(what)});
  };
  for (const Entry& entry : audit.entries) {
    const std::string now(word_for(entry.standing));
    const auto known = before.find(entry.file);
    if (known == before.end()) {
      add(Change::Kind::added, entry.file, "", now);
      continue;
    }
    const Standing was = known->second.standing;
    std::vector<std::string> what = differences(known->second, entry);
    if (was != entry.standing)
      add(entry.standing > was ? Change::Kind::worse : Change::Kind::better, entry.file, std::string(word_for(was)), now,
          std::move(what));
    else if (!what.empty())
      add(Change::Kind::changed, entry.file, now, now, std::move(what));
    before.erase(known);
  }
  for (const auto& [name, was] : before) add(Change::Kind::gone, name, std::string(word_for(was.standing)), "");
  const auto rank = [](const Change& c) {  // what is worse, then gone, new, changed, better
    switch (c.kind) {
      case Change::Kind::worse: return 0;
      case Change::Kind::gone: return 1;
      case Change::Kind::added: return 2;
      case Change::Kind::changed: return 3;
      case Change::Kind::better: return 4;
    }
    return 0;
  };
  std::ranges::stable_sort(audit.changes, {}, rank);
  return {};
}

}  // namespace firstpick::audit
