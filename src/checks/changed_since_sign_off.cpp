// The plan, the tables and the program are those that the engineer has signed.
//
// Source   plan practice: a signature is for what was signed. Whether a plan must be signed at all is the rule set's
//          choice, "no_sign_off": note (told, passes), hold, refuse.
// Inputs   the state of the sign-off beside the plan (firstpick sign writes it, src/sign_off.cpp compares it).
// Changed since, or a sign-off that does not read: HOLD, whatever the rule set chose.

#include <fmt/format.h>

#include "checks/rule.hpp"
#include "checks/sign_off_state.hpp"

namespace firstpick::checks {

namespace {

constexpr const char* sign_again =
    "the engineer reads the plan as it is now and signs it: firstpick sign PLAN --engineer \"...\"";

std::string listed(const std::vector<std::string>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i)
    out += (i == 0 ? "" : i + 1 == words.size() ? " and " : ", ") + words[i];
  return out;
}

}  // namespace

std::string_view word_for(SignOffState::Kind kind) {
  switch (kind) {
    case SignOffState::Kind::none: return "none";
    case SignOffState::Kind::valid: return "valid";
    case SignOffState::Kind::changed: return "changed since sign-off";
    case SignOffState::Kind::faulty: return "faulty";
  }
  return "faulty";
}

std::string in_words(const SignOffState& state) {
  const std::string who = fmt::format("signed by {}, {}, as {}", state.engineer, state.signed_at, state.verdict_then);
  switch (state.kind) {
    case SignOffState::Kind::none: return "not signed";
    case SignOffState::Kind::valid: return who;
    case SignOffState::Kind::changed: return fmt::format("changed since sign-off: {} ({})", listed(state.changed), who);
    case SignOffState::Kind::faulty: return fmt::format("the sign-off cannot be read: {}", state.fault);
  }
  return "the sign-off cannot be read";
}

std::vector<Finding> changed_since_sign_off(const StageFacts& facts, Trace&) {
  constexpr std::string_view id = "changed-since-sign-off";
  const std::string& subject = facts.plan.piece.mark;
  const auto kind = facts.sign_off ? facts.sign_off->kind : SignOffState::Kind::none;
  if (kind == SignOffState::Kind::valid) return {passed(id, subject)};
  if (kind == SignOffState::Kind::none) {
    // Told in the heading of every output ("not signed"), and not once more for each stage.
    if (facts.rules.no_sign_off.value == tables::NoSignOff::note) return {passed(id, subject)};
    Finding finding = missing(id, subject, "no engineer has signed this plan", sign_again);
    if (facts.rules.no_sign_off.value == tables::NoSignOff::refuse) finding.result = Result::fail;
    return {finding};
  }
  const bool changed = kind == SignOffState::Kind::changed;
  return {missing(id, subject, in_words(*facts.sign_off),
                  changed ? sign_again : "correct or remove the sign-off file, and sign again")};
}

}  // namespace firstpick::checks
