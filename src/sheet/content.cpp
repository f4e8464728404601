#include "sheet/content.hpp"

#include <algorithm>
#include <map>
#include <set>

#include <fmt/format.h>

#include "card/content.hpp"
#include "card/drawing.hpp"
#include "checks/reasons.hpp"
#include "sheet/chosen_steps.hpp"
#include "sheet/drawn.hpp"
#include "units/print.hpp"
#include "version.hpp"

namespace firstpick::sheet {

namespace {

using checks::Finding;
using checks::Report;
using checks::StageReport;

Section why(const Report& report) {
  Section section{.title = "Verdict and why"};
  for (const StageReport& stage : report.stages)
    section.texts.push_back(
        fmt::format("Stage {}: {}.", checks::word_for(stage.kind), checks::word_for(stage.verdict)));
  for (const auto& [result, word] : {std::pair{checks::Result::fail, "Fails"},
                                     {checks::Result::missing, "Missing"},
                                     {checks::Result::note, "Noted"}})
    for (const checks::Reason& reason : checks::reasons(report.stages, result)) {
      std::string subjects;
      for (const std::string& subject : reason.subjects) subjects += (subjects.empty() ? "" : ", ") + subject;
      section.items.push_back(fmt::format(
          "{}: {}{} [{}]", word, reason.text,
          reason.remedy.empty() ? "." : ". What would change it: " + reason.remedy + ".", subjects));
    }
  return section;
}

Section piece_section(const plan::Plan& plan, const piece::Body& body, const Report& report) {
  const Position size = body.highest - body.lowest;
  const auto length = [&](Length l) { return print(l, report.units); };
  Section section{.title = "The piece"};
  section.table = {
      {"what", "value"},
      {"size as cast, x, y, height",
       fmt::format("{} x {} x {}", length(size.x), length(size.y), length(size.z))},
      {"volume", print(report.volume, report.units)},
      {"mass at nominal density", print(report.mass, report.units)},
      {"centre of gravity, in the plan's axes",
       fmt::format("{}, {}, {}", length(body.centroid.x), length(body.centroid.y), length(body.centroid.z))},
      {"weight on the drawing",
       plan.piece.stated_weight ? print(*plan.piece.stated_weight, report.units) : std::string("not stated")},
      {"strength", report.strength_basis.empty() ? "none shown" : report.strength_basis}};
  return section;
}

// "strip 1, yard 1": the number that each stage's figure gives this insert.
std::string numbers_of(std::size_t insert, const plan::Plan& plan) {
  std::string all;
  for (const plan::Stage& stage : plan.stages) {
    const auto rigging = card::rigging_of(plan, stage);
    if (!rigging) continue;
    for (const card::Pick& pick : card::picks_of(plan, *rigging))
      if (pick.insert == insert)
        all += fmt::format("{}{} {}", all.empty() ? "" : ", ", word_for(stage.kind), pick.number);
  }
  return all.empty() ? "not used" : all;
}

Section layout(const plan::Plan& plan, const piece::Body& body, const Report& report) {
  constexpr double wide = 420.0, high = 300.0, text_size = 8.0;
  Section section{.title = "Layout of the inserts"};
  for (std::size_t i = 0; i < report.stages.size(); ++i) {
    auto drawing = card::from_above(plan, body, report, i);
    if (!drawing) continue;
    section.figures.push_back(
        {fmt::format("Figure {}: stage {}", section.figures.size() + 1,
                     checks::word_for(report.stages[i].kind)),
         {wide,
          high,
          {card::drawing_box(*drawing, {1.0, 1.0, wide - 2.0, high - 2.0}, text_size)}},
         "the inserts seen from above; the table below has their places"});
  }
  section.table = {{"insert", "number in the figure", "kind", "x", "y", "z"}};
  for (std::size_t i = 0; i < plan.inserts.size(); ++i) {
    const plan::Insert& insert = plan.inserts[i];
    section.table.push_back({insert.id, numbers_of(i, plan), insert.kind, print(insert.at.x, report.units),
                             print(insert.at.y, report.units), print(insert.at.z, report.units)});
  }
  return section;
}

// A rule that had nothing to judge in this stage says "pass" to the coverage guard; a reader is told what it was.
bool had_nothing_to_judge(const Finding& f, const plan::Plan& plan, const plan::Stage& stage) {
  if (f.result != checks::Result::pass || f.utilization) return false;
  if (f.rule.starts_with("turn-")) return stage.kind != plan::StageKind::turn;
  if (f.rule == "haul-restraint") return stage.kind != plan::StageKind::haul;
  if (f.rule == "wind-side-load") return !stage.wind_speed;
  if (f.rule == "scale-reading") return !stage.scale_reading;
  if (f.rule == "thread-engagement")
    return std::ranges::none_of(plan.inserts, [&](const plan::Insert& insert) {
      return insert.id == f.subject && (insert.kind == "threaded" || insert.thread || insert.thread_engagement);
    });
  return false;
}

// "rule (A1, A2); other rule (MB-1)"
void add_to_list(std::vector<std::pair<std::string, std::string>>& list, const Finding& f) {
  if (list.empty() || list.back().first != f.rule) list.push_back({std::string(f.rule), f.subject});
  else list.back().second += ", " + f.subject;
}

std::string in_words(const std::vector<std::pair<std::string, std::string>>& list) {
  std::string text;
  for (const auto& [rule, subjects] : list) text += fmt::format("{}{} ({})", text.empty() ? "" : "; ", rule, subjects);
  return text;
}

Section findings(const StageReport& stage, const Report& report, const plan::Plan& plan, const plan::Stage& planned) {
  Section section{.title = fmt::format("Findings, stage {}", checks::word_for(stage.kind))};
  section.table = {{"rule", "on", "result", "asked", "there is", "used", "clause", "governed by"}};
  const auto cell = [&](const std::optional<checks::Figure>& figure, Rounding rounding) {
    return figure ? checks::print(*figure, report.units, rounding) : std::string("-");
  };
  std::vector<std::pair<std::string, std::string>> without_a_number, nothing_to_judge;
  for (const Finding& f : stage.findings) {
    if (had_nothing_to_judge(f, plan, planned)) {
      add_to_list(nothing_to_judge, f);
      continue;
    }
    if (f.result == checks::Result::pass && !f.utilization && !f.demand) {
      add_to_list(without_a_number, f);
      continue;
    }
    section.table.push_back({std::string(f.rule), f.subject, std::string(checks::word_for(f.result)),
                             cell(f.demand, Rounding::up), cell(f.capacity, Rounding::down),
                             f.utilization ? print_utilization(*f.utilization) : "-",
                             f.clause.empty() ? "-" : f.clause, f.situation.empty() ? "-" : f.situation});
  }
  if (section.table.size() == 1) section.table.clear();
  if (!without_a_number.empty())
    section.texts.push_back("Passed, without a number: " + in_words(without_a_number) + ".");
  if (!nothing_to_judge.empty())
    section.texts.push_back("Not applicable in this stage, nothing to judge: " + in_words(nothing_to_judge) + ".");
  return section;
}

// Every table entry that a shown step rests on, each once.
Section sources(const std::vector<Section>& sections) {
  std::map<std::string, const Source*> found;
  for (const Section& section : sections)
    for (const Step& step : section.steps)
      for (const Source& source : step.sources) found.emplace(source.id, &source);
  Section list{.title = "Table entries used"};
  list.table = {{"entry", "value", "what", "source", "basis"}};
  for (const auto& [id, source] : found)
    list.table.push_back({id, source->value_text, source->what, citation(*source),
                          source->confirmed_by.empty()
                              ? std::string(word_for(source->basis))
                              : fmt::format("{}, confirmed by {} on {}", word_for(source->basis),
                                            source->confirmed_by, source->confirmed_on)});
  return list;
}

Section list_of(std::string title, const std::vector<std::string>& items) {
  return {.title = std::move(title), .items = items};
}

Section unconfirmed(const Report& report) {
  Section section{.title = "From memory, to be confirmed by the engineer of record"};
  for (const Source& s : report.unconfirmed)
    section.items.push_back(fmt::format("{} = {}: {} ({})", s.id, s.value_text, s.what, citation(s)));
  if (section.items.empty()) section.texts.emplace_back("None took part.");
  return section;
}

}  // namespace

Sheet sheet_of(const plan::Plan& plan, const piece::Body& body, const Report& report, bool all,
               const std::vector<checks::StageFigures>& drawn) {
  Sheet sheet{.title = fmt::format("Calculation of the lift of {}{}", report.mark,
                                   report.revision.empty() ? "" : ", revision " + report.revision),
              .verdict = std::string(checks::word_for(report.verdict))};
  sheet.head = report.mark + (report.revision.empty() ? "" : ", revision " + report.revision);
  sheet.foot = "fingerprint " + report.fingerprint.substr(0, 16);
  sheet.units = report.units;
  if (!report.title.empty()) sheet.heading.push_back(report.title);
  sheet.heading.push_back(fmt::format("Plan {}; rules {} ({}); firstpick {}", report.file, report.rules,
                                      report.rules_title, program_version));
  sheet.heading.push_back("Fingerprint " + report.fingerprint);
  sheet.heading.push_back("Sign-off: " + checks::in_words(report.sign_off));
  sheet.heading.push_back(fmt::format("Engineer of record: {}. Prepared by: {}.",
                                      report.engineer.empty() ? "nobody named" : report.engineer,
                                      report.prepared_by.empty() ? "nobody named" : report.prepared_by));
  sheet.heading.emplace_back("Checked: ______________________   Date: ______________");

  sheet.sections = {list_of("Cautions", report.cautions), why(report), piece_section(plan, body, report),
                    layout(plan, body, report)};
  for (Section& section : drawn_sections(report, drawn)) sheet.sections.push_back(std::move(section));
  sheet.sections.push_back(list_of("Assumptions", report.choices));
  if (!report.overridden.empty())
    sheet.sections.push_back(list_of("Entries of the plant's own tables", report.overridden));
  sheet.sections.push_back(unconfirmed(report));
  sheet.sections.push_back(list_of("Not checked by this version", report.not_checked));
  for (std::size_t i = 0; i < report.stages.size() && i < plan.stages.size(); ++i)
    sheet.sections.push_back(findings(report.stages[i], report, plan, plan.stages[i]));
  const ChosenSteps chosen = chosen_steps(report, all);
  if (chosen.left_out > 0)
    sheet.sections.push_back(
        {.title = "Left out",
         .texts = {fmt::format(
             "{} parts of the calculation are the same rules on inserts that are not their worst: "
             "firstpick sheet --all prints them.",
             chosen.left_out)}});
  for (const StepGroup& group : chosen.groups) {
    sheet.sections.push_back({.title = "Calculation, " + group.about});
    for (const Step* step : group.steps) sheet.sections.back().steps.push_back(*step);
  }
  sheet.sections.push_back(sources(sheet.sections));
  return sheet;
}

}  // namespace firstpick::sheet
