#include "card/content.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "checks/reasons.hpp"
#include "record/diagnostic.hpp"
#include "units/print.hpp"
#include "version.hpp"

namespace firstpick::card {

namespace {

using checks::PullsOnScale;
using checks::Report;
using checks::StageReport;
using checks::Verdict;

std::string_view sign_for(Verdict verdict) {
  switch (verdict) {
    case Verdict::go: return "(+)";
    case Verdict::hold: return "(?)";
    case Verdict::no_go: return "(x)";
  }
  return "(?)";
}

// "each 25.4, 26.1 MPa; mean 25.7 MPa": all of them up to a number that an eye takes in.
std::string single_results(const std::vector<Stress>& results, UnitSystem units) {
  constexpr std::size_t most = 8;
  std::string text = "each ";
  Stress sum{};
  for (std::size_t i = 0; i < results.size(); ++i) {
    sum += results[i];
    if (i < most) text += (i == 0 ? "" : ", ") + print(results[i], units, Rounding::down);
  }
  if (results.size() > most) text += fmt::format(" and {} more", results.size() - most);
  return text + "; mean " + print(sum / static_cast<double>(results.size()), units, Rounding::down);
}

std::string strength_note(const plan::Plan& plan, const Report& report) {
  std::string text =
      report.strength_basis.empty() ? "no strength test in the plan" : inert(report.strength_basis, 120);
  if (plan.concrete.evidence && !plan.concrete.evidence->report.empty())
    text += "; report " + inert(plan.concrete.evidence->report, 40);
  if (plan.concrete.evidence && plan.concrete.evidence->results.size() > 1)
    text += "; " + single_results(plan.concrete.evidence->results, report.units);
  return text;
}

Fact validity(const plan::Plan& plan, const Report& report, std::size_t at) {
  const plan::Stage& stage = plan.stages[at];
  const std::string lift =
      stage.at ? "for the lift planned at " + stage.at->text : "the plan does not say when the lift is";
  if (report.evidence_until) return {"Valid until", report.evidence_until->text, lift + "; then a new test"};
  return {"Valid until", "____-__-__ __:__",
          "the plan sets no limit on the age of the test: the engineer writes it; " + lift};
}

// Who signed this plan, when, and whether it is still what was signed.
Fact signature(const Report& report) {
  const checks::SignOffState& state = report.sign_off;
  const std::string who = fmt::format("{}, {}, as {}", inert(state.engineer, 50), inert(state.signed_at, 30),
                                      inert(state.verdict_then, 10));
  switch (state.kind) {
    case checks::SignOffState::Kind::none: return {"Engineer's signature", "not signed", "nobody has signed this plan"};
    case checks::SignOffState::Kind::valid: return {"Engineer's signature", "signed", "by " + who};
    case checks::SignOffState::Kind::changed:
      return {"Engineer's signature", "changed since sign-off", "signed by " + who};
    case checks::SignOffState::Kind::faulty: break;
  }
  return {"Engineer's signature", "cannot be read", inert(state.fault, 120)};
}

std::vector<Fact> facts_of(const plan::Plan& plan, const Report& report, std::size_t at, const PullsOnScale& pulls) {
  const StageReport& stage = report.stages[at];
  const Fact strength{
      "Strength of the concrete",
      (stage.required_strength ? print(*stage.required_strength, report.units, Rounding::up) : "not known") +
          " needed",
      strength_note(plan, report),
      (report.usable_strength ? print(*report.usable_strength, report.units, Rounding::down) : "none") +
          " shown"};
  if (stage.verdict != Verdict::go) return {strength, signature(report)};
  return {pull_of(plan, report, at, pulls), strength, validity(plan, report, at), signature(report)};
}

std::vector<Fact> piece_of(const plan::Plan& plan, const piece::Body& body, const Report& report,
                           std::size_t at) {
  const StageReport& stage = report.stages[at];
  const UnitSystem units = report.units;
  const Position size = body.highest - body.lowest;
  const Position to_centre = body.centroid - body.lowest;
  std::vector<Fact> facts{
      {"Size as cast, x, y, height",
       fmt::format("{} x {} x {}", print(size.x, units), print(size.y, units), print(size.z, units)), ""},
      {"Volume", print(report.volume, units), ""},
      {"Weight at most",
       stage.load ? print(stage.load->weight, units, Rounding::up) : std::string("not known"), ""},
      {"Weight on the drawing",
       plan.piece.stated_weight ? print(*plan.piece.stated_weight, units) : std::string("not stated"), ""},
      {"Centre of gravity, from the lowest corner",
       fmt::format("x {}, y {}, z {}", print(to_centre.x, units), print(to_centre.y, units),
                   print(to_centre.z, units)),
       ""}};
  const auto& evidence = plan.concrete.evidence;
  facts.push_back({"Cast", evidence && evidence->cast ? evidence->cast->text : "not stated", ""});
  facts.push_back({"Tested", evidence && evidence->tested ? evidence->tested->text : "not stated", ""});
  const auto& lift = plan.stages[at].at;
  facts.push_back({"Lift planned", lift ? lift->text : "not stated", ""});
  if (lift && evidence && evidence->cast && lift->has_offset == evidence->cast->has_offset)
    facts.push_back({"Age at the lift",
                     print(Duration{static_cast<double>(lift->seconds - evidence->cast->seconds) * second},
                           units, Rounding::down),
                     ""});
  if (stage.verdict != Verdict::go) return facts;
  if (stage.load)
    facts.push_back(
        {"Dynamic factor", print_number(stage.load->dynamic_factor.value(), 3, Rounding::up), ""});
  if (stage.tilt) facts.push_back({"Hangs out of level", print(*stage.tilt, units, Rounding::up), ""});
  if (stage.kind == plan::StageKind::strip && plan.form)
    for (const plan::Attached& part : plan.form->attached)
      facts.push_back(
          {"Leaves with the piece", inert(part.what) + ", " + print(part.weight, units, Rounding::up), ""});
  return facts;
}

std::vector<ReasonText> reasons_of(const StageReport& stage) {
  std::vector<ReasonText> texts;
  const std::span<const StageReport> one(&stage, 1);
  for (const checks::Result result : {checks::Result::fail, checks::Result::missing})
    for (const checks::Reason& reason : checks::reasons(one, result)) {
      std::string about;
      constexpr std::size_t most = 6;
      for (std::size_t i = 0; i < reason.subjects.size() && i < most; ++i)
        about += (i == 0 ? "" : ", ") + inert(reason.subjects[i], 24);
      if (reason.subjects.size() > most) about += fmt::format(" and {} more", reason.subjects.size() - most);
      texts.push_back({(result == checks::Result::fail ? "Fails: " : "Missing: ") + inert(reason.text, 260),
                       inert(reason.remedy, 220), about});
    }
  return texts;
}

// Words are shortened where they must, a value never: without it the line would say nothing.
std::string what_it_is(const Source& source) {
  constexpr std::size_t room = 90, least = 20;
  const std::string value = inert(source.value_text, 60);
  const std::size_t left = room - std::min(room, value.size() + 2);
  return inert(source.what, std::max(left, least)) + ": " + value;
}

std::string counted(std::size_t count, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

std::vector<SmallPrint> small_print_of(const Report& report, std::size_t at) {
  SmallPrint unconfirmed{"From memory, to be confirmed by the engineer of record", {}};
  for (const Source& s : report.unconfirmed)
    unconfirmed.texts.push_back(what_it_is(s));
  unconfirmed.names = unconfirmed.title + ": ";
  for (const Source& s : report.unconfirmed)
    unconfirmed.names += (unconfirmed.names.ends_with(": ") ? "" : ", ") + inert(s.id, 60);
  unconfirmed.names += ".";
  unconfirmed.in_short = counted(unconfirmed.texts.size(), "value", "values") +
                         " from memory, to be confirmed by the engineer of record: see the calculation sheet, part \"From "
                         "memory\".";
  SmallPrint others{"Other stages of this plan: this card is not for them", {}};
  for (std::size_t i = 0; i < report.stages.size(); ++i)
    if (i != at) {
      others.texts.push_back(
          fmt::format("{} {}", stage_name(report, i), checks::word_for(report.stages[i].verdict)));
      if (const auto& needs = report.stages[i].required_strength)
        others.texts.back() += ", needs " + print(*needs, report.units, Rounding::up);
    }
  SmallPrint noted{"Noted", {}};
  for (const checks::Reason& reason : checks::reasons({&report.stages[at], 1}, checks::Result::note))
    noted.texts.push_back(inert(reason.text, 500));
  for (const std::string& text : noted.texts)
    noted.in_short += (noted.in_short.empty() ? "Noted: " : "; ") + inert(text, 200);
  SmallPrint unchecked{"Not checked by this version", report.not_checked}, cautions{"Standing cautions", {}};
  unchecked.in_short =
      fmt::format("This version does not check everything ({}): see the calculation sheet, part \"Not checked\".",
                  counted(unchecked.texts.size(), "matter", "matters"));
  for (std::string& text : unchecked.texts) text = inert(text, 200);
  for (const std::string& text : report.cautions) cautions.texts.push_back(inert(text, 500));
  std::vector<SmallPrint> all;
  for (SmallPrint* each : {&others, &noted, &unconfirmed, &unchecked, &cautions})
    if (!each->texts.empty()) all.push_back(std::move(*each));
  return all;
}

}  // namespace

std::string inert(std::string_view text, std::size_t most) {
  const std::string safe = printable(text);
  std::size_t characters = 0, end = 0;
  while (end < safe.size() && characters < most) {
    ++end;
    while (end < safe.size() && (static_cast<unsigned char>(safe[end]) & 0xC0U) == 0x80U) ++end;
    ++characters;
  }
  return end == safe.size() ? safe : safe.substr(0, end) + "...";
}

std::string inert_at_both_ends(std::string_view text, std::size_t most) {
  const std::string safe = printable(text);
  std::vector<std::size_t> starts;  // of each character
  for (std::size_t i = 0; i < safe.size(); ++i)
    if ((static_cast<unsigned char>(safe[i]) & 0xC0U) != 0x80U) starts.push_back(i);
  if (starts.size() <= most) return safe;
  const std::size_t head = most / 2, tail = most - head;
  return safe.substr(0, starts[head]) + "..." + safe.substr(starts[starts.size() - tail]);
}

std::string stage_name(const Report& report, std::size_t at) {
  const auto kind = report.stages.at(at).kind;
  std::size_t all = 0, place = 0;
  for (std::size_t i = 0; i < report.stages.size(); ++i) {
    if (report.stages[i].kind != kind) continue;
    ++all;
    if (i <= at) ++place;
  }
  const std::string word(checks::word_for(kind));
  return all < 2 ? word : fmt::format("{}-{}", word, place);
}

std::shared_ptr<const plan::Rigging> rigging_of(const plan::Plan& plan, const plan::Stage& stage) {
  const auto found = std::ranges::find(plan.riggings, stage.rigging, &plan::Rigging::id);
  if (found == plan.riggings.end()) return nullptr;
  auto rigging = std::make_shared<plan::Rigging>(*found);
  if (stage.kind != plan::StageKind::turn || !stage.turn || stage.turn->method != plan::TurnMethod::two_hooks)
    return rigging;
  const auto tail = std::ranges::find(plan.riggings, stage.turn->tail_rigging, &plan::Rigging::id);
  if (tail == plan.riggings.end()) return rigging;
  for (plan::Leg leg : tail->legs) {
    if (leg.from.empty()) leg.from = "second hook";
    rigging->legs.push_back(std::move(leg));
  }
  return rigging;
}

const checks::LegReport* leg_report(const StageReport& stage, const plan::Rigging& rigging, std::size_t leg) {
  if (stage.legs.size() != rigging.legs.size() || stage.legs.at(leg).to != rigging.legs.at(leg).to)
    return nullptr;
  return &stage.legs[leg];
}

Card card_of(const plan::Plan& plan, const piece::Body& body, const Report& report, std::size_t at,
             const PullsOnScale& pulls) {
  const StageReport& stage = report.stages.at(at);
  const bool may_lift = stage.verdict == Verdict::go;
  Card card{.verdict = stage.verdict};
  card.verdict_words = fmt::format("{} {}", sign_for(stage.verdict), checks::word_for(stage.verdict));
  card.mark = inert_at_both_ends(report.mark, 120) +
              (report.revision.empty() ? "" : "  rev " + inert(report.revision, 12));
  card.title = inert(report.title, 90);
  card.stage = fmt::format("Stage {}", stage_name(report, at));
  if (stage_name(report, at) != checks::word_for(stage.kind))  // two of a kind: told apart by what hangs on the hook
    card.title += fmt::format("{}rigging {}", card.title.empty() ? "" : "; ",
                              inert_at_both_ends(stage.rigging, 24));
  card.origin = fmt::format("plan {}; rules {}; firstpick {}; designed by {}; plan made by {}",
                            inert(report.file, 80), inert(report.rules, 30), program_version,
                            report.engineer.empty() ? "nobody named" : inert(report.engineer, 50),
                            report.prepared_by.empty() ? "nobody named" : inert(report.prepared_by, 50));
  card.fingerprint = report.fingerprint;
  card.facts = facts_of(plan, report, at, pulls);
  card.piece = piece_of(plan, body, report, at);
  if (may_lift) {
    card.legs = leg_rows(plan, body, report, at);
    card.gear = gear_lines(plan, report, at);
    card.turn = turn_lines(plan, report, at);
    card.landing = landing_lines(plan, at);
    card.steps = steps_of(plan, report, at, pulls);
    card.stops = stops_of(plan, report, at, pulls);
    card.ticks = ticks_of(stage.kind);
  } else {
    card.reasons = reasons_of(stage);
  }
  card.signals = signals_of(report, at, pulls);
  card.write_in = write_in_of(may_lift);
  card.small_print = small_print_of(report, at);
  return card;
}

}  // namespace firstpick::card
