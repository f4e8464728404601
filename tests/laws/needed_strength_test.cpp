// At the strength that `need` tells, a plan that would go otherwise goes; at 1 % less it does not.

#include <catch2/catch.hpp>

#include <algorithm>
#include <optional>

#include "checks/evaluate.hpp"
#include "need_pipeline.hpp"
#include "pipeline.hpp"
#include "support/plan_files.hpp"
#include "support/slab_text.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

constexpr int plans = 200;

checks::StageNeedReport need_of(const SlabText& slab) {
  auto answer = need_of_plan("plan.toml", plan_text(slab), {}, real_tables());
  REQUIRE(std::holds_alternative<checks::NeedReport>(answer));
  auto& report = std::get<checks::NeedReport>(answer);
  REQUIRE(report.stages.size() == 1);
  return std::move(report.stages.front());
}

// The plan read and its solid made once: the specimens are all that changes.
class SlabAtStrength {
 public:
  explicit SlabAtStrength(const SlabText& slab) : slab_(slab) {
    auto made = prepare_plan("plan.toml", plan_text(slab), "", real_tables());
    REQUIRE(std::holds_alternative<PreparedPlan>(made));
    prepared_.emplace(std::move(std::get<PreparedPlan>(made)));
  }
  const SlabText& slab() const { return slab_; }
  checks::Verdict verdict_at(double MPa_shown) {
    prepared_->plan.concrete.evidence.value().results.assign(2, MPa_shown * MPa);
    return checks::evaluate_plan(prepared_->plan, prepared_->body, prepared_->rules, real_tables(), "").verdict;
  }

 private:
  SlabText slab_;
  std::optional<PreparedPlan> prepared_;
};

// Random slabs until 200 of them would go in strong concrete. Those whose inserts would break at any strength, which are the
// most, are left out before their solids are made.
std::vector<SlabAtStrength> slabs_that_go() {
  constexpr double most_kN = 15.0;  // of weight, for each insert
  Chance chance(11);
  std::vector<SlabAtStrength> found;
  for (int tried = 0; found.size() < plans && tried < 100 * plans; ++tried) {
    const SlabText text = random_slab(chance);
    if (nominal_weight_kN(text) > most_kN * static_cast<double>(text.inserts.size())) continue;
    if (SlabAtStrength slab(text); slab.verdict_at(150.0) == checks::Verdict::go) found.push_back(std::move(slab));
  }
  return found;
}

}  // namespace

TEST_CASE("at its needed strength a plan goes, at 1 % less it does not") {
  std::vector<SlabAtStrength> slabs = slabs_that_go();
  REQUIRE(slabs.size() == plans);
  int by_other_rules = 0;
  for (SlabAtStrength& slab : slabs) {
    const checks::StageNeed need = need_of(slab.slab()).need;
    CAPTURE(plan_text(slab.slab()));
    REQUIRE_FALSE(need.rules.empty());
    CHECK(need.not_mended.empty());
    CHECK(need.verdict == checks::Verdict::go);
    const double needed = in(MPa, need.rules.front().strength);
    CAPTURE(needed, need.rules.front().rule);
    CHECK(slab.verdict_at(needed * (1.0 + 1e-12)) == checks::Verdict::go);
    CHECK(slab.verdict_at(needed * 0.99) != checks::Verdict::go);
    CHECK(slab.verdict_at(in(MPa, need.to_print.value())) == checks::Verdict::go);
    by_other_rules += need.rules.front().rule != "strength-below-required" ? 1 : 0;
  }
  CHECK(by_other_rules > plans / 10);  // else only the drawing's number was found again
}

TEST_CASE("what no strength mends is named, and no answer is a GO then") {
  Chance chance(12);
  int tried = 0;
  for (int i = 0; i < 1000 && tried < 10; ++i) {
    SlabText slab = random_slab(chance);
    if (SlabAtStrength(slab).verdict_at(150.0) != checks::Verdict::go) continue;
    ++tried;
    slab.sling_kN = 0.1;
    const checks::StageNeed need = need_of(slab).need;
    CHECK(need.verdict == checks::Verdict::no_go);
    CHECK(std::ranges::any_of(need.not_mended, [](const auto& f) { return f.rule == "sling-overload"; }));
  }
  CHECK(tried == 10);
}

TEST_CASE("need of a plan without a test, and without a required strength, is that of the same plan with both") {
  Chance chance(13);
  SlabText slab = level_slab(chance);
  slab.required_MPa = 1.0;  // below the rule set's least
  const std::string with = plan_text(slab);
  std::string without = with;
  const auto cut = [&](const std::string& from, const std::string& to) {
    const auto first = without.find(from);
    REQUIRE(first != std::string::npos);
    without.erase(first, without.find(to, first) - first);
  };
  cut("form_stripping_strength", "\n");
  cut("[concrete.evidence]", "\n[");
  const auto ask = [](const std::string& text) {
    auto answer = need_of_plan("plan.toml", text, {}, real_tables());
    REQUIRE(std::holds_alternative<checks::NeedReport>(answer));
    return std::get<checks::NeedReport>(answer).stages.front();
  };
  const auto a = ask(with), b = ask(without);
  CHECK(a.requirement_stated);
  CHECK_FALSE(b.requirement_stated);
  REQUIRE(a.need.to_print);
  CHECK(a.need.to_print == b.need.to_print);
}
