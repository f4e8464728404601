#include "strength_pipeline.hpp"

#include <algorithm>
#include <set>

#include "fingerprint.hpp"
#include "plan/read_plan.hpp"

namespace firstpick {

namespace {

using checks::StrengthQuestion;

struct Asking {
  const std::string& file;
  const tables::Tables& tables;
  const ReadNamedFile& read_named;
  std::vector<NamedText> texts{};
  std::vector<Diagnostic> faults{};

  void add(const std::vector<Diagnostic>& more) { faults.insert(faults.end(), more.begin(), more.end()); }

  // A file that the strength file names, through its own reader.
  template <class Read>
  auto named(const std::string& path, Place place, Read read) {
    using Value = std::variant_alternative_t<0, decltype(read(path, std::string_view{}))>;
    std::optional<Value> value;
    std::optional<std::string> text = read_named(path);
    if (!text) {
      faults.push_back({file, place, "'" + printable(path) + "' cannot be read",
                        "it is looked for in the folder of this file"});
      return value;
    }
    texts.push_back({path, *text});
    auto result = read(path, std::string_view(texts.back().text));
    if (const auto* wrong = std::get_if<std::vector<Diagnostic>>(&result)) add(*wrong);
    else value = std::get<Value>(std::move(result));
    return value;
  }
};

// A plan asks once for each kind of stage, at its earliest time.
StrengthQuestion question_of(const plan::Plan& plan) {
  StrengthQuestion question{.file = plan.file, .mark = plan.piece.mark, .is_plan = true,
                            .units = plan.piece.units, .concrete = plan.concrete, .lifts = {}};
  for (const plan::Stage& stage : plan.stages) {
    const std::string word(plan::word_for(stage.kind));
    const auto same = std::ranges::find(question.lifts, word, &StrengthQuestion::Lift::what);
    if (same == question.lifts.end()) question.lifts.push_back({word, stage});
  }
  return question;
}

StrengthQuestion question_of(const plan::StrengthFile& file, Asking& asking) {
  StrengthQuestion question{.file = file.file, .mark = file.mark, .units = file.units, .concrete = {}, .lifts = {},
                            .log_file = file.temperature_log, .calibration = file.calibration,
                            .growth = file.growth, .season = file.season};
  question.concrete.evidence = file.evidence;
  if (file.required) {
    question.concrete.form_stripping_strength = file.required->strength;
    plan::Stage stage{.kind = plan::StageKind::strip, .rigging = {}, .crane = {}};
    stage.at = file.required->at;
    question.lifts.push_back({"the lift", stage});
  }
  if (file.temperature_log && asking.tables.maturity)
    question.log = asking.named(
        file.temperature_log->file, file.temperature_log->place, [&](const std::string& path, std::string_view text) {
          return strength::read_temperature_log(path, text, file.temperature_log->sensor, *asking.tables.maturity);
        });
  if (file.calibration)
    if (auto aged = asking.named(file.calibration->file, file.calibration->place, strength::read_aged_strengths))
      question.aged = std::move(*aged);
  if (file.season)
    if (auto tests = asking.named(file.season->file, file.season->place, strength::read_season))
      question.season_tests = std::move(*tests);
  return question;
}

std::string rules_of(const std::string& from_command, const std::string& from_file) {
  if (!from_command.empty()) return from_command;
  return from_file.empty() ? "us" : from_file;
}

}  // namespace

StrengthQuestionRead read_strength_question(const std::string& file, std::string_view text, const std::string& rules,
                                            const tables::Tables& tables, const ReadNamedFile& read_named) {
  Asking asking{.file = file, .tables = tables, .read_named = read_named};
  asking.texts.push_back({file, std::string(text)});
  StrengthQuestionRead answer;
  const auto with = [&](std::vector<Diagnostic> faults) {
    answer.faults = std::move(faults);
    answer.texts = std::move(asking.texts);
    return std::move(answer);
  };
  if (plan::is_plan(text)) {
    const auto read = plan::read_plan(file, text, tables);
    if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&read)) return with(*faults);
    answer.question = question_of(std::get<plan::Plan>(read));
    answer.rules = rules_of(rules, std::get<plan::Plan>(read).rules);
  } else {
    const auto read = plan::read_strength_file(file, text, tables);
    if (const auto* faults = std::get_if<std::vector<Diagnostic>>(&read)) return with(*faults);
    answer.question = question_of(std::get<plan::StrengthFile>(read), asking);
    answer.rules = rules_of(rules, std::get<plan::StrengthFile>(read).rules);
  }
  if (!tables.rule_sets.contains(answer.rules))
    asking.faults.push_back({.file = file, .what = "there is no rule set '" + printable(answer.rules) + "'"});
  return with(std::move(asking.faults));
}

StrengthAnswer answer_strength(const std::string& file, std::string_view text, const std::string& rules,
                               const checks::AskedAt& asked_at, const tables::Tables& tables,
                               const ReadNamedFile& read_named) {
  StrengthQuestionRead read = read_strength_question(file, text, rules, tables, read_named);
  if (!read.faults.empty()) return {std::move(read.faults), std::move(read.texts)};

  read.question.asked_at = asked_at;
  std::string all;
  for (const NamedText& each : read.texts) all += each.text + '\0';
  if (asked_at.zoned) all += asked_at.zoned->text + '\0';
  if (asked_at.local) all += asked_at.local->text;
  return {checks::evaluate_strength(read.question, tables.rule_sets.at(read.rules), tables,
                                    fingerprint_of(all, read.rules, tables)),
          std::move(read.texts)};
}

}  // namespace firstpick
