// The plan format of the project's design, read in full; the same plan in SI units; absence; whole-file
// faults.

#include "plan/read_plan.hpp"

#include <catch2/catch.hpp>

#include "unit/plan/plan_text.hpp"

using namespace firstpick;
using namespace firstpick::plan;
using namespace firstpick::tests;

namespace {

// Tons are told apart ("short ton"), the steel and the engineer have a name; all else as the design writes
// it.
const std::string culvert = R"(
format = 1

[piece]
mark = "BC-0806-14"
title = "Box culvert section 8 x 6 ft, 6 ft long"
revision = "C"
units = "us"                         # us | si: how results are printed
stated_weight = "19.2 kip"
prepared_by = "somebody"
engineer = "somebody else"

[[piece.solid]]
name = "outer"
shape = "box"
size = ["9 ft 4 in", "6 ft", "7 ft 4 in"]
at = ["0 in", "0 in", "0 in"]

[[piece.solid]]
name = "barrel"
cut = true
shape = "box"
size = ["8 ft", "6 ft", "6 ft"]
at = ["8 in", "0 in", "8 in"]

[concrete]
kind = "normalweight"
density = "150 lb/ft3"
density_tolerance = "3 %"
design_strength = "5000 psi"
cracked = true

[concrete.evidence]
specimen = "cylinder 4x8 in"
cure = "field"
cast = 2026-03-02T16:30:00
tested = 2026-03-03T07:10:00
results = ["2610 psi", "2550 psi", "2700 psi"]

[form]
[[form.contact]]
faces = "barrel"
finish = "smooth"
draft = "1 deg"
[[form.attached]]
what = "pallet"
weight = "350 lb"

[[insert]]
id = "A1"
kind = "headed"
at = ["1 ft", "1 ft", "7 ft 4 in"]
embedment = "6 in"
shank = "0.75 in"
head_bearing_area = "0.91 in2"
steel = "grade 36"
hanger_bar = false
rating = { load = "4 short ton", at_strength = "15 MPa", includes_factor = 4 }
certificate = "lot 4471"
position_confirmed = true

[[sling]]
id = "chain-1/2"
kind = "chain"
rated = "11250 lb"
[[crane]]
id = "bay-2"
rated = "20 short ton"
hoist_speed = "24 ft/min"

[[rigging]]
id = "four-leg"
legs = [ { to = "A1", length = "8 ft", gear = "chain-1/2" } ]
equalised = []
length_tolerance = "0.5 %"

[[stage]]
kind = "strip"
rigging = "four-leg"
crane = "bay-2"
)";

bool near(double a, double b) { return a == Approx(b).epsilon(1e-12).margin(1e-12); }
template <class Q>
bool near(Q a, Q b) {
  return near(a.value(), b.value());
}
std::string shown(Place place) { return std::to_string(place.line) + ":" + std::to_string(place.column); }
bool near(const Position& a, const Position& b) { return near(a.x, b.x) && near(a.y, b.y) && near(a.z, b.z); }

}  // namespace

TEST_CASE("the plan of the design is read: piece and concrete") {
  const Plan plan = plan_of(culvert);
  CHECK(plan.file == "plan.toml");
  CHECK(plan.rules.empty());
  CHECK(plan.piece.mark == "BC-0806-14");
  CHECK(plan.piece.title == "Box culvert section 8 x 6 ft, 6 ft long");
  CHECK(plan.piece.revision == "C");
  CHECK(plan.piece.units == UnitSystem::us);
  CHECK(near(plan.piece.stated_weight.value(), 19.2 * kip));
  CHECK(plan.piece.prepared_by == "somebody");
  CHECK(plan.piece.engineer == "somebody else");
  CHECK(shown(plan.piece.place) == place_of(culvert, "[piece]"));

  REQUIRE(plan.piece.solids.size() == 2);
  const Solid& outer = plan.piece.solids[0];
  CHECK(outer.name == "outer");
  CHECK(outer.shape == Shape::box);
  CHECK_FALSE(outer.cut);
  CHECK(near(outer.size, Position{112.0 * inch, 6.0 * ft, 88.0 * inch}));
  CHECK(near(outer.at, Position{}));
  CHECK(shown(outer.place) == place_of(culvert, "[[piece.solid]]"));
  const Solid& barrel = plan.piece.solids[1];
  CHECK(barrel.name == "barrel");
  CHECK(barrel.cut);
  CHECK(near(barrel.at, Position{8.0 * inch, 0.0 * inch, 8.0 * inch}));
  CHECK_FALSE(barrel.turned_about.has_value());

  CHECK(plan.concrete.kind == "normalweight");
  CHECK(near(plan.concrete.density, 150.0 * lb_per_ft3));
  CHECK(near(plan.concrete.density_tolerance.value(), Ratio{0.03}));
  CHECK(near(plan.concrete.design_strength.value(), 5000.0 * psi));
  CHECK(plan.concrete.cracked == true);
  CHECK_FALSE(plan.concrete.form_stripping_strength.has_value());
  CHECK_FALSE(plan.concrete.lifting_strength.has_value());
  CHECK_FALSE(plan.concrete.transportation_strength.has_value());
}

