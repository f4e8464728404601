// What the lift card of one stage says, in words, before anyone lays it out. Every text is inert: control
// characters and bidirectional orders are shown as what they are, names are cut to a length that says so.
#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "checks/pulls_on_scale.hpp"
#include "checks/report.hpp"
#include "piece/body.hpp"
#include "plan/plan.hpp"

namespace firstpick::card {

struct Fact {
  std::string label, value, note;
  std::string second{};  // another value, on a line of its own
};

// A word of ANSI Z535 and ISO 3864 in its sense: DANGER will, WARNING could kill or maim, CAUTION could hurt.
struct Signal {
  std::string_view word;
  std::string text;
};

struct ReasonText {
  std::string why, remedy, about;
};

struct SmallPrint {
  std::string title;
  std::vector<std::string> texts;
  std::string names{};     // what stands there instead where there is less room: each by its short name; empty: `in_short`
  std::string in_short{};  // where the page is full; empty: it is never shortened
};

struct Card {
  checks::Verdict verdict = checks::Verdict::hold;
  std::string verdict_words;  // "(+) GO"
  std::string mark, title, stage, origin, fingerprint;
  std::vector<Fact> facts;  // what is read first, in large figures
  std::vector<Fact> piece;  // size, weight, times: label and value
  // Only on a card that is GO:
  std::vector<std::string> turn;               // of a turn: what is not drawn
  std::vector<std::string> landing;            // where the plan says what it is set down on
  std::vector<std::vector<std::string>> legs;  // first row: heads of the columns
  std::vector<std::string> gear, steps, stops, ticks;
  // Only on a card that is not:
  std::vector<ReasonText> reasons;
  std::vector<Signal> signals;
  std::vector<std::string> write_in;
  std::vector<SmallPrint> small_print;
};

// `stage` indexes report.stages and plan.stages; `pulls` are of this stage, and needed where it turns the piece.
Card card_of(const plan::Plan& plan, const piece::Body& body, const checks::Report& report,
             std::size_t stage, const checks::PullsOnScale& pulls);

// The parts of it, each in the file of its name.
Fact pull_of(const plan::Plan& plan, const checks::Report& report, std::size_t stage,
             const checks::PullsOnScale& pulls);
std::vector<std::vector<std::string>> leg_rows(const plan::Plan& plan, const piece::Body& body,
                                               const checks::Report& report, std::size_t stage);
std::vector<std::string> gear_lines(const plan::Plan& plan, const checks::Report& report, std::size_t stage);
std::vector<std::string> turn_lines(const plan::Plan& plan, const checks::Report& report, std::size_t stage);
std::vector<std::string> steps_of(const plan::Plan& plan, const checks::Report& report, std::size_t stage,
                                  const checks::PullsOnScale& pulls);
std::vector<std::string> stops_of(const plan::Plan& plan, const checks::Report& report, std::size_t stage,
                                  const checks::PullsOnScale& pulls);
std::vector<std::string> landing_lines(const plan::Plan& plan, std::size_t stage);
std::vector<std::string> ticks_of(plan::StageKind kind);
std::vector<std::string> write_in_of(bool may_lift);
std::vector<Signal> signals_of(const checks::Report& report, std::size_t stage,
                               const checks::PullsOnScale& pulls);

// Null: not in the plan. In a turn between two hooks the legs of the second stand behind those of the first.
std::shared_ptr<const plan::Rigging> rigging_of(const plan::Plan& plan, const plan::Stage& stage);

// What was computed for a leg of the rigging, by its place: two legs may go to one insert. Null: not every leg has it.
const checks::LegReport* leg_report(const checks::StageReport& stage, const plan::Rigging& rigging,
                                    std::size_t leg);

// The pull that must not be passed, on the scale of each crane, rounded down; "not known" where it is not.
std::string pull_limit(const checks::Report& report, std::size_t stage, const checks::PullsOnScale& pulls);
bool is_pull_known(const checks::Report& report, std::size_t stage, const checks::PullsOnScale& pulls);

// How a stage is asked for: "turn", or "turn-2" where the plan turns the piece twice.
std::string stage_name(const checks::Report& report, std::size_t stage);

// `text` made inert, at most `most` characters of it; what is cut off shows as "...".
std::string inert(std::string_view text, std::size_t most = 60);

// The same, cut in its middle: names of a plant often differ at their ends only.
std::string inert_at_both_ends(std::string_view text, std::size_t most);

}  // namespace firstpick::card
