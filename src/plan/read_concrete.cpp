#include "plan/read_sections.hpp"

namespace firstpick::plan {

Evidence read_evidence(const toml::table& table, const Section& section, Reading& reading) {
  Fields in(table, section, reading);
  Evidence evidence;
  evidence.place = in.place();
  evidence.specimen = in.specimen("specimen");
  evidence.cure = in.choice<Cure>("cure", cure_words);
  evidence.cast = in.moment("cast");
  evidence.tested = in.moment("tested");
  evidence.valid_for = in.quantity<Duration>("valid_for");
  evidence.results = in.quantities<Stress>("results");
  evidence.report = in.line("report");
  return evidence;
}

Concrete read_concrete(const toml::table& table, Reading& reading) {
  Fields in(table, section("concrete"), reading);
  Concrete concrete;
  concrete.place = in.place();
  concrete.kind = in.word("kind");
  concrete.density = in.quantity<Density>("density").value_or(Density{});
  concrete.density_tolerance = in.quantity<Ratio>("density_tolerance");
  concrete.design_strength = in.quantity<Stress>("design_strength");
  concrete.cracked = in.yes_no("cracked");
  concrete.form_stripping_strength = in.quantity<Stress>("form_stripping_strength");
  concrete.lifting_strength = in.quantity<Stress>("lifting_strength");
  concrete.transportation_strength = in.quantity<Stress>("transportation_strength");
  concrete.release_strength = in.quantity<Stress>("release_strength");
  if (const toml::table* evidence = in.inside("concrete.evidence"))
    concrete.evidence = read_evidence(*evidence, section("concrete.evidence"), reading);
  return concrete;
}

}  // namespace firstpick::plan