TEST_CASE("the plan of the design is read: evidence and form") {
  const Plan plan = plan_of(culvert);
  const Evidence& evidence = plan.concrete.evidence.value();
  CHECK(evidence.specimen.value().shape == SpecimenShape::cylinder);
  CHECK(near(evidence.specimen->width, 4.0 * inch));
  CHECK(near(evidence.specimen->height, 8.0 * inch));
  CHECK(evidence.cure == Cure::field);
  CHECK(evidence.cast.value().text == "2026-03-02 16:30");
  CHECK(evidence.tested.value().text == "2026-03-03 07:10");
  CHECK(evidence.tested->seconds - evidence.cast->seconds == (14 * 60 + 40) * 60);
  CHECK_FALSE(evidence.valid_for.has_value());
  REQUIRE(evidence.results.size() == 3);
  CHECK(near(evidence.results[0], 2610.0 * psi));
  CHECK(near(evidence.results[1], 2550.0 * psi));
  CHECK(near(evidence.results[2], 2700.0 * psi));
  CHECK(shown(evidence.place) == place_of(culvert, "[concrete.evidence]"));

  const Form& form = plan.form.value();
  REQUIRE(form.contacts.size() == 1);
  CHECK_FALSE(form.nothing_grips);
  CHECK_FALSE(form.contacts[0].faces.all_but);
  REQUIRE(form.contacts[0].faces.names.size() == 1);
  CHECK(form.contacts[0].faces.names[0].value == "barrel");
  CHECK(shown(form.contacts[0].faces.names[0].place) == place_of(culvert, "\"barrel\"\nfinish"));
  CHECK(form.contacts[0].finish == "smooth");
  CHECK(near(form.contacts[0].draft.value(), 1.0 * deg));
  CHECK_FALSE(form.contacts[0].adhesion.has_value());
  REQUIRE(form.attached.size() == 1);
  CHECK(form.attached[0].what == "pallet");
  CHECK(near(form.attached[0].weight, 350.0 * lbf));
  CHECK_FALSE(form.attached[0].at.has_value());
}

