// Grip of the form, to be broken at the first pull.
//
//   F_adh = sum over contacts of a_i A_i
//
// Source   load model of CEN/TR 15728, from memory: adhesion is a stress on the contact area, added to the
//          weight.
// a_i      the plan's own adhesion of the contact, else the entry of its finish in tables/form-faces.toml.
//          Where the rule set knows a least grip per area, never less than that.
// A_i      the whole contact area. Its projection on the pull is less for steep faces; a step shows it for
//          comparison, the larger area is used.
// Acts     straight down at the centroid of each contact area.
// Range    the stage that brings the piece out of its form: strip, or the first stage of the plan unless [form] says
//          released = true. While it is turned, at the angle from which the legs carry it. Draft does not lower it. A form that nothing is said about is not assessed.

#include "loads/adhesion.hpp"

#include <string>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "plan/form_state.hpp"

namespace firstpick::loads {

namespace {

struct Grip {
  Stress stress{};
  std::string words;
  std::vector<Source> sources;
};

Outcome<Grip> grip_of(const plan::Contact& contact, std::size_t number, const tables::Tables& tables) {
  if (contact.adhesion) {
    if (!(*contact.adhesion >= Stress{}) || !is_finite(*contact.adhesion))
      return NotAssessed{fmt::format("the adhesion of form contact {} is not a usable number", number),
                         "write adhesion in [[form.contact]], zero or more"};
    return Grip{*contact.adhesion, "stated by the plan", {}};
  }
  const auto face = tables.form_faces.find(contact.finish);
  if (face == tables.form_faces.end()) {
    std::vector<std::string> known;
    for (const auto& [key, entry] : tables.form_faces) known.push_back(key);
    return NotAssessed{contact.finish.empty()
                           ? fmt::format("form contact {} has neither a finish nor an adhesion", number)
                           : fmt::format("the tables hold no adhesion for the finish '{}'", contact.finish),
                       fmt::format("write adhesion in [[form.contact]], or a finish of the tables: {}",
                                   fmt::join(known, ", "))};
  }
  const auto& entry = face->second.adhesion;
  if (!(entry.value > Stress{}) || !is_finite(entry.value))
    return NotAssessed{
        fmt::format("the adhesion of the finish '{}' in the tables is not a usable number", contact.finish),
        "write adhesion in [[form.contact]]"};
  return Grip{entry.value, fmt::format("finish {}", contact.finish), {entry.source}};
}

Grip not_below(const Grip& grip, const std::optional<Sourced<Stress>>& least) {
  if (!least || !(grip.stress < least->value)) return grip;
  return {least->value, grip.words + ", raised to the least of the rule set", {least->source}};
}

void record(const Grip& grip, const piece::ContactArea& area, Force force, std::size_t number, Trace& trace) {
  trace.add([&] {
    return Step{.words = fmt::format("form contact {}: its area projected on the pull, for comparison; the "
                                     "whole area is the heavier choice and is used",
                                     number),
                .result = {fmt::format("A_pull_{}", number), in(m2, area.on_pull), "m2"},
                .clause = "geometry"};
  });
  const std::string stress = fmt::format("a_{}", number), whole = fmt::format("A_{}", number);
  trace.add([&] {
    return Step{.words = fmt::format("adhesion of form contact {}, {}", number, grip.words),
                .result = {fmt::format("F_adh_{}", number), in(kN, force), "kN"},
                .formula = stress + " * " + whole,
                .given = {{stress, in(kPa, grip.stress), "kPa"}, {whole, in(m2, area.area), "m2"}},
                .clause = grip.sources.empty() ? "plan" : "",
                .sources = grip.sources};
  });
}

}  // namespace

Outcome<Adhesion> adhesion(const plan::Plan& plan, const plan::Stage& stage, const piece::Body& body,
                           const tables::Tables& tables, Trace& trace,
                           const std::optional<Sourced<Stress>>& least) {
  Adhesion sum;
  if (!plan::comes_out_of_form(plan, stage)) {
    trace.add([] {
      return Step{.words = "adhesion of the form: none, the piece is out of it",
                  .result = {"F_adh", 0.0, "kN"},
                  .clause = "firstpick, stage-load"};
    });
    return sum;
  }
  if (!plan.form)
    return NotAssessed{"the plan does not say what grips the piece in its form",
                       stage.kind == plan::StageKind::strip
                           ? "write [form] with a [[form.contact]] for each gripped face, or with contact = [] "
                             "where nothing grips"
                           : "[form] released = true where it was out of its form before; else [form] with a "
                             "[[form.contact]] for each gripped face"};
  if (plan.form->contacts.empty()) {
    if (!plan.form->nothing_grips)
      return NotAssessed{"[form] does not say which faces of the piece it grips",
                         "write a [[form.contact]] for each gripped face, or contact = [] where nothing "
                         "grips"};
    trace.add([] {
      return Step{.words = "adhesion of the form: the plan states that nothing grips the piece",
                  .result = {"F_adh", 0.0, "kN"},
                  .clause = "plan"};
    });
    return sum;
  }
  if (body.contacts.size() != plan.form->contacts.size())
    return NotAssessed{fmt::format("geometry found {} of the {} form contacts", body.contacts.size(),
                                   plan.form->contacts.size()),
                       {}};

  for (std::size_t i = 0; i < body.contacts.size(); ++i) {
    const piece::ContactArea& area = body.contacts[i];
    const Outcome<Grip> by_plan = grip_of(plan.form->contacts[i], i + 1, tables);
    if (const auto* missing = std::get_if<NotAssessed>(&by_plan)) return *missing;
    const Grip grip = not_below(std::get<Grip>(by_plan), least);
    if (!(area.area > Area{}) || !is_finite(area.area))
      return NotAssessed{fmt::format("the area of form contact {} is not a usable number", i + 1),
                         "check the faces of this [[form.contact]]"};
    const Force force = grip.stress * area.area;
    record(grip, area, force, i + 1, trace);
    sum.loads.push_back({area.centroid, force});
  }
  sum.total = sum_of(sum.loads);
  trace.add([&] { return sum_step("adhesion of the form, all contacts", "F_adh", sum.loads); });
  return sum;
}

}  // namespace firstpick::loads
