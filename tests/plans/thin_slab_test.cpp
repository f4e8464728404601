// By EN 1992-4 an insert counts as in uncracked concrete only where the concrete is at least twice its embedment thick: 7.2.1.7
// spares the check of splitting from h_min on. The slab of ok/slab-by-the-european-rules.toml, said to be uncracked.

#include <catch2/catch.hpp>

#include <regex>
#include <string>

#include "support/plan_files.hpp"

using namespace firstpick;
using namespace firstpick::tests;

namespace {

// What pull-out of A1 holds: k2 A_h f_ck, 10.5 over 7.5 in uncracked over cracked concrete.
double pullout_kN(const std::string& thickness) {
  std::string text = contents_of("tests/plans/ok/slab-by-the-european-rules.toml");
  text = std::regex_replace(text, std::regex("cracked = true"), "cracked = false");
  text = std::regex_replace(text, std::regex("\nembedment = [^\n]*"), "\nembedment = \"4.5 in\"");
  text = std::regex_replace(text, std::regex("\"10 in\""), "\"" + thickness + "\"");
  for (const checks::Finding& finding : report_on("slab.toml", text).stages.front().findings)
    if (finding.rule == "insert-pullout" && finding.subject == "A1") {
      REQUIRE(finding.nominal);
      return in(kN, std::get<Force>(*finding.nominal));
    }
  FAIL("nothing is said of pull-out");
  return 0.0;
}

}  // namespace

TEST_CASE("a slab thinner than twice the embedment counts as cracked, whatever the plan says") {
  const double thick = pullout_kN("10 in");
  CHECK(pullout_kN("9.01 in") == Approx(thick));
  CHECK(pullout_kN("8.99 in") == Approx(thick * 7.5 / 10.5));
}