TEST_CASE("the plan of the design is read: insert, gear and stage") {
  const Plan plan = plan_of(culvert);
  REQUIRE(plan.inserts.size() == 1);
  const Insert& insert = plan.inserts[0];
  CHECK(insert.id == "A1");
  CHECK(insert.kind == "headed");
  CHECK(near(insert.at, Position{1.0 * ft, 1.0 * ft, 88.0 * inch}));
  CHECK(near(insert.embedment.value(), 6.0 * inch));
  CHECK(near(insert.shank.value(), 0.75 * inch));
  CHECK_FALSE(insert.threaded.has_value());
  CHECK_FALSE(insert.thread_pitch.has_value());
  CHECK_FALSE(insert.welded_stud);
  CHECK(near(insert.head_bearing_area.value(), 0.91 * in2));
  CHECK(insert.steel == "grade 36");
  CHECK(insert.hanger_bar == false);
  CHECK(near(insert.rating.value().load, 8000.0 * lbf));
  CHECK(near(insert.rating->at_strength.value(), 15.0 * MPa));
  CHECK(insert.rating->includes_factor == 4.0);
  CHECK(insert.certificate == "lot 4471");
  CHECK(insert.position_confirmed == true);

  REQUIRE(plan.slings.size() == 1);
  CHECK(plan.slings[0].id == "chain-1/2");
  CHECK(plan.slings[0].kind == "chain");
  CHECK(near(plan.slings[0].rated.value(), 11250.0 * lbf));
  CHECK_FALSE(plan.slings[0].design_factor.has_value());
  REQUIRE(plan.cranes.size() == 1);
  CHECK(plan.cranes[0].id == "bay-2");
  CHECK(near(plan.cranes[0].rated.value(), 40000.0 * lbf));
  CHECK(near(plan.cranes[0].hoist_speed.value(), 24.0 / 60.0 * 0.3048 * m_per_s));
  CHECK_FALSE(plan.cranes[0].block.has_value());
  CHECK(plan.cranes[0].hoist_class.empty());

  REQUIRE(plan.riggings.size() == 1);
  CHECK(plan.riggings[0].id == "four-leg");
  REQUIRE(plan.riggings[0].legs.size() == 1);
  CHECK(plan.riggings[0].legs[0].to == "A1");
  CHECK(near(plan.riggings[0].legs[0].length.value(), 8.0 * ft));
  CHECK(plan.riggings[0].legs[0].gear == "chain-1/2");
  CHECK(plan.riggings[0].equalised.empty());
  CHECK(near(plan.riggings[0].length_tolerance.value(), Ratio{0.005}));
  CHECK_FALSE(plan.riggings[0].weight.has_value());

  REQUIRE(plan.stages.size() == 1);
  CHECK(plan.stages[0].kind == StageKind::strip);
  CHECK(plan.stages[0].rigging == "four-leg");
  CHECK(plan.stages[0].crane == "bay-2");
  CHECK_FALSE(plan.stages[0].at.has_value());
  CHECK_FALSE(plan.stages[0].dynamic_factor.has_value());
}

TEST_CASE("the keys that the plan of the design leaves out are read too") {
  std::string text = culvert;
  text = with(text, "cracked = true\n", R"(cracked = false
form_stripping_strength = "11 MPa"
lifting_strength = "12 MPa"
transportation_strength = "13 MPa"
)");
  text = with(text, "cure = \"field\"\n", "cure = \"match\"\nvalid_for = \"14 h\"\nreport = \"T-118\"\n");
  text = with(text, "draft = \"1 deg\"\n", "adhesion = \"1.5 kPa\"\n");
  text = with(text, "weight = \"350 lb\"\n", "weight = \"350 lb\"\nat = [\"1 m\", \"2 m\", \"-3 m\"]\n");
  text =
      with(text, "hanger_bar = false\n",
           "hanger_bar = true\nthreaded = true\nthread_pitch = \"2.5 mm\"\ntype = \"stud\"\n");
  text = with(text, "rated = \"11250 lb\"\n", R"(design_factor = 4.5
minimum_angle = "45 deg"
axial_stiffness = "8 MN"
)");
  text = with(text, "hoist_speed = \"24 ft/min\"\n", "block = \"0 lb\"\nhoist_class = \"slow\"\n");
  text = with(text, "equalised = []\n", "weight = \"80 kg\"\n");
  text += "at = 2026-03-03T08:00:00\ndynamic_factor = 1.25\n";
  text = with(text, "kind = \"strip\"", "kind = \"haul\"");
  const Plan plan = plan_of(text);

  CHECK(plan.concrete.cracked == false);
  CHECK(near(plan.concrete.form_stripping_strength.value(), 11.0 * MPa));
  CHECK(near(plan.concrete.lifting_strength.value(), 12.0 * MPa));
  CHECK(near(plan.concrete.transportation_strength.value(), 13.0 * MPa));
  CHECK(plan.concrete.evidence.value().cure == Cure::match);
  CHECK(near(plan.concrete.evidence->valid_for.value(), 14.0 * hour));
  CHECK(plan.concrete.evidence->report == "T-118");
  CHECK_FALSE(plan.form.value().contacts.at(0).draft.has_value());
  CHECK(near(plan.form->contacts.at(0).adhesion.value(), 1.5 * kPa));
  CHECK(near(plan.form->attached.at(0).at.value(), Position{1.0 * m, 2.0 * m, -3.0 * m}));
  CHECK(plan.inserts.at(0).hanger_bar == true);
  CHECK(plan.inserts.at(0).threaded == true);
  CHECK(near(plan.inserts.at(0).thread_pitch.value(), 2.5 * mm));
  CHECK(plan.inserts.at(0).welded_stud);
  CHECK_FALSE(plan.slings.at(0).rated.has_value());
  CHECK(plan.slings.at(0).design_factor == 4.5);
  CHECK(near(plan.slings.at(0).minimum_angle.value(), 45.0 * deg));
  CHECK(near(plan.slings.at(0).axial_stiffness.value(), 8000.0 * kN));
  CHECK(near(plan.cranes.at(0).block.value(), 0.0 * newton));
  CHECK_FALSE(plan.cranes.at(0).hoist_speed.has_value());
  CHECK(plan.cranes.at(0).hoist_class == "slow");
  CHECK(near(plan.riggings.at(0).weight.value(), 80.0 * 9.80665 * newton));
  CHECK(plan.stages.at(0).kind == StageKind::haul);
  CHECK(plan.stages.at(0).at.value().text == "2026-03-03 08:00");
  CHECK(near(plan.stages.at(0).dynamic_factor.value(), Ratio{1.25}));
  CHECK(near(plan_of(with(text, "1.25\n", "\"1.5\"\n")).stages.at(0).dynamic_factor.value(), Ratio{1.5}));
}

