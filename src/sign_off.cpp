#include "sign_off.hpp"

#include <fmt/format.h>

#include "fingerprint.hpp"
#include "version.hpp"

namespace firstpick {

namespace {

constexpr std::string_view plan_ending = ".toml", sign_off_ending = ".signed.toml";

std::string first_of(const std::vector<Diagnostic>& faults) {
  const Diagnostic& first = faults.front();
  return fmt::format("{}:{}:{}: {}", first.file, first.place.line, first.place.column, first.what);
}

std::vector<std::string> changes(const plan::SignOff& then, const plan::SignOff& now) {
  std::vector<std::string> found;
  if (then.plan != now.plan) found.emplace_back("the plan");
  if (then.tables != now.tables) found.emplace_back("the tables");
  if (then.rules != now.rules) found.push_back(fmt::format("the rule set ({} then, {} now)", then.rules, now.rules));
  if (then.program != now.program)
    found.push_back(fmt::format("the program ({} then, {} now)", then.program, now.program));
  if (found.empty() && (then.fingerprint != now.fingerprint || then.seal != seal_of(then)))
    found.emplace_back("the sign-off file itself");
  return found;
}

}  // namespace

std::string sign_off_file_of(const std::string& plan_file) {
  const std::size_t stem = plan_file.ends_with(plan_ending) ? plan_file.size() - plan_ending.size() : plan_file.size();
  return plan_file.substr(0, stem) + std::string(sign_off_ending);
}

bool is_sign_off_file(std::string_view file) { return file.ends_with(sign_off_ending); }

checks::SignOffState sign_off_state(const std::optional<SignOffText>& sign_off, std::string_view plan_text,
                                    const std::string& rules, const tables::Tables& tables) {
  using checks::SignOffState;
  if (!sign_off) return {};
  SignOffState state{.kind = SignOffState::Kind::faulty, .file = sign_off->file};
  if (!sign_off->text) {
    state.fault = sign_off->file + ": the file cannot be read";
    return state;
  }
  const auto read = plan::read_sign_off(sign_off->file, *sign_off->text, tables);
  if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&read)) {
    state.fault = first_of(*faults);
    return state;
  }
  const auto& then = std::get<plan::SignOff>(read);
  state.engineer = then.engineer;
  state.signed_at = then.signed_at.text;
  state.verdict_then = then.verdict;
  state.changed = changes(then, new_sign_off(then.engineer, then.signed_at, then.verdict, plan_text, rules, tables));
  state.kind = state.changed.empty() ? SignOffState::Kind::valid : SignOffState::Kind::changed;
  return state;
}

plan::SignOff new_sign_off(const std::string& engineer, const plan::Timestamp& now, const std::string& verdict,
                           std::string_view plan_text, const std::string& rules, const tables::Tables& tables) {
  plan::SignOff made{.engineer = engineer,
                     .signed_at = now,
                     .verdict = verdict,
                     .rules = rules,
                     .program = std::string(program_version),
                     .plan = sha256_of({plan_text}),
                     .tables = sha256_of({tables.content}),
                     .fingerprint = fingerprint_of(plan_text, rules, tables),
                     .seal = {}};
  made.seal = seal_of(made);
  return made;
}

std::string seal_of(const plan::SignOff& s) {
  return sha256_of({s.engineer, std::to_string(s.signed_at.seconds), s.verdict, s.rules, s.program, s.plan, s.tables,
                    s.fingerprint});
}

}  // namespace firstpick