TEST_CASE("the same plan in SI units is the same plan") {
  // Exact by definition: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, 1 lbf = 0.45359237 x 9.80665 N.
  const std::vector<std::pair<std::string, std::string>> twins = {
      {"\"19.2 kip\"", "\"8708.973504 kg\""},
      {R"(["9 ft 4 in", "6 ft", "7 ft 4 in"])", R"(["2844.8 mm", "1.8288 m", "2235.2 mm"])"},
      {R"(["8 ft", "6 ft", "6 ft"])", R"(["2438.4 mm", "182.88 cm", "1.8288 m"])"},
      {R"(["8 in", "0 in", "8 in"])", R"(["203.2 mm", "0 mm", "203.2 mm"])"},
      {"\"150 lb/ft3\"", "\"2402.7695060944304 kg/m3\""},
      {"\"5000 psi\"", "\"34.473786465841805 MPa\""},
      {"\"2610 psi\"", "\"17.995316535169422 MPa\""},
      {"\"350 lb\"", "\"158.7573295 kg\""},
      {R"(["1 ft", "1 ft", "7 ft 4 in"])", R"(["304.8 mm", "304.8 mm", "2235.2 mm"])"},
      {"\"6 in\"", "\"152.4 mm\""},
      {"\"0.75 in\"", "\"19.05 mm\""},
      {"\"0.91 in2\"", "\"587.0956 mm2\""},
      {"\"4 short ton\"", "\"3628.73896 kg\""},
      {"\"11250 lb\"", "\"5102.9141625 kg\""},
      {"\"20 short ton\"", "\"18.1436948 t\""},
      {"\"24 ft/min\"", "\"7.3152 m/min\""},
      {"length = \"8 ft\"", "length = \"2.4384 m\""},
  };
  std::string metric = culvert;
  for (const auto& [us, si] : twins) metric = with(metric, us, si);
  const Plan a = plan_of(culvert), b = plan_of(metric);

  CHECK(near(a.piece.stated_weight.value(), b.piece.stated_weight.value()));
  for (std::size_t i = 0; i < 2; ++i) {
    CHECK(near(a.piece.solids.at(i).size, b.piece.solids.at(i).size));
    CHECK(near(a.piece.solids.at(i).at, b.piece.solids.at(i).at));
  }
  CHECK(near(a.concrete.density, b.concrete.density));
  CHECK(near(a.concrete.design_strength.value(), b.concrete.design_strength.value()));
  CHECK(near(a.concrete.evidence.value().results.at(0), b.concrete.evidence.value().results.at(0)));
  CHECK(near(a.form.value().attached.at(0).weight, b.form.value().attached.at(0).weight));
  CHECK(near(a.inserts.at(0).at, b.inserts.at(0).at));
  CHECK(near(a.inserts.at(0).embedment.value(), b.inserts.at(0).embedment.value()));
  CHECK(near(a.inserts.at(0).shank.value(), b.inserts.at(0).shank.value()));
  CHECK(near(a.inserts.at(0).head_bearing_area.value(), b.inserts.at(0).head_bearing_area.value()));
  CHECK(near(a.inserts.at(0).rating.value().load, b.inserts.at(0).rating.value().load));
  CHECK(near(a.slings.at(0).rated.value(), b.slings.at(0).rated.value()));
  CHECK(near(a.cranes.at(0).rated.value(), b.cranes.at(0).rated.value()));
  CHECK(near(a.cranes.at(0).hoist_speed.value(), b.cranes.at(0).hoist_speed.value()));
  CHECK(near(a.riggings.at(0).legs.at(0).length.value(), b.riggings.at(0).legs.at(0).length.value()));
}

TEST_CASE("the small plan of the unit tests has no fault") { CHECK(faults_of(whole_plan()).empty()); }

TEST_CASE("what a plan leaves out stays empty") {
  const Plan plan = plan_of(with(whole_plan(), "density_tolerance = \"3 %\"\n", ""));
  CHECK_FALSE(plan.concrete.density_tolerance.has_value());
  CHECK_FALSE(plan.concrete.cracked.has_value());
  CHECK_FALSE(plan.piece.stated_weight.has_value());
  CHECK(plan.piece.units == UnitSystem::si);
  CHECK(plan.rules == "us");
  CHECK_FALSE(plan.concrete.evidence.value().cure.has_value());
  CHECK(plan.inserts.at(1).steel.empty());
  CHECK(plan.inserts.at(1).certificate.empty());
  CHECK_FALSE(plan.inserts.at(1).position_confirmed.has_value());
  CHECK_FALSE(plan.inserts.at(1).rating.has_value());
  CHECK_FALSE(plan.riggings.at(0).weight.has_value());
  CHECK(plan.stages.at(1).crane.empty());
}

TEST_CASE("faults come together and in the order of the file") {
  std::string text = with(whole_plan(), "mark = \"B-1\"", "mark = 1");
  text = with(text, "kind = \"normalweight\"", "kind = \"heavy\"");
  text = with(text, "title = ", "titel = ");
  const auto faults = faults_of(text);
  REQUIRE(faults.size() == 3);
  CHECK(faults[0] ==
        "5:8 'mark' needs a name in quotes; given: a bare number | for example: mark = \"BC-0806-14\"");
  CHECK(faults[1] == "6:1 [piece] has no key 'titel' | did you mean 'title'?");
  CHECK(faults[2] == "16:8 'kind' cannot be 'heavy' | there are: 'normalweight', 'sand-lightweight'");
}

TEST_CASE("a plan of another format gets one fault, whatever else it says") {
  const auto faults = faults_of("format = 2\nwhatever = 3\n");
  REQUIRE(faults.size() == 1);
  CHECK(faults[0] == "1:10 this program reads plans of format 1");
}

TEST_CASE("an empty file lacks every section that a plan must have") {
  CHECK(faults_of("") ==
        std::vector<std::string>{"0:0 the plan needs the key 'format' | for example: format = 1",
                                 "0:0 the plan needs [piece]", "0:0 the plan needs [concrete]",
                                 "0:0 the plan needs [[insert]]", "0:0 the plan needs [[rigging]]",
                                 "0:0 the plan needs [[stage]]"});
}

TEST_CASE("a quote that is not closed is told at the quote") {
  const auto faults = faults_of("format = 1\nmark = \"open\n");
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].starts_with("2:8 this quote is not closed"));
}
